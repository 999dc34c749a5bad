package drawing

import (
	"strings"
	"testing"
)

// A path written in steps is the same path: added up, the steps come to the
// points again, with no error that grows.
func TestPathInSteps(t *testing.T) {
	p := NewPath("out").M(10.004, 20).L(10.5, 20).L(10.5, 22.256).H(8).V(21).C(8, 20.05, 9, 19, 10, 18.9).Q(1, 1, 2, 2).Z().M(3, 4).L(5, 3)
	p.Steps = true
	s := Scene{Prefix: "p", Box: Box{W: 30, H: 30}, Items: []Item{p}}
	want := `d="m10 20h.5v2.26h-2.5v-1.26c0-.95 1-2 2-2.1q-9-17.9-8-16.9zm-7-16l2-1"`
	if got := s.SVG(); !strings.Contains(got, want) {
		t.Errorf("written as %s, not %s", got, want)
	}
}
