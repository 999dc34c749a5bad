package bindery

import (
	"columnbowl/calcwasm/answer"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/site"
)

// group is a run of a sheet's lines under one heading.
type group struct {
	heading string
	anchor  string // id of the heading, for links; empty for none
	terms   []int
}

// termRows chooses the lines of a term's sheet: the given facts of its first
// example in their order, then what leads to the expected terms, then the terms
// of the page's other relations.
func (w *work) termRows(term int, e *example) []int {
	var rows []int
	seen := map[int]bool{}
	add := func(t int) {
		if !seen[t] {
			seen[t] = true
			rows = append(rows, t)
		}
	}
	for _, f := range e.result.Question.Facts {
		add(f.Term)
	}
	for _, t := range e.chain() {
		add(t)
	}
	for i := range w.engine.Rules {
		rule := &w.engine.Rules[i]
		if rule.Home != term || rule.Relation == nil {
			continue
		}
		right := rule.Relation.Right.Terms()
		for _, t := range append(right[:len(right):len(right)], rule.Relation.Left.Terms()...) {
			add(t)
		}
	}
	add(term)
	return rows
}

// sheet fills a calculation sheet from a result.
func (w *work) sheet(id string, e *example, groups []group, root string) *site.Sheet {
	s := &site.Sheet{ID: id, Title: e.title, Facts: e.facts, Units: w.units, Count: map[site.State]int{}}
	if e.want >= 0 {
		s.Want = w.engine.Terms[e.want].ID
	}
	texts := map[int]string{}
	for i, f := range e.result.Question.Facts {
		texts[f.Term] = e.facts[i].Text
	}
	for _, g := range groups {
		if g.heading != "" {
			s.Rows = append(s.Rows, site.Row{Heading: g.heading, Anchor: g.anchor})
		}
		for _, t := range g.terms {
			row := w.row(e.result, t, root)
			row.Fact, row.Wanted = texts[t], t == e.want
			s.Count[row.State]++
			s.Rows = append(s.Rows, row)
		}
	}
	return s
}

// row writes one line of a sheet.
func (w *work) row(r *reckon.Result, term int, root string) site.Row {
	t, v := &w.engine.Terms[term], &r.Values[term]
	row := site.Row{
		Term: t.ID, Name: t.Name, URL: root + termPath(t.ID), State: site.State(v.State.String()),
		WorkUS: r.Work(term, formula.US), WorkSI: r.Work(term, formula.SI),
	}
	row.UnitUS, row.UnitSI = unitsOf(t)
	if shown(v.State) {
		row.Value = both(r, term)
	}
	if v.Rule >= 0 {
		row.Relation = r.Book.Rules[v.Rule].Words(r.Book)
	}
	if v.State == reckon.Missing {
		row.Ask = t.Ask
	} else {
		row.Note = answer.Note(r, term)
	}
	for i := range r.Clashes {
		if r.Clashes[i].Term == term {
			row.Clash = r.ClashText(&r.Clashes[i], formula.US)
		}
	}
	w.choices(&row, r, term)
	w.alternatives(&row, r, term)
	return row
}

// shown says whether a state has a value to print.
func shown(s reckon.State) bool {
	switch s {
	case reckon.Missing, reckon.Waits, reckon.NotApplicable, reckon.Several:
		return false
	}
	return true
}

func (w *work) choices(row *site.Row, r *reckon.Result, term int) {
	t := &w.engine.Terms[term]
	if t.Kind != formula.Choice {
		return
	}
	for i, v := range t.Values {
		row.Choices = append(row.Choices, site.Choice{ID: v, Name: t.Labels[i]})
	}
	row.Choice = r.Word(term)
}

// alternatives lists the estimates of a term where there is a choice between
// them.
func (w *work) alternatives(row *site.Row, r *reckon.Result, term int) {
	v := &r.Values[term]
	if len(v.Alternatives) < 2 {
		return
	}
	for _, a := range v.Alternatives {
		rule := &r.Book.Rules[a.Rule]
		alt := site.Alternative{Name: rule.Name, Say: rule.Say, Chosen: a.Chosen}
		if a.Value == a.Value {
			alt.US, alt.SI = w.engine.Format(term, a.Value, formula.US), w.engine.Format(term, a.Value, formula.SI)
		}
		row.Alternatives = append(row.Alternatives, alt)
	}
}
