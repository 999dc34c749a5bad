package formula

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawShape draws the text of an expression over the letters.
func drawShape(t *rapid.T, depth int, only string) string {
	leaf := func() string {
		if rapid.IntRange(0, 4).Draw(t, "number") == 0 {
			return fmt.Sprint(rapid.IntRange(0, 9).Draw(t, "n"))
		}
		return rapid.SampledFrom([]string{"a", "b", "c", "d"}).Draw(t, "term")
	}
	if depth == 0 {
		return leaf()
	}
	part := func() string { return drawShape(t, depth-1, only) }
	kinds := []string{"+", "-", "*", "/"}
	if only == "" {
		kinds = append(kinds, "leaf", "neg", "^2", "^3", "^4", "^0.5", "^-1", "min", "max", "sqrt", "abs", "up", "down", "table", "curve", "power")
	}
	switch k := rapid.SampledFrom(kinds).Draw(t, "kind"); k {
	case "leaf":
		return leaf()
	case "neg":
		return "(-" + part() + ")"
	case "^2", "^3", "^4", "^0.5", "^-1":
		return "(" + part() + ") ^ " + k[1:]
	case "power":
		return "(" + part() + ") ^ (" + part() + ")"
	case "min", "max":
		return k + "(" + part() + ", " + part() + ")"
	case "sqrt", "abs":
		return k + "(" + part() + ")"
	case "up", "down":
		return "round-" + k + "(" + part() + ")"
	case "table", "curve":
		return k + "(" + part() + ", -9: 3, -2: 8, 1: 1, 4: 1, 30: -5)"
	default:
		return "(" + part() + " " + k + " " + part() + ")"
	}
}

func parseDrawn(t *rapid.T, src string) *Expr {
	e, err := ParseExpr(src, letters)
	if err != nil {
		t.Fatalf("%q should parse: %v", src, err)
	}
	return e
}

// drawBox draws intervals for the terms and a place inside them.
func drawBox(t *rapid.T) ([]Interval, *Env) {
	box, v := make([]Interval, letters.Len()), NewEnv(letters)
	for i := range box {
		x := rapid.Float64Range(-5, 5).Draw(t, "end")
		y := rapid.Float64Range(-5, 5).Draw(t, "other end")
		if rapid.IntRange(0, 4).Draw(t, "point") == 0 {
			y = x
		}
		box[i] = Interval{min(x, y), max(x, y)}
		v.Values[i] = math.Min(box[i].High, box[i].Low+rapid.Float64Range(0, 1).Draw(t, "where")*(box[i].High-box[i].Low))
	}
	return box, v
}

// No combination of values inside the intervals lies outside the bounds.
func TestBoundsHoldAllValues(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		src := drawShape(t, rapid.IntRange(0, 3).Draw(t, "depth"), "")
		e := parseDrawn(t, src)
		box, v := drawBox(t)
		b := e.Bounds(box)
		if !b.known() {
			return
		}
		if b.Low > b.High {
			t.Fatalf("%s: bounds upside down: %v", src, b)
		}
		y := e.Eval(v)
		slack := 1e-9 * (1 + math.Max(math.Abs(b.Low), math.Abs(b.High)))
		if y == y && (y < b.Low-slack || y > b.High+slack) {
			t.Fatalf("%s is %v with %v, outside %v of %v", src, y, v.Values[:4], b, box[:4])
		}
	})
}

// With + - * / the bounds hold to the last bit: machine arithmetic never falls
// when an operand rises, so that ends computed like values enclose them.
func TestBoundsOfArithmeticHoldToTheLastBit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		src := drawShape(t, rapid.IntRange(1, 3).Draw(t, "depth"), "arithmetic")
		e := parseDrawn(t, src)
		box, v := drawBox(t)
		b, y := e.Bounds(box), e.Eval(v)
		if y == y && b.known() && (y < b.Low || y > b.High) {
			t.Fatalf("%s is %v with %v, outside %v", src, y, v.Values[:4], b)
		}
	})
}

