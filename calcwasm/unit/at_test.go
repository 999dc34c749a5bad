package unit

import "testing"

func TestAt(t *testing.T) {
	for _, c := range []struct {
		text, symbol string
		length       int
	}{
		{" ft static", "ft", 3}, {"gpm, at", "gpm", 3}, {" ft/100 ft of", "ft/100ft", 10}, {"’ of pipe", "ft", 3}, {" gallons a minute or so", "gpm", 17},
		{" static", "", 0}, {"", "", 0}, {" cents", "", 0}, {"# at", "", 0}, {" °F", "degF", 4},
	} {
		u, n := At(c.text)
		symbol := ""
		if u != nil {
			symbol = u.Symbol
		}
		if symbol != c.symbol || n != c.length {
			t.Errorf("At(%q) = %s, %d; want %s, %d", c.text, symbol, n, c.symbol, c.length)
		}
	}
}

func TestNumberAt(t *testing.T) {
	for _, c := range []struct {
		text   string
		value  float64
		length int
	}{{"1,250.5 ft", 1250.5, 7}, {"6 5/8 in", 6.625, 5}, {"1-11/16\"", 1.6875, 7}, {"½ in", 0.5, 2}, {"6½\"", 6.5, 3}, {"180, then", 180, 3}, {"ft", 0, 0}, {"1.2.3", 0, 0}} {
		v, n, ok := NumberAt(c.text)
		if v != c.value || n != c.length || ok != (n > 0) {
			t.Errorf("NumberAt(%q) = %v, %d, %v; want %v, %d", c.text, v, n, ok, c.value, c.length)
		}
	}
}
