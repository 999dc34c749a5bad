package formula

import (
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"strings"
	"testing"
)

// wellFormed reads a text as XML to its end.
func wellFormed(text string) error {
	d := xml.NewDecoder(strings.NewReader(text))
	d.Strict = true
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			return nil
		} else if err != nil {
			return err
		}
	}
}

// MathML Core (W3C): mfrac, msup and msub take exactly two children.
func childrenRight(text string) string {
	d := xml.NewDecoder(strings.NewReader(text))
	var names []string
	var counts []int
	for {
		token, err := d.Token()
		if err != nil {
			return ""
		}
		switch t := token.(type) {
		case xml.StartElement:
			if len(counts) > 0 {
				counts[len(counts)-1]++
			}
			names, counts = append(names, t.Name.Local), append(counts, 0)
		case xml.EndElement:
			n, last := counts[len(counts)-1], names[len(names)-1]
			if (last == "mfrac" || last == "msup" || last == "msub") && n != 2 {
				return last + " has not two children"
			}
			names, counts = names[:len(names)-1], counts[:len(counts)-1]
		}
	}
}

func TestMathML(t *testing.T) {
	const open, shut = `<math display="block"><mrow>`, `</mrow></math>`
	for _, c := range []struct {
		scope *Scope
		style Style
		src   string
		want  string
	}{
		{trade, InWords, "total-head = field-head + column-loss",
			"<mtext>total head</mtext><mo>=</mo><mtext>field head</mtext><mo>+</mo><mtext>column loss</mtext>"},
		{trade, InLetters, "total-head = field-head + head-loss",
			"<mi>H</mi><mo>=</mo><msub><mi>H</mi><mi>f</mi></msub><mo>+</mo><mtext>head loss</mtext>"},
		{trade, InLetters, "bowl-power[hp] = capacity[gpm] / 3960",
			"<msub><msub><mi>P</mi><mi>b</mi></msub><mtext>hp</mtext></msub><mo>=</mo><mfrac><mrow><msub><mi>Q</mi><mtext>gpm</mtext></msub></mrow><mrow><mn>3960</mn></mrow></mfrac>"},
		{trade, InWords, "total-head = 2 * (setting - 5 ft)",
			"<mtext>total head</mtext><mo>=</mo><mn>2</mn><mo>×</mo><mo>(</mo><mtext>setting</mtext><mo>−</mo><mrow><mn>5</mn><mtext>\u00a0ft</mtext></mrow><mo>)</mo>"},
		{letters, InWords, "a = (b + c) ^ 2", "<mtext>a</mtext><mo>=</mo><msup><mrow><mo>(</mo><mtext>b</mtext><mo>+</mo><mtext>c</mtext><mo>)</mo></mrow><mrow><mn>2</mn></mrow></msup>"},
		{letters, InWords, "a = b - (c - d)", "<mtext>a</mtext><mo>=</mo><mtext>b</mtext><mo>−</mo><mo>(</mo><mtext>c</mtext><mo>−</mo><mtext>d</mtext><mo>)</mo>"},
		{letters, InWords, "a = b * (c / d)", "<mtext>a</mtext><mo>=</mo><mtext>b</mtext><mo>×</mo><mfrac><mrow><mtext>c</mtext></mrow><mrow><mtext>d</mtext></mrow></mfrac>"},
		{letters, InWords, "a = (b / c) ^ d", "<mtext>a</mtext><mo>=</mo><msup><mrow><mo>(</mo><mfrac><mrow><mtext>b</mtext></mrow><mrow><mtext>c</mtext></mrow></mfrac><mo>)</mo></mrow><mrow><mtext>d</mtext></mrow></msup>"},
		{letters, InWords, "a = -(b + c)", "<mtext>a</mtext><mo>=</mo><mo>−</mo><mo>(</mo><mtext>b</mtext><mo>+</mo><mtext>c</mtext><mo>)</mo>"},
		{letters, InWords, "a = sqrt(b)", "<mtext>a</mtext><mo>=</mo><msqrt><mtext>b</mtext></msqrt>"},
		{letters, InWords, "a = round-up(b)", "<mtext>a</mtext><mo>=</mo><mo>⌈</mo><mtext>b</mtext><mo>⌉</mo>"},
		{letters, InWords, "a = round-down(b)", "<mtext>a</mtext><mo>=</mo><mo>⌊</mo><mtext>b</mtext><mo>⌋</mo>"},
		{letters, InWords, "a = abs(b)", "<mtext>a</mtext><mo>=</mo><mo>|</mo><mtext>b</mtext><mo>|</mo>"},
		{letters, InWords, "a = min(b, 3)", "<mtext>a</mtext><mo>=</mo><mi>min</mi><mo>(</mo><mtext>b</mtext><mo>,</mo><mn>3</mn><mo>)</mo>"},
		{letters, InWords, "a = table(b, 0: 1, 1: 2)", "<mtext>a</mtext><mo>=</mo><mi>table</mi><mo>(</mo><mtext>b</mtext><mo>,</mo><mtext>points</mtext><mo>)</mo>"},
	} {
		got := relation(t, c.scope, c.src).MathML(c.scope, c.style)
		if got != open+c.want+shut {
			t.Errorf("%s gives\n\t%s\nshould be\n\t%s", c.src, got, open+c.want+shut)
		}
		if err := wellFormed(got); err != nil {
			t.Errorf("%s: %v in %s", c.src, err, got)
		}
		if bad := childrenRight(got); bad != "" {
			t.Errorf("%s: %s in %s", c.src, bad, got)
		}
	}
}

