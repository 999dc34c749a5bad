package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"columnbowl/calcwasm/answer"
	"columnbowl/calcwasm/exercise"
)

// TestExercisesInThePage: the page's engine, which has only the pack, draws the
// sheets and judges the answers that the native one does, byte for byte.
func TestExercisesInThePage(t *testing.T) {
	b := bookOf(t)
	set, found := b.Practice()
	if len(found) > 0 {
		t.Fatal(found[0].Message)
	}
	book, pack := b.Engine.Pack(), set.Pack()
	native, err := answer.Open(book)
	if err != nil {
		t.Fatal(err)
	}
	if err := native.Practise(pack); err != nil {
		t.Fatal(err)
	}
	p := openPage(t, book)
	p.practise(t, pack)
	rng := rand.New(rand.NewPCG(11, 12))
	for i := range set.Templates {
		tm := &set.Templates[i]
		for seed := range uint64(40) {
			sheet, why := set.Draw(tm, seed) // from the content itself, without a pack
			if sheet == nil {
				t.Fatal(why)
			}
			for _, request := range []string{"sheet", "key", "mark"} {
				request += "\t" + tm.ID + "\t" + strconv.FormatUint(seed, 10)
				if strings.HasPrefix(request, "mark") {
					request += someAnswers(sheet, rng)
				}
				want, got := native.Answer([]byte(request)), p.ask(t, request)
				if !bytes.Equal(want, got) {
					t.Fatalf("%q\nnative %s\npage   %s", request, want, got)
				}
				if !json.Valid(got) || bytes.Contains(got, []byte(`"error"`)) {
					t.Fatalf("%q: %s", request, got)
				}
			}
			if text := quoted(sheet.Situation()); !bytes.Contains(native.Answer(fmt.Appendf(nil, "sheet\t%s\t%d", tm.ID, seed)), text) {
				t.Fatalf("%s, seed %d: the pack draws other facts than the content", tm.ID, seed)
			}
		}
	}
	t.Logf("pack of the exercises: %d bytes", len(pack))
}

// quoted is the first line of a text as it stands in JSON.
func quoted(text string) []byte {
	line, _, _ := strings.Cut(text, "\n")
	return []byte(strings.ReplaceAll(line, `"`, `\"`))
}

// someAnswers answers a sheet with what mistakes give, and with other numbers.
func someAnswers(sheet *exercise.Sheet, rng *rand.Rand) string {
	var b strings.Builder
	for i := range sheet.Items {
		item := &sheet.Items[i]
		text := item.Answer
		if item.Kind == exercise.Number {
			v := item.Right
			if traces := sheet.Traces(i); len(traces) > 0 && rng.IntN(2) == 0 {
				v = traces[rng.IntN(len(traces))].Value
			} else if rng.IntN(3) == 0 {
				v *= 0.5 + rng.Float64()
			}
			text = strings.ReplaceAll(sheet.Amount(i, v), "\u00a0", " ")
		}
		fmt.Fprintf(&b, "\nanswer\t%d\t%s", i, text)
	}
	return b.String()
}
