package shaft

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

const published = "../../testdata/published/"

// readTable reads a published table: each row by the names of its columns.
func readTable(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(published + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil || len(all) < 2 {
		t.Fatalf("%s: %v, %d rows", name, err, len(all))
	}
	var list []map[string]string
	for _, row := range all[1:] {
		m := map[string]string{}
		for i, h := range all[0] {
			m[h] = row[i]
		}
		list = append(list, m)
	}
	return list
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// frictionOf is Friction in the trade's units: hp for 100 ft from in and rpm.
func frictionOf(d, n float64) (float64, string) {
	v, why := Friction(d*inch, n*rpm)
	return v / perHundred, why
}

func TestFrictionIsThePublishedTable(t *testing.T) {
	rows := readTable(t, "03_line_shaft_friction_hi.csv")
	if len(rows) != 33 {
		t.Fatalf("the published table has %d cells, 33 were read", len(rows))
	}
	for _, r := range rows {
		d, n, want := number(t, r["shaft_dia_in"]), number(t, r["rpm_nominal"]), number(t, r["friction_hp_per_100ft"])
		if got, why := frictionOf(d, n); why != "" || math.Abs(got-want) > 1e-9*want {
			t.Errorf("%v in at %v rpm: %v %s, the table has %v", d, n, got, why, want)
		}
	}
}

// The page says how exact the table is by its own steps.
func TestWhatThePageSaysOfTheTable(t *testing.T) {
	for _, r := range readTable(t, "03_line_shaft_friction_hi.csv") {
		d, n, v := number(t, r["shaft_dia_in"]), number(t, r["rpm_nominal"]), number(t, r["friction_hp_per_100ft"])
		if rule := 0.0310 * n / 100 * math.Pow(d, 1.87); math.Abs(rule/v-1) > 0.03 {
			t.Errorf("%v in at %v rpm: the rule gives %v, %v is in the table", d, n, rule, v)
		}
		for _, o := range readTable(t, "03_line_shaft_friction_hi.csv") {
			if o["shaft_dia_in"] == r["shaft_dia_in"] {
				m, w := number(t, o["rpm_nominal"]), number(t, o["friction_hp_per_100ft"])
				if math.Abs(v/w*m/n-1) > 0.053 {
					t.Errorf("%v in: %v at %v rpm and %v at %v rpm do not go with the speed", d, v, n, w, m)
				}
			}
		}
	}
}

func TestTableOnThePageIsTheTableOfTheRoom(t *testing.T) {
	friction := pageTable(t, "shaft-loss-rate.md")
	ratings := pageTable(t, "shaft-diameter.md")
	for i := range rows {
		r := &rows[i]
		name := strings.TrimSuffix(r.name, " in")
		rating := ratings[name]
		want := append([]float64{r.weight, r.thrust}, r.power[:]...)
		compareCells(t, name+" ratings", rating, want)
		if r.hasFriction() {
			compareCells(t, name+" friction", friction[name], r.friction[:])
		}
	}
}

// pageTable reads the last table of a page: cells by the first one of the line.
func pageTable(t *testing.T, page string) map[string][]string {
	t.Helper()
	text, err := os.ReadFile("../../content/terms/" + page)
	if err != nil {
		t.Fatal(err)
	}
	lines := map[string][]string{}
	for _, line := range strings.Split(string(text), "\n") {
		if cells := strings.Split(line, "|"); len(cells) > 4 {
			for i := range cells {
				cells[i] = strings.TrimSpace(cells[i])
			}
			lines[cells[1]] = cells[2 : len(cells)-1]
		}
	}
	return lines
}

func compareCells(t *testing.T, what string, have []string, want []float64) {
	t.Helper()
	if len(have) != len(want) {
		t.Errorf("%s: the page has %d cells, the room %d", what, len(have), len(want))
		return
	}
	for i, cell := range have {
		cell, _, _ = strings.Cut(cell, "(")
		cell = strings.TrimSpace(cell)
		if cell == "" && want[i] == 0 {
			continue
		}
		if v, err := strconv.ParseFloat(cell, 64); err != nil || v != want[i] {
			t.Errorf("%s, cell %d: the page has %q, the room %v", what, i+1, have[i], want[i])
		}
	}
}

func TestFrictionBetweenTheLines(t *testing.T) {
	for _, c := range []struct {
		d, n, want float64
		why        string
	}{
		{1.6875, 1770, 1.42 * 1770 / 1760, "within 3 % of a heading it goes with the speed"},
		{1.6875, 1712, 1.42 * 1712 / 1760, "also below the heading"},
		{1.5, 3604, 2.32 * 3604 / 3500, "to the end of the last band"},
		{1.5, 1830.4, 1.2371, "4 % above a heading no longer"},
		{1.6875, 1600, 1.3083, "between headings straight"},
		{1, 2300, 0.7111, "between headings straight"},
		{1.75, 1760, 1.5289, "between sizes by a power"},
		{2.6875, 1160, 2.2816, "between the neighbours of a line that cannot be read"},
		{1.69, 2900, 2.42, "a size within a hair of a published one is that one"},
	} {
		if got, why := frictionOf(c.d, c.n); why != "" || math.Abs(got-c.want) > 1e-4 {
			t.Errorf("%v in at %v rpm: %v %s, want %v: %s", c.d, c.n, got, why, c.want, c.why)
		}
	}
}

func TestFrictionRefuses(t *testing.T) {
	for _, c := range []struct {
		d, n float64
		want string
	}{
		{0.75, 1760, "the friction table begins at 1 in shafts"},
		{3, 875, "the friction table ends at 2-15/16 in shafts"},
		{2.9375, 1760, "for 2-15/16 in shafts the friction table runs from 875 to 1160 rpm, and 1760 rpm is outside it"},
		{1.25, 875, "for 1-1/4 in shafts the friction table runs from 1160 to 3500 rpm, and 875 rpm is outside it"},
		{1.75, 2900, "for 1-15/16 in shafts the friction table runs from 875 to 1760 rpm, and 2900 rpm is outside it"},
		{1.5, 3606, "for 1-1/2 in shafts the friction table runs from 1160 to 3500 rpm, and 3606 rpm is outside it"},
		{1.5, 4000, "for 1-1/2 in shafts the friction table runs from 1160 to 3500 rpm, and 4000 rpm is outside it"},
		{1.5, 0, "a shaft that stands has no friction loss: the speed has to be above 0"},
		{math.NaN(), 1760, "the friction table begins at 1 in shafts"},
		{1.5, math.NaN(), "a shaft that stands has no friction loss: the speed has to be above 0"},
	} {
		got, why := frictionOf(c.d, c.n)
		if why = strings.ReplaceAll(why, "\u00a0", " "); got == got || why != c.want {
			t.Errorf("%v in at %v rpm: %v, %q; want %q", c.d, c.n, got, why, c.want)
		}
	}
}

func TestFrictionGrowsAndDoesNotJump(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(1, 2.9375).Draw(t, "diameter")
		n := rapid.Float64Range(700, 3700).Draw(t, "speed")
		v, why := frictionOf(d, n)
		if why != "" {
			if v == v {
				t.Fatalf("a refusal with the number %v", v)
			}
			return
		}
		if !(v > 0.2 && v < 3.4) {
			t.Fatalf("%v hp/100ft is nothing the table has", v)
		}
		if w, why := frictionOf(d, n+0.01); why == "" && !(w > v && w-v < 1e-3) {
			t.Fatalf("at a hundredth of a turn more it is %v after %v", w, v)
		}
		if w, why := frictionOf(d+0.01, n); why == "" && !(w > v-0.004 && w-v < 0.08) {
			t.Fatalf("in a shaft a hundredth thicker it is %v after %v", w, v)
		}
	})
}

