package proof_test

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"columnbowl/build/book"
	"columnbowl/calcwasm/assembly"
	"columnbowl/calcwasm/reckon"
)

// handbook is the book's own content, loaded once for the counts of its builds.
func handbook(t testing.TB) *book.Book {
	t.Helper()
	b, found := book.Load(os.DirFS("../../content"))
	if found.Errors() > 0 || b.Assembly == nil {
		t.Fatalf("the content does not load: %+v", found)
	}
	return b
}

// takeOff counts the pieces of a pump from facts as they are typed.
func takeOff(t testing.TB, b *book.Book, facts ...string) *assembly.List {
	t.Helper()
	q := reckon.Question{Want: -1}
	value := 0
	for i := 0; i < len(facts); i += 2 {
		term, ok := b.Engine.Find(facts[i])
		if !ok {
			t.Fatalf("there is no term %s", facts[i])
		}
		f, err := b.Engine.Read(term, facts[i+1])
		if err != nil {
			t.Fatalf("%s: %v", facts[i], err)
		}
		if facts[i] == reckon.BuildTerm {
			value = int(f.Likely)
		}
		q.Facts = append(q.Facts, f)
	}
	return assembly.Pieces(b.Engine.Reckon(q), b.Assembly.Of(value))
}

// number is how many of a part there are, specials and all.
func number(l *assembly.List, part string) int {
	n := 0.0
	for i := range l.Pieces {
		if l.Pieces[i].Line.Part == part {
			n += l.Pieces[i].Count
		}
	}
	return int(n)
}

var (
	quillbeck   = []string{"build", "oil-lubricated", "asked-setting", "240 ft", "section-length", "10 ft", "speed", "1770 rpm", "stages", "8"}
	quillbeck20 = []string{"build", "oil-lubricated", "asked-setting", "240 ft", "section-length", "20 ft", "speed", "1770 rpm", "stages", "8"}
	brindlecote = []string{"build", "water-lubricated", "asked-setting", "180 ft", "top-special-length", "10 ft", "speed", "1770 rpm", "stages", "5", "static-level", "85 ft", "pumping-level", "128 ft"}
	brindleFast = []string{"build", "water-lubricated", "asked-setting", "180 ft", "speed", "3500 rpm", "stages", "5"}
	fallowmere  = []string{"build", "submersible", "asked-setting", "340 ft", "section-length", "20 ft", "stages", "4", "surface-cable-length", "45 ft"}
)

// The counts were made by hand, by the rules of common practice, for the three
// pumps of the book and for two variants.
func TestCountsByHand(t *testing.T) {
	b := handbook(t)
	for _, c := range []struct {
		name  string
		facts []string
		want  map[string]int
	}{
		{"Quillbeck Orchard", quillbeck, map[string]int{"top-column-pipe": 1, "column-pipe": 23, "bottom-column-pipe": 1, "column-coupling": 24, "line-shaft": 25,
			"line-shaft-coupling": 26, "enclosing-tube": 48, "tube-connector-bearing": 47, "top-tube-bearing": 1, "tubing-adapter-bearing": 1, "tube-centring-spider": 6,
			"impeller": 8, "impeller-collet": 8, "intermediate-bowl": 7, "bowl-bearing": 7, "bowl-wear-ring": 8, "tube-tension-nut": 1, "oil-reservoir": 1,
			"bearing-retainer": 0, "packing-rings": 0, "double-bowl-seal": 0, "flanged-column-joint": 0, "drop-pipe": 0, "suction-strainer": 1, "suction-pipe": 1}},
		{"Quillbeck Orchard in sections of 20 ft", quillbeck20, map[string]int{"column-pipe": 11, "column-coupling": 12, "line-shaft": 13, "line-shaft-coupling": 14,
			"enclosing-tube": 48, "tube-connector-bearing": 47, "tube-centring-spider": 6}},
		{"Brindlecote", brindlecote, map[string]int{"column-pipe": 16, "column-coupling": 17, "bearing-retainer": 17, "line-shaft-bearing": 17, "shaft-sleeve": 17,
			"line-shaft": 18, "line-shaft-coupling": 19, "prelube-tank": 1, "intermediate-bowl": 4, "impeller": 5, "enclosing-tube": 0, "oil-reservoir": 0, "stuffing-box": 1}},
		{"Brindlecote at 3500 rpm", brindleFast, map[string]int{"column-pipe": 34, "column-coupling": 35, "bearing-retainer": 35, "line-shaft": 36, "line-shaft-coupling": 37}},
		{"Fallowmere", fallowmere, map[string]int{"drop-pipe": 17, "drop-pipe-coupling": 16, "check-valve": 2, "cable-strap": 72, "drop-cable": 1, "line-shaft": 0,
			"line-shaft-coupling": 0, "motor-pump-coupling": 1, "impeller": 4, "submersible-motor": 1, "cable-splice": 1}},
	} {
		l := takeOff(t, b, c.facts...)
		for part, want := range c.want {
			if got := number(l, part); got != want {
				t.Errorf("%s: %d of %s, by hand %d", c.name, got, part, want)
			}
		}
	}
	if l := takeOff(t, b, fallowmere...); math.Abs(l.Result.Values[find(t, b, "cable-length")].Likely-400*0.3048) > 1e-9 {
		t.Errorf("Fallowmere's cable is %v m long, by hand 400 ft", l.Result.Values[find(t, b, "cable-length")].Likely)
	}
}

