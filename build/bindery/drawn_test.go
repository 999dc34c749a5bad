package bindery

import (
	"slices"
	"testing"

	"columnbowl/build/book"
	"columnbowl/calcwasm/cutaway"
)

// notDrawn are parts of the model that stand away from the pump, or are drawn
// under the name of the part they belong to.
var notDrawn = map[string]string{
	"control-panel":         "stands on a wall",
	"surge-arrester":        "sits in the panel",
	"low-level-protection":  "sits in the panel, its probe on the pipe",
	"relief-ports":          "drawn as the drain ports: often the same holes",
	"spiral-groove-bushing": "drawn as the groove of the top tube bearing",

	"water-lubricated/air-line":  "drawn for the submersible alone",
	"oil-lubricated/air-line":    "drawn for the submersible alone",
	"water-lubricated/well-vent": "drawn for the submersible alone",
	"oil-lubricated/well-vent":   "drawn for the submersible alone",

	"submersible/suction-case":         "the drawing has the inlet adapter in its place",
	"submersible/suction-case-bearing": "the drawing has the inlet adapter in its place",
	"submersible/sand-collar":          "the drawing has the inlet adapter in its place",
}

// TestEveryPieceIsDrawn compares the two faces of the parts model: what the
// take-off counts for a pump, some sheet of that pump shows.
func TestEveryPieceIsDrawn(t *testing.T) {
	b := loaded(t, realContent)
	parts := testParts(t)
	w, err := prepare(b, parts.Shells)
	if err != nil {
		t.Fatal(err)
	}
	if err := w.prepareCuts(parts.DrawnStyle); err != nil {
		t.Fatal(err)
	}
	if err := w.countParts(); err != nil {
		t.Fatal(err)
	}
	for _, build := range book.Builds {
		var drawn []string
		for _, sheet := range cutaway.Sheets(build) {
			drawn = append(drawn, w.cuts.drawn[cutName(build, sheet, widths[0])].Parts...)
		}
		for part := range w.counted[build] {
			why := notDrawn[part] + notDrawn[build+"/"+part]
			if is := slices.Contains(drawn, part); is == (why != "") {
				t.Errorf("%s: %s is counted, drawn: %v; the list of what is not drawn says %q", build, part, is, why)
			}
		}
	}
}

// TestStagesAreDrawnOrTold: the stages of the drawing and those behind its
// break line are as many as the pump has.
func TestStagesAreDrawnOrTold(t *testing.T) {
	b := loaded(t, realContent)
	shapes, err := cutaway.Load(b.Shapes.Pack())
	if err != nil {
		t.Fatal(err)
	}
	for _, sheet := range []string{cutaway.Whole, cutaway.Bowls} {
		shown := 0
		for stages := 1; stages <= 30; stages++ {
			d := shapes.Draw(cutaway.Pump{Build: "oil-lubricated", Stages: stages}, cutaway.View{Sheet: sheet, Width: 1280})
			if n := stages - d.Behind; n < 1 || n < shown || n > 4 {
				t.Errorf("%s of %d stages: %d drawn and %d behind the break", sheet, stages, n, d.Behind)
			} else {
				shown = min(n, 3)
			}
		}
	}
}
