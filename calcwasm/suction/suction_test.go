package suction

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
	inch = 0.0254
	gpm  = 231 * inch * inch * inch / 60
)

func TestRowsOfTheIntakeStandardsFormula(t *testing.T) {
	f, err := os.Open("../../testdata/published/08_submergence_hi98.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for _, row := range rows[1:] {
		var n [4]float64
		for i := range n {
			if n[i], err = strconv.ParseFloat(row[i], 64); err != nil {
				t.Fatal(err)
			}
		}
		got, why := MinimumSubmergence(n[1]*gpm, n[0]*inch)
		// The rows are computed with 0.574, printed to a tenth of an inch, and
		// 0.574 is itself rounded: half of its last digit adds to half a tenth.
		allowed := 0.05 + 0.0005/0.574*(n[3]-n[0])
		if why != "" || math.Abs(got/inch-n[3]) > allowed {
			t.Errorf("%g in, %g gpm: %.3f in (%s), computed in the references %g in", n[0], n[1], got/inch, why, n[3])
		}
	}
}

// The short forms in plain units are the definition with rounded constants.
func TestShortForms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bell := rapid.Float64Range(smallestBell, largestBell).Draw(t, "bell")
		flow := rapid.Float64Range(0, fastest*0.99*math.Pi/4*bell*bell).Draw(t, "flow")
		s, why := MinimumSubmergence(flow, bell)
		if why != "" {
			t.Fatal(why)
		}
		us := inch * (bell/inch + 0.574*flow/gpm/math.Pow(bell/inch, 1.5))
		si := bell + 0.935*flow/math.Pow(bell, 1.5)
		if math.Abs(us/s-1) > 5e-4 || math.Abs(si/s-1) > 5e-4 {
			t.Fatalf("definition %g m, with 0.574 %g m, with 0.935 %g m", s, us, si)
		}
	})
}

func TestSubmergenceEndsInWords(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		flow, bell float64
		says       string
	}{
		{-1, 0.5, "0 or more"}, {nan, 0.5, "0 or more"}, {0.1, 0.05, "4 in to 118 in"}, {0.1, 3.5, "4 in to 118 in"},
		{0.1, nan, "4 in to 118 in"}, {1, 0.3, "faster than 12 ft/s"},
	} {
		if s, why := MinimumSubmergence(c.flow, c.bell); !math.IsNaN(s) || !strings.Contains(why, c.says) {
			t.Errorf("MinimumSubmergence(%g, %g) = %g, %q; want no value, and %q", c.flow, c.bell, s, why, c.says)
		}
	}
	if s, _ := MinimumSubmergence(0, 0.5); s != 0.5 {
		t.Errorf("without flow %g m; one diameter of 0.5 m is wanted", s)
	}
}
