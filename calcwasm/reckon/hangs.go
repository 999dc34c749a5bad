package reckon

import (
	"math"

	"columnbowl/calcwasm/formula"
)

// Hang tells how much the wanted result moves when one value alone goes from
// one end of its range to the other, with all others at their likely values.
type Hang struct {
	Term    int
	Move    float64 // of the wanted term, in SI, never negative
	Assumed bool    // nobody said the value: it is moved by Doubt either way
}

// Doubt is how far an assumed value is moved, relative to it. It stands for no
// knowledge of the value: it makes assumptions comparable.
const Doubt = About

// least is the share of the wanted result below which nothing is told.
const least = 0.0002

// rank lists the facts that are ranges, and the values that were assumed on the
// way to the wanted term, by how much it hangs on them: the ranges first, the most of each first.
func (res *Result) rank(base *run) []Hang {
	want := res.Question.Want
	if want < 0 || !res.Known(want) || res.Book.Terms[want].Kind == formula.Choice {
		return nil
	}
	s := newSpread(res, base)
	ranged := len(s.axes)
	for _, t := range res.Chain(want) {
		v, term := &res.Values[t], &res.Book.Terms[t]
		if v.State == Assumed && term.Kind == formula.Quantity && v.Likely != 0 {
			d := Doubt * math.Abs(v.Likely)
			s.axes = append(s.axes, axis{t, math.Max(term.Low, v.Likely-d), v.Likely, math.Min(term.High, v.Likely+d)})
		}
	}
	if len(s.axes) == 0 {
		return nil
	}
	s.steps, s.guards = nil, nil
	s.follow()
	var list []Hang
	for k := range s.axes {
		if move := s.moves(k, want); move > least*math.Abs(s.plain[want]) {
			list = append(list, Hang{s.axes[k].term, move, k >= ranged})
		}
	}
	for i := 1; i < len(list); i++ {
		for j := i; j > 0 && before(&list[j], &list[j-1]); j-- {
			list[j], list[j-1] = list[j-1], list[j]
		}
	}
	return list
}

// before puts what somebody was unsure of before what nobody said.
func before(a, b *Hang) bool {
	if a.Assumed != b.Assumed {
		return b.Assumed
	}
	return a.Move > b.Move
}

// moves is how far a term goes while one axis does.
func (s *spread) moves(k, want int) float64 {
	low, high := s.plain[want], s.plain[want]
	at := s.middle()
	for i := 0; i <= scanSteps; i++ {
		at[k] = s.axes[k].low + (s.axes[k].high-s.axes[k].low)*float64(i)/scanSteps
		if s.replay(at) && s.env.Known(want) {
			low, high = math.Min(low, s.env.Values[want]), math.Max(high, s.env.Values[want])
		}
	}
	return high - low
}

// Move writes how far a wanted term moves, with its unit.
func (b *Book) Move(term int, d float64, s formula.System) string {
	u := b.Terms[term].In(s)
	return b.Format(term, u.ToSI(d/u.Factor), s)
}
