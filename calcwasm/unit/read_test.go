package unit

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// fields are what the cases below are typed into.
var fields = map[string]Field{
	"capacity":           {Unit: bySymbol["gpm"]},
	"flow":               {Unit: bySymbol["m3/h"]},
	"static level":       {Unit: bySymbol["ft"]},
	"setting":            {Unit: bySymbol["m"]},
	"bore":               {Unit: bySymbol["in"]},
	"discharge pressure": {Unit: bySymbol["psi"], Reference: Gauge},
	"air pressure":       {Unit: bySymbol["psi"], Reference: Absolute},
	"vapour pressure":    {Unit: bySymbol["psia"]},
	"loss of pressure":   {Unit: bySymbol["psi"]},
	"thrust":             {Unit: bySymbol["lbf"]},
	"thrust factor":      {Unit: bySymbol["lbf/ft"]},
	"efficiency":         {Unit: bySymbol["%"]},
	"water temperature":  {Unit: bySymbol["degF"]},
	"motor power":        {Unit: bySymbol["kW"]},
	"brake power":        {Unit: bySymbol["hp"]},
	"stages":             {Unit: bySymbol["1"], Count: true},
	"price":              {Unit: bySymbol["money/kWh"]},
	"torque":             {Unit: bySymbol["lbf.ft"]},
	"loss":               {Unit: bySymbol["ft/100ft"]},
	"speed":              {Unit: bySymbol["rpm"]},
	"sand":               {Unit: bySymbol["mg/L"]},
	"threads":            {Unit: bySymbol["1/in"]},
	"specific gravity":   {Unit: bySymbol["1"]},
	"specific capacity":  {Unit: bySymbol["gpm/ft"]},
	"hours":              {Unit: bySymbol["h"]},
	"oil":                {Unit: bySymbol["mL/h"]},
}

func fieldNamed(t *testing.T, name string) Field {
	t.Helper()
	f, ok := fields[name]
	if !ok {
		t.Fatalf("no field %q", name)
	}
	f.Name = name
	return f
}

// taken is one text that is read: numbers in the unit of the field.
type taken struct {
	field, text       string
	low, likely, high float64
	notes             string
}

func plain(field, text string, x float64, notes ...string) taken {
	return taken{field, text, x, x, x, strings.Join(notes, "; ")}
}

func ranged(field, text string, low, likely, high float64, notes ...string) taken {
	return taken{field, text, low, likely, high, strings.Join(notes, "; ")}
}

func TestRead(t *testing.T) {
	for _, cases := range [][]taken{numbersTaken, lengthsTaken, rangesTaken, unitsTaken} {
		for _, c := range cases {
			f := fieldNamed(t, c.field)
			got, err := Read(c.text, f)
			if err != nil {
				t.Errorf("%s: %q: %v", c.field, c.text, err)
				continue
			}
			if !near(f.Unit.FromSI(got.Low), c.low) || !near(f.Unit.FromSI(got.Likely), c.likely) || !near(f.Unit.FromSI(got.High), c.high) {
				t.Errorf("%s: %q: %v, %v, %v", c.field, c.text, f.Unit.FromSI(got.Low), f.Unit.FromSI(got.Likely), f.Unit.FromSI(got.High))
			}
			if notes := strings.Join(got.Notes, "; "); notes != c.notes {
				t.Errorf("%s: %q: notes %q", c.field, c.text, notes)
			}
		}
	}
}

// near compares to what the tables below are written with: six digits.
func near(got, want float64) bool { return math.Abs(got-want) <= 5e-6*math.Max(math.Abs(want), 1e-9) }

var numbersTaken = []taken{
	plain("capacity", "400", 400), plain("capacity", "  400  ", 400), plain("capacity", "+400", 400), plain("capacity", "400.", 400),
	plain("capacity", "1,250.5 gpm", 1250.5), plain("capacity", "1250,5", 1250.5), plain("capacity", "1,250", 1250),
	plain("capacity", "1,25", 1.25), plain("capacity", "0,125", 0.125), plain("capacity", ",5", 0.5), plain("capacity", ".5", 0.5),
	plain("capacity", "1,234,567", 1234567), plain("capacity", "12,345.6 gpm", 12345.6), plain("capacity", "1.2e3", 1200),
	plain("capacity", "1.2E+3 gpm", 1200), plain("capacity", "1\u00a0250 gpm", 1250), plain("capacity", "1\u202f250\u202f000", 1250000),
	plain("capacity", "400\u00a0gpm", 400), plain("specific gravity", "1.2×10⁻⁵", 1.2e-5), plain("specific gravity", "1.2x10^-5", 1.2e-5),
	plain("specific gravity", "1.2×10^3", 1200),
	plain("setting", "1,250", 1250, "1,250 read as 1250"), plain("setting", "1,25", 1.25), plain("flow", "1,250 gpm", 283.906),
	plain("static level", "-5", -5), plain("static level", "−5 ft", -5), plain("static level", "- 5 ft", -5),
	plain("static level", "about 180 ft", 180), plain("capacity", "~400", 400), plain("capacity", "approx. 400 gpm", 400), plain("capacity", "400 gpm or so", 400),
}

