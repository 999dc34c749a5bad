package reckon

import (
	"math"

	"columnbowl/calcwasm/formula"
)

// mostCorners is how many ranged facts are tried in all combinations; with
// more of them each is moved alone, and all together.
const mostCorners = 5

// spread finds the lowest and highest values that ranges in the facts lead to:
// the network is solved at every combination of their ends.
func (res *Result) spread(base *run) {
	var ranged []int
	at := make([]float64, len(res.Question.Facts))
	for i, f := range res.Question.Facts {
		at[i] = f.Likely
		if f.Low < f.High {
			ranged = append(ranged, i)
			v := &res.Values[f.Term]
			v.Low, v.High = f.Low, f.High
		}
	}
	if len(ranged) == 0 {
		return
	}
	for _, corner := range corners(len(ranged)) {
		for k, i := range ranged {
			f := &res.Question.Facts[i]
			at[i] = []float64{f.Low, f.Likely, f.High}[corner[k]]
		}
		res.widen(base.book.run(&res.Question, at))
	}
}

// corners lists which end (0 low, 1 likely, 2 high) each of n ranged facts takes.
func corners(n int) [][]int {
	var list [][]int
	if n <= mostCorners {
		for bits := range 1 << n {
			c := make([]int, n)
			for k := range c {
				c[k] = bits >> k & 1 * 2
			}
			list = append(list, c)
		}
		return list
	}
	for k := range n {
		for _, end := range []int{0, 2} {
			c := make([]int, n)
			for j := range c {
				c[j] = 1
			}
			c[k] = end
			list = append(list, c)
		}
	}
	low, high := make([]int, n), make([]int, n)
	for k := range high {
		high[k] = 2
	}
	return append(list, low, high)
}

// widen takes the values of one corner into the ranges, and lets a caution
// that fires at a corner fire.
func (res *Result) widen(corner *run) {
	for i := range res.Values {
		v := &res.Values[i]
		x := corner.env.Values[i]
		if !res.Known(i) || x != x || v.Fact >= 0 {
			continue
		}
		v.Low, v.High = math.Min(v.Low, x), math.Max(v.High, x)
	}
	for i, c := range corner.cautions() {
		if c.Truth == formula.True {
			res.Cautions[i] = c
		}
	}
}

// cautions decides every caution with what is known.
func (r *run) cautions() []CautionState {
	list := make([]CautionState, len(r.book.Cautions))
	for i := range list {
		c := &r.book.Cautions[i]
		list[i] = CautionState{Caution: i, Truth: c.When.Test(r.env)}
		if list[i].Truth == formula.Unknown {
			list[i].Lacks = c.When.Lacking(r.env)
		}
	}
	return list
}
