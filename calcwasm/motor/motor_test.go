package motor

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// table reads a published table; the first row is the header.
func table(t *testing.T, name string) [][]string {
	t.Helper()
	text, err := os.ReadFile("../../testdata/published/" + name)
	if err != nil {
		t.Fatal(err)
	}
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 3 {
		t.Fatalf("%s: %d rows, %v", name, len(rows), err)
	}
	return rows
}

func value(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Every printed efficiency of both tables of 10 CFR 431.25. Exact.
func TestPublishedEfficiencies(t *testing.T) {
	cells := 0
	for class, name := range map[Class]string{EnergyEfficient: "10_motor_eff_epact.csv", Premium: "10_motor_eff_premium.csv"} {
		rows := table(t, name)
		for _, row := range rows[1:] {
			for i, head := range rows[0][1:] {
				kind, poles, _ := strings.Cut(head, "_")
				enclosure := map[string]Enclosure{"open": Open, "enclosed": Enclosed}[kind]
				got, invalid := NominalEfficiency(class, enclosure, value(t, row[0])*horsepower, value(t, strings.TrimSuffix(poles, "pole")))
				switch printed := row[1+i]; {
				case printed == "":
					if invalid == "" {
						t.Errorf("%s: %s hp %s has no printed value and gives %v", name, row[0], head, got)
					}
				case invalid != "" || math.Abs(got-value(t, printed)/100) > 1e-12:
					t.Errorf("%s: %s hp %s gives %v %s, printed %s %%", name, row[0], head, got, invalid, printed)
				default:
					cells++
				}
			}
		}
	}
	if cells != 227 {
		t.Errorf("%d printed values compared, 227 are known", cells)
	}
}

// Every printed current of the code's table. Exact.
func TestPublishedCurrents(t *testing.T) {
	rows := table(t, "10_nec_430_250.csv")
	if len(rows)-1 != len(ratings) {
		t.Fatalf("%d printed ratings, %d here", len(rows)-1, len(ratings))
	}
	for i, row := range rows[1:] {
		if value(t, row[0]) != ratings[i] {
			t.Errorf("rating %d is printed as %s", i, row[0])
		}
		for c, volts := range []float64{208, 230, 460, 575} {
			got, invalid := CodeCurrent(ratings[i]*horsepower, volts)
			if printed := row[1+c]; printed == "" {
				if invalid == "" {
					t.Errorf("%s hp at %v V has no printed value and gives %v", row[0], volts, got)
				}
			} else if invalid != "" || got != value(t, printed) {
				t.Errorf("%s hp at %v V gives %v %s, printed %s", row[0], volts, got, invalid, printed)
			}
		}
	}
}

// The trade's 12.9 ohm·cmil/ft for copper agrees with the stranded rows of the
// code's table of resistances (No. 6 and larger) within 0.6 %, and is 2 to 3 % above
// the solid ones: the twist of the strands makes them longer.
func TestTwelvePointNine(t *testing.T) {
	for _, row := range table(t, "10_nec_ch9_t8_copper.csv")[1:] {
		off := 12.9 / value(t, row[1]) * 1000 / value(t, row[2])
		low, high := 0.994, 1.006
		if strings.HasSuffix(row[0], "solid") {
			low, high = 1.015, 1.03
		}
		if off < low || off > high {
			t.Errorf("No. %s: 12.9 gives %.4f times the printed resistance", row[0], off)
		}
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		name, want string
		got        func() (float64, string)
	}{
		{"between sizes", "the table of efficiencies has no motor of 90 hp: the sizes beside it are 75 and 100 hp",
			func() (float64, string) { return NominalEfficiency(Premium, Open, 90*horsepower, 4) }},
		{"too large", "the table of efficiencies has no motor of 250 hp: it ends at 200 hp",
			func() (float64, string) { return NominalEfficiency(Premium, Open, 250*horsepower, 4) }},
		{"too small", "the table of efficiencies has no motor of 0.5 hp: it begins at 1 hp",
			func() (float64, string) { return NominalEfficiency(Premium, Open, 0.5*horsepower, 4) }},
		{"poles", "the table of efficiencies has motors of 2, 4 and 6 poles only",
			func() (float64, string) { return NominalEfficiency(Premium, Open, 100*horsepower, 8) }},
		{"no such motor", "the table has no efficiency for an open two-pole motor of 1 hp",
			func() (float64, string) { return NominalEfficiency(EnergyEfficient, Open, horsepower, 2) }},
		{"voltage", "the code's table has columns for 200 to 210, 220 to 240, 440 to 480 and 550 to 600 V",
			func() (float64, string) { return CodeCurrent(100*horsepower, 400) }},
		{"empty cell", "the code's table has no motor of 250 hp for so low a voltage",
			func() (float64, string) { return CodeCurrent(250*horsepower, 230) }},
		{"beyond the list", "the list of standard ratings ends at 500 hp",
			func() (float64, string) { return NextRating(501 * horsepower) }},
		{"nothing", "no motor is wanted for a power of nothing", func() (float64, string) { return NextRating(0) }},
		{"not a number", "the power is not a number", func() (float64, string) { return NextRating(math.NaN()) }},
		{"rating not a number", "the rating is not a number", func() (float64, string) { return CodeCurrent(math.NaN(), 460) }},
	} {
		if v, invalid := c.got(); v == v || invalid != c.want {
			t.Errorf("%s: %v, %q, want %q", c.name, v, invalid, c.want)
		}
	}
}

// 75 kW is the same size as 100 hp; the neighbours are not.
func TestMetricSizes(t *testing.T) {
	if a, invalid := CodeCurrent(75_000, 460); a != 124 {
		t.Errorf("75 kW at 460 V: %v A, %s", a, invalid)
	}
}

// The next rating carries the power, is a rating itself, and none smaller would do.
func TestNextRatingProperty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		power := rapid.Float64Range(1e-3, 500).Draw(t, "hp") * horsepower
		r, invalid := NextRating(power)
		if invalid != "" || r < power*(1-1e-8) {
			t.Fatalf("%v W: %v W %s", power, r, invalid)
		}
		if again, _ := NextRating(r); again != r {
			t.Fatalf("%v W is a rating and gives %v W", r, again)
		}
		for _, hp := range ratings {
			if s := hp * horsepower; s < r && s >= power {
				t.Fatalf("%v W would do for %v W", s, power)
			}
		}
	})
}
