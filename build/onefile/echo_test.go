package onefile

import (
	"bytes"
	"strings"
	"testing"

	"columnbowl/build/bindery"
)

func TestEcho(t *testing.T) {
	const line = "The bowl stands, the impeller turns, and the water goes up. "
	for _, c := range []struct{ known, text string }{
		{"", ""}, {"", "short"}, {line, "short"}, {line, line}, {line, "a" + line + "b" + line}, {"", strings.Repeat(line, 50)},
		{strings.Repeat(line, 3), "new " + line[10:] + "µ³" + line}, {"", strings.Repeat("x", 500)},
	} {
		packed := echo([]byte(c.known), []byte(c.text))
		if got := unecho([]byte(c.known), packed); string(got) != c.text {
			t.Errorf("%q behind %q came back as %q", c.text, c.known, got)
		}
		if strings.Count(c.text, line) > 9 && len(packed) > len(c.text)/3 {
			t.Errorf("%d bytes of repetitions are told in %d", len(c.text), len(packed))
		}
	}
}

func FuzzEcho(f *testing.F) {
	f.Add([]byte("one two three four five six seven eight nine"), []byte("zero one two three four five six seven eight nine ten"))
	f.Fuzz(func(t *testing.T, known, text []byte) {
		if got := unecho(known, echo(known, text)); !bytes.Equal(got, text) {
			t.Errorf("%q behind %q came back as %q", text, known, got)
		}
	})
}

func TestShortPath(t *testing.T) {
	for in, want := range map[string]string{
		"M10 20L13.04 20L13.04 25.55Z":   "m10 20 3 0 0 5.6z",
		"M1.5 2H4V-3.25":                 "m1.5 2h2.5v-5.3",
		"m1 1h2v3zm5 0l1 1":              "m1 1h2v3zm5 0 1 1",
		"M0 0C1 1 2 2 3 3C4 4 5 5 6.5 6": "m0 0c1 1 2 2 3 3 1 1 2 2 3.5 3",
		"M0 0A5 5 0 0 1 10 0":            "m0 0a5 5 0 0 1 10 0",
		"M0 0T1 1":                       "M0 0T1 1",
		"M0 0L.04 0L.08 0L.12 0":         "m0 0 0 0 .1 0 0 0",
	} {
		if got := bindery.ShortPath(in); got != want {
			t.Errorf("%s became %s, not %s", in, got, want)
		}
	}
}

func TestDense(t *testing.T) {
	// 0000000 0|000000 10|01000 … : the first two groups are 0, then “<” (60), then what is left
	for in, want := range map[string]string{
		"\x02":         "1 \x01\u00a1",
		"\xff\xff":     "2 \x7f\x7f\x60",
		"\x78\x00\x00": "3 \u00a3\u00a1\u00a1\u00a1",
		"\x1a":         "1 \u00a2\u00a1",
	} {
		if got := string(dense(nil, []byte(in))); got != want {
			t.Errorf("%q became %q, not %q", in, got, want)
		}
	}
}