func TestBoundsOfPlainCases(t *testing.T) {
	box := make([]Interval, letters.Len())
	copy(box, []Interval{{-1, 2}, {3, 4}, {-3, -2}, {math.NaN(), math.NaN()}, {0, 9}})
	for _, c := range []struct {
		src       string
		low, high float64
	}{
		{"7", 7, 7}, {"a", -1, 2}, {"-a", -2, 1}, {"a + b", 2, 6}, {"a - b", -5, -1}, {"a * b", -4, 8}, {"a * c", -6, 3}, {"b * c", -12, -6},
		{"b / c", -2, -1}, {"1 / b", 0.25, 1.0 / 3}, {"a ^ 2", 0, 4}, {"c ^ 2", 4, 9}, {"b ^ 2", 9, 16}, {"a ^ 3", -1, 8}, {"a ^ 4", 0, 16}, {"a ^ 6", 0, 64},
		{"b ^ -1", 0.25, 1.0 / 3}, {"sqrt(e)", 0, 3}, {"e ^ 0.5", 0, 3}, {"b[%]", 300, 400},
		{"min(a, b)", -1, 2}, {"max(a, c)", -1, 2}, {"abs(a)", 0, 2}, {"abs(c)", 2, 3}, {"round-up(a / 3)", 0, 1}, {"round-down(a / 3)", -1, 0},
		{"table(a, -1: 0, 0: 5, 1: -5, 2: 1)", -5, 5}, {"curve(b, 3: 1, 3.5: 7, 4: 2)", 1, 7},
	} {
		got := expression(t, letters, c.src).Bounds(box)
		if !close(got.Low, c.low, 1e-12) || !close(got.High, c.high, 1e-12) {
			t.Errorf("%s runs from %v to %v, should run from %v to %v", c.src, got.Low, got.High, c.low, c.high)
		}
	}
	for _, src := range []string{"d", "a + d", "min(a, d)", "1 / a", "b / a", "sqrt(a)", "a ^ 0.5", "a ^ -1", "a ^ b", "table(a, 0: 1, 1: 2)", "table(d, 0: 1, 1: 2)", "sqrt(d)"} {
		if got := expression(t, letters, src).Bounds(box); got.known() {
			t.Errorf("%s runs from %v to %v; nothing can be said of it", src, got.Low, got.High)
		}
	}
}

// A negative number has powers at whole exponents only, and of both signs.
func TestBoundsOfNegativeToAnInterval(t *testing.T) {
	box := make([]Interval, letters.Len())
	box[0], box[1] = Interval{-2, -2}, Interval{1, 3}
	v := NewEnv(letters)
	v.Values[0], v.Values[1] = -2, 2
	e := expression(t, letters, "a ^ b")
	if b := e.Bounds(box); b.known() && b.High < e.Eval(v) {
		t.Errorf("(-2)^2 = %v lies outside the bounds %v of (-2)^(1 … 3)", e.Eval(v), b)
	}
}

// A function of the physics need not rise or fall all the way.
func TestBoundsOfAFunctionWithADip(t *testing.T) {
	dip := &Func{Name: "dip", Params: []Param{{Name: "x"}}, Eval: func(a []float64) (float64, string) { return (a[0] - 0.25) * (a[0] - 0.25), "" }}
	s := NewScope([]Term{{ID: "a", Name: "a", US: mustLookup("1"), SI: mustLookup("1")}}, []*Func{dip})
	b := expression(t, s, "dip(a)").Bounds([]Interval{{0, 1}})
	if b.known() && b.Low > 0 {
		t.Errorf("dip(0.25) is 0, outside the bounds %v over 0 … 1", b)
	}
}

func TestBoundsDoNotPanicOnOddIntervals(t *testing.T) {
	ends := []float64{math.NaN(), math.Inf(-1), -math.MaxFloat64, -1, 0, math.SmallestNonzeroFloat64, 1, math.MaxFloat64, math.Inf(1)}
	rapid.Check(t, func(t *rapid.T) {
		e := parseDrawn(t, drawShape(t, 3, ""))
		box := make([]Interval, letters.Len())
		for i := range box {
			box[i] = Interval{rapid.SampledFrom(ends).Draw(t, "low"), rapid.SampledFrom(ends).Draw(t, "high")}
		}
		if b := e.Bounds(box); b.known() && b.Low > b.High && box[0].Low <= box[0].High && box[1].Low <= box[1].High && box[2].Low <= box[2].High && box[3].Low <= box[3].High {
			t.Fatalf("bounds upside down: %v", b)
		}
	})
}
