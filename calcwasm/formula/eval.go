package formula

import (
	"math"
	"slices"
)

// Env holds the values that an evaluation works on: one for each term of the
// scope, in SI, NaN where it is not known. It is used again and again, so that
// an evaluation allocates nothing.
type Env struct {
	Values  []float64
	Invalid string // why the last evaluation is not valid; empty if it is
	scratch []float64
}

// NewEnv makes an Env for a scope, with nothing known.
func NewEnv(s *Scope) *Env {
	e := &Env{Values: make([]float64, s.Len()), scratch: make([]float64, 0, 64)}
	e.Clear()
	return e
}

// Clear forgets all values.
func (v *Env) Clear() {
	for i := range v.Values {
		v.Values[i] = math.NaN()
	}
}

// Known says whether a term has a value.
func (v *Env) Known(term int) bool { return v.Values[term] == v.Values[term] }

// Eval computes an expression. It is NaN if a term is not known or if the
// computation is not valid; Env.Invalid tells the reason of the latter.
func (e *Expr) Eval(v *Env) float64 {
	v.Invalid = ""
	x := e.eval(v)
	if x-x == 0 || x != x && (v.Invalid != "" || !e.allKnown(v)) {
		return x
	}
	if v.Invalid == "" {
		v.Invalid = "the number is too large"
	}
	return math.NaN()
}

// allKnown says whether all terms of an expression have values.
func (e *Expr) allKnown(v *Env) bool {
	if e == nil {
		return true
	}
	if (e.Op == Ref || e.Op == Bare) && !v.Known(e.Term) {
		return false
	}
	for _, a := range e.Args {
		if !a.allKnown(v) {
			return false
		}
	}
	return e.X.allKnown(v) && e.Y.allKnown(v)
}

func (e *Expr) eval(v *Env) float64 {
	switch e.Op {
	case Number, Word:
		return e.Value
	case Ref:
		return v.Values[e.Term]
	case Bare:
		return e.Unit.FromSI(v.Values[e.Term])
	case In:
		return e.Unit.ToSI(e.X.eval(v))
	case Hole:
		return e.unfilled(v)
	case Neg:
		return -e.X.eval(v)
	case Add:
		return e.X.eval(v) + e.Y.eval(v)
	case Sub:
		return e.X.eval(v) - e.Y.eval(v)
	case Mul:
		return float64(e.X.eval(v) * e.Y.eval(v))
	case Div:
		return e.quotient(v)
	case Pow:
		return e.power(v)
	case Call:
		return e.call(v)
	}
	return math.NaN()
}

// unfilled is the value of a hole that no family has filled. Once a family is
// chosen that has no such property, a hole is no word that a condition names.
func (e *Expr) unfilled(v *Env) float64 {
	if e.Dim.IsNone() && e.Term >= 0 && v.Known(e.Term) {
		return noWord
	}
	return math.NaN()
}

// noWord is the place of no word in any list.
const noWord = -2

func (e *Expr) power(v *Env) float64 {
	x, y := e.X.eval(v), e.Y.eval(v)
	switch {
	case x < 0 && y != math.Trunc(y) && y == y:
		v.Invalid = "it would take the root of a negative number"
		return math.NaN()
	case x == 0 && y < 0:
		v.Invalid = "it would divide by zero"
		return math.NaN()
	}
	return pow(x, y)
}

func (e *Expr) quotient(v *Env) float64 {
	x, y := e.X.eval(v), e.Y.eval(v)
	if y == 0 {
		v.Invalid = "it would divide by zero"
		return math.NaN()
	}
	return x / y
}

func (e *Expr) call(v *Env) float64 {
	switch {
	case e.hole != "":
		return math.NaN()
	case e.Points != nil && e.Func.OnPoints == nil:
		x := e.Args[0].eval(v)
		y, ok := lookUp(e, x)
		if !ok && x == x {
			v.Invalid = outOfPoints(e, x)
		}
		return y
	}
	from := len(v.scratch)
	for _, a := range e.Args {
		x := a.eval(v)
		v.scratch = append(v.scratch, x)
	}
	args := v.scratch[from:]
	v.scratch = v.scratch[:from]
	for _, x := range args {
		if x != x {
			return math.NaN()
		}
	}
	y, invalid := e.apply(args)
	if invalid != "" {
		v.Invalid = invalid
		return math.NaN()
	}
	return y
}

func (e *Expr) apply(args []float64) (float64, string) {
	if e.Func.OnPoints != nil {
		return e.Func.OnPoints(Line{e}, args)
	}
	return e.Func.Eval(args)
}

// Truth is the value of a condition: with facts missing it can be unknown.
type Truth int8

const (
	Unknown Truth = iota
	True
	False
)

// Test decides a condition. “or” is true as soon as one side is, “and” false as
// soon as one side is, whatever else is missing.
func (e *Expr) Test(v *Env) Truth {
	switch e.Op {
	case And:
		x, y := e.X.Test(v), e.Y.Test(v)
		if x == False || y == False {
			return False
		}
		return bothKnown(x, y, True)
	case Or:
		x, y := e.X.Test(v), e.Y.Test(v)
		if x == True || y == True {
			return True
		}
		return bothKnown(x, y, False)
	case Not:
		return opposite(e.X.Test(v))
	}
	return e.compare(v)
}

func bothKnown(x, y, then Truth) Truth {
	if x == Unknown || y == Unknown {
		return Unknown
	}
	return then
}

func opposite(x Truth) Truth {
	switch x {
	case True:
		return False
	case False:
		return True
	}
	return Unknown
}

// alike is how near two computed numbers count as equal in a comparison.
const alike = 1e-9

func (e *Expr) compare(v *Env) Truth {
	v.Invalid = ""
	x, y := e.X.eval(v), e.Y.eval(v)
	if x != x || y != y {
		return Unknown
	}
	equal := x == y || math.Abs(x-y) <= alike*math.Max(math.Abs(x), math.Abs(y))
	yes := false
	switch e.Op {
	case Equal:
		yes = equal
	case Unequal:
		yes = !equal
	case Less:
		yes = x < y && !equal
	case AtMost:
		yes = x < y || equal
	case More:
		yes = x > y && !equal
	case AtLeast:
		yes = x > y || equal
	}
	if yes {
		return True
	}
	return False
}

// Lacking lists the terms whose values would decide a condition: none if it is
// decided, and none from a part that is decided already.
func (e *Expr) Lacking(v *Env) []int {
	if e.Test(v) != Unknown {
		return nil
	}
	switch e.Op {
	case Not:
		return e.X.Lacking(v)
	case And, Or:
		list := e.X.Lacking(v)
		for _, t := range e.Y.Lacking(v) {
			if !slices.Contains(list, t) {
				list = append(list, t)
			}
		}
		return list
	}
	var list []int
	for _, t := range e.Terms() {
		if !v.Known(t) {
			list = append(list, t)
		}
	}
	if t := e.chooser(); list == nil && t >= 0 {
		return []int{t} // a family is chosen, and has no such property
	}
	return list
}
