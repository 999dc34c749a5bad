package reckon

import (
	"math"

	"columnbowl/calcwasm/formula"
)

// How widely ranges are searched. A sample is a replay of the steps of the plain
// result with other facts and costs some microseconds; one in which another
// relation would come into force is solved anew, which costs milliseconds.
const (
	allCorners   = 5  // ranged facts of which all combinations of ends are tried, and all edges between them
	mostAnew     = 10 // samples that are solved anew
	scanSteps    = 8  // pieces into which an edge is cut
	mostRefined  = 60 // peaks that are sought inside an edge
	mostPolished = 24 // places inside an edge from which the other axes are scanned
	narrowings   = 9  // steps of the search for a peak
	proven       = 0.0005
)

// spread finds the lowest and highest values that ranges in the facts lead to.
// The steps of the plain result are replayed at the corners of the ranges. For
// what interval evaluation does not prove to be complete by that, the edges
// between corners are scanned, and a peak inside one is narrowed down.
func (res *Result) spread(base *run) {
	s := newSpread(res, base)
	if len(s.axes) == 0 {
		return
	}
	for _, x := range s.axes {
		v := &res.Values[x.term]
		v.Low, v.High = x.low, x.high
	}
	for _, c := range s.corners() {
		s.sample(c)
	}
	if s.open() {
		s.scan()
		s.polish()
	}
	s.store()
}

// axis is a fact that is a range, or a value that is moved to see what hangs on it.
type axis struct {
	term              int
	low, likely, high float64
}

// spread is the search for the ends of one result.
type spread struct {
	res     *Result
	base    *run
	axes    []axis
	steps   []int     // the derived terms that hang on them, in the order in which they were found
	guards  []guard   // conditions that hang on them
	plain   []float64 // all values of the plain result
	env     *formula.Env
	low     []float64 // by term
	high    []float64
	atLow   [][]float64 // by term, where the end was found; nil in the plain result
	atHigh  [][]float64
	certain []formula.Interval // by interval evaluation, NaN where it says nothing
	anew    int
	refined int
	fires   []bool // cautions that fire somewhere
}

// guard is a condition and how it stands in the plain result.
type guard struct {
	when  *formula.Expr
	truth formula.Truth
}

func newSpread(res *Result, base *run) *spread {
	s := &spread{res: res, base: base, env: formula.NewEnv(res.Book.Scope), plain: base.env.Values}
	for i := range res.Question.Facts {
		f := &res.Question.Facts[i]
		if f.Low < f.High && res.Values[f.Term].Fact == i {
			s.axes = append(s.axes, axis{f.Term, f.Low, f.Likely, f.High})
		}
	}
	if len(s.axes) > 0 {
		s.follow()
	}
	return s
}

// follow finds the steps and conditions that hang on the axes.
func (s *spread) follow() {
	b, n := s.res.Book, len(s.res.Values)
	moved := make([]bool, n)
	for _, x := range s.axes {
		moved[x.term] = true
	}
	touches := func(terms []int) bool {
		for _, t := range terms {
			if moved[t] {
				return true
			}
		}
		return false
	}
	for _, t := range s.res.Order {
		if !moved[t] && touches(s.res.Values[t].From) {
			moved[t] = true
			s.steps = append(s.steps, t)
		}
	}
	for i := range b.Rules {
		if r := &b.Rules[i]; touches(r.asked) {
			s.guards = append(s.guards, guard{r.When, r.When.Test(s.base.env)})
		}
	}
	s.low, s.high = append([]float64(nil), s.plain...), append([]float64(nil), s.plain...)
	s.atLow, s.atHigh = make([][]float64, n), make([][]float64, n)
	s.fires = make([]bool, len(b.Cautions))
}

// sample takes the values at one place of the axes into the ends.
func (s *spread) sample(at []float64) bool {
	if !s.replay(at) && !s.solve(at) {
		return false
	}
	for _, t := range s.steps {
		if x := s.env.Values[t]; x < s.low[t] {
			s.low[t], s.atLow[t] = x, append(s.atLow[t][:0], at...)
		} else if x > s.high[t] {
			s.high[t], s.atHigh[t] = x, append(s.atHigh[t][:0], at...)
		}
	}
	for i := range s.fires {
		s.fires[i] = s.fires[i] || s.res.Book.Cautions[i].When.Test(s.env) == formula.True
	}
	return true
}

// replay runs through the steps of the plain result with other values on the
// axes. It fails where a step does, or where another relation would be in force.
func (s *spread) replay(at []float64) bool {
	copy(s.env.Values, s.plain)
	for k, x := range s.axes {
		s.env.Values[x.term] = at[k]
	}
	for _, t := range s.steps {
		x, ok := s.step(t)
		if !ok {
			return false
		}
		s.env.Values[t] = x
	}
	for _, g := range s.guards {
		if g.when.Test(s.env) != g.truth {
			return false
		}
	}
	return true
}

// step computes one term as the plain result did.
func (s *spread) step(t int) (x float64, ok bool) {
	v, term := &s.res.Values[t], &s.res.Book.Terms[t]
	switch {
	case v.Expr != nil:
		x = v.Expr.Eval(s.env)
	case v.Rule < 0 || len(v.Loop) > 1 || s.res.Book.Rules[v.Rule].Relation == nil:
		return 0, false
	default:
		s.env.Values[t] = math.NaN()
		roots := s.res.Book.Rules[v.Rule].Relation.Solve(t, s.env, term.Low, term.High)
		if len(roots) != 1 {
			return 0, false
		}
		x = roots[0]
	}
	slack := edge * math.Max(math.Abs(term.Low), math.Abs(term.High))
	return x, x >= term.Low-slack && x <= term.High+slack
}

// solve solves the network anew at a place, a few times at most.
func (s *spread) solve(at []float64) bool {
	if s.anew == mostAnew {
		return false
	}
	s.anew++
	facts := make([]float64, len(s.res.Question.Facts))
	for i, f := range s.res.Question.Facts {
		facts[i] = f.Likely
		for k, x := range s.axes {
			if x.term == f.Term {
				facts[i] = at[k]
			}
		}
	}
	r := s.res.Book.run(&s.res.Question, facts)
	copy(s.env.Values, r.env.Values)
	return true
}

// store puts the ends into the result.
func (s *spread) store() {
	for _, t := range s.steps {
		if v := &s.res.Values[t]; s.res.Known(t) && v.Fact < 0 {
			v.Low, v.High = s.low[t], s.high[t]
		}
	}
	for i, on := range s.fires {
		if on {
			s.res.Cautions[i] = CautionState{Caution: i, Truth: formula.True}
		}
	}
}

// cautions decides every caution with what is known.
func (r *run) cautions() []CautionState {
	list := make([]CautionState, len(r.book.Cautions))
	for i := range list {
		c := &r.book.Cautions[i]
		list[i] = CautionState{Caution: i, Truth: c.When.Test(r.env)}
	}
	return list
}

// Lacks lists the terms whose values a caution lacks to be checked.
func (res *Result) Lacks(c CautionState) []int {
	if c.Truth != formula.Unknown {
		return nil
	}
	return res.Book.Cautions[c.Caution].When.Lacking(res.env)
}
