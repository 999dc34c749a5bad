package exercise

import (
	"math"

	"columnbowl/calcwasm/formula"
)

// segment is the way to one asked term from what stands before it on the sheet:
// the facts, and the terms that the learner has answered. What lies between is
// worked out without being written down.
type segment struct {
	sheet *Sheet
	item  int
	term  int
	steps []int // places in the plan, in order; the term's own is the last
	sites []site
	env   *formula.Env
	base  []float64 // the values before a slip is tried
	still []float64 // base, while the values are shaken
	right float64   // what the term is if nothing goes wrong on the way
	tol   float64   // how far an answer may be off that by rounding
	moves []int     // the numbers on the way that a learner rounds
}

// site is a slip that can be made on the way: where, and what it takes.
type site struct {
	slip int
	at   int // place in segment.steps
}

// segment prepares the way to an item. own has the learner's number for each
// term answered before, NaN for the others; nil means that all before are
// answered rightly.
func (sh *Sheet) segment(item int, own []float64) *segment {
	sg := &segment{sheet: sh, item: item, term: sh.Items[item].Term, env: sh.set.work}
	cut := make([]bool, len(sh.values))
	for i := range item {
		if t := sh.Items[i].Term; own == nil || own[i] == own[i] {
			cut[t] = true
		}
	}
	cut[sg.term] = false
	on := make([]bool, len(sh.plan.steps))
	sh.plan.mark(on, sg.term, cut)
	for i := range on {
		if on[i] {
			sg.steps = append(sg.steps, i)
		}
	}
	sg.fill(own)
	sg.findSites()
	sg.right = sg.env.Values[sg.term]
	sg.findMoves()
	sg.tol = sg.tolerance(rightWay, sg.right)
	return sg
}

// fill puts the sheet's values into env, and carries the learner's own numbers on.
func (sg *segment) fill(own []float64) {
	copy(sg.env.Values, sg.sheet.values)
	if own != nil {
		touched := make([]bool, len(sg.sheet.values))
		for i, v := range own[:sg.item] {
			t := sg.sheet.Items[i].Term
			if v == v && v != sg.sheet.values[t] {
				sg.env.Values[t], touched[t] = v, true
			}
		}
		sg.carry(own, touched)
	}
	sg.base = append(sg.base[:0], sg.env.Values...)
}

// carry works out again what stands on the learner's own numbers, except what
// the learner has answered.
func (sg *segment) carry(own []float64, touched []bool) {
	p := sg.sheet.plan
next:
	for i := range p.steps {
		st := &p.steps[i]
		for k := range sg.item {
			if sg.sheet.Items[k].Term == st.term && own[k] == own[k] {
				continue next
			}
		}
		for _, f := range st.from {
			if touched[f] {
				touched[st.term] = true
				sg.env.Values[st.term] = st.run(sg.env)
				break
			}
		}
	}
}

// findSites lists the slips whose formulas need nothing but what a learner has
// at hand at that point of the sheet.
func (sg *segment) findSites() {
	p := sg.sheet.plan
	for at, i := range sg.steps {
		home := p.steps[i].term
		if first := sg.sheet.set.Book.First(home); first == nil || first.When != nil && first.When.Test(sg.env) != formula.True {
			continue // the formula that the mistakes edit does not hold here
		}
		var after []bool // what stands on the term cannot be known before it
		for _, k := range sg.sheet.set.slipsOf[home] {
			if after == nil {
				after = p.descendants(home)
			}
			if sg.atHand(sg.sheet.set.slips[k].wrong, after) {
				sg.sites = append(sg.sites, site{k, at})
			}
		}
	}
}

func (sg *segment) atHand(wrong *formula.Relation, after []bool) bool {
	p := sg.sheet.plan
	for _, t := range wrong.Right.Terms() {
		if !sg.env.Known(t) || after[t] || p.place[t] >= 0 && !p.chain[p.place[t]] {
			return false
		}
	}
	v := value(wrong, sg.env)
	return v == v
}

// descendants marks a term and all that stands on it.
func (p *plan) descendants(term int) []bool {
	on := make([]bool, len(p.place))
	on[term] = true
	for i := range p.steps {
		for _, f := range p.steps[i].from {
			if on[f] {
				on[p.steps[i].term] = true
			}
		}
	}
	return on
}

// try computes the asked term with a way of doing it.
func (sg *segment) try(w way) float64 {
	p := sg.sheet.plan
	for at, i := range sg.steps {
		st := &p.steps[i]
		if wrong := w.relation(sg, at); wrong != nil {
			sg.env.Values[st.term] = value(wrong, sg.env)
		} else if at >= w.first || w.fact >= 0 {
			sg.env.Values[st.term] = st.run(sg.env)
		}
		if st.term == w.nudged {
			sg.env.Values[st.term] += w.nudge
		}
	}
	v := sg.env.Values[sg.term]
	for _, i := range sg.steps {
		t := p.steps[i].term
		sg.env.Values[t] = sg.base[t]
	}
	return v
}

