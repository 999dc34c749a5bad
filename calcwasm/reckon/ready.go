package reckon

import (
	"math/bits"

	"columnbowl/calcwasm/formula"
)

// ready knows of each rule how many of its terms are unknown, and keeps the
// rules that lack one at most. A run goes through its rules some hundred times
// and most of them lack more, most of the time: without it, counting them again
// was three quarters of the work of a keystroke.
type ready struct {
	lacks      []int16 // unknown terms of each rule
	identities ruleSet // by rule: lack one term at most, and may still say something
	estimates  ruleSet // by rule: lack one term at most
}

// ruleSet is a set of places in a list, gone through from the first to the last.
// What is added behind the place last given is still met.
type ruleSet []uint64

func newRuleSet(n int) ruleSet { return make(ruleSet, (n+63)/64) }

func (s ruleSet) add(i int)  { s[i/64] |= 1 << (i % 64) }
func (s ruleSet) drop(i int) { s[i/64] &^= 1 << (i % 64) }

// next is the first member from a place on, -1 if there is none.
func (s ruleSet) next(at int) int {
	if at >= 64*len(s) {
		return -1
	}
	word := s[at/64] >> (at % 64) << (at % 64)
	for w := at / 64; ; word = s[w] {
		if word != 0 {
			return 64*w + bits.TrailingZeros64(word)
		}
		if w++; w == len(s) {
			return -1
		}
	}
}

// readyAtFirst counts with nothing known.
func (b *Book) readyAtFirst() ready {
	d := ready{lacks: make([]int16, len(b.Rules)), identities: newRuleSet(len(b.Rules)), estimates: newRuleSet(len(b.Rules))}
	for i := range b.Rules {
		d.lacks[i] = int16(len(b.Rules[i].terms))
		d.enter(b, i)
	}
	return d
}

// enter takes a rule in that lacks one term at most.
func (d *ready) enter(b *Book, rule int) {
	if d.lacks[rule] > 1 {
		return
	}
	switch b.Rules[rule].Strength {
	case Identity:
		d.identities.add(rule)
	case Estimate:
		d.estimates.add(rule)
	}
}

// learn counts a term that has got a value. A template that is filled has lost
// the choice of families, and the list of the choice's rules knows nothing of it.
func (d *ready) learn(b *Book, term int) {
	for _, i := range b.rulesOf[term] {
		if term == b.bowl && !contains(b.Rules[i].terms, term) {
			continue
		}
		d.lacks[i]--
		d.enter(b, i)
	}
}

// lacking is the one unknown term of a rule that lacks one.
func (r *run) lacking(rule *Rule) int {
	for _, t := range rule.terms {
		if !r.env.Known(t) {
			return t
		}
	}
	return -1
}

// holds says whether a rule holds here, and drops one that never will: a
// condition that is false stays so, as known values stay.
func (r *run) holds(rule int, of ruleSet) bool {
	truth := r.active(&r.book.Rules[rule])
	if truth == formula.False {
		of.drop(rule)
	}
	return truth == formula.True
}
