package unit

import (
	"errors"
	"testing"
)

// notated are texts of the notation, and what is read at their beginning.
var notated = []struct {
	text   string
	value  float64
	symbol string
	digits Digits
	rest   string
}{
	{"187 ft", 187, "ft", Digits{}, ""},
	{"72.5 %", 72.5, "%", Digits{Decimals: 1}, ""},
	{"72.5%, x", 72.5, "%", Digits{Decimals: 1}, ", x"},
	{"2.66 ft/100ft", 2.66, "ft/100ft", Digits{Decimals: 2}, ""},
	{"1.43 hp/100ft * x", 1.43, "hp/100ft", Digits{Decimals: 2}, " * x"},
	{"0 ft: 1, 10 ft: 5", 0, "ft", Digits{}, ": 1, 10 ft: 5"},
	{"63 ft, 400 gpm: 59.3 ft", 63, "ft", Digits{}, ", 400 gpm: 59.3 ft"},
	{"3960 * bowl-efficiency", 3960, "", Digits{}, " * bowl-efficiency"},
	{"2 - 1", 2, "", Digits{}, " - 1"},
	{"1.25e3 gpm", 1250, "gpm", Digits{Decimals: 2, Exponent: 3}, ""},
	{"-3 ft", -3, "ft", Digits{}, ""},
	{"−3 ft", -3, "ft", Digits{}, ""},
	{"0.4 1/in)", 0.4, "1/in", Digits{Decimals: 1}, ")"},
	{"64 degF", 64, "degF", Digits{}, ""},
	{"2881 Ns-US", 2881, "Ns-US", Digits{}, ""},
	{"60 psig.", 60, "psig", Digits{}, "."},
	{"210 lbf.ft", 210, "lbf.ft", Digits{}, ""},
	{"3 and x > 2", 3, "", Digits{}, " and x > 2"},
	{"1714 for 3960", 1714, "", Digits{}, " for 3960"},
	{"0.2 % because \"x\"", 0.2, "%", Digits{Decimals: 1}, " because \"x\""},
	{"5 1", 5, "", Digits{}, " 1"},
	{"5.", 5, "", Digits{}, "."},
	{"3, 4)", 3, "", Digits{}, ", 4)"},
}

func TestReadNotation(t *testing.T) {
	for _, c := range notated {
		value, u, digits, rest, err := ReadNotation(c.text)
		symbol := ""
		if u != nil {
			symbol = u.Symbol
		}
		if err != nil || value != c.value || symbol != c.symbol || digits != c.digits || rest != c.rest {
			t.Errorf("%q: %v %q %v %q %v", c.text, value, symbol, digits, rest, err)
		}
	}
}

func TestReadNotationRefuses(t *testing.T) {
	for _, c := range []struct {
		text    string
		code    Code
		at, len int
		message string
	}{
		{"abc", NotANumber, 0, 3, `Here should stand a number such as 187 or 72.5, and not “abc”.`},
		{"", NotANumber, 0, 0, `Here should stand a number such as 187 or 72.5, and not “”.`},
		{".5 ft", NotANumber, 0, 5, `Here should stand a number such as 187 or 72.5, and not “.5 ft”.`},
		{"187 fet", UnknownUnit, 4, 3, `There is no unit “fet” in the notation; did you mean ft?`},
		{"187 GPM", UnknownUnit, 4, 3, `There is no unit “GPM” in the notation; did you mean gpm?`},
		{"187 head-shaft", UnknownUnit, 4, 10, `There is no unit “head-shaft” in the notation. Write it as in gpm, m3/h, ft/100ft, lbf.ft or 1/in; a name of a term needs an operator before it.`},
		{"1,250 gpm", NotANumber, 0, 5, `The notation does not group thousands: write 1250 for “1,250”, or put a space behind a comma that separates.`},
		{"1e19 ft", TooLarge, 0, 4, `The number “1e19” is too large for anything in this book.`},
	} {
		_, _, _, _, err := ReadNotation(c.text)
		var e *ReadError
		if !errors.As(err, &e) {
			t.Errorf("%q is read", c.text)
			continue
		}
		if e.Code != c.code || e.At != c.at || e.Len != c.len || e.Message != c.message {
			t.Errorf("%q: %d [%d+%d] %s", c.text, e.Code, e.At, e.Len, e.Message)
		}
	}
}

func TestSame(t *testing.T) {
	for _, c := range []struct {
		computed float64
		written  string
		want     bool
	}{
		{194, "194 ft", true}, {194.49, "194", true}, {193.5, "194", true}, {194.5, "194", false}, {193.4999, "194", false},
		{138.58, "138.6", true}, {138.54, "138.6", false}, {0.305, "0.31", true}, {0.3049, "0.31", false},
		{1.15 * 100, "115", true}, {2.675, "2.68", true}, {2.675, "2.67", false}, {-2.675, "-2.68", true}, {-2.675, "2.68", false},
		{1249, "1.25e3", true}, {1244, "1.25e3", false}, {-0.001, "0", true}, {0.4, "0.0", false}, {24973.2, "24973", true},
		{100, "1e2", true}, {149, "1e2", true}, {150, "1e2", false}, {5, "abc", false}, {5, "", false},
		{1e17, "1e17", true}, {800_000_000.2, "800000000", true}, {72.5, "72.50 %", true},
	} {
		if got := Same(c.computed, c.written); got != c.want {
			t.Errorf("Same(%v, %q) = %v", c.computed, c.written, got)
		}
	}
}

func FuzzReadNotation(f *testing.F) {
	for _, seed := range []string{"187 ft", "72.5 %", "2.66 ft/100ft", "1.25e3 gpm", "-3 1/in", "5 min(", "1,250", "0 ft: 1", "3 lb/ft.s", "9e999"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		value, u, digits, rest, err := ReadNotation(text)
		var e *ReadError
		if errors.As(err, &e) {
			if e.Message == "" || e.At < 0 || e.Len < 0 || e.At+e.Len > len(text) {
				t.Fatalf("%q: %+v", text, e)
			}
			return
		}
		if len(rest) >= len(text) || text[len(text)-len(rest):] != rest || digits.Decimals < 0 {
			t.Fatalf("%q: rest %q, %v", text, rest, digits)
		}
		if u != nil && !(u.Factor > 0) {
			t.Fatalf("%q: %+v", text, u)
		}
		if !Same(value, text) {
			t.Fatalf("%q: the number %v is not what is written", text, value)
		}
	})
}
