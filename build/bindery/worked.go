package bindery

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/site"
)

// worked writes a worked example: what is given, every step in both systems of
// units, and the result. Nothing of it needs a script. sheet is the sheet of
// the page that can take its facts.
func (w *work) worked(e *example, sheet string, root string) site.Worked {
	out := site.Worked{Title: e.title, SheetID: sheet, Facts: e.facts, Want: w.engine.Terms[e.want].ID}
	for _, f := range e.result.Question.Facts {
		out.Given = append(out.Given, w.line(e.result, f.Term, root))
	}
	for _, t := range e.expect {
		out.Expect = append(out.Expect, w.line(e.result, t, root))
	}
	for _, t := range e.chain() {
		out.Steps = append(out.Steps, e.result.Step(t, formula.US))
		out.StepsSI = append(out.StepsSI, e.result.Step(t, formula.SI))
	}
	return out
}

func (w *work) line(r *reckon.Result, term int, root string) site.Line {
	t := &w.engine.Terms[term]
	l := site.Line{Name: t.Name, URL: root + termPath(t.ID), Value: both(r, term)}
	if t.Kind == formula.Choice {
		l.Text = w.engine.Format(term, r.Values[term].Likely, formula.US)
	}
	return l
}
