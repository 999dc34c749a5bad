package ask

import "strings"

// evidence is what one phrase says for one amount.
type evidence struct {
	saying, term, score int
	minus               bool
	moved               bool // by a scene, from the term that the phrase says
	said                int  // that term
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
		if other > total+costWord {
			lead = follow
		}
		for a, list := range lead {
			s.evidence[a] = append(s.evidence[a], list...)
		}
		from = to
	}
	s.alternatives()
	s.corrections()
	s.updates()
	s.backwards()
	s.readScenes()
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

// corrections are words between a number and the one that is meant instead.
const corrections = "|correction|make that|sorry|i mean|i meant|scratch that|wait|strike that|no make|"

// corrections gives what is said for a number that is taken back to the next.
func (s *session) corrections() {
	for i := 0; i+1 < len(s.amounts); i++ {
		a, b := &s.amounts[i], &s.amounts[i+1]
		for k := a.last + 1; k < b.token && k < a.last+6; k++ {
			text := s.tokens[k].text
			two := text
			if k+1 < b.token {
				two += " " + s.tokens[k+1].text
			}
			a.replaced = a.replaced || inBars(corrections, text) || inBars(corrections, two)
		}
		if a.replaced && !s.spoken(i+1) {
			s.evidence[i+1] = append(s.evidence[i+1], s.evidence[i]...)
		}
	}
}

// updates reads a number that takes the place of the one before: “the static was
// 41 ft, now its 69”.
func (s *session) updates() {
	for i := 1; i < len(s.amounts); i++ {
		from, _ := s.clause(i, nil)
		for k := from; k < s.amounts[i].token && len(s.evidence[i]) == 0; k++ {
			if isIn(" now today currently nowadays ", s.tokens[k].text) {
				s.evidence[i] = append(s.evidence[i], s.evidence[i-1]...)
			}
		}
	}
}

// backwards reads where something came from: “draws down to 195 from 140”. A pair
// of the vocabulary tells what comes before what.
func (s *session) backwards() {
	for i := 1; i < len(s.amounts); i++ {
		if t := s.amounts[i].token - 1; t < 0 || s.tokens[t].text != "from" || s.spoken(i) {
			continue
		}
		for _, two := range s.pairs {
			for _, e := range s.evidence[i-1] {
				if e.score >= some && (e.term == two[1] || s.below(e.term, two[0])) {
					s.evidence[i] = append(s.evidence[i], evidence{saying: e.saying, term: two[0], score: byCue})
				}
			}
		}
	}
}

// below tells whether a term stands directly below another one where the
// vocabulary tells what rises: a drawdown is below the static level.
func (s *session) below(term, next int) bool {
	for _, list := range s.rising {
		if len(list) > 1 && list[0] == term && list[1] == next {
			return true
		}
	}
	return false
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
			p, am := &s.said[c], &s.amounts[a]
			am.none = am.none || !am.led && s.behind(am, p.from) || p.from < am.token && am.token < p.to
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
		if len(senses) == 0 { // “screen length 40 ft”: no term of the book
			s.amounts[a].none = true
			continue
		}
		s.evidence[a] = append(s.evidence[a], evidence{saying: c, term: senses[0].term, score: senses[0].weight + 2*perWord})
		if a+1 == len(s.amounts) || !s.reaches(&s.amounts[a], &s.amounts[a+1]) {
			continue
		}
		if len(senses) == 1 { // “screened 240 to 300”: the end is no fact
			s.amounts[a+1].none = true
			continue
		}
		s.evidence[a+1] = append(s.evidence[a+1], evidence{saying: c, term: senses[1].term, score: senses[1].weight + 2*perWord})
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
			if a >= 0 && sense.weight <= byLean && len(p.phrase.words) == 1 && s.amounts[a].bare() && s.amounts[a].token < p.from && strings.HasSuffix(s.tokens[p.from].text, "s") {
				continue // “2 pivots” are no pressure
			}
			score := sense.weight - p.loss - loss
			if sense.weight >= byCue {
				score += perWord * (len(p.phrase.words) - 1)
			}
			if a >= 0 && score > 0 {
				list[a] = append(list[a], evidence{saying: c, term: sense.term, score: score, minus: sense.minus})
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
