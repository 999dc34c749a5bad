package reckon

import (
	"math"
	"math/rand/v2"
	"testing"

	"columnbowl/calcwasm/formula"
)

// peakBook has a best point inside a curve, a smallest power that two facts lead
// to, a step, a condition, and a relation that must be searched.
const peakBook = `
term flow gpm m3/h 50 1000 ask
term head ft m 1 500 ask
term trim 1 1 0.5 1.5 ask
term level ft m 0 500 ask
term efficiency % % 1 100
term water-power hp kW 0 500
term power hp kW 0 900
term offset hp kW 0 900
term rating hp kW 0 900
term loss ft m 0 900
term odd 1 1 0 20
efficiency = curve(flow, 50 gpm: 30 %, 300 gpm: 70 %, 520 gpm: 84 %, 700 gpm: 78 %, 1000 gpm: 40 %)
water-power[hp] = flow[gpm] * (head[ft] + level[ft]) / 3960
power = water-power / efficiency
offset[hp] = (flow[gpm] / 100 - 4) ^ 2 + trim * abs(head[ft] - 130)
rating[hp] = round-up(power[hp] / 5) * 5
when flow <= 600 gpm | loss[ft] = 0.00002 * flow[gpm] ^ 2
when flow > 600 gpm | loss[ft] = 7.2 + 0.05 * (flow[gpm] - 600)
odd + odd ^ 3 = trim * flow[gpm] / 100
`

// ranged makes facts: each with its two ends, the same for a plain value.
func ranged(t testing.TB, b *Book, ends map[string][2]float64) []Fact {
	t.Helper()
	var facts []Fact
	for i := range b.Terms {
		e, ok := ends[b.Terms[i].ID]
		if !ok {
			continue
		}
		u := b.Terms[i].US
		low, high := u.ToSI(e[0]), u.ToSI(e[1])
		facts = append(facts, Fact{Term: i, Low: low, Likely: (low + high) / 2, High: high})
	}
	return facts
}

var peakRanges = []struct {
	name string
	ends map[string][2]float64
}{
	{"one range over the best point", map[string][2]float64{"flow": {300, 760}, "head": {150, 150}, "level": {40, 40}, "trim": {1, 1}}},
	{"a narrow one", map[string][2]float64{"flow": {500, 560}, "head": {150, 150}, "level": {40, 40}, "trim": {1, 1}}},
	{"two", map[string][2]float64{"flow": {350, 650}, "head": {100, 180}, "level": {40, 40}, "trim": {1, 1}}},
	{"three", map[string][2]float64{"flow": {200, 900}, "head": {90, 150}, "level": {10, 60}, "trim": {1, 1}}},
	{"four", map[string][2]float64{"flow": {420, 640}, "head": {90, 200}, "level": {10, 20}, "trim": {0.9, 1.1}}},
	{"all over a condition", map[string][2]float64{"flow": {550, 650}, "head": {100, 101}, "level": {10, 20}, "trim": {1, 1.2}}},
}

// The ends of every result are those of 10,000 random samples, each solved by
// itself, to 1 % of the width; peaks inside a range are not missed. A third of
// the samples stand at an end of each range, so that the corners are among them.
func TestRangesHoldSamples(t *testing.T) {
	b := makeBook(t, peakBook)
	for _, c := range peakRanges {
		facts := ranged(t, b, c.ends)
		res := b.Reckon(Question{Facts: facts, Want: -1})
		low, high := sampled(b, facts, 10_000)
		for i := range b.Terms {
			v := &res.Values[i]
			if v.Fact >= 0 || !(low[i] <= high[i]) {
				continue
			}
			slack := 0.01*(high[i]-low[i]) + 1e-12*math.Abs(high[i])
			if math.Abs(v.Low-low[i]) > slack || math.Abs(v.High-high[i]) > slack {
				t.Errorf("%s: %s is %v to %v, the samples %v to %v", c.name, b.Terms[i].ID, v.Low, v.High, low[i], high[i])
			}
		}
	}
}

