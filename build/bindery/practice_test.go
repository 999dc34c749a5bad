package bindery

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"fmt"
	"html"
	"regexp"
	"strings"
	"sync"
	"testing"

	"columnbowl/calcwasm/answer"
	"columnbowl/site"
)

// sheetReply and keyReply are what a page reads of the engine's replies.
type sheetReply struct {
	Error    string
	Name     string
	Level    int
	Facts    []struct{ ID, Text string }
	Cautions []string
	Items    []struct {
		Kind, Ask, Term, Unit string
		Options, Names        []string
	}
}

type keyReply struct {
	Items []struct {
		Right, Say string
		Steps      []string
	}
}

var factSpan = regexp.MustCompile(`<span class="fact" data-fact="([^"]+)">([^<]*)</span>`)

// practised makes the work of the real book ready, with its exercises drawn. The
// book is read and proved once for all tests of this file.
func practised(t *testing.T) *work {
	t.Helper()
	practisedOnce.Do(func() {
		w, err := prepare(loaded(t, realContent), testParts(t).Shells)
		if err == nil {
			err = w.preparePractice()
		}
		if err != nil {
			t.Fatal(err)
		}
		practisedWork = w
	})
	if practisedWork == nil {
		t.Fatal("the book could not be made ready")
	}
	return practisedWork
}

var (
	practisedOnce sync.Once
	practisedWork *work
)

// TestPrintedSheetsAreTheEngines: on every page of an exercise stand the facts,
// the cautions, what is asked and the whole key that the page's engine, which
// has only the pack, gives for the same seed.
func TestPrintedSheetsAreTheEngines(t *testing.T) {
	w := practised(t)
	b := w.book
	desk, err := answer.Open(b.Engine.Pack())
	if err != nil {
		t.Fatal(err)
	}
	if err := desk.Practise(w.practice.set.Pack()); err != nil {
		t.Fatal(err)
	}
	for _, e := range w.practice.order {
		view, err := w.exerciseView(e)
		if err != nil {
			t.Fatal(err)
		}
		page := view.(*site.Exercise)
		ask := func(what string, into any) {
			if err := json.Unmarshal(desk.Answer(fmt.Appendf(nil, "%s\t%s\t%s", what, e.ID, page.Seed)), into); err != nil {
				t.Fatalf("%s: %v", e.ID, err)
			}
		}
		var sheet sheetReply
		var key keyReply
		ask("sheet", &sheet)
		ask("key", &key)
		if sheet.Error != "" || sheet.Name != page.Name || sheet.Level != page.Level || len(sheet.Items) != len(page.Items) || len(key.Items) != len(page.Items) {
			t.Errorf("%s: the engine's sheet is %q, level %d, %d items (%s)", e.ID, sheet.Name, sheet.Level, len(sheet.Items), sheet.Error)
			continue
		}
		checkGiven(t, page, &sheet)
		for i := range page.Items {
			if got, want := printed(&page.Items[i]), living(&sheet, &key, i); got != want {
				t.Errorf("%s, item %d\nprinted %s\nengine  %s", e.ID, i+1, got, want)
			}
		}
	}
}

// checkGiven compares facts and cautions. Every fact that is written on the page
// must be the engine's; a choice that only steers the sheet need not be written.
func checkGiven(t *testing.T, page *site.Exercise, sheet *sheetReply) {
	t.Helper()
	facts := map[string]string{}
	for _, f := range sheet.Facts {
		facts[f.ID] = f.Text
	}
	for _, m := range factSpan.FindAllStringSubmatch(string(page.Text), -1) {
		if want, ok := facts[m[1]]; !ok || html.UnescapeString(m[2]) != want || want == "" {
			t.Errorf("%s: %s is printed as %q, the engine says %q", page.ID, m[1], m[2], want)
		}
	}
	if strings.ContainsAny(string(page.Text), "{}") {
		t.Errorf("%s: a fact is not filled in: %s", page.ID, page.Text)
	}
	if strings.Join(page.Cautions, "\n") != strings.Join(sheet.Cautions, "\n") {
		t.Errorf("%s: the cautions differ: %q and %q", page.ID, page.Cautions, sheet.Cautions)
	}
}

func printed(it *site.ExerciseItem) string {
	var options []string
	for _, o := range it.Options {
		options = append(options, o.Text)
	}
	right, _, _ := strings.Cut(it.Right, ": ")
	return fmt.Sprintf("%s|%s|%s|%q|%s|%s|%q", it.Kind, it.Ask, it.Unit, options, right, it.Say, it.Steps)
}

func living(sheet *sheetReply, key *keyReply, i int) string {
	it, k := &sheet.Items[i], &key.Items[i]
	return fmt.Sprintf("%s|%s|%s|%q|%s|%s|%q", it.Kind, it.Ask, it.Unit, append(it.Options, it.Names...), k.Right, k.Say, k.Steps)
}

// TestCardsAndProgress: every term and part has a card with something on it, the
// cards stay within their budget, and chapters count only what there is.
func TestCardsAndProgress(t *testing.T) {
	w := practised(t)
	cards, err := w.cardsView()
	if err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	deck := cards.(*site.Cards)
	var zipped bytes.Buffer
	z := gzip.NewWriter(&zipped)
	if err := w.shells.Write(z, deck); err != nil {
		t.Fatal(err)
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	const budget = 80_000
	if zipped.Len() > budget {
		t.Errorf("the cards weigh %d bytes packed, %d are allowed", zipped.Len(), budget)
	}
	for _, c := range append(deck.Terms, deck.Parts...) {
		if len(c.Says) < 10 || known[c.ID] {
			t.Errorf("the card %s says %q", c.ID, c.Says)
		}
		known[c.ID] = true
	}
	if len(known) != len(w.book.Terms)+len(w.book.Parts) {
		t.Errorf("%d cards for %d terms and %d parts", len(known), len(w.book.Terms), len(w.book.Parts))
	}
	progress, err := w.progressView()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range progress.(*site.Progress).Chapters {
		if len(c.Of) == 0 {
			t.Errorf("the chapter %s speaks of nothing", c.ID)
		}
		for _, id := range c.Of {
			if !known[id] {
				t.Errorf("the chapter %s counts %s, which has no card", c.ID, id)
			}
		}
	}
}
