package published

import (
	"math"
	"strings"

	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// quantity reads a number with its unit; the number stays as written. A pure
// number may stand without a unit.
func (l *loader) quantity(t *reckon.Term, text, what string) (float64, *unit.Unit, bool) {
	digits, negative := strings.CutPrefix(text, "-")
	value, u, _, rest, err := unit.ReadNotation(digits)
	if negative {
		value = -value
	}
	dim := unit.None
	if u != nil {
		dim = u.Dim
	}
	switch {
	case err != nil:
		l.fail("%s “%s” cannot be read: %v", what, text, err)
	case strings.TrimSpace(rest) != "":
		l.fail("%s “%s” cannot be read: what is “%s”?", what, text, strings.TrimSpace(rest))
	case dim != t.US.Dim:
		l.fail("%s “%s” is a %s, and %s is a %s.", what, text, dim, t.ID, t.US.Dim)
	default:
		return value, u, true
	}
	return 0, nil, false
}

// tolerance reads the tolerance of a case, in SI. A share in per cent is taken
// of the expected number as written, so that 1 % of 20 °C is 0.2 K.
func (l *loader) tolerance(t *reckon.Term, c *Case, value float64, of *unit.Unit) float64 {
	factor := 1.0
	if of != nil {
		factor = of.Factor
	}
	number, percent := strings.CutSuffix(c.ToleranceText, "%")
	switch {
	case c.ToleranceText == "exact":
		return 0
	case percent && (of == nil || of.Symbol != "%"):
		share, _, _, rest, err := unit.ReadNotation(strings.TrimSpace(number))
		if err != nil || strings.TrimSpace(rest) != "" || share <= 0 {
			l.fail("The tolerance “%s” cannot be read as a share.", c.ToleranceText)
			return 0
		}
		return math.Abs(value) * factor * share / 100
	}
	x, u, ok := l.quantity(t, c.ToleranceText, "The tolerance")
	if ok && x <= 0 {
		l.fail("The tolerance “%s” leaves no room: write “exact” if none is meant.", c.ToleranceText)
	}
	if u != nil {
		factor = u.Factor
	}
	return x * factor
}
