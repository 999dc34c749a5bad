package unit

import (
	"math"
	"strings"
	"testing"
)

// Whatever a message tells people to type is read in that field, and the SI and
// the US example say the same.
func TestExamplesAreRead(t *testing.T) {
	for _, u := range All() {
		for _, reference := range []Reference{NoReference, Gauge, Absolute} {
			if u.Reference != NoReference && reference != u.Reference {
				continue
			}
			f := Field{Unit: u, Reference: reference, Name: "x"}
			r := &reader{field: f}
			examples := r.examples()
			var first float64
			for i, text := range strings.Split(examples, " or ") {
				typed, err := Read(text, f)
				if err != nil {
					t.Errorf("%s: %v", u.Symbol, err)
					continue
				}
				if i == 1 && math.Abs(typed.Likely/first-1) > 0.012 {
					t.Errorf("%s: %s differ: %v, %v", u.Symbol, examples, first, typed.Likely)
				}
				first = typed.Likely
			}
			if text := r.spanExample(); u.Symbol != "%" {
				if typed, err := Read(text, f); err != nil || typed.High <= typed.Low {
					t.Errorf("%s: %q: %+v, %v", u.Symbol, text, typed, err)
				}
			}
		}
	}
}
