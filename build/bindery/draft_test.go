package bindery

import (
	"bytes"
	"io/fs"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"columnbowl/build/book"
)

// contentOf takes a content folder into memory, so that a test can edit it.
func contentOf(t *testing.T, dir string) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	disk := os.DirFS(dir)
	err := fs.WalkDir(disk, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(disk, name)
		files[name] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// TestDraftKeepsBytes edits the handbook step by step. What is made after an
// edit, with what the binding before has left, must have the bytes of a binding
// that knows of nothing: some files after every edit, all of them at the end.
func TestDraftKeepsBytes(t *testing.T) {
	content := contentOf(t, realContent)
	parts := testParts(t)
	keep, reader := &Keep{}, &book.Reader{}
	edits := []struct{ file, old, new string }{
		{"terms/total-head.md", "\n---\n", "\n---\nA sentence more. "},
		{"terms/pumping-level.md", "static-level + drawdown", "drawdown + static-level"},
		{"parts/head-shaft.md", "name: Head shaft", "name: Top head shaft"},
		{"exercises/chain-of-three.md", "name: ", "name: Another "},
	}
	look := []string{termPath("total-head"), termPath("pumping-level"), partPath("head-shaft"), exercisePath("chain-of-three"), practicePath, namesScript}
	for i, e := range edits {
		text := string(content[e.file].Data)
		if !strings.Contains(text, e.old) {
			t.Fatalf("%s has no %q", e.file, e.old)
		}
		content[e.file] = &fstest.MapFile{Data: []byte(strings.Replace(text, e.old, e.new, 1))}
		again, _ := reader.Load(content)
		b, found := book.Load(content)
		if found.Errors() > 0 {
			t.Fatalf("%+v", found[0])
		}
		draft, fresh := prepared(t, again, parts, Options{Keep: keep}), prepared(t, b, parts, Options{})
		for _, path := range look {
			have, _, err := draft.File(path)
			want, ok, err2 := fresh.File(path)
			if err != nil || err2 != nil || !ok || !bytes.Equal(have, want) {
				t.Errorf("after %s: %s has %d bytes, want %d (%v, %v)", e.file, path, len(have), len(want), err, err2)
			}
		}
		if i == len(edits)-1 {
			whole, err := fresh.Edition()
			if err != nil {
				t.Fatal(err)
			}
			sameFiles(t, draft, whole)
		}
	}
}

func prepared(t *testing.T, b *book.Book, parts Parts, opts Options) *Draft {
	t.Helper()
	d, err := Prepare(b, parts, opts)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// sameFiles asks a draft for every file of an edition.
func sameFiles(t *testing.T, draft *Draft, whole *Edition) {
	t.Helper()
	asked := func(f File) {
		data, ok, err := draft.File(f.Path)
		if err != nil || !ok || !bytes.Equal(data, f.Data) {
			t.Errorf("%s: found %v, %v, %d bytes of %d", f.Path, ok, err, len(data), len(f.Data))
		}
	}
	for _, pages := range []bool{true, false} { // a page first, then the pictures that it shows
		for _, f := range whole.Files {
			if f.Path != workerPath && strings.HasSuffix(f.Path, ".html") == pages {
				asked(f)
			}
		}
	}
	for _, path := range []string{"", "nothing.html", "../index.html", "assets/page.js", "assets/page.000000000000.js", "drawings/oil-lubricated-bowls-360.svg", workerPath} {
		if _, ok, err := draft.File(path); ok || err != nil {
			t.Errorf("%q is no file of the edition, but was found (%v)", path, err)
		}
	}
}
