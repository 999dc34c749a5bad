package ask

import "strings"

// What stands between a phrase and a number, and what it costs.
const (
	costFiller   = 3
	costWord     = 10
	costLink     = 15 // and, with, but
	costComma    = 25
	costSentence = 60
	costAmount   = 40 // another number that the phrase may mean
	costNumber   = 15 // one that it cannot
	costOutside  = 20 // its own piece has a number, but none that fits
	stranger     = 40 // what a phrase loses beside a number of another kind: “pumping 800 gpm”
	costOf       = 2  // the number of “1500 ft of 8 inch pipe”
	wrongSide    = 30 // behind the number where phrases stand before it; tells only whose phrase it is
)

const linkWords = " and with but then while where when at "

// cost adds up what stands between a phrase and an amount. after tells whether
// the phrase stands behind the amount.
func (s *session) cost(p *saying, a int) (cost int, after bool) {
	am := &s.amounts[a]
	from, to := p.to, am.token
	if p.from < am.token && am.token < p.to {
		return 0, false // inside: “draws 40 ft down”
	}
	if after = p.from > am.token; after {
		from, to = am.last+1, p.from
	}
	other := -1
	for i := from; i < to; i++ {
		t := &s.tokens[i]
		switch {
		case t.unit:
		case t.phrase >= 0 && t.phrase != other && s.isValue(t.phrase):
			other = t.phrase
			cost += costFiller
		case t.phrase >= 0 && t.phrase == other:
		case t.class == number:
			cost += s.numberCost(p, a, t.amount, after)
		case t.class == sign:
			cost += signCost(t.text)
		case t.phrase >= 0 && t.phrase != other && s.said[t.phrase].phrase.kind == cue:
			other = t.phrase
			cost += costLink
		case isIn(linkWords, t.text) && t.text != "at":
			cost += costLink
		case isFiller(t.text):
			cost += costFiller
		default:
			cost += costWord
		}
	}
	return cost, after
}

func signCost(text string) int {
	switch {
	case text == ",":
		return costComma
	case strings.Contains(";.!?\n", text):
		return costSentence
	}
	return costFiller
}

// numberCost is the cost of another amount on the way from a phrase to one.
func (s *session) numberCost(p *saying, a, other int, after bool) int {
	if s.amounts[other].none {
		return costFiller
	}
	if after && s.linked(a, other) || !after && s.linked(other, a) {
		return costOf
	}
	for _, sense := range p.phrase.senses {
		if sense.value < 0 && s.fit(&s.amounts[other], sense.term).text != "" {
			return costAmount
		}
	}
	return costNumber
}

// isValue tells whether a phrase is the value of a choice: it stands between
// others like an adjective, “8 inch schedule 40 pipe”.
func (s *session) isValue(c int) bool {
	for _, sense := range s.said[c].phrase.senses {
		if sense.value >= 0 {
			return true
		}
	}
	return false
}

// linked tells whether one amount is of the next: “1500 ft of 8 inch pipe”,
// “600 m of DN 200”.
func (s *session) linked(a, b int) bool {
	if a+1 != b || s.amounts[a].last+1 == s.amounts[b].token {
		return false
	}
	of := false
	for i := s.amounts[a].last + 1; i < s.amounts[b].token; i++ {
		t := &s.tokens[i]
		if t.class == sign || !t.unit && t.text != "of" && t.text != "x" && t.text != "new" && t.text != "the" && !(of && t.phrase >= 0) {
			return false
		}
		of = of || t.text == "of"
	}
	return true
}

// noun is what a phrase behind a bare number loses when another thing is counted
// between: “80 cows”.
func (s *session) noun(a *amount) int {
	if !a.bare() || a.last+1 >= len(s.tokens) {
		return 0
	}
	t := &s.tokens[a.last+1]
	if t.class != word || t.phrase >= 0 || isFiller(t.text) || isIn(linkWords, t.text) {
		return 0
	}
	return stranger
}

// promised tells whether directly before a number stands a phrase for another
// term: the 200 of “DN 200 pipe” is no length.
func (s *session) promised(a, term int) bool {
	at := s.amounts[a].token - 1
	if at < 0 || s.tokens[at].phrase < 0 {
		return false
	}
	other := false
	for _, sense := range s.said[s.tokens[at].phrase].phrase.senses {
		if sense.term == term {
			return false
		}
		other = other || sense.value < 0 && s.fit(&s.amounts[a], sense.term).text != ""
	}
	return other
}

// strange tells whether directly behind a phrase stands a number that cannot be
// what it speaks of: “pumping 800 gpm” says little about a level.
func (s *session) strange(p *saying, term int) bool {
	if len(p.phrase.words) > 1 || p.to >= len(s.tokens) || s.tokens[p.to].class != number {
		return false
	}
	a := &s.amounts[s.tokens[p.to].amount]
	return !a.bare() && !a.word && s.fit(a, term).text == ""
}
