package shaft

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

const psi = poundForce / (inch * inch)

// The textbook cases are those of testdata/published/03_shaft_stress_examples.csv,
// by their numbers there.
func TestTorqueOfTextbooks(t *testing.T) {
	got, why := Torque(10*horsepower, 1750*rpm) // S3-1
	if got /= poundForce * inch; why != "" || math.Abs(got-360) > 0.5 {
		t.Errorf("10 hp at 1750 rpm: %v in-lb %s, the book has 360", got, why)
	}
	if _, why := Torque(1, 0); why == "" {
		t.Error("a shaft that stands has a torque")
	}
}

func TestStressOfTextbooks(t *testing.T) {
	for _, c := range []struct {
		number         string
		hp, n, d, want float64
		tolerance      float64
	}{
		{"S3-1", 10, 1750, 0.5, 14668, 0.01 * 14668},
		{"S3-5", 20, 500, 1.25, 6571, 0.001 * 6571},
	} {
		torque, _ := Torque(c.hp*horsepower, c.n*rpm)
		if got, why := Stress(torque, 0, c.d*inch); why != "" || math.Abs(got/psi-c.want) > c.tolerance {
			t.Errorf("%s: %v psi %s, the book has %v", c.number, got/psi, why, c.want)
		}
	}
	if got, _ := Stress(250*poundForce*foot, 0, 1.5*inch); math.Abs(got/psi-4527) > 1 {
		t.Errorf("S3-6: %v psi, the book has 4527", got/psi)
	}
}

func TestDiameterOfTextbooks(t *testing.T) {
	for _, c := range []struct {
		number              string
		hp, n, allowed      float64
		diameter, tolerance float64
	}{
		{"S3-1", 10, 1750, 62000.0 / 2 / 3, 0.56, 0.005},
		{"S3-2", 40, 500, 6000, 1.62, 0.01},
		{"S3-3", 40, 3000, 6000, 0.89, 0.01},
		{"S3-4", 5, 3600, 8500, 0.374, 0.001},
	} {
		torque, _ := Torque(c.hp*horsepower, c.n*rpm)
		if s, _ := Stress(torque, 0, (c.diameter-c.tolerance)*inch); s/psi < c.allowed {
			t.Errorf("%s: %v psi in a thinner shaft, %v allowed", c.number, s/psi, c.allowed)
		}
		if s, _ := Stress(torque, 0, (c.diameter+c.tolerance)*inch); s/psi > c.allowed {
			t.Errorf("%s: %v psi in a thicker shaft, %v allowed", c.number, s/psi, c.allowed)
		}
	}
}

// The formula of the standard and the published ratings belong together: S3-7,
// derived, reckoned there with 321000.
func TestStressOfTheRatings(t *testing.T) {
	want := map[float64]float64{1: 10850, 1.25: 10560, 1.5: 10360, 1.6875: 10930}
	for d, s := range want {
		p, _ := RatedPower(d*inch, 1760*rpm)
		f, _ := RatedThrust(d * inch)
		torque, _ := Torque(p, 1760*rpm)
		if got, _ := Stress(torque, f, d*inch); math.Abs(got/psi-s) > 6 {
			t.Errorf("%v in: %v psi, %v was found before", d, got/psi, s)
		}
	}
}

func TestStressOfPullAlone(t *testing.T) {
	// A pull alone makes a shear of half its tension: Machine design textbook,
	// Example 3.1, has 25465 psi of tension for 20000 lb on 1 in.
	if got, _ := Stress(0, 20000*poundForce, 1*inch); math.Abs(2*got/psi-25465) > 1 {
		t.Errorf("twice the shear is %v psi, the book's tension 25465", 2*got/psi)
	}
	for _, bad := range [][3]float64{{1, 1, 0}, {1, 1, math.NaN()}, {math.NaN(), 1, 1}, {1, math.NaN(), 1}} {
		if v, why := Stress(bad[0], bad[1], bad[2]); v == v || why == "" {
			t.Errorf("%v: %v %q", bad, v, why)
		}
	}
}

func TestSizeIsTheSmallestThatIsAllowed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		torque := rapid.Float64Range(0, 40000).Draw(t, "torque")
		thrust := rapid.Float64Range(0, 200000).Draw(t, "thrust")
		allowed := rapid.Float64Range(2e7, 2e8).Draw(t, "allowed")
		cut := rapid.Float64Range(0, 0.004).Draw(t, "cut")
		size, why := Size(torque, thrust, allowed, cut)
		for i := range rows {
			d := rows[i].diameter()
			s, _ := Stress(torque, thrust, d-cut)
			switch {
			case why == "" && d < size && s <= allowed:
				t.Fatalf("%s would do, %v was chosen", rows[i].name, size)
			case why == "" && d == size && s > allowed, why != "" && s <= allowed:
				t.Fatalf("%s: stress %v, allowed %v, answer %v %q", rows[i].name, s, allowed, size, why)
			}
		}
	})
	if _, why := Size(1e9, 0, 1e7, 0); why != "no published size is strong enough: the list of line shafts ends at 2-15/16 in" {
		t.Error(why)
	}
	for _, bad := range [][4]float64{{1, 1, 0, 0}, {1, 1, 1, -1}, {math.NaN(), 1, 1, 0}, {1, math.NaN(), 1, 0}, {1, 1, math.NaN(), 0}, {1, 1, 1, math.NaN()}} {
		if v, why := Size(bad[0], bad[1], bad[2], bad[3]); v == v || why == "" {
			t.Errorf("%v: %v %q", bad, v, why)
		}
	}
}

func TestStretchOfTextbooks(t *testing.T) {
	round := func(area float64) float64 { return math.Sqrt(area * 4 / math.Pi) }
	sum := 0.0 // Mechanics of Materials, Example 2.01: a bar in three pieces
	for _, c := range [][3]float64{{60000, 12, 0.9}, {-15000, 12, 0.9}, {30000, 16, 0.3}} {
		e, why := Stretch(c[0]*poundForce, c[1]*inch, round(c[2])*inch, 29e6*psi)
		if why != "" {
			t.Fatal(why)
		}
		sum += e
	}
	if math.Abs(sum/inch-0.0759) > 0.00005 {
		t.Errorf("the bar in three pieces: %v in, the book has 0.0759", sum/inch)
	}
	if e, _ := Stretch(20000*poundForce, 6*inch, 1*inch, 30e6*psi); math.Abs(e/inch-0.0051) > 0.00005 {
		t.Errorf("6 in of 1 in: %v in, 0.0051 was found", e/inch)
	}
	if e, _ := Stretch(1000*poundForce, 100*foot, 1*inch, 29e6*psi); math.Abs(e/inch-0.0527) > 0.00005 {
		t.Errorf("100 ft of 1 in: %v in, 0.0527 was found", e/inch)
	}
	for _, bad := range [][4]float64{{1, 1, 0, 1}, {1, 1, 1, 0}, {1, -1, 1, 1}, {math.NaN(), 1, 1, 1}} {
		if _, why := Stretch(bad[0], bad[1], bad[2], bad[3]); why == "" {
			t.Errorf("%v has a stretch", bad)
		}
	}
}
