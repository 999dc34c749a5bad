package book_test

import (
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/rogpeppe/go-internal/txtar"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
)

// small is the small book that the cases of testdata/proof change.
func small(t testing.TB) fstest.MapFS {
	t.Helper()
	a, err := txtar.ParseFile("../../testdata/proof/good.txtar")
	if err != nil {
		t.Fatal(err)
	}
	files := fstest.MapFS{}
	for _, f := range a.Files {
		if f.Name != "errors" {
			files[f.Name] = &fstest.MapFile{Data: f.Data}
		}
	}
	return files
}

func TestModel(t *testing.T) {
	b, found := book.Load(small(t))
	if len(found) > 0 {
		t.Fatalf("%+v", found)
	}
	lift := b.TermByID["pumping-level"]
	if lift == nil || b.Terms[lift.Index] != lift || b.Engine.Terms[lift.Index].ID != "pumping-level" {
		t.Fatalf("the term pumping-level is %+v", lift)
	}
	if lift.Name != "Pumping level" || lift.To != "3000 ft" || lift.KindWord != book.Quantity || !slices.Equal(lift.Also, []string{"dynamic level"}) {
		t.Errorf("its title was read as %+v", lift)
	}
	if s := lift.Where("range.to"); string(lift.Doc.Source[s.Off:s.Off+s.Len]) != "3000 ft" {
		t.Errorf("range.to stands at %+v", s)
	}
	if s := lift.Where("also.0"); string(lift.Doc.Source[s.Off:s.Off+s.Len]) != "dynamic level" {
		t.Errorf("also.0 stands at %+v", s)
	}
	if h := b.Handbook; len(h.Chain) != 1 || h.ChainFacts[1] != (book.Fact{Term: "drawdown", Text: "55 ft"}) {
		t.Errorf("the handbook was read as %+v", h)
	}
	if part := b.PartByID["head-shaft"]; part.Pressure != "no" || part.Neighbours.Below[0] != "line-shaft" {
		t.Errorf("the part was read as %+v", part)
	}
}

// Each block of the engine's Source names the block of the page it came from.
func TestBlocks(t *testing.T) {
	b, _ := book.Load(small(t))
	if len(b.Blocks) != len(b.Source.Blocks) || len(b.Blocks) == 0 {
		t.Fatalf("%d places for %d blocks", len(b.Blocks), len(b.Source.Blocks))
	}
	for i, s := range b.Source.Blocks {
		ref := b.Blocks[i]
		if string(s.Kind) != string(ref.Block.Kind) || s.Body != ref.Block.Body || s.Head != ref.Block.Head {
			t.Errorf("block %d of the source is not the one of %s", i, ref.Page.File)
		}
		if ref.Page.Kind == book.ChapterPage && (s.Term != "" || s.Kind != "worked") || ref.Page.Kind == book.TermPage && s.Term != ref.Page.ID {
			t.Errorf("block %d belongs to “%s”, not to %s", i, s.Term, ref.Page.File)
		}
	}
}

// Words that two pages share are kept for the search; the lists have one order.
func TestSharedWords(t *testing.T) {
	files := small(t)
	files["terms/drawdown.md"].Data = []byte(strings.Replace(string(files["terms/drawdown.md"].Data), "place:", "also: [Dynamic Level]\nplace:", 1))
	b, found := book.Load(files)
	if len(found) > 0 {
		t.Fatalf("%+v", found)
	}
	if got := b.Shared["dynamic level"]; !slices.Equal(got, []string{"drawdown", "pumping-level"}) {
		t.Errorf("“dynamic level” is shared by %v", got)
	}
	if !slices.IsSortedFunc(b.Terms, func(x, y *book.Term) int { return strings.Compare(x.ID, y.ID) }) {
		t.Error("the terms are not in the order of their ids")
	}
}

// Chapters come in the order of the handbook.
func TestChapterOrder(t *testing.T) {
	files := small(t)
	chapter := string(files["chapters/from-the-tape.md"].Data)
	files["chapters/a-later-one.md"] = &fstest.MapFile{Data: []byte(strings.Replace(chapter, "From the tape", "A later one", 1))}
	files["handbook.yaml"].Data = []byte(strings.Replace(string(files["handbook.yaml"].Data), "[from-the-tape]", "[from-the-tape, a-later-one]", 1))
	b, found := book.Load(files)
	if len(found) > 0 || b.Chapters[0].ID != "from-the-tape" || b.Chapters[1].ID != "a-later-one" {
		t.Errorf("%+v", found)
	}
	if q := b.Chapters[0].Doc.Blocks[1]; q.Kind != markdown.Question || q.Answer != "The drawdown." {
		t.Errorf("the question was read as %+v", q)
	}
}

// A file that cannot be read is an error with a reason, not a crash.
func TestUnreadable(t *testing.T) {
	files := small(t)
	files["terms/drawdown.md"].Mode = fs.ModeDir
	_, found := book.Load(files)
	if found.Errors() == 0 {
		t.Error("a folder with the name of a page was taken")
	}
}

// fuzzed are the files that FuzzPage puts its text into, one at a time.
var fuzzed = []string{"terms/pumping-level.md", "parts/head-shaft.md", "chapters/from-the-tape.md", "handbook.yaml", "bowls/lapwing-10.yaml"}

// FuzzPage: whatever stands in a page or in handbook.yaml, the book is loaded
// without a crash and every place is inside its file.
func FuzzPage(f *testing.F) {
	names, err := filepath.Glob("../../testdata/proof/*.txtar")
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range names {
		a, err := txtar.ParseFile(name)
		if err != nil {
			f.Fatal(err)
		}
		for _, file := range a.Files {
			for kind := range fuzzed {
				f.Add(kind, string(file.Data))
			}
		}
	}
	base := small(f)
	f.Fuzz(func(t *testing.T, kind int, src string) {
		files := maps.Clone(base)
		files[fuzzed[uint(kind)%uint(len(fuzzed))]] = &fstest.MapFile{Data: []byte(src)}
		b, found := book.Load(files)
		for _, d := range found {
			if text, ok := b.Files[d.File]; ok && d.Off > len(text) {
				t.Errorf("“%s” at %d of %d", d.Message, d.Off, len(text))
			}
		}
	})
}

// BenchmarkLoad reads the handbook's own content, from memory.
func BenchmarkLoad(b *testing.B) {
	files := fstest.MapFS{}
	size := 0
	dir := os.DirFS("../../content")
	err := fs.WalkDir(dir, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		src, err := fs.ReadFile(dir, name)
		files[name] = &fstest.MapFile{Data: src}
		size += len(src)
		return err
	})
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(size))
	for b.Loop() {
		if _, found := book.Load(files); found.Errors() > 0 {
			b.Fatalf("%d errors in the content", found.Errors())
		}
	}
}
