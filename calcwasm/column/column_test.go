package column

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"columnbowl/calcwasm/pipe"
)

const (
	foot = 0.3048
	gpm  = 3.785411784e-3 / 60
	g    = 9.80665
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %v, want %v within %v", what, got, want, tolerance)
	}
}

// The cases are those of testdata/published/02_annulus_checks.csv.
func TestLaminarRingOfTheTextbook(t *testing.T) { // A2-1
	const q, outer, inner, rho, mu = 12e-6, 0.004, 0.002, 1180, 0.0045
	re, _ := Reynolds(q, outer, inner, rho, mu)
	near(t, "Reynolds number of the ring", re, 668, 0.5)
	slope, why := Friction(q, outer, inner, rho, mu, 0)
	near(t, "pressure drop of the ring, kPa/m "+why, slope*rho*g/1000, 68.2, 0.05)
	re, _ = Reynolds(q, outer, 0, rho, mu)
	near(t, "Reynolds number of the tube", re, 1002, 0.7) // printed 1002, exactly 1001.6
	tube, why := Friction(q, outer, 0, rho, mu, 0)
	near(t, "pressure drop of the tube, kPa/m "+why, tube*rho*g/1000, 8.59, 0.05)
	near(t, "ratio", slope/tube, 7.94, 0.005)
}

func TestHydraulicDiameterOfTheTextbook(t *testing.T) { // A2-2
	d, why := HydraulicDiameter(10, 8)
	near(t, "hydraulic diameter "+why, d, 2, 0)
	area, _ := Area(10, 8)
	near(t, "four areas over the wetted wall", 4*area/(math.Pi*(10+8)), d, 1e-12)
}

// A2-3 (from memory): the book asks for the level of a reservoir, so that its
// 3.71 m and 4.1 m hold the velocity head at the open end besides the friction.
func TestTurbulentRingOfTheTextbook(t *testing.T) {
	const q, outer, inner, rho, mu, eps, length = 0.01, 0.10, 0.06, 1000, 1.02e-3, 0.046e-3, 30.0
	v, _ := Velocity(q, outer, inner)
	near(t, "velocity", v, 1.99, 0.005)
	re, _ := Reynolds(q, outer, inner, rho, mu)
	near(t, "Reynolds number", re, 78000, 500)
	open := v * v / (2 * g)
	f, _ := pipe.FrictionFactor(re, eps/(outer-inner))
	near(t, "factor at the hydraulic diameter", f, 0.0232, 0.00005)
	near(t, "level with the hydraulic diameter", f*length/(outer-inner)*open+open, 3.71, 0.02)
	slope, why := Friction(q, outer, inner, rho, mu, eps)
	near(t, "level with the effective diameter "+why, slope*length+open, 4.1, 0.05)
}

func TestVelocityInTheTradesUnits(t *testing.T) {
	for _, c := range [][4]float64{{800, 7.981, 2.875, 5.90}, {800, 7.981, 0, 5.13}, {600, 6.065, 0, 6.66}, {1200, 10.02, 1.9375, 5.07}} {
		v, why := Velocity(c[0]*gpm, c[1]*inch, c[2]*inch)
		near(t, "velocity "+why, v/foot, c[3], 0.005)
		near(t, "the trade's constant", v/foot, 0.4085*c[0]/(c[1]*c[1]-c[2]*c[2]), 1e-4*v/foot)
	}
}

// Laminar flow in a ring is solved here a second way: by adding up the flow of
// thin shells whose velocity is found from the balance of forces on each.
func TestShapeAgainstShells(t *testing.T) {
	for _, r := range []float64{0.05, 0.2, 0.36, 0.5, 0.6, 0.8, 0.95} {
		near(t, "shape of ring "+strconv.FormatFloat(r, 'g', -1, 64), shape(r), shellShape(r, 4000), 2e-5)
	}
}

// shellShape is f·Re/64 of a ring of outer radius 1 and inner radius r: the
// shells' velocities by elimination on the tridiagonal balance of shear.
func shellShape(r float64, n int) float64 {
	h := (1 - r) / float64(n)
	lower, diag, right := make([]float64, n), make([]float64, n), make([]float64, n)
	for i := range n {
		in, out := r+float64(i)*h, r+float64(i+1)*h
		a, b := in/h, out/h // what shear passes on for a difference of velocity
		if i == 0 {
			a *= 2 // the wall is half a shell away
		}
		if i == n-1 {
			b *= 2
		}
		lower[i], diag[i], right[i] = a, a+b, (out*out-in*in)/2 // a pressure gradient of 1, a viscosity of 1
	}
	for i := 1; i < n; i++ {
		m := lower[i] / diag[i-1]
		diag[i] -= m * (r + float64(i)*h) / h
		right[i] += m * right[i-1]
	}
	flow, u := 0.0, 0.0
	for i := n - 1; i >= 0; i-- {
		out := r + float64(i+1)*h
		if i == n-1 {
			u = right[i] / diag[i]
		} else {
			u = (right[i] + out/h*u) / diag[i]
		}
		in := r + float64(i)*h
		flow += u * math.Pi * (out*out - in*in)
	}
	v, dh := flow/(math.Pi*(1-r*r)), 2*(1-r)
	return 2 * dh * dh / v / 64 // f·Re = 2 Dh² (dp/dx)/(μ V)
}

func TestShapeFromPipeToThinRing(t *testing.T) {
	near(t, "empty pipe", shape(0), 1, 0)
	near(t, "two flat walls", shape(0.99), 1.5, 1e-4)
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(1e-9, 0.98).Draw(t, "ratio")
		if a, b := shape(r), shape(r*1.01); !(a > 1 && a < 1.5 && b > a) {
			t.Fatalf("ring of %v: shape %v, a little thinner %v", r, a, b)
		}
	})
}

