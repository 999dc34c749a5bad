package ask

import (
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/search"
	"columnbowl/calcwasm/unit"
)

// plainTerms are the terms that an amount may be by its unit: those of its group
// in the vocabulary, or all of the kind that a person can supply or speaks of. single tells
// that the vocabulary names one only.
func (s *session) plainTerms(a *amount, said []Candidate) (terms []int, single bool) {
	for _, u := range a.units() {
		for g := range s.groups {
			if s.groups[g].has(u) {
				terms = append(terms, s.groups[g].terms...)
			}
		}
	}
	for _, t := range terms {
		if s.fit(a, t).text != "" {
			return terms, len(terms) == 1
		}
	}
	terms = nil
	for t := range s.book.Terms {
		if term := &s.book.Terms[t]; term.Kind != formula.Choice && (term.Ask != "" || find(said, t) >= 0) && s.fit(a, t).text != "" {
			terms = append(terms, t)
		}
	}
	return terms, false
}

// has tells whether a unit is of the kind of a group.
func (g *group) has(u *unit.Unit) bool {
	for _, v := range g.units {
		if v.Dim == u.Dim && (v.Dim != unit.Length || small(v) == small(u)) && (v.Dim != unit.None || v.Symbol == u.Symbol) {
			return true
		}
	}
	return false
}

// usual tells whether a term is the one that a unit of the amount mostly means.
func (s *session) usual(a *amount, term int) bool {
	for g := range s.groups {
		if p := &s.groups[g]; p.sure && p.terms[0] == term && a.unit != nil && p.has(a.unit) {
			return true
		}
	}
	return false
}

// plainly tells whether an amount is a term because its unit says so and
// nothing in the sentence says otherwise: “8 stages, 700 gpm”. A second amount of
// the kind does, and so does a place behind another thing: “static 180 at 400 gpm”.
func (s *session) plainly(i, term int) bool {
	a := &s.amounts[i]
	if a.unit == nil || a.joint == " to " || strings.HasSuffix(strings.ToLower(a.unit.Symbol), "d") { // a day may have fewer hours
		return false
	}
	sure := false
	for g := range s.groups {
		p := &s.groups[g]
		sure = sure || p.sure && p.terms[0] == term && p.has(a.unit) && !isIn(p.unless, a.low) && !isIn(p.unless, a.unit.Symbol)
	}
	if !sure || s.saidAt(a) || s.changed(i) || s.turned(i, nil) {
		return false
	}
	for _, e := range s.evidence[i] {
		if e.term != term && e.score >= some || s.said[e.saying].phrase.kind == scene {
			return false
		}
	}
	from, to := s.clause(i, nil)
	for k := from; k < to; k++ {
		if c := s.tokens[k].phrase; c >= 0 && !s.tokens[k].unit && !s.spent(k) && s.means(&s.said[c], term) {
			return false
		}
	}
	from, to = s.around(a.token, a.token, s.closes)
	for k := a.token; k >= 0 && !s.stops(k); k-- {
		if isIn(tests, s.tokens[k].text) {
			return false
		}
	}
	for k := from; k < to; k++ {
		if t := &s.tokens[k]; isIn(seen, t.text) || t.class == word && turnsMeaning(t.text) && !s.given(k, i) {
			return false
		}
	}
	for o := range s.amounts {
		if o != i && s.amounts[o].unit != nil && s.amounts[o].unit.Dim == a.unit.Dim {
			return false
		}
	}
	return true
}

// changed tells whether an amount is what another one is changed to: “slowed from
// 1770 to 1550 rpm”.
func (s *session) changed(i int) bool {
	k := s.amounts[i].token - 1
	return k > 0 && s.tokens[k].text == "to" && (s.tokens[k-1].class == number || s.tokens[k-1].unit)
}

// means tells whether a phrase means something else than a term: another one, or
// a choice that follows from a sign.
func (s *session) means(p *saying, term int) bool {
	other := false
	for _, sense := range p.phrase.senses {
		if sense.term == term {
			return false
		}
		other = other || sense.weight >= byLean && (sense.value < 0 || sense.weight < byName)
	}
	return other
}

// seen are words of what is observed, which need not be what is wanted.
const seen = " when while does doing did making makes made getting get gets got giving gives throws pumps pumping running runs ran shows showing reads see sees saw puts delivers delivering produces "

// tests are words before what was measured.
const tests = " test tests tested testing trial measured "

// saidAt tells whether an amount is where something else was seen.
func (s *session) saidAt(a *amount) bool {
	k := a.token - 1
	for k >= 0 && isIn(" the a about around abt approx ~ ", s.tokens[k].text) {
		k--
	}
	return k >= 0 && isIn(" at @ ", s.tokens[k].text)
}

// units are all units that an amount may be in.
func (a *amount) units() []*unit.Unit {
	var list []*unit.Unit
	if a.unit != nil {
		list = append(list, a.unit)
	}
	for _, al := range a.aliases {
		if a.unit == nil || al.unit.Symbol != a.unit.Symbol {
			list = append(list, al.unit)
		}
	}
	return list
}

// hinted adds the terms in whose names words beside an amount stand, and whose
// unit fits: enough for a question, never for more.
func (s *session) hinted(i int, r *Reading, clear bool) {
	a := &s.amounts[i]
	reach := reachOfNames
	if a.bare() {
		reach = reachOfBare
	}
	for k := max(0, a.token-reach); k < min(len(s.tokens), a.last+1+reach); k++ {
		t := &s.tokens[k]
		near := k >= a.token-reachOfBare && k <= a.last+reachOfBare
		if t.class != word || t.unit || !near && s.given(k, i) {
			continue
		}
		key := ownKey(t.text, t.stem)
		if len(s.owners[key]) == 0 && t.spelt != "" {
			key = ownKey(t.spelt, search.Stem(t.spelt))
		}
		for _, o := range s.owners[key] {
			if f := s.fit(a, o); f.text == "" || f.loss > 0 || a.bare() && s.book.Terms[o].Ask == "" {
				continue
			}
			score := byNameWord
			if find(r.Candidates, o) < 0 {
				score += s.overlap(i, o)
				if a.bare() {
					score += byUnit / 2
				} else {
					score += byUnit - byQuery
				}
			}
			if clear {
				score = byNameWord
				if find(r.Candidates, o) < 0 {
					score += some
				}
			}
			s.raise(a, r, o, score)
		}
	}
}

// How many words from an amount a word of a name counts; fewer from one without
// a unit.
const (
	reachOfNames = 12
	reachOfBare  = 5
)

// overlap counts the words beside an amount that stand in the question for a
// term: it decides only the order of what is asked.
func (s *session) overlap(i, term int) int {
	a := &s.amounts[i]
	score := 0
	for k := max(0, a.token-5); k < min(len(s.tokens), a.last+6); k++ {
		t := &s.tokens[k]
		if t.class == word && len(t.text) > 3 && !isFiller(t.text) && s.asks[term][t.stem] {
			score += byQuery
		}
	}
	return min(score, 2*byQuery)
}
