package reckon

import (
	"math"
	"testing"
)

// TestTurns: power = flow · (head + level) / 3960 / efficiency goes up in steps of
// 5 hp. Between 300 and 500 gpm the efficiency of the book's curve rises too, so
// the places are compared with a fine search of 5,000 samples, each solved anew.
func TestTurns(t *testing.T) {
	b := makeBook(t, peakBook)
	ends := map[string][2]float64{"flow": {200, 330}, "head": {150, 150}, "level": {30, 60}, "trim": {1, 1}}
	res := b.Reckon(Question{Want: -1, Facts: ranged(t, b, ends)})
	rating, flow, power := termOf(t, b, "rating"), termOf(t, b, "flow"), termOf(t, b, "power")
	turns := res.Turns([]int{rating, power})
	if len(turns) == 0 || turns[0].Term != rating || turns[0].Fact != flow {
		t.Fatalf("the rating does not turn along the flow: %+v", turns)
	}
	for _, turn := range turns {
		if turn.Term == power {
			t.Errorf("the power slopes, and is told as going in steps: %+v", turn)
		}
		if len(turn.Values) != len(turn.At)+1 {
			t.Fatalf("%d places, %d values", len(turn.At), len(turn.Values))
		}
		place, values := searched(b, res.Question.Facts, turn.Fact, rating)
		if len(place) != len(turn.At) {
			t.Fatalf("%s: found %v, searched %v", b.Terms[turn.Fact].ID, turn.At, place)
		}
		for i := range place {
			width := span(res.Question.Facts, turn.Fact)
			if math.Abs(place[i]-turn.At[i]) > 3e-4*width || values[i+1] != turn.Values[i+1] {
				t.Errorf("%s: change %d found at %v, searched %v", b.Terms[turn.Fact].ID, i, turn.At[i], place[i])
			}
		}
	}
}

// TestNoTurns: without ranges, and along a range that meets no step, nothing is told.
func TestNoTurns(t *testing.T) {
	b := makeBook(t, peakBook)
	rating := termOf(t, b, "rating")
	for _, flow := range [][2]float64{{300, 300}, {300, 301}} {
		ends := map[string][2]float64{"flow": flow, "head": {150, 150}, "level": {40, 40}, "trim": {1, 1}}
		if turns := b.Reckon(Question{Want: -1, Facts: ranged(t, b, ends)}).Turns([]int{rating}); len(turns) > 0 {
			t.Errorf("flow %v: %+v", flow, turns)
		}
	}
}

func span(facts []Fact, term int) float64 {
	for _, f := range facts {
		if f.Term == term {
			return f.High - f.Low
		}
	}
	return 0
}

// searched finds the changes of a result by many plain solutions.
func searched(b *Book, facts []Fact, fact, result int) (place, values []float64) {
	const n = 5000
	q := Question{Want: -1, Facts: append([]Fact(nil), facts...)}
	for i := range q.Facts {
		q.Facts[i].Low, q.Facts[i].High = q.Facts[i].Likely, q.Facts[i].Likely
	}
	for k := 0; k <= n; k++ {
		x := 0.0
		for i, f := range facts {
			if f.Term == fact {
				x = f.Low + (f.High-f.Low)*float64(k)/n
				q.Facts[i].Low, q.Facts[i].Likely, q.Facts[i].High = x, x, x
			}
		}
		v := b.Reckon(q).Values[result].Likely
		if len(values) > 0 && v == values[len(values)-1] {
			continue
		}
		if len(values) > 0 {
			place = append(place, x)
		}
		values = append(values, v)
	}
	return place, values
}
