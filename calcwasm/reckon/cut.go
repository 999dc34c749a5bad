package reckon

import (
	"math"

	"columnbowl/calcwasm/formula"
)

// step is one link of a loop: a rule and the term it computes.
type step struct{ rule, term int }

// loop is a way round a circle of relations: with a value tried for the term
// cut, the steps compute the terms on the way, and the relation left over says
// how well they fit.
type loop struct {
	cut   int
	steps []step
	left  int // the rule left over
}

// cut opens a circle of relations, none of which has a single unknown, at one
// term: the value is sought inside its range so that the relation left over
// holds. All values that do are kept; only a single one is used. A circle that
// has been searched in vain at one of its terms is not searched at the others.
func (r *run) cut() bool {
	p := r.planner()
	for _, term := range r.cutOrder() {
		if r.vain[term] {
			continue
		}
		var idle []int // relations that only repeat what others say
		for {
			l, ok := p.plan(term, idle)
			if !ok || r.failed.has(l.left, term) {
				break
			}
			if r.idle(l) {
				idle = append(idle, l.left)
				continue
			}
			r.failed.add(l.left, term)
			roots := r.seek(l)
			if r.repeats(l, roots) {
				idle = append(idle, l.left)
				continue
			}
			if r.close(l, roots) {
				clear(r.vain)
				return true
			}
			for _, t := range l.terms() {
				r.vain[t] = true
			}
			break
		}
	}
	return false
}

// still is how near to holding a relation is that holds but for the last bits.
const still = 1e-9

// idle says whether the relation left over holds whatever value is tried: it
// then only repeats what the steps say, and decides nothing.
func (r *run) idle(l loop) bool {
	const tries = 9
	t := &r.book.Terms[l.cut]
	valid := 0
	for i := 1; i <= tries; i++ {
		f := r.around(l, t.Low+(t.High-t.Low)*float64(i)/(tries+1))
		if f != f {
			continue
		}
		if valid++; math.Abs(f) > still {
			return false
		}
	}
	return valid > 1
}

// cutOrder lists the terms at which a circle may be cut: the wanted one first,
// so that it is the one whose values are all reported, then those that a
// person would be asked for, then the rest.
func (r *run) cutOrder() []int {
	var first, asked, rest []int
	for t := range r.values {
		if !r.open(t) || r.book.Terms[t].Kind != formula.Quantity || len(r.values[t].Roots) > 1 {
			continue
		}
		switch {
		case t == r.q.Want:
			first = append(first, t)
		case r.book.Terms[t].Ask != "":
			asked = append(asked, t)
		default:
			rest = append(rest, t)
		}
	}
	return append(append(first, asked...), rest...)
}

// trim drops the steps that the relation left over does not need.
func (r *run) trim(l loop) loop {
	if l.left < 0 {
		return loop{}
	}
	needed := map[int]bool{}
	for _, t := range r.book.Rules[l.left].terms {
		needed[t] = true
	}
	var kept []step
	for i := len(l.steps) - 1; i >= 0; i-- {
		s := l.steps[i]
		if !needed[s.term] {
			continue
		}
		kept = append([]step{s}, kept...)
		for _, t := range r.book.Rules[s.rule].terms {
			needed[t] = true
		}
	}
	l.steps = kept
	return l
}

// seek finds the values of the loop's term for which the relation left over holds.
func (r *run) seek(l loop) []float64 {
	t := &r.book.Terms[l.cut]
	return formula.Roots(func(x float64) float64 { return r.around(l, x) }, t.Low, t.High)
}

// repeats says whether the relation left over holds beside the values that were
// found as well: then it only repeats the steps, in a part of the range too small
// for idle to meet, and the values are where the last bits happen to agree.
func (r *run) repeats(l loop, roots []float64) bool {
	const aside, least = 1e-3, 1e-9 // of the value, and of the term's range
	t := &r.book.Terms[l.cut]
	valid := 0
	for _, x := range roots {
		d := math.Max(aside*math.Abs(x), least*(t.High-t.Low))
		for _, y := range [2]float64{x - d, x + d} {
			f := r.around(l, y)
			if f != f {
				continue
			}
			if valid++; math.Abs(f) > still {
				return false
			}
		}
	}
	return valid > 0
}

// close takes a single value of the loop's term over, and keeps several.
func (r *run) close(l loop, roots []float64) bool {
	val := &r.values[l.cut]
	switch len(roots) {
	case 0:
		return false
	case 1:
		return r.settle(l.cut, Value{State: Follows, Likely: roots[0], Rule: l.left, Searched: true,
			From: r.inputs(l), Loop: l.terms()})
	}
	val.Roots, val.Rule, val.Loop = roots, l.left, l.terms()
	return false
}

// around goes once round the loop with a value tried and returns how far the
// relation left over is from holding, relative to its size.
func (r *run) around(l loop, x float64) float64 {
	r.env.Values[l.cut] = x
	for _, s := range l.steps {
		v := r.book.Rules[s.rule].turned(s.term).Eval(r.env)
		t := &r.book.Terms[s.term]
		if !(v >= t.Low && v <= t.High) {
			r.openAgain(l)
			return math.NaN()
		}
		r.env.Values[s.term] = v
	}
	rel := r.book.Rules[l.left].Relation
	left, right := rel.Left.Eval(r.env), rel.Right.Eval(r.env)
	r.openAgain(l)
	if left == right {
		return 0
	}
	return (left - right) / math.Max(math.Abs(left), math.Abs(right))
}

func (r *run) openAgain(l loop) {
	r.env.Values[l.cut] = math.NaN()
	for _, s := range l.steps {
		r.env.Values[s.term] = math.NaN()
	}
}

func (l loop) terms() []int {
	list := []int{l.cut}
	for _, s := range l.steps {
		list = append(list, s.term)
	}
	return list
}

// inputs are the known terms that loops stand on.
func (r *run) inputs(loops ...loop) []int {
	seen := map[int]bool{}
	for _, l := range loops {
		for _, t := range l.terms() {
			seen[t] = true
		}
	}
	var list []int
	add := func(rule int) {
		for _, t := range r.book.Rules[rule].terms {
			if !seen[t] {
				seen[t] = true
				list = append(list, t)
			}
		}
	}
	for _, l := range loops {
		for _, s := range l.steps {
			add(s.rule)
		}
		add(l.left)
	}
	return list
}
