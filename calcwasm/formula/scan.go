package formula

import (
	"errors"
	"strconv"
	"strings"

	"columnbowl/calcwasm/unit"
)

type tokenKind uint8

const (
	tokEnd    tokenKind = iota
	tokName             // total-head, and, say
	tokNumber           // 187 ft
	tokString           // "…"
	tokUnit             // [gpm]
	tokOp               // + - * / ^ ( ) , : = != < <= > >=
)

type token struct {
	kind  tokenKind
	off   int
	text  string     // the name, the operator, the string's contents, the unit's symbol
	len   int        // bytes in the source
	value float64    // of a number, in SI
	unit  *unit.Unit // of a number (nil if bare) or of [unit]
	first bool       // first on its line
}

// reserved words are never units and never terms.
var reserved = []string{"and", "or", "not", "when", "say", "given", "expect", "put", "for", "leave", "out", "minus", "plus",
	"times", "over", "bare", "whole", "to", "in", "danger", "because", "within", "min", "max", "sqrt", "abs", "table", "curve",
	"round-up", "round-down", "remainder", "≥0"}

// Reserved says whether a word belongs to the notation, so that no term can have it as its id.
func Reserved(word string) bool {
	for _, r := range reserved {
		if r == word {
			return true
		}
	}
	return false
}

type scanner struct {
	src    string
	pos    int
	first  bool
	errors *Errors
}

func (s *scanner) fail(off, length int, message, suggest string) {
	*s.errors = append(*s.errors, &Error{Off: off, Len: length, Message: message, Suggest: suggest})
}

// scan splits a text into tokens; what cannot be one is reported and left out.
func scan(src string, errs *Errors) []token {
	s := &scanner{src: src, first: true, errors: errs}
	var list []token
	for {
		t := s.next()
		t.len = s.pos - t.off
		list = append(list, t)
		if t.kind == tokEnd {
			return list
		}
	}
}

func (s *scanner) next() token {
	for s.pos < len(s.src) {
		c := s.src[s.pos]
		if c == '\n' {
			s.first = true
		} else if n := noBreak(s.src[s.pos:]); n > 0 {
			s.pos += n
			continue
		} else if c != ' ' && c != '\t' && c != '\r' {
			t := s.token(c)
			if t.kind != tokEnd {
				t.first, s.first = s.first, false
				return t
			}
			continue
		}
		s.pos++
	}
	return token{kind: tokEnd, off: len(s.src)}
}

// token reads the token that starts with c; tokEnd if there is none, with the
// position moved past what was refused.
func (s *scanner) token(c byte) token {
	switch {
	case c >= 'a' && c <= 'z':
		return s.name()
	case c >= '0' && c <= '9' || c == '.' && isDigit(s.at(1)):
		return s.number()
	case c == '"':
		return s.str()
	case c == '[':
		return s.bracket()
	}
	return s.operator(c)
}

func (s *scanner) at(ahead int) byte {
	if s.pos+ahead < len(s.src) {
		return s.src[s.pos+ahead]
	}
	return 0
}