func TestRatingsAreThePublishedTable(t *testing.T) {
	for _, r := range readTable(t, "03_line_shaft_ratings_hi.csv") {
		d := number(t, r["shaft_dia_in"])
		if got, why := RatedThrust(d * inch); why != "" || math.Abs(got/poundForce-number(t, r["max_thrust_lb"])) > 1e-6 {
			t.Errorf("%v in: thrust %v %s", d, got/poundForce, why)
		}
		if got, why := Weight(d * inch); why != "" || math.Abs(got/perFoot-number(t, r["weight_lb_per_ft"])) > 1e-9 {
			t.Errorf("%v in: weight %v %s", d, got/perFoot, why)
		}
		for _, n := range []string{"3500", "2900", "1760", "1460", "1160", "875"} {
			cell := r["max_hp_"+n]
			got, why := RatedPower(d*inch, number(t, n)*rpm)
			if d == 1.5 && (n == "1460" || n == "1160") { // not to be tested, so not to be taught
				cell = ""
			}
			if cell == "" {
				if why == "" {
					t.Errorf("%v in at %s rpm: %v hp, and the table has no certain cell", d, n, got/horsepower)
				}
			} else if why != "" || math.Abs(got/horsepower-number(t, cell)) > 1e-9*number(t, cell) {
				t.Errorf("%v in at %s rpm: %v hp %s, the table has %s", d, n, got/horsepower, why, cell)
			}
		}
	}
}

