package water

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"columnbowl/calcwasm/arith"

	"pgregory.net/rapid"
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

// saturatedDensity is the liquid density of IAPWS SR1-86(1992), eq. 2, in
// kg/m³: the second method against which Density is held.
func saturatedDensity(temperature float64) float64 {
	third := arith.Pow(max(0, 1-temperature/criticalTemperature), 1.0/3)
	sum := 1.0
	for thirds, b := range map[float64]float64{1: 1.99274064, 2: 1.09965342, 5: -0.510839303, 16: -1.75493479, 43: -45.5170352, 110: -6.74694450e5} {
		sum += b * arith.Pow(third, thirds)
	}
	return criticalDensity * sum
}

func TestVerificationValuesOfSaturation(t *testing.T) {
	seen := 0
	for _, row := range published(t, "07_iapws_verification.csv") {
		if row["release"] != "SR1-86(1992)" {
			continue
		}
		seen++
		temperature, want := number(t, row["T_K"]), number(t, row["value"])
		got, digits := saturationPressure(temperature), 0.5e-5
		if row["quantity"] == "rho_liquid" {
			got, digits = saturatedDensity(temperature), 0.6e-6
		}
		if math.Abs(got-want) > digits*want {
			t.Errorf("%s at %g K is %.9g, published %.9g", row["quantity"], temperature, got, want)
		}
	}
	if seen != 6 {
		t.Errorf("%d verification values of SR1-86 seen, want 6", seen)
	}
}

// The industrial formulation is another equation for the same curve; the two
// releases agree within a few parts in a hundred thousand.
func TestSaturationAgreesWithTheIndustrialFormulation(t *testing.T) {
	for _, row := range published(t, "07_iapws_verification.csv") {
		if row["table"] != "Table 35" {
			continue
		}
		want := 1e6 * number(t, row["value"])
		if got := saturationPressure(number(t, row["T_K"])); math.Abs(got/want-1) > 2e-4 {
			t.Errorf("at %s K %.9g Pa, industrial formulation %.9g Pa", row["T_K"], got, want)
		}
	}
}

func TestVerificationValuesOfViscosity(t *testing.T) {
	rows := published(t, "07_iapws_viscosity.csv")
	for _, row := range rows {
		got := 1e6 * viscosityAt(number(t, row["T_K"]), number(t, row["rho_kg_m3"]))
		if want := number(t, row["viscosity_uPa_s"]); math.Abs(got-want) > 0.6e-6 {
			t.Errorf("viscosity at %s K, %s kg/m³ is %.7f µPa·s, published %.6f", row["T_K"], row["rho_kg_m3"], got, want)
		}
	}
	if len(rows) != 11 {
		t.Errorf("%d verification values, want 11", len(rows))
	}
}

// simpleViscosity is eq. 7 of IAPWS SR6-08(2011), in Pa·s, for 0.1 MPa.
func simpleViscosity(temperature float64) float64 {
	x := temperature / 300
	return 1e-6 * (280.68*math.Pow(x, -1.9) + 511.45*math.Pow(x, -7.7) + 61.131*math.Pow(x, -19.6) + 0.45903*math.Pow(x, -40))
}

func TestSecondMethods(t *testing.T) {
	for temperature := freezing; temperature <= boiling; temperature += 2.5 {
		density, _ := Density(temperature)
		if d := density - saturatedDensity(temperature); d < 0.001 || d > 0.055 {
			t.Errorf("at %g K: %.4f kg/m³ more than at saturation; the compression by the atmosphere is 0.05 kg/m³ and less", temperature, d)
		}
		viscosity, _ := Viscosity(temperature)
		if r := viscosity / simpleViscosity(temperature); math.Abs(r-1) > 5e-5 {
			t.Errorf("at %g K: the two viscosities of IAPWS differ by %.1e", temperature, r-1)
		}
	}
}

