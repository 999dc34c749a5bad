package unit

import "strings"

// amount reads a number with its unit, and further numbers with smaller units
// behind it: "12 ft 6 in".
func (r *reader) amount() (a amount, err *ReadError) {
	r.skip()
	a.start = r.pos
	negative := r.sign()
	currency := r.word("$", "€", "£", "¤") != ""
	if currency && !negative {
		negative = r.sign()
	}
	n, ok, err := r.numeral()
	if err != nil {
		return a, err
	}
	if !ok {
		return a, r.noNumber(a.start)
	}
	a.numeral, a.end = n, r.pos
	if err := r.unitOf(&a, currency); err != nil {
		return a, err
	}
	for a.tail != nil {
		more, err := r.smaller(&a)
		if err != nil {
			return a, err
		}
		if !more {
			break
		}
	}
	if negative {
		a.value = -a.value
	}
	return a, nil
}

// sign reads a sign before a number. "+-" is a width and no sign.
func (r *reader) sign() (negative bool) {
	rest := r.rest()
	if rest == "" || (rest[0] != '-' && rest[0] != '+') || strings.HasPrefix(rest, "+-") || strings.HasPrefix(rest, "+/") {
		return false
	}
	r.pos++
	r.skip()
	return rest[0] == '-'
}

// noNumber says what stands where a number should.
func (r *reader) noNumber(start int) *ReadError {
	left := strings.TrimSpace(r.text[start:])
	if left == "" {
		return r.fault(NotANumber, start, len(r.text), "Here a number is missing. "+r.wants())
	}
	return r.fault(NotANumber, start, len(r.text), "I find no number in "+quote(r.typed(start, len(r.text)))+". "+r.wants())
}

// unitOf reads the unit behind a number, if one stands there.
func (r *reader) unitOf(a *amount, currency bool) *ReadError {
	back := r.pos
	r.skip()
	start := r.pos
	prefix := ""
	if low := strings.ToLower(r.rest()); currency || (r.field.Unit.Dim.HasMoney() && (strings.HasPrefix(low, "per ") || strings.HasPrefix(low, "/"))) {
		prefix = "money"
	}
	u, length := r.longestUnit(prefix)
	if u == nil && currency {
		if !r.field.Unit.Dim.HasMoney() {
			a.unit, a.said = bySymbol["money"], true
		}
		r.pos = back
		return nil
	}
	if u != nil {
		a.unit, a.tail, a.end, a.said = u, u, start+length, true
		a.marks = r.text[start] == '\''
		a.notes = append(a.notes, spellingNotes(r.text[start:a.end], u)...)
		r.pos = a.end
		return nil
	}
	word := r.strangeWord()
	if word == "" {
		r.pos = back
		return nil
	}
	return r.strange(start, word)
}

// HasMoney tells whether a dimension counts money.
func (d Dim) HasMoney() bool { return d[5] != 0 }

// longestUnit finds the longest text at the reader's place that spells a unit.
// prefix is put before it: a price typed "$0.12/kWh" has its unit on both sides.
func (r *reader) longestUnit(prefix string) (*Unit, int) {
	ends := unitEnds(r.rest(), prefix != "")
	for i := len(ends) - 1; i >= 0; i-- {
		text := r.rest()[:ends[i]]
		if prefix != "" && !strings.HasPrefix(text, "/") {
			text = " " + text
		}
		if u := r.unitFor(prefix + text); u != nil {
			return u, ends[i]
		}
		if refusal(spellingKey(prefix+text)) != "" {
			return nil, 0 // "c/kWh" is not "c" with something behind
		}
	}
	return nil, 0
}

// unitFor is the unit a text spells in this field: letters for temperatures and
// the nouns of counts have a meaning in their fields only.
func (r *reader) unitFor(text string) *Unit {
	if u := bySymbol[text]; u != nil {
		return u // as the book writes it
	}
	key := spellingKey(text)
	switch {
	case key == "F" || key == "f":
		return bySymbol["degF"]
	case key == "C" || key == "c":
		return bySymbol["degC"]
	case key == "°" && r.field.Unit.Offset != 0:
		return r.field.Unit
	case r.field.Count && countNouns[fold(key)]:
		return bySymbol["1"]
	case refusal(key) != "":
		return nil
	}
	return spelled(text)
}

// countNouns are what people count.
var countNouns = map[string]bool{
	"stage": true, "stages": true, "pole": true, "poles": true, "piece": true, "pieces": true, "pc": true, "pcs": true,
	"length": true, "lengths": true, "joint": true, "joints": true, "bearing": true, "bearings": true, "off": true,
	"cable": true, "cables": true, "pump": true, "pumps": true, "wire": true, "wires": true,
}

