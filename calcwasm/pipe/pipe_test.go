package pipe

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

const (
	gpm     = 231 * inch * inch * inch / 60
	gravity = 9.80665
)

// published reads a table of testdata/published; lines with # are its source.
func published(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../testdata/published/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	r.LazyQuotes = true
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: %d rows, %v", name, len(rows), err)
	}
	var list []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, key := range rows[0] {
			m[key] = row[i]
		}
		list = append(list, m)
	}
	return list
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func TestTableOfSteelPipe(t *testing.T) {
	const bore = 1.610 * inch
	for _, row := range published(t, "01_hi_steel_1p5in.csv") {
		flow := number(t, row["flow_gpm"]) * gpm
		velocity := flow / (math.Pi / 4 * bore * bore)
		f, why := FrictionFactor(velocity*bore/viscosityAt60F, 0.00015*foot/bore)
		if why != "" {
			t.Fatal(why)
		}
		got, want := 100*f/bore*velocity*velocity/(2*gravity), number(t, row["friction_ft_per_100ft"])
		if d := 100 * math.Abs(got/want-1); d > number(t, row["tolerance_pct"]) {
			t.Errorf("%s gpm: %.3f ft per 100 ft, published %s (%.2f %%)", row["flow_gpm"], got, row["friction_ft_per_100ft"], d)
		}
	}
}

func TestHazenWilliamsAmongItsForms(t *testing.T) {
	slope, why := HazenWilliams(500*gpm, 8*inch, 100)
	if why != "" {
		t.Fatal(why)
	}
	for _, row := range published(t, "01_hw_constant_forms.csv") {
		want, allowed := number(t, row["head_loss_ft_per_1000ft"]), 0.02
		if strings.Contains(row["form"], "definition") {
			allowed = 0.0005 / want
		}
		if math.Abs(1000*slope/want-1) > allowed {
			t.Errorf("%s: %.3f ft per 1000 ft, the book's form gives %.4f", row["form"], want, 1000*slope)
		}
	}
}

// Friction for another coefficient is that for 150 times a published factor.
func TestHazenWilliamsBetweenCoefficients(t *testing.T) {
	smooth, _ := HazenWilliams(200*gpm, 4.154*inch, 150)
	for c, factor := range map[float64]float64{140: 1.136, 130: 1.303, 120: 1.512, 100: 2.119} {
		if rough, _ := HazenWilliams(200*gpm, 4.154*inch, c); math.Abs(rough/smooth-factor) > 0.0008 {
			t.Errorf("C of %g: %.4f times the friction at 150, published %.3f", c, rough/smooth, factor)
		}
	}
}

func TestColebrookHoldsToTheLastBits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		reynolds := math.Pow(10, rapid.Float64Range(math.Log10(4000), 8).Draw(t, "log Re"))
		k := rapid.Float64Range(0, roughest).Draw(t, "roughness")
		f, why := FrictionFactor(min(max(reynolds, 4000), 1e8), k)
		if why != "" {
			t.Fatal(why)
		}
		x := 1 / math.Sqrt(f)
		right := -2 * math.Log10(k/3.7+2.51*x/min(max(reynolds, 4000), 1e8))
		if math.Abs(x-right) > 8e-15*x {
			t.Fatalf("Re %g, k %g: 1/√f is %.17g, the right-hand side %.17g", reynolds, k, x, right)
		}
	})
}

func TestFrictionGrowsWithRoughnessAndFallsWithReynolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		reynolds := rapid.Float64Range(4000, 5e7).Draw(t, "Re")
		k := rapid.Float64Range(0, 0.04).Draw(t, "roughness")
		here, _ := FrictionFactor(reynolds, k)
		rougher, _ := FrictionFactor(reynolds, k+0.001)
		faster, _ := FrictionFactor(reynolds*1.5, k)
		if !(rougher > here && faster < here) {
			t.Fatalf("f(%g, %g) = %g, rougher %g, faster %g", reynolds, k, here, rougher, faster)
		}
	})
}

