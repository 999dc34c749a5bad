package answer

import (
	"columnbowl/calcwasm/choosing"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// turns tells where inside the ranges of the facts those of the shown terms
// change that go in steps.
func (d *Desk) turns(w *writer, res *reckon.Result, q *request) {
	list := res.Turns(q.show)
	w.list("turns", len(list), func(i int) {
		t := &list[i]
		w.object(func() {
			w.pair("id", d.book.Terms[t.Term].ID)
			w.pair("name", d.book.Terms[t.Term].Title)
			d.turned(w, t.Fact, func(s formula.System) string { return t.Text(d.book, s) })
		})
	})
}

// pumps tells where inside the ranges another pump would be chosen.
func (d *Desk) pumps(w *writer, q *request) {
	list := choosing.Turns(d.book, q.question)
	w.list("pumps", len(list), func(i int) {
		w.object(func() { d.turned(w, list[i].Fact, func(s formula.System) string { return list[i].Text(d.book, s) }) })
	})
}

// turned names the fact that is a range, and tells the changes in both systems.
func (d *Desk) turned(w *writer, fact int, text func(s formula.System) string) {
	w.pair("fact", d.book.Terms[fact].ID)
	w.pair("by", d.book.Terms[fact].Name)
	w.pair("us", text(formula.US))
	w.pair("si", text(formula.SI))
}
