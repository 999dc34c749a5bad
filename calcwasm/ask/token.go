package ask

import (
	"strings"
	"unicode/utf8"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/search"
	"columnbowl/calcwasm/unit"
)

// class of a token.
type class uint8

const (
	word class = iota
	number
	sign
)

// token is a word, an amount or a sign of the sentence.
type token struct {
	class      class
	text, stem string // in small letters; of a sign the sign
	spelt      string // the word of the vocabulary that was probably meant
	from, to   int
	amount     int  // of a number its place among the amounts
	phrase     int  // the saying it belongs to, or -1
	unit       bool // a word that was read as the unit of the amount before it
	plain      bool // and is nothing else
	scene      bool // it belongs to a phrase that tells what the sentence is about
}

// tokenise cuts the sentence in one pass.
func (s *session) tokenise() {
	for i := 0; i < len(s.text); {
		c := s.text[i]
		switch {
		case c == ' ' || c == '\t' || c == '\r':
			i++
		case startsNumber(s.text, i):
			i = s.number(i)
		case letterAt(s.text, i):
			i = s.word(i)
		default:
			_, n := utf8.DecodeRuneInString(s.text[i:])
			s.put(token{class: sign, text: s.text[i : i+n], from: i, to: i + n})
			i += n
		}
	}
}

func (s *session) put(t token) {
	t.phrase = -1
	s.tokens = append(s.tokens, t)
}

func digit(text string, i int) bool { return i < len(text) && text[i] >= '0' && text[i] <= '9' }

// letterAt tells whether a word may begin here.
func letterAt(text string, i int) bool {
	c := text[i]
	if c < utf8.RuneSelf {
		return c|0x20 >= 'a' && c|0x20 <= 'z'
	}
	_, n := utf8.DecodeRuneInString(text[i:])
	return len(search.Split(text[i:i+n])) > 0
}

// startsNumber tells whether a number begins here: a digit, a sign or point
// before one, or a fraction that is one character.
func startsNumber(text string, i int) bool {
	if digit(text, i) {
		return true
	}
	switch {
	case text[i] == '.' || text[i] == '-':
		alone := i == 0 || strings.IndexByte(" \t(=:,$", text[i-1]) >= 0
		return alone && (digit(text, i+1) || text[i] == '-' && i+2 < len(text) && text[i+1] == '.' && digit(text, i+2))
	case text[i] >= 0xc2:
		_, n := utf8.DecodeRuneInString(text[i:])
		return strings.Contains("½¼¾⅛⅜⅝⅞⅓⅔", text[i:i+n])
	}
	return false
}

// word puts the word that begins here; digits behind letters belong to it.
func (s *session) word(from int) int {
	end := from
	for end < len(s.text) {
		_, n := utf8.DecodeRuneInString(s.text[end:])
		c := s.text[end]
		inside := (c == '\'' || s.text[end:end+n] == "’") && end+n < len(s.text) && letterAt(s.text, end+n)
		if !inside && !digit(s.text, end) && !letterAt(s.text, end) {
			break
		}
		end += n
	}
	end = s.divide(from, s.initials(from, end))
	text := ""
	for _, w := range search.Split(s.text[from:end]) {
		text += w.Text
	}
	text = oneSpelling(text)
	if v, n := s.spelledNumber(from); n > 0 && len(s.amounts) < mostAmounts {
		return s.amountAt(from, from+n, v)
	}
	if v, symbol, n := unitAnd(s.text[from:]); n > 0 && len(s.amounts) < mostAmounts && (len(s.tokens) == 0 || s.tokens[len(s.tokens)-1].class != number) {
		return s.partAmount(from, n, v, symbol)
	}
	if at := strings.IndexByte(s.text[from:end], '\''); at > 0 && isIn(" 're 'd 'll 've 'm ", strings.ToLower(s.text[from+at:end])) {
		text = strings.ToLower(s.text[from : from+at]) // “we're” is no “were”
	}
	t := token{class: word, text: text, stem: search.Stem(text), from: from, to: end}
	t.spelt = s.spelling(&t)
	s.put(t)
	return end
}

// initials goes on over letters with points between them: S.W.L.
func (s *session) initials(from, end int) int {
	if end-from != 1 {
		return end
	}
	at := end
	for at+1 < len(s.text) && s.text[at] == '.' && letterAt(s.text, at+1) && (at+2 >= len(s.text) || !letterAt(s.text, at+2)) {
		at += 2
	}
	if at > end && at < len(s.text) && s.text[at] == '.' {
		at++
	}
	return at
}

