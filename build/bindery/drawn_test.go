package bindery

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"columnbowl/build/book"
	"columnbowl/calcwasm/assembly"
	"columnbowl/calcwasm/cutaway"
	"columnbowl/calcwasm/reckon"
)

// TestDrawings holds the drawings against the parts model, on the book's own
// content, which is loaded once.
func TestDrawings(t *testing.T) {
	b := loaded(t, realContent)
	shapes, err := cutaway.Load(b.Shapes.Pack())
	if err != nil {
		t.Fatal(err)
	}
	t.Run("every piece is drawn", func(t *testing.T) { everyPieceIsDrawn(t, b) })
	t.Run("as often as counted", func(t *testing.T) { drawnAsOftenAsCounted(t, b, shapes) })
	t.Run("stages are drawn or told", func(t *testing.T) { stagesAreDrawnOrTold(t, shapes) })
}

// everyPieceIsDrawn compares the two faces of the parts model: what the
// take-off counts for a pump, some sheet of that pump shows; and the page of
// each part has it lit and numbered in every pump that has it.
func everyPieceIsDrawn(t *testing.T, b *book.Book) {
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
			if !slices.Contains(drawn, part) {
				t.Errorf("%s: %s is counted, and no sheet shows it", build, part)
			}
		}
	}
	for _, p := range b.Parts {
		lit := w.cuts.partFigures(p, "../")
		if len(lit) != len(p.Builds) {
			t.Errorf("%s is part of %d pumps, and its page shows it in %d", p.ID, len(p.Builds), len(lit))
		}
		for _, l := range lit {
			if l.Number == 0 || !strings.HasSuffix(l.Layouts.Narrow.URL, "#c-"+p.ID) {
				t.Errorf("%s, %s: number %d, %s", p.ID, l.Build, l.Number, l.Layouts.Narrow.URL)
			}
			if w.words["cut.sheet."+l.URL[strings.Index(l.URL, "#")+1:]] == "" {
				t.Errorf("%s, %s: the sheet of %s has no name", p.ID, l.Build, l.URL)
			}
		}
	}
	paths := []string{"prelube", "thrust", "torque", "turn"} // followed, never labelled
	for _, id := range b.Shapes.Labels() {
		if w.cutWord(id).Name == "" && !slices.Contains(paths, id) {
			t.Errorf("a drawing labels %s, and site/words.json has no word for it", id)
		}
	}
	for _, o := range w.cuts.others {
		for _, option := range o.options {
			if w.words["cut.with."+option] == "" {
				t.Errorf("there is no word for a pump %s", option)
			}
		}
	}
}

// stacked are the parts that repeat with the stages.
var stacked = []string{"impeller", "impeller-collet", "bowl-wear-ring", "intermediate-bowl", "diffuser", "bowl-bearing", "bowl-bolting"}

// drawnAsOftenAsCounted: of what repeats with the stages, the pieces in the
// drawing and those behind its break line are as many as the take-off counts.
// How many outlines one piece has is taken from the pump of two stages.
func drawnAsOftenAsCounted(t *testing.T, b *book.Book, shapes *cutaway.Shapes) {
	for _, build := range book.Builds {
		outlines := func(sheet, part string, stages int) (drawn, behind int) {
			d := shapes.Draw(cutaway.Pump{Build: build, Stages: stages}, cutaway.View{Prefix: "c", Sheet: sheet, Width: 1280})
			svg := d.Scene.SVG()
			at := strings.Index(svg, ` id="c-`+part+`"`)
			if at < 0 {
				return 0, d.Behind
			}
			group := svg[at : at+strings.Index(svg[at:], "</g>")]
			return strings.Count(group, "M"), d.Behind
		}
		for _, sheet := range []string{cutaway.Whole, cutaway.Bowls} {
			for _, part := range stacked {
				two, _ := outlines(sheet, part, 2)
				for _, stages := range []int{1, 2, 3, 8} {
					counted, known := countedAt(t, b, build, part, stages), countedAt(t, b, build, part, 2)
					drawn, behind := outlines(sheet, part, stages)
					if drawn*known != (counted-behind)*two {
						t.Errorf("%s, %s: the take-off of %d stages counts %d of %s; drawn are %d outlines, %d in the pump of two stages, %d stages lie behind", build, sheet, stages, counted, part, drawn, two, behind)
					}
				}
			}
		}
	}
}

// countedAt is how many of a part the take-off counts at a number of stages.
func countedAt(t *testing.T, b *book.Book, build, part string, stages int) int {
	t.Helper()
	facts := map[string]string{reckon.BuildTerm: build, "stages": strconv.Itoa(stages), "impeller-kind": "enclosed", "impeller-lock": "collet", "wear-rings": "bowl"}
	q := reckon.Question{Want: -1}
	value := 0
	for id, typed := range facts {
		term, ok := b.Engine.Find(id)
		if !ok {
			t.Fatalf("there is no term %s", id)
		}
		f, err := b.Engine.Read(term, typed)
		if err != nil {
			t.Fatalf("%s: %v", id, err)
		}
		if id == reckon.BuildTerm {
			value = int(f.Likely)
		}
		q.Facts = append(q.Facts, f)
	}
	n := 0.0
	for _, p := range assembly.Pieces(b.Engine.Reckon(q), b.Assembly.Of(value)).Pieces {
		if p.Line.Part == part {
			n += p.Count
		}
	}
	return int(n)
}

// stagesAreDrawnOrTold: the stages of the drawing and those behind its
// break line are as many as the pump has.
func stagesAreDrawnOrTold(t *testing.T, shapes *cutaway.Shapes) {
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