func find(t testing.TB, b *book.Book, id string) int {
	t.Helper()
	i, ok := b.Engine.Find(id)
	if !ok {
		t.Fatalf("there is no term %s", id)
	}
	return i
}

// kinds are the columns that the handbook can make.
var kinds = []struct {
	build, section, speed string
	runs                  []string
}{
	{"water-lubricated", "5 ft", "3500 rpm", []string{"column", "shaft"}}, {"water-lubricated", "10 ft", "1770 rpm", []string{"column", "shaft"}},
	{"oil-lubricated", "5 ft", "3500 rpm", []string{"column", "shaft", "tube"}}, {"oil-lubricated", "10 ft", "1770 rpm", []string{"column", "shaft", "tube"}},
	{"oil-lubricated", "20 ft", "1770 rpm", []string{"column", "shaft", "tube"}},
	{"submersible", "10 ft", "3500 rpm", []string{"riser"}}, {"submersible", "20 ft", "3500 rpm", []string{"riser"}}, {"submersible", "21 ft", "3500 rpm", []string{"riser"}},
}

// Every setting from 20 to 1000 ft, in every build and every section length:
// never shorter than asked, less than a step longer, the pieces come out to the
// made setting, and the counts fit each other.
func TestEverySettingComesOut(t *testing.T) {
	b := handbook(t)
	for _, k := range kinds {
		for feet := 20; feet <= 1000; feet++ {
			l := takeOff(t, b, "build", k.build, "section-length", k.section, "speed", k.speed, "stages", "3", "asked-setting", strconv.Itoa(feet)+" ft")
			if message := fits(b, l, float64(feet)*0.3048, k.runs); message != "" {
				t.Fatalf("%s, sections of %s, %d ft asked: %s", k.build, k.section, feet, message)
			}
		}
	}
}

// The same for settings asked to the hundredth of a foot, and for other lengths
// of adapter, nipple and top special.
func TestAnySettingComesOut(t *testing.T) {
	b := handbook(t)
	rapid.Check(t, func(r *rapid.T) {
		k := kinds[rapid.IntRange(0, len(kinds)-1).Draw(r, "kind")]
		cents := rapid.IntRange(2000, 100000).Draw(r, "hundredths of a foot")
		facts := []string{"build", k.build, "section-length", k.section, "speed", k.speed, "stages", "3",
			"asked-setting", strconv.FormatFloat(float64(cents)/100, 'f', 2, 64) + " ft"}
		if k.build != "submersible" {
			facts = append(facts, "column-adapter-length", strconv.Itoa(rapid.IntRange(0, 12).Draw(r, "adapter"))+" in",
				"adjusting-nipple-length", strconv.Itoa(rapid.IntRange(0, 12).Draw(r, "nipple"))+" in")
			if rapid.Bool().Draw(r, "own top") {
				facts = append(facts, "top-special-length", rapid.SampledFrom([]string{"2.5 ft", "5 ft", "10 ft"}).Draw(r, "top"))
			}
		}
		l := takeOff(t, b, facts...)
		if message := fits(b, l, float64(cents)*0.003048, k.runs); message != "" {
			r.Fatalf("%v: %s", facts, message)
		}
	})
}

