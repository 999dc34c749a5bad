package reckon

import (
	"math"
	"strconv"
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// Format writes a value of a term with its unit; a choice as it is called.
func (b *Book) Format(term int, v float64, s formula.System) string {
	t := &b.Terms[term]
	if t.Kind == formula.Choice {
		if i := int(v); v == v && i >= 0 && i < len(t.Labels) {
			return t.Labels[i]
		}
		return "–"
	}
	return unit.FormatWith(v, t.In(s))
}

// Number writes a value of a term without its unit; a range as “180 to 200”.
func (r *Result) Number(term int, s formula.System) string {
	t, v := &r.Book.Terms[term], &r.Values[term]
	if t.Kind == formula.Choice {
		return r.Book.Format(term, v.Likely, s)
	}
	low, high := unit.Format(v.Low, t.In(s)), unit.Format(v.High, t.In(s))
	if v.Low < v.High && low != high {
		return low + " to " + high
	}
	if v.State == Given && v.Fact >= 0 {
		return asTyped(v.Likely, t.In(s), r.Question.Facts[v.Fact].Unit)
	}
	return unit.Format(v.Likely, t.In(s))
}

// asTyped writes a given value with the digits it was given with, if it is
// shown in the unit it was given in; converted it has four digits as any other.
func asTyped(v float64, shown, typed *unit.Unit) string {
	text := unit.Format(v, shown)
	if typed == nil || typed.Symbol != shown.Symbol {
		return text
	}
	n := shown.FromSI(v)
	if full := strconv.FormatFloat(n, 'g', 8, 64); len(full) > len(text) && math.Abs(n) >= 1e-4 && math.Abs(n) < 1e4 {
		return strings.Replace(full, "-", "−", 1)
	}
	return text
}

// Word is the value of a choice as its word, "" if it is not known.
func (r *Result) Word(term int) string {
	t, v := &r.Book.Terms[term], r.Values[term].Likely
	if i := int(v); t.Kind == formula.Choice && v == v && i >= 0 && i < len(t.Values) {
		return t.Values[i]
	}
	return ""
}

// Text writes a value of a term with its unit.
func (r *Result) Text(term int, s formula.System) string {
	t := &r.Book.Terms[term]
	if t.Kind == formula.Choice || t.In(s).Print == "" || r.Values[term].Low >= r.Values[term].High {
		return r.Book.Format(term, r.Values[term].Likely, s)
	}
	return r.Number(term, s) + " " + t.In(s).Print
}

// Words writes a rule with the names of its terms.
func (rule *Rule) Words(b *Book) string {
	if rule.Relation == nil {
		return b.Terms[rule.Target].Name + " = " + b.Format(rule.Target, rule.Value, formula.US)
	}
	return rule.Relation.Left.Words(b.Scope) + " = " + rule.Relation.Right.Words(b.Scope)
}

// Env is what is known in a result, for evaluating further expressions. It is
// the result's own: use it from one goroutine, and leave its values alone.
func (r *Result) Env() *formula.Env { return r.env }

// form is the expression that explains a value in a system of units: the one
// evaluated, or in SI the partner in SI form turned round for the same term.
func (r *Result) form(term int, s formula.System) *formula.Expr {
	v := &r.Values[term]
	if s == formula.SI && v.Rule >= 0 {
		if partner := r.Book.Rules[v.Rule].SI; partner != nil {
			if e, ok := partner.Isolate(term); ok {
				return e
			}
		}
	}
	return v.Expr
}

// Work writes the right-hand side of a derived term with the numbers put in:
// “336 ft + 6.4 ft + 0.6 ft”. It is empty for what was not computed.
func (r *Result) Work(term int, s formula.System) string {
	v := &r.Values[term]
	switch v.State {
	case Follows, Estimated, Clashes, Outside:
	default:
		return ""
	}
	if v.Searched {
		return r.searched(term)
	}
	e := r.form(term, s)
	if e == nil {
		return ""
	}
	env := r.Env()
	text := e.Substituted(r.Book.Scope, env, s)
	if t := &r.Book.Terms[term]; e.Rounded(r.Book.Scope, env, s, t.In(s)) {
		text += " (rounded)"
	}
	return text
}

// searched tells how a value was sought.
func (r *Result) searched(term int) string {
	v := &r.Values[term]
	text := "sought between " + r.Book.Format(term, r.Book.Terms[term].Low, formula.US) + " and " +
		r.Book.Format(term, r.Book.Terms[term].High, formula.US) + " so that " + r.Book.Rules[v.Rule].Words(r.Book)
	if len(v.Loop) > 1 {
		text += ", round the loop of " + r.names(v.Loop)
	}
	return text
}

func (r *Result) names(terms []int) string {
	text := ""
	for i, t := range terms {
		switch {
		case i > 0 && i == len(terms)-1:
			text += " and "
		case i > 0:
			text += ", "
		}
		text += r.Book.Terms[t].Name
	}
	return text
}

// Step writes a derived term as one line of a calculation:
// “total head = 336 ft + 6.4 ft + 0.6 ft = 343 ft”. Where facts are ranges the
// step stands with the middle values, and the range it leads to stands behind it.
func (r *Result) Step(term int, s formula.System) string {
	name, value := r.Book.Terms[term].Name, r.Text(term, s)
	v := &r.Values[term]
	over := ""
	if middle := r.Book.Format(term, v.Likely, s); r.Ranged(term) {
		value, over = middle, ", over the ranges "+value
	}
	return name + " = " + r.rightSide(term, value, s) + over
}

// Ranged says whether a value is a range.
func (r *Result) Ranged(term int) bool {
	return r.Book.Terms[term].Kind != formula.Choice && r.Values[term].Low < r.Values[term].High
}

// rightSide is a step without its name: the numbers put in, and what comes out.
func (r *Result) rightSide(term int, value string, s formula.System) string {
	v := &r.Values[term]
	switch {
	case v.State == Assumed:
		return value + " (assumed: " + r.Book.Rules[v.Rule].Say + ")"
	case v.State == Estimated:
		return r.Work(term, s) + " = " + value + " (estimate: " + r.Book.Rules[v.Rule].Say + ")"
	case v.Searched:
		return value + ", " + r.Work(term, s)
	}
	work := r.Work(term, s)
	if work == "" || work == value {
		return value
	}
	const rounded = " (rounded)"
	if n := len(work) - len(rounded); n > 0 && work[n:] == rounded {
		return work[:n] + " = " + value + rounded
	}
	return work + " = " + value
}

// Chain lists what a term stands on that was not given, in the order in which
// a person would work it out, the term itself last.
func (r *Result) Chain(term int) []int {
	seen := make([]bool, len(r.Values))
	var list []int
	var visit func(t int)
	visit = func(t int) {
		if seen[t] {
			return
		}
		seen[t] = true
		v := &r.Values[t]
		for _, f := range v.From {
			visit(f)
		}
		for _, f := range v.Loop {
			visit(f)
		}
		if v.Rule >= 0 {
			list = append(list, t)
		}
	}
	visit(term)
	return list
}

// GivenFor lists the given terms that a term stands on, in the order of the book.
func (r *Result) GivenFor(term int) []int {
	var list []int
	seen := map[int]bool{}
	var visit func(t int)
	visit = func(t int) {
		if seen[t] {
			return
		}
		seen[t] = true
		if r.Values[t].Fact >= 0 {
			list = append(list, t)
		}
		for _, f := range r.Values[t].From {
			visit(f)
		}
	}
	visit(term)
	return list
}

// ClashText tells a clash in one sentence: both values and the difference.
func (r *Result) ClashText(c *Clash, s formula.System) string {
	b := r.Book
	name := b.Terms[c.Term].Name
	have, want := b.Format(c.Term, c.Have, s), b.Format(c.Term, c.Want, s)
	verb := "is"
	if r.Values[c.Term].Fact >= 0 {
		verb = "was given as"
	}
	e := b.Rules[c.Rule].turned(c.Term)
	work := e.Substituted(b.Scope, r.Env(), s)
	text := name + " " + verb + " " + have + ", but " + work
	if work != want {
		text += " = " + want
	}
	return text + " (difference " + b.Format(c.Term, c.Have-c.Want, s) + ")."
}
