package reckon

import (
	"math"
	"strings"

	"columnbowl/calcwasm/formula"
)

// Turn tells where inside the range of a fact a result that goes in steps changes
// from one step to the next: a motor, a number of stages. Everything else stands
// at its likely value.
type Turn struct {
	Term   int
	Fact   int       // the term whose value is a range
	At     []float64 // of the fact, in SI, rising: where the result changes
	Values []float64 // of the result, in SI: one more than At
}

const (
	turnPieces = 16   // pieces into which a range is cut to look for steps
	mostValues = 6    // of a result that goes in steps; one that slopes has more
	turnWidth  = 1e-4 // of the range: how closely a place is sought
)

// Turns lists where the terms change along each range of the facts. A term is
// told only if it stands still between its changes along the whole of a range.
func (res *Result) Turns(terms []int) []Turn {
	s := newSpread(res, &run{book: res.Book, env: res.env})
	moved := map[int]bool{}
	for _, t := range s.steps {
		moved[t] = true
	}
	var list []Turn
	for k := range s.axes {
		samples := s.along(k, terms)
		for i, t := range terms {
			if moved[t] && res.Known(t) {
				if turn, ok := s.turn(k, t, samples[i]); ok {
					list = append(list, turn)
				}
			}
		}
	}
	return list
}

// along samples terms on the way along an axis. NaN stands where a step fails or
// another relation would be in force.
func (s *spread) along(k int, terms []int) [][]float64 {
	list := make([][]float64, len(terms))
	at := s.middle()
	for n := 0; n <= turnPieces; n++ {
		at[k] = s.axes[k].part(n)
		ok := s.replay(at)
		for i, t := range terms {
			x := math.NaN()
			if ok {
				x = s.env.Values[t]
			}
			list[i] = append(list[i], x)
		}
	}
	return list
}

// part is a place on an axis, counted in pieces from its low end.
func (x axis) part(n int) float64 {
	return x.low + (x.high-x.low)*float64(n)/turnPieces
}

// turn finds the places where one term changes, from its samples.
func (s *spread) turn(k, t int, samples []float64) (Turn, bool) {
	out := Turn{Term: t, Fact: s.axes[k].term, Values: samples[:1:1]}
	if !stepped(samples) {
		return out, false
	}
	for n := 0; n < turnPieces; n++ {
		place, end := s.axes[k].part(n), s.axes[k].part(n+1)
		for now := samples[n]; now != samples[n+1]; {
			next := 0.0
			if place, next = s.change(k, t, place, end, now); next == now || len(out.At) > mostValues {
				return out, false
			}
			now = next
			out.At, out.Values = append(out.At, place), append(out.Values, now)
		}
	}
	return out, true
}

// stepped tells whether samples stand still but for a few changes.
func stepped(samples []float64) bool {
	changes := 0
	for i, x := range samples {
		if x != x {
			return false
		}
		if i > 0 && x != samples[i-1] {
			changes++
		}
	}
	return changes > 0 && changes < mostValues
}

// change narrows down where a term stops having the value it has at low. It
// returns the place behind the change, and the value there; the same value as now
// if the steps of the plain result cannot be followed.
func (s *spread) change(k, t int, low, high, now float64) (place, value float64) {
	at := s.middle()
	for width := turnWidth * (s.axes[k].high - s.axes[k].low); high-low > width; {
		at[k] = low + (high-low)/2
		if !s.replay(at) {
			return high, now
		}
		if s.env.Values[t] == now {
			low = at[k]
		} else {
			high = at[k]
		}
	}
	at[k] = high
	if !s.replay(at) {
		return high, now
	}
	return high, s.env.Values[t]
}

// Text says which value the result has where: “up to 425 gpm 40 hp, above that 50 hp”.
func (t *Turn) Text(b *Book, s formula.System) string {
	values := make([]string, len(t.Values))
	for i, v := range t.Values {
		values[i] = b.Format(t.Term, v, s)
	}
	return Ladder(b, t.Fact, t.At, values, s)
}

// Ladder puts words for what holds between places of a range into one line.
func Ladder(b *Book, fact int, at []float64, words []string, s formula.System) string {
	var line strings.Builder
	for i, x := range at {
		line.WriteString("up to " + b.Format(fact, x, s) + " " + words[i] + ", ")
	}
	return line.String() + "above that " + words[len(at)]
}
