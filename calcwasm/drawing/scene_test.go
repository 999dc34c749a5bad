package drawing

import (
	"go/parser"
	"go/token"
	"math"
	"os"
	"slices"
	"strings"
	"testing"
)

func TestAllDrawingsHold(t *testing.T) {
	for name, s := range goldens() {
		if err := s.Check(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if err := wellFormed(s); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		// words are estimated from above, so a little may seem to stick out
		if err := inside(s, 6); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if err := apart(s, 2); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if err := anyCrossing(calls(s.Items)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestNumbers(t *testing.T) {
	for _, c := range []struct {
		in   float64
		want string
	}{{0, "0"}, {math.Copysign(0, -1), "0"}, {-0.004, "0"}, {1.005, "1"}, {1.006, "1.01"}, {12, "12"}, {-3.5, "-3.5"}, {2.10, "2.1"},
		{1e6, "1000000"}, {math.NaN(), "0"}, {math.Inf(1), "0"}} {
		if got := string(appendNumber(nil, c.in)); got != c.want {
			t.Errorf("%v is written %q, want %q", c.in, got, c.want)
		}
	}
}

func TestEscape(t *testing.T) {
	s := &Scene{Prefix: "p", Box: Box{0, 0, 10, 10}, Title: `a<b & "c"`, Items: []Item{
		Text{X: 1, Y: 2, Words: "5 < 6 > 4 & \x01 \xff"},
		Link{Href: `x.html?a=1&b="2"`, Items: []Item{Circle{1, 1, 1, `q"`}}}}}
	if err := wellFormed(s); err != nil {
		t.Fatal(err)
	}
	out := s.SVG()
	for _, want := range []string{"a&lt;b &amp; &quot;c&quot;", "5 &lt; 6 &gt; 4 &amp; \uFFFD \uFFFD", `href="x.html?a=1&amp;b=&quot;2&quot;"`, `class="q&quot;"`} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is missing in\n%s", want, out)
		}
	}
}

// A shape that cannot be drawn is left out and the drawing shows it.
func TestLeftOutShows(t *testing.T) {
	s := &Scene{Prefix: "p", Box: Box{0, 0, 40, 40}, Items: []Item{
		Line{X1: math.NaN(), Class: "thin"}, NewPath("out").M(0, 0).L(math.Inf(1), 2), Group{Items: []Item{Circle{1, math.NaN(), 2, ""}}}, Line{X2: 3, Class: "out"}}}
	out := s.SVG()
	if !strings.Contains(out, `data-left-out="3"`) || !strings.Contains(out, `<path class="out" d="M2 6.5H16M2 11.5H16M13 2L5 16"/>`) {
		t.Errorf("three shapes left out do not show:\n%s", out)
	}
	if strings.Contains(out, "NaN") || strings.Contains(out, "Inf") {
		t.Errorf("NaN or Inf in\n%s", out)
	}
	if err := s.Check(); err == nil || !strings.Contains(err.Error(), "shape 1") {
		t.Errorf("Check says %v, want shape 1", err)
	}
	if err := wellFormed(s); err != nil {
		t.Error(err)
	}
	if err := (&Scene{Prefix: "p"}).Check(); err == nil {
		t.Error("a scene without area passes Check")
	}
}

// Hidden or named: a drawing without title is hidden unless it holds links.
func TestTextAlternative(t *testing.T) {
	for _, c := range []struct {
		s    Scene
		want string
		not  string
	}{
		{Scene{Prefix: "a", Box: Box{0, 0, 1, 1}}, `aria-hidden="true"`, "role"},
		{Scene{Prefix: "a", Box: Box{0, 0, 1, 1}, Title: "Ladder", Desc: "343"}, `role="img" aria-labelledby="a-title" aria-describedby="a-desc"`, "hidden"},
		{Scene{Prefix: "a", Box: Box{0, 0, 1, 1}, Items: []Item{Group{Items: []Item{Link{Href: "x"}}}}}, "<a href", "hidden"},
	} {
		out := c.s.SVG()
		if !strings.Contains(out, c.want) || strings.Contains(out, c.not) {
			t.Errorf("want %s and no %s in\n%s", c.want, c.not, out)
		}
	}
}

// Every class in a drawing is in the contract, and none there is dead.
func TestClasses(t *testing.T) {
	seen := map[string]bool{}
	for name, s := range goldens() {
		for _, part := range strings.Split(s.SVG(), `class="`)[1:] {
			list, _, _ := strings.Cut(part, `"`)
			for _, c := range strings.Fields(list) {
				seen[c] = true
				if !slices.Contains(Classes, c) {
					t.Errorf("%s: class %q is not in Classes", name, c)
				}
			}
		}
	}
	for _, c := range Classes {
		if !seen[c] {
			t.Errorf("class %q is used by no drawing", c)
		}
	}
}

// Every hatch has a tile.
func TestHatches(t *testing.T) {
	for _, h := range []Hatch{HatchStill, HatchStillBack, HatchTurn, HatchPower, HatchEarth, HatchWater, HatchLoss} {
		if p, ok := h.tile(); !ok || p.w <= 0 || len(p.lines) == 0 || p.class == "" {
			t.Errorf("hatch %s has no tile", h)
		}
	}
	if _, ok := Hatch("none").tile(); ok {
		t.Error("an unknown hatch has a tile")
	}
}

// The package runs in the page: these imports only. fmt and its kin would add
// a quarter to the size of the engine.
func TestImports(t *testing.T) {
	allowed := []string{"cmp", "errors", "math", "slices", "strconv", "strings", "unicode/utf8"}
	files, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if !strings.HasSuffix(f.Name(), ".go") || strings.HasSuffix(f.Name(), "_test.go") {
			continue
		}
		tree, err := parser.ParseFile(token.NewFileSet(), f.Name(), nil, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		for _, im := range tree.Imports {
			if name := strings.Trim(im.Path.Value, `"`); !slices.Contains(allowed, name) {
				t.Errorf("%s imports %s", f.Name(), name)
			}
		}
	}
}
