package answer

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// hang tells how far the wanted result moves with one value alone.
func (d *Desk) hang(w *writer, res *reckon.Result, h *reckon.Hang) {
	want := res.Question.Want
	w.object(func() {
		w.pair("id", d.book.Terms[h.Term].ID)
		w.pair("name", d.book.Terms[h.Term].Name)
		w.pair("us", d.book.Move(want, h.Move, formula.US))
		w.pair("si", d.book.Move(want, h.Move, formula.SI))
		w.flag("assumed", h.Assumed)
	})
}
