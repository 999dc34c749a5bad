package ask

import (
	"strconv"
	"strings"

	"columnbowl/calcwasm/search"
	"columnbowl/calcwasm/unit"
)

// amount is a number or a range with the unit that stands behind it.
type amount struct {
	from, to int    // in the sentence
	place    int    // among the amounts
	token    int    // of its number, the first one of a range
	last     int    // its last token
	head     string // “about ”, or nothing
	low      string // the number as a field takes it; of a range the lower one
	joint    string // “ to ” or “ +- ” before a second number
	high     string
	value    float64 // of the first number
	unit     *unit.Unit
	unitText string  // as typed
	aliases  []alias // other units that may be meant
	none     bool    // something beside it says that it is no fact
	negated  bool    // “not 180”
	word     bool    // it belongs to a phrase: “schedule 40”
	led      bool    // its unit stands before it
	replaced bool    // corrected by the next: “650, no, make that 600”
	either   bool    // one of two: “100 or 110”
	bound    bool    // one end only: “more than 200”
	relative bool    // counted from another thing: “20 ft below the pumping level”
}

// amountAt puts the amount whose number stands at from to end.
func (s *session) amountAt(from, end int, v float64) int {
	a := amount{from: from, to: end, token: len(s.tokens), last: len(s.tokens), value: v, low: s.text[from:end]}
	if end < len(s.text) && s.text[end] == 'k' && (end+1 == len(s.text) || !letterAt(s.text, end+1) && !digit(s.text, end+1)) { // 1.4k
		end++
		a.to, a.value = end, 1000*v
		a.low = strconv.FormatFloat(1000*v, 'f', -1, 64)
	}
	if !digit(a.low, len(a.low)-1) && a.low[len(a.low)-1] < 0x80 {
		a.low = strconv.FormatFloat(v, 'f', -1, 64) // a number in words
	}
	money := s.currency(&a)
	s.unitOf(&a, end, money)
	s.inches(&a)
	s.put(token{class: number, text: strings.ToLower(s.text[from:end]), from: a.from, to: a.to, amount: len(s.amounts)})
	s.amounts = append(s.amounts, a)
	for _, w := range search.Split(s.text[end:a.to]) { // “50 horse”, “10 hours a day”: the words may speak as well
		s.put(token{class: word, text: w.Text, stem: search.Stem(w.Text), from: end + w.From, to: end + w.To, unit: true, plain: a.unit != nil})
	}
	return a.to
}

// partAmount puts “foot and a half”.
func (s *session) partAmount(from, length int, v float64, symbol string) int {
	a := amount{from: from, to: from + length, token: len(s.tokens), last: len(s.tokens), value: v, low: strconv.FormatFloat(v, 'f', -1, 64), unitText: symbol}
	a.unit, _ = unit.Lookup(symbol)
	s.put(token{class: number, text: a.low, from: a.from, to: a.to, amount: len(s.amounts)})
	s.amounts = append(s.amounts, a)
	return a.to
}

// unitOf finds the unit of an amount whose number ends at a place: behind it, or
// what its words may stand for, or before it.
func (s *session) unitOf(a *amount, end int, money bool) {
	rest := s.text[end:]
	skip := 0
	if len(rest) > 1 && rest[0] == '-' && letterAt(rest, 1) {
		skip = 1 // 8-inch
	}
	u, n := s.unitAt(rest[skip:])
	if before := s.unitBefore(); n > 0 && before != nil && numberFollows(rest[skip+n:]) {
		s.lead(a, before) // “volts 460 amps 88”
		return
	}
	if money {
		u, n = nil, 0
	}
	al, m := s.aliasAt(rest[skip:])
	if n == 0 && m == 0 {
		u, n = s.misspelt(rest[skip:])
	}
	if m > 0 && m >= n {
		a.aliases = al
	}
	if money {
		n = moneyUnit(rest)
		u, _ = unit.Lookup([]string{"money", "money/kWh"}[min(n, 1)])
		if price, ok := unit.Lookup("money/kWh"); n == 0 && ok {
			a.aliases = append(a.aliases, alias{unit: price, times: 1, loose: true})
		}
	}
	if u == nil && m == 0 && !money {
		u = s.unitBefore()
		if u != nil {
			s.lead(a, u)
		}
	}
	if n > 0 && n >= m {
		a.unit, a.unitText = u, strings.TrimSpace(rest[skip:skip+n])
		if _, length := unit.At(rest[skip:]); money || skip > 0 || length == 0 {
			a.unitText = u.Symbol
		}
	} else if money && u != nil {
		a.unit, a.unitText = u, u.Symbol
	}
	if n = max(n, m); n > 0 {
		a.to = end + skip + n
	}
}

// lead gives an amount the unit that stands before it.
func (s *session) lead(a *amount, u *unit.Unit) {
	a.unit, a.unitText, a.led = u, u.Symbol, true
	at := len(s.tokens) - 1
	if s.tokens[at].class == sign {
		at--
	}
	s.tokens[at].unit = true
}

// unitBefore is the unit that stands before a number instead of behind it: “gpm
// 400”, “hp: 50”. Words that are mostly something else are left alone.
func (s *session) unitBefore() *unit.Unit {
	at := len(s.tokens) - 1
	if at > 0 && s.tokens[at].class == sign && isIn(" : = ", s.tokens[at].text) {
		at--
	}
	if at < 0 || s.tokens[at].class != word || s.tokens[at].unit || len(s.tokens[at].text) < 2 || isIn(" in at min ac day days bar bars turn turns ", s.tokens[at].text) {
		return nil
	}
	text := s.text[s.tokens[at].from:s.tokens[at].to]
	if u, n := unit.At(text); n == len(text) {
		return u
	}
	return nil
}

