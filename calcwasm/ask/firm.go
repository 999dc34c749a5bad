package ask

import (
	"strings"

	"columnbowl/calcwasm/formula"
)

// A reading is sure only if it is firm. Being asked costs a click, a wrong fact
// costs a pump. So the phrase that names the term stands beside the number, and
// nothing near it may turn its meaning or name another term that the number
// could be.

// turning words make another thing of a number than the phrase beside it says:
// a difference, a wish, a case, a time that is over, a thing of somebody else,
// hearsay, a limit, a share.
const turning = "|another|more|less|extra|further|additional|instead|than|versus|vs|lower|higher|deeper|shallower|bigger|smaller|better|worse|plus|minus|increase|increased|raise|raised|rose|rise|drop|dropped|added|adding|" +
	"if|would|could|might|maybe|should|suppose|guess|guessing|think|thinks|thinking|unless|perhaps|possibly|probably|hope|hopes|hoping|wish|plan|planning|planned|enough|unsure|doubt|claims|claimed|swears|remember|recall|supposedly|allegedly|rumor|rumour|whether|" +
	"old|older|former|formerly|previous|previously|prior|used|was|were|had|replaced|replace|replacing|swap|new|once|ago|years|originally|original|ever|yesterday|until|till|grandfather|dad|" +
	"neighbor|neighbour|neighbors|neighbours|brother|brothers|cousin|cousins|uncle|uncles|sister|next|theirs|his|her|other|others|second|both|same|elsewhere|nearby|hauled|pulled|booster|catalog|catalogue|brochure|example|" +
	"trimmed|reduced|half|third|quarter|twice|double|each|per|every|either|or|not|no|never|except|without|between|total|altogether|combined|spare|almost|nearly|apiece|share|" +
	"lowest|highest|deepest|worst|best|shut|closed|shutoff|free|test|tested|testing|trial|measured|calculated|drought|dry|summer|winter|spring|fall|autumn|august|july|season|expect|expected|future|limit|allowed|allowable|rated|nominal|must|rights|permit|permitted|leak|leaks|generator|genset|tractor|compressor|fuse|room|ambient|"

// turnsMeaning tells whether a word is one of them.
func turnsMeaning(text string) bool { return inBars(turning, text) }

// besideWords may stand between a phrase and its number.
const besideWords = " anywhere somewhere between is are be of at to about from it its it's on approximately approx around roughly reads some say = : @ - ( the a an well down by ~ pump water only just right now sits stands up stays stay holds hold measures measured comes came out works runs will should get gets in only "

// Words that make a place of a phrase: “at the head” says where, not what, so
// that a number without a unit stays a question beside it.
const placeWords = " with when at in into on to up from along over need want wants needs needing require requires required looking asks asking "