var lengthsTaken = []taken{
	plain("bore", "6 5/8 in", 6.625), plain("bore", "6-5/8 in", 6.625), plain("bore", "1-11/16 in", 1.6875), plain("bore", "1–11/16\"", 1.6875),
	plain("bore", "5/8\"", 0.625), plain("bore", "½", 0.5), plain("bore", "6½ in", 6.5), plain("bore", "6 ⅝", 6.625), plain("bore", "6 and 5/8 in", 6.625),
	plain("bore", "1-½ in", 1.5), plain("bore", "6⁄8 in", 0.75), plain("bore", "168 mm", 6.614173), plain("bore", "8 ins", 8), plain("bore", "8 in.", 8),
	plain("bore", "-1/2 in", -0.5),
	plain("static level", "138-1/2 ft", 138.5), plain("static level", "12'6\"", 12.5), plain("static level", "12’ 6”", 12.5), plain("static level", "12' 6''", 12.5),
	plain("static level", "12'-6\"", 12.5), plain("static level", "12' - 6\"", 12.5), plain("static level", "12'-6 1/2\"", 12.541667), plain("static level", "12 ft 6 in", 12.5),
	plain("static level", "12 ft, 6 in", 12.5), plain("static level", "12 feet and 6 inches", 12.5), plain("static level", "12ft6in", 12.5),
	plain("static level", "12'6", 12.5, "6 read as inches"), plain("static level", "-12 ft 6 in", -12.5), plain("static level", "12'", 12),
	plain("static level", "3 m 20 cm", 10.498688), plain("hours", "1 h 30 min", 1.5), plain("hours", "2 d 3 h 30 min", 51.5), plain("hours", "90 minutes", 1.5),
	plain("static level", "180 ft.", 180), plain("static level", "180 FEET", 180), plain("static level", "54 Metres", 177.165354), plain("static level", "54 meters", 177.165354),
	plain("static level", "138 ft of water", 138), plain("static level", "138 ft head", 138), plain("static level", "42 metres of head", 137.795276),
}

