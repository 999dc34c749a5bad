package ask

import "strings"

// turning words make another thing of a number than the phrase beside it says:
// a difference, a wish, a case, a time that is over, a thing of somebody else,
// hearsay, a limit, a share.
const turning = "|another|more|less|too|extra|further|additional|instead|than|versus|vs|lower|higher|deeper|shallower|bigger|smaller|better|worse|plus|minus|increase|increased|raise|raised|rose|rise|drop|dropped|added|adding|" +
	"if|would|could|might|maybe|should|suppose|guess|guessing|think|thinks|thinking|unless|perhaps|possibly|probably|hope|hopes|hoping|wish|plan|planning|planned|enough|unsure|doubt|claims|claimed|swears|remember|recall|supposedly|allegedly|rumor|rumour|whether|" +
	"old|older|former|formerly|previous|previously|prior|used|was|were|had|replaced|replace|replacing|swap|new|once|ago|years|originally|original|ever|yesterday|until|till|grandfather|dad|" +
	"neighbor|neighbour|neighbors|neighbours|brother|brothers|cousin|cousins|uncle|uncles|sister|next|theirs|his|her|other|others|second|both|same|elsewhere|nearby|hauled|pulled|booster|catalog|catalogue|brochure|example|" +
	"trimmed|reduced|half|third|quarter|twice|double|each|per|every|either|or|not|no|never|except|without|between|total|altogether|combined|spare|almost|nearly|apiece|share|" +
	"lowest|highest|deepest|worst|best|shut|closed|shutoff|free|test|tested|testing|trial|measured|calculated|drought|dry|summer|winter|spring|fall|autumn|august|july|season|expect|expected|future|limit|allowed|allowable|rated|nominal|must|rights|permit|permitted|leak|leaks|generator|genset|tractor|compressor|fuse|room|ambient|"

// turnsMeaning tells whether a word is one of them.
func turnsMeaning(text string) bool { return inBars(turning, text) }

// courtesy are words of a talk that say nothing about a number.
const courtesy = " hi hello me my well please pls plz quote quoting thanks thank thx want wants need needs pump pumps water its it's also then still that's thats there's theres got get have has does do us them customer customers he's hes she's shes she it'll they're i'm im we're hey yes yep ok okay regards morning system irrigation deep turbine job " +
	"sir maam mate folks gents afternoon evening cheers btw fyi w abt bout bt kinda sorta like likes looking roughly give getting going go goes gonna again days whole way steady steadily good nice clean clear kind sort what whats how much big many price cost costs send email soon asap " +
	"select size supply recommend offer figure thatll theyll wed youll into plenty tower reservoir branch counter colleague attached course golf company nut disk " +
	"site orchard farm ranch field meadow village town house barn dairy quarry plant station job yard site's lab out round clock lasts holding holds hold stays stay comes coming come sees see gets goes gives through thru along across point legs three us we've i've youre your feet inches dont "

// goesOn are words behind an amount that take nothing from it.
const goesOn = " and with at when while but so for in on to of the a an is are it its it's i we she he they from please pls thanks right now here there or as by after "

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

// clause is the row of tokens round an amount and its phrase, to the next sign
// that divides or to another amount.
func (s *session) clause(i int, p *saying) (from, to int) {
	from, to = s.amounts[i].token, s.amounts[i].last+1
	if p != nil {
		from, to = min(from, p.from), max(to, p.to)
	}
	return s.around(from, to, s.divides)
}

// around is the row of tokens round some, to the next that ends it.
func (s *session) around(from, to int, ends func(int) bool) (int, int) {
	for from > 0 && !ends(from-1) {
		from--
	}
	for to < len(s.tokens) && !ends(to) {
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

// others are people who have wells of their own.
const others = " neighbor neighbour neighbors neighbours brother brothers cousin cousins uncle uncles sister theirs "

// bygone tells whether the sentence before a token has spoken of a pump that
// was there before, or of somebody else's: what is said of it need
// not hold for the next one.
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
		for n := k + 1; n < min(k+6, len(s.tokens)); n++ {
			if isIn(" pump pumps motor engine unit bowls column setup one ", s.tokens[n].text) {
				return true
			}
		}
	}
	return false
}
