package answer

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// why tells the chain behind a number, from the given facts to it: every line
// with its term, so that the page can lead to it. The wanted number is the last.
func (d *Desk) why(w *writer, res *reckon.Result, q *request) {
	if q.why < 0 || !res.Known(q.why) {
		return
	}
	var given, derived []int
	seen := map[int]bool{}
	for _, t := range append(res.Chain(q.why), q.why) {
		if seen[t] || res.Values[t].State == reckon.Given {
			continue
		}
		seen[t] = true
		derived = append(derived, t)
		for _, f := range res.Values[t].From {
			if !seen[f] && res.Values[f].State == reckon.Given {
				seen[f] = true
				given = append(given, f)
			}
		}
	}
	chain := append(given, derived...)
	w.list("why", len(chain), func(i int) {
		t := chain[i]
		w.object(func() {
			w.pair("id", d.book.Terms[t].ID)
			w.pair("name", d.book.Terms[t].Title)
			w.flag("ranged", res.Ranged(t))
			w.pair("state", res.Values[t].State.String())
			w.pair("us", d.whyLine(res, t, formula.US))
			w.pair("si", d.whyLine(res, t, formula.SI))
		})
	})
}

// whyLine is one line: a fact with its value, or a step with its numbers in.
func (d *Desk) whyLine(res *reckon.Result, t int, s formula.System) string {
	if res.Values[t].State == reckon.Given {
		if res.Ranged(t) {
			return d.book.Terms[t].Name + " = " + d.book.Format(t, res.Values[t].Likely, s) + ", given as " + res.Text(t, s)
		}
		return d.book.Terms[t].Name + " = " + res.Text(t, s)
	}
	return res.Step(t, s)
}