var rangesTaken = []taken{
	ranged("static level", "180 to 200 ft", 180, 190, 200), ranged("static level", "180-200 ft", 180, 190, 200), ranged("static level", "180–200", 180, 190, 200),
	ranged("static level", "180 — 200 ft", 180, 190, 200), ranged("static level", "180..200", 180, 190, 200), ranged("static level", "180 ft to 200 ft", 180, 190, 200),
	ranged("static level", "180 ft-200 ft", 180, 190, 200), ranged("static level", "180ft to 200", 180, 190, 200), ranged("static level", "180 ft to 60 m", 180, 188.425197, 196.850394),
	ranged("static level", "200 to 180 ft", 180, 190, 200), ranged("static level", "between 180 and 200 ft", 180, 190, 200), ranged("static level", "from 180 to 200 ft", 180, 190, 200),
	ranged("static level", "-5 to 3 ft", -5, -1, 3), ranged("static level", "-5 - -3 ft", -5, -4, -3), ranged("static level", "10'-12'", 10, 11, 12), ranged("static level", "10'6\" to 12'", 10.5, 11.25, 12),
	ranged("static level", "138-1/2 to 140 ft", 138.5, 139.25, 140), ranged("bore", "1-11/16 - 2-3/16", 1.6875, 1.9375, 2.1875), ranged("bore", "1-11/16-2-3/16", 1.6875, 1.9375, 2.1875),
	ranged("bore", "1/2-3/4 in", 0.5, 0.625, 0.75), ranged("bore", "6 to 6 5/8 in", 6, 6.3125, 6.625),
	ranged("capacity", "about 400 to 500 gpm", 400, 450, 500), ranged("capacity", "400 +- 20 gpm", 380, 400, 420), ranged("capacity", "400 gpm ± 20", 380, 400, 420),
	ranged("capacity", "400±20 gpm", 380, 400, 420), ranged("capacity", "400 gpm +/- 20 gpm", 380, 400, 420), ranged("capacity", "400 gpm ± 5 %", 380, 400, 420), ranged("capacity", "400 +- 5%", 380, 400, 420),
	ranged("capacity", "400 gpm plus or minus 20", 380, 400, 420),
	ranged("efficiency", "72 to 75 %", 72, 73.5, 75), ranged("efficiency", "72% - 75%", 72, 73.5, 75), ranged("efficiency", "72 +- 2", 70, 72, 74), ranged("efficiency", "72 % ± 2 %", 70, 72, 74), ranged("efficiency", "0.7 to 0.8 %", 0.7, 0.75, 0.8),
	ranged("specific gravity", "1.03 +- 2 %", 1.0094, 1.03, 1.0506), ranged("water temperature", "64 F +- 2", 62, 64, 66), ranged("water temperature", "60 to 18 C", 64.4, 102.2, 140),
	ranged("thrust", "1000 to 1200 lb", 1000, 1100, 1200, "lb read as lbf"), ranged("thrust", "1200 lb +- 50 lbf", 1150, 1200, 1250, "lb read as lbf"), ranged("thrust", "1200 lbf +- 50 lb", 1150, 1200, 1250, "lb read as lbf"),
	ranged("thrust", "1000 lb to 1200 lbf", 1000, 1100, 1200, "lb read as lbf"), ranged("stages", "7 to 9", 7, 8, 9),
}

var unitsTaken = []taken{
	plain("capacity", "400 GPM", 400), plain("capacity", "400 gal/min", 400), plain("capacity", "400 gallons per minute", 400), plain("capacity", "400 gal. per min.", 400), plain("capacity", "25 l/s", 396.2581),
	plain("capacity", "90 m³/h", 396.2581), plain("capacity", "90 m3 per hour", 396.2581), plain("capacity", "90 M3/HR", 396.2581), plain("capacity", "1.2 MGD", 833.3333), plain("capacity", "0.5 cfs", 224.4156),
	plain("capacity", "0.5 ft³/sec", 224.4156), plain("capacity", "3 acre-inches per day", 56.571429), plain("capacity", "1 acre-ft/d", 226.285714), plain("capacity", "2 ML/d", 366.905637), plain("oil", "40 mL/h", 40), plain("oil", "40 ml/hr", 40), plain("oil", "1 ML/h", 1e9),
	plain("discharge pressure", "60psi", 60), plain("discharge pressure", "60 PSIG", 60), plain("discharge pressure", "60 psi gauge", 60), plain("discharge pressure", "4 bar(g)", 58.015095), plain("discharge pressure", "400 kPa", 58.015095), plain("discharge pressure", "60 lb/in2", 60),
	plain("discharge pressure", "0.4 MPA", 58.015095), plain("discharge pressure", "4 kg/cm2", 56.893373, "kg/cm2 read as kgf/cm2"), plain("discharge pressure", "30 in. Hg", 14.734625),
	plain("air pressure", "14.7", 14.7), plain("air pressure", "14.7 psi", 14.7, "psi read as absolute"), plain("vapour pressure", "14.7 psia", 14.7), plain("vapour pressure", "101.325 kPa", 14.695949, "kPa read as absolute"), plain("air pressure", "1 atm", 14.695949, "atm read as absolute"),
	plain("loss of pressure", "5 psig", 5), plain("loss of pressure", "5 psia", 5, "psia read without its reference"),
	plain("thrust", "1200 lbs", 1200, "lb read as lbf"), plain("thrust", "540 kg", 1190.4962, "kg read as kgf"), plain("thrust", "5 kN", 1124.0447), plain("thrust factor", "5.2 lb/ft", 5.2, "lb/ft read as lbf/ft"), plain("thrust factor", "7 kg/m", 4.703783, "kg/m read as kgf/m"),
	plain("efficiency", "72", 72), plain("efficiency", "72%", 72), plain("efficiency", "0.72 %", 0.72), plain("efficiency", "1 %", 1), plain("efficiency", "0", 0), plain("efficiency", "1.5", 1.5), plain("efficiency", "72 pct", 72), plain("specific gravity", "72 %", 0.72),
	plain("water temperature", "64F", 64), plain("water temperature", "64 °F", 64), plain("water temperature", "18 C", 64.4), plain("water temperature", "18°c", 64.4), plain("water temperature", "64 deg F", 64), plain("water temperature", "64°", 64, "° read as °F"), plain("water temperature", "18 degrees Celsius", 64.4),
	plain("brake power", "60 HP", 60), plain("brake power", "60 bhp", 60), plain("motor power", "60 hp", 44.741992, "hp read as 745.7 W (550 ft·lbf/s), not as the metric horsepower of 735.5 W"), plain("motor power", "45 KW", 45),
	plain("stages", "7", 7), plain("stages", "7 stages", 7), plain("stages", "0", 0),
	plain("price", "0.12", 0.12), plain("price", "$0.12/kWh", 0.12), plain("price", "$0.12", 0.12), plain("price", "0.12 $/kWh", 0.12), plain("price", "€ 0,12 per kWh", 0.12), plain("price", "0.12 per kWh", 0.12), plain("price", "$ 0.12 / kW.h", 0.12), plain("price", "$120/MWh", 0.12), plain("price", "0.12 money/kWh", 0.12),
	plain("torque", "120 ft-lbs", 120), plain("torque", "120 lb-ft", 120), plain("torque", "160 Nm", 118.00994), plain("torque", "12 in-lb", 1),
	plain("loss", "2.66 ft/100 ft", 2.66), plain("loss", "2.66 ft per 100 ft", 2.66), plain("loss", "2.66 m/100m", 2.66), plain("loss", "2.66", 2.66),
	plain("speed", "1770 r/min", 1770), plain("sand", "40 ppm", 40, "ppm read as mg/L"), plain("threads", "8 per inch", 8), plain("threads", "8 1/in", 8), plain("specific capacity", "12 gpm per ft", 12), plain("specific capacity", "9 m³/h/m", 12.0779476),
}

