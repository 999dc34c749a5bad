package unit

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// formatted are numbers in a unit, as a page shows them and as the notation has them.
var formatted = []struct {
	symbol string
	number float64
	page   string
	plain  string
}{
	{"ft", 194, "194", "194"},
	{"ft", 0, "0", "0"},
	{"ft", math.Copysign(0, -1), "0", "0"},
	{"ft", -0.00001, "−1×10⁻⁵", "-1e-5"},
	{"ft", 336.04, "336", "336"},
	{"ft", 336.05, "336.1", "336.1"}, // half away from zero, though the float is a hair below
	{"ft", 1.15, "1.15", "1.15"},
	{"ft", 2.6665, "2.667", "2.667"},
	{"ft", 9999.4, "9999", "9999"},
	{"ft", 9999.5, "10,000", "10000"},
	{"ft", 999.96, "1000", "1000"},
	{"ft", 24973.2, "24,973", "24973"},
	{"ft", -24973.2, "−24,973", "-24973"},
	{"ft", 1234567.6, "1,234,568", "1234568"},
	{"ft", 9999999999.6, "10,000,000,000", "10000000000"},
	{"ft", 12345678901, "1.235×10¹⁰", "1.235e10"},
	{"ft", 9.9996e12, "1×10¹³", "1e13"},
	{"ft", 0.0001, "0.0001", "0.0001"},
	{"ft", 0.00012345, "0.0001235", "0.0001235"},
	{"ft", 0.00001234, "1.234×10⁻⁵", "1.234e-5"},
	{"m2/s", 1.2e-5, "1.2×10⁻⁵", "1.2e-5"},
	{"ft", math.NaN(), "–", "NaN"},
	{"ft", math.Inf(1), "–", "NaN"},
	{"%", 72.5, "72.5", "72.5"},
	{"degF", 64, "64", "64"},
	{"degF", -40, "−40", "-40"},
}

func TestFormat(t *testing.T) {
	for _, c := range formatted {
		u, _ := Lookup(c.symbol)
		if got := Format(u.ToSI(c.number), u); got != c.page {
			t.Errorf("%v %s: %q, want %q", c.number, c.symbol, got, c.page)
		}
		if got := FormatPlain(u.ToSI(c.number), u); got != c.plain {
			t.Errorf("%v %s: plain %q, want %q", c.number, c.symbol, got, c.plain)
		}
	}
}

func TestFormatWith(t *testing.T) {
	for _, c := range []struct {
		symbol string
		number float64
		want   string
	}{
		{"%", 72.5, "72.5\u00a0%"}, {"m3/h", 90.84, "90.84\u00a0m³/h"}, {"1", 1.03, "1.03"},
		{"degF", 64, "64\u00a0°F"}, {"lbf.ft", 210, "210\u00a0lbf·ft"}, {"ft/100ft", 2.66, "2.66\u00a0ft/100\u00a0ft"},
	} {
		u, _ := Lookup(c.symbol)
		if got := FormatWith(u.ToSI(c.number), u); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func BenchmarkFormat(b *testing.B) {
	u, _ := Lookup("gpm")
	for i := range b.N {
		FormatWith(float64(i%1000)*1e-4, u)
	}
}

// TestExponentOfIsThatOfTheShortestDecimals compares with the library, around
// every power of ten too.
func TestExponentOfIsThatOfTheShortestDecimals(t *testing.T) {
	check := func(x float64) {
		_, want, _ := strings.Cut(strconv.FormatFloat(x, 'e', -1, 64), "e")
		if n, _ := strconv.Atoi(want); exponentOf(x) != n || exponentOf(-x) != n {
			t.Errorf("%g has the exponent %d, want %d", x, exponentOf(x), n)
		}
	}
	for n := -12; n <= 25; n++ {
		x := powerOfTen(n)
		for _, v := range []float64{x, math.Nextafter(x, 0), math.Nextafter(x, math.Inf(1)), 3 * x} {
			check(v)
		}
		if want, _ := strconv.ParseFloat("1e"+strconv.Itoa(n), 64); x != want {
			t.Errorf("10^%d is %g", n, x)
		}
	}
	rapid.Check(t, func(r *rapid.T) { check(rapid.Float64Range(1e-12, 1e25).Draw(r, "x")) })
}
