package bindery

import (
	"encoding/json"
	"html"
	"regexp"
	"strings"
	"testing"

	"columnbowl/build/book"
	"columnbowl/calcwasm/answer"
	"columnbowl/site"
)

// takeOff is the page that counts pieces, of the handbook itself, and its text.
func takeOff(t *testing.T) (*work, *site.TakeOff, string) {
	t.Helper()
	parts := testParts(t)
	w, err := prepare(loaded(t, realContent), parts.Shells)
	if err != nil {
		t.Fatal(err)
	}
	view, err := w.takeoffView()
	if err != nil {
		t.Fatal(err)
	}
	p := page{path: takeoffPath, view: func() (any, error) { return view, nil }}
	file, err := p.render(parts.Shells)
	if err != nil {
		t.Fatal(err)
	}
	return w, view.(*site.TakeOff), string(file.Data)
}

var (
	printedLine = regexp.MustCompile(`<tr data-part="([^"]+)"><td class="r">([^<]*)</td><td><a[^>]*>([^<]*)</a>(.*?)</td><td class="r each">(.*?)</td><td class="r">(.*?)</td><td class="r">(.*?)</td></tr>`)
	anyTag      = regexp.MustCompile(`<[^>]+>`)
)

// twice is how the page prints a value in both systems.
func twice(v *site.PieceText) string {
	switch {
	case v == nil:
		return ""
	case v.US == v.SI:
		return v.US
	}
	return `<span class="only-us">` + v.US + `</span><span class="only-si">` + v.SI + `</span>`
}

// The printed list is what the engine tells a page that comes with the facts of
// the sheet, as its attribute has them: every line, in its order.
func TestPrintedPiecesAreAlive(t *testing.T) {
	w, v, text := takeOff(t)
	alive(t, answer.New(w.engine).WithBuilds(w.book.Assembly), "the take-off", v.Sheet)
	ask := "pieces\n"
	for _, f := range v.Sheet.Facts {
		ask += "fact\t" + f.Term + "\t" + joinUnit(f.Text) + "\n"
	}
	var told struct{ Pieces site.Pieces }
	if err := json.Unmarshal(answer.New(w.engine).WithBuilds(w.book.Assembly).Answer([]byte(ask)), &told); err != nil {
		t.Fatal(err)
	}
	lines := printedLine.FindAllStringSubmatch(text, -1)
	var want []site.PieceLine
	for i := range told.Pieces.Groups {
		want = append(want, told.Pieces.Groups[i].Listed()...)
	}
	if len(lines) != len(want) || len(want) < 40 {
		t.Fatalf("%d lines printed, %d told", len(lines), len(want))
	}
	for i, p := range want {
		got := lines[i][1:]
		if got[0] != p.Part || got[1] != jsonNumber(p.Count) || html.UnescapeString(got[2]) != p.Name || got[4] != twice(p.Length) || got[5] != twice(p.TotalLength) || got[6] != twice(p.TotalMass) {
			t.Errorf("line %d: printed %q, told %+v", i, got, p)
		}
	}
	plain := html.UnescapeString(anyTag.ReplaceAllString(text, ""))
	for _, c := range told.Pieces.Cautions {
		if !strings.Contains(plain, c.Text) {
			t.Errorf("the caution %s is not printed", c.ID)
		}
	}
	for _, n := range told.Pieces.Notes {
		if !strings.Contains(plain, n) {
			t.Errorf("the note %q is not printed", n)
		}
	}
}

func jsonNumber(n *int) string {
	if n == nil {
		return "?"
	}
	b, _ := json.Marshal(n)
	return string(b)
}

