package unit

import (
	"math"
	"strings"
	"testing"
)

// Every entry of the table is complete, unique and found by what it is called.
func TestTable(t *testing.T) {
	seen := map[string]string{}
	for _, u := range All() {
		if u.Symbol == "" || u.Name == "" || u.Source == "" || !(u.Factor > 0) {
			t.Errorf("%q is incomplete", u.Symbol)
		}
		if u.Print == "" && u.Symbol != "1" {
			t.Errorf("%q prints as nothing", u.Symbol)
		}
		if _, known := dimWords[u.Dim]; !known {
			t.Errorf("%s has a dimension without a word", u.Symbol)
		}
		if found, ok := Lookup(u.Symbol); !ok || found != u {
			t.Errorf("Lookup(%q) does not give the table's unit", u.Symbol)
		}
		for _, s := range append([]string{u.Symbol, u.Print}, u.Also...) {
			key := spellingKey(s)
			if other := seen[key]; other != "" && other != u.Symbol {
				t.Errorf("%q spells %s and %s", s, other, u.Symbol)
			}
			seen[key] = u.Symbol
			if strings.HasPrefix(s, perPrint) {
				continue // TestEverySpellingIsRead: understood in a field of prices only
			}
			if s != "" && u.Symbol != "1" && spelled(s) != u {
				t.Errorf("%q does not spell %s", s, u.Symbol)
			}
			if why := refusal(key); why != "" && s != "" {
				t.Errorf("%q of %s is refused: %s", s, u.Symbol, why)
			}
		}
	}
}

// What people type must also be found on the way from a number: each spelling of
// each unit behind "12 ", in a field of that unit.
func TestEverySpellingIsRead(t *testing.T) {
	for _, u := range All() {
		for _, s := range append([]string{u.Symbol, u.Print}, u.Also...) {
			if u.Symbol == "1" || (isDigit((s + " ")[0]) && !strings.HasPrefix(s, "1/")) {
				continue // "1000 gal" is a unit behind a slash only
			}
			got, err := Read("12 "+s, Field{Unit: u})
			if err != nil {
				t.Errorf("%q: %v", "12 "+s, err)
				continue
			}
			if got.Unit != u || math.Abs(got.Likely-u.ToSI(12)) > 1e-12*math.Abs(got.Likely) {
				t.Errorf("%q gives %v %s", "12 "+s, got.Likely, got.Unit.Symbol)
			}
		}
	}
}

// A compound unit of the table is what its parts make of it.
func TestCompoundsAgreeWithTheirParts(t *testing.T) {
	torques := map[string]bool{"lbf.ft": true, "lbf.in": true, "N.m": true, "kN.m": true, "kgf.m": true}
	count := 0
	for _, u := range All() {
		c := compose(u.Symbol, func(s string) *Unit { return bySymbol[s] })
		if c == nil || c.Symbol == c.Name || !strings.ContainsAny(u.Symbol, "./") {
			continue
		}
		count++
		dim := c.Dim
		if torques[u.Symbol] {
			dim = dim.Div(Angle) // a torque is an energy per angle
		}
		if dim != u.Dim || math.Abs(c.Factor/u.Factor-1) > 1e-15 {
			t.Errorf("%s: %v %v, of its parts %v %v", u.Symbol, u.Dim, u.Factor, dim, c.Factor)
		}
		if c.Print != u.Print || (c.System != u.System && u.System != Both) {
			t.Errorf("%s prints as %q, of its parts %q (system %d, %d)", u.Symbol, u.Print, c.Print, u.System, c.System)
		}
	}
	if count < 35 {
		t.Errorf("only %d compounds compared", count)
	}
}

