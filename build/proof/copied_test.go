package proof_test

import (
	"io/fs"
	"os"
	"path"
	"testing"
	"testing/fstest"

	"columnbowl/build/book"
	"columnbowl/build/proof"
	"columnbowl/build/report"
)

// An author copies the examples of the guides into the content and goes on from
// there: the book stays sound, and so do the guides.
func TestExamplesCanBeCopied(t *testing.T) {
	files := fstest.MapFS{}
	content := os.DirFS("../../content")
	err := fs.WalkDir(content, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(content, name)
		files[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	b, _ := book.Load(content)
	copied := 0
	for _, e := range b.Examples() {
		// a chapter needs its line in the handbook as well, and a build is there already
		if dir := path.Dir(e.File); dir != "chapters" && dir != book.BuildFolder {
			files[e.File] = &fstest.MapFile{Data: []byte(e.Block.Body)}
			copied++
		}
	}
	if copied < 8 {
		t.Fatalf("only %d examples", copied)
	}
	with, found := book.Load(files)
	more, _ := proof.Check(with)
	for _, d := range append(found, more...).Place(with.Files) {
		if d.Severity == report.Error {
			t.Errorf("%s:%d: %s", d.File, d.Line, d.Message)
		}
	}
}
