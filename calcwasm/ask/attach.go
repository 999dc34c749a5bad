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

// evidence is what one phrase says for one amount.
type evidence struct {
	saying, term, score int
}

// attach gives each phrase to an amount for each of its terms. In every piece
// between commas phrases stand before their numbers or behind them: the way in
// which more is understood is taken.
func (s *session) attach() {
	s.doubles()
	s.nothings()
	s.evidence = make([][]evidence, len(s.amounts))
	piece := s.pieces()
	for c := range s.said {
		if s.said[c].phrase.kind == pair && !s.said[c].negated {
			s.pair(c)
		}
	}
	for from := 0; from < len(s.said); {
		to := from
		for to < len(s.said) && piece[s.said[to].from] == piece[s.said[from].from] {
			to++
		}
		lead, total := s.assign(from, to, piece, true)
		follow, other := s.assign(from, to, piece, false)
		if other > total {
			lead = follow
		}
		for a, list := range lead {
			s.evidence[a] = append(s.evidence[a], list...)
		}
		from = to
	}
	s.alternatives()
}

// alternatives gives what is said for the first of two numbers to the second:
// “static is 100 or 110”. Neither is then sure.
func (s *session) alternatives() {
	for i := 0; i+1 < len(s.amounts); i++ {
		a, b := &s.amounts[i], &s.amounts[i+1]
		if strings.TrimSpace(s.text[a.to:b.from]) != "or" {
			continue
		}
		a.either, b.either = true, true
		if len(s.evidence[i+1]) == 0 {
			s.evidence[i+1] = s.evidence[i]
		} else if len(s.evidence[i]) == 0 {
			s.evidence[i] = s.evidence[i+1]
		}
	}
}

// pieces numbers the pieces of the sentence, for each token.
func (s *session) pieces() []int {
	list := make([]int, len(s.tokens)+1)
	n := 0
	for i := range s.tokens {
		if t := &s.tokens[i]; t.class == sign && strings.Contains(",;.!?\n", t.text) {
			n++
		}
		list[i] = n
	}
	return list
}

// nothings marks amounts that stand beside a phrase which says that they are no
// fact of the book.
func (s *session) nothings() {
	for c := range s.said {
		if s.said[c].phrase.kind != nothing {
			continue
		}
		for a := range s.amounts {
			if s.behind(&s.amounts[a], s.said[c].from) {
				s.amounts[a].none = true
			}
		}
	}
}

// behind tells whether a token stands behind an amount with nothing between but
// its unit and a filler.
func (s *session) behind(a *amount, token int) bool {
	at, filler := a.last+1, false
	for ; at < token && (s.tokens[at].unit || !filler && isFiller(s.tokens[at].text)); at++ {
		filler = filler || !s.tokens[at].unit
	}
	return at == token
}

// pair gives two facts to the two amounts behind a phrase.
func (s *session) pair(c int) {
	senses := s.said[c].phrase.senses
	for a := range s.amounts {
		if s.pairBefore(&s.amounts[a]) != c {
			continue
		}
		s.evidence[a] = append(s.evidence[a], evidence{c, senses[0].term, senses[0].weight + 2*perWord})
		if a+1 == len(s.amounts) || !s.reaches(&s.amounts[a], &s.amounts[a+1]) {
			continue
		}
		if len(senses) == 1 { // “screened 240 to 300”: the end is no fact
			s.amounts[a+1].none = true
			continue
		}
		s.evidence[a+1] = append(s.evidence[a+1], evidence{c, senses[1].term, senses[1].weight + 2*perWord})
	}
}

// reaches tells whether two amounts are joined as a range is.
func (s *session) reaches(a, b *amount) bool {
	between := strings.ToLower(strings.Join(strings.Fields(s.text[a.to:b.from]), " "))
	return between != "" && (isIn(spanWords, between) || between == "and" || between == "down to")
}

// assign gives the phrases from..to, all of one piece, to amounts. total is how
// much is understood: for each amount the best that is said for it.
func (s *session) assign(from, to int, piece []int, lead bool) (list [][]evidence, total int) {
	list = make([][]evidence, len(s.amounts))
	for c := from; c < to; c++ {
		p := &s.said[c]
		if p.phrase.kind != cue || p.negated {
			continue
		}
		for _, sense := range p.phrase.senses {
			if sense.value >= 0 {
				continue
			}
			a, loss := s.nearest(p, sense.term, piece, lead)
			if a >= 0 && sense.weight <= byLean && len(p.phrase.words) == 1 && s.amounts[a].bare() && s.amounts[a].token < p.from {
				continue // “2 pivots” are no pressure
			}
			score := sense.weight - p.loss - loss
			if sense.weight != byLean {
				score += perWord * (len(p.phrase.words) - 1)
			}
			if a >= 0 && score > 0 {
				list[a] = append(list[a], evidence{c, sense.term, score})
			}
		}
	}
	for a := range list {
		best := 0
		for _, e := range list[a] {
			best = max(best, e.score)
		}
		total += best
	}
	return list, total
}

// nearest finds the amount to which a phrase belongs for a term. Only where its
// own piece has none that fits it looks into others.
func (s *session) nearest(p *saying, term int, piece []int, lead bool) (best, loss int) {
	numbers := 0
	for _, own := range [...]bool{true, false} {
		best = -1
		least := 0
		for a := range s.amounts {
			am := &s.amounts[a]
			if p.amount > 0 && a != p.amount-1 || am.none || am.negated || am.word || am.relative || (piece[am.token] == piece[p.from]) != own {
				continue
			}
			f := s.fit(am, term)
			cost, after := s.cost(p, a)
			if own {
				numbers++
			}
			if f.text == "" || own && f.loss > 0 && cost > 0 {
				continue
			}
			if !own && numbers > 0 {
				cost += costOutside
			}
			if after && cost > 0 {
				cost += s.noun(am)
			}
			rank := cost + f.loss
			switch {
			case after && a+1 < len(s.amounts) && s.linked(a, a+1) && s.amounts[a+1].token < p.from:
				rank -= costWord // “1500 ft of 8 inch pipe” holds together
			case after == lead:
				rank += wrongSide
			}
			if after && s.promised(a, term) {
				rank += wrongSide
			}
			if p.amount > 0 {
				cost = 0
			}
			if best < 0 || rank < least {
				best, least, loss = a, rank, cost+f.loss
			}
		}
		if best >= 0 {
			if loss > 0 && s.strange(p, term) {
				loss += stranger
			}
			return best, loss
		}
	}
	return -1, 0
}

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
	if a+1 != b {
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