// fits says what is wrong with a take-off for a setting asked in metres.
func fits(b *book.Book, l *assembly.List, asked float64, runs []string) string {
	env := l.Result.Env()
	made := env.Values[l.Build.Made]
	if step := 5 * 0.3048; made < asked-1e-9 || made-asked >= step {
		return "made " + strconv.FormatFloat(made/0.3048, 'g', -1, 64) + " ft"
	}
	if len(l.Runs) != len(runs) {
		return "not every run is there"
	}
	for i, r := range l.Runs {
		if r.Name != runs[i] || math.Abs(r.Length-made) > 1e-9*made || !r.Agrees {
			return "the run " + r.Name + " comes to " + strconv.FormatFloat(r.Length/0.3048, 'g', -1, 64) + " ft"
		}
	}
	for i := range l.Pieces {
		if p := &l.Pieces[i]; p.Wrong != "" || p.Count < 0 || p.Length <= 0 {
			return p.Line.Part + " " + p.Line.Label + " is wrong: " + p.Wrong
		}
	}
	return counts(l)
}

// counts says which numbers of pieces do not fit each other.
func counts(l *assembly.List) string {
	n := func(parts ...string) int {
		sum := 0
		for _, p := range parts {
			sum += number(l, p)
		}
		return sum
	}
	pipes := n("top-column-pipe", "column-pipe", "bottom-column-pipe", "drop-pipe")
	switch l.Build.ID {
	case "submersible":
		if n("drop-pipe-coupling") != pipes-1 || n("line-shaft") != 0 || n("check-valve") < 1 {
			return "the riser's joints do not fit its pipes"
		}
		return ""
	case "water-lubricated":
		if n("bearing-retainer") != pipes-1 || n("line-shaft-bearing") != pipes-1 {
			return "the retainers do not fit the pipes"
		}
	case "oil-lubricated":
		if n("tube-connector-bearing") != n("enclosing-tube")-1 {
			return "the bearings do not fit the tubes"
		}
	}
	if n("column-coupling") != pipes-1 || n("line-shaft") != pipes || n("line-shaft-coupling") != pipes+1 {
		return "couplings and shafts do not fit the pipes"
	}
	return ""
}

// What hangs on the hook is what the pieces weigh together: the two ways to it
// are written apart, in the terms and in the builds.
func TestPiecesWeighWhatHangsOnTheHook(t *testing.T) {
	b := handbook(t)
	for name, facts := range map[string][]string{
		"Quillbeck Orchard": append(quillbeck, "column-size", "8 in", "tube-size", "2.5 in", "shaft-diameter", "1.6875 in", "bowl-weight", "900 lb", "column-adapter-length", "5 in"),
		"at 245 ft":         append(quillbeck20[:2:2], "asked-setting", "245 ft", "section-length", "20 ft", "speed", "1770 rpm", "column-size", "8 in", "tube-size", "2.5 in", "shaft-diameter", "1.6875 in", "bowl-weight", "900 lb"),
		"Brindlecote":       append(brindlecote, "column-size", "10 in", "shaft-diameter", "1.9375 in", "bowl-weight", "1087 lb"),
		"Fallowmere":        append(fallowmere, "column-size", "6 in", "bowl-weight", "264 lb", "motor-weight", "600 lb"),
		"with a nipple":     append(fallowmere[:2:2], "asked-setting", "333 ft", "stages", "4", "surface-cable-length", "45 ft", "column-size", "6 in", "bowl-weight", "264 lb", "motor-weight", "600 lb"),
	} {
		l := takeOff(t, b, facts...)
		sum := 0.0
		for _, m := range l.GroupMass {
			if m == m {
				sum += m
			}
		}
		dry := l.Result.Values[find(t, b, "hook-weight-dry")].Likely
		if !(math.Abs(sum-dry) <= 1e-9*dry) {
			t.Errorf("%s: the pieces weigh %v kg, and %v kg hang on the hook", name, sum, dry)
		}
	}
}

