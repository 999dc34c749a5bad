package ask

import (
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// When a reading is sure.
const (
	enough     = 50 // what must be said for a term
	ahead      = 25 // and how much more than for the next one
	some       = 20 // below it a phrase says nothing about an amount
	byUnit     = 35 // what a unit says for the terms that are plain in it
	byNameWord = 8  // for each word of its name beside the amount
	byQuery    = 5  // for each word of the question for a term
)

// judge weighs what is said for one amount.
func (s *session) judge(i int) Reading {
	a := &s.amounts[i]
	r := Reading{From: a.from, To: a.to}
	piece := strings.TrimSpace(s.text[a.from:a.to])
	switch {
	case a.none:
		r.Message = "“" + piece + "” is nothing that this book reckons with."
		return r
	case a.relative:
		r.Message = "“" + piece + "” is counted from something else, not from where the book counts."
		return r
	case a.negated || a.replaced:
		r.Message = "“" + piece + "” is said not to be so."
		return r
	}
	r.Candidates = s.candidates(i)
	if r.Message = s.refused(i); r.Message != "" && len(r.Candidates) == 0 {
		return r
	}
	loose := s.weigh(i, &r)
	if len(r.Candidates) == 0 || r.Candidates[0].score < some {
		r.Candidates = nil
		r.Message = s.whyNot(i, piece)
		return r
	}
	best, next := r.Candidates[0].score, 0
	if len(r.Candidates) > 1 {
		next = r.Candidates[1].score
	}
	if best >= enough && best-next >= ahead && !loose && !a.either && !a.bound && !(a.bare() && s.unclearUnit(r.Candidates[0].Term)) && s.firm(i, r.Candidates[0].Term) {
		r.State, r.Message = Sure, ""
		s.take(i, r.Candidates[0].Term)
	} else {
		r.State = Asked
		r.Candidates = s.rivals(r.Candidates)
		r.Message = s.question(piece, r.Candidates)
		if f := s.fit(a, r.Candidates[0].Term); a.bare() && f.loose && f.why != "" && len(r.Candidates) == 1 { // 0.8 % or 80 %
			r.Message = f.why
			if text, _ := s.reads(r.Candidates[0].Term, a.write("%", 1)); text != "" {
				r.Candidates = append(r.Candidates, Candidate{Term: r.Candidates[0].Term, Value: text, Reason: r.Candidates[0].Reason})
			}
		}
	}
	return r
}

// take marks the phrases by which an amount was read.
func (s *session) take(i, term int) {
	for _, e := range s.evidence[i] {
		if e.term == term && e.score >= enough {
			s.said[e.saying].taken = true
		}
	}
}

// unclearUnit tells whether a bare number may be in either of two units.
func (s *session) unclearUnit(term int) bool {
	t := &s.book.Terms[term]
	return t.US != t.SI && s.si && s.us
}

// candidates are the terms for which phrases speak, with what they say.
func (s *session) candidates(i int) []Candidate {
	var list []Candidate
	for _, e := range s.evidence[i] {
		f := s.fit(&s.amounts[i], e.term)
		if e.minus {
			f.text = s.minus(&s.amounts[i], e.term, f.text)
		}
		if f.text == "" {
			continue
		}
		said := &s.said[e.saying]
		at := find(list, e.term)
		if at < 0 {
			list = append(list, Candidate{Term: e.term, Value: f.text, Reason: "“" + s.text[said.first:said.last] + "”", score: e.score})
			continue
		}
		c := &list[at]
		if e.minus {
			c.Value = f.text
		}
		if e.score > c.score {
			c.Reason = "“" + s.text[said.first:said.last] + "”"
		}
		// A second phrase for the same term makes it likelier, a second clear
		// one not by its whole weight.
		more := min(c.score, e.score, byHint)
		if c.score = max(c.score, e.score); c.score >= enough {
			more /= 2
		}
		c.score += more
	}
	if s.amounts[i].joint == " to " {
		list = s.between(i, list)
	}
	sortCandidates(list)
	return list
}

// between adds, to a range of what the vocabulary puts between a least and a
// most, these two: “700 to 800 gpm” may be either.
func (s *session) between(i int, list []Candidate) []Candidate {
	for _, terms := range s.rising {
		at := -1
		if len(terms) == 3 {
			at = find(list, terms[1])
		}
		if at < 0 {
			continue
		}
		for _, t := range [...]int{terms[0], terms[2]} {
			if f := s.fit(&s.amounts[i], t); f.text != "" && find(list, t) < 0 {
				list = append(list, Candidate{Term: t, Value: f.text, Reason: list[at].Reason, score: list[at].score})
			}
		}
	}
	return list
}

// minus is the amount below nothing as a value of a term, or "" if it cannot be.
func (s *session) minus(a *amount, term int, text string) string {
	if a.joint != "" || text == "" || text[0] == '-' {
		return text
	}
	b := *a
	b.low = "-" + b.low
	return s.newFit(&b, term).text
}

func find(list []Candidate, term int) int {
	for i := range list {
		if list[i].Term == term {
			return i
		}
	}
	return -1
}

// weigh adds what the unit alone says, unless a phrase has said enough, and puts
// what else it might be behind. It tells whether the best one is loose.
func (s *session) weigh(i int, r *Reading) (loose bool) {
	a := &s.amounts[i]
	clear := len(r.Candidates) > 0 && r.Candidates[0].score >= enough
	said := len(r.Candidates) > 0 && r.Candidates[0].score >= some
	if !a.bare() {
		terms, single := s.plainTerms(a, r.Candidates)
		for _, t := range terms {
			score := byUnit + s.overlap(i, t)
			if single && !said {
				score += byHint
			} else if s.plainly(i, t) {
				score += 2 * byHint
			}
			if s.usual(a, t) {
				score += byQuery
			}
			if clear {
				score = some
			}
			s.raise(a, r, t, score)
		}
	}
	s.hinted(i, r, clear)
	if !a.bare() {
		s.others(a, r)
	}
	sortCandidates(r.Candidates)
	if len(r.Candidates) > mostCandidates {
		r.Candidates = r.Candidates[:mostCandidates]
	}
	if len(r.Candidates) > 0 {
		f := s.fit(a, r.Candidates[0].Term)
		loose = f.loose
	}
	return loose
}

// others adds, for correcting by hand, further terms that the amount may be.
func (s *session) others(a *amount, r *Reading) {
	for t := range s.book.Terms {
		term := &s.book.Terms[t]
		if len(r.Candidates) >= mostCandidates {
			return
		}
		if term.Kind != formula.Choice && term.Ask != "" && find(r.Candidates, t) < 0 {
			s.raise(a, r, t, 0)
		}
	}
}

// raise adds to what is said for a term.
func (s *session) raise(a *amount, r *Reading, term, score int) {
	if at := find(r.Candidates, term); at >= 0 {
		r.Candidates[at].score += score
		return
	}
	if f := s.fit(a, term); f.text != "" {
		r.Candidates = append(r.Candidates, Candidate{Term: term, Value: f.text, Reason: a.kind(), score: score - f.loss})
	}
}

// kind is the reason that an amount's unit gives.
func (a *amount) kind() string {
	u := a.unit
	if a.bare() {
		return "a number"
	}
	if u == nil {
		u = a.aliases[0].unit
	}
	if u.Dim == unit.None {
		return "a pure number"
	}
	return "a " + u.Dim.String()
}

// refused is what the field of a term answers when its phrase stands beside an
// amount that the term cannot be, and speaks for no other: “drawdown 7000 ft”.
func (s *session) refused(i int) string {
	for c := range s.said {
		p := &s.said[c]
		if p.phrase.kind != cue || p.negated || s.speaks(c) {
			continue
		}
		if cost, _ := s.cost(p, i); cost > costFiller {
			continue
		}
		for _, sense := range p.phrase.senses {
			if sense.value < 0 && sense.weight >= byCue {
				if f := s.fit(&s.amounts[i], sense.term); f.why != "" {
					return f.why
				}
			}
		}
	}
	return ""
}

// speaks tells whether a phrase says something for an amount.
func (s *session) speaks(c int) bool {
	for _, list := range s.evidence {
		for _, e := range list {
			if e.saying == c {
				return true
			}
		}
	}
	return false
}

// whyNot tells why an amount is no fact.
func (s *session) whyNot(i int, piece string) string {
	a := &s.amounts[i]
	if a.bare() {
		return "I read “" + piece + "”, but not what it is: write what it is, or its unit, beside it."
	}
	return "I read “" + piece + "”, but find nothing in this book that it may be."
}

// sortCandidates puts the likeliest first, and keeps the order of equals.
func sortCandidates(list []Candidate) {
	for i := 1; i < len(list); i++ {
		for j := i; j > 0 && list[j].score > list[j-1].score; j-- {
			list[j], list[j-1] = list[j-1], list[j]
		}
	}
}
