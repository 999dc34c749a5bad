package exercise

import (
	"math"
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// reading is what a learner wrote for a term.
type reading struct {
	number   float64    // the bare number
	unit     *unit.Unit // nil if none was written
	value    float64    // in SI, in the unit written or the term's own; NaN if the unit measures something else
	rounding float64    // half of the last digit written, in SI
	bare     float64    // half of the last digit written, of the bare number
	fault    string     // why it could not be read
}

// read reads an answer: a number, with its unit or without.
func (sh *Sheet) read(term int, text string) reading {
	u := sh.unit(term)
	field := sh.set.Book.Field(term)
	field.Unit = u
	field.Count = false // 7.6 stages is a wrong number, not an unreadable one
	if u != nil && u.Dim.IsNone() && u.Print == "" {
		text = strings.TrimRightFunc(text, func(c rune) bool { return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == ' ' }) // “8 stages”
	}
	typed, err := unit.Read(text, field)
	r := reading{value: typed.Likely, rounding: typed.Rounding, unit: typed.Unit}
	bad, _ := err.(*unit.ReadError)
	switch {
	case bad != nil && bad.Code == unit.WrongKind:
		r.unit, r.value, r.rounding = bad.Typed.Unit, math.NaN(), 0
		r.number = r.unit.FromSI(bad.Typed.Likely)
		r.bare = bad.Typed.Rounding / r.unit.Factor
		return r
	case bad != nil && bad.Code == unit.Ambiguous: // 0.72 in a field of percent
		plain, again := unit.Read(text, unit.Field{})
		if again != nil {
			r.fault = err.Error()
			return r
		}
		r.number, r.bare, r.unit = plain.Likely, plain.Rounding, nil
		r.value, r.rounding = math.NaN(), 0
		return r
	case err != nil:
		r.fault = err.Error()
		return r
	}
	if !saysUnit(text) {
		r.unit = nil
	}
	r.number, r.bare = typed.Unit.FromSI(r.value), r.rounding/typed.Unit.Factor
	return r
}

// saysUnit says whether a unit stands behind the number.
func saysUnit(text string) bool {
	return strings.ContainsFunc(strings.TrimSpace(text), func(c rune) bool {
		return c >= 'a' && c <= 'z' && c != 'e' || c >= 'A' && c <= 'Z' && c != 'E' || c == '%' || c == '"' || c == '\'' || c == '°' || c == '$'
	})
}

// otherUnits finds the unit, or the shift of the decimal point, with which a
// number that was read wrongly would be the right one; words is empty if there
// is none.
func (sg *segment) otherUnits(r *reading, right float64) (words string) {
	t := &sg.sheet.set.Book.Terms[sg.term]
	if t.Kind != formula.Quantity {
		return ""
	}
	asked := sg.sheet.unit(sg.term)
	fits := func(u *unit.Unit, scale float64) bool {
		v := u.ToSI(r.number * scale)
		slack := sg.tol
		return math.Abs(v-right) <= math.Max(slack, math.Min(r.bare*scale*u.Factor, slack*10))
	}
	if r.unit != nil && r.value != r.value && (fits(t.US, 1) || fits(t.SI, 1)) {
		return "The number is right, but its unit is not " + r.unit.Print + "."
	}
	if fits(asked, 0.01) && r.unit != nil && r.unit.Symbol == "%" || asked.Symbol == "%" && fits(asked, 100) {
		return "The number is right, but not as a percentage."
	}
	for _, u := range unit.All() {
		if u.Dim == asked.Dim && u.Reference == asked.Reference && fits(u, 1) {
			return "The number is right in " + u.Print + "; the unit written or asked for is another."
		}
	}
	for _, scale := range []float64{10, 100, 1000, 0.1, 0.01, 0.001} {
		if fits(asked, scale) || r.unit != nil && r.unit.Dim == asked.Dim && fits(r.unit, scale) {
			return "The digits are right; the decimal point stands in the wrong place."
		}
	}
	return ""
}
