package main

import (
	"strconv"
	"strings"
	"testing"

	"columnbowl/build/class"
)

// FuzzSeed: a seed on the command line is a number or refused, and the seeds of
// a class never run over.
func FuzzSeed(f *testing.F) {
	for _, s := range []string{"7", "0", "-1", "18446744073709551615", "1e3", " 7", "0x10", "٧", ""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		seed, err := seedOf(text)
		if err != nil {
			return
		}
		if strings.TrimLeft(text, "0") != strings.TrimLeft(strconv.FormatUint(seed, 10), "0") {
			t.Errorf("%q was read as %d", text, seed)
		}
		if last := class.SeedOf(seed, 998); last/1000 != seed {
			t.Errorf("the seeds of a class with the seed %d run over", seed)
		}
	})
}
