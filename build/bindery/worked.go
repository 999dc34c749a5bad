package bindery

import (
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
	"columnbowl/site"
)

// worked writes a worked example: what is given, every step in both systems of
// units, and the result. Nothing of it needs a script. sheet is the sheet of
// the page that can take its facts.
func (w *work) worked(e *example, sheet string, root string) site.Worked {
	out := site.Worked{Title: e.title, SheetID: sheet, Facts: e.facts, Want: w.engine.Terms[e.want].ID}
	for _, f := range e.result.Question.Facts {
		out.Given = append(out.Given, w.line(e.result, e.given[f.Term], root))
	}
	for _, t := range e.expect {
		out.Expect = append(out.Expect, w.line(e.result, e.hoped[t], root))
	}
	for _, t := range e.chain() {
		out.Steps = append(out.Steps, e.result.Step(t, formula.US))
		out.StepsSI = append(out.StepsSI, e.result.Step(t, formula.SI))
	}
	return out
}

// line is a value of an example. In the unit in which its author wrote it, it
// has the author's digits: 336.01 ft stays 336.01 ft, and 343.0 ft keeps its
// zero. An expected value has been proved to be right to these digits.
func (w *work) line(r *reckon.Result, a *formula.Assign, root string) site.Line {
	t := &w.engine.Terms[a.Term]
	l := site.Line{Name: t.Name, URL: root + termPath(t.ID), Value: both(r, a.Term)}
	switch {
	case t.Kind == formula.Choice:
		l.Text = w.engine.Format(a.Term, r.Values[a.Term].Likely, formula.US)
	case a.Low < a.High:
	case sameUnit(a.Unit, t.US) && sameUnit(a.Unit, t.SI):
		l.Value.US.N, l.Value.SI.N = written(a.Number), written(a.Number)
	case sameUnit(a.Unit, t.US):
		l.Value.US.N = written(a.Number)
	case sameUnit(a.Unit, t.SI):
		l.Value.SI.N = written(a.Number)
	}
	return l
}

// sameUnit says whether a value was written in a unit; a bare number is in none.
func sameUnit(a, b *unit.Unit) bool {
	return a != nil && b != nil && a.Symbol == b.Symbol
}

// written prints an author's digits: with a true minus sign.
func written(number string) string { return strings.Replace(number, "-", "−", 1) }
