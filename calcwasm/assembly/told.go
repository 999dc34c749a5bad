package assembly

import (
	"math"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// Totals are the terms to be told behind the pieces that have a value in this
// pump, in the order of the build.
func (l *List) Totals() []int {
	var list []int
	for _, t := range l.Build.Totals {
		if l.Result.Known(t) && l.Result.Values[t].State != reckon.NotApplicable {
			list = append(list, t)
		}
	}
	return list
}

// Deeper is how much longer the setting is made than it was asked, m; negative if
// it is shorter, NaN if one of the two is not known.
func (l *List) Deeper() float64 {
	if !l.Result.Known(l.Build.Asked) || !l.Result.Known(l.Build.Made) {
		return math.NaN()
	}
	d := l.Result.Values[l.Build.Made].Likely - l.Result.Values[l.Build.Asked].Likely
	if math.Abs(d) < 1e-6 {
		return 0
	}
	return d
}

// Largest is the one of the hook's weights to be told first; -1 if none is known.
func (l *List) Largest() int {
	best := -1
	for _, t := range l.Build.Hook {
		if l.Result.Known(t) && (best < 0 || l.Result.Values[t].Likely > l.Result.Values[best].Likely) {
			best = t
		}
	}
	return best
}

// Touched are the terms that the list stands on, by their places in the book:
// those given, those in its lines and totals, and all on the way to them.
func (l *List) Touched() []int {
	on := make([]bool, len(l.Result.Values))
	mark := func(terms []int) {
		for _, t := range terms {
			on[t] = true
		}
	}
	mark(l.Build.Options)
	mark(l.Build.Totals)
	mark([]int{l.Build.Made, l.Build.Asked})
	for i := range l.Pieces {
		line := l.Pieces[i].Line
		for _, e := range [4]*formula.Expr{line.Count, line.Length, line.Mass, line.When} {
			if e != nil {
				mark(e.Terms())
			}
		}
	}
	for i := range l.Result.Question.Facts {
		on[l.Result.Question.Facts[i].Term] = true
	}
	for t, direct := range append([]bool(nil), on...) {
		if direct {
			mark(l.Result.Chain(t))
		}
	}
	var list []int
	for t := range on {
		if on[t] {
			list = append(list, t)
		}
	}
	return list
}

// Cautions are those of the touched terms that fire, as places in the book; the
// refusals are not among them.
func (l *List) Cautions() []int {
	touched := l.Touched()
	var fires []int
	for _, c := range l.Result.Cautions {
		home := l.Result.Book.Cautions[c.Caution].Home
		if c.Truth == formula.True && among(touched, home) && !among(l.Refused, c.Caution) {
			fires = append(fires, c.Caution)
		}
	}
	return fires
}
