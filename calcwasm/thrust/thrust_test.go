package thrust

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

const perFoot = poundForce / foot

// The numbers are those of the handbook's first two jobs.
func TestThrustOfTheJobs(t *testing.T) {
	one := Hydraulic(8.4*perFoot, 343.0*foot, 1)
	near(t, "Quillbeck, push", one/poundForce, 2881.2, 0.05)
	near(t, "Quillbeck, total", Total(one, 1922.4*poundForce)/poundForce, 4803.6, 0.05)
	near(t, "Quillbeck, shutoff", Largest(8.4*perFoot, 504*foot, 1, 1922.4*poundForce)/poundForce, 6579.4, 0.05)
	near(t, "Brindlecote, push", Hydraulic(10.6*perFoot, 307.5*foot, 1)/poundForce, 3259.5, 0.05)
	m, why := Margin(8300, 6579)
	near(t, "margin "+why, m, 1.2616, 0.0001)
}

// Rows of testdata/published/04_thrust_and_elongation.csv.
func TestBearingLoss(t *testing.T) {
	for _, c := range [][4]float64{{1760, 5000, 0.66, 0.005}, {1760, 10000, 1.32, 0.005}, {100, 1000, 0.0075, 1e-9}} {
		got, why := BearingLoss(c[0]*rpm, c[1]*poundForce)
		near(t, "bearing loss "+why, got/745.69987, c[2], c[3]) // W in a horsepower, NIST SP 811
	}
	for _, bad := range [][2]float64{{-1, 1}, {1, -1}, {math.NaN(), 1}, {1, math.NaN()}} {
		if v, why := BearingLoss(bad[0], bad[1]); v == v || why == "" {
			t.Errorf("%v: %v %q", bad, v, why)
		}
	}
}

func TestEyeMomentum(t *testing.T) {
	const gpm = 3.785411784e-3 / 60
	// One slug of water is 32.174 lb: 1200/448.83 ft³/s × 1.9376 slug/ft³ × 15.7 ft/s.
	got, why := EyeMomentum(62.34*0.45359237/(foot*foot*foot), 1200*gpm, 15.7*foot)
	near(t, "Brindlecote, one impeller "+why, got/poundForce, 81.3, 0.05)
	for _, bad := range [][3]float64{{0, 1, 1}, {1, -1, 1}, {1, 1, -1}, {math.NaN(), 1, 1}, {1, math.NaN(), 1}, {1, 1, math.NaN()}} {
		if v, why := EyeMomentum(bad[0], bad[1], bad[2]); v == v || why == "" {
			t.Errorf("%v: %v %q", bad, v, why)
		}
	}
	if _, why := Margin(1, 0); why == "" {
		t.Error("a margin without a thrust")
	}
	if _, why := Margin(math.NaN(), 1); why == "" {
		t.Error("a margin without a rating")
	}
}

func TestShutoffIsWorseThanTheDuty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(1, 5000).Draw(t, "factor")
		h := rapid.Float64Range(1, 900).Draw(t, "head")
		w := rapid.Float64Range(0, 1e5).Draw(t, "weight")
		sg := rapid.Float64Range(0.9, 1.2).Draw(t, "gravity")
		duty, largest := Total(Hydraulic(k, h, sg), w), Largest(k, h, sg, w)
		if largest < duty || largest > 1.1*duty+1e-6 {
			t.Fatalf("at the same head %v at shutoff, %v at the duty", largest, duty)
		}
	})
}
