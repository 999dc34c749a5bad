package bindery

import (
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"columnbowl/build/book"
	"columnbowl/build/proof"
	"columnbowl/site"
)

// The handbook itself, and a book of three terms for the golden pages.
const (
	realContent = "../../content"
	tinyContent = "../../testdata/bindery/content"
	goldens     = "../../testdata/bindery/golden"
)

// testParts are parts that stand in for what the bundler makes: pages do not
// depend on it.
func testParts(t testing.TB) Parts {
	t.Helper()
	shells, err := site.Shells()
	if err != nil {
		t.Fatal(err)
	}
	return Parts{
		PageScript: []byte("(()=>{})();\n"), HubScript: []byte("(()=>{})();\n"), WorkerScript: []byte("(()=>{})();\n"), Style: []byte("main{color:#000}\n"),
		Font: []byte("wOF2"), FontLicence: []byte("licence"), Wasm: []byte("\x00asm\x01\x00\x00\x00"), Shells: shells,
	}
}

// loaded reads a book that must be sound. The whole handbook takes seconds to
// load and to prove: it is read once for all tests, which only read it.
func loaded(t testing.TB, dir string) *book.Book {
	t.Helper()
	read := func() (*book.Book, error) { return sound(dir) }
	if dir == realContent {
		read = realBook
	}
	b, err := read()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

var realBook = sync.OnceValues(func() (*book.Book, error) { return sound(realContent) })

func sound(dir string) (*book.Book, error) {
	b, found := book.Load(os.DirFS(filepath.FromSlash(dir)))
	more, _ := proof.Check(b)
	if found = append(found, more...).Place(b.Files); found.Errors() > 0 {
		return nil, fmt.Errorf("%s has %d errors, the first: %s:%d: %s", dir, found.Errors(), found[0].File, found[0].Line, found[0].Message)
	}
	return b, nil
}

// bind makes an edition of a content folder.
func bind(t testing.TB, dir string, opts Options) *Edition {
	t.Helper()
	e, err := Bind(loaded(t, dir), testParts(t), opts)
	if err != nil {
		t.Fatal(err)
	}
	return e
}