func TestThirdPartyValueAtBodyTemperature(t *testing.T) {
	for _, row := range published(t, "07_iapws_verification.csv") {
		if !strings.HasPrefix(row["release"], "SR6-08") {
			continue
		}
		temperature, want := number(t, row["T_K"]), number(t, row["value"])
		switch row["quantity"] {
		case "rho":
			if got, _ := Density(temperature); math.Abs(got-want) > 0.5e-4 {
				t.Errorf("density %.5f, published %.4f", got, want)
			}
		case "viscosity":
			if got := simpleViscosity(temperature); math.Abs(got-want) > 0.5e-10 {
				t.Errorf("viscosity %.4e, published %.7e", got, want)
			}
		}
	}
}

func TestDensestNearFourDegrees(t *testing.T) {
	at := func(celsius float64) float64 { d, _ := Density(freezing + celsius); return d }
	if !(at(3.98) > at(3.5) && at(3.98) > at(4.5)) || math.Abs(at(3.98)-999.975) > 0.001 {
		t.Errorf("density at 3.98 °C is %.4f kg/m³; water is densest there, 999.975 kg/m³", at(3.98))
	}
}

func TestWaterEndsInWords(t *testing.T) {
	for _, c := range []struct {
		temperature float64
		says        string
	}{
		{273.14, "freezes"}, {-5, "freezes"}, {373.16, "boils at sea level"}, {math.Inf(1), "boils"}, {math.NaN(), "not a number"},
	} {
		for name, f := range map[string]func(float64) (float64, string){"Density": Density, "Viscosity": Viscosity, "VapourPressure": VapourPressure} {
			v, why := f(c.temperature)
			if !math.IsNaN(v) || !strings.Contains(why, c.says) {
				t.Errorf("%s(%g) = %g, %q; want no value, and %q", name, c.temperature, v, why, c.says)
			}
		}
	}
	for _, edge := range []float64{273.15, 373.15, (32 + 459.67) * 5 / 9, (212 + 459.67) * 5 / 9} {
		if _, why := Density(edge); why != "" {
			t.Errorf("Density(%v): %s", edge, why)
		}
	}
}

func TestAtmosphere(t *testing.T) {
	for _, row := range published(t, "07_std_atmosphere_ft.csv") {
		got, why := Atmosphere(number(t, row["altitude_ft"]) * 0.3048)
		if want := number(t, row["pressure_psia"]); why != "" || math.Abs(got/6894.757293-want) > 0.012 {
			t.Errorf("at %s ft %.4f psi (%s), published %s", row["altitude_ft"], got/6894.757293, why, row["pressure_psia"])
		}
	}
	for altitude, says := range map[float64]string{-305: "−1000 ft", 10973: "36,000 ft", math.Inf(1): "36,000 ft", math.NaN(): "not a number"} {
		if v, why := Atmosphere(altitude); !math.IsNaN(v) || !strings.Contains(why, says) {
			t.Errorf("Atmosphere(%g) = %g, %q; want no value, and %q", altitude, v, why, says)
		}
	}
	for _, edge := range []float64{lowestSite, highestSite} {
		if _, why := Atmosphere(edge); why != "" {
			t.Errorf("Atmosphere(%g): %s", edge, why)
		}
	}
}

func TestOneDirection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(freezing, boiling-0.01).Draw(t, "T")
		b := rapid.Float64Range(a+0.01, boiling).Draw(t, "T warmer")
		cool, _ := VapourPressure(a)
		warm, _ := VapourPressure(b)
		thick, _ := Viscosity(a)
		thin, _ := Viscosity(b)
		if !(warm > cool && thin < thick) {
			t.Fatalf("from %g to %g K: vapour pressure %g to %g, viscosity %g to %g", a, b, cool, warm, thick, thin)
		}
		low := rapid.Float64Range(lowestSite, highestSite-1).Draw(t, "z")
		high := rapid.Float64Range(low+0.1, highestSite).Draw(t, "z higher")
		dense, _ := Atmosphere(low)
		light, _ := Atmosphere(high)
		if !(light < dense) {
			t.Fatalf("the air at %g m presses with %g Pa, at %g m with %g Pa", low, dense, high, light)
		}
	})
}