func TestApproximate(t *testing.T) {
	for text, want := range map[string]bool{
		"400": false, "about 400": true, "~400 gpm": true, "≈ 400": true, "400 gpm approx.": true, "roughly 400 to 500": true, "400 ± 20": false,
	} {
		got, err := Read(text, fieldNamed(t, "capacity"))
		if err != nil || got.Approximate != want {
			t.Errorf("%q: %v, %v", text, got.Approximate, err)
		}
	}
}

// Half of the last digit, in the unit of the field.
func TestRounding(t *testing.T) {
	for _, c := range []struct {
		field, text string
		want        float64
	}{
		{"capacity", "400", 0.5}, {"capacity", "400.0", 0.05}, {"capacity", "1,250.25", 0.005}, {"capacity", "1.2e3", 50}, {"capacity", "1.2 MGD", 0.05 * 694.4444444},
		{"bore", "6 5/8", 1.0 / 16}, {"bore", "1/2", 0.25}, {"static level", "12'6\"", 0.5 / 12}, {"static level", "12' 6 1/2\"", 0.25 / 12},
		{"static level", "180 to 200.5", 0.5}, {"water temperature", "64", 0.5}, {"water temperature", "18 C", 0.9}, {"thrust", "100 lb", 0.5},
	} {
		f := fieldNamed(t, c.field)
		got, err := Read(c.text, f)
		if err != nil || math.Abs(got.Rounding/f.Unit.Factor/c.want-1) > 1e-9 {
			t.Errorf("%q: %v, %v", c.text, got.Rounding/f.Unit.Factor, err)
		}
	}
}

// A height typed for a pressure is handed back in SI, so that the caller can turn it.
func TestWrongKindHoldsWhatWasRead(t *testing.T) {
	_, err := Read("138 to 140 ft of water", fieldNamed(t, "discharge pressure"))
	var e *ReadError
	if !errors.As(err, &e) || e.Code != WrongKind || e.Dim != Length {
		t.Fatalf("%+v", err)
	}
	if !near(e.Typed.Low, 138*0.3048) || !near(e.Typed.High, 140*0.3048) || e.Typed.Unit.Symbol != "ft" || !near(e.Typed.Rounding, 0.1524) {
		t.Errorf("%+v", e.Typed)
	}
}

func BenchmarkRead(b *testing.B) {
	f := Field{Unit: bySymbol["gpm"], Name: "capacity"}
	for range b.N {
		if _, err := Read("about 1,250.5 gallons per minute", f); err != nil {
			b.Fatal(err)
		}
	}
}
