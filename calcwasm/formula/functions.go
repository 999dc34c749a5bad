package formula

import (
	"math"
	"strconv"

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

	points bool                                            // takes pairs x: y
	check  func(p *parser, e *Expr) unit.Dim               // own rule for arguments and result
	bound  func(e *Expr, args []Interval) (Interval, bool) // tight bounds, if known
}

// Param is an argument of a Func.
type Param struct {
	Name string
	Dim  unit.Dim
}

func (f *Func) usage() string {
	names := make([]string, len(f.Params))
	for i, p := range f.Params {
		names[i] = p.Name
	}
	return f.Name + "(" + join(names, ", ") + ")"
}

var unknownFunc = &Func{Name: "?", points: true}

var (
	roundUp   = &Func{Name: "round-up", OneWay: true, check: checkRound, Eval: evalRoundUp, bound: boundMonotone}
	roundDown = &Func{Name: "round-down", OneWay: true, check: checkRound, Eval: evalRoundDown, bound: boundMonotone}
	ownFuncs  = []*Func{
		{Name: "min", check: checkAlike, Eval: evalMin, bound: boundMonotone},
		{Name: "max", check: checkAlike, Eval: evalMax, bound: boundMonotone},
		{Name: "sqrt", check: checkSqrt, Eval: evalSqrt, bound: boundMonotone},
		{Name: "abs", check: checkOne, Eval: evalAbs, bound: boundAbs},
		roundUp, roundDown,
		{Name: "table", OneWay: true, points: true, check: checkPoints, bound: boundPoints},
		{Name: "curve", OneWay: true, points: true, check: checkCurve, bound: boundPoints},
	}
)

func checkAlike(p *parser, e *Expr) unit.Dim {
	if len(e.Args) < 2 {
		p.failExpr(e, e.Func.Name+"(a, b) compares two values or more.", "")
		return unit.Dim{}
	}
	for _, a := range e.Args[1:] {
		if a.Dim != e.Args[0].Dim {
			p.failExpr(a, p.text(e.Args[0])+" is "+dimWord(e.Args[0].Dim)+" and "+p.text(a)+" "+dimWord(a.Dim)+": they cannot be compared.", "")
		}
	}
	return e.Args[0].Dim
}

func checkOne(p *parser, e *Expr) unit.Dim {
	if len(e.Args) != 1 {
		p.failExpr(e, e.Func.Name+"(x) takes one value.", "")
		return unit.Dim{}
	}
	return e.Args[0].Dim
}

func checkSqrt(p *parser, e *Expr) unit.Dim {
	d, ok := checkOne(p, e).Pow(1, 2)
	if !ok {
		p.failExpr(e, "The root of "+p.text(e)+" has no meaning here.", "")
	}
	return d
}

func checkRound(p *parser, e *Expr) unit.Dim {
	d := checkOne(p, e)
	if !d.IsNone() {
		p.failExpr(e, e.Func.Name+"(x) makes a whole number: take the bare number of the quantity, name[unit].", "")
	}
	return d
}

// checkPoints turns the arguments behind the first one into points.
func checkPoints(p *parser, e *Expr) unit.Dim {
	n := len(e.Points)
	if len(e.Args) != 1+2*n || n < 2 {
		p.failExpr(e, e.Func.Name+"(x, x1: y1, x2: y2, …) takes one value and two points or more.", "")
		return unit.Dim{}
	}
	x, y := e.Args[0].Dim, e.Args[2].Dim
	for i := range e.Points {
		a, b := e.Args[1+2*i], e.Args[2+2*i]
		ax, oka := constant(a)
		by, okb := constant(b)
		switch {
		case !oka || !okb:
			p.failExpr(a, "A point is a pair of plain numbers with units.", "")
		case a.Dim != x:
			p.failExpr(a, p.text(a)+" is "+dimWord(a.Dim)+", the value looked up is "+dimWord(x)+".", "")
		case b.Dim != y:
			p.failExpr(b, p.text(b)+" is "+dimWord(b.Dim)+", the first point has "+dimWord(y)+".", "")
		case i > 0 && ax <= e.Points[i-1].X:
			p.failExpr(a, "The points must rise: "+p.text(a)+" is not beyond the point before it.", "")
		}
		e.Points[i] = Point{ax, by}
	}
	e.Args = e.Args[:1]
	return y
}

