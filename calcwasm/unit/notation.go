package unit

import (
	"strconv"
	"strings"
)

// Digits tells how a number was written, so that a computed one can be rounded
// likewise: "2.50e3" has two decimals and the exponent 3.
type Digits struct {
	Decimals int // digits after the point
	Exponent int // the power of ten written behind
}

// notNotationUnits are words that may follow a number in the notation and are
// no units.
var notNotationUnits = map[string]bool{
	"and": true, "or": true, "not": true, "when": true, "because": true, "say": true, "for": true, "with": true,
}

// ReadNotation reads a number and its unit at the beginning of text, as the
// notation of the book has them: "187 ft", "72.5 %", "2.66 ft/100ft", "3". It is
// strict: "." is the decimal mark, nothing groups thousands, the unit is spelled
// as Lookup wants it and has no spaces inside. value is the number as written,
// not in SI. u is nil when no unit follows; rest is the text behind. err is a
// *ReadError with At and Len inside text.
func ReadNotation(text string) (value float64, u *Unit, digits Digits, rest string, err error) {
	end, digits := notationNumber(text)
	if end == 0 {
		return 0, nil, Digits{}, text, &ReadError{Code: NotANumber, Text: text, Len: len(text),
			Message: "Here should stand a number such as 187 or 72.5, and not " + quote(text) + "."}
	}
	value, parseErr := strconv.ParseFloat(strings.Replace(text[:end], trueMinus, "-", 1), 64)
	if parseErr != nil || value > tooLarge || value < -tooLarge {
		return 0, nil, Digits{}, text, &ReadError{Code: TooLarge, Text: text, Len: end,
			Message: "The number " + quote(text[:end]) + " is too large for anything in this book."}
	}
	if strings.HasPrefix(text[end:], ",") && len(leadingDigits(text[end+1:])) == 3 {
		return 0, nil, Digits{}, text, &ReadError{Code: NotANumber, Text: text, Len: end + 4,
			Message: "The notation does not group thousands: write " + text[:end] + text[end+1:end+4] + " for " + quote(text[:end+4]) +
				", or put a space behind a comma that separates."}
	}
	start := end + len(text[end:]) - len(strings.TrimLeft(text[end:], " \t"+noBreak))
	word := notationUnit(text[start:])
	if word == "" || notNotationUnits[word] {
		return value, nil, digits, text[end:], nil
	}
	u, ok := Lookup(word)
	if !ok {
		return value, nil, digits, text[end:], &ReadError{Code: UnknownUnit, Text: text, At: start, Len: len(word),
			Message: unknownNotation(word)}
	}
	return value, u, digits, text[start+len(word):], nil
}

// unknownNotation is the message for a spelling that Lookup refuses.
func unknownNotation(word string) string {
	message := "There is no unit " + quote(word) + " in the notation"
	if near := Suggest(word); near != "" {
		return message + "; did you mean " + near + "?"
	}
	return message + ". Write it as in gpm, m3/h, ft/100ft, lbf.ft or 1/in; a name of a term needs an operator before it."
}

// notationNumber finds the end of a strict number; 0 means there is none.
func notationNumber(text string) (end int, digits Digits) {
	if strings.HasPrefix(text, "-") {
		end = 1
	} else if strings.HasPrefix(text, trueMinus) {
		end = len(trueMinus)
	}
	whole := len(leadingDigits(text[end:]))
	if whole == 0 {
		return 0, Digits{}
	}
	end += whole
	if strings.HasPrefix(text[end:], ".") {
		digits.Decimals = len(leadingDigits(text[end+1:]))
		if digits.Decimals > 0 {
			end += 1 + digits.Decimals
		}
	}
	if length, exponent := exponentPart(text[end:]); length > 0 {
		digits.Exponent = exponent
		end += length
	}
	return end, digits
}

// exponentPart reads "e3", "E-5" or "e+2"; length 0 means there is none.
func exponentPart(text string) (length, exponent int) {
	if text == "" || text[0]|0x20 != 'e' {
		return 0, 0
	}
	sign, at := 1, 1
	switch {
	case strings.HasPrefix(text[at:], "-"):
		sign, at = -1, at+1
	case strings.HasPrefix(text[at:], trueMinus):
		sign, at = -1, at+len(trueMinus)
	case strings.HasPrefix(text[at:], "+"):
		at++
	}
	digits := leadingDigits(text[at:])
	if digits == "" || len(digits) > 3 {
		return 0, 0
	}
	exponent, _ = strconv.Atoi(digits)
	return at + len(digits), sign * exponent
}

// notationUnit is the spelling of a unit at the beginning of text, or "".
func notationUnit(text string) string {
	if strings.HasPrefix(text, "%") {
		return "%"
	}
	end := 0
	if strings.HasPrefix(text, "1/") {
		end = 2
	}
	if end >= len(text) || !isLetter(text[end]) {
		return ""
	}
	for end < len(text) {
		b := text[end]
		joins := (b == '.' || b == '/' || b == '-' || b == '^') && end+1 < len(text) && (isLetter(text[end+1]) || isDigit(text[end+1]))
		if !isLetter(b) && !isDigit(b) && !joins {
			break
		}
		end++
	}
	return text[:end]
}

// Same tells whether a computed number, in the unit written, is the one written:
// computed is rounded to the decimals and the power of ten of written, halves
// away from zero, and must then equal it. A computed number that falls short of
// a half by less than 1e-9 of itself counts as the half. What follows the number
// in written is not looked at; written without a number gives false.
func Same(computed float64, written string) bool {
	end, digits := notationNumber(written)
	if end == 0 || computed != computed || computed > tooLarge || computed < -tooLarge {
		return false
	}
	value, err := strconv.ParseFloat(strings.Replace(written[:end], trueMinus, "-", 1), 64)
	if err != nil {
		return false
	}
	decimals := digits.Decimals - digits.Exponent
	have, want := steps(computed, decimals), steps(value, decimals)
	if have == 0 && want == 0 {
		return true
	}
	return have == want && (computed < 0) == (value < 0)
}