// Quillbeck Orchard stands there without a script: asked 237 ft, made 240 ft, the
// larger weight large, the bowl named as what it is.
func TestTakeOffOfQuillbeckOrchard(t *testing.T) {
	_, v, text := takeOff(t)
	plain := strings.ReplaceAll(html.UnescapeString(anyTag.ReplaceAllString(text, "|")), "\u00a0", " ")
	for _, say := range []string{"|asked ||237 ft|", "|made |||240 ft|", "|Demonstration bowl, not for order.|", "competent person", "|16,230 lb|"} {
		if !strings.Contains(plain, say) {
			t.Errorf("the page does not say %q", say)
		}
	}
	if big := v.List.Big(); big == nil || big.ID != "hook-weight-full" {
		t.Errorf("large is %+v", big)
	}
	if n := strings.Count(text, `class="hook"`); n != 1 {
		t.Errorf("%d weights are printed large", n)
	}
	if len(v.List.Asks) > 0 || v.List.Refused() {
		t.Errorf("it opens with open questions %+v or refused", v.List.Asks)
	}
	for _, r := range v.List.Runs {
		if !r.Agrees {
			t.Errorf("the pieces of the %s do not add up", r.Name)
		}
	}
}

// What every build asks for, or prints as a total or an option, has a line on
// the sheet: else a reader could not answer.
func TestTakeOffSheetHasALineForAllThatIsAsked(t *testing.T) {
	w, v, _ := takeOff(t)
	lines := map[string]bool{}
	for _, r := range v.Sheet.Rows {
		lines[r.Term] = true
	}
	for i := range w.book.Assembly.Builds {
		b := &w.book.Assembly.Builds[i]
		for _, t2 := range append(append([]int{b.Asked, b.Made}, b.Options...), b.Totals...) {
			if id := w.engine.Terms[t2].ID; !lines[id] {
				t.Errorf("%s: the sheet has no line for %s", b.ID, id)
			}
		}
		list, err := w.takeoffList([]site.Fact{{Term: "build", Text: b.ID}})
		if err != nil {
			t.Fatal(err)
		}
		if len(list.Asks) < 4 {
			t.Errorf("%s asks for %+v", b.ID, list.Asks)
		}
		for _, a := range list.Asks {
			if !lines[a.ID] {
				t.Errorf("%s asks for %s, and the sheet has no line for it", b.ID, a.ID)
			}
		}
	}
}

// A book that has builds but no sheet for them, or the other way round, has no
// such page; facts without a build print a question.
func TestTakeOffOnlyWithSheetAndBuilds(t *testing.T) {
	w, _, _ := takeOff(t)
	if !w.hasTakeOff() {
		t.Fatal("the handbook has no take-off")
	}
	list, err := w.takeoffList(nil)
	if err != nil || list.Name != "" || len(list.Asks) != 1 || list.Asks[0].ID != "build" {
		t.Errorf("without facts: %+v, %v", list, err)
	}
	if _, err := w.sheetGroups("takeoff", []book.Group{{Terms: []string{"no-such-term"}}}); err == nil || !strings.Contains(err.Error(), "no-such-term") {
		t.Errorf("an unknown term gives %v", err)
	}
	own := *w.book // the book is shared by all tests
	w.book = &own
	groups := w.book.Handbook.TakeOff.Groups
	w.book.Handbook.TakeOff.Groups = nil
	if w.hasTakeOff() {
		t.Error("a page without a sheet")
	}
	w.book.Handbook.TakeOff.Groups, w.book.Assembly = groups, nil
	if w.hasTakeOff() {
		t.Error("a page without builds")
	}
}

// While facts are missing no sum may pass for the weight to lift, and the
// question marks of the list are explained.
func TestTakeOffTellsThatTheHookIsNotKnown(t *testing.T) {
	w, v, text := takeOff(t)
	says := [2]string{w.words["takeoff.hook.open"], w.words["takeoff.open"]}
	for _, say := range says {
		if say == "" || strings.Contains(text, say) {
			t.Errorf("all facts are given, and the page says %q", say)
		}
	}
	list, err := w.takeoffList([]site.Fact{{Term: "build", Text: "water-lubricated"}, {Term: "asked-setting", Text: "237 ft"}})
	if err != nil {
		t.Fatal(err)
	}
	v.List = list
	file, err := (&page{path: takeoffPath, view: func() (any, error) { return v, nil }}).render(testParts(t).Shells)
	if err != nil {
		t.Fatal(err)
	}
	for _, say := range says {
		if !strings.Contains(string(file.Data), say) {
			t.Errorf("facts are missing, and the page does not say %q", say)
		}
	}
}