func isDigit(c byte) bool  { return c >= '0' && c <= '9' }
func isLetter(c byte) bool { return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' }

// name reads lower-case words joined by hyphens. A hyphen with a letter or a
// digit right behind it belongs to the name, any other does not. The colon of a
// hole (bowl:speed) belongs to it as well.
func (s *scanner) name() token {
	start := s.pos
	for s.pos < len(s.src) {
		c := s.src[s.pos]
		joined := c == '-' && (isLetter(s.at(1)) || isDigit(s.at(1)))
		hole := c == ':' && s.src[start:s.pos] == owner && isLetter(s.at(1))
		if !isLetter(c) && !isDigit(c) && !joined && !hole {
			break
		}
		s.pos++
	}
	return token{kind: tokName, off: start, text: s.src[start:s.pos]}
}

func (s *scanner) number() token {
	start := s.pos
	for isDigit(s.at(0)) || s.at(0) == '.' {
		s.pos++
	}
	if s.at(0) == 'e' && (isDigit(s.at(1)) || (s.at(1) == '-' || s.at(1) == '+') && isDigit(s.at(2))) {
		s.pos += 2
		for isDigit(s.at(0)) {
			s.pos++
		}
	}
	digits := s.src[start:s.pos]
	t := token{kind: tokNumber, off: start, text: digits}
	v, err := strconv.ParseFloat(digits, 64)
	switch {
	case errors.Is(err, strconv.ErrRange):
		s.fail(start, len(digits), "“"+digits+"” is too large for a number.", "")
	case err != nil:
		s.fail(start, len(digits), "“"+digits+"” is not a number: write digits with one point, such as 138.6.", "")
	}
	t.value = v
	s.grouped(start)
	s.unitAfter(&t)
	return t
}

// noBreak is the length of a no-break space at the start of a text, 0 if there is none.
func noBreak(text string) int {
	for _, space := range []string{"\u00a0", "\u202f"} {
		if strings.HasPrefix(text, space) {
			return len(space)
		}
	}
	return 0
}

// grouped refuses thousands that are grouped by commas. Inside parentheses a
// comma separates arguments, so that only what cannot be one is refused.
func (s *scanner) grouped(start int) {
	end := s.pos
	for end+4 <= len(s.src) && s.src[end] == ',' && isDigit(s.src[end+1]) && isDigit(s.src[end+2]) && isDigit(s.src[end+3]) && (end+4 == len(s.src) || !isDigit(s.src[end+4])) {
		end += 4
	}
	if end == s.pos {
		return
	}
	text := s.src[start:end]
	s.fail(start, len(text), "“"+text+"”: thousands are not grouped in the notation.", strings.ReplaceAll(text, ",", ""))
	s.pos = end
}

// goOn are the words that may follow a number without being its unit.
var goOn = []string{"to", "step", "within", "items", "danger", "and", "or", "not", "for", "when", "say", "given", "expect", "because"}

func goesOn(word string) bool {
	for _, w := range goOn {
		if w == word {
			return true
		}
	}
	return false
}

// unitAfter takes the unit that follows a number, if one does.
func (s *scanner) unitAfter(t *token) {
	p := s.pos
	for p < len(s.src) {
		if n := noBreak(s.src[p:]); n > 0 {
			p += n
		} else if s.src[p] == ' ' {
			p++
		} else {
			break
		}
	}
	end := p
	for end < len(s.src) && !strings.ContainsRune(" \t\r\n,()[]:\"=<>+*", rune(s.src[end])) {
		end++
	}
	word := s.src[p:end]
	if sign, _ := foreignAt(s.src, p); sign != "" {
		return
	}
	startsUnit := word != "" && (isLetter(word[0]) || word[0] == '%' || word[0] >= 0x80) || strings.HasPrefix(word, "1/") && len(word) > 2 && isLetter(word[2])
	if !startsUnit || goesOn(word) {
		return
	}
	s.pos = end
	u, ok := unit.Lookup(word)
	if !ok {
		s.fail(p, len(word), "There is no unit “"+word+"”. A word after a number is its unit; a term needs an operator before it.", unit.Suggest(word))
		return
	}
	t.unit, t.value = u, u.ToSI(t.value)
}

func (s *scanner) str() token {
	start := s.pos
	end := strings.IndexByte(s.src[start+1:], '"')
	if end < 0 {
		s.fail(start, 1, "The text that begins here has no closing quotation mark.", "")
		s.pos = len(s.src)
		return token{kind: tokString, off: start, text: s.src[start+1:]}
	}
	s.pos = start + end + 2
	return token{kind: tokString, off: start, text: strings.Join(strings.Fields(s.src[start+1:start+1+end]), " ")}
}

func (s *scanner) bracket() token {
	start := s.pos
	end := strings.IndexByte(s.src[start:], ']')
	if end < 0 {
		s.fail(start, 1, "The unit that begins here has no closing bracket “]”.", "")
		s.pos++
		return token{kind: tokEnd}
	}
	word := s.src[start+1 : start+end]
	s.pos = start + end + 1
	if word == "" {
		s.fail(start, 2, "There is no unit between the brackets.", "")
		return token{kind: tokUnit, off: start}
	}
	u, ok := unit.Lookup(word)
	if !ok {
		s.fail(start+1, len(word), "There is no unit “"+word+"”.", unit.Suggest(word))
	}
	return token{kind: tokUnit, off: start, text: word, unit: u}
}
