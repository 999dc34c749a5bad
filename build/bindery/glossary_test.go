package bindery

import (
	"html"
	"strings"
	"testing"

	"columnbowl/site"
)

// Every name and every further name is in the glossary, in both directions: the
// further name leads to the word, and the word lists it.
func TestGlossaryHoldsEveryName(t *testing.T) {
	b := loaded(t, realContent)
	e, err := Bind(b, testParts(t), Options{})
	if err != nil {
		t.Fatal(err)
	}
	page, ok := e.File(glossaryPath)
	if !ok {
		t.Fatal("there is no glossary")
	}
	text := html.UnescapeString(string(page))
	check := func(anchor, name string, also []string) {
		_, entry, found := strings.Cut(text, `<div id="`+anchor+`">`)
		entry, _, _ = strings.Cut(entry, "</div>")
		if !found || !strings.Contains(entry, ">"+name+"</a>") {
			t.Errorf("%s has no entry", name)
		}
		for _, a := range also {
			if !strings.Contains(entry, "<b>"+a+"</b>") {
				t.Errorf("the entry of %s does not list %q", name, a)
			}
			at := strings.Index(strings.ToLower(text), `<div class="see"><dt>`+strings.ToLower(a)+"</dt>")
			if at < 0 {
				t.Errorf("%q has no line of its own", a)
				continue
			}
			if line, _, _ := strings.Cut(text[at:], "</div>"); !strings.Contains(line, `href="#`+anchor+`"`) {
				t.Errorf("the line of %q does not lead to %s", a, name)
			}
		}
	}
	for _, o := range b.Terms {
		check("t-"+o.ID, o.Name, o.Also)
	}
	for _, o := range b.Parts {
		check("p-"+o.ID, o.Name, o.Also)
	}
	for _, p := range b.Pairs {
		side, _ := e.File(pairPath(p.ID))
		if n := strings.Count(string(side), `<section class="side">`); n != len(p.Between) {
			t.Errorf("%s shows %d of its %d words", p.ID, n, len(p.Between))
		}
	}
}

// The order is that of a person: capitals do not stand before small letters, and
// what begins with a figure stands under one heading.
func TestAlphabet(t *testing.T) {
	var list []site.GlossaryWord
	for _, name := range []string{"bowl", "10 ft rule", "Bowl head", "air", "2-pole"} {
		list = append(list, site.GlossaryWord{Link: site.Link{Name: name}})
	}
	groups := alphabet(list)
	var got []string
	for _, g := range groups {
		got = append(got, g.Letter)
		for _, w := range g.Words {
			got = append(got, w.Name)
		}
	}
	if want := "0–9|10 ft rule|2-pole|A|air|B|bowl|Bowl head"; strings.Join(got, "|") != want {
		t.Errorf("got %s, want %s", strings.Join(got, "|"), want)
	}
}
