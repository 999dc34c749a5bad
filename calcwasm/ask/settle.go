package ask

import (
	"strings"

	"columnbowl/calcwasm/unit"
)

// settle looks at all readings together: a term has one value, so that two
// different ones are asked back, unless one was said and the other only guessed
// by its unit.
func (s *session) settle(list []Reading) {
	for i := range list {
		for j := range i {
			a, b := &list[j], &list[i]
			if a.State != Sure || b.State != Sure || a.Candidates[0].Term != b.Candidates[0].Term {
				continue
			}
			if s.sameValue(&a.Candidates[0], &b.Candidates[0]) {
				continue
			}
			d := a.Candidates[0].score - b.Candidates[0].score
			if d < ahead {
				s.doubt(a)
			}
			if -d < ahead {
				s.doubt(b)
			}
		}
	}
	s.ordered(list)
	s.contested(list)
	s.doubled(list)
}

// doubled asks what is taken for a term that another number of the sentence most
// likely is, with another value. A size that is measured is taken, and the one
// that only names the pipe is no value of the term: “casing 16, inside measures
// 15-1/4”.
func (s *session) doubled(list []Reading) {
	for i := range list {
		for j := range list {
			a, b := &list[i], &list[j]
			if a.State != Sure || b.State != Asked || a.Candidates[0].Term != b.Candidates[0].Term || s.sameValue(&a.Candidates[0], &b.Candidates[0]) {
				continue
			}
			if t := &s.book.Terms[a.Candidates[0].Term]; t.US.Dim == unit.Length && small(t.US) && b.Candidates[0].score < byCue {
				s.withdraw(b)
			} else if b.Candidates[0].score >= enough {
				s.doubt(a)
			}
		}
	}
}

// withdraw takes the first candidate out of a question.
func (s *session) withdraw(r *Reading) {
	piece := s.text[r.From:r.To]
	if r.Candidates = r.Candidates[1:]; len(r.Candidates) > 0 && r.Candidates[0].score >= some {
		r.Message = s.question(piece, r.Candidates)
		return
	}
	r.State, r.Candidates = Unknown, nil
	r.Message = "“" + strings.TrimSpace(piece) + "” is a size of what another number measures."
}

// alternatively are words before what is set against something.
const alternatively = " or other others instead going change changing switch switching upgrade upgrading "

// contested asks what another amount of the kind is set against: “one says 70 ft,
// the other 82 ft”.
func (s *session) contested(list []Reading) {
	for k := range s.tokens {
		if !isIn(alternatively, s.tokens[k].text) {
			continue
		}
		next := s.amountAfter(k)
		if next < 0 || s.spoken(next) {
			continue
		}
		for i := range list {
			r := &list[i]
			if r.State == Sure && r.To <= s.tokens[k].from && s.fits1(&s.amounts[next], r.Candidates[0].Term) && s.last(next, r.Candidates[0].Term) == r.From {
				s.doubt(r)
			}
		}
	}
}

// last is where the last amount before another one stands that can be a term,
// or -1.
func (s *session) last(i, term int) int {
	for i--; i >= 0; i-- {
		if s.fits1(&s.amounts[i], term) {
			return s.amounts[i].from
		}
	}
	return -1
}

// amountAfter is the first amount behind a token in its clause, or -1.
func (s *session) amountAfter(k int) int {
	for ; k < len(s.tokens) && !s.closes(k); k++ {
		if s.tokens[k].class == number {
			return s.tokens[k].amount
		}
	}
	return -1
}

// ordered asks what does not rise as the book says that it does: a drawdown that
// is larger than the static level may be a level.
func (s *session) ordered(list []Reading) {
	for _, terms := range s.rising {
		last := -1
		for _, t := range terms {
			at := sureOf(list, t)
			if at < 0 {
				continue
			}
			if last >= 0 && !s.rises(&list[last], &list[at]) {
				s.doubt(&list[last])
				s.doubt(&list[at])
			}
			last = at
		}
	}
}

// sureOf is the place of the reading that is sure to be a term, or -1.
func sureOf(list []Reading, term int) int {
	for i := range list {
		if list[i].State == Sure && list[i].Candidates[0].Term == term {
			return i
		}
	}
	return -1
}