// sized tells whether a word follows that speaks of a size in inches.
func (s *session) sized(rest string) bool {
	next := search.Split(rest[:min(len(rest), 24)])
	if len(next) == 0 || next[0].From > 1 {
		return false
	}
	for _, p := range s.first[search.Stem(next[0].Text)] {
		for _, sense := range s.phrases[p].senses {
			if t := &s.book.Terms[sense.term]; t.US != nil && t.US.Dim == unit.Length && small(t.US) {
				return true
			}
		}
	}
	return false
}

// currency takes the sign of money before a number into the amount.
func (s *session) currency(a *amount) bool {
	n := len(s.tokens)
	if n == 0 || s.tokens[n-1].class != sign || !strings.Contains("$€£¤", s.tokens[n-1].text) {
		return false
	}
	a.from, a.token, a.last = s.tokens[n-1].from, n-1, n-1
	s.tokens = s.tokens[:n-1]
	return true
}

// moneyUnit is the length of “/kWh” or “per kWh” behind a sum of money.
func moneyUnit(rest string) int {
	for _, text := range [...]string{"/kwh", " /kwh", " / kwh", " per kwh", " a kwh", " per kilowatt hour", " a kilowatt hour", " per kw-hr", "/kw-hr", " per kilowatt-hour"} {
		if len(rest) >= len(text) && strings.EqualFold(rest[:len(text)], text) {
			return len(text)
		}
	}
	return 0
}

// inches reads on behind feet: 12 ft 6 in, 12'6".
func (s *session) inches(a *amount) {
	if a.unit == nil || a.unit.Symbol != "ft" {
		return
	}
	rest := s.text[a.to:]
	at := len(rest) - len(strings.TrimLeft(rest, " -"))
	v, n, ok := unit.NumberAt(rest[at:])
	if !ok || at > 1 || v >= 12 {
		return
	}
	u, m := unit.At(rest[at+n:])
	if u != nil && u.Symbol == "in" && s.sized(rest[at+n+m:]) {
		return // 1500 ft 8 in pipe
	}
	if u == nil && at == 0 && strings.IndexByte("'", s.text[a.to-1]) >= 0 {
		m = 0 // 12'6
	} else if u == nil || u.Symbol != "in" {
		return
	}
	a.low += " ft " + rest[at:at+n]
	a.unitText = "in"
	a.to += at + n + m
}

// unitAt finds the unit at the beginning of a text, unless it is more likely a
// word: “in the well”, “a day”.
func (s *session) unitAt(rest string) (*unit.Unit, int) {
	u, n := unit.At(rest)
	if n == 0 {
		return nil, 0
	}
	typed := strings.TrimSpace(rest[:n])
	if at := strings.IndexByte(typed, ' '); at > 0 && u.Dim == unit.Length {
		// “ft of head”: what the feet are of is for the phrases to say.
		n = strings.IndexByte(rest, typed[0]) + at
		u, _ = unit.At(rest[:n])
		typed = typed[:at]
	}
	next := ""
	if words := search.Split(rest[n:min(len(rest), n+24)]); len(words) > 0 && words[0].From <= 1 {
		next = words[0].Text
	}
	switch {
	case u == nil || u.Symbol == "drops":
		return nil, 0
	case typed == "at" || typed == "a" && next != "":
		return nil, 0
	case typed == "in" && (numberWord(next) > 0 || isIn(" the a an my our this that all place there it about around under less just only every each winter spring summer fall ", next)) && next != "":
		return nil, 0
	}
	if rest[n-1] == '.' && n < len(rest) && (letterAt(rest, n) || digit(rest, n)) {
		return nil, 0
	}
	point := rest[n-1] == '.' && !isIn(" in. ft. gal. gals. lb. lbs. hr. hrs. sec. min. yr. ", strings.ToLower(typed))
	if point || rest[n-1] == '.' && (n == len(rest) || n+1 < len(rest) && rest[n+1] >= 'A' && rest[n+1] <= 'Z') {
		n-- // the end of a sentence
	}
	return u, n
}

// misspelt finds a unit that is nearly spelt by the word at the beginning of a
// text: “12 meteres”. The first letter counts.
func (s *session) misspelt(rest string) (*unit.Unit, int) {
	words := search.Split(rest[:min(len(rest), 24)])
	if len(words) == 0 || words[0].From > 1 || len(words[0].Text) < 5 || s.known[words[0].Text] {
		return nil, 0
	}
	w := words[0]
	for d := 1; d < search.Slack(len(w.Text))+1; d++ {
		for _, u := range s.units {
			if u.text[0] == w.Text[0] && search.Distance(w.Text, u.text, d) == d {
				return u.unit, w.To
			}
		}
	}
	return nil, 0
}

// aliasAt finds the longest other way of saying a unit at the beginning of a
// text, with all units it may stand for.
func (s *session) aliasAt(rest string) (found []alias, length int) {
	at := len(rest) - len(strings.TrimLeft(rest, " "))
	for _, a := range s.aliases {
		end := at + len(a.say)
		if end > len(rest) || !strings.EqualFold(rest[at:end], a.say) || end < length {
			continue
		}
		if end < len(rest) && a.say[len(a.say)-1]|0x20 >= 'a' && (letterAt(rest, end) || digit(rest, end)) {
			continue
		}
		if end > length {
			found, length = nil, end
		}
		found = append(found, a)
	}
	if length > 0 && length < len(rest) && rest[length] == '.' && length+1 < len(rest) && rest[length+1] == ' ' {
		length++ // an abbreviation's point
	}
	return found, length
}

// numberFollows tells whether a text goes on with a number.
func numberFollows(rest string) bool {
	rest = strings.TrimLeft(rest, " ")
	return digit(rest, 0)
}
