package curve

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Job 1 needs 343.0 ft at 800 gpm from 8 stages: the notes' generator gives
// 0.9837 (7.20 to 7.08 in); the square root of the heads alone 0.9761. The
// curve through six points is within 0.0005 of the generator.
func TestTrim(t *testing.T) {
	c := lapwing(t)
	q, h := in("gpm", 800), in("ft", 343.0/8)
	trim, invalid := TrimFor(c, q, h)
	near(t, "trim "+invalid, trim, 0.9837, 0.0005)
	if r := math.Sqrt(h / in("ft", 45)); !(r < trim) {
		t.Errorf("the root of the heads, %v, cuts less than the trim %v", r, trim)
	}
	full, _ := TrimFor(c, q, in("ft", 45))
	near(t, "no trim", full, 1, 1e-12)
	for want, got := range map[string]string{
		"even a full-diameter impeller does not make this head here":                                second(TrimFor(c, q, in("ft", 45.1))),
		"the impeller would be cut below 0.85 of its diameter: take fewer stages or a smaller bowl": second(TrimFor(c, q, in("ft", 20))),
		"the curve ends before the point that this one comes from by the affinity laws":             second(TrimFor(c, in("gpm", 1000), in("ft", 25))),
		"the trim is found at a flow and a head above zero":                                         second(TrimFor(c, 0, in("ft", 60))),
		"the curve ends at a smaller flow":                                                          second(TrimFor(c, in("gpm", 1200), in("ft", 20))),
	} {
		if got != want {
			t.Errorf("told %q, want %q", got, want)
		}
	}
}

func second(_ float64, s string) string { return s }

// A stage with the trim that was found makes the head that was asked for.
func TestTrimProperty(t *testing.T) {
	c := lapwing(t)
	rapid.Check(t, func(t *rapid.T) {
		q := in("gpm", rapid.Float64Range(50, 1030).Draw(t, "gpm"))
		full, _ := c.At(q)
		h := full * rapid.Float64Range(0.75, 1).Draw(t, "share")
		trim, invalid := TrimFor(c, q, h)
		if invalid != "" {
			return
		}
		got, invalid := Stage{Head: c, Speed: 1, Trim: trim}.HeadAt(q)
		if trim < smallest-1e-9 || trim > 1 || invalid != "" || math.Abs(got-h) > 1e-9*h {
			t.Fatalf("trim %v makes %v m of %v m %s", trim, got, h, invalid)
		}
	})
}

func TestSpeedRatio(t *testing.T) {
	r, invalid := SpeedRatio(1600*rpm, 1770*rpm)
	near(t, "1600 of 1770 rpm "+invalid, r, 0.9040, 0.00005)
	for _, n := range []float64{0, -1, 880, 2130, math.NaN()} {
		if r, invalid := SpeedRatio(n*rpm, 1770*rpm); r == r || invalid == "" {
			t.Errorf("%v rpm is taken", n)
		}
	}
	if _, invalid := SpeedRatio(3500*rpm, 1770*rpm); invalid != "the curve is drawn for 1770 rpm and is carried to speeds from 885 to 2124 rpm only; 3500 rpm is outside" {
		t.Errorf("told %q", invalid)
	}
}

// US index 2881 of the reference bowl, 2000 ± 2 of the published example
// (Introduction to Fluid Mechanics, Wiley, Example 10.6), and the number without
// units, 3.659e-4 of the US index by the exact units. A textbook (Fluid Mechanics:
// Fundamentals and Applications, Example 14-9) prints 3.658e-4, 0.03 % less.
func TestSpecificSpeed(t *testing.T) {
	us := func(n, q, h float64) float64 {
		return SpecificSpeed(n*rpm, in("gpm", q), in("ft", h)) / in("Ns-US", 1)
	}
	near(t, "Lapwing 10", us(1770, 800, 45), 2881, 0.5)
	near(t, "published", us(1170, 300, 21.9), 2000, 2)
	const g = 9.80665
	bare := SpecificSpeed(1170*rpm, in("gpm", 300), in("ft", 21.9)) / math.Pow(g, 0.75)
	near(t, "without units", bare/us(1170, 300, 21.9), 3.659e-4, 0.0005e-4)
	if v := SpecificSpeed(0, 1, 1); v == v {
		t.Errorf("no speed gives %v", v)
	}
}

func TestStages(t *testing.T) {
	for _, c := range [][3]float64{{343, 45, 8}, {307.5, 66, 5}, {360, 45, 8}, {360 * (1 + 1e-12), 45, 8}, {360.1, 45, 9}} {
		if n := Stages(c[0], c[1]); n != c[2] {
			t.Errorf("%v by %v: %v stages, want %v", c[0], c[1], n, c[2])
		}
	}
	if n := Stages(-1, 45); n == n {
		t.Errorf("%v stages for no head", n)
	}
}

