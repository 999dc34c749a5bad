package index_test

import (
	"bytes"
	"compress/gzip"
	"os"
	"strings"
	"testing"

	"columnbowl/build/book"
	"columnbowl/build/index"
	"columnbowl/calcwasm/search"
)

func handbook(t testing.TB) *book.Book {
	t.Helper()
	b, found := book.Load(os.DirFS("../../content"))
	if found.Errors() > 0 {
		t.Fatalf("the content has errors, the first: %s:%d: %s", found[0].File, found[0].Line, found[0].Message)
	}
	return b
}

func zipped(t testing.TB, data []byte) int {
	t.Helper()
	var b bytes.Buffer
	z, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := z.Write(data); err != nil {
		t.Fatal(err)
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Len()
}

func opened(t testing.TB) (*search.Index, []byte) {
	t.Helper()
	pack := index.Search(handbook(t))
	x, err := search.Unpack(string(pack))
	if err != nil {
		t.Fatal(err)
	}
	return x, pack
}

// What the book has can be found, and comes first where it should.
func TestFindInTheHandbook(t *testing.T) {
	x, pack := opened(t)
	t.Logf("%d pages to find, %d bytes, %d compressed", x.Len(), len(pack), zipped(t, pack))
	if n := zipped(t, pack); n > 80_000 {
		t.Errorf("the index has %d bytes compressed, more than the 80,000 that a page should load", n)
	}
	cases := []struct{ query, want string }{
		{"drawdown", "term drawdown name"},
		{"draw down", "term drawdown name"},
		{"drawdwon", "term drawdown name"},
		{"drawd", "term drawdown name"},
		{"static lev", "term static-level name"},
		{"pumping levels", "term pumping-level name"},
		{"TDH", "term field-head also"},
		{"water level", "term pumping-level also"},
		{"head shaft", "part head-shaft name"},
		{"headshaft", "part head-shaft name"},
		{"eficiency of the motor", "term motor-efficiency also"},
		{"brake horsepower", "term brake-power also"},
		{"vapor pressure", "term vapour-pressure also"},
		{"langelier", "term saturation-index also"},
		{"pressure for 60 psi at 400 gpm", ""},
		{"static level 180 ft", "term static-level name"},
		{"8 in pipe size", "term pipe-size name"},
		{"pump setting 240 ft", "term setting also"},
		{"η_b", "term bowl-efficiency also"},
		{"suction", "place suction name"},
		{"the", ""},
	}
	for _, c := range cases {
		list := x.Find(c.query, 10)
		if c.want == "" {
			continue
		}
		if len(list) == 0 {
			t.Errorf("%q: nothing found, want %s", c.query, c.want)
			continue
		}
		f := list[0]
		if got := f.Kind + " " + f.ID + " " + f.Why.String(); got != c.want {
			t.Errorf("%q: %s (%s) comes first, want %s", c.query, got, f.Match, c.want)
		}
	}
}

// Pairs, tables and guides are found by what they are about.
func TestFurtherPagesAreFound(t *testing.T) {
	x, _ := opened(t)
	for _, c := range []struct{ query, kind, id, href string }{
		{"field head or total head", "pair", "field-head-total-head", "pairs/field-head-total-head.html"},
		{"materials against water", "choices", "materials", "choices/materials.html"},
		{"which build and lubrication", "choices", "lubrication", "choices/lubrication.html"},
		{"readings of a field test", "faults", "field-test", "faults/field-test.html"},
		{"trainers", "guide", "trainers", "guides/trainers.html"},
		{"course plan", "guide", "trainers", "guides/trainers.html"},
	} {
		found := false
		for _, f := range x.Find(c.query, 6) {
			found = found || f.Kind == c.kind && f.ID == c.id && x.Href(f.Page) == c.href && x.First(f.Page) != ""
		}
		if !found {
			t.Errorf("%q does not find %s %s among the first: %v", c.query, c.kind, c.id, x.Find(c.query, 6))
		}
	}
}

// A section tells the chapter that it stands in.
func TestSectionsTellTheirChapter(t *testing.T) {
	x, _ := opened(t)
	for _, f := range x.Find("why stages", 12) {
		if f.Kind == "section" && f.ID == "how-a-turbine-pump-lifts-water" {
			if got := x.First(f.Page); got != "How a turbine pump lifts water" {
				t.Errorf("the section tells %q", got)
			}
			return
		}
	}
	t.Error("the section is not found")
}

// Every name and every other name finds its page among the first, and what two
// pages share finds both.
func TestEveryNameIsFound(t *testing.T) {
	b := handbook(t)
	x, _ := opened(t)
	among := func(query string, n int, kind, id string) bool {
		for _, f := range x.Find(query, n) {
			if f.Kind == kind && f.ID == id {
				return true
			}
		}
		return false
	}
	for _, p := range b.Pages() {
		if list := x.Find(p.Name+" ", 1); len(list) == 0 || !strings.EqualFold(list[0].Name, p.Name) {
			t.Errorf("%s: its name %q finds something else first: %+v", p.File, p.Name, list)
		}
		for _, a := range p.Also {
			if !among(a, 15, p.Kind.String(), p.ID) {
				t.Errorf("%s: %q does not find it", p.File, a)
			}
		}
	}
	for word, ids := range b.Shared {
		for _, id := range ids {
			if !among(word, 15, "term", id) && !among(word, 15, "part", id) {
				t.Errorf("%q is shared by %v, and %s is not found by it", word, ids, id)
			}
		}
	}
}

// A name with one wrong letter finds its page: each letter from the third on is
// taken out in turn.
func TestNamesWithALetterLost(t *testing.T) {
	b := handbook(t)
	x, _ := opened(t)
	tried, lost := 0, 0
	for _, term := range b.Terms {
		for i := 2; i < len(term.Name)-1; i++ {
			if term.Name[i] == ' ' {
				continue
			}
			query := term.Name[:i] + term.Name[i+1:]
			tried++
			found := false
			for _, f := range x.Find(query+" ", 8) {
				found = found || f.ID == term.ID
			}
			if !found {
				lost++
				if lost <= 5 {
					t.Logf("%q does not find %s", query, term.ID)
				}
			}
		}
	}
	t.Logf("%d of %d names with a letter lost are found", tried-lost, tried)
	if lost*50 > tried {
		t.Errorf("%d of %d names with a letter lost are not found: more than 2 %%", lost, tried)
	}
}

func TestSameBytes(t *testing.T) {
	if !bytes.Equal(index.Search(handbook(t)), index.Search(handbook(t))) {
		t.Error("made twice, the index differs")
	}
}

// BenchmarkFind measures one query of each kind on the whole book; the worst is
// a misspelt word, which is compared with every stem.
func BenchmarkFind(b *testing.B) {
	x, _ := opened(b)
	for _, q := range []string{"s", "drawdown", "static water level 180 ft", "eficiensy of the mottor", "pressure head at the discharge"} {
		b.Run(strings.ReplaceAll(q, " ", "-"), func(b *testing.B) {
			for b.Loop() {
				x.Find(q, 20)
			}
		})
	}
}

func BenchmarkUnpack(b *testing.B) {
	_, pack := opened(b)
	for b.Loop() {
		if _, err := search.Unpack(string(pack)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMake(b *testing.B) {
	book := handbook(b)
	for b.Loop() {
		index.Search(book)
	}
}
