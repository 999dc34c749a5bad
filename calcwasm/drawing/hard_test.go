package drawing

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// anyMark is a mark with any number, also none at all.
func anyMark(t *rapid.T, name string) Mark {
	v := rapid.OneOf(
		rapid.Float64Range(-50, 400),
		rapid.SampledFrom([]float64{0, math.Copysign(0, -1), math.NaN(), math.Inf(1), math.Inf(-1), 1e-300, 1e-9, 1e8, -1e8, 1e300}),
		rapid.Float64()).Draw(t, name)
	return Mark{Value: v, Known: rapid.IntRange(0, 4).Draw(t, name+" known") > 0, Name: name, Text: rapid.SampledFrom([]string{"", "12 ft", "a < b & \"c\""}).Draw(t, name+" text")}
}

// shapesInside is inside without words: words of any length may be long.
func shapesInside(s *Scene) (Box, bool) {
	c := &collector{}
	for _, it := range s.Items {
		if _, ok := it.(Text); !ok {
			it.span(c)
		}
	}
	v, slack := s.Box, 6.0
	return Box{c.x0, c.y0, c.x1 - c.x0, c.y1 - c.y0}, !c.any || c.x0 >= v.X-slack && c.y0 >= v.Y-slack && c.x1 <= v.X+v.W+slack && c.y1 <= v.Y+v.H+slack
}

// holds checks a scene made from any facts.
func holds(t *rapid.T, s *Scene) {
	if err := s.Check(); err != nil {
		t.Fatal(err)
	}
	if err := wellFormed(s); err != nil {
		t.Fatal(err)
	}
	if b, ok := shapesInside(s); !ok {
		t.Fatalf("shapes at %.1f leave the viewBox %.1f", b, s.Box)
	}
	if strings.Contains(s.SVG(), "data-left-out") {
		t.Fatal("a shape was left out")
	}
	if err := anyCrossing(calls(s.Items)); err != nil {
		t.Fatal(err)
	}
}

func anyLadder(t *rapid.T) Ladder {
	l := Ladder{Prefix: "l", Title: "t", Form: LadderForm(rapid.IntRange(0, 3).Draw(t, "form")), Lift: anyMark(t, "lift"), Field: anyMark(t, "field"),
		Total: anyMark(t, "total"), Stages: rapid.IntRange(-1, 500).Draw(t, "stages"), Foot: "foot", Datum: "datum", Level: "level"}
	for range rapid.IntRange(0, 6).Draw(t, "rungs") {
		l.Rungs = append(l.Rungs, Rung{anyMark(t, "rung"), RungKind(rapid.IntRange(0, 1).Draw(t, "kind"))})
	}
	return l
}

func anyWell(t *rapid.T) WellSection {
	w := WellSection{Prefix: "w", Narrow: rapid.Bool().Draw(t, "narrow"), Build: Build(rapid.IntRange(0, 2).Draw(t, "build")),
		Stages: Mark{Text: "8 stages"}, Shaft: Mark{Text: "oil"}, PressureSays: []string{"60 psi", "here"}, Datum: "datum"}
	for _, m := range []*Mark{&w.Static, &w.Pumping, &w.Drawdown, &w.Setting, &w.Bowls, &w.Bottom, &w.ScreenFrom, &w.ScreenTo, &w.Gauge, &w.Pressure} {
		*m = anyMark(t, "mark")
	}
	return w
}

func anyPower(t *rapid.T) PowerFlow {
	p := PowerFlow{Prefix: "p", Narrow: rapid.Bool().Draw(t, "narrow"), Build: Build(rapid.IntRange(0, 2).Draw(t, "build")), Share: "71 %", Cable: "cable"}
	for _, m := range []*Mark{&p.Depth, &p.Wire, &p.Motor, &p.Thrust, &p.Shaft, &p.Down, &p.Bowls, &p.Up, &p.Column, &p.Out} {
		*m = anyMark(t, "mark")
	}
	return p
}

func TestAnyFactsDraw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, w, p := anyLadder(t), anyWell(t), anyPower(t)
		holds(t, l.Layout())
		holds(t, w.Layout())
		holds(t, p.Layout())
		sc := ChainScale(w, l, rapid.SampledFrom([]float64{0, 600, 680, math.NaN()}).Draw(t, "height"))
		w.Scale, l.Scale, p.Scale = sc, sc, sc
		holds(t, l.Layout())
		holds(t, w.Layout())
		holds(t, p.Layout())
	})
}

func TestAnySlipsDraw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Slips{Prefix: "s", Right: anyMark(t, "right"), Narrow: rapid.Bool().Draw(t, "narrow"), Width: rapid.SampledFrom([]float64{0, -5, 100, 612, math.NaN(), 9999}).Draw(t, "width")}
		for range rapid.IntRange(0, 40).Draw(t, "n") {
			s.Wrong = append(s.Wrong, Slip{anyMark(t, "wrong"), "1"})
		}
		holds(t, s.Layout())
	})
}

// Same model, same bytes; the prefix keeps two drawings of a page apart.
func TestSameBytes(t *testing.T) {
	a, b := goldens(), goldens()
	for name := range a {
		if a[name].SVG() != b[name].SVG() {
			t.Errorf("%s differs from run to run", name)
		}
	}
	l := sampleLadder(LadderTerm)
	one := l.Layout()
	l.Prefix = "other"
	two := l.Layout().SVG()
	if strings.Contains(two, `"lad-`) || strings.Contains(two, "#lad-") || one.SVG() == two {
		t.Error("an id does not follow the prefix")
	}
}

func BenchmarkChain(b *testing.B) {
	w, l, p := sampleWell(), sampleLadder(LadderChain), samplePower()
	var buf []byte
	for b.Loop() {
		sc := ChainScale(w, l, 680)
		w.Scale, l.Scale, p.Scale = sc, sc, sc
		buf = AppendSVG(AppendSVG(AppendSVG(buf[:0], w.Layout()), l.Layout()), p.Layout())
	}
	b.ReportMetric(float64(len(buf)), "bytes/page")
}

// TestNumbersAreTheShortest compares the writer of numbers with the library's
// shortest decimals of the same hundredths.
func TestNumbersAreTheShortest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.OneOf(rapid.Float64Range(-3000, 3000), rapid.Float64Range(-1e12, 1e12)).Draw(t, "v")
		want := strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64)
		if want == "-0" {
			want = "0"
		}
		if got := string(appendNumber(nil, v)); got != want {
			t.Errorf("%v is written %s, want %s", v, got, want)
		}
	})
}