func checkCurve(p *parser, e *Expr) unit.Dim {
	d := checkPoints(p, e)
	if len(p.errors) == 0 {
		e.slopes = monotoneSlopes(e.Points)
	}
	return d
}

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

// lookUp reads a table (straight lines) or a curve (cubic pieces) at x. Outside
// the points it refuses.
func lookUp(e *Expr, x float64) (float64, bool) {
	pts := e.Points
	last := len(pts) - 1
	if !(x >= pts[0].X && x <= pts[last].X) {
		return math.NaN(), false
	}
	i := 1
	for i < last && x > pts[i].X {
		i++
	}
	a, b := pts[i-1], pts[i]
	h := b.X - a.X
	t := (x - a.X) / h
	if e.slopes == nil {
		return a.Y + float64(t*(b.Y-a.Y)), true
	}
	t2 := float64(t * t)
	t3 := float64(t2 * t)
	h00 := float64(2*t3) - float64(3*t2) + 1
	h10 := t3 - float64(2*t2) + t
	h01 := float64(3*t2) - float64(2*t3)
	h11 := t3 - t2
	return float64(h00*a.Y) + float64(float64(h10*h)*e.slopes[i-1]) + float64(h01*b.Y) + float64(float64(h11*h)*e.slopes[i]), true
}

// monotoneSlopes are the slopes of a shape-preserving cubic through the points:
// F. N. Fritsch and J. Butland, A method for constructing local monotone
// piecewise cubic interpolants, SIAM J. Sci. Stat. Comput. 5 (1984), with the
// weighted harmonic mean inside and the one-sided three-point rule at the ends.
func monotoneSlopes(pts []Point) []float64 {
	n := len(pts)
	h := make([]float64, n-1)
	d := make([]float64, n-1)
	for i := range h {
		h[i] = pts[i+1].X - pts[i].X
		d[i] = (pts[i+1].Y - pts[i].Y) / h[i]
	}
	m := make([]float64, n)
	if n == 2 {
		m[0], m[1] = d[0], d[0]
		return m
	}
	for i := 1; i < n-1; i++ {
		if d[i-1]*d[i] <= 0 {
			continue
		}
		w1, w2 := float64(2*h[i])+h[i-1], h[i]+float64(2*h[i-1])
		m[i] = (w1 + w2) / (w1/d[i-1] + w2/d[i])
	}
	m[0] = endSlope(h[0], h[1], d[0], d[1])
	m[n-1] = endSlope(h[n-2], h[n-3], d[n-2], d[n-3])
	return m
}

func endSlope(h0, h1, d0, d1 float64) float64 {
	s := (float64((float64(2*h0)+h1)*d0) - float64(h0*d1)) / (h0 + h1)
	switch {
	case s*d0 <= 0:
		return 0
	case d0*d1 <= 0 && math.Abs(s) > 3*math.Abs(d0):
		return 3 * d0
	}
	return s
}

func pow(x, y float64) float64 {
	if y == 2 {
		return x * x
	}
	return arith.Pow(x, y)
}

func outOfPoints(e *Expr, x float64) string {
	u := e.Args[0].Unit
	first, last := e.Points[0].X, e.Points[len(e.Points)-1].X
	number := func(v float64) string {
		if u != nil {
			return unit.FormatWith(v, u)
		}
		return strconv.FormatFloat(v, 'g', 4, 64)
	}
	return "the " + e.Func.Name + " runs from " + number(first) + " to " + number(last) + ", and " + number(x) + " is outside it"
}
