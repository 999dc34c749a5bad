package cutaway_test

import (
	"crypto/sha256"
	"encoding/hex"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"columnbowl/calcwasm/cutaway"
)

var update = flag.Bool("update", false, "write the golden drawings again")

const goldenDir = "../../testdata/cutaway"

// One small sheet of each build is kept as it is; all others by their sum, so
// that a change shows and a look at -look tells what it was.
var whole = []string{"water-lubricated column 360", "oil-lubricated tube-tension 360", "submersible head 360"}

func TestGoldens(t *testing.T) {
	s, w := shapes(t), words(t)
	var sums strings.Builder
	for _, build := range builds {
		for _, sheet := range cutaway.Sheets(build) {
			for _, width := range []int{360, 768, 1280} {
				d := s.Draw(cutaway.Pump{Build: build, Stages: 8}, cutaway.View{Prefix: "c", Sheet: sheet, Width: width, Words: w})
				svg := d.Scene.SVG()
				name := fmt.Sprintf("%s %s %d", build, sheet, width)
				sum := sha256.Sum256([]byte(svg))
				fmt.Fprintf(&sums, "%s %d bytes %s\n", name, len(svg), hex.EncodeToString(sum[:8]))
				for _, keep := range whole {
					if keep == name {
						same(t, strings.ReplaceAll(name, " ", "-")+".svg", svg)
					}
				}
			}
		}
	}
	same(t, "sums.txt", sums.String())
}

func same(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join(goldenDir, name)
	if *update {
		if err := os.MkdirAll(goldenDir, 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v; run go test ./calcwasm/cutaway -update and look at the drawing", err)
	}
	if got == string(want) {
		return
	}
	a, b := strings.Split(got, "\n"), strings.Split(string(want), "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			t.Errorf("%s differs from its golden file in line %d:\n%.120s\n%.120s\nlook at both (-look) before -update", name, i+1, a[i], b[i])
			return
		}
	}
	t.Errorf("%s differs in length from its golden file", name)
}

func BenchmarkWhole(b *testing.B) {
	s, w := shapes(b), words(b)
	n := 0
	for b.Loop() {
		n = len(s.Draw(cutaway.Pump{Build: "oil-lubricated", Stages: 8}, cutaway.View{Prefix: "c", Width: 1280, Words: w}).Scene.SVG())
	}
	b.ReportMetric(float64(n), "bytes")
}
