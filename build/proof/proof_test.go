package proof_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/rogpeppe/go-internal/txtar"

	"columnbowl/build/book"
	"columnbowl/build/proof"
)

var update = flag.Bool("update", false, "write what comes out into the cases")

const casesDir = "../../testdata/proof"

// TestCases runs the cases of testdata/proof; the README there tells how one is
// made.
func TestCases(t *testing.T) {
	names, err := filepath.Glob(casesDir + "/*.txtar")
	if err != nil || len(names) == 0 {
		t.Fatalf("no cases in %s: %v", casesDir, err)
	}
	base := readCase(t, casesDir+"/good.txtar")
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			runCase(t, name, base)
		})
	}
}

func readCase(t *testing.T, name string) *txtar.Archive {
	t.Helper()
	a, err := txtar.ParseFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

const errorsFile, removeFile = "errors", "remove"

func runCase(t *testing.T, name string, base *txtar.Archive) {
	a := readCase(t, name)
	at := -1
	files := fstest.MapFS{}
	for i, f := range append(base.Files[:len(base.Files):len(base.Files)], a.Files...) {
		switch f.Name {
		case errorsFile:
			at = i - len(base.Files)
		case removeFile:
			for _, gone := range strings.Fields(string(f.Data)) {
				delete(files, gone)
			}
		default:
			files[f.Name] = &fstest.MapFile{Data: f.Data}
		}
	}
	if at < 0 {
		t.Fatalf("%s has no section “%s”", name, errorsFile)
	}
	got := errorsOf(t, files)
	if *update {
		a.Files[at].Data = got
		if err := os.WriteFile(name, txtar.Format(a), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if want := a.Files[at].Data; !bytes.Equal(got, want) {
		t.Errorf("%s tells something else (run with -update to take it)\n--- told\n%s--- expected\n%s", name, got, want)
	}
}

// errorsOf is all that loading and checking tell of a content folder.
func errorsOf(t *testing.T, files fstest.MapFS) []byte {
	t.Helper()
	b, found := book.Load(files)
	more, summary := proof.Check(b)
	var out bytes.Buffer
	if err := append(found, more...).Place(b.Files).Print(&out); err != nil {
		t.Fatal(err)
	}
	if out.Len() == 0 {
		out.WriteString("(nothing is wrong: " + summary.String() + ")\n")
	}
	return out.Bytes()
}

// Marks of unfinished text are put together here: a search of the project for
// them shall find none.
func TestUnfinished(t *testing.T) {
	base := readCase(t, casesDir+"/good.txtar")
	files := fstest.MapFS{}
	for _, f := range base.Files {
		files[f.Name] = &fstest.MapFile{Data: f.Data}
	}
	part := files["parts/head-shaft.md"]
	text := "TO" + "DO, Lo" + "rem, place" + "holder and “t" + "bd”, but not t" + "bds, to do, nor xx" + "xl."
	part.Data = []byte(string(part.Data) + "\n" + text + "\n")
	found, _ := proof.Check(mustLoad(t, files))
	var got []string
	for _, d := range found {
		got = append(got, string(part.Data[d.Off:d.Off+d.Len]))
	}
	if want := "TO" + "DO Lo" + "rem place" + "holder t" + "bd"; strings.Join(got, " ") != want {
		t.Errorf("found %q, want %q", got, want)
	}
}

func mustLoad(t *testing.T, files fstest.MapFS) *book.Book {
	t.Helper()
	b, found := book.Load(files)
	if len(found) > 0 {
		t.Fatal(found)
	}
	return b
}

// The handbook's own content is proofed here too, so that “go test” alone finds
// a wrong number.
func TestContent(t *testing.T) {
	b, found := book.Load(os.DirFS("../../content"))
	more, _ := proof.Check(b)
	var out strings.Builder
	if err := append(found, more...).Place(b.Files).Print(&out); err != nil {
		t.Fatal(err)
	}
	if out.Len() > 0 {
		t.Error("\n" + out.String())
	}
}

// BenchmarkCheck proofs the handbook's own content.
func BenchmarkCheck(b *testing.B) {
	bk, _ := book.Load(os.DirFS("../../content"))
	numbers := 0
	for b.Loop() {
		_, s := proof.Check(bk)
		numbers = s.Numbers
	}
	b.ReportMetric(float64(numbers), "numbers")
}
