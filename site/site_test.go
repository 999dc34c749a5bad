package site

import (
	"bytes"
	"html/template"
	"reflect"
	"regexp"
	"strings"
	"testing"
)

// pages are all kinds of page, pieces all kinds of piece, both empty.
func pages() []any {
	return []any{&Term{}, &Part{}, &Chapter{}, &PlacePage{}, &TermIndex{}, &PartIndex{}, &Chain{}, &Sources{}, &CounterQuestion{}, &AskedIndex{}, &Build{}, &Builds{}, &Guide{}, &TakeOff{}, &Rules{}, &Home{}, &Hub{}}
}

func pieces() []any {
	return []any{&Sheet{}, &Worked{}, &Relation{Strength: "formula"}, &Caution{}, &Slips{}, &Figure{}, &CutInText{}, &Question{}, &Pieces{}, &Shown{}, &ShownFile{}}
}

// named are the fields whose text picks a word: every value they may have.
var named = map[string][]string{
	"Lang": {"en"}, "Root": {"", "../"}, "Units": {"us", "si"}, "Key": {"chain", "terms", "parts", "sources", "questions", "builds", "takeoff"},
	"Strength": {"formula", "estimate", "assume"}, "Motion": {"turns", "stands", "both"},
	"Wetted": {"water", "oil", "leakage", "grease", "filling", "dry"}, "Pressure": {"yes", "no"},
	"Where": {"above", "below", "inside", "outside"}, "Builds": {"water-lubricated", "oil-lubricated", "submersible"},
	"Build": {"water-lubricated", "oil-lubricated", "submersible"},
	// a list of pictures takes addresses alone, no text
	"CutFile.URL": {"drawings/oil-lubricated-whole-768.svg", "../drawings/submersible-motor-360.svg#c-motor-shell"},
	"Rule.State":  {"holds", "not", "unchecked"}, "Caution.State": {"fires", "clear", "unchecked"}, "Paper": {"a4", "letter"},
	"Verdict": {"right", "rounded", "unit", "carried", "mistake", "could-be", "not-recognised", "wrong", "in-part", "empty", "unread"},
}

// fill gives every field of v a value; turn picks among the named ones, so that
// ten turns show every word.
func fill(v reflect.Value, field string, turn int) {
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		fill(v.Elem(), field, turn)
	case reflect.Struct:
		for i := range v.NumField() {
			name := v.Type().Field(i).Name
			switch v.Type().Name() + "." + name {
			case "Caution.State", "Rule.State", "CutFile.URL":
				name = v.Type().Name() + "." + name
			}
			fill(v.Field(i), name, turn)
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		for i := range v.Len() {
			fill(v.Index(i), field, turn+i)
		}
		if h := v.Index(1); field == "Rows" && h.FieldByName("Heading").IsValid() {
			h.FieldByName("Heading").SetString("")
		}
	case reflect.Map:
		v.Set(reflect.ValueOf(map[State]int{States[turn%len(States)]: 1 + turn%2}))
	case reflect.Bool:
		v.SetBool(turn%2 == 0)
	case reflect.Int:
		v.SetInt(int64(1 + turn%2))
	case reflect.String:
		v.SetString(textFor(v.Type(), field, turn))
	}
}

func textFor(t reflect.Type, field string, turn int) string {
	switch {
	case t == reflect.TypeFor[State]():
		return string(States[turn%len(States)])
	case t == reflect.TypeFor[template.HTML]():
		return "<b>" + field + "</b>"
	case len(named[field]) > 0:
		return named[field][turn%len(named[field])]
	}
	return field + " <&\"'>"
}

func shells(t *testing.T) *Set {
	t.Helper()
	set, err := Shells()
	if err != nil {
		t.Fatal(err)
	}
	return set
}

func TestEveryShellEmptyAndFull(t *testing.T) {
	set := shells(t)
	for _, p := range pages() {
		var b bytes.Buffer
		if err := set.Write(&b, p); err != nil {
			t.Errorf("%T empty: %v", p, err)
		}
		checkPage(t, reflect.TypeOf(p).String()+" empty", b.String())
		for turn := range 2 * len(States) {
			b.Reset()
			fill(reflect.ValueOf(p).Elem(), "", turn)
			if err := set.Write(&b, p); err != nil {
				t.Fatalf("%T full, turn %d: %v", p, turn, err)
			}
			checkPage(t, reflect.TypeOf(p).String()+" full", b.String())
		}
	}
}

func TestEveryPieceEmptyAndFull(t *testing.T) {
	set := shells(t)
	for _, p := range pieces() {
		if _, err := set.Piece(p); err != nil {
			t.Errorf("%T empty: %v", p, err)
		}
		for turn := range 2 * len(States) {
			fill(reflect.ValueOf(p).Elem(), "", turn)
			html, err := set.Piece(p)
			if err != nil {
				t.Fatalf("%T full, turn %d: %v", p, turn, err)
			}
			checkMarkup(t, reflect.TypeOf(p).String(), string(html))
		}
	}
}

func TestUnknownPageIsRefused(t *testing.T) {
	set := shells(t)
	if err := set.Write(&bytes.Buffer{}, 7); err == nil {
		t.Error("a number was taken for a page")
	}
	if _, err := set.Piece(Home{}); err == nil {
		t.Error("a page was taken for a piece")
	}
}