// divide ends a word before its digits where its letters are a word of the
// vocabulary: DN200, sch40. Otherwise the digits belong to it.
func (s *session) divide(from, end int) int {
	at := from
	for at < end && !digit(s.text, at) {
		at++
	}
	if at < end && at-from > 1 && s.known[oneSpelling(strings.ToLower(s.text[from:at]))] && !s.known[strings.ToLower(s.text[from:end])] {
		return at
	}
	return end
}

// spelling finds the word of the vocabulary that differs least from one that is
// not in it. Short words are taken as they stand, and the first letter counts.
func (s *session) spelling(t *token) string {
	if len(t.text) < 5 || s.known[t.text] || s.known[t.stem] || isFiller(t.text) {
		return ""
	}
	most := 1
	if len(t.text) > 8 {
		most = 2
	}
	for d := 1; d <= most; d++ {
		for _, w := range s.words {
			if len(w) >= 5 && w[0] == t.text[0] && search.Distance(t.text, w, d) == d {
				return w
			}
		}
	}
	return ""
}

// number puts the amount that begins with a number here.
func (s *session) number(from int) int {
	at := from
	if s.text[at] == '-' {
		at++
	}
	v, n, ok := unit.NumberAt(s.text[at : at+beforeStop(s.text[at:])])
	if bar := strings.IndexAny(s.text[at:at+n], "/"); bar >= 0 && !tradeFraction(s.text[at:at+n], v) {
		n = strings.LastIndexAny(s.text[at:at+bar], "0123456789") + 1
		v, n, ok = unit.NumberAt(s.text[at : at+n])
	}
	if !ok || n == 0 || len(s.amounts) == mostAmounts {
		s.put(token{class: sign, text: s.text[from : from+1], from: from, to: from + 1})
		return from + 1
	}
	if s.text[at+n-1] == '.' {
		n-- // the end of a sentence
	}
	if at > from {
		v = -v
	}
	return s.amountAt(from, at+n, v)
}

// beforeStop is how much of a text is looked at for the number it begins with:
// where digits with a point or comma among them end in a full stop, what stands
// before that. “pH 7.4.” ends a sentence.
func beforeStop(text string) int {
	n := 0
	for n < len(text) && (digit(text, n) || text[n] == '.' || text[n] == ',') {
		n++
	}
	if n > 2 && text[n-1] == '.' && digit(text, n-2) && strings.ContainsAny(text[:n-1], ".,") {
		return n - 1
	}
	return len(text)
}

// tradeFraction tells a fraction of the trade from two numbers with a stroke
// between them: 5/8 in, but 180/220 and 480/277.
func tradeFraction(text string, v float64) bool {
	under := text[strings.LastIndexByte(text, '/')+1:]
	return v > 0 && isIn(" 2 3 4 8 16 32 64 ", under) && (v < 1 || strings.ContainsAny(text, " -"))
}

// spelledNumber reads a number in words, with its length: “two hundred”. Small
// ones count only before a unit, for “one” may be anything.
func (s *session) spelledNumber(from int) (value float64, length int) {
	words := search.Split(s.text[from:min(len(s.text), from+80)])
	value, n, large := inWords(words)
	if n == 0 {
		return 0, 0
	}
	end := from + words[n-1].To
	rest := s.text[end:]
	_, u := s.unitAt(rest)
	_, m := s.aliasAt(rest)
	if !large && u == 0 && m == 0 && !s.counted(rest) {
		return 0, 0
	}
	return value, end - from
}

// counted tells whether a word follows for what the book counts: “five stages”.
func (s *session) counted(rest string) bool {
	next := search.Split(rest[:min(len(rest), 30)])
	if len(next) == 0 || next[0].From > 1 {
		return false
	}
	for _, p := range s.first[search.Stem(next[0].Text)] {
		for _, sense := range s.phrases[p].senses {
			if s.book.Terms[sense.term].Kind == formula.Count {
				return true
			}
		}
	}
	return false
}

// fillers stand between a phrase and its number without meaning.
const fillers = " a an the is are was were be been of at to about from it its our my your this that in on for by has have had got i we he they you" +
	" another only just around approx approximately roughly some say reads read measured maybe or so now right please just as up there here will would can need needs want wants "

func isFiller(text string) bool { return isIn(fillers, text) }

// isIn tells whether a word stands in a list of words with spaces round each.
func isIn(list, word string) bool { return strings.Contains(list, " "+word+" ") }

// inBars does the same for a list with bars, whose items may have spaces.
func inBars(list, item string) bool { return strings.Contains(list, "|"+item+"|") }
