package formula

import "columnbowl/calcwasm/unit"

// measure finds the dimension of an expression anew, without the words of the
// parser; bad is the part that mixes dimensions, nil if none does.
func (e *Expr) measure(s *Scope) (d unit.Dim, bad *Expr) {
	switch e.Op {
	case Number:
		return dimOf(e.Unit), nil
	case Hole:
		return e.Dim, nil
	case Ref:
		return s.terms[e.Term].Dim(), nil
	case In:
		return e.Unit.Dim, nil
	case Neg:
		return e.X.measure(s)
	case Call:
		return e.measureCall(s)
	case Add, Sub, Mul, Div, Pow:
		return e.measurePair(s)
	}
	return unit.Dim{}, nil
}

func (e *Expr) measurePair(s *Scope) (unit.Dim, *Expr) {
	x, bad := e.X.measure(s)
	y, badY := e.Y.measure(s)
	if bad != nil {
		return x, bad
	}
	if badY != nil {
		return y, badY
	}
	switch e.Op {
	case Mul:
		return x.Mul(y), nil
	case Div:
		return x.Div(y), nil
	case Pow:
		return e.measurePower(x, y)
	}
	if x != y {
		return x, e
	}
	return x, nil
}

func (e *Expr) measurePower(x, y unit.Dim) (unit.Dim, *Expr) {
	if !y.IsNone() {
		return x, e
	}
	if x.IsNone() {
		return x, nil
	}
	n, ok := constant(e.Y)
	d, fits := x.Pow(int(n*12), 12)
	if !ok || !fits || n*12 != float64(int(n*12)) {
		return x, e
	}
	return d, nil
}

func (e *Expr) measureCall(s *Scope) (unit.Dim, *Expr) {
	dims := make([]unit.Dim, len(e.Args))
	for i, a := range e.Args {
		var bad *Expr
		if dims[i], bad = a.measure(s); bad != nil {
			return dims[i], bad
		}
	}
	f := e.Func
	switch {
	case f.points:
		if e.hole == "" && dims[0] != dimOf(e.Unit) || e.hole != "" && dims[0] != unit.Flow {
			return e.Dim, e
		}
		return e.Dim, nil
	case f.Name == "sqrt":
		if d, ok := dims[0].Pow(1, 2); ok {
			return d, nil
		}
		return dims[0], e
	case f.Name == "round-up" || f.Name == "round-down":
		if !dims[0].IsNone() {
			return dims[0], e
		}
		return dims[0], nil
	case len(f.Params) == 0: // min, max, remainder, abs
		for _, d := range dims[1:] {
			if d != dims[0] {
				return dims[0], e
			}
		}
		return dims[0], nil
	}
	for i, d := range dims {
		if d != f.Params[i].Dim {
			return f.Result, e
		}
	}
	return f.Result, nil
}

// fits says whether a function can be called with so many values and points.
func (f *Func) fits(args, points int) bool {
	switch {
	case f.points:
		return args == 1 && points >= 2
	case f.OnPoints != nil:
		return args == len(f.Params) && points >= 2
	case points > 0 || f.Eval == nil:
		return false
	case f.Name == "min" || f.Name == "max":
		return args >= 2
	case f.Name == "remainder":
		return args == 2
	case len(f.Params) > 0:
		return args == len(f.Params)
	}
	return args == 1
}
