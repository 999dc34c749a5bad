package bindery

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// comparisons in words, as they stand between two values.
var comparisons = map[formula.Op]string{
	formula.Equal: " is ", formula.Unequal: " is not ",
	formula.Less: " is less than ", formula.AtMost: " is at most ",
	formula.More: " is more than ", formula.AtLeast: " is at least ",
}

// conditionWords writes a condition as a person would say it: "build is
// oil-lubricated and setting is more than 400 ft".
func conditionWords(b *reckon.Book, e *formula.Expr) string {
	if e == nil {
		return ""
	}
	switch e.Op {
	case formula.And:
		return joined(b, e.X, formula.Or) + " and " + joined(b, e.Y, formula.Or)
	case formula.Or:
		return joined(b, e.X, formula.And) + " or " + joined(b, e.Y, formula.And)
	case formula.Not:
		return "not: " + conditionWords(b, e.X)
	}
	verb, ok := comparisons[e.Op]
	if !ok {
		return e.Words(b.Scope)
	}
	return e.X.Words(b.Scope) + verb + e.Y.Words(b.Scope)
}

// joined sets a part off where "and" and "or" would run into each other.
func joined(b *reckon.Book, e *formula.Expr, other formula.Op) string {
	text := conditionWords(b, e)
	if e.Op == other {
		if other == formula.Or {
			return "either " + text
		}
		return "both " + text
	}
	return text
}