func TestLookup(t *testing.T) {
	for _, c := range []struct {
		symbol, print string
		dim           Dim
		factor        float64
	}{
		{"kPa/m", "kPa/m", whole(-2, 1, -2), 1000},
		{"ft2/s2", "ft²/s²", whole(2, 0, -2), 0.09290304},
		{"ft^2", "ft²", Area, 0.09290304},
		{"money/1000gal", "per\u00a01000\u00a0gal", Money.Div(Volume), 1 / 3.785411784},
		{"kgf/cm2", "kgf/cm²", Pressure, 98066.5},
		{"N/mm2", "N/mm²", Pressure, 1e6},
		{"lbf.s/ft2", "lbf·s/ft²", Viscosity, 47.88025898},
		{"gpm/hp", "gpm/hp", Flow.Div(Power), 6.30901964e-05 / 745.69987158},
		{"1/ft", "1/ft", PerLength, 1 / 0.3048},
		{"mm4", "mm⁴", whole(4, 0, 0), 1e-12},
	} {
		u, ok := Lookup(c.symbol)
		if !ok {
			t.Errorf("no unit %s", c.symbol)
			continue
		}
		if u.Dim != c.dim || u.Print != c.print || math.Abs(u.Factor/c.factor-1) > 1e-9 || u.Symbol != c.symbol {
			t.Errorf("%s is %q %v %v", c.symbol, u.Print, u.Dim, u.Factor)
		}
	}
	for _, symbol := range []string{
		"", " ", "/", ".", "x", "gpm/", "/ft", "gpm//ft", "100ft", "ft/0ft", "ft/9999999ft", "degF/ft", "psig/ft", "%/ft", "lb/ft.s",
		"GPM", "feet", "ft ", "ft1", "ft-2", "ft/1", "Ns-US/ft", "m3/h per m", "ft99", "1.1", "ft/55m", "1/1", "ft/1ft/1ft/1ft/1ft/1ft/1ft",
	} {
		if u, ok := Lookup(symbol); ok {
			t.Errorf("Lookup(%q) gives %+v", symbol, *u)
		}
	}
}

func TestSystems(t *testing.T) {
	for symbol, want := range map[string]System{"gpm": US, "m3/h": SI, "rpm": Both, "kPa/m": SI, "ft2/s2": US, "ft/100m": Both, "gpm/h": US, "kWh": Both} {
		if u, ok := Lookup(symbol); !ok || u.System != want {
			t.Errorf("%s: system %v", symbol, u)
		}
	}
}

func TestDim(t *testing.T) {
	if got := Flow.Div(Area); got != Velocity {
		t.Error(got)
	}
	if got := Torque.Mul(Speed); got != Power {
		t.Error(got)
	}
	if Speed == Frequency {
		t.Error("rpm and Hz must differ")
	}
	if got, ok := Area.Pow(1, 2); !ok || got != Length {
		t.Error(got, ok)
	}
	for _, c := range []struct{ num, den int }{{1, 0}, {1, 5}, {11, 1}, {math.MaxInt, 1}, {math.MinInt, 1}} {
		if got, ok := Length.Pow(c.num, c.den); ok {
			t.Errorf("Length^(%d/%d) = %v", c.num, c.den, got)
		}
	}
	for d, want := range map[Dim]string{
		Pressure:                    "pressure",
		None:                        "pure number",
		Length.Mul(Money):           "length·money",
		None.Div(Money):             "1/money",
		Temperature.Div(Velocity):   "time·temperature/length",
		{6, 0, 0, 0, 0, 0, 0}:       "length^(1/2)",
		{-9, 0, 12, 0, 0, 0, 0}:     "time/length^(3/4)",
		{48, 0, 0, 0, 0, 0, 0}:      "length^4",
		whole(0, 5, 0).Mul(Current): "mass^5·current",
	} {
		if got := d.String(); got != want {
			t.Errorf("%v: %q, want %q", [7]int8(d), got, want)
		}
	}
	if got := whole(8, 0, 0).Mul(whole(8, 0, 0)); got != whole(10, 0, 0) {
		t.Errorf("beyond the limit: %v", got)
	}
}

func TestSuggest(t *testing.T) {
	for typed, want := range map[string]string{
		"gmp": "gpm", "GPM": "gpm", "psii": "psi", "kpa": "kPa", "feet": "ft", "lbf.fft": "lbf.ft", "m3/hr": "m3/h", "ft/100f": "ft/100ft",
		"xyzzy": "", "": "", "q": "", "gallons": "gal",
	} {
		if got := Suggest(typed); got != want {
			t.Errorf("Suggest(%q) = %q, want %q", typed, got, want)
		}
	}
}

// A symbol as the book writes it means the same unit with and without the short way.
func TestSymbolsAreSpellingsToo(t *testing.T) {
	exact, _ := allSpellings()
	for _, u := range table {
		key := spellingKey(u.Symbol)
		if exact[key] != u || refusal(key) != "" {
			t.Errorf("%s is spelled like %v, refused %q", u.Symbol, exact[key], refusal(key))
		}
	}
}