// unitEnds lists where a unit at the beginning of text may end, shortest first.
func unitEnds(text string, behindMoney bool) []int {
	const mostPieces, mostBytes = 14, 48
	var ends []int
	for at := 0; at < len(text) && at < mostBytes && len(ends) < mostPieces; {
		next := at + 1
		switch b := text[at]; {
		case b == ' ':
			if at+1 < len(text) && (text[at+1] == '-' || text[at+1] == '+') {
				return ends
			}
			at = next
			continue
		case isDigit(b):
			next = at + len(leadingDigits(text[at:]))
			if !digitsInUnit(text, at, next) {
				return ends
			}
		case isLetter(b) || b >= 0x80:
			for next < len(text) && (isLetter(text[next]) || text[next] >= 0x80) {
				next++
			}
			if word := text[at:next]; stopWords[strings.ToLower(word)] || strings.HasPrefix(word, "±") {
				return ends
			}
		case b == '-':
			if !letterAt(text, next) {
				return ends
			}
		case strings.IndexByte("+,;~<>=!?:", b) >= 0, b == '/' && at == 0 && !behindMoney:
			return ends
		}
		if text[at] != '.' || !letterAt(text, next) {
			ends = append(ends, next)
		}
		at = next
	}
	return ends
}

// digitsInUnit tells whether digits at text[at:next] may be part of a unit: the
// power of ft3, the hundred of ft/100 ft, the 1 of 1/in, the thousand of 1000 gal.
func digitsInUnit(text string, at, next int) bool {
	if at == 0 {
		return strings.HasPrefix(text, "1/") && letterAt(text, 2)
	}
	before := strings.TrimRight(text[:at], " ")
	if strings.HasSuffix(before, "/") || strings.HasSuffix(strings.ToLower(before), " per") || strings.HasSuffix(text[:at], "^") {
		return true
	}
	return next == at+1 && letterAt(text, at-1)
}

// stopWords never stand inside a unit.
var stopWords = map[string]bool{
	"to": true, "and": true, "or": true, "plus": true, "till": true, "until": true, "through": true,
	"approx": true, "approximately": true, "about": true, "roughly": true, "give": true,
}

// strangeWord is the word at the reader's place that should have been a unit, or
// "" when something else stands there.
func (r *reader) strangeWord() string {
	rest := r.rest()
	end := 0
	for end < len(rest) && rest[end] != ' ' && strings.IndexByte("+,;~<>=!?", rest[end]) < 0 {
		end++
	}
	word := strings.TrimRight(rest[:end], ".")
	if word == "" || isDigit(word[0]) || word[0] == '-' || word[0] == '.' || stopWords[strings.ToLower(word)] ||
		strings.HasPrefix(word, "±") || strings.HasPrefix(word, "…") {
		return ""
	}
	return word
}

// smaller reads a further number with a smaller unit behind a: the inches of
// "12 ft 6 in", "12'6\"", "12'-6\"" or the minutes of "1 h 30 min". It reports
// false, with nothing consumed, when none follows.
func (r *reader) smaller(a *amount) (more bool, err *ReadError) {
	if a.unit.Dim != Length && a.unit.Dim != Time {
		return false, nil
	}
	back := r.pos
	r.skip()
	gap := r.pos > back
	dash := a.marks && r.word("-") != ""
	if !dash && r.word(",", "and") == "" && !gap && a.unit.Print == "" {
		return false, nil
	}
	b := amount{start: r.pos}
	n, ok, err := r.numeral()
	if err != nil || !ok {
		r.pos = back
		return false, nil // whatever stands there, the caller meets it again
	}
	b.numeral, b.end = n, r.pos
	r.skip()
	u, length := r.longestUnit("")
	if u == nil && a.marks && n.value < 12 && strings.Trim(r.rest(), " .") == "" {
		if dash {
			return false, r.fault(Ambiguous, a.start, b.end, "Is "+quote(r.typed(a.start, b.end))+" feet and inches, or a range? Write "+
				r.typed(a.start, back)+r.typed(b.start, b.end)+"\" for the one, and “to” for the dash of the other.")
		}
		u, a.notes = bySymbol["in"], append(a.notes, r.typed(b.start, b.end)+" read as inches")
	}
	if u == nil || !fitsBehind(a, b.value, u) || (dash && u.Symbol != "in") {
		r.pos = back
		return false, nil
	}
	a.value += float64(b.value * (u.Factor / a.unit.Factor))
	a.half = b.half * (u.Factor / a.unit.Factor)
	r.pos = b.end
	if length > 0 {
		r.skip()
		r.pos += length
	}
	a.end, a.tail, a.whole, a.marks, a.comma = r.pos, u, n.whole, false, ""
	return true, nil
}

// fitsBehind tells whether value in u may stand behind a as its smaller part: the
// same dimension and system, behind a whole number, and less than one step of
// its unit.
func fitsBehind(a *amount, value float64, u *Unit) bool {
	if u.Dim != a.tail.Dim || u.System != a.tail.System || !a.whole {
		return false
	}
	return value*u.Factor < a.tail.Factor*(1-1e-12)
}
