package reckon

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// facts of the chain that a random job is made of, with the values they may take.
var drawn = []struct {
	id, unit  string
	low, high float64
}{
	{"static-level", "ft", 10, 600}, {"drawdown", "ft", 1, 200}, {"discharge-elevation", "ft", 0, 10}, {"discharge-pressure", "psi", 1, 150},
	{"discharge-velocity-head", "ft", 0, 3}, {"column-loss", "ft", 0.1, 40}, {"head-loss", "ft", 0.1, 3}, {"capacity", "gpm", 50, 4000},
	{"specific-gravity", "1", 0.9, 1.1}, {"bowl-efficiency", "%", 50, 88}, {"shaft-loss", "hp", 0.1, 20}, {"thrust-bearing-loss", "hp", 0.1, 5},
}

// job draws a random job of the chain, as facts in SI.
func job(t *rapid.T, b *Book) []Fact {
	var facts []Fact
	for _, d := range drawn {
		i, _ := b.Find(d.id)
		x := b.Terms[i].US.ToSI(rapid.Float64Range(d.low, d.high).Draw(t, d.id))
		facts = append(facts, Fact{Term: i, Low: x, Likely: x, High: x})
	}
	return facts
}

// Solving the chain forward and then backward for any one of the facts gives
// that fact back.
func TestBackwardThenForward(t *testing.T) {
	b := makeBook(t, chainBook)
	want, _ := b.Find("brake-power")
	rapid.Check(t, func(t *rapid.T) {
		facts := job(t, b)
		power := b.Reckon(Question{Facts: facts, Want: want}).Values[want].Likely
		k := rapid.SampledFrom(invertible(b, facts)).Draw(t, "solved for")
		taken := facts[k]
		facts[k] = Fact{Term: want, Low: power, Likely: power, High: power}
		got := b.Reckon(Question{Facts: facts, Want: taken.Term}).Values[taken.Term]
		scale := math.Max(math.Abs(taken.Likely), biggest(b, facts, taken.Term))
		if !(math.Abs(got.Likely-taken.Likely) <= 1e-9*scale) {
			t.Fatalf("%s was %v and comes back as %v (%v, %s)", b.Terms[taken.Term].ID, taken.Likely, got.Likely, got.State, got.Reason)
		}
	})
}

// invertible lists the places of the facts that are not assumed when they are
// not given.
func invertible(b *Book, facts []Fact) []int {
	var list []int
next:
	for k, f := range facts {
		for _, r := range b.Rules {
			if r.Strength == Assumption && r.Target == f.Term {
				continue next
			}
		}
		list = append(list, k)
	}
	return list
}

// biggest is the largest of the facts in the same unit: a small term of a sum
// comes back no better than the last digits of the largest one.
func biggest(b *Book, facts []Fact, term int) float64 {
	m := 0.0
	for _, f := range facts {
		if b.Terms[f.Term].US.Dim == b.Terms[term].US.Dim {
			m = math.Max(m, math.Abs(f.Likely))
		}
	}
	return 10 * m
}

// Facts in any order give the same result.
func TestOrderOfFactsDoesNotMatter(t *testing.T) {
	b := makeBook(t, chainBook)
	want, _ := b.Find("brake-power")
	rapid.Check(t, func(t *rapid.T) {
		facts := job(t, b)
		first := b.Reckon(Question{Facts: facts, Want: want})
		shuffled := rapid.Permutation(facts).Draw(t, "order")
		second := b.Reckon(Question{Facts: shuffled, Want: want})
		for i := range first.Values {
			a, c := first.Values[i], second.Values[i]
			if a.State != c.State || a.Likely != c.Likely && !(a.Likely != a.Likely && c.Likely != c.Likely) {
				t.Fatalf("%s: %v %v and %v %v", b.Terms[i].ID, a.State, a.Likely, c.State, c.Likely)
			}
		}
	})
}

// A wider range of a fact never gives a narrower range of a result, and the
// likely value lies inside.
func TestRangesGrow(t *testing.T) {
	b := makeBook(t, chainBook)
	want, _ := b.Find("brake-power")
	rapid.Check(t, func(t *rapid.T) {
		facts := job(t, b)
		k := rapid.IntRange(0, len(facts)-1).Draw(t, "uncertain")
		d := facts[k].Likely * rapid.Float64Range(0, 0.05).Draw(t, "by")
		facts[k].Low, facts[k].High = facts[k].Likely-d, facts[k].Likely+d
		narrow := b.Reckon(Question{Facts: facts, Want: want}).Values[want]
		facts[k].Low, facts[k].High = facts[k].Likely-2*d, facts[k].Likely+2*d
		wide := b.Reckon(Question{Facts: facts, Want: want}).Values[want]
		if wide.Low > narrow.Low || wide.High < narrow.High || narrow.Low > narrow.Likely || narrow.High < narrow.Likely {
			t.Fatalf("narrow %v to %v, wide %v to %v, likely %v", narrow.Low, narrow.High, wide.Low, wide.High, narrow.Likely)
		}
	})
}

// Any subset of facts, also contradicting ones, is worked through to an end.
func TestCyclesEnd(t *testing.T) {
	b := makeBook(t, chainBook)
	rapid.Check(t, func(t *rapid.T) {
		var facts []Fact
		for i := range b.Terms {
			if rapid.Bool().Draw(t, fmt.Sprint("given ", b.Terms[i].ID)) {
				x := rapid.Float64Range(b.Terms[i].Low, b.Terms[i].High).Draw(t, b.Terms[i].ID)
				if b.Terms[i].Values != nil {
					x = math.Floor(x)
				}
				facts = append(facts, Fact{Term: i, Low: x, Likely: x, High: x})
			}
		}
		b.Reckon(Question{Facts: facts, Want: rapid.IntRange(0, len(b.Terms)-1).Draw(t, "want")})
	})
}

func BenchmarkChain(bench *testing.B) {
	b := makeBook(bench, chainBook)
	q := ask(bench, b, "brake-power", job1...).Question
	bench.ReportAllocs()
	for bench.Loop() {
		b.Reckon(q)
	}
}

func BenchmarkChainWithLoop(bench *testing.B) {
	b := makeBook(bench, chainBook)
	facts := append(without(job1, "capacity", "drawdown"), "specific-capacity=14.545454545 gpm/ft", "brake-power=88.75 hp")
	q := ask(bench, b, "capacity", facts...).Question
	for bench.Loop() {
		b.Reckon(q)
	}
}
