package serve

import (
	"bytes"
	"fmt"
	"testing"

	"columnbowl/build/proof"
)

// BenchmarkEdit is what an author waits for after a change of the handbook's own
// text, less the look at the folder (lookOften and settling) and the browser:
// the content is loaded, what was changed is proved, and the page is made. The
// budget for all of it together is 150 ms.
func BenchmarkEdit(b *testing.B) {
	const file = "terms/total-head.md"
	content, err := NewFolder("../../content").Content()
	if err != nil {
		b.Fatal(err)
	}
	s, err := New(Options{Content: nil, Parts: parts(b)})
	if err != nil {
		b.Fatal(err)
	}
	first := content[file]
	for i := 0; i == 0 || b.Loop(); i++ { // the first one finds nothing kept, and is not counted
		content[file] = bytes.Replace(first, []byte("\n---\n"), fmt.Appendf(nil, "\n---\nHerons stand %d. ", i), 1)
		made, found := s.reader.Load(content)
		found = append(found, proof.CheckFiles(made, map[string]bool{file: true})...)
		if found.Errors() > 0 {
			b.Fatal(found)
		}
		next, _, err := s.prepare(made, content)
		if err != nil {
			b.Fatal(err)
		}
		if page, ok, err := next.draft.File("terms/total-head.html"); !ok || err != nil || !bytes.Contains(page, fmt.Appendf(nil, "Herons stand %d.", i)) {
			b.Fatal(ok, err)
		}
	}
}