// sampled solves at random places of the ranges.
func sampled(b *Book, facts []Fact, n int) (low, high []float64) {
	r := rand.New(rand.NewPCG(7, 7))
	low, high = make([]float64, len(b.Terms)), make([]float64, len(b.Terms))
	for i := range low {
		low[i], high[i] = math.Inf(1), math.Inf(-1)
	}
	one := append([]Fact(nil), facts...)
	for range n {
		for k, f := range facts {
			x := f.Low + (f.High-f.Low)*r.Float64()
			switch r.IntN(6) {
			case 0:
				x = f.Low
			case 1:
				x = f.High
			}
			one[k].Low, one[k].Likely, one[k].High = x, x, x
		}
		res := b.Reckon(Question{Facts: one, Want: -1})
		for i := range res.Values {
			if x := res.Values[i].Likely; res.Known(i) {
				low[i], high[i] = math.Min(low[i], x), math.Max(high[i], x)
			}
		}
	}
	return low, high
}

// Many ranges at once: every sample lies inside, to 1 % of the width.
func TestManyRanges(t *testing.T) {
	b := makeBook(t, chainBook)
	ends := map[string][2]float64{}
	for _, d := range drawn {
		mid := d.low + 0.4*(d.high-d.low)
		ends[d.id] = [2]float64{mid * 0.93, mid * 1.07}
	}
	facts := ranged(t, b, ends)
	want, _ := b.Find("brake-power")
	v := b.Reckon(Question{Facts: facts, Want: want}).Values[want]
	low, high := sampled(b, facts, 10_000)
	slack := 0.01 * (v.High - v.Low)
	if low[want] < v.Low-slack || high[want] > v.High+slack {
		t.Errorf("%v to %v, the samples %v to %v", v.Low, v.High, low[want], high[want])
	}
}

// The ranking says what a range moves, the most first, and what is assumed.
func TestHangs(t *testing.T) {
	b := makeBook(t, chainBook)
	res := ask(t, b, "total-head", "static-level=180 to 200 ft", "drawdown=40 ft", "discharge-elevation=1 to 2 ft", "discharge-pressure=60 psi",
		"column-loss=6 ft", "head-loss=0.6 ft")
	if len(res.Hangs) != 3 {
		t.Fatalf("%+v", res.Hangs)
	}
	for i, w := range []struct {
		id, move string
		assumed  bool
	}{{"static-level", "20", false}, {"discharge-elevation", "1", false}, {"specific-gravity", "13.89", true}} {
		h := res.Hangs[i]
		text := b.Move(res.Question.Want, h.Move, formula.US)
		if b.Terms[h.Term].ID != w.id || h.Assumed != w.assumed || text != w.move+"\u00a0ft" && text != w.move+" ft" {
			t.Errorf("place %d: %s moves %s, assumed %v", i, b.Terms[h.Term].ID, text, h.Assumed)
		}
	}
}

// “About” is 5 % either way, of degrees too, and never outside what makes sense.
func TestAbout(t *testing.T) {
	b := makeBook(t, chainBook)
	term, _ := b.Find("capacity")
	f, err := b.Read(term, "about 400 gpm")
	if u := b.Terms[term].US; err != nil || math.Abs(u.FromSI(f.Low)-380) > 1e-9 || math.Abs(u.FromSI(f.High)-420) > 1e-9 || len(f.Notes) != 1 {
		t.Errorf("%+v, %v", f, err)
	}
	if f, err = b.Read(term, "about 9,800 gpm"); err != nil || f.High != b.Terms[term].High {
		t.Errorf("%+v, %v", f, err)
	}
}

func BenchmarkRanges(bench *testing.B) {
	b := makeBook(bench, peakBook)
	facts := ranged(bench, b, peakRanges[4].ends)
	for bench.Loop() {
		b.Reckon(Question{Facts: facts, Want: -1})
	}
}
