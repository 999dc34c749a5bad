package search

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

var testKinds = []Kind{{"term", "terms/", ".html", false}, {"part", "parts/", ".html", false}, {"question", "chapters/", ".html", true}}

// wells is a small index with every kind of place for a word.
func wells(t testing.TB) *Index {
	t.Helper()
	b := NewBuilder(testKinds...)
	b.Add(Page{Kind: "term", ID: "static-level", Name: "Static level", Also: []string{"water level", "rest level"}, First: "Where the water stands."}, "Where the water stands at rest.", "A tape finds it. The setting is deeper.")
	b.Add(Page{Kind: "term", ID: "pumping-level", Name: "Pumping level", Also: []string{"water level", "lift"}}, "Where the water stands while pumping.", "static level plus drawdown")
	b.Add(Page{Kind: "term", ID: "lift", Name: "Lift"}, "From the pumping level up.", "")
	b.Add(Page{Kind: "term", ID: "lifting-gear", Name: "Lifting gear"}, "", "")
	b.Add(Page{Kind: "part", ID: "head-shaft", Name: "Head shaft"}, "", "It turns. The level of the oil is checked.")
	b.Add(Page{Kind: "question", ID: "levels", Anchor: "the-tape", Name: "From where does the pump lift the water?"}, "", "From the pumping level.")
	x, err := Unpack(string(b.Pack()))
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func ids(list []Found) string {
	var all []string
	for _, f := range list {
		all = append(all, f.ID+" "+f.Why.String())
	}
	return strings.Join(all, ", ")
}

func TestFindRanks(t *testing.T) {
	x := wells(t)
	for _, c := range []struct{ query, want string }{
		// the name itself, names that begin so, another name, a heading or definition, the text
		{"lift ", "lift name, lifting-gear name, pumping-level also, levels head"},
		{"level", "static-level name, pumping-level name, lift head, head-shaft text, levels text"},
		{"water level", "static-level also, pumping-level also, levels text"},
		{"static", "static-level name, pumping-level text"},
		{"statci level", "static-level name, pumping-level text"},
		{"draw down", "pumping-level text"},
		{"headshaft", "head-shaft name"},
		{"head-shaft", "head-shaft name"},
		{"pumps levels", "pumping-level name, lift head, levels text"},
		{"static level 180 ft", "static-level name, pumping-level text"},
		{"180 ft", ""},
		{"what is the lift", "lift name, lifting-gear name, pumping-level also, levels head"},
		{"lift zebra", "lift name, lifting-gear name, pumping-level also, levels head"},
		{"zebra", ""},
		{"", ""},
	} {
		if got := ids(x.Find(c.query, 10)); got != c.want {
			t.Errorf("%q finds %s\nwant %s", c.query, got, c.want)
		}
	}
}

func TestFindTellsWhy(t *testing.T) {
	x := wells(t)
	f := x.Find("rest lev", 1)[0]
	if f.Why != ByAlso || f.Match != "rest level" || x.Href(f.Page) != "terms/static-level.html" {
		t.Errorf("%+v", f)
	}
	f = x.Find("tape setting", 1)[0]
	if f.Why != ByBody || f.Match != "tape setting" {
		t.Errorf("%+v", f)
	}
	list := x.Find("where pump lift", 5)
	f = list[len(list)-1]
	if f.Kind != "question" || x.Href(f.Page) != "chapters/levels.html#the-tape" {
		t.Errorf("%+v", f)
	}
}

// Nothing of the index is found by chance: every page that a one-word query
// finds has a word with that stem, or one that begins so or is spelt nearly so.
func TestFindIsStableAndCut(t *testing.T) {
	x := wells(t)
	rapid.Check(t, func(t *rapid.T) {
		query := rapid.SampledFrom([]string{"l", "le", "level", "water lift", "pumping", "stati", "the"}).Draw(t, "query")
		n := rapid.IntRange(0, 6).Draw(t, "most")
		all, some := x.Find(query, 100), x.Find(query, n)
		if len(some) != min(n, len(all)) {
			t.Fatalf("%d of %d results for %d", len(some), len(all), n)
		}
		for i := range some {
			if some[i].place != all[i].place {
				t.Fatalf("result %d of %q depends on how many are asked for", i, query)
			}
		}
	})
}

// Distance agrees with the recursive definition of the optimal string alignment.
func TestDistance(t *testing.T) {
	var plain func(a, b string) int
	plain = func(a, b string) int {
		if a == "" || b == "" {
			return len(a) + len(b)
		}
		cost := 1
		if a[len(a)-1] == b[len(b)-1] {
			cost = 0
		}
		n, m := len(a)-1, len(b)-1
		d := min(plain(a[:n], b)+1, plain(a, b[:m])+1, plain(a[:n], b[:m])+cost)
		if n > 0 && m > 0 && a[n] == b[m-1] && a[n-1] == b[m] {
			d = min(d, plain(a[:n-1], b[:m-1])+1)
		}
		return d
	}
	word := rapid.StringMatching(`[abc]{0,6}`)
	rapid.Check(t, func(t *rapid.T) {
		a, b, most := word.Draw(t, "a"), word.Draw(t, "b"), rapid.IntRange(0, 3).Draw(t, "most")
		want := min(plain(a, b), most+1)
		if got := Distance(a, b, most); got != want {
			t.Fatalf("Distance(%q, %q, %d) = %d, want %d", a, b, most, got, want)
		}
	})
}

func TestSplit(t *testing.T) {
	var got []string
	for _, w := range Split("The pump's head—12.5 ft/100 ft, “naïve” η_b") {
		got = append(got, w.Text)
	}
	if s := strings.Join(got, " "); s != "the pumps head 12 5 ft 100 ft naive η b" {
		t.Errorf("%q", s)
	}
}

// A pack that is cut or changed is refused with the line, and never crashes.
func TestDamagedIndexIsRefused(t *testing.T) {
	for _, pack := range []string{"", "strange", Form, Form + "\nstems\nlevel", Form + "\nstems\n9ump 1\n",
		Form + "\npage\tterm\tx\t\tX\t\nstems\n0x 1_\n", Form + "\npage\tterm\tx\t\tX\t\nstems\n0x _0\n"} {
		if _, err := Unpack(pack); err == nil || !strings.Contains(err.Error(), "cannot be read") {
			t.Errorf("%q: error %v", pack, err)
		}
	}
}

func FuzzUnpackAndFind(f *testing.F) {
	b := NewBuilder(testKinds...)
	b.Add(Page{Kind: "term", ID: "lift", Name: "Lift", Also: []string{"rise"}}, "up", "and down")
	f.Add(string(b.Pack()), "lift")
	f.Add(Form+"\npage\tterm\tx\t\tX\t\nstems\n0x 1\n", "x 8 in")
	f.Fuzz(func(t *testing.T, pack, query string) {
		x, err := Unpack(pack)
		if err != nil {
			return
		}
		for _, found := range x.Find(query, 5) {
			if found.Page == nil || found.Why == 0 {
				t.Errorf("%+v", found)
			}
		}
	})
}
