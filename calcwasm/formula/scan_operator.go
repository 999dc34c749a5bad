package formula

import "strings"

// foreign are signs that people bring from elsewhere, and what the notation writes.
var foreign = []struct{ sign, write string }{
	{"−", "-"}, {"–", "-"}, {"×", "*"}, {"·", "*"}, {"÷", "/"}, {"≤", "<="}, {"≥", ">="}, {"≠", "!="},
	{"==", "="}, {"=>", ">="}, {"=<", "<="}, {"<>", "!="}, {"&&", "and"}, {"||", "or"}, {"“", "\""}, {"”", "\""}, {"„", "\""},
}

// foreignAt returns the sign from elsewhere that stands at a place.
func foreignAt(src string, pos int) (sign, write string) {
	for _, f := range foreign {
		if strings.HasPrefix(src[pos:], f.sign) {
			return f.sign, f.write
		}
	}
	return "", ""
}

func (s *scanner) operator(c byte) token {
	start := s.pos
	if sign, write := foreignAt(s.src, s.pos); sign != "" {
		return s.translated(sign, write)
	}
	two := s.src[start:min(start+2, len(s.src))]
	switch {
	case two == "<=" || two == ">=" || two == "!=":
		s.pos += 2
	case strings.IndexByte("+-*/^(),:=<>", c) >= 0:
		s.pos++
	default:
		return s.refuse()
	}
	op := s.src[start:s.pos]
	if op == "-" && start > 0 && isLetter(s.src[start-1]) {
		s.fail(start, 1, "A minus sign needs a space on both sides: “a - b”. Without them it would join two words to one name.", "")
	}
	return token{kind: tokOp, off: start, text: op}
}

// translated reports a sign from elsewhere once, and goes on as if the right
// one stood there.
func (s *scanner) translated(sign, write string) token {
	start := s.pos
	s.fail(start, len(sign), "“"+sign+"” is not a sign of the notation.", write)
	s.pos += len(sign)
	switch write {
	case "\"":
		return s.curly(start)
	case "and", "or":
		return token{kind: tokName, off: start, text: write}
	}
	return token{kind: tokOp, off: start, text: write}
}

// curly reads a text in quotation marks of another shape.
func (s *scanner) curly(start int) token {
	rest := s.src[s.pos:]
	end := strings.IndexAny(rest, "\"“”")
	if end < 0 {
		end = len(rest)
	}
	text := strings.Join(strings.Fields(rest[:end]), " ")
	s.pos += end
	if sign, _ := foreignAt(s.src, min(s.pos, len(s.src))); sign != "" {
		s.pos += len(sign)
	} else {
		s.pos = min(s.pos+1, len(s.src))
	}
	return token{kind: tokString, off: start, text: text}
}

// refuse reports what means nothing. A name in capitals is taken as one in
// small letters, so that it is reported once.
func (s *scanner) refuse() token {
	start, rest := s.pos, s.src[s.pos:]
	size := 1
	for size < len(rest) && rest[size] >= 0x80 && rest[size] < 0xC0 {
		size++
	}
	if c := rest[0]; c >= 'A' && c <= 'Z' {
		for size < len(rest) && (isLetter(rest[size]) || isDigit(rest[size]) || rest[size] == '-' && size+1 < len(rest) && isLetter(rest[size+1])) {
			size++
		}
		name := strings.ToLower(rest[:size])
		s.fail(start, size, "Names are written in small letters joined by hyphens.", name)
		s.pos += size
		return token{kind: tokName, off: start, text: name}
	}
	s.fail(start, size, "“"+rest[:size]+"” means nothing in the notation.", "")
	s.pos += size
	return token{kind: tokEnd}
}
