package proof_test

import (
	"math"
	"testing"

	"columnbowl/calcwasm/choosing"
	"columnbowl/calcwasm/reckon"
)

// orchardCosts adds what the cost of Job 1 hangs on.
var orchardCosts = with(orchard, "motor-efficiency", "94.1 %", "energy-price", "0.12 money/kWh", "running-hours", "2000 h")

// columnsFor are the columns for the best family of the facts.
func columnsFor(t testing.TB, b *reckon.Book, price string, facts ...string) []*choosing.Option {
	t.Helper()
	perKilogram, wrong := choosing.ReadPrice(price)
	if wrong != "" {
		t.Fatal(wrong)
	}
	years, _ := choosing.ReadYears("10")
	c := ranked(t, b, facts...)[0]
	return choosing.ColumnsOf(b, c.Result.Question, c, perKilogram, years)
}

// TestColumnsByHand. 800 gpm = 1.7824 ft3/s, tube 2.875 in outside; Hazen and
// Williams, V = 1.318 C R^0.63 S^0.54 with C = 130, R = (D - d) / 4 of the ring.
//
// 8 in: D = 7.981 in; area 43.53 in2 = 0.3023 ft2; V = 5.896 ft/s; R = 1.2765 in =
// 0.10637 ft, R^0.63 = 0.2437; S = (5.896 / (171.34 * 0.2437))^1.852 = 2.66 ft in
// 100 ft, over 240 ft 6.39 ft. 28.55 lb/ft * 240 ft = 6853 lb, at 1.50 a pound
// 10,279.
//
// 6 in: D = 6.065 in; area 22.40 in2 = 0.1555 ft2; V = 11.46 ft/s; R = 0.06646 ft,
// R^0.63 = 0.1812; S = (11.46 / (171.34 * 0.1812))^1.852 = 15.8 ft in 100 ft: 37.9 ft.
func TestColumnsByHand(t *testing.T) {
	b := handbook(t).Engine
	list := columnsFor(t, b, "1.50", orchardCosts...)
	si := func(o *choosing.Option, id string) float64 { return o.Result.Values[mustFind(t, b, id)].Likely }
	for _, want := range []struct {
		column               string
		velocity, loss, pipe float64 // ft/s, ft, money
	}{{"8 in", 5.896, 6.39, 10279}, {"6 in", 11.46, 37.9, 6831}} {
		found := false
		for _, o := range list {
			if o.Column != want.column || o.Tube != "2.5 in" {
				continue
			}
			found = true
			if v := si(o, "column-velocity") / 0.3048; math.Abs(v-want.velocity) > 0.005 {
				t.Errorf("%s: %.3f ft/s, by hand %v", o.Column, v, want.velocity)
			}
			if h := si(o, "column-loss") / 0.3048; math.Abs(h/want.loss-1) > 0.002 {
				t.Errorf("%s: loses %.2f ft, by hand %v", o.Column, h, want.loss)
			}
			if math.Abs(o.Price/want.pipe-1) > 0.001 {
				t.Errorf("%s: costs %.0f, by hand %v", o.Column, o.Price, want.pipe)
			}
			// ten years: pipe + 10 * kW * 2000 h * 0.12
			if total := want.pipe + 10*si(o, "input-power")/1000*2000*0.12; math.Abs(o.Total/total-1) > 0.001 {
				t.Errorf("%s: %.0f over the years, by hand %.0f", o.Column, o.Total, total)
			}
		}
		if !found {
			t.Errorf("%s is not among the columns", want.column)
		}
	}
}

// TestColumnsPay: at 1.50 a pound the 8 in column is the cheapest over ten years;
// where pipe costs nothing, only the casing holds the size back; a column that is
// as wide as the casing is never offered.
func TestColumnsPay(t *testing.T) {
	b := handbook(t).Engine
	if list := columnsFor(t, b, "1.50", orchardCosts...); len(list) == 0 || list[0].Column != "8 in" || list[0].Shaft != "1.5 in" {
		t.Errorf("first of %d: %+v", len(list), list[0])
	}
	free := columnsFor(t, b, "0", orchardCosts...)
	if free[0].Column != "10 in" {
		t.Errorf("for nothing the first is %s", free[0].Column)
	}
	for _, o := range free {
		if o.Column == "12 in" || o.Column == "14 in" || o.Column == "4 in" {
			t.Errorf("%s is offered for a casing of 12 in and a tube of %s", o.Column, o.Tube)
		}
	}
}

// TestDropPipesGoIn: a submersible's pipe with its couplings is left out where the
// casing is narrower, whatever it would save.
func TestDropPipesGoIn(t *testing.T) {
	b := handbook(t).Engine
	list := columnsFor(t, b, "0", "build", "submersible", "casing-inside-diameter", "11.875 in", "capacity", "620 gpm", "field-head", "310.9 ft",
		"setting", "210 ft", "pumping-level", "162.7 ft", "motor-efficiency", "85 %", "energy-price", "0.13", "running-hours", "2900 h", "power-factor", "0.85")
	if len(list) < 3 {
		t.Fatalf("only %d columns", len(list))
	}
	if list[0].Column != "10 in" {
		t.Errorf("for nothing the first is %s", list[0].Column)
	}
	for _, o := range list {
		if o.Column == "12 in" || o.Column == "14 in" {
			t.Errorf("%s is offered for a casing of 11.875 in", o.Column)
		}
	}
}

// TestColumnsRead: what is typed wrong is told, and what is empty is not known.
func TestColumnsRead(t *testing.T) {
	for _, text := range []string{"cheap", "-1", "3 ft"} {
		if _, wrong := choosing.ReadPrice(text); wrong == "" {
			t.Errorf("the price %q was taken", text)
		}
	}
	if p, wrong := choosing.ReadPrice(""); wrong != "" || p == p {
		t.Errorf("no price is %v, %q", p, wrong)
	}
	if _, wrong := choosing.ReadYears("100"); wrong == "" {
		t.Error("a hundred years were taken")
	}
}

// BenchmarkChoice is what a page waits for after each change: six families and
// the columns for one of them.
func BenchmarkChoice(b *testing.B) {
	book := handbook(b).Engine
	for b.Loop() {
		columnsFor(b, book, "1.50", orchardCosts...)
	}
}
