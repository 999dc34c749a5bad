package bindery

import (
	"slices"
	"strings"
	"testing"

	"columnbowl/build/book"
	"columnbowl/calcwasm/cutaway"
	"columnbowl/site"
)

// Every choice that the drawings know is offered on the page of some pump, with
// words, on sheets that the pump has; one that another option closes changes
// nothing then.
func TestPumpsMadeOtherwise(t *testing.T) {
	b := loaded(t, realContent)
	shapes, err := cutaway.Load(b.Shapes.Pack())
	if err != nil {
		t.Fatal(err)
	}
	words, err := site.Words()
	if err != nil {
		t.Fatal(err)
	}
	c := &cuts{w: &work{book: b, words: words}, shapes: shapes}
	offered := map[string]bool{}
	for _, build := range book.Builds {
		for _, m := range c.madeOf(build) {
			if words["cut.choice."+m.options[0]] == "" {
				t.Errorf("the choice %s has no words", m.options[0])
			}
			for _, o := range m.options {
				offered[o] = true
				if words["cut.option."+o] == "" {
					t.Errorf("the option %s has no words", o)
				}
			}
			for _, sheet := range m.sheets {
				if !slices.Contains(cutaway.Sheets(build), sheet) {
					t.Errorf("%s changes %s, which a %s pump has not", m.options, sheet, build)
				}
				other := cutaway.Idle[m.options[0]]
				if other != "" && c.bare(build, sheet, other).Scene.SVG() != c.bare(build, sheet, other, m.options[1]).Scene.SVG() {
					t.Errorf("with %s, %s changes the sheet %s and should be offered", other, m.options[1], sheet)
				}
			}
		}
	}
	for _, row := range cutaway.Choices {
		for _, o := range row {
			if !offered[o] {
				t.Errorf("no page offers %s of %s", o, strings.Join(row, ", "))
			}
		}
	}
}
