package unit

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// What is written for the notation is read back as the same number to the four
// digits shown, in every unit.
func TestWrittenNumbersAreReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(All()).Draw(t, "unit")
		x := rapid.Float64Range(-5, 5).Draw(t, "mantissa") * math.Pow(10, float64(rapid.IntRange(-9, 9).Draw(t, "power")))
		si := u.ToSI(x)
		for _, text := range []string{FormatPlain(si, u) + " " + u.Symbol, FormatWith(si, u)} {
			text = strings.TrimSuffix(text, " 1") // the pure number has no unit to type
			typed, err := Read(text, Field{Unit: u})
			if err != nil {
				t.Fatalf("%q: %v", text, err)
			}
			if got := u.FromSI(typed.Likely); math.Abs(got-u.FromSI(si)) > 5.1e-4*math.Abs(u.FromSI(si))+1e-9*math.Abs(u.Offset) {
				t.Fatalf("%q: %v read as %v", text, x, got)
			}
			if typed.Low != typed.High || typed.Low != typed.Likely {
				t.Fatalf("%q is read as a range", text)
			}
		}
		value, v, _, rest, err := ReadNotation(FormatPlain(si, u) + " " + u.Symbol)
		if err != nil || (u.Symbol != "1" && (v != u || rest != "")) || math.Abs(value-u.FromSI(si)) > 5.1e-4*math.Abs(value)+1e-9*math.Abs(u.Offset) {
			t.Fatalf("%v %s: notation gives %v %v %q %v", x, u.Symbol, value, v, rest, err)
		}
	})
}

func TestToAndFromSIAreInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(All()).Draw(t, "unit")
		x := rapid.Float64Range(-1e9, 1e9).Draw(t, "x")
		if got := u.FromSI(u.ToSI(x)); math.Abs(got-x) > 1e-15*math.Abs(x)+4e-16*u.Offset/u.Factor+1e-300 {
			t.Fatalf("%v %s comes back as %v", x, u.Symbol, got)
		}
	})
}

// A number written by Format, with its four digits in full, is the Same as the
// one it was made of: both round alike.
func TestFormatAgreesWithSame(t *testing.T) {
	one := bySymbol["1"]
	rapid.Check(t, func(t *rapid.T) {
		x := float64(rapid.IntRange(-10_000_000, 10_000_000).Draw(t, "x")) / 1000 // many halves among them
		value, _, _, _, err := ReadNotation(FormatPlain(x, one))
		if err != nil {
			t.Fatal(err)
		}
		decimals := 0
		if x != 0 {
			decimals = max(0, significant-1-exponentOf(x))
		}
		if full := strconv.FormatFloat(value, 'f', decimals, 64); !Same(x, full) {
			t.Fatalf("%v is written %q", x, full)
		}
	})
}

// A range comes out in order, and a width is even.
func TestRangesAreInOrder(t *testing.T) {
	units := []string{"ft", "m", "in", "mm"}
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.IntRange(-999, 999).Draw(t, "a")
		b := rapid.IntRange(-999, 999).Draw(t, "b")
		u := bySymbol[rapid.SampledFrom(units).Draw(t, "first unit")]
		v := bySymbol[rapid.SampledFrom(units).Draw(t, "second unit")]
		joint := rapid.SampledFrom([]string{" to ", " +- "}).Draw(t, "joint")
		text := FormatPlain(u.ToSI(float64(a)), u) + " " + u.Symbol + joint + FormatPlain(v.ToSI(float64(b)), v) + " " + v.Symbol
		typed, err := Read(text, Field{Unit: bySymbol["m"]})
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		if !(typed.Low <= typed.Likely && typed.Likely <= typed.High) {
			t.Fatalf("%q: %+v", text, typed)
		}
	})
}

// pieces are what the texts of the fuzz tests are glued from.
var pieces = []string{
	"1", "6", "5/8", "1,250", "0,125", "12", "'", "\"", "-", "–", "−", "+-", "±", " ", "\u00a0", " to ", "ft", "in", "gpm", "psi", "psia", "%", "°", "F", "M",
	"/", "per", "100 ft", ".", "e3", "×10", "⁻⁵", "½", "$", "about ", "between ", " and ", "lb", "kWh", "\xff", "m3", "²", "^", "(", ")", "t", "…",
}

func TestNoTextPanics(t *testing.T) {
	names := fieldNames()
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(pieces), 0, 12).Draw(t, "pieces"), "")
		checkReading(t, text, rapid.SampledFrom(names).Draw(t, "field"))
	})
}

// fieldNames are the fields the random texts are typed into.
func fieldNames() []string {
	return []string{"capacity", "static level", "bore", "discharge pressure", "air pressure", "thrust", "efficiency", "water temperature", "stages", "price"}
}

// checkReading is what holds of every text: it is read in order and finite, or
// refused with a message and a place inside the text.
func checkReading(t interface{ Fatalf(string, ...any) }, text, name string) {
	f := fields[name]
	f.Name = name
	typed, err := Read(text, f)
	var e *ReadError
	if errors.As(err, &e) {
		if e.Code == 0 || !strings.HasSuffix(e.Message, ".") || e.At < 0 || e.Len < 0 || e.At+e.Len > len(text) || e.Text != text {
			t.Fatalf("%q: %+v", text, e)
		}
		return
	}
	if err != nil {
		t.Fatalf("%q: %v is no ReadError", text, err)
	}
	if !(typed.Low <= typed.Likely && typed.Likely <= typed.High) || !finite(typed.Low) || !finite(typed.High) || !(typed.Rounding >= 0) || typed.Unit == nil {
		t.Fatalf("%q: %+v", text, typed)
	}
}

func FuzzRead(f *testing.F) {
	for _, list := range [][]taken{numbersTaken, lengthsTaken, rangesTaken, unitsTaken} {
		for _, c := range list {
			f.Add(c.text)
		}
	}
	for _, c := range refusals {
		f.Add(c.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, name := range fieldNames() {
			checkReading(t, text, name)
		}
	})
}
