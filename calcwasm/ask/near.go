package ask

import (
	"slices"

	"columnbowl/calcwasm/formula"
)

// Terms of one kind that share a word of their names are near relatives: the
// flow, the tested flow and the flow at the best point. What they share tells
// nothing between them. What one of them alone has is its mark: where a mark of a
// relative stands in a sentence, and is not said of another number, the
// relative may be meant.

// mark notes the words of all names of a term.
func (v *vocabulary) mark(term int, names []string) {
	for _, name := range names {
		for _, w := range parts(name) {
			key := ownKey(w.text, w.stem)
			if list := v.marks[key]; len(w.text) > 2 && !isIn(anywhere, w.text) && !isFiller(w.stem) && (len(list) == 0 || list[len(list)-1] != term) {
				v.marks[key] = append(list, term)
			}
		}
	}
}

// relatives tells whether two terms share a word of their names.
func (v *vocabulary) relatives(a, b int) bool {
	for _, list := range v.marks {
		if slices.Contains(list, a) && slices.Contains(list, b) {
			return true
		}
	}
	return false
}

// states are words of how a thing is or was taken, which make another term of one;
// so do the words that turn what is said.
const states = " system available operating bep design lab laboratory atmospheric foot "

// parties are people whose figures are their own.
const parties = " driller drillers "

// marked tells whether a mark of a relative of a term stands in the sentence of
// an amount.
func (s *session) marked(i int, p *saying, term int) bool {
	from, to := s.around(s.amounts[i].token, s.amounts[i].token, s.stops)
	first, end := s.clause(i, p)
	for k := from; k < to; k++ {
		t := &s.tokens[k]
		if !s.isMark(k, i) || p != nil && p.has(k) {
			continue
		}
		owners := s.marks[ownKey(t.text, t.stem)]
		if slices.Contains(owners, term) {
			continue
		}
		close := first <= k && k < end
		for _, o := range owners {
			if s.book.Terms[o].Kind == formula.Choice || !s.other(i, o, term) {
				continue
			}
			if close && isIn(states, t.text) || s.derived(term, o) || s.relatives(o, term) && (isIn(states, t.text) || close && isIn(parties, t.text) || s.common(p, o)) {
				return true
			}
		}
	}
	return false
}

// derived tells whether a scene makes another term of one: in a test the pumping
// level is the tested one, by whatever words it is said.
func (v *vocabulary) derived(said, meant int) bool {
	for _, list := range v.scenes {
		for _, p := range list {
			for i := 0; i+1 < len(p.setting.read); i += 2 {
				if p.setting.read[i] == said && p.setting.read[i+1] == meant && said != meant {
					return true
				}
			}
		}
	}
	return false
}

// isMark tells whether a token is a word that may make another term of an amount.
func (s *session) isMark(k, i int) bool {
	t := &s.tokens[k]
	if t.class != word || t.unit || t.text == "drop" || s.given(k, i) || t.phrase >= 0 && s.said[t.phrase].negated {
		return false
	}
	return turnsMeaning(t.text) || isIn(states, t.text) || isIn(parties, t.text)
}

// common tells whether a relative has a word of a phrase as well.
func (s *session) common(p *saying, term int) bool {
	if p == nil {
		return true
	}
	for i := range p.phrase.words {
		if w := &p.phrase.words[i]; slices.Contains(s.marks[ownKey(w.text, w.stem)], term) {
			return true
		}
	}
	return false
}

// subject tells whether the word directly before a phrase, which stands before
// its number, is one that is not understood: what hangs there may be a probe.
func (s *session) subject(i int, p *saying) bool {
	k := p.from - 1
	if k < 0 || p.from > s.amounts[i].token {
		return false
	}
	for k > 0 && isIn(" is are was were s 's will be has ", s.tokens[k].text) {
		k--
	}
	t := &s.tokens[k]
	return t.class == word && !t.unit && !t.scene && t.phrase < 0 && !isFiller(t.text) && !isIn(besideWords, t.text) && !isIn(goesOn, t.text) && !isIn(courtesy, t.text) && !isIn(seen, t.text)
}
