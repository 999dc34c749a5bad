package unit

import (
	"math"
	"strconv"
	"strings"
)

// numeral is one number as typed.
type numeral struct {
	value    float64
	half     float64 // half of the last typed digit, or of a fraction's step
	fraction bool    // written with a fraction
	whole    bool    // written as digits only
	comma    string  // what a lone comma was read as: "1,250" → "1,250", else ""
}

// numeral reads a number without a sign at the reader's place. ok is false, and
// nothing is consumed, when no number stands there.
func (r *reader) numeral() (n numeral, ok bool, err *ReadError) {
	run := numberRun(r.rest())
	if run == "" {
		return numeral{}, false, nil
	}
	start := r.pos
	digits, decimals, err := r.plainDigits(run)
	if err != nil {
		return numeral{}, false, err
	}
	r.pos += len(run)
	if decimals == 0 && !strings.ContainsAny(run, ".") {
		if n, ok, err := r.fraction(start, digits); ok || err != nil {
			return n, ok, err
		}
	}
	exponent := r.exponent()
	value, parseErr := strconv.ParseFloat(digits+"e"+strconv.Itoa(exponent), 64)
	if parseErr != nil || value > tooLarge {
		return numeral{}, false, r.fault(TooLarge, start, r.pos, "The number "+quote(r.typed(start, r.pos))+" is too large for anything here. "+r.wants())
	}
	n = numeral{value: value, half: 0.5 * powerOfTen(exponent-decimals), whole: run == digits && exponent == 0}
	if strings.Count(run, ",") == 1 && decimals == 0 && !strings.Contains(run, ".") {
		n.comma = run
	}
	return n, true, nil
}

// numberRun is the run of digits, commas and points a number consists of. A
// comma or point belongs to it only before a digit, or as the point of "5.".
func numberRun(text string) string {
	end := 0
	for end < len(text) {
		b := text[end]
		next := end+1 < len(text) && isDigit(text[end+1])
		if !isDigit(b) && !((b == ',' || b == '.') && next) {
			break
		}
		end++
	}
	if end > 0 && end < len(text) && text[end] == '.' && (end+1 == len(text) || text[end+1] == ' ') {
		end++
	}
	if end == 1 && !isDigit(text[0]) {
		return ""
	}
	return text[:end]
}

// plainDigits settles what commas and points of a run mean, and gives the number
// with a point, and how many decimals it has.
func (r *reader) plainDigits(run string) (digits string, decimals int, err *ReadError) {
	points, commas := strings.Count(run, "."), strings.Count(run, ",")
	whole, rest, _ := strings.Cut(run, ".")
	switch {
	case points > 1:
		return "", 0, r.unclear(run, "has more than one point")
	case commas == 0:
		return run, len(rest), nil
	case points == 1 && !groupsWell(whole), strings.Contains(rest, ","):
		return "", 0, r.unclear(run, "has a comma where none groups thousands")
	case points == 1 || groupsWell(run):
		return strings.ReplaceAll(run, ",", ""), len(rest), nil
	case commas > 1:
		return "", 0, r.unclear(run, "has commas that do not group thousands")
	}
	before, behind, _ := strings.Cut(run, ",")
	if len(behind) == 3 && len(before) > 3 {
		return "", 0, r.unclear(run, "has a comma that may group thousands or stand before decimals")
	}
	return before + "." + behind, len(behind), nil
}

// unclear refuses a run of digits.
func (r *reader) unclear(run, why string) *ReadError {
	return r.fault(NotANumber, r.pos, r.pos+len(run),
		"The number "+quote(run)+" "+why+". Write it as 1250.5 or 1,250.5.")
}

// groupsWell tells whether commas stand before each three digits, behind one to
// three digits that do not begin with 0: "0,125" cannot be a group.
func groupsWell(run string) bool {
	groups := strings.Split(run, ",")
	if len(groups[0]) < 1 || len(groups[0]) > 3 || groups[0][0] == '0' {
		return false
	}
	for _, group := range groups[1:] {
		if len(group) != 3 {
			return false
		}
	}
	return true
}

// exponent reads "e3" or "×10³" behind a number and gives its power of ten.
func (r *reader) exponent() int {
	rest := r.rest()
	if length, exponent := exponentPart(rest); length > 0 && !letterAt(rest, length) {
		r.pos += length
		return exponent
	}
	for _, times := range []string{"×10", "× 10", "x10^", "*10^"} {
		behind, found := strings.CutPrefix(rest, times)
		if !found {
			continue
		}
		plain, used := lowered(behind)
		if exponent, err := strconv.Atoi(plain); err == nil && len(plain) < 5 {
			r.pos += len(times) + used
			return exponent
		}
	}
	return 0
}

// lowered reads superscript digits, or ^ and plain ones, as plain ones.
func lowered(text string) (plain string, used int) {
	const digits = "⁰0¹1²2³3⁴4⁵5⁶6⁷7⁸8⁹9⁻-"
	if behind, found := strings.CutPrefix(text, "^"); found || (text != "" && (isDigit(text[0]) || text[0] == '-')) {
		used = len(text) - len(behind)
		if strings.HasPrefix(behind, "-") {
			plain, used = "-", used+1
		}
		more := leadingDigits(text[used:])
		if !found && plain == "" {
			return "", 0
		}
		return plain + more, used + len(more)
	}
	for _, r := range text {
		at := strings.IndexRune(digits, r)
		if at < 0 || r < 0x80 {
			break
		}
		sign := len(string(r))
		plain += digits[at+sign : at+sign+1]
		used += sign
	}
	return plain, used
}

func letterAt(text string, at int) bool { return at < len(text) && isLetter(text[at]) }

// fraction reads on behind a whole number: "/8" of 5/8, " 5/8" of 6 5/8, or
// "-11/16" of 1-11/16. ok is false when no fraction follows.
func (r *reader) fraction(start int, digits string) (n numeral, ok bool, err *ReadError) {
	whole := 0.0
	rest := r.rest()
	if !isFraction(digits + rest) {
		gap := 0
		for _, joint := range []string{" and ", "-", " "} {
			if strings.HasPrefix(rest, joint) {
				gap = len(joint) + len(rest[len(joint):]) - len(strings.TrimLeft(rest[len(joint):], " "))
				break
			}
		}
		if gap == 0 || !isFraction(rest[gap:]) {
			return numeral{}, false, nil
		}
		if rest[0] == '-' && gap > 1 {
			return numeral{}, false, nil // "6- 5/8" is no mixed number
		}
		whole, _ = strconv.ParseFloat(digits, 64)
		digits = leadingDigits(rest[gap:])
		r.pos += gap + len(digits)
		rest = r.rest()
		n.whole = true
	}
	den := leadingDigits(rest[1:])
	r.pos += 1 + len(den)
	over, _ := strconv.ParseFloat(digits, 64)
	under, _ := strconv.ParseFloat(den, 64)
	if under == 0 || under > 1e6 || over > tooLarge || whole > tooLarge || (n.whole && over >= under) {
		return numeral{}, false, r.fault(NotANumber, start, r.pos,
			"I cannot read "+quote(r.typed(start, r.pos))+" as a number with a fraction. Write it as in 6 5/8 or 6.625.")
	}
	return numeral{value: whole + over/under, half: 0.5 / under, fraction: true}, true, nil
}

// isFraction tells whether text begins with digits, a slash and a digit.
func isFraction(text string) bool {
	n := len(leadingDigits(text))
	return n > 0 && n+1 < len(text) && text[n] == '/' && isDigit(text[n+1])
}

// finite tells whether x is a number that can be shown.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
