package formula

import (
	"math"
	"strconv"
	"strings"

	"columnbowl/calcwasm/arith"
	"columnbowl/calcwasm/unit"
)

// Func is a function that expressions can call. Physics rooms give theirs with
// Params, Result and Eval; the notation's own ones check themselves.
type Func struct {
	Name   string
	Params []Param
	Result unit.Dim
	OneWay bool // forward only: it rounds, or reads a table

	// Eval computes the value from the arguments in SI. Where the computation
	// is not valid it returns the reason in words, complete, and any number.
	Eval func(args []float64) (value float64, invalid string)

	// OnPoints computes the value from the points of a family of bowls, over a flow,
	// and the arguments behind them; it stands in the place of Eval. Gives is the
	// dimension of what the points give.
	OnPoints func(line Line, args []float64) (value float64, invalid string)
	Gives    unit.Dim

	// Bound gives bounds of the value over intervals of the arguments, if it can:
	// nothing inside them may lie outside. Without it nothing is claimed.
	Bound func(call *Expr, args []Interval) (Interval, bool)

	points bool // takes pairs x: y
	smooth bool // a curve, not straight lines, joins the points
}

// Param is an argument of a Func.
type Param struct {
	Name string
	Dim  unit.Dim
}

func (f *Func) usage() string {
	names := make([]string, 0, len(f.Params)+1)
	if f.OnPoints != nil {
		names = append(names, "points")
	}
	for _, p := range f.Params {
		names = append(names, p.Name)
	}
	return f.Name + "(" + join(names, ", ") + ")"
}

var unknownFunc = &Func{Name: "?", points: true}

var (
	roundUp   = &Func{Name: "round-up", OneWay: true, Eval: evalRoundUp, Bound: boundMonotone}
	roundDown = &Func{Name: "round-down", OneWay: true, Eval: evalRoundDown, Bound: boundMonotone}
	// notNegative stands where a formula that takes a root was turned round: a root
	// is never negative, so that the inverse has no value for one that is. No author
	// can type its name, and it is not printed.
	notNegative = &Func{Name: "≥0", Eval: evalNotNegative, Bound: boundMonotone}
	ownFuncs    = []*Func{
		notNegative,
		{Name: "min", Eval: evalMin, Bound: boundMonotone},
		{Name: "max", Eval: evalMax, Bound: boundMonotone},
		{Name: "sqrt", Eval: evalSqrt, Bound: boundMonotone},
		{Name: "abs", Eval: evalAbs, Bound: boundAbs},
		roundUp, roundDown,
		{Name: "remainder", OneWay: true, Eval: evalRemainder},
		{Name: "table", OneWay: true, points: true, Bound: boundPoints},
		{Name: "curve", OneWay: true, points: true, smooth: true, Bound: boundPoints},
	}
)

func evalMin(a []float64) (float64, string) {
	m := a[0]
	for _, x := range a[1:] {
		m = math.Min(m, x)
	}
	return m, ""
}

func evalMax(a []float64) (float64, string) {
	m := a[0]
	for _, x := range a[1:] {
		m = math.Max(m, x)
	}
	return m, ""
}

func evalSqrt(a []float64) (float64, string) {
	if a[0] < 0 {
		return 0, "the square root of a negative number"
	}
	return math.Sqrt(a[0]), ""
}

func evalNotNegative(a []float64) (float64, string) {
	if a[0] < 0 {
		return 0, "a root is never negative"
	}
	return a[0], ""
}

func evalAbs(a []float64) (float64, string) { return math.Abs(a[0]), "" }

// whole is how near a number must be to a whole one to count as it: sums of
// converted units miss whole numbers by the last few bits.
const whole = 1e-9

func evalRoundUp(a []float64) (float64, string) {
	if r := math.Round(a[0]); math.Abs(a[0]-r) <= whole*math.Max(1, math.Abs(r)) {
		return r, ""
	}
	return math.Ceil(a[0]), ""
}

func evalRoundDown(a []float64) (float64, string) {
	if r := math.Round(a[0]); math.Abs(a[0]-r) <= whole*math.Max(1, math.Abs(r)) {
		return r, ""
	}
	return math.Floor(a[0]), ""
}

// evalRemainder is what is left of a[0] when a[1] is taken off it as often as it
// goes: 7 ft of 247 ft in pieces of 20 ft. It lies from 0 to below a[1]; a value
// that misses either end by the last few bits is 0. The step must be positive.
func evalRemainder(a []float64) (float64, string) {
	x, step := a[0], a[1]
	if step <= 0 {
		return 0, "the step that is taken off must be more than nothing"
	}
	n, _ := evalRoundDown([]float64{x / step})
	if left := x - float64(n*step); left > whole*math.Max(math.Abs(x), step) {
		return left, ""
	}
	return 0, ""
}

// lookUp reads a table (straight lines) or a curve (cubic pieces) at x. Outside
// the points it refuses.
func lookUp(e *Expr, x float64) (float64, bool) {
	pts := e.Points
	last := len(pts) - 1
	if !(x >= pts[0].X && x <= pts[last].X) {
		return math.NaN(), false
	}
	return arith.Along(pts, e.slopes, x), true
}

func pow(x, y float64) float64 {
	if y == 2 {
		return x * x
	}
	return arith.Pow(x, y)
}

// outOfPoints says that x lies outside a table or a curve. A value that prints
// like the end it has passed is printed in full.
func outOfPoints(e *Expr, x float64) string {
	u := e.Unit
	if u == nil {
		u = unitless
	}
	first, last := e.Points[0].X, e.Points[len(e.Points)-1].X
	text := unit.FormatWith(x, u)
	if text == unit.FormatWith(first, u) || text == unit.FormatWith(last, u) {
		text = strings.Replace(text, unit.Format(x, u), strconv.FormatFloat(u.FromSI(x), 'g', -1, 64), 1)
	}
	return "the " + e.Func.Name + " runs from " + unit.FormatWith(first, u) + " to " + unit.FormatWith(last, u) + ", and " + text + " is outside it"
}
