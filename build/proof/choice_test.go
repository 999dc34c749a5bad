package proof_test

import (
	"strconv"
	"strings"
	"testing"

	"columnbowl/calcwasm/choosing"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// orchard are the facts of Job 1, as they are typed.
var orchard = []string{"build", "oil-lubricated", "capacity", "800 gpm", "field-head", "336.0 ft", "column-loss", "6.39 ft", "head-loss", "0.61 ft", "static-level", "140 ft", "drawdown", "55 ft",
	"static-head", "265.95 ft", "setting", "240 ft", "casing-inside-diameter", "12 in", "temperature", "60 F", "altitude", "0 ft", "eye-height", "1 ft",
	"shaft-yield-strength", "50000 psi", "shaft-tensile-strength", "90000 psi"}

// ranked ranks the families of a book for facts; more facts replace those before.
func ranked(t testing.TB, b *reckon.Book, facts ...string) []*choosing.Candidate {
	t.Helper()
	return choosing.Rank(b, questionOf(t, b, facts...))
}

// questionOf reads facts as they are typed; more facts replace those before.
func questionOf(t testing.TB, b *reckon.Book, facts ...string) reckon.Question {
	t.Helper()
	q := reckon.Question{Want: -1}
	for i := 0; i < len(facts); i += 2 {
		term, ok := b.Find(facts[i])
		if !ok {
			t.Fatalf("there is no term %s", facts[i])
		}
		f, err := b.Read(term, facts[i+1])
		if err != nil {
			t.Fatalf("%s: %v", facts[i], err)
		}
		for k := range q.Facts {
			if q.Facts[k].Term == term {
				q.Facts = append(q.Facts[:k], q.Facts[k+1:]...)
				break
			}
		}
		q.Facts = append(q.Facts, f)
	}
	return q
}

// of finds a family in a ranking.
func of(t testing.TB, list []*choosing.Candidate, id string) *choosing.Candidate {
	t.Helper()
	for _, c := range list {
		if c.Bowl.ID == id {
			return c
		}
	}
	t.Fatalf("%s was not ranked", id)
	return nil
}

func with(facts []string, more ...string) []string {
	return append(append([]string(nil), facts...), more...)
}

// says tells whether a family has a reason of a kind with a text in it.
func says(c *choosing.Candidate, kind choosing.Kind, text string) bool {
	for _, r := range c.Reasons {
		if r.Kind == kind && (strings.Contains(r.US, text) || strings.Contains(r.SI, text)) {
			return true
		}
	}
	return false
}

// TestChoiceOrchard: 343.0 ft / 45.0 ft = 7.62, so 8 stages; 800 · 343.0 / (3960 ·
// 0.81) = 85.55 hp in the bowls with the trade's water, and water of 60 °F has
// 999.02 / 998.55 = 1.0005 of its weight: 85.59 hp; (12 - 9.50) / 2 = 1.25 in of room; Bittern 12
// has (12 - 11.50) / 2 = 0.25 in; Avocet 14 with 13.50 in does not go in; the
// curve of Turnstone 8 ends at 780 gpm.
func TestChoiceOrchard(t *testing.T) {
	list := ranked(t, handbook(t).Engine, orchard...)
	if len(list) != 6 || list[0].Bowl.ID != "lapwing-10" || list[0].Verdict() != choosing.Fits {
		t.Fatalf("first of %d is %s, %s", len(list), list[0].Bowl.ID, list[0].Verdict())
	}
	for id, want := range map[string]string{"stages": "8", "bowl-power": "85.59\u00a0hp", "casing-clearance": "1.25\u00a0in", "speed": "1770\u00a0rpm", "motor-rating": "100\u00a0hp"} {
		if got := list[0].Text(id, formula.US); got != want && got != strings.ReplaceAll(want, "\u00a0", " ") {
			t.Errorf("Lapwing 10: %s is %q, worked by hand %q", id, got, want)
		}
	}
	for _, want := range []struct {
		id   string
		kind choosing.Kind
		text string
	}{
		{"bittern-12", choosing.Against, "0.25"}, {"avocet-14", choosing.Decides, "13.5"}, {"turnstone-8", choosing.Decides, "780"},
		{"lapwing-10", choosing.For, "least power"}, {"bittern-12", choosing.Against, "more at the duty than Lapwing 10"},
	} {
		if c := of(t, list, want.id); !says(c, want.kind, want.text) {
			t.Errorf("%s has no reason %s with %q: %+v", want.id, want.kind, want.text, c.Reasons)
		}
	}
}

// TestChoiceTraps: Turnstone 8 turns at 3500 rpm and has its best flow at 600 gpm
// with 100 ft a stage. 282 ft are three stages; 300 gpm are half of its best flow and 400
// two thirds; with 450 psi its bowls hold 1039.5 ft: eight full stages make 8 · 138 =
// 1104 ft at shutoff, trimmed for 710 ft less than the limit; seven make 966 ft.
func TestChoiceTraps(t *testing.T) {
	submersible := []string{"build", "submersible", "capacity", "600 gpm", "total-head", "282 ft", "casing-inside-diameter", "12 in", "temperature", "60 F", "sand-content", "8 mg/L"}
	for _, want := range []struct {
		facts []string
		kind  choosing.Kind
		text  string
		holds bool
	}{
		{nil, choosing.Against, "With so few stages, 3", true},
		{[]string{"total-head", "390 ft"}, choosing.Against, "With so few stages", false},
		{nil, choosing.Against, "of sand", true},
		{[]string{"sand-content", "5 mg/L"}, choosing.Against, "of sand", false},
		{[]string{"least-capacity", "300 gpm"}, choosing.Against, "is half of its best flow", true},
		{[]string{"least-capacity", "400 gpm"}, choosing.Against, "is below 0.7 of its best flow", true},
		{[]string{"least-capacity", "420 gpm"}, choosing.Against, "The least flow", false},
		{[]string{"total-head", "710 ft"}, choosing.Against, "with full impellers", true},
		{[]string{"total-head", "690 ft"}, choosing.Against, "with full impellers", false},
		{nil, choosing.Unchecked, "passes the bend", false},
		{[]string{"well-shape", "crooked"}, choosing.Unchecked, "passes the bend", true},
		{[]string{"well-shape", "crooked"}, choosing.Against, "little in this crooked one", false}, // (12 - 7.5) / 2 = 2.25 in
		{[]string{"well-shape", "crooked", "casing-inside-diameter", "11.25 in"}, choosing.Against, "little in this crooked one", true},
		{[]string{"casing-inside-diameter", "11.25 in"}, choosing.Against, "little in this crooked one", false},
	} {
		c := of(t, ranked(t, handbook(t).Engine, with(submersible, want.facts...)...), "turnstone-8")
		if says(c, want.kind, want.text) != want.holds {
			t.Errorf("%v: a reason with %q is expected: %t; there are %+v", want.facts, want.text, want.holds, c.Reasons)
		}
	}
}

// TestChoiceOverload: the largest power of eight stages, about 90 hp, is more
// than a motor of 75 hp gives; one of 100 hp carries it.
func TestChoiceOverload(t *testing.T) {
	b := handbook(t).Engine
	if c := of(t, ranked(t, b, with(orchard, "motor-rating", "75 hp")...), "lapwing-10"); c.Verdict() != choosing.Out || !says(c, choosing.Decides, "overloads") {
		t.Errorf("75 hp: %s, %+v", c.Verdict(), c.Reasons)
	}
	if c := of(t, ranked(t, b, with(orchard, "motor-rating", "100 hp")...), "lapwing-10"); c.Verdict() != choosing.Fits {
		t.Errorf("100 hp: %s, %+v", c.Verdict(), c.Reasons)
	}
}

// TestChoiceNPSH: boiling water at sea level has no pressure to spare, so that
// only the water over the eye counts. Set at the pumping level, 195 ft, the eye
// lies (22 + 7 · 8.5) in = 6.79 ft lower less the 1 ft of the eye's height: 5.79
// ft, less 0.5 ft of suction loss 5.29 ft. Lapwing 10 asks for 9.9 ft. With 210
// ft it has 20.29 ft, a margin of 10.4 ft.
func TestChoiceNPSH(t *testing.T) {
	b := handbook(t).Engine
	c := of(t, ranked(t, b, with(orchard, "temperature", "212 F", "setting", "195 ft")...), "lapwing-10")
	have := c.Result.Values[mustFind(t, b, "npsh-available")].Likely / 0.3048
	if have < 5.0 || have > 5.6 || c.Verdict() != choosing.Out || !says(c, choosing.Decides, "cavitates") {
		t.Errorf("%.2f ft, worked by hand 5.29 ft; %s, %+v", have, c.Verdict(), c.Reasons)
	}
	c = of(t, ranked(t, b, with(orchard, "temperature", "212 F", "setting", "210 ft")...), "lapwing-10")
	if says(c, choosing.Decides, "cavitates") || !says(c, choosing.For, "asks for 9.9") {
		t.Errorf("210 ft: %+v", c.Reasons)
	}
}

func mustFind(t testing.TB, b *reckon.Book, id string) int {
	t.Helper()
	i, ok := b.Find(id)
	if !ok {
		t.Fatalf("there is no term %s", id)
	}
	return i
}

// TestChoiceThrustAndTrim: a bearing of 4000 lbf does not carry the eight
// stages; one stage for 26 ft of head would be cut below what the sheet allows.
func TestChoiceThrustAndTrim(t *testing.T) {
	b := handbook(t).Engine
	if c := of(t, ranked(t, b, with(orchard, "bearing-rating", "4000 lbf")...), "lapwing-10"); !says(c, choosing.Decides, "4000") {
		t.Errorf("%+v", c.Reasons)
	}
	low := with(orchard, "total-head", "26 ft", "static-head", "0 ft", "drawdown", "1 ft")
	if c := of(t, ranked(t, b, low...), "lapwing-10"); !says(c, choosing.Decides, "the sheet allows 0.85") {
		t.Errorf("%+v", c.Reasons)
	}
}

// TestChoiceLeavesOutOnePump: facts of one pump do not bend the ranking of all.
func TestChoiceLeavesOutOnePump(t *testing.T) {
	b := handbook(t).Engine
	plain := ranked(t, b, orchard...)
	bent := ranked(t, b, with(orchard, "bowl-family", "avocet-14", "stages", "3", "bowl-efficiency", "50 %", "curve-stage-head", "20 ft", "trim-ratio", "0.9")...)
	for i := range plain {
		for _, id := range choosing.Columns {
			if x, y := plain[i].Text(id, formula.US), bent[i].Text(id, formula.US); plain[i].Bowl.ID != bent[i].Bowl.ID || x != y {
				t.Errorf("%s, %s: %q became %q", plain[i].Bowl.ID, id, x, y)
			}
		}
	}
}

// TestChoiceUnknown: without a duty nothing is said to fit, and what is missing is told.
func TestChoiceUnknown(t *testing.T) {
	for _, c := range ranked(t, handbook(t).Engine, "capacity", "800 gpm") {
		if c.Verdict() != choosing.Unknown || len(c.Reasons) == 0 {
			t.Errorf("%s: %s, %+v", c.Bowl.ID, c.Verdict(), c.Reasons)
		}
	}
}

// TestChoiceCurves: every family draws in both systems and widths, and a place of
// the axis becomes a capacity: half of 1040 gpm is 520 gpm.
func TestChoiceCurves(t *testing.T) {
	words := choosing.Say(func(key string) string { return key })
	list := ranked(t, handbook(t).Engine, orchard...)
	for _, c := range list {
		for i := range 4 {
			p := words
			p.Prefix, p.Narrow, p.System = "t-", i > 1, formula.System(i%2)
			scene := c.Draw(p)
			if err := scene.Check(); err != nil {
				t.Errorf("%s: %v", c.Bowl.ID, err)
			}
			if svg := scene.SVG(); !strings.Contains(svg, reckon.Demonstration) || strings.Contains(svg, "left-out") {
				t.Errorf("%s: the drawing does not say that the family is invented, or left a shape out", c.Bowl.ID)
			}
		}
	}
	lapwing := of(t, list, "lapwing-10")
	for share, want := range map[float64]string{0.5: "520 gpm", -1: "5 gpm", 2: "1040 gpm"} {
		if got := lapwing.Move(share, formula.US); got != want {
			t.Errorf("%v of the axis is %q, not %q", share, got, want)
		}
	}
}

// TestChoiceTurns: Job 1 with 700 to 900 gpm. The places are compared with a
// search in steps of 4 gpm, each ranked by itself.
func TestChoiceTurns(t *testing.T) {
	b := handbook(t).Engine
	q := questionOf(t, b, with(orchard, "capacity", "700 to 900 gpm")...)
	turns := choosing.Turns(b, q)
	if len(turns) != 1 || b.Terms[turns[0].Fact].ID != "capacity" {
		t.Fatalf("%+v", turns)
	}
	turn := turns[0]
	text := func(gpm string) string {
		c := ranked(t, b, with(orchard, "capacity", gpm+" gpm")...)[0]
		return c.Bowl.ID + " " + c.Text("stages", formula.US) + " " + c.Text("motor-rating", formula.US)
	}
	place, now := 0, text("700")
	for gpm := 704; gpm <= 900; gpm += 4 {
		there := text(strconv.Itoa(gpm))
		if there == now {
			continue
		}
		if place == len(turn.At) {
			t.Fatalf("at %d gpm the choice turns to %s, which is not told: %s", gpm, there, turn.Text(b, formula.US))
		}
		if at := b.Terms[turn.Fact].US.FromSI(turn.At[place]); at < float64(gpm-4)-0.3 || at > float64(gpm)+0.3 {
			t.Errorf("the choice turns to %s between %d and %d gpm; told is %.1f", there, gpm-4, gpm, at)
		}
		place, now = place+1, there
	}
	if place != len(turn.At) {
		t.Errorf("told are %d places, found %d: %s", len(turn.At), place, turn.Text(b, formula.US))
	}
	t.Log(turn.Text(b, formula.US), "/", turn.Text(b, formula.SI))
}

func BenchmarkTurns(bench *testing.B) {
	b := handbook(bench).Engine
	q := questionOf(bench, b, with(orchard, "capacity", "700 to 900 gpm")...)
	for bench.Loop() {
		choosing.Turns(b, q)
	}
}