// Job 1 on its own system, 20 ft of field head fixed: 221 ft at 400 gpm, 343 ft
// at 800, 383 ft at 900; eight untrimmed stages settle at 821 gpm and 351.1 ft
// (T34, T35 of the research notes). The notes print whole feet and gallons.
func TestOperatingPoint(t *testing.T) {
	// From the notes' figures: 140 ft static level, 2 ft to the gauge and 20 ft fixed are 162 ft; the well
	// takes 1 ft for 14.55 gpm; the rest of the 343 ft at 800 gpm grows with the square.
	linear := 1 / 14.545454545454545
	square := (343.0 - 162 - 800*linear) / (800 * 800)
	sys := System{Fixed: in("ft", 162), Linear: linear * in("ft", 1) / in("gpm", 1), Square: square * in("ft", 1) / (in("gpm", 1) * in("gpm", 1))}
	for gpm, ft := range map[float64]float64{400: 221, 800: 343, 900: 383} {
		near(t, "system", sys.HeadAt(in("gpm", gpm))/in("ft", 1), ft, 0.6)
	}
	s := Stage{Head: lapwing(t), Speed: 1, Trim: 1}
	q, invalid := Operating(s, 8, sys)
	if len(q) != 1 || invalid != "" {
		t.Fatalf("%v %s", q, invalid)
	}
	near(t, "gpm", q[0]/in("gpm", 1), 821, 1)
	near(t, "ft", sys.HeadAt(q[0])/in("ft", 1), 351.1, 0.5)
	trim, _ := TrimFor(lapwing(t), in("gpm", 800), in("ft", 343.0/8))
	q, _ = Operating(Stage{Head: s.Head, Speed: 1, Trim: trim}, 8, sys)
	near(t, "gpm, trimmed", q[0]/in("gpm", 1), 800, 0.01)
}

// Slower, the pump on this lift falls off far faster than in proportion: the
// fixed part of the head does not shrink. The page of new-speed tells these numbers.
func TestStaticLift(t *testing.T) {
	s := Stage{Head: lapwing(t), Speed: 1, Trim: 1}
	sys := System{Fixed: in("ft", 300), Square: in("ft", 60) / math.Pow(in("gpm", 800), 2)}
	q, invalid := Operating(s, 8, sys)
	near(t, "full speed "+invalid, q[0]/in("gpm", 1), 800, 0.5)
	s.Speed = 0.9
	q, invalid = Operating(s, 8, sys)
	near(t, "0.9 of the speed "+invalid, q[0]/in("gpm", 1), 595, 0.5)
	s.Speed = 0.75
	if q, invalid := Operating(s, 8, sys); len(q) > 0 || invalid != "the pump never reaches the head that the system asks for" {
		t.Errorf("at 0.75 of the speed: %v %s", q, invalid)
	}
	if q, invalid := Operating(Stage{Head: s.Head, Speed: 1, Trim: 1}, 8, System{}); len(q) > 0 || invalid == "" {
		t.Errorf("on an open pipe: %v %s", q, invalid)
	}
}

// At an operating point both heads agree, and it lies inside the carried data.
func TestOperatingProperty(t *testing.T) {
	c := lapwing(t)
	rapid.Check(t, func(t *rapid.T) {
		s := Stage{Head: c, Speed: rapid.Float64Range(0.5, 1.2).Draw(t, "speed"), Trim: rapid.Float64Range(0.85, 1).Draw(t, "trim")}
		n := float64(rapid.IntRange(1, 20).Draw(t, "stages"))
		sys := System{Fixed: rapid.Float64Range(0, 300).Draw(t, "fixed"), Square: rapid.Float64Range(0, 1e5).Draw(t, "square")}
		flows, invalid := Operating(s, n, sys)
		if (len(flows) == 0) == (invalid == "") || len(flows) > 1 {
			t.Fatalf("%v %q", flows, invalid)
		}
		for _, q := range flows {
			h, bad := s.HeadAt(q * (1 - 1e-12))
			if bad != "" || math.Abs(n*h-sys.HeadAt(q)) > 1e-6*(1+n*h) {
				t.Fatalf("at %v: %v and %v %s", q, n*h, sys.HeadAt(q), bad)
			}
		}
	})
}

// The factor is a trim, a speed ratio or both: at 0.902 of the speed the Lapwing
// 10 makes the stage head of 600 gpm on 300 ft of static head; by hand 1597 rpm.
func TestAffinityFactor(t *testing.T) {
	c := lapwing(t)
	k, invalid := AffinityFactor(c, in("gpm", 600), in("ft", 333.75/8))
	near(t, "factor "+invalid, k*1770, 1597, 1)
	k, invalid = AffinityFactor(c, 0, in("ft", 63.0/4))
	near(t, "at no flow "+invalid, k, 0.5, 1e-12)
	late := heads(t, []float64{400, 600, 800}, []float64{59.3, 53.7, 45})
	for want, got := range map[string]string{
		"the curve ends before the point that this one comes from by the affinity laws":   second(AffinityFactor(c, in("gpm", 1040), in("ft", 30))),
		"the curve begins behind the point that this one comes from by the affinity laws": second(AffinityFactor(late, in("gpm", 100), in("ft", 60))),
		"the affinity laws carry a flow that is not negative and a head above zero":       second(AffinityFactor(c, -1, 1)),
		"the curve begins at a larger flow":                                               second(AffinityFactor(late, 0, 1)),
	} {
		if got != want {
			t.Errorf("told %q, want %q", got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		q, h := rapid.Float64Range(0, 0.2).Draw(t, "flow"), rapid.Float64Range(0.1, 100).Draw(t, "head")
		k, invalid := AffinityFactor(c, q, h)
		if (k == k) != (invalid == "") {
			t.Fatalf("%v %q", k, invalid)
		}
		if invalid != "" {
			return
		}
		_, last := c.Ends()
		at, invalid := c.At(math.Min(q/k, last)) // the end itself may be missed by its last bit
		if invalid != "" || math.Abs(float64(at*float64(k*k))-h) > 1e-9*h {
			t.Fatalf("factor %v makes %v m of %v m %s", k, at*k*k, h, invalid)
		}
	})
}
