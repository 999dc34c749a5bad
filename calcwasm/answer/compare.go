package answer

import (
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// change is what a request asks to be different: a fact moved by an amount, or
// made the next larger of a list of sizes.
type change struct {
	term  int
	by    string
	sizes []string
}

// changes takes the lines that ask for a comparison.
func (q *request) changes(d *Desk, verb, rest string) bool {
	if verb != "shift" && verb != "next" {
		return false
	}
	id, value, _ := strings.Cut(rest, "\t")
	term, ok := d.book.Find(id)
	if !ok {
		q.strange = append(q.strange, "There is no term “"+id+"” in this book.")
		return true
	}
	c := change{term: term, by: value}
	if verb == "next" {
		c.by, c.sizes = "", strings.Split(value, ";")
	}
	q.compare = append(q.compare, c)
	return true
}

// comparison works the question out again with the changes made to those of
// their terms that are facts, and tells the terms that are shown before and after.
func (d *Desk) comparison(w *writer, res *reckon.Result, q *request) {
	after := q.question
	after.Facts = append([]reckon.Fact(nil), res.Question.Facts...)
	var changed []int
	problem := ""
	for i := range q.compare {
		for k := range after.Facts {
			if after.Facts[k].Term != q.compare[i].term {
				continue
			}
			if problem = d.change(&after.Facts[k], &q.compare[i]); problem == "" {
				changed = append(changed, k)
			}
		}
	}
	w.member("compare", func() {
		w.object(func() {
			w.pair("problem", problem)
			if len(changed) == 0 {
				w.list("needs", len(q.compare), func(i int) { w.text(d.book.Terms[q.compare[i].term].ID) })
				return
			}
			then := d.book.Reckon(after)
			w.list("changed", len(changed), func(i int) { d.compared(w, res, then, after.Facts[changed[i]].Term) })
			w.list("lines", len(q.show), func(i int) { d.compared(w, res, then, q.show[i]) })
			w.list("clashes", len(then.Clashes), func(i int) { w.text(then.ClashText(&then.Clashes[i], formula.US)) })
		})
	})
}

// change makes one change to a fact; it returns why it cannot.
func (d *Desk) change(f *reckon.Fact, c *change) string {
	if c.sizes == nil {
		typed, err := unit.Read(c.by, unit.Field{Unit: d.book.Terms[f.Term].US, Name: d.book.Terms[f.Term].Name})
		if err != nil {
			return err.Error()
		}
		f.Low, f.Likely, f.High = f.Low+typed.Likely, f.Likely+typed.Likely, f.High+typed.Likely
		f.Text, f.Unit, f.Notes = "", nil, nil
		if t := &d.book.Terms[f.Term]; f.Low < t.Low || f.High > t.High {
			return "That would be outside what makes sense for " + t.Name + ": from " + d.book.Format(f.Term, t.Low, formula.US) + " to " + d.book.Format(f.Term, t.High, formula.US) + "."
		}
		return ""
	}
	const same = 1e-9
	for _, size := range c.sizes {
		if g, err := d.book.Read(f.Term, size); err == nil && g.Likely > f.Likely*(1+same) {
			*f = g
			return ""
		}
	}
	return "There is no larger " + d.book.Terms[f.Term].Name + " in the list of this book."
}

// compared tells a term before and after, and how far it moved.
func (d *Desk) compared(w *writer, before, after *reckon.Result, t int) {
	w.object(func() {
		w.pair("id", d.book.Terms[t].ID)
		w.pair("name", d.book.Terms[t].Title)
		both := func(key string, text func(s formula.System) string) {
			w.member(key, func() {
				w.object(func() {
					w.always("us", text(formula.US))
					w.always("si", text(formula.SI))
				})
			})
		}
		for _, x := range [...]struct {
			key string
			res *reckon.Result
		}{{"before", before}, {"after", after}} {
			if x.res.Known(t) {
				both(x.key, func(s formula.System) string { return x.res.Text(t, s) })
			}
		}
		if before.Known(t) && after.Known(t) && d.book.Terms[t].Kind != formula.Choice {
			both("move", func(s formula.System) string { return d.moved(t, after.Values[t].Likely-before.Values[t].Likely, s) })
		}
	})
}

// moved writes a difference with its sign.
func (d *Desk) moved(t int, by float64, s formula.System) string {
	text := d.book.Move(t, by, s)
	if by > 0 && !strings.HasPrefix(text, "0 ") {
		return "+" + text
	}
	return text
}
