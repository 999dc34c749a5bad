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

// Functions that read the points of a family say why where they have no value.
func TestOnPoints(t *testing.T) {
	functions := map[string]*formula.Func{}
	for _, f := range Functions() {
		functions[f.Name] = f
		if (f.Eval == nil) == (f.OnPoints == nil) {
			t.Errorf("%s is computed in two ways, or in none", f.Name)
		}
	}
	gpm, ft := lookup(t, "gpm").ToSI(1), lookup(t, "ft").ToSI(1)
	points := []formula.Point{{X: 0, Y: 63 * ft}, {X: 400 * gpm, Y: 59.3 * ft}, {X: 600 * gpm, Y: 53.7 * ft},
		{X: 800 * gpm, Y: 45 * ft}, {X: 960 * gpm, Y: 35.6 * ft}, {X: 1040 * gpm, Y: 30.1 * ft}}
	line := formula.LineOf(formula.NewPoints(points, lookup(t, "gpm")))
	for _, c := range []struct {
		name    string
		args    []float64
		want    float64
		invalid string
	}{
		{"affinity-factor", []float64{800 * gpm, 45 * ft}, 1, ""},
		{"affinity-factor", []float64{-1, 45 * ft}, 0, "the affinity laws carry a flow that is not negative and a head above zero"},
		{"operating-flow", []float64{8, 1, 300 * ft, 0, 60 * ft, 800 * gpm}, 800 * gpm, ""},
		{"operating-flow", []float64{8, 1, 300 * ft, 20 * ft, 40 * ft, 800 * gpm}, 800 * gpm, ""},
		{"operating-flow", []float64{8, 1, 600 * ft, 0, 60 * ft, 800 * gpm}, 0, "the pump never reaches the head that the system asks for"},
		{"operating-flow", []float64{8, 1, 10 * ft, 0, 1 * ft, 800 * gpm}, 0, "the pump runs beyond the end of its curve: the system asks for less head than the pump makes there"},
		{"operating-flow", []float64{8, 1, 300 * ft, 0, -1, 800 * gpm}, 0, "drawdown and friction grow with the flow: neither is below zero"},
		{"operating-flow", []float64{0, 1, 300 * ft, 0, 1, 800 * gpm}, 0, "a pump is laid on its system with stages, speed and flow above zero"},
	} {
		got, invalid := functions[c.name].OnPoints(line, c.args)
		if invalid != c.invalid || invalid == "" && math.Abs(got-c.want) > 1e-9*c.want {
			t.Errorf("%s%v is %v %q, want %v %q", c.name, c.args, got, invalid, c.want, c.invalid)
		}
	}
}