// rises tells whether a fact is below another one.
func (s *session) rises(a, b *Reading) bool {
	x, errX := s.book.Read(a.Candidates[0].Term, a.Candidates[0].Value)
	y, errY := s.book.Read(b.Candidates[0].Term, b.Candidates[0].Value)
	return errX != nil || errY != nil || x.Likely <= y.Likely
}

func (s *session) sameValue(a, b *Candidate) bool {
	x, errX := s.book.Read(a.Term, a.Value)
	y, errY := s.book.Read(b.Term, b.Value)
	return errX == nil && errY == nil && x.Low == y.Low && x.High == y.High
}

// doubt makes a question of a reading.
func (s *session) doubt(r *Reading) {
	r.State = Asked
	r.Message = s.question(s.text[r.From:r.To], r.Candidates)
}

// choices reads the phrases that are values of choices: “submersible”.
func (s *session) choices() []Reading {
	var list []Reading
	for c := range s.said {
		p := &s.said[c]
		if p.phrase.kind != cue || p.negated {
			continue
		}
		r := Reading{From: p.first, To: p.last}
		piece := s.text[p.first:p.last]
		for _, sense := range p.phrase.senses {
			if sense.value >= 0 {
				r.Candidates = append(r.Candidates, Candidate{Term: sense.term, Value: s.book.Terms[sense.term].Values[sense.value],
					Reason: "“" + piece + "”", score: sense.weight - p.loss})
			}
		}
		if len(r.Candidates) == 0 || len(r.Candidates) > 1 && p.taken {
			continue
		}
		r.State = Sure
		if len(r.Candidates) > 1 || r.Candidates[0].score < byCue-costOfSpelling || s.turnedChoice(p) {
			r.State = Asked
			r.Message = s.question(piece, r.Candidates)
		}
		list = append(list, r)
	}
	return s.settleChoices(list)
}

// turnedChoice tells whether a word near a value of a choice makes it one that
// was, or may be: “had a sub in there”.
func (s *session) turnedChoice(p *saying) bool {
	from, to := s.around(p.from, p.to, func(k int) bool { return s.tokens[k].class == sign })
	if isIn(" is are was does do did has ", s.tokens[from].text) && to < len(s.tokens) && s.tokens[to].text == "?" {
		return true
	}
	for k := from; k < to; k++ {
		t := &s.tokens[k]
		if isIn(" can could should ", t.text) && k+1 < to && isIn(" i we it ", s.tokens[k+1].text) {
			return true
		}
		if (k < p.from || k >= p.to) && t.class == word && !t.unit && turnsMeaning(t.text) {
			return true
		}
	}
	return s.bygone(p.from)
}

// settleChoices keeps one reading of each choice; a question whose answer stands
// elsewhere in the sentence is dropped, and values that contradict are asked.
func (s *session) settleChoices(list []Reading) []Reading {
	var kept []Reading
next:
	for i := range list {
		r := &list[i]
		for j := range list {
			o := &list[j]
			if i != j && r.State == Sure && o.State == Asked && o.Candidates[0].score <= byLean && o.Candidates[0].Term == r.Candidates[0].Term && !has(o.Candidates, &r.Candidates[0]) {
				r.Message = s.question(s.text[r.From:r.To], append(r.Candidates[:1:1], o.Candidates[0]))
			}
			if i == j || o.State != Sure {
				continue
			}
			answer := &o.Candidates[0]
			if has(r.Candidates, answer) && (r.State == Asked || j < i) {
				continue next // said already
			}
			if r.State == Sure && r.Candidates[0].Term == answer.Term && r.Candidates[0].Value != answer.Value {
				r.Message = s.question(s.text[r.From:r.To], append(r.Candidates[:1:1], *answer))
			}
		}
		kept = append(kept, *r)
	}
	for i := range kept {
		if kept[i].State == Sure && kept[i].Message != "" {
			kept[i].State = Asked
		}
	}
	return kept
}

func has(list []Candidate, c *Candidate) bool {
	for i := range list {
		if list[i].Term == c.Term && list[i].Value == c.Value {
			return true
		}
	}
	return false
}
