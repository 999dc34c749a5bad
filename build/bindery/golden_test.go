package bindery

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden pages anew")

// drawn finds drawings: they have goldens of their own (testdata/drawing), and
// a moved line must not change every page here.
var drawn = regexp.MustCompile(`(?s)<svg [^>]*class="(?:rail-well|strip-well|fig)[^>]*>.*?</svg>`)

// leftOut keeps the place of a drawing.
func leftOut(html []byte) string {
	return drawn.ReplaceAllStringFunc(string(html), func(s string) string {
		title, _, _ := strings.Cut(s, ">")
		return title + ">a drawing</svg>"
	})
}

// TestGolden compares every page of the tiny book. Run with -update to write
// the pages anew, and read the difference.
func TestGolden(t *testing.T) {
	e := bind(t, tinyContent, Options{})
	want := map[string]bool{}
	for _, f := range e.Files {
		if !strings.HasSuffix(f.Path, ".html") {
			continue
		}
		name := strings.ReplaceAll(f.Path, "/", "+")
		want[name] = true
		golden(t, filepath.Join(goldens, name), leftOut(f.Data))
	}
	entries, err := os.ReadDir(goldens)
	if err != nil {
		t.Fatal(err)
	}
	for _, entry := range entries {
		if !want[entry.Name()] {
			t.Errorf("the golden page %s belongs to no page: remove it", entry.Name())
		}
	}
}

func golden(t *testing.T, path, got string) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Errorf("no golden page: %v (run with -update)", err)
		return
	}
	if string(want) != got {
		t.Errorf("%s differs from its golden page (run with -update and read the difference):\n%s", path, firstDifference(string(want), got))
	}
}

func firstDifference(want, got string) string {
	w, g := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range min(len(w), len(g)) {
		if w[i] != g[i] {
			return "-" + w[i] + "\n+" + g[i]
		}
	}
	return "one is longer than the other"
}
