package curve

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"columnbowl/calcwasm/unit"
)

// in turns a number in a unit into SI.
func in(symbol string, x float64) float64 {
	u, ok := unit.Lookup(symbol)
	if !ok {
		panic("no unit " + symbol)
	}
	return u.ToSI(x)
}

// lapwing is the head of one stage of the Lapwing 10 at 1770 rpm, the reference
// bowl, invented for this book.
func lapwing(t testing.TB) *Curve {
	return heads(t, []float64{0, 400, 600, 800, 960, 1040}, []float64{63.0, 59.3, 53.7, 45.0, 35.6, 30.1})
}

func heads(t testing.TB, gpm, ft []float64) *Curve {
	t.Helper()
	p := make([]Point, len(gpm))
	for i := range p {
		p[i] = Point{X: in("gpm", gpm[i]), Y: in("ft", ft[i])}
	}
	c, err := New(p)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %v, want %v within %v", what, got, want, within)
	}
}

// The curve passes through its points, keeps between neighbours and is refused
// outside.
func TestShape(t *testing.T) {
	c := lapwing(t)
	for i, p := range c.points {
		if y, invalid := c.At(p.X); math.Abs(y-p.Y) > 1e-12 || invalid != "" {
			t.Errorf("point %d: %v %s", i, y, invalid)
		}
	}
	for i := range 1000 {
		y, _ := c.At(in("gpm", float64(i)*1.04))
		next, _ := c.At(in("gpm", float64(i+1)*1.04))
		if !(next <= y) {
			t.Fatalf("the head rises at %v gpm", float64(i)*1.04)
		}
	}
	for x, want := range map[float64]string{-1e-6: "the curve begins at a larger flow", in("gpm", 1040.01): "the curve ends at a smaller flow", math.NaN(): "the flow is not a number"} {
		if y, invalid := c.At(x); y == y || invalid != want {
			t.Errorf("at %v: %v, %q", x, y, invalid)
		}
	}
}

func TestBadPoints(t *testing.T) {
	for _, p := range [][]Point{nil, {{X: 1, Y: 1}}, {{X: 1, Y: 1}, {X: 1, Y: 2}}, {{X: 2, Y: 1}, {X: 1, Y: 2}}, {{X: 0, Y: math.NaN()}, {X: 1, Y: 2}}, {{X: 0, Y: 1}, {X: math.Inf(1), Y: 2}}} {
		if _, err := New(p); err == nil {
			t.Errorf("%v is taken as a curve", p)
		}
	}
}

// Between the six points the curve keeps to the formulas from which the
// invented bowls were made (M1 of the research notes): head within 1 % of the
// best stage head.
func TestAgainstTheFormulasOfTheBowls(t *testing.T) {
	var bowls []struct {
		Code            string
		Qb, Hb, A, N, S float64
		Exponent        float64 `json:"n"`
	}
	text, err := os.ReadFile("testdata/bowls.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &bowls); err != nil || len(bowls) != 6 {
		t.Fatalf("%d bowls, %v", len(bowls), err)
	}
	for _, b := range bowls {
		head := func(x float64) float64 { return b.Hb * (b.A - (b.A-1)*math.Pow(x, b.Exponent)) }
		var q, h []float64
		for _, x := range []float64{0, 0.5, 0.75, 1, 1.2, 1.3} {
			q, h = append(q, x*b.Qb), append(h, head(x))
		}
		c := heads(t, q, h)
		for i := range 131 {
			x := float64(i) / 100
			got, invalid := c.At(math.Min(in("gpm", x*b.Qb), c.points[5].X))
			if want := in("ft", head(x)); invalid != "" || math.Abs(got-want) > 0.01*in("ft", b.Hb) {
				if x <= 1.3 {
					t.Errorf("%s at %v: %v m, formula %v m %s", b.Code, x, got, want, invalid)
				}
			}
		}
	}
}

// Between two neighbours the curve stays between their values, whatever the data.
func TestShapeProperty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 9).Draw(t, "points")
		p := make([]Point, n)
		x := rapid.Float64Range(-5, 5).Draw(t, "start")
		for i := range p {
			x += rapid.Float64Range(1e-3, 10).Draw(t, "step")
			p[i] = Point{X: x, Y: rapid.Float64Range(-100, 100).Draw(t, "y")}
		}
		c, err := New(p)
		if err != nil {
			t.Fatal(err)
		}
		for i := range p[1:] {
			a, b := p[i], p[i+1]
			for k := range 17 {
				at := a.X + (b.X-a.X)*float64(k)/16
				y, invalid := c.At(math.Min(at, p[n-1].X))
				slack := 1e-12 * (1 + math.Abs(a.Y) + math.Abs(b.Y))
				if invalid != "" || y < math.Min(a.Y, b.Y)-slack || y > math.Max(a.Y, b.Y)+slack {
					t.Fatalf("between (%v) and (%v): %v at %v %s", a, b, y, at, invalid)
				}
			}
		}
	})
}
