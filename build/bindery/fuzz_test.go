package bindery

import (
	"strings"
	"testing"
)

// FuzzMarker: only a marker that the tool itself writes lets it replace a
// folder, and every file that it lists is found in it again.
func FuzzMarker(f *testing.F) {
	f.Add(string(edition("x").marker()))
	f.Add(markerHead + "\nbook: \nform: folder\n\n\n")
	f.Add(markerHead)
	f.Add("")
	f.Fuzz(func(t *testing.T, text string) {
		m, ok := readMarker([]byte(text))
		if !ok {
			return
		}
		if !strings.HasPrefix(text, markerHead+"\nbook: "+m.BookID+"\nform: "+m.Form) || !m.Files[Marker] {
			t.Errorf("%q was taken for %+v", text, m)
		}
	})
}
