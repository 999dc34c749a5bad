package bindery

import (
	"bytes"
	"os"
	"path/filepath"
	"runtime"
	"testing"
)

// TestSameBytes binds the real handbook on one processor and on eight, and from
// another folder: the bytes must not differ.
func TestSameBytes(t *testing.T) {
	content, err := filepath.Abs(realContent)
	if err != nil {
		t.Fatal(err)
	}
	before := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(before)
	one := bind(t, content, Options{})
	runtime.GOMAXPROCS(8)
	t.Chdir(t.TempDir())
	eight := bind(t, content, Options{})
	if len(one.Files) != len(eight.Files) {
		t.Fatalf("%d files and %d", len(one.Files), len(eight.Files))
	}
	for i, f := range one.Files {
		if g := eight.Files[i]; f.Path != g.Path || !bytes.Equal(f.Data, g.Data) {
			t.Errorf("%s (%d bytes) differs from %s (%d bytes)", f.Path, len(f.Data), g.Path, len(g.Data))
		}
		if bytes.Contains(f.Data, []byte(filepath.Dir(content))) {
			t.Errorf("%s holds a path of this machine", f.Path)
		}
	}
}

// TestRefusesBrokenBook checks that a book with errors is not bound.
func TestRefusesBrokenBook(t *testing.T) {
	b := loaded(t, tinyContent)
	b.Whole = false
	if _, err := Bind(b, testParts(t), Options{}); err == nil {
		t.Error("a broken book was bound")
	}
	parts := testParts(t)
	parts.Wasm = []byte("<html>")
	if _, err := Bind(loaded(t, tinyContent), parts, Options{}); err == nil {
		t.Error("a book was bound with a web page for an engine")
	}
}

// TestWrittenFolder writes an edition and reads it back.
func TestWrittenFolder(t *testing.T) {
	e := bind(t, tinyContent, Options{})
	dir := filepath.Join(t.TempDir(), "out")
	if err := Write(e, dir); err != nil {
		t.Fatal(err)
	}
	holds(t, dir, e)
	if _, err := os.Stat(filepath.Join(dir, "index.html")); err != nil {
		t.Error(err)
	}
}