func TestFrictionFactorEndsInWords(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		reynolds, roughness float64
		says                string
	}{
		{0, 0, "no flow"}, {-5, 0, "no flow"}, {nan, 0, "no flow"}, {1e5, nan, "roughness"}, {1e5, -0.1, "roughness"},
		{2000.1, 0, "between Reynolds numbers"}, {3999, 0.01, "between"}, {1.01e8, 0, "ends at a Reynolds number"},
		{1e5, 0.051, "1/20"}, {math.Inf(1), 0, "ends at"},
	} {
		if f, why := FrictionFactor(c.reynolds, c.roughness); !math.IsNaN(f) || !strings.Contains(why, c.says) {
			t.Errorf("FrictionFactor(%g, %g) = %g, %q; want no value, and %q", c.reynolds, c.roughness, f, why, c.says)
		}
	}
	if f, why := FrictionFactor(2000, 0.03); f != 0.032 || why != "" {
		t.Errorf("laminar at 2000: %g, %q; want 64/2000", f, why)
	}
}

func TestHazenWilliamsEndsInWords(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		flow, bore, c float64
		says          string
	}{
		{0, 8 * inch, 130, "no flow"}, {nan, 8 * inch, 130, "no flow"}, {50 * gpm, 1.5 * inch, 130, "2 in and more"},
		{50 * gpm, nan, 130, "2 in and more"}, {50 * gpm, 8 * inch, 59, "60 to 160"}, {50 * gpm, 8 * inch, nan, "60 to 160"},
		{5 * gpm, 8 * inch, 130, "creeps"},
	} {
		if s, why := HazenWilliams(c.flow, c.bore, c.c); !math.IsNaN(s) || !strings.Contains(why, c.says) {
			t.Errorf("HazenWilliams(%g, %g, %g) = %g, %q; want no value, and %q", c.flow, c.bore, c.c, s, why, c.says)
		}
	}
}

var scheduleOf = map[string]Schedule{"20": Steel20, "30": Steel30, "STD": SteelStandard, "40": Steel40}

func TestTablesOfPipe(t *testing.T) {
	check := func(s Schedule, row map[string]string, wall, id string) {
		nominal := number(t, row["nps"]) * inch
		bore, why := Bore(s, nominal)
		outside, _ := OutsideDiameter(nominal)
		if why != "" || math.Abs(bore/inch-number(t, row[id])) > 0.0005 || math.Abs(outside/inch-number(t, row["od_in"])) > 1e-9 {
			t.Errorf("%s in %s: bore %.4f in, outside %.4f in (%s); table %s and %s", row["nps"], scheduleNames[s], bore/inch, outside/inch, why, row[id], row["od_in"])
		}
		if d := outside - bore - 2*number(t, row[wall])*inch; math.Abs(d) > 1e-9 {
			t.Errorf("%s in %s: bore and two walls are not the outside diameter", row["nps"], scheduleNames[s])
		}
	}
	for _, row := range published(t, "12_pipe_b3610.csv") {
		check(scheduleOf[row["schedule"]], row, "wall_in", "id_in")
	}
	for _, row := range published(t, "12_pvc_d1785.csv") {
		check(map[string]Schedule{"40": PVC40, "80": PVC80}[row["schedule"]], row, "min_wall_in", "id_from_min_wall_in")
	}
}

func TestThickerWallsLeaveLess(t *testing.T) {
	order := []Schedule{Steel20, Steel30, Steel40, Steel80}
	for i := range sizes {
		last := math.Inf(1)
		for _, s := range order {
			bore, why := Bore(s, sizes[i].nominal*inch)
			if why != "" {
				continue
			}
			if bore > last {
				t.Errorf("%g in: %s has a larger bore than the schedule before it", sizes[i].nominal, scheduleNames[s])
			}
			last = bore
		}
	}
}

func TestBothNamesOfASize(t *testing.T) {
	a, _ := Bore(Steel40, 8*inch)
	if b, why := Bore(Steel40, 0.200); a != b || why != "" {
		t.Errorf("8 in has %g m, DN 200 has %g m (%s)", a, b, why)
	}
	for _, c := range []struct {
		s       Schedule
		nominal float64
		want    string
	}{
		{Steel40, 7 * inch, "the table of steel schedule 40 pipe has 1, 1.25, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 8, 10, 12, 14 and 16 in, and not 7\u00a0in"},
		{Steel20, 6 * inch, "the table of steel schedule 20 pipe has 8, 10, 12, 14 and 16 in, and not 6\u00a0in"},
		{PVC80, math.NaN(), "the table of PVC schedule 80 pipe has 1, 1.25, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 8, 10 and 12 in, and not this size"},
		{schedules, 8 * inch, "there is no such kind of pipe"},
	} {
		if bore, why := Bore(c.s, c.nominal); !math.IsNaN(bore) || why != c.want {
			t.Errorf("Bore(%d, %g) = %g, %q; want %q", c.s, c.nominal, bore, why, c.want)
		}
	}
}