// firm tells whether nothing speaks against a term that most is said for.
func (s *session) firm(i, term int) bool {
	a := &s.amounts[i]
	if s.onlyByUnit(a, term) {
		return !s.turned(i, nil)
	}
	if s.plainly(i, term) {
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
		if s.strong(a, p, as) && s.beside(p, i) && s.single(p, i, as) && !s.turned(i, p) && !s.speaksOf(p, i, as) && !s.elsewise(i, p, as) && s.ends(i, p) {
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
	if p.loss > costOfSpelling || p.negated {
		return false
	}
	for _, sense := range p.phrase.senses {
		if sense.term == term && sense.value < 0 {
			return sense.weight >= byCue && !(a.bare() && p.phrase.kind == cue && s.vague(a, p, &sense))
		}
	}
	return false
}

// vague tells whether a phrase says too little for a number without a unit: a
// place, or a thing of which the book counts many kinds of numbers (“motor 94”),
// unless the number is a fraction as sizes are.
func (s *session) vague(a *amount, p *saying, as *sense) bool {
	w := &p.phrase.words[0]
	if isIn(placeWords, w.text) {
		return true
	}
	if as.weight >= byName || len(p.phrase.words) > 1 || strings.Contains(a.low, "/") {
		return false
	}
	if p.from > a.token && strings.HasSuffix(s.tokens[p.from].text, "s") && s.book.Terms[as.term].Kind != formula.Count {
		return true // “12 joints” are counted
	}
	owners := s.owners[ownKey(w.text, w.stem)]
	for _, o := range owners {
		if t := &s.book.Terms[o]; t.US.Dim != s.book.Terms[owners[0]].US.Dim {
			return true
		}
	}
	return false
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

// clause is the row of tokens round an amount and its phrase, to the next sign
// that divides or to another amount.
func (s *session) clause(i int, p *saying) (from, to int) {
	from, to = s.amounts[i].token, s.amounts[i].last+1
	if p != nil {
		from, to = min(from, p.from), max(to, p.to)
	}
	for from > 0 && !s.divides(from-1) {
		from--
	}
	for to < len(s.tokens) && !s.divides(to) {
		to++
	}
	return from, to
}

func (s *session) divides(k int) bool {
	t := &s.tokens[k]
	return t.class == number && !s.amounts[t.amount].word || s.closes(k)
}

// closes tells whether a sign stands here that divides a sentence.
func (s *session) closes(k int) bool {
	return s.tokens[k].class == sign && strings.Contains(",;.!?\n", s.tokens[k].text)
}

// turned tells whether a word of the clause turns what a phrase says, or is not
// understood: it could. Beside a name or some words that mean one thing, and a
// unit, only the first counts.
func (s *session) turned(i int, p *saying) bool {
	from, to := s.clause(i, p)
	last := s.amounts[i].last + 1
	if p != nil {
		last = max(last, p.to)
	}
	for last < len(s.tokens) && s.tokens[last].unit {
		last++
	}
	plain := p != nil && !s.amounts[i].bare() && (len(p.phrase.words) > 1 || p.phrase.senses[0].weight >= byName)
	for k := from; k < to; k++ {
		t := &s.tokens[k]
		if t.class != word || t.unit || t.scene || p != nil && p.has(k) || t.phrase >= 0 && s.isValue(t.phrase) {
			continue
		}
		if t.text == "between" && s.amounts[i].joint != "" {
			continue
		}
		if turnsMeaning(t.text) && !s.given(k, i) || t.phrase >= 0 && s.limits(k, i) || !plain && t.phrase < 0 && !isFiller(t.text) && !isIn(besideWords, t.text) && !isIn(goesOn, t.text) && !isIn(courtesy, t.text) {
			return true
		}
	}
	return s.bygone(from) || last < len(s.tokens) && s.tokens[last].text == "?" && !s.asksFor(last)
}

// limits tells whether a token is of a phrase for a least or a most that is said
// of an amount of another kind: “60 psi tops”.
func (s *session) limits(k, i int) bool {
	p := &s.said[s.tokens[k].phrase]
	if !s.amounts[i].bare() && s.meant(p, i) {
		return false
	}
	for o := range s.amounts {
		if o != i && s.meant(p, o) && s.beside(p, o) {
			return false
		}
	}
	for _, list := range s.rising {
		for _, sense := range p.phrase.senses {
			if len(list) == 3 && (sense.term == list[0] || sense.term == list[2]) {
				return true
			}
		}
	}
	return false
}

// asksFor tells whether a sentence that ends with a question mark asks for
// something else than whether its last number is so: “what for 400 gpm?”
func (s *session) asksFor(end int) bool {
	for k := end - 1; k >= 0 && !s.stops(k); k-- {
		if isIn(" can could what whats how which who when where will would please quote price do does give send select recommend size ", s.tokens[k].text) {
			return true
		}
	}
	return false
}

// bygone tells whether the sentence before a token has spoken of a pump that
// was there before, or of somebody else's: what is said of it need not hold for the next one.
func (s *session) bygone(at int) bool {
	for k := at - 1; k >= 0; k-- {
		t := &s.tokens[k]
		if t.class == sign && strings.Contains(".;!?\n", t.text) {
			return false
		}
		if isIn(others, t.text) {
			return true
		}
		if !isIn(" old existing previous former original ", t.text) {
			continue
		}
		for n := k + 1; n < min(k+3, len(s.tokens)); n++ {
			if isIn(" pump pumps motor engine unit bowls column setup one ", s.tokens[n].text) {
				return true
			}
		}
	}
	return false
}

// others are people who have wells of their own.
const others = " neighbor neighbour neighbors neighbours brother brothers cousin cousins uncle uncles sister theirs "

// courtesy are words of a talk that say nothing about a number.
const courtesy = " hi hello me my well please pls plz quote quoting thanks thank thx want wants need needs pump pumps water its it's also then still that's thats there's theres got get have has does do us them customer customers he's hes she's shes she it'll they're i'm im we're hey yes yep ok okay regards morning system irrigation deep turbine job " +
	"sir maam mate folks gents afternoon evening cheers btw fyi w abt bout bt kinda sorta like likes looking roughly give getting going go goes gonna again days whole way steady steadily good nice clean clear kind sort what whats how much big many price cost costs send email soon asap " +
	"select size supply recommend offer figure thatll theyll wed youll into plenty tower reservoir branch counter colleague attached course golf company nut disk " +
	"site orchard farm ranch field meadow village town house barn dairy quarry plant station job yard site's lab out round clock lasts holding holds hold stays stay comes coming come sees see gets goes gives through thru along across point legs three us we've i've youre your feet inches dont "

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

// How many terms have a word in their names that tells them apart.
const (
	few     = 6
	veryFew = 5
)

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

// goesOn are words behind an amount that take nothing from it.
const goesOn = " and with at when while but so for in on to of the a an is are it its it's i we she he they from please pls thanks right now here there or as by after "

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

// ends tells whether an amount ends where it stands: no word follows that makes
// it a count of something else (“8 towers”) or a place (“6 in above”).
func (s *session) ends(i int, p *saying) bool {
	a := &s.amounts[i]
	at := a.last + 1
	for at < len(s.tokens) && s.tokens[at].unit {
		at++
	}
	if at >= len(s.tokens) || s.tokens[at].class != word || p.from <= at && at < p.to || s.tokens[at].phrase >= 0 {
		return true
	}
	if !a.bare() && len(p.phrase.words) > 1 {
		return !isIn(" above below under beneath over short off behind past toc between ", s.tokens[at].text)
	}
	return isIn(goesOn, s.tokens[at].text) || s.tokens[at].text == "this"
}