// A bare number in per cent is a hundred times the fraction: it has to show.
func TestMathMLShowsBarePerCent(t *testing.T) {
	got := relation(t, trade, "stages = 100 * bowl-efficiency / bowl-efficiency[%]").MathML(trade, InWords)
	if strings.Count(got, "%") != 1 {
		t.Errorf("bowl-efficiency[%%] and bowl-efficiency look alike: %s", got)
	}
}

func TestMathMLEscapesNames(t *testing.T) {
	s := NewScope([]Term{{ID: "a", Name: `loss & "gain" <net>`, Symbol: "<_&", US: mustLookup("1"), SI: mustLookup("1")}, {ID: "b", Name: "b", US: mustLookup("1"), SI: mustLookup("1")}}, nil)
	for _, style := range []Style{InWords, InLetters} {
		if got := relation(t, s, "a = b").MathML(s, style); wellFormed(got) != nil {
			t.Errorf("%s: %v", got, wellFormed(got))
		}
	}
}

// Lettered tells whether writing in letters tells more than writing in words;
// a relation with a term that has no letter is not written so.
func TestLettered(t *testing.T) {
	for src, want := range map[string]bool{
		"total-head = field-head + column-loss":             true,
		"total-head = field-head + column-loss + head-loss": false,
		"setting = static-level":                            false,
	} {
		if got := relation(t, trade, src).Lettered(trade); got != want {
			t.Errorf("%s: %v", src, got)
		}
	}
}

func TestMathPartsBreakASum(t *testing.T) {
	for _, c := range []struct {
		src  string
		want []string
	}{
		{"total-head = field-head + column-loss - head-loss", []string{"total head=field head", "+column loss", "−head loss"}},
		{"total-head = field-head - (column-loss + head-loss)", []string{"total head=field head", "−(column loss+head loss)"}},
		{"total-head = 2 * field-head", []string{"total head=2×field head"}},
		{"total-head = 2 * max(field-head, column-loss) + head-loss", []string{"total head=2", "×max(field head,", "column loss)", "+head loss"}},
		{"total-head = (field-head + column-loss) * stages", []string{"total head=(field head+column loss)×number of stages"}},
	} {
		parts := relation(t, trade, c.src).MathParts(trade, InWords)
		if len(parts) != len(c.want) {
			t.Errorf("%s: %d pieces, want %d", c.src, len(parts), len(c.want))
			continue
		}
		for i, p := range parts {
			if got := tags.ReplaceAllString(p, ""); got != c.want[i] {
				t.Errorf("%s: piece %d reads %q, want %q", c.src, i, got, c.want[i])
			}
		}
	}
}

var tags = regexp.MustCompile("<[^>]*>")