var (
	forbidden = regexp.MustCompile(`(?i)\sstyle\s*=|\son[a-z]+\s*=\s*["']|<style|<script>|javascript:|ZgotmplZ|%!|<no value>`)
	idAttr    = regexp.MustCompile(`\sid="([^"]*)"`)
)

// checkPage looks at what a whole page must have: a policy, a language, a way
// for the keyboard to its content, one main heading.
func checkPage(t *testing.T, name, html string) {
	t.Helper()
	checkMarkup(t, name, html)
	if !strings.Contains(html, `<html lang="en"`) {
		t.Errorf("%s: no language", name)
	}
	if strings.Contains(name, "Hub") {
		if !strings.Contains(html, `content="`+HubPolicy+`"`) {
			t.Errorf("%s: no policy", name)
		}
		return
	}
	for what, want := range map[string]int{
		`content="` + Policy + `"`: 1, "<main id=\"main\"": 1, `href="#main"`: 1, "<h1": 1, "</html>": 1,
	} {
		if got := strings.Count(html, what); got != want {
			t.Errorf("%s: %q stands %d times, want %d", name, what, got, want)
		}
	}
}

// checkMarkup looks for what the policy forbids and for what a browser would
// have to guess.
func checkMarkup(t *testing.T, name, html string) {
	t.Helper()
	if found := forbidden.FindString(html); found != "" {
		t.Errorf("%s holds %q, which the policy forbids or a shell got wrong", name, found)
	}
	for _, tag := range []string{"div", "span", "section", "article", "ul", "ol", "li", "dl", "table", "tr", "nav", "figure", "aside", "details", "fact-sheet", "p", "a", "header", "footer"} {
		open := len(regexp.MustCompile(`<`+tag+`[\s>]`).FindAllString(html, -1))
		if closed := strings.Count(html, "</"+tag+">"); open != closed {
			t.Errorf("%s: <%s> opens %d times and closes %d times", name, tag, open, closed)
		}
	}
}

func TestEscaping(t *testing.T) {
	set := shells(t)
	var b bytes.Buffer
	page := &Term{Frame: Frame{Book: `<i>"book"</i>`, Title: "</title><script>"}, Name: "<u>"}
	if err := set.Write(&b, page); err != nil {
		t.Fatal(err)
	}
	for _, raw := range []string{"<i>", "</title><", "<u>"} {
		if strings.Contains(b.String(), raw) {
			t.Errorf("plain text reached the page as markup: %s", raw)
		}
	}
}

func TestStaticSheetFollowsUnits(t *testing.T) {
	set := shells(t)
	row := Row{Term: "lift", Name: "lift", State: Given, UnitUS: "ft", UnitSI: "m", Value: Both{US: Number{"197", "ft"}, SI: Number{"60.05", "m"}}}
	for units, want := range map[string]string{
		"us": `<span class="num">197</span><i>ft</i></span>` + "\n" + `<span class="o">60.05 m</span>`,
		"si": `<span class="num">60.05</span><i>m</i></span>` + "\n" + `<span class="o">197 ft</span>`,
	} {
		html, err := set.Piece(Sheet{ID: "s", Units: units, Rows: []Row{row}})
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(html), want) {
			t.Errorf("%s: the sheet lacks %s", units, want)
		}
	}
}

// TestPageIDsDiffer is about the ids that the shells themselves give.
func TestPageIDsDiffer(t *testing.T) {
	set := shells(t)
	page := &Term{}
	fill(reflect.ValueOf(page).Elem(), "", 0)
	var b bytes.Buffer
	if err := set.Write(&b, page); err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, m := range idAttr.FindAllStringSubmatch(b.String(), -1) {
		if seen[m[1]] {
			t.Errorf("id %q stands twice", m[1])
		}
		seen[m[1]] = true
	}
}

func TestFactsLink(t *testing.T) {
	for _, c := range []struct {
		facts []Fact
		want  string
	}{
		{nil, ""},
		{[]Fact{{"static-level", "140 ft"}, {"drawdown", "35 ft"}}, "static-level:140ft,drawdown:35ft"},
		{[]Fact{{"build", "oil-lubricated"}}, "build:oil-lubricated"},
		{[]Fact{{"shaft-size", "1 11/16 in"}}, "shaft-size:1%2011%2F16in"},
		{[]Fact{{"shaft-size", "1 11/16"}}, "shaft-size:1%2011%2F16"},
		{[]Fact{{"bowl-efficiency", "81 %"}}, "bowl-efficiency:81%25"},
		{[]Fact{{"flow", "180 m³/h"}}, "flow:180m%C2%B3%2Fh"},
	} {
		if got := factsLink(c.facts); got != c.want {
			t.Errorf("factsLink(%v) = %q, want %q", c.facts, got, c.want)
		}
	}
	if got := fragment([]Fact{{"lift", "197 ft"}}, "total-head"); got != "#facts=lift:197ft&want=total-head" {
		t.Errorf("fragment = %q", got)
	}
}

func TestSymbolOf(t *testing.T) {
	got, err := symbolOf("x", `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 14 14" fill="none" stroke="currentColor"><path d="M0 0"/></svg>`)
	if err != nil || got != `<symbol id="sign-x" viewBox="0 0 14 14" fill="none" stroke="currentColor"><path d="M0 0"/></symbol>` {
		t.Errorf("symbolOf = %s, %v", got, err)
	}
	if _, err := symbolOf("x", `<svg><path/></svg>`); err == nil {
		t.Error("a sign without a viewBox was taken")
	}
}