// Without a shaft the ring is the pipe of the published table.
func TestVanishingShaftIsThePublishedPipe(t *testing.T) {
	file, err := os.Open("../../testdata/published/01_hi_steel_1p5in.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	table, err := r.ReadAll()
	if err != nil || len(table) < 10 {
		t.Fatalf("%v, %d rows", err, len(table))
	}
	const rho, nu = 1000.0, 1.217e-5 * foot * foot
	for _, row := range table[1:] {
		var x [5]float64
		for i := range x {
			if x[i], err = strconv.ParseFloat(row[i], 64); err != nil {
				t.Fatal(err)
			}
		}
		slope, why := Friction(x[0]*gpm, 1.610*inch, 0, rho, rho*nu, 0.00015*foot)
		near(t, row[0]+" gpm in the empty pipe "+why, 100*slope, x[3], x[3]*x[4]/100)
	}
}

func TestVanishingShaft(t *testing.T) {
	full, _ := Friction(0.05, 0.2, 0, 998, 1e-3, 4.6e-5)
	last := math.Inf(1)
	for _, d := range []float64{2e-2, 2e-3, 2e-5, 2e-8, 2e-12} {
		ring, why := Friction(0.05, 0.2, d, 998, 1e-3, 4.6e-5)
		if why != "" || !(ring > full && ring < last) {
			t.Fatalf("shaft of %v m: %v %s, thicker %v, none %v", d, ring, why, last, full)
		}
		last = ring
	}
	near(t, "a thread in the middle", last/full, 1, 0.01)
	slope, why := CFactor(500*gpm, 8*inch, 0, 100) // A2-5, read from a chart
	near(t, "500 gpm in 8 in, C 100 "+why, 1000*slope, 8.1, 0.02*8.1)
	own, _ := pipe.HazenWilliams(500*gpm, 8*inch, 100)
	near(t, "the same as the pipe's own", slope, own, 1e-15)
}

func TestFrictionOfTheJobs(t *testing.T) {
	for _, c := range [][4]float64{{800, 7.981, 2.875, 2.664}, {1200, 10.02, 1.9375, 1.1797}, {600, 6.065, 0, 2.733}} {
		slope, why := CFactor(c[0]*gpm, c[1]*inch, c[2]*inch, 130)
		near(t, "C-factor, ft/100 ft "+why, 100*slope, c[3], 0.0005)
		// The ring by its radius, as the trade writes it.
		v := 0.4085 * c[0] / (c[1]*c[1] - c[2]*c[2])
		s := math.Pow(v/(1.318*130*math.Pow((c[1]-c[2])/48, 0.63)), 1/0.54)
		near(t, "the radius form", slope, s, 2e-4*s)
	}
}

func TestColumnRefuses(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		flow, outer, inner, rho, mu, eps float64
		want                             string
	}{
		{0.05, 0, 0, 1000, 1e-3, 0, "the column needs an inside diameter above 0"},
		{0.05, 0.2, -0.1, 1000, 1e-3, 0, "the shaft or tube has a diameter of 0 or more"},
		{0.05, 0.2, 0.2, 1000, 1e-3, 0, "the shaft or tube fills the column: no ring is left for the water"},
		{0.05, 0.2, 0.05, 0, 1e-3, 0, "density and viscosity have to be above 0"},
		{0.05, 0.2, 0.05, 1000, 1e-3, -1, "the roughness of a wall is 0 or more"},
		{nan, 0.2, 0.05, 1000, 1e-3, 0, "there is no flow to go by"},
		{0.05, nan, 0.05, 1000, 1e-3, 0, "the column needs an inside diameter above 0"},
		{0.05, 0.2, nan, 1000, 1e-3, 0, "the shaft or tube has a diameter of 0 or more"},
		{0.05, 0.2, 0.05, 1000, nan, 0, "density and viscosity have to be above 0"},
		{0.05, 0.2, 0.05, 1000, 1e-3, nan, "the roughness of a wall is 0 or more"},
	} {
		if v, why := Friction(c.flow, c.outer, c.inner, c.rho, c.mu, c.eps); v == v || why != c.want {
			t.Errorf("%+v: %v, %q", c, v, why)
		}
	}
	if v, why := Friction(0.0006, 0.2, 0.05, 1000, 1e-3, 0); v == v || !strings.Contains(why, "between Reynolds numbers of 2000 and 4000") {
		t.Errorf("neither laminar nor turbulent: %v %q", v, why)
	}
	if v, why := CFactor(0.01, 0.1, 0.06, 130); v == v || why != "the ring is narrower than a 2 in pipe is wide: the C-factor formula does not reach so far" {
		t.Errorf("narrow ring: %v %q", v, why)
	}
	if v, why := CFactor(0.01, 0.2, 0.3, 130); v == v || why == "" {
		t.Errorf("no ring: %v %q", v, why)
	}
}

func TestFrictionGrowsWithFlowAndShaft(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		outer := rapid.Float64Range(0.1, 0.4).Draw(t, "outer")
		ratio := rapid.Float64Range(0, 0.6).Draw(t, "ratio")
		v := rapid.Float64Range(0.5, 5).Draw(t, "velocity")
		area, _ := Area(outer, ratio*outer)
		a, why := Friction(v*area, outer, ratio*outer, 998, 1e-3, 4.6e-5)
		b, whyB := Friction(1.02*v*area, outer, ratio*outer, 998, 1e-3, 4.6e-5)
		c, whyC := Friction(v*area, outer, (ratio+0.01)*outer, 998, 1e-3, 4.6e-5)
		if why+whyB+whyC != "" || !(b > a && c > a) {
			t.Fatalf("%v %s; faster %v %s; thicker shaft %v %s", a, why, b, whyB, c, whyC)
		}
	})
}
