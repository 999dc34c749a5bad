package physics

import (
	"math"
	"testing"

	"columnbowl/calcwasm/curve"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// The curve of the room and curve(…) of the notation are two pieces of code for
// one line: they agree to the last bits all along it.
func TestTwoCurves(t *testing.T) {
	scope := formula.NewScope([]formula.Term{{ID: "capacity", US: lookup(t, "gpm"), SI: lookup(t, "m3/h")}}, nil)
	for _, c := range []struct {
		text   string
		y      string
		points [][2]float64
	}{
		{"curve(capacity, 0 gpm: 63.0 ft, 400 gpm: 59.3 ft, 600 gpm: 53.7 ft, 800 gpm: 45.0 ft, 960 gpm: 35.6 ft, 1040 gpm: 30.1 ft)", "ft",
			[][2]float64{{0, 63.0}, {400, 59.3}, {600, 53.7}, {800, 45.0}, {960, 35.6}, {1040, 30.1}}},
		{"curve(capacity, 0 gpm: 0 %, 400 gpm: 60.8 %, 600 gpm: 75.9 %, 800 gpm: 81.0 %, 960 gpm: 76.1 %, 1040 gpm: 70.1 %)", "%",
			[][2]float64{{0, 0}, {400, 60.8}, {600, 75.9}, {800, 81.0}, {960, 76.1}, {1040, 70.1}}},
	} {
		e, err := formula.ParseExpr(c.text, scope)
		if err != nil {
			t.Fatal(err)
		}
		points := make([]curve.Point, len(c.points))
		for i, p := range c.points {
			points[i] = curve.Point{X: lookup(t, "gpm").ToSI(p[0]), Y: lookup(t, c.y).ToSI(p[1])}
		}
		line, err := curve.New(points)
		if err != nil {
			t.Fatal(err)
		}
		env := formula.NewEnv(scope)
		for i := range 2081 {
			q := lookup(t, "gpm").ToSI(float64(i) / 2)
			env.Values[0] = q
			a, b := e.Eval(env), 0.0
			if b, _ = line.At(q); !(math.Abs(a-b) <= 1e-14*(1+math.Abs(a))) {
				t.Fatalf("at %v gpm: notation %v, room %v", float64(i)/2, a, b)
			}
		}
	}
}

func lookup(t *testing.T, symbol string) *unit.Unit {
	t.Helper()
	u, ok := unit.Lookup(symbol)
	if !ok {
		t.Fatalf("no unit %s", symbol)
	}
	return u
}
