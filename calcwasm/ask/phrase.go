package ask

import (
	"strings"

	"columnbowl/calcwasm/search"
)

// saying is a phrase of the vocabulary that stands in the sentence.
type saying struct {
	phrase      *phrase
	from, to    int // its tokens, to behind the last
	at          []int
	amount      int // the place of the only amount it may speak of, and 1; 0 for any
	loss        int // for words spelt otherwise
	negated     bool
	taken       bool // some amount was read by it
	first, last int  // bytes
}

// has tells whether a token is a word of the phrase, not one that stands inside.
func (c *saying) has(token int) bool {
	for _, k := range c.at {
		if k == token {
			return true
		}
	}
	return false
}

// costOfSpelling is what a phrase loses for each word spelt otherwise.
const costOfSpelling = 12

// match finds the phrases: at each word the one that covers most, and no word
// in two of them.
func (s *session) match() {
	for i := 0; i < len(s.tokens); {
		best := saying{}
		for _, form := range s.forms(&s.tokens[i]) {
			for _, p := range s.first[form] {
				if s.tokens[i].plain && (s.phrases[p].kind != nothing || s.tokens[i-1].class != number) {
					continue // of a unit: only “hours a day” as a whole
				}
				c, ok := s.fits(&s.phrases[p], i)
				if ok && (better(&c, &best) || s.takesOut(&c, &best)) {
					best = c
				}
			}
		}
		if best.phrase == nil {
			i++
			continue
		}
		best.negated = s.negated(best.from, best.to)
		best.first, best.last = s.tokens[best.from].from, s.tokens[best.to-1].to
		for _, k := range best.at {
			s.tokens[k].phrase = len(s.said)
			if s.tokens[k].class == number { // “schedule 40” is no amount
				s.amounts[s.tokens[k].amount].word = true
			}
		}
		s.said = append(s.said, best)
		i = best.to
	}
}

// forms are the stems under which phrases that begin with a token are kept.
func (s *session) forms(t *token) []string {
	switch {
	case t.class == sign:
		return nil
	case t.class == number:
		return []string{t.text}
	case t.spelt != "":
		return []string{search.Stem(t.spelt)}
	}
	return []string{t.stem}
}

// takesOut prefers, of two phrases in the same words, the one that takes the
// number before it out: the ph of 3ph is no acidity.
func (s *session) takesOut(a, b *saying) bool {
	return b.phrase != nil && len(a.phrase.words) == len(b.phrase.words) && a.phrase.kind == nothing && a.from > 0 && s.tokens[a.from-1].class == number
}

// better prefers more words, then what is spelt right, then the narrower one.
func better(a, b *saying) bool {
	switch {
	case b.phrase == nil:
		return true
	case len(a.phrase.words) != len(b.phrase.words):
		return len(a.phrase.words) > len(b.phrase.words)
	case a.loss != b.loss:
		return a.loss < b.loss
	}
	return a.to-a.from < b.to-b.from
}

// fits tells whether a phrase stands at a token, and how far it goes.
func (s *session) fits(p *phrase, at int) (saying, bool) {
	c := saying{phrase: p, from: at, to: at}
	for i := range p.words {
		w := &p.words[i]
		loss, ok := s.wordFits(w, c.to)
		numbers := 0
		for wide := 0; !ok && w.wide && wide < 4 && s.plainWord(c.to); wide++ {
			if s.tokens[c.to].class == number {
				if numbers++; numbers > 1 {
					return c, false
				}
			}
			c.to++
			loss, ok = s.wordFits(w, c.to)
		}
		if !ok && c.to > at && s.joins(c.to) { // draw-down, down-to
			c.to++
			loss, ok = s.wordFits(w, c.to)
		}
		if !ok {
			return c, false
		}
		c.loss += loss
		c.at = append(c.at, c.to)
		c.to++
	}
	return c, true
}

// joins tells whether a hyphen or an abbreviation's point stands here.
func (s *session) joins(at int) bool {
	return at < len(s.tokens) && s.tokens[at].class == sign && strings.Contains("-–‑./", s.tokens[at].text) && at+1 < len(s.tokens) &&
		s.tokens[at+1].class == word
}

// plainWord tells whether a token may stand inside a phrase: “draws 40 ft down”.
func (s *session) plainWord(at int) bool { return at < len(s.tokens) && s.tokens[at].class != sign }

func (s *session) wordFits(w *part, at int) (loss int, ok bool) {
	if at >= len(s.tokens) || s.tokens[at].class == sign {
		return 0, false
	}
	t := &s.tokens[at]
	switch {
	case t.text == w.text:
		return 0, true
	case t.class == number:
		return 0, false
	case t.spelt == w.text:
		return costOfSpelling, true
	case t.spelt != "" && !w.exact && search.Stem(t.spelt) == w.stem:
		return costOfSpelling, true
	}
	return 0, !w.exact && t.stem == w.stem
}

// Words that take back what they stand before or behind.
const (
	deniers  = " no not without never none isnt dont doesnt wont cant nobody non unknown lacks minus "
	unknowns = " unknown unclear missing none "
)

// negated tells whether a phrase is denied: “no drawdown known”, “static
// unknown”, “do not know the setting”.
func (s *session) negated(from, to int) bool {
	for i, words := from-1, 0; i >= 0 && words < 2; i-- {
		t := &s.tokens[i]
		if t.class != word {
			break
		}
		if isIn(deniers, t.text) {
			return true
		}
		if !isFiller(t.text) {
			words++
		}
	}
	if to < len(s.tokens) && isIn(" : = - ", s.tokens[to].text) {
		to++
	}
	for i, words := to, 0; i < len(s.tokens) && words < 3 && s.tokens[i].class == word; i, words = i+1, words+1 {
		text := s.tokens[i].text
		if isIn(unknowns, text) {
			return true
		}
		if text == "not" && i+1 < len(s.tokens) && isIn(" known sure given clear yet ", s.tokens[i+1].text) {
			return true
		}
	}
	return false
}
