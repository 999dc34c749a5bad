package book

import (
	"strings"
	"testing"
	"testing/fstest"

	"columnbowl/calcwasm/cutaway"
)

const shapesHead = "frame: stage\nunit: D\norigin: foot\nshapes:\n"

func shapesOf(t *testing.T, shape string) (*Shapes, []string) {
	t.Helper()
	s, found := LoadShapes(fstest.MapFS{
		"builds/shapes/parts.yaml": {Data: []byte("assemblies:\n  - id: bowls\n    parts: [impeller]\nturns: [impeller]\n")},
		"builds/shapes/stage.yaml": {Data: []byte(shapesHead + shape)},
	})
	var told []string
	for _, d := range found {
		told = append(told, d.Message)
		if d.File != "builds/shapes/stage.yaml" || d.Line < 5 {
			t.Errorf("%s:%d: the place of %q", d.File, d.Line, d.Message)
		}
	}
	return s, told
}

func TestShapesTellWhatIsWrong(t *testing.T) {
	for _, c := range []struct{ shape, want string }{
		{"  - part: impeller\n    cut: hach\n    outlines: [\"M0 0L1 0L1 1Z\"]\n", "not “hach”"},
		{"  - part: impeller\n    cut: hatch\n    outlines: [\"M0 0L1 0L1 1\"]\n", "end it with Z"},
		{"  - part: impeller\n    cut: hatch\n    outlines: [\"M0 0Q1 0 1 1Z\"]\n", "M, L, C and Z"},
		{"  - part: impeller\n    cut: hatch\n    outlines: [\"M0 0L1 aZ\"]\n", "number 2 cannot be read"},
		{"  - part: impeller\n    cut: hatch\n", "lacks “outlines”"},
		{"  - part: impeller\n    cut: mark\n    anchor: [.2]\n", "two numbers"},
		{"  - part: impeller\n    cut: hatch\n    hatch: steep\n    outlines: [\"M0 0L1 0L1 1Z\"]\n", "is a number, not “steep”"},
	} {
		if _, told := shapesOf(t, c.shape); len(told) != 1 || !strings.Contains(told[0], c.want) {
			t.Errorf("%q tells %q, not %q", c.shape, told, c.want)
		}
	}
}

// What is packed is what the engine reads: the point of an outline comes back
// to a two-thousandth of the frame's unit.
func TestShapesArePacked(t *testing.T) {
	s, told := shapesOf(t, "  - part: impeller\n    cut: hatch\n    material: bronze\n    motion: turns\n    anchor: [.1, .2]\n    outlines: [\"M.1235 0L.2 0C.3 .1 .3 .2 .2 .3L-.1 .3Z\"]\n")
	if len(told) > 0 {
		t.Fatal(told)
	}
	text := s.Pack()
	if want := "m247 0h153c200 200 0 200-200 200h-600z\n"; !strings.HasSuffix(text, want) {
		t.Errorf("packed as %q", text)
	}
	if _, err := cutaway.Load(text); err != nil {
		t.Error(err)
	}
	for _, bad := range []string{"", "S\tx\n", text + "Z\n", strings.Replace(text, "m247", "q247", 1)} {
		if _, err := cutaway.Load(bad); err == nil {
			t.Errorf("%.40q loads", bad)
		}
	}
}
