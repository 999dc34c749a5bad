package book_test

import (
	"maps"
	"os"
	"path/filepath"
	"testing"
	"testing/fstest"

	"columnbowl/build/book"
)

// otherFiles are the kinds of files that FuzzPage leaves out, with the files of
// the handbook that a search for crashes begins with.
var otherFiles = []struct{ name, examples string }{
	{"builds/oil-lubricated.yaml", "builds/*.yaml"},
	{"builds/shapes/parts.yaml", "builds/shapes/parts.yaml"},
	{"builds/shapes/stage.yaml", "builds/shapes/s*.yaml"},
	{"choices/lubrication.yaml", "choices/*.yaml"},
	{"faults/field-test.yaml", "faults/*.yaml"},
	{"cautions.yaml", "cautions.yaml"},
	{"asking.yaml", "asking.yaml"},
	{"bowls/lapwing-10.yaml", "bowls/*.yaml"},
	{"exercises/chain-of-three.md", "exercises/c*.md"},
	{"pairs/field-head-total-head.md", "pairs/f*.md"},
	{"questions/how-big-a-pump.md", "questions/how-*.md"},
	{"guides/trainers.md", "guides/trainers.md"},
}

// FuzzFile: whatever stands in a file of the content that is no page of a term, a
// part or a chapter, the book is loaded without a crash and every place that is
// told lies inside its file.
func FuzzFile(f *testing.F) {
	for kind, o := range otherFiles {
		names, err := filepath.Glob("../../content/" + o.examples)
		if err != nil || len(names) == 0 {
			f.Fatalf("no files %s (%v)", o.examples, err)
		}
		for _, name := range names {
			text, err := os.ReadFile(name)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(kind, string(text))
		}
		f.Add(kind, "")
		f.Add(kind, "---\n: [\n---\n")
		f.Add(kind, "groups: &a\n  - *a\n")
	}
	base := small(f)
	f.Fuzz(func(t *testing.T, kind int, src string) {
		files := maps.Clone(base)
		files[otherFiles[uint(kind)%uint(len(otherFiles))].name] = &fstest.MapFile{Data: []byte(src)}
		b, found := book.Load(files)
		for _, d := range found {
			if text, ok := b.Files[d.File]; ok && d.Off > len(text) {
				t.Errorf("“%s” at %d of %d", d.Message, d.Off, len(text))
			}
		}
	})
}
