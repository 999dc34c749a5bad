package reckon

import (
	"math"

	"columnbowl/calcwasm/formula"
)

// A circle that needs two cuts is rare, and each search for one costs some tens
// of thousands of evaluations: few are planned, fewer are searched.
const (
	mostPairs    = 60
	mostSearches = 2
	mostTurns    = 60_000 // times round the inner circle: a tenth of a second
)

// cutTwo opens a circle at two terms at once, where one cut is not enough: for
// each value tried of the first term the second is sought so that one relation
// left over holds, and the first so that the other one does. It is tried only
// for a wanted term that nothing else gives, and not at the corners of ranges.
func (r *run) cutTwo() bool {
	if r.q.Want < 0 || !r.open(r.q.Want) || len(r.values[r.q.Want].Roots) > 1 || len(r.clash) > 0 || r.corner {
		return false
	}
	order := r.cutOrder()
	tried := 0
	for i, a := range order {
		for _, b := range order[i+1:] {
			if tried++; tried > mostPairs {
				return false
			}
			if !r.failed.hasBoth(a, b) {
				r.failed.addBoth(a, b)
				first, second, ok := r.planTwo(a, b)
				if !ok {
					continue
				}
				if r.searches++; r.searches > mostSearches {
					return false
				}
				if r.closeTwo(first, second) {
					return true
				}
			}
		}
	}
	return false
}

// planTwo follows what would be known if both terms were. The circle that is
// found first is the inner one, sought for the second term; the outer one goes
// on from there.
func (r *run) planTwo(a, b int) (outer, inner loop, ok bool) {
	r.env.Values[a] = r.trial(a)
	inner, ok = r.planner().plan(b, nil)
	if ok {
		r.env.Values[a], r.env.Values[b] = math.NaN(), r.trial(b)
		outer, ok = r.planner().plan(a, []int{inner.left})
		r.env.Values[b] = math.NaN()
	}
	r.env.Values[a] = math.NaN()
	if !ok || !r.uses(inner, a) && !r.uses(outer, b) {
		return outer, inner, false
	}
	return outer, inner, true
}

// trial is a value of a term to make a plan with; its size does not matter.
func (r *run) trial(term int) float64 {
	t := &r.book.Terms[term]
	return t.Low + (t.High-t.Low)/3
}

// uses says whether a loop's relations have to do with a term.
func (r *run) uses(l loop, term int) bool {
	for _, s := range append(l.steps, step{rule: l.left}) {
		if contains(r.book.Rules[s.rule].terms, term) {
			return true
		}
	}
	return false
}

// closeTwo seeks both values and takes a single pair over.
func (r *run) closeTwo(outer, inner loop) bool {
	a, b := &r.book.Terms[outer.cut], &r.book.Terms[inner.cut]
	turns := 0
	second := func(x float64, k int) float64 {
		if turns > mostTurns {
			return math.NaN()
		}
		r.env.Values[outer.cut] = x
		roots := formula.Roots(func(y float64) float64 {
			turns++
			r.env.Values[outer.cut] = x
			return r.around(inner, y)
		}, b.Low, b.High)
		r.env.Values[outer.cut] = math.NaN()
		if k >= len(roots) {
			return math.NaN()
		}
		return roots[k]
	}
	var found [][2]float64
	for branch := range 2 { // a second value of the inner term opens a second branch
		for _, x := range formula.Roots(func(x float64) float64 {
			y := second(x, branch)
			if y != y {
				return y
			}
			r.env.Values[inner.cut] = y
			f := r.around(outer, x)
			r.env.Values[inner.cut] = math.NaN()
			return f
		}, a.Low, a.High) {
			found = append(found, [2]float64{x, second(x, branch)})
		}
	}
	if turns > mostTurns {
		return false // not all of the range was searched: nothing is claimed
	}
	return r.takeTwo(outer, inner, found)
}

func (r *run) takeTwo(outer, inner loop, found [][2]float64) bool {
	if len(found) == 0 {
		return false
	}
	terms := append(outer.terms(), inner.terms()...)
	if len(found) > 1 {
		for _, f := range found {
			r.values[outer.cut].Roots = append(r.values[outer.cut].Roots, f[0])
			r.values[inner.cut].Roots = append(r.values[inner.cut].Roots, f[1])
		}
		r.values[outer.cut].Rule, r.values[inner.cut].Rule = outer.left, inner.left
		r.values[outer.cut].Loop, r.values[inner.cut].Loop = terms, terms
		return false
	}
	from := r.inputs(outer, inner)
	first := r.settle(outer.cut, Value{State: Follows, Likely: found[0][0], Rule: outer.left, Searched: true, From: from, Loop: terms})
	return r.settle(inner.cut, Value{State: Follows, Likely: found[0][1], Rule: inner.left, Searched: true, From: from, Loop: terms}) || first
}