// Combinations that cannot be made are refused by the name of a caution.
func TestRefusals(t *testing.T) {
	b := handbook(t)
	for _, c := range []struct {
		facts []string
		names string
	}{
		{append(quillbeck, "column-size", "8 in", "tube-size", "2.5 in", "shaft-diameter", "1.6875 in"), ""},
		{append(quillbeck, "column-size", "4 in", "tube-size", "3 in", "shaft-diameter", "1.6875 in"), "tube-outside-diameter/does-not-go-in"},
		{append(quillbeck, "tube-size", "1.5 in", "shaft-diameter", "1.6875 in"), "tube-size/shaft-too-big-for-the-tube"},
		{append(quillbeck, "bearing-spacing", "10 ft"), "bearing-spacing/enclosed-shaft-over-five-feet"},
		{append(quillbeck, "column-adapter-length", "36 in", "adjusting-nipple-length", "24 in"), "top-special-length/no-room-for-the-top-pipe"},
		{append(brindleFast, "section-length", "10 ft"), "column-pipes/a-bearing-in-every-joint"},
		{append(brindleFast, "bearing-spacing", "10 ft"), "bearing-spacing/too-far-apart"},
		{append(brindlecote, "section-length", "20 ft", "bearing-spacing", "20 ft"), "bearing-spacing/open-shaft-over-ten-feet"},
		{append(brindlecote, "shaft-diameter", "1 in", "field-power", "115 hp"), "shaft-diameter/over-the-published-power"},
		{append(brindlecote, "shaft-diameter", "1 in", "total-thrust", "9000 lbf"), "shaft-diameter/over-the-published-thrust"},
		{append(fallowmere, "motor-outside-diameter", "12 in", "casing-inside-diameter", "12 in"), "motor-outside-diameter/does-not-fit"},
		{append(fallowmere, "bowl-outside-diameter", "11.5 in", "casing-inside-diameter", "10 in"), "bowl-outside-diameter/does-not-go-in"},
		{append(fallowmere, "well-depth", "300 ft"), "setting/deeper-than-the-well"},
	} {
		l := takeOff(t, b, c.facts...)
		var names []string
		for _, r := range l.Refused {
			names = append(names, b.Engine.Cautions[r].ID)
		}
		if got := strings.Join(names, " "); got != c.names {
			t.Errorf("%v: refused for “%s”, should be for “%s”", c.facts, got, c.names)
		}
	}
}

// What is asked for is enough: with an answer to each question nothing is wanting.
func TestAsksAreEnough(t *testing.T) {
	b := handbook(t)
	answers := map[string]string{"asked-setting": "237 ft", "column-size": "8 in", "shaft-diameter": "1.6875 in", "tube-size": "2.5 in", "stages": "4", "speed": "1770 rpm",
		"bowl-weight": "900 lb", "bowl-family": "lapwing-10", "static-level": "85 ft", "prelubrication": "tank", "surface-cable-length": "45 ft", "motor-weight": "600 lb"}
	for _, build := range []string{"water-lubricated", "oil-lubricated", "submersible"} {
		facts := []string{"build", build}
		for _, term := range takeOff(t, b, facts...).Asks() {
			id := b.Engine.Terms[term].ID
			if answers[id] == "" {
				t.Fatalf("%s: it asks for %s", build, id)
			}
			facts = append(facts, id, answers[id])
		}
		l := takeOff(t, b, facts...)
		if asks := l.Asks(); len(asks) > 0 || !l.Result.Known(find(t, b, "hook-weight-full")) || len(facts) < 12 {
			t.Errorf("%s: with %v it still asks for %v", build, facts, asks)
		}
	}
}

// A setting that was typed and that whole sections do not make is told once, by
// its caution; that sections make it longer is told only where they do.
func TestNoWholeStepIsToldOnce(t *testing.T) {
	b := handbook(t)
	for _, build := range []string{"water-lubricated", "oil-lubricated", "submersible"} {
		for typed, want := range map[string]string{"237 ft": "setting/no-whole-step", "240 ft": "note", "235 ft": "", "": "note"} {
			facts := []string{"build", build, "section-length", "10 ft", "speed", "1770 rpm", "stages", "3", "asked-setting", "235.5 ft"}
			if typed == "235 ft" {
				facts[len(facts)-1] = typed
			}
			if typed != "" {
				facts = append(facts, "setting", typed)
			}
			l := takeOff(t, b, facts...)
			var told []string
			for _, c := range l.Cautions() {
				if id := b.Engine.Cautions[c].ID; strings.Contains(id, "no-whole") {
					told = append(told, id)
				}
			}
			for _, n := range l.Notes {
				if strings.Contains(n, "whole sections") {
					told = append(told, "note")
				}
			}
			if got := strings.Join(told, " "); got != want {
				t.Errorf("%s, setting typed %q: told %q, should be %q", build, typed, got, want)
			}
		}
	}
}
