package proof

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// What the message says to write must itself pass: an author who follows it is
// done.
func TestWrittenNumberPasses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-1e6, 1e6).Draw(t, "computed")
		decimals := rapid.IntRange(0, 6).Draw(t, "decimals")
		if rapid.Bool().Draw(t, "a tie") {
			p := math.Pow10(decimals)
			x = (math.Trunc(x*p) + 0.5) / p
		}
		written := strconv.FormatFloat(rapid.Float64Range(-1e6, 1e6).Draw(t, "expected"), 'f', decimals, 64) + " ft"
		out, same := digitsOf(x, written)
		if !unit.Same(x, out) {
			t.Errorf("%v is to be written %q, and that does not pass", x, out)
		}
		if same != unit.Same(x, written) {
			t.Errorf("%v and %q: same is %v", x, written, same)
		}
		if !strings.HasSuffix(out, " ft") {
			t.Errorf("the unit is lost in %q", out)
		}
	})
}

// The points of a comparison reach both ends of a range and stay inside it.
func TestSpread(t *testing.T) {
	for _, term := range []reckon.Term{
		{Low: 0, High: 3000},
		{Low: 0.001, High: 3000},
		{Low: -100, High: 100},
		{Term: formula.Term{Kind: formula.Count}, Low: 1, High: 60},
		{Term: formula.Term{Kind: formula.Choice, Values: []string{"a", "b", "c"}}, Low: 0, High: 2},
	} {
		if low, high := spread(&term, 0), spread(&term, 1); low != term.Low || math.Abs(high-term.High) > 1e-9*term.High {
			t.Errorf("from %v to %v, want %v to %v", low, high, term.Low, term.High)
		}
		for f := 0.0; f < 1; f += 0.01 {
			v := spread(&term, f)
			if v < term.Low-1e-12 || v > term.High*(1+1e-12) || term.Kind != formula.Quantity && v != math.Trunc(v) {
				t.Errorf("%v at %v, outside %v to %v", v, f, term.Low, term.High)
			}
		}
	}
}

// The points fill a square: each of 64 equal fields gets one of 256 points.
func TestEvenSteps(t *testing.T) {
	step := evenSteps(2)
	hit := map[[2]int]bool{}
	for n := range wantedPoints {
		x, y := frac(0.5+float64(n)*step[0]), frac(0.5+float64(n)*step[1])
		hit[[2]int{int(8 * x), int(8 * y)}] = true
	}
	if len(hit) != 64 {
		t.Errorf("the points reach %d of 64 fields", len(hit))
	}
}
