package onefile

import (
	"bytes"
	"os"
	"regexp"
	"strings"
	"testing"

	"columnbowl/build/bindery"
	"columnbowl/build/book"
	"columnbowl/build/bundle"
	"columnbowl/build/leaf"
	"columnbowl/site"
)

var (
	anID    = regexp.MustCompile(` id="?([^" >]+)`)
	aLink   = regexp.MustCompile(`href="?#([^" >]+)`)
	stilled = regexp.MustCompile(`(?s)<noscript>(.*?)</noscript>`)
)

func loosened(t *testing.T) *bindery.Loose {
	t.Helper()
	b, found := book.Load(os.DirFS("../../content"))
	if found.Errors() > 0 {
		t.Fatalf("the content has errors: %v", found)
	}
	shells, err := site.Shells()
	if err != nil {
		t.Fatal(err)
	}
	drawn, err := bundle.DrawnStyles(site.Files)
	if err != nil {
		t.Fatal(err)
	}
	l, err := bindery.Loosen(b, bindery.Parts{Shells: shells, DrawnStyle: drawn}, bindery.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// TestDocument follows every link of the plain forms, and reads the store as the
// scripts do.
func TestDocument(t *testing.T) {
	l := loosened(t)
	p := Parts{Script: []byte("0"), Style: []byte("p{}"), Font: []byte("wOF2"), FontLicence: []byte("licence"), Wasm: []byte("\x00asm")}
	data, _, _, err := Make(l, p)
	if err != nil {
		t.Fatal(err)
	}
	if again, _, _, err := Make(l, p); err != nil || !bytes.Equal(data, again) {
		t.Errorf("the second document differs from the first (%v)", err)
	}
	text := string(data)
	follow(t, text)
	plain := map[string]string{}
	for _, m := range stilled.FindAllStringSubmatch(text, -1) {
		plain[anID.FindStringSubmatch(m[1])[1]] = m[1]
	}
	for _, page := range l.Leaves {
		demo := page.Main.Find(func(n *leaf.Node) bool { return n.Is("demo") })
		if demo != nil && !strings.Contains(plain[anchor(page.Path)], "class=demo") {
			t.Errorf("%s: the plain form does not say that it rests on a demonstration bowl", page.Path)
		}
	}
	if n := len(stilled.FindAllString(text, -1)); n != len(l.Leaves) {
		t.Errorf("%d plain forms of %d pages", n, len(l.Leaves))
	}
	if bytes.Contains(data, []byte(` style="`)) || strings.Count(text, "<script>") != 1 {
		t.Error("something in the document breaks its own policy")
	}
}

// follow checks that ids are unique and that every link leads to one of them.
func follow(t *testing.T, text string) {
	t.Helper()
	ids := map[string]bool{}
	for _, m := range anID.FindAllStringSubmatch(text, -1) {
		if ids[m[1]] {
			t.Errorf("two elements are called %s", m[1])
		}
		ids[m[1]] = true
	}
	for _, m := range aLink.FindAllStringSubmatch(text, -1) {
		if m[1] != "main" && !ids[m[1]] {
			t.Errorf("a link leads to %s, which is not in the document", m[1])
		}
	}
}

// TestPaper follows the links of the print edition, and looks every term up in
// its index.
func TestPaper(t *testing.T) {
	l := loosened(t)
	data, err := Paper(l, Parts{Style: []byte("p{}"), Font: []byte("wOF2"), FontLicence: []byte("licence")})
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	follow(t, text)
	_, index, found := strings.Cut(text, "<h1>"+l.Words["bound.index"])
	if !found {
		t.Fatal("there is no index")
	}
	terms := 0
	for i := range l.Leaves {
		page := &l.Leaves[i]
		if page.Kind() == "terms" && !page.Index() {
			if terms++; !strings.Contains(index, page.Title+"</a>") {
				t.Errorf("%s is not in the index", page.Title)
			}
		}
	}
	if n := strings.Count(text, `class="paperno"`); terms < 200 || n < terms+200 || n != strings.Count(text, "<main ") {
		t.Errorf("%d numbers on %d sheets, %d terms", n, strings.Count(text, "<main "), terms)
	}
	if strings.Contains(text, "<script") || strings.Contains(text, "noscript") {
		t.Error("there is a script on paper")
	}
}

// TestStored: what the store tells of a page is what the page of the folder says.
func TestStored(t *testing.T) {
	l := loosened(t)
	d := &document{loose: l, known: map[string]bool{}}
	for _, page := range l.Leaves {
		d.known[page.Path] = true
	}
	var err error
	if d.sprite, err = newSprite(l.Files); err != nil {
		t.Fatal(err)
	}
	for i := range l.Leaves {
		page := &l.Leaves[i]
		want, got := page.Main.Plain(), d.stored(page).Plain()
		// drawings are drawn elsewhere in the document, their words with them
		if page.Main.Find(func(n *leaf.Node) bool { return n.Tag == "svg" && n.Is("fig") }) == nil && want != got {
			t.Errorf("%s says something else in the store", page.Path)
		}
	}
}
