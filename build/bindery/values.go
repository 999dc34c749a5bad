package bindery

import (
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
	"columnbowl/site"
)

// both writes what a result knows of a term in both systems of units; empty if
// it knows nothing, and for a choice, which is a word.
func both(r *reckon.Result, term int) site.Both {
	t, v := &r.Book.Terms[term], &r.Values[term]
	if t.Kind == formula.Choice || v.Likely != v.Likely {
		return site.Both{}
	}
	return site.Both{
		US: site.Number{N: r.Number(term, formula.US), U: t.US.Print},
		SI: site.Number{N: r.Number(term, formula.SI), U: t.SI.Print},
	}
}

// amount writes an SI value of a term in both systems.
func amount(t *reckon.Term, v float64) site.Both {
	return site.Both{
		US: site.Number{N: unit.Format(v, t.US), U: t.US.Print},
		SI: site.Number{N: unit.Format(v, t.SI), U: t.SI.Print},
	}
}

// difference writes how far a value is off, with its sign. The offset of a
// temperature falls out of a difference.
func difference(t *reckon.Term, v, right float64) site.Both {
	return site.Both{US: offBy(t.US, v, right), SI: offBy(t.SI, v, right)}
}

func offBy(u *unit.Unit, v, right float64) site.Number {
	plain := *u
	plain.Factor, plain.Offset = 1, 0
	text := unit.Format(u.FromSI(v)-u.FromSI(right), &plain)
	if v > right {
		text = "+" + text
	}
	return site.Number{N: text, U: u.Print}
}

// unitsOf are the units of a term as pages print them; empty for a choice and
// for a pure number.
func unitsOf(t *reckon.Term) (us, si string) {
	if t.Kind == formula.Choice {
		return "", ""
	}
	return t.US.Print, t.SI.Print
}

// longUnit is "feet (ft)" for the line under a title. What a name adds for
// precision ("horsepower of 550 ft·lbf/s") has no room there.
func longUnit(u *unit.Unit) string {
	switch {
	case u == nil || u.Print == "":
		return ""
	case u.Name == "" || u.Name == u.Print:
		return u.Print
	}
	name, _, _ := strings.Cut(u.Name, " of ")
	return name + " (" + u.Print + ")"
}