func TestRatingsRefuse(t *testing.T) {
	for _, c := range []struct {
		d, n float64
		want string
	}{
		{1.7, 1760, "1.7 in is not a published size of line shaft: 1, 1-1/4, 1-1/2, 1-11/16, 1-15/16, 2-3/16, 2-7/16, 2-11/16, 2-15/16 in"},
		{2.6875, 1760, "the power ratings of 2-11/16 in shafts could not be read in the published table"},
		{1.5, 1460, "for 1-1/2 in shafts the power ratings that could be read run from 1760 to 3500 rpm, and 1460 rpm is outside them"},
		{1.5, 0, "the speed has to be above 0"},
		{math.NaN(), 1760, "this diameter is not a published size of line shaft: 1, 1-1/4, 1-1/2, 1-11/16, 1-15/16, 2-3/16, 2-7/16, 2-11/16, 2-15/16 in"},
	} {
		got, why := RatedPower(c.d*inch, c.n*rpm)
		if why = strings.ReplaceAll(why, "\u00a0", " "); got == got || why != c.want {
			t.Errorf("%v in at %v rpm: %v, %q; want %q", c.d, c.n, got, why, c.want)
		}
	}
}

func TestRodAgainstTheTable(t *testing.T) {
	for _, r := range readTable(t, "04_shaft_weight_per_ft.csv") {
		d, want := number(t, r["shaft_dia_in"]), number(t, r["weight_lb_per_ft"])
		got := Rod(d*inch) / perFoot
		most := 0.025 // what the page tells: up to 0.024 lb/ft for the larger sizes
		if r["status"] == "derived" {
			most = 0.005
		}
		if math.Abs(got-want) > most {
			t.Errorf("%v in: a rod of %v lb/ft, the table has %v", d, got, want)
		}
	}
	if got := Rod(1*inch) / perFoot; math.Abs(got-2.673) > 0.0005 {
		t.Errorf("the trade's constant comes out as %v, not 2.673", got)
	}
}

func TestWeightBetweenTheLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(1, 2.9375).Draw(t, "diameter")
		got, why := Weight(d * inch)
		// A diameter within a hair of a published one takes its weight, hence the last 1 %.
		if why != "" || math.Abs(got/Rod(d*inch)-1) > 0.0095 {
			t.Fatalf("%v in: %v %s, a rod has %v", d, got, why, Rod(d*inch))
		}
	})
	if _, why := Weight(math.NaN()); why == "" {
		t.Error("no diameter has a weight")
	}
	if _, why := Weight(0.9 * inch); why != "the table of shaft weights runs from 1 in to 2-15/16 in" {
		t.Error(why)
	}
}

// At the very ends of the table, where a search may try any last bit, the
// weight has a value or a reason, and never fails.
func TestWeightAtTheEnds(t *testing.T) {
	for _, end := range []float64{1 * 0.0254, 2.9375 * 0.0254} {
		for d, n := end*(1-2e-3), 0; n < 4000; n, d = n+1, d+end*1e-6 {
			w, why := Weight(d)
			if (w == w) == (why != "") {
				t.Fatalf("%v m: %v, %q", d, w, why)
			}
		}
		for d, n := math.Nextafter(end, 0), 0; n < 3; n, d = n+1, math.Nextafter(d, 1) {
			if w, _ := Weight(d); !(w > 0) {
				t.Errorf("%v m: no weight", d)
			}
		}
	}
}
