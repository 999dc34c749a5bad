package drawing

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden drawings again")

const goldenDir = "../../testdata/drawing"

// A drawing without a file and a file without a drawing both fail, so that no
// expectation is dead.
func TestGoldens(t *testing.T) {
	all := goldens()
	for name, s := range all {
		path := filepath.Join(goldenDir, name+".svg")
		got := s.SVG()
		if *update {
			if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Errorf("%s: %v; run go test ./calcwasm/drawing -update and look at the drawing", name, err)
			continue
		}
		if got != string(want) {
			t.Errorf("%s differs from its golden file; look at both before -update", name)
		}
	}
	files, err := filepath.Glob(filepath.Join(goldenDir, "*.svg"))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if name := strings.TrimSuffix(filepath.Base(f), ".svg"); all[name] == nil {
			t.Errorf("%s has no drawing in this test; take it away", f)
		}
	}
}
