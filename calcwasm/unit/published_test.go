package unit

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// The factors against the published ones, to the digits published.
func TestPublishedFactors(t *testing.T) {
	text, err := os.ReadFile("../../testdata/published/units.csv")
	if err != nil {
		t.Fatal(err)
	}
	lines := csv.NewReader(strings.NewReader(string(text)))
	lines.Comment = '#'
	rows, err := lines.ReadAll()
	if err != nil || len(rows) < 40 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for _, row := range rows[1:] {
		u, ok := Lookup(row[0])
		if !ok {
			t.Errorf("%s is published and not known here", row[0])
			continue
		}
		want, err := strconv.ParseFloat(row[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		digits, err := strconv.Atoi(row[2])
		if err != nil {
			t.Fatal(err)
		}
		short := func(x float64) string { return strconv.FormatFloat(x, 'e', digits-1, 64) }
		if short(u.Factor) != short(want) {
			t.Errorf("%s: computed %s, published %s", row[0], short(u.Factor), short(want))
		}
		if row[4] != "read" && row[4] != "from memory" {
			t.Errorf("%s: mark %q", row[0], row[4])
		}
	}
}

// Fixed points of the temperature scales. Source: definition, NIST SP 811 B.9.
func TestTemperatures(t *testing.T) {
	for _, c := range []struct {
		symbol string
		number float64
		kelvin float64
	}{
		{"degF", 32, 273.15}, {"degF", 212, 373.15}, {"degF", -459.67, 0}, {"degF", 68, 293.15}, {"degF", -40, 233.15},
		{"degC", 0, 273.15}, {"degC", 100, 373.15}, {"degC", -40, 233.15}, {"K", 300, 300},
	} {
		u, _ := Lookup(c.symbol)
		if got := u.ToSI(c.number); math.Abs(got-c.kelvin) > 1e-10 {
			t.Errorf("%v %s = %v K, want %v", c.number, c.symbol, got, c.kelvin)
		}
		if got := u.FromSI(c.kelvin); math.Abs(got-c.number) > 1e-10 {
			t.Errorf("%v K = %v %s, want %v", c.kelvin, got, c.symbol, c.number)
		}
	}
}

// One step of the SI index is 51.645 steps of the US index: 1/(sqrt(gpm in m³/s)
// / (ft in m)^0.75), worked here by another way than in the package, with
// math.Pow. The trade divides by 51.6.
func TestSpecificSpeedIndices(t *testing.T) {
	us, _ := Lookup("Ns-US")
	si, _ := Lookup("Ns-SI")
	ratio := si.Factor / us.Factor
	if want := math.Pow(0.3048, 0.75) / math.Sqrt(231*math.Pow(0.0254, 3)/60); math.Abs(ratio/want-1) > 1e-14 {
		t.Errorf("ratio %v, want %v", ratio, want)
	}
	if strconv.FormatFloat(ratio, 'f', 3, 64) != "51.645" {
		t.Errorf("ratio %v, want 51.645", ratio)
	}
	rpm, _ := Lookup("rpm")
	flow, _ := Flow.Pow(1, 2)
	height, _ := Length.Pow(3, 4)
	if d := rpm.Dim.Mul(flow).Div(height); d != SpecificSpeed {
		t.Errorf("the index is built as %v", d)
	}
}

// Facts of the trade as whole chains. Common practice.
func TestChains(t *testing.T) {
	of := func(symbol string, x float64) float64 {
		u, ok := Lookup(symbol)
		if !ok {
			t.Fatalf("no unit %s", symbol)
		}
		return u.ToSI(x)
	}
	for _, c := range []struct {
		what      string
		got, want float64
		within    float64
	}{
		{"1 hp turns 1 rpm with 5252 lbf·ft", of("lbf.ft", 5252.113) * of("rpm", 1), of("hp", 1), 1e-6},
		{"1 cfs is 448.83 gpm", of("ft3/s", 1), of("gpm", 448.8312), 1e-6},
		{"1 MGD is 694.44 gpm", of("MGD", 1), of("gpm", 694.4444), 1e-6},
		{"1 acre-inch an hour is 452.57 gpm", of("acre.in/h", 1), of("gpm", 452.5714), 1e-6},
		{"1 kgal is 3.785 m³", of("kgal", 1), of("m3", 3.785412), 1e-6},
		{"62.4 lbf/ft³ × 1 ft is 0.4333 psi", 62.4 * of("lbf", 1) / of("ft3", 1) * of("ft", 1), of("psi", 0.4333333), 1e-6},
	} {
		if math.Abs(c.got/c.want-1) > c.within {
			t.Errorf("%s: %v against %v", c.what, c.got, c.want)
		}
	}
}
