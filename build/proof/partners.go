package proof

import (
	"fmt"
	"math"
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// wantedPoints is at how many points the two forms of a formula are compared;
// mostTries is how many are tried to find so many at which both have a value.
const wantedPoints, mostTries = 256, 4096

// partners compares every formula that has an SI form with it, all over the
// ranges of its terms.
func (c *checker) partners() {
	for i := range c.book.Engine.Rules {
		if r := &c.book.Engine.Rules[i]; r.SI != nil && !c.leftBlock(r.Block) {
			c.summary.Partners++
			c.partner(r)
		}
	}
}

// compared is the point at which two forms differ most.
type compared struct {
	points   int       // at which both forms have a value
	oneSided int       // at which only one has
	alone    []float64 // the values of the terms at the first of these
	worst    float64   // relative difference
	at       []float64 // the values of the terms there
	us, si   float64   // what the forms give there, in SI
}

func (c *checker) partner(rule *reckon.Rule) {
	terms := rule.Relation.Right.Terms()
	for _, t := range rule.SI.Right.Terms() {
		terms = addTerm(terms, t)
	}
	if rule.When != nil {
		for _, t := range rule.When.Terms() {
			terms = addTerm(terms, t)
		}
	}
	found := c.compare(rule, terms)
	block := rule.Block + 1 // the SI form stands right behind its formula
	body := len(strings.TrimRight(c.book.Source.Blocks[block].Body, "\r\n"))
	switch {
	case found.points == 0:
		c.inBlock(block, 0, body, "The two forms cannot be compared: over the ranges of their terms there is no point at which both have a value.", "")
	case found.oneSided > found.points/10: // at the very end of a table the two may part by rounding
		c.inBlock(block, 0, body, "Only one of the two forms has a value at "+c.point(rule, terms, found.alone)+".", "")
	case found.worst > rule.Within*(1+1e-9):
		c.inBlock(block, 0, body, fmt.Sprintf("The formula and its si form differ by %s %%; %s %% is allowed. At %s the formula gives %s, the si form %s.",
			digits(100*found.worst), digits(100*rule.Within), c.point(rule, terms, found.at), c.format(rule.Target, found.us), c.format(rule.Target, found.si)), "",
			"Where the difference is meant, the head says so: si within 0.2 % because \"…\".")
	}
}

func addTerm(list []int, t int) []int {
	for _, have := range list {
		if have == t {
			return list
		}
	}
	return append(list, t)
}

func digits(x float64) string { return fmt.Sprintf("%.2g", x) }

// point names a point of the comparison.
func (c *checker) point(rule *reckon.Rule, terms []int, values []float64) string {
	var list []string
	for i, t := range terms {
		list = append(list, c.book.Engine.Terms[t].ID+" = "+c.format(t, values[i]))
	}
	return strings.Join(list, ", ")
}

// compare evaluates both forms at points spread evenly over the ranges, and at
// the corners of the ranges, where forms differ most.
func (c *checker) compare(rule *reckon.Rule, terms []int) compared {
	e := c.book.Engine
	env := formula.NewEnv(e.Scope)
	var out compared
	step := evenSteps(len(terms))
	corners := 1 << min(len(terms), 6)
	for n := 0; n < mostTries && out.points < wantedPoints+corners; n++ {
		values := make([]float64, len(terms))
		for i, t := range terms {
			f := frac(0.5 + float64(n-corners+1)*step[i])
			if n < corners {
				f = float64(n >> min(i, 6) & 1)
			}
			values[i] = spread(&e.Terms[t], f)
			env.Values[t] = values[i]
		}
		if rule.When != nil && rule.When.Test(env) == formula.False {
			continue
		}
		out.take(rule, env, values)
	}
	return out
}

func (out *compared) take(rule *reckon.Rule, env *formula.Env, values []float64) {
	us, si := sideValue(rule.Relation, env), sideValue(rule.SI, env)
	if us != us || si != si {
		if us == us || si == si {
			out.oneSided++
			if out.alone == nil {
				out.alone = values
			}
		}
		return
	}
	out.points++
	scale := math.Max(math.Abs(us), sum(rule.Relation, env))
	if scale == 0 {
		scale = math.Abs(si)
	}
	if scale == 0 {
		return
	}
	if d := math.Abs(us-si) / scale; out.at == nil || d > out.worst {
		out.worst, out.at, out.us, out.si = d, values, us, si
	}
}

// sideValue is the value that a relation gives its left-hand term, in SI.
func sideValue(r *formula.Relation, env *formula.Env) float64 {
	v := r.Right.Eval(env)
	if r.Left.Op == formula.Bare {
		return r.Left.Unit.ToSI(v)
	}
	return v
}

// sum is the size of the items of a sum, in SI. Where items nearly cancel, the
// difference of two forms is judged against the items: judged against what is
// left of them, any rounding of a constant would be too much.
func sum(r *formula.Relation, env *formula.Env) float64 {
	s := items(r.Right, env)
	if r.Left.Op == formula.Bare {
		return math.Abs(s * r.Left.Unit.Factor)
	}
	return s
}

func items(e *formula.Expr, env *formula.Env) float64 {
	switch e.Op {
	case formula.Add, formula.Sub:
		return items(e.X, env) + items(e.Y, env)
	case formula.Neg:
		return items(e.X, env)
	}
	if v := math.Abs(e.Eval(env)); v == v {
		return v
	}
	return 0
}

// spread takes a place between 0 and 1 to a value in the range of a term:
// evenly by ratio where the range lies above zero, evenly by difference
// elsewhere; a count to a whole number, a choice to one of its words.
func spread(t *reckon.Term, f float64) float64 {
	switch {
	case t.Kind == formula.Choice:
		return math.Min(math.Floor(f*float64(len(t.Values))), float64(len(t.Values)-1))
	case t.Kind == formula.Count:
		return math.Round(t.Low + f*(t.High-t.Low))
	case t.Low > 0:
		return t.Low * math.Pow(t.High/t.Low, f)
	}
	return t.Low + f*(t.High-t.Low)
}

// evenSteps are the steps of an additive recurrence that fills a cube of any
// number of sides evenly: the powers of 1/g, where g is the root of
// g^(n+1) = g + 1 (M. Roberts, The unreasonable effectiveness of quasirandom
// sequences, 2018; from memory). A failing point is found in the same place on
// every run.
func evenSteps(sides int) []float64 {
	g := 1.5
	for range 60 {
		g = math.Pow(1+g, 1/float64(sides+1))
	}
	steps := make([]float64, sides)
	for i := range steps {
		steps[i] = math.Pow(1/g, float64(i+1))
	}
	return steps
}

func frac(x float64) float64 { return x - math.Floor(x) }