// way is a way to the asked term: with one slip, with two, or with a fact read
// wrongly.
type way struct {
	first, second         int // places of the segment where slips are made, -1 for none
	firstSlip, secondSlip int // -1 for none
	fact                  int // the term of a fact that is read wrongly, -1 for none
	nudged                int // the term whose number is moved by nudge, -1 for none
	nudge                 float64
}

// rightWay makes no slip.
var rightWay = way{-1, -1, -1, -1, -1, -1, 0}

func oneSlip(s site) way { return way{s.at, -1, s.slip, -1, -1, -1, 0} }

// twoSlips joins two slips, the one that is made first in front.
func twoSlips(a, b site) way {
	if a.at > b.at {
		a, b = b, a
	}
	return way{a.at, b.at, a.slip, b.slip, -1, -1, 0}
}

// relation is the wrong formula that a way takes at a place, nil for the right one.
func (w way) relation(sg *segment, at int) *formula.Relation {
	set := sg.sheet.set
	switch {
	case w.firstSlip < 0:
		return nil
	case at == w.first && at == w.second:
		return set.both[[2]int{w.firstSlip, w.secondSlip}]
	case at == w.first:
		return set.slips[w.firstSlip].wrong
	case at == w.second:
		return set.slips[w.secondSlip].wrong
	}
	return nil
}

// digits is how many significant digits an answer has.
const digits = 4

// half is half a unit in the last of the significant digits of a value, in SI.
func half(v float64, factor float64) float64 {
	n := math.Abs(v / factor)
	if !(n > 0) || n > 1e15 {
		return 0
	}
	size := 1.0
	for ; n >= 10*size; size *= 10 {
	}
	for ; n < size; size /= 10 {
	}
	return 0.5 * size / 1000 * factor
}

// tolerance is how far an answer may be off what a way gives: by rounding the
// answer, and by rounding on the way.
func (sg *segment) tolerance(w way, v float64) float64 {
	return (sg.written(v) + sg.spread(w, v)) * (1 + 1e-9)
}

// written is half of the last digit that an answer is asked with.
func (sg *segment) written(v float64) float64 {
	t := &sg.sheet.set.Book.Terms[sg.term]
	switch {
	case t.Kind == formula.Count:
		return 0.25
	case sg.sheet.Template.Ask[sg.item].Step > 0:
		return 0.5 * sg.sheet.Template.Ask[sg.item].Step
	}
	u := sg.sheet.unit(sg.term)
	return half(v-u.Offset, u.Factor)
}

// findMoves lists the numbers that a learner rounds before the asked term: all
// that is worked out. A fact is rounded only where the sheet tells it in SI.
func (sg *segment) findMoves() {
	p := sg.sheet.plan
	seen := make([]bool, len(p.place))
	for _, i := range sg.steps {
		for _, f := range p.steps[i].from {
			worked := p.place[f] >= 0 && p.steps[p.place[f]].expr != nil || p.place[f] < 0 && sg.sheet.System == formula.SI
			if !seen[f] && worked && sg.sheet.set.Book.Terms[f].Kind == formula.Quantity {
				seen[f] = true
				sg.moves = append(sg.moves, f)
			}
		}
	}
}

// spread is how far the asked term moves, on some way to it, when the numbers
// before it are rounded to four digits: the root of the sum of the squares.
func (sg *segment) spread(w way, v float64) float64 {
	if sg.sheet.set.Book.Terms[sg.term].Kind == formula.Count {
		return 0
	}
	sum := 0.0
	for _, f := range sg.moves {
		d := math.Abs(sg.moved(f, w, 1) - v)
		if d > jump*math.Abs(v) {
			d = min(d, math.Abs(sg.moved(f, w, -1)-v))
		}
		if d == d {
			sum += float64(d * d)
		}
	}
	return math.Sqrt(sum)
}

// jump is a move that the rounding of one number cannot make by itself. A count on
// the way that stands just before its next step makes it, on one side only, and
// nobody who counts pieces rounds them that way.
const jump = 0.01

// moved is the asked term as one number before it moves by half of its last
// digit, up (side 1) or down (-1).
func (sg *segment) moved(term int, w way, side float64) float64 {
	u := sg.sheet.unit(term)
	w.nudge, w.nudged = half(sg.base[term]-u.Offset, u.Factor), term
	if sg.sheet.plan.place[term] < 0 {
		w.nudge = sg.sheet.told(term) - sg.base[term]
	}
	w.nudge *= side
	before := sg.env.Values[term]
	if at := sg.sheet.plan.place[term]; !sg.holds(at) {
		sg.env.Values[term] += w.nudge
	}
	w.fact = term // everything is worked out again
	v := sg.try(w)
	sg.env.Values[term] = before
	return v
}

// holds says whether a step of the plan belongs to the segment.
func (sg *segment) holds(step int) bool {
	for _, i := range sg.steps {
		if i == step {
			return true
		}
	}
	return false
}
