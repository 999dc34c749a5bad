package bindery

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"columnbowl/build/book"
	"columnbowl/build/budget"
	"columnbowl/build/index"
	"columnbowl/build/proof"
	"columnbowl/calcwasm/search"
)

// grown is the book of three levels with n further terms and as many chapters.
// Every term follows from the one before it, so that the network is one long
// chain in pieces of ten, and every page has a sheet, examples and links.
func grown(t testing.TB, n int) fstest.MapFS {
	t.Helper()
	out := fstest.MapFS{}
	small := os.DirFS(filepath.FromSlash(tinyContent))
	err := fs.WalkDir(small, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(small, name)
		out[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	var names strings.Builder
	for i := range n {
		fmt.Fprintf(&names, "  - tier-%d\n", i)
		out[fmt.Sprintf("terms/step-%d.md", i)] = &fstest.MapFile{Data: []byte(stepPage(i))}
		out[fmt.Sprintf("chapters/tier-%d.md", i)] = &fstest.MapFile{Data: []byte(tierPage(i))}
	}
	handbook := out["handbook.yaml"]
	handbook.Data = []byte(strings.Replace(string(handbook.Data), "  - two-levels\n", "  - two-levels\n"+names.String(), 1))
	return out
}

func stepPage(i int) string {
	before, why := "", "It is measured.\n"
	if i%10 > 0 {
		before = fmt.Sprintf("step-%d", i-1)
		why = fmt.Sprintf("It stands on the [step before](term:%[1]s).\n\n```formula\nstep-%[2]d = %[1]s + drawdown\n```\n\n## Worked examples\n\n```worked One more\ngiven  %[1]s = 10 ft, drawdown = %[3]d ft\nexpect step-%[2]d = %[4]d ft\n```\n",
			before, i, i%7+1, i%7+11)
	}
	return fmt.Sprintf("---\nname: Step %d\nunit: {us: ft, si: m}\nrange: {from: -100 ft, to: 2000 ft}\nplace: column-and-shaft\nsource: \"common practice\"\n---\nStep %d is a depth of the book that has grown.\n\n%s", i, i, why)
}

func tierPage(i int) string {
	return fmt.Sprintf("---\nname: Tier %d\nplace: levels-in-the-well\naims: [Tell a step from the next.]\ntakeaway: [Every step is deeper.]\n---\nTier %d is about [step %d](term:step-%d).\n\n## How deep\n\nThe [drawdown](term:drawdown) is added once more.\n", i, i, i, i)
}

// boundGrown loads, proves, indexes and binds a book that has grown, and tells
// how long that took.
func boundGrown(t testing.TB, n int) (e *Edition, x *search.Index, took time.Duration) {
	t.Helper()
	content, parts := grown(t, n), testParts(t)
	start := time.Now()
	b, found := book.Load(content)
	more, _ := proof.Check(b)
	if found = append(found, more...).Place(b.Files); found.Errors() > 0 {
		t.Fatalf("the book of %d terms has %d errors, the first: %s:%d: %s", n, found.Errors(), found[0].File, found[0].Line, found[0].Message)
	}
	e, err := Bind(b, parts, Options{})
	if err != nil {
		t.Fatal(err)
	}
	took = time.Since(start)
	if x, err = search.Unpack(string(index.Search(b))); err != nil {
		t.Fatal(err)
	}
	return e, x, took
}

func TestABookThatHasGrown(t *testing.T) {
	const n = 300
	e, x, _ := boundGrown(t, n)
	for _, path := range []string{"terms/step-299.html", "chapters/tier-299.html"} {
		page, ok := e.File(path)
		if !ok || !strings.Contains(string(page), "299") {
			t.Errorf("%s is missing or empty", path)
		}
	}
	found := x.Find("step 299", 20)
	if len(found) == 0 || !strings.Contains(fmt.Sprint(found[0]), "tep 299") {
		t.Errorf("“step 299” finds %v", found)
	}
}

// BenchmarkGrown binds books of 50 and of 5,000 terms and as many chapters, which
// are 10,000 pages: a hundred times the chapters may take 110 times as long, and
// less than 1 GiB of memory.
func BenchmarkGrown(b *testing.B) {
	const few, many = 50, 5000
	var little, much, key time.Duration
	var memory runtime.MemStats
	for b.Loop() {
		_, _, little = boundGrown(b, few)
		e, x, took := boundGrown(b, many)
		much = took
		runtime.ReadMemStats(&memory)
		start := time.Now()
		x.Find("step 4999", 20)
		key = time.Since(start)
		runtime.KeepAlive(e)
	}
	fmt.Println()
	fmt.Println(budget.Line("load, proof and bind 100 times the chapters", much.Seconds()/little.Seconds(), "times", fmt.Sprintf("%.0f ms", little.Seconds()*1e3), 110))
	fmt.Println(budget.Line("  its memory", float64(memory.Sys)/(1<<20), "MiB", "", 1024))
	fmt.Println(budget.Line("a search among 10,000 terms and chapters", key.Seconds()*1e3, "ms", "", 16))
}
