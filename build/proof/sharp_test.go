package proof_test

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"columnbowl/build/book"
	"columnbowl/build/proof"
)

// TestEveryNumberIsChecked changes the last digit of every expected number of
// the handbook's own examples, and wants every one of them told.
func TestEveryNumberIsChecked(t *testing.T) {
	b, found := book.Load(os.DirFS("../../content"))
	if len(found) > 0 {
		t.Fatalf("the content has %d errors: TestContent tells them", len(found))
	}
	files, changed, numbers := bumped(b)
	mutated, found := book.Load(files)
	if len(found) > 0 {
		t.Fatal(found)
	}
	list, _ := proof.Check(mutated)
	told := 0
	for _, d := range list {
		if changed[d.File][d.Off] && strings.Contains(d.Message, "is expected to be") {
			told++
			if stood := string(b.Files[d.File][d.Off : d.Off+d.Len]); d.Suggest != stood {
				t.Errorf("%s:%d: it says to write %q, where %q stood", d.File, d.Line, d.Suggest, stood)
			}
		}
	}
	if told != numbers || numbers == 0 {
		t.Errorf("%d of %d changed numbers are told", told, numbers)
	}
}

// bumped copies a book's files with the last digit of every expected number one
// higher; changed holds the offsets of the values by file.
func bumped(b *book.Book) (files fstest.MapFS, changed map[string]map[int]bool, numbers int) {
	files, changed = fstest.MapFS{}, map[string]map[int]bool{}
	for name, src := range b.Files {
		files[name] = &fstest.MapFile{Data: bytes.Clone(src)}
		changed[name] = map[int]bool{}
	}
	for i := range b.Engine.Examples {
		ex := &b.Engine.Examples[i]
		ref := b.Blocks[ex.Block]
		for _, a := range ex.Expect {
			if a.Number == "" { // a word
				continue
			}
			at := ref.Block.At(false, a.ValueOff)
			digit := &files[ref.Page.File].Data[at+strings.LastIndexAny(a.Number, "0123456789")]
			*digit = '0' + (*digit-'0'+1)%10
			changed[ref.Page.File][at] = true
			numbers++
		}
	}
	return files, changed, numbers
}
