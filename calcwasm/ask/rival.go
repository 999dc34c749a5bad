package ask

import (
	"strings"

	"columnbowl/calcwasm/formula"
)

// How many terms have a word in their names that tells them apart.
const (
	few     = 6
	veryFew = 5
)

// elsewise tells whether something in the sentence speaks for another term that
// the amount could be: a phrase or a rare word of the clause, or a word anywhere
// that very few terms have in their names. What has been given to another number
// of that kind does not count.
func (s *session) elsewise(i int, p *saying, term int) bool {
	from, to := s.clause(i, p)
	sized := !s.amounts[i].bare() || strings.Contains(s.amounts[i].low, "/")
	clear := len(p.phrase.words) > 1 || s.nameOf(p, term)
	for k := range s.tokens {
		t := &s.tokens[k]
		near := from <= k && k < to
		if t.class != word || t.unit || p.from <= k && k < p.to || s.given(k, i) || t.phrase >= 0 && s.said[t.phrase].negated {
			continue
		}
		if t.phrase >= 0 && s.leads(&s.said[t.phrase], i) {
			continue
		}
		if t.phrase >= 0 && (near && s.speaksOf(&s.said[t.phrase], i, term) || !near && s.waits(&s.said[t.phrase], i, term)) {
			return true
		}
		owners := s.owners[ownKey(t.text, t.stem)]
		if (clear || !near) && sized || len(owners) > few || !near && (len(owners) > veryFew || s.spent(k)) {
			continue
		}
		for _, o := range owners {
			if s.other(i, o, term) {
				return true
			}
		}
	}
	return false
}

// leads tells whether a phrase stands directly before another number, whose it
// is then.
func (s *session) leads(p *saying, i int) bool {
	return p.to < len(s.tokens) && s.tokens[p.to].class == number && s.tokens[p.to].amount != i && p.from > s.amounts[i].token
}

// nameOf tells whether a phrase is the name of a term.
func (s *session) nameOf(p *saying, term int) bool {
	for _, sense := range p.phrase.senses {
		if sense.term == term && sense.weight >= byName {
			return true
		}
	}
	return false
}

// speaksOf tells whether a phrase is more than a hint of a term other than one.
func (s *session) speaksOf(p *saying, i, term int) bool {
	for _, sense := range p.phrase.senses {
		if sense.value < 0 && sense.weight >= byLean && s.other(i, sense.term, term) {
			return true
		}
	}
	return false
}

// waits tells whether a phrase elsewhere in the sentence names a term that this
// amount could be and no other one can: “airline 230 ft, gauge reads 22 psi”.
func (s *session) waits(p *saying, i, term int) bool {
	for _, sense := range p.phrase.senses {
		if sense.value >= 0 || sense.weight < byCue || s.amounts[i].bare() || !s.other(i, sense.term, term) {
			continue
		}
		alone := true
		for o := range s.amounts {
			alone = alone && (o == i || s.amounts[o].none || !s.fits1(&s.amounts[o], sense.term))
		}
		if alone {
			return true
		}
	}
	return false
}

// other tells whether an amount could as well be another term: of a number
// without a unit one of the same kind.
func (s *session) other(i, other, term int) bool {
	a := &s.amounts[i]
	if t := &s.book.Terms[term]; t.Kind == formula.Count && s.book.Terms[other].Kind != formula.Count {
		return false
	}
	if other == term || a.bare() && s.book.Terms[other].US != nil && s.book.Terms[other].US.Dim != s.book.Terms[term].US.Dim {
		return false
	}
	return s.fits1(a, other)
}

// fits1 tells whether an amount can be a term, in a unit that is usual for it.
func (s *session) fits1(a *amount, term int) bool {
	f := s.fit(a, term)
	return f.text != "" && f.loss == 0
}

// given tells whether a token belongs to a phrase that stands beside another
// amount of the same kind.
func (s *session) given(k, i int) bool {
	c := s.tokens[k].phrase
	if c < 0 {
		return false
	}
	for o := range s.amounts {
		if o == i || s.amounts[o].none || !s.beside(&s.said[c], o) {
			continue
		}
		for _, e := range s.evidence[o] {
			if e.saying == c && s.fits1(&s.amounts[i], e.term) {
				return true
			}
		}
	}
	return false
}

// spent tells whether a token belongs to a phrase that stands beside a number.
func (s *session) spent(k int) bool {
	c := s.tokens[k].phrase
	if c < 0 {
		return false
	}
	for o := range s.amounts {
		if s.meant(&s.said[c], o) && s.beside(&s.said[c], o) {
			return true
		}
	}
	return false
}
