package ask

import (
	"slices"
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// A reading is sure only if it is firm. Being asked costs a click, a wrong fact
// costs a pump. So the phrase that names the term stands beside the number, and
// nothing near it may turn its meaning or name another term that the number
// could be.

// besideWords may stand between a phrase and its number.
const besideWords = " anywhere somewhere between is are be of at to about from it its it's on approximately approx around roughly reads some say = : @ - ( the a an well down by ~ pump water only just right now sits stands up stays stay holds hold measures measured comes came out works runs will should get gets in "

// Words that make a place of a phrase: “at the head” says where, not what, so
// that a number without a unit stays a question beside it.
const placeWords = " with when at in into on to up from along over need want wants needs needing require requires required looking asks asking "

// firm tells whether nothing speaks against a term that most is said for.
func (s *session) firm(i, term int) bool {
	a := &s.amounts[i]
	if s.changes(a) {
		return false
	}
	if s.onlyByUnit(a, term) {
		return !s.turned(i, nil) && !s.ofOther(i, term)
	}
	if s.plainly(i, term) && !s.marked(i, nil, term) {
		return true
	}
	for _, e := range s.evidence[i] {
		if e.term != term {
			continue
		}
		p := &s.said[e.saying]
		if p.phrase.kind == scene {
			if p.phrase.setting.sure && p.to <= a.token && !s.turned(i, nil) {
				return true
			}
			continue
		}
		as := term
		if e.moved {
			as = e.said
		}
		if s.strong(a, p, as) && s.beside(p, i) && s.single(p, i, as) && !s.turned(i, p) && !s.speaksOf(p, i, as) && !s.elsewise(i, p, as) && !s.marked(i, p, term) && !s.subject(i, p) && s.ends(i, p, as) {
			return true
		}
	}
	return false
}

// changes tells whether an amount is the former value of what is named before
// the words for two in a row: “static went from 96 to 118”.
func (s *session) changes(a *amount) bool {
	c := s.pairBefore(a)
	if c < 0 || s.said[c].from == 0 {
		return false
	}
	before := s.tokens[s.said[c].from-1].phrase
	return before >= 0 && len(s.said[c].phrase.senses) == 2 && s.strong(a, &s.said[before], s.said[c].phrase.senses[0].term)
}

// ofOther tells whether the phrase directly before an amount means something
// else: “motor temperature”.
func (s *session) ofOther(i, term int) bool {
	k := s.amounts[i].token - 1
	for k >= 0 && (isIn(besideWords, s.tokens[k].text) || s.owned(k, term)) {
		k--
	}
	return k >= 0 && s.tokens[k].phrase >= 0 && !s.tokens[k].unit && !s.spent(k) && s.means(&s.said[s.tokens[k].phrase], term)
}

// owned tells whether a token is of a phrase for a term.
func (s *session) owned(k, term int) bool {
	c := s.tokens[k].phrase
	if c < 0 {
		return false
	}
	for _, sense := range s.said[c].phrase.senses {
		if sense.term == term {
			return true
		}
	}
	return false
}

// onlyByUnit tells whether the unit itself leaves one term: of all that the
// amount could be, no other is asked of people.
func (s *session) onlyByUnit(a *amount, term int) bool {
	u := a.unit
	if u == nil && len(a.aliases) == 1 && !a.aliases[0].loose {
		u = a.aliases[0].unit
	}
	if u == nil {
		return false
	}
	for g := range s.groups {
		if s.groups[g].ask && s.groups[g].has(u) {
			return false
		}
	}
	for t := range s.book.Terms {
		if o := &s.book.Terms[t]; t != term && o.Kind != formula.Choice && o.US != nil && o.US.Dim == u.Dim && s.fit(a, t).text != "" {
			return false
		}
	}
	return true
}

// strong tells whether a phrase is enough for a term: a name or a cue; one that
// says a place only beside a number with its unit.
func (s *session) strong(a *amount, p *saying, term int) bool {
	if p.loss > costOfSpelling || p.negated || s.acts(p) && s.book.Terms[term].Kind != formula.Count {
		return false
	}
	for _, sense := range p.phrase.senses {
		if sense.term == term && sense.value < 0 {
			return sense.weight >= byCue && !(a.bare() && p.phrase.kind == cue && s.vague(a, p, &sense))
		}
	}
	return false
}

// acts tells whether a phrase of one word stands in its form of a verb: “flows”,
// but not “static's” and “volts”.
func (s *session) acts(p *saying) bool {
	t := &s.tokens[p.from]
	if len(p.phrase.words) > 1 || t.text != p.phrase.words[0].text+"s" || strings.Contains(s.text[t.from:t.to], "'") {
		return false
	}
	for _, u := range s.units {
		if u.text == t.text || u.text+"s" == t.text {
			return false
		}
	}
	return true
}

// vague tells whether a phrase says too little for a number without a unit: a
// place, or a thing of which the book counts many kinds of numbers (“motor 94”),
// unless the number is a fraction as sizes are, or the word is the name itself.
func (s *session) vague(a *amount, p *saying, as *sense) bool {
	w := &p.phrase.words[0]
	if isIn(placeWords, w.text) {
		return true
	}
	t := &s.book.Terms[as.term]
	counted := p.from > a.token && strings.HasSuffix(s.tokens[p.from].text, "s") && t.Kind != formula.Count
	if counted && as.weight < byName && (len(p.phrase.words) == 1 || t.US.Dim == unit.Length) {
		return true // “12 joints” are counted
	}
	owners := s.owners[ownKey(w.text, w.stem)]
	if as.weight >= byName && slices.Contains(owners, as.term) || p.phrase.telling() > 1 || t.Kind == formula.Count && len(p.phrase.words) > 1 || strings.Contains(a.low, "/") {
		return false
	}
	for _, o := range owners {
		if t := &s.book.Terms[o]; t.US.Dim != s.book.Terms[owners[0]].US.Dim {
			return true
		}
	}
	return false
}

// telling counts the words of a phrase but for those of its grammar: “bowls are”
// has one.
func (p *phrase) telling() int {
	n := 0
	for i := range p.words {
		if i == 0 || !isIn(" is are of ", p.words[i].text) {
			n++
		}
	}
	return n
}

// beside tells whether nothing stands between a phrase and an amount but words
// that join them, and what holds together with the amount: “1500 ft of 8 inch
// pipe”.
func (s *session) beside(p *saying, i int) bool {
	a := &s.amounts[i]
	if p.phrase.kind == pair || p.amount > 0 {
		return p.amount == 0 || p.amount == i+1 // their places are its meaning
	}
	if p.from < a.token && a.token < p.to {
		return p.to-p.from <= len(p.phrase.words)+4
	}
	from, to := p.to, a.token
	if p.from > a.token {
		from, to = a.last+1, p.from
	}
	words := 0
	for k := from; k < to; k++ {
		t := &s.tokens[k]
		switch {
		case t.unit:
		case t.class == number:
			if o := &s.amounts[t.amount]; !(p.from > a.token && s.linked(i, t.amount)) && (o.bare() || s.meant(p, t.amount)) {
				return false
			}
		case t.phrase >= 0 && (s.isValue(t.phrase) || s.shares(t.phrase, p)):
		case t.phrase >= 0 && !s.meant(&s.said[t.phrase], i) && s.said[t.phrase].phrase.kind == cue && s.said[t.phrase].loss == 0:
			words++
		case isIn(besideWords, t.text):
			words++
		default:
			return false
		}
	}
	return words <= 4
}

// shares tells whether another phrase speaks for a term of this one: “static
// lvl”.
func (s *session) shares(c int, p *saying) bool {
	for _, a := range s.said[c].phrase.senses {
		for _, b := range p.phrase.senses {
			if a.term == b.term && a.value < 0 {
				return true
			}
		}
	}
	return false
}

// single tells whether the phrase is the amount's alone: beside it stands no
// second number of the same kind that has no phrase of its own.
func (s *session) single(p *saying, i, term int) bool {
	if p.phrase.kind == pair || p.amount > 0 {
		return true
	}
	for o := range s.amounts {
		if o == i || s.amounts[o].none || s.amounts[o].word || !s.beside(p, o) || s.linked(i, o) || s.linked(o, i) {
			continue
		}
		if s.meant(p, o) && !s.hasOwn(o, p) {
			return false
		}
	}
	return true
}

// meant tells whether a phrase speaks for a term that an amount can be.
func (s *session) meant(p *saying, i int) bool {
	for _, sense := range p.phrase.senses {
		if sense.value < 0 && s.fits1(&s.amounts[i], sense.term) {
			return true
		}
	}
	return false
}

// hasOwn tells whether an amount has a strong phrase of its own beside it.
func (s *session) hasOwn(i int, but *saying) bool {
	for _, e := range s.evidence[i] {
		if p := &s.said[e.saying]; p != but && s.strong(&s.amounts[i], p, e.term) && s.beside(p, i) {
			return true
		}
	}
	return false
}

// elsewhere are words behind an amount that make a place of it.
const elsewhere = " above below under beneath over short off behind past toc between "

// ends tells whether an amount ends where it stands: no word follows that makes
// it a count of something else (“8 towers”) or a place (“6 in above”).
func (s *session) ends(i int, p *saying, term int) bool {
	a := &s.amounts[i]
	at := a.last + 1
	for at < len(s.tokens) && s.tokens[at].unit {
		at++
	}
	if at >= len(s.tokens) || s.tokens[at].class != word || p.from <= at && at < p.to {
		return true
	}
	if at+1 < len(s.tokens) && isIn(" a per every each ", s.tokens[at].text) && isIn(" year month decade day week ", s.tokens[at+1].text) && s.book.Terms[term].US.Dim == unit.Length {
		return false // so much more every year
	}
	if c := s.tokens[at].phrase; c >= 0 {
		return !isIn(elsewhere, s.tokens[at].text) || s.said[c].phrase.kind == scene || s.shares(c, p) || s.given(at, i)
	}
	if !a.bare() && len(p.phrase.words) > 1 {
		return !isIn(elsewhere, s.tokens[at].text)
	}
	return isIn(goesOn, s.tokens[at].text) || s.tokens[at].text == "this"
}
