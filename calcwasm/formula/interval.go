package formula

import "math"

// Interval is all values from Low to High.
type Interval struct{ Low, High float64 }

// Bounds computes bounds of an expression over intervals of its terms: no
// combination of values inside them can lie outside. They may be wider than
// needed where a term occurs more than once. Not known is NaN in both ends.
func (e *Expr) Bounds(terms []Interval) Interval {
	switch e.Op {
	case Number, Word:
		return Interval{e.Value, e.Value}
	case Ref:
		return terms[e.Term]
	case Bare:
		t := terms[e.Term]
		return Interval{e.Unit.FromSI(t.Low), e.Unit.FromSI(t.High)}
	case In:
		t := e.X.Bounds(terms)
		return Interval{e.Unit.ToSI(t.Low), e.Unit.ToSI(t.High)}
	case Neg:
		t := e.X.Bounds(terms)
		return Interval{-t.High, -t.Low}
	case Add, Sub, Mul, Div:
		return arithmetic(e.Op, e.X.Bounds(terms), e.Y.Bounds(terms))
	case Pow:
		return power(e.X.Bounds(terms), e.Y.Bounds(terms))
	case Call:
		return e.boundCall(terms)
	}
	return unknownInterval
}

var unknownInterval = Interval{math.NaN(), math.NaN()}

func (i Interval) known() bool { return i.Low == i.Low && i.High == i.High }

func arithmetic(op Op, x, y Interval) Interval {
	switch op {
	case Add:
		return Interval{x.Low + y.Low, x.High + y.High}
	case Sub:
		return Interval{x.Low - y.High, x.High - y.Low}
	case Div:
		if y.Low <= 0 && y.High >= 0 {
			return unknownInterval
		}
		return hull(x.Low/y.Low, x.Low/y.High, x.High/y.Low, x.High/y.High)
	}
	return hull(x.Low*y.Low, x.Low*y.High, x.High*y.Low, x.High*y.High)
}

func hull(values ...float64) Interval {
	r := Interval{values[0], values[0]}
	for _, v := range values[1:] {
		r = Interval{math.Min(r.Low, v), math.Max(r.High, v)}
	}
	return r
}

// power bounds a power. A negative base has one only for a fixed whole
// exponent; an even one turns back at zero.
func power(x, y Interval) Interval {
	if x.Low < 0 && (y.Low != y.High || y.Low != math.Trunc(y.Low)) || x.Low <= 0 && x.High >= 0 && y.Low < 0 {
		return unknownInterval
	}
	r := hull(pow(x.Low, y.Low), pow(x.Low, y.High), pow(x.High, y.Low), pow(x.High, y.High))
	if x.Low < 0 && x.High > 0 && math.Mod(y.Low, 2) == 0 {
		r.Low = 0
	}
	return r
}

func (e *Expr) boundCall(terms []Interval) Interval {
	args := make([]Interval, len(e.Args))
	for i, a := range e.Args {
		args[i] = a.Bounds(terms)
		if !args[i].known() {
			return unknownInterval
		}
	}
	if e.Func.Bound != nil && e.hole == "" {
		if r, ok := e.Func.Bound(e, args); ok {
			return r
		}
	}
	return unknownInterval
}

// boundMonotone bounds a function that never falls when an argument rises.
func boundMonotone(e *Expr, args []Interval) (Interval, bool) {
	low, high := make([]float64, len(args)), make([]float64, len(args))
	for i, a := range args {
		low[i], high[i] = a.Low, a.High
	}
	a, invalidA := e.Func.Eval(low)
	b, invalidB := e.Func.Eval(high)
	return Interval{a, b}, invalidA == "" && invalidB == ""
}

// boundPoints bounds a table or a curve: between two points both are monotone,
// so that the largest and least values stand at the ends or at points.
func boundPoints(e *Expr, args []Interval) (Interval, bool) {
	low, okLow := lookUp(e, args[0].Low)
	high, okHigh := lookUp(e, args[0].High)
	if !okLow || !okHigh {
		return unknownInterval, false
	}
	r := hull(low, high)
	for _, p := range e.Points {
		if p.X > args[0].Low && p.X < args[0].High {
			r = hull(r.Low, r.High, p.Y)
		}
	}
	return r, true
}

func boundAbs(_ *Expr, args []Interval) (Interval, bool) {
	a := args[0]
	if a.Low <= 0 && a.High >= 0 {
		return Interval{0, math.Max(-a.Low, a.High)}, true
	}
	return hull(math.Abs(a.Low), math.Abs(a.High)), true
}
