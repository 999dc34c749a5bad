package cutaway_test

import (
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"columnbowl/calcwasm/cutaway"
)

func TestLabelsStandApart(t *testing.T) {
	sheets(t, []int{1, 2, 3, 8, 30}, func(name string, _ cutaway.Pump, v cutaway.View, d cutaway.Drawing) {
		b := boxes(parse(t, d.Scene.SVG()))
		if len(b) < 4 {
			t.Errorf("%s: %d labels only", name, len(b))
		}
		for i, a := range b {
			if a.X < 0 || a.Y < 0 || a.X+a.W > d.Scene.Box.W || a.Y+a.H > d.Scene.Box.H {
				t.Errorf("%s: %s leaves the sheet", name, a.what)
			}
			for _, c := range b[:i] {
				if min(a.X+a.W, c.X+c.W)-max(a.X, c.X) > .5 && min(a.Y+a.H, c.Y+c.H)-max(a.Y, c.Y) > .5 {
					t.Errorf("%s: %q lies over %q", name, a.what, c.what)
				}
			}
		}
		if d.Scene.Box.W != float64(v.Width) || d.Scene.Width != d.Scene.Box.W {
			t.Errorf("%s: the sheet is %g px wide, so lettering is not at 1 : 1", name, d.Scene.Box.W)
		}
	})
}

func TestLeadersDoNotCross(t *testing.T) {
	side := func(a, b, c pt) float64 { return (b.x-a.x)*(c.y-a.y) - (b.y-a.y)*(c.x-a.x) }
	sheets(t, []int{1, 2, 3, 8, 30}, func(name string, _ cutaway.Pump, _ cutaway.View, d cutaway.Drawing) {
		var leaders [][]pt
		parse(t, d.Scene.SVG()).walk(func(e node) {
			if e.is("ld") {
				leaders = append(leaders, flat(e.attr("d"))[0])
			}
		})
		for i, a := range leaders {
			for _, b := range leaders[:i] {
				for k := 1; k < len(a); k++ {
					for m := 1; m < len(b); m++ {
						p, q, r, s := a[k-1], a[k], b[m-1], b[m]
						if side(p, q, r)*side(p, q, s) < -1 && side(r, s, p)*side(r, s, q) < -1 {
							t.Errorf("%s: leaders cross near %.0f %.0f", name, p.x, p.y)
						}
					}
				}
			}
		}
	})
}

// Every part of a sheet is a group of its own, named, and at every width the
// same; what stages hide is said.
func TestPartsAreGroups(t *testing.T) {
	var lists = map[string][]string{}
	sheets(t, []int{1, 8}, func(name string, p cutaway.Pump, v cutaway.View, d cutaway.Drawing) {
		ids := map[string]bool{}
		var parts []string
		parse(t, d.Scene.SVG()).walk(func(e node) {
			if id := e.attr("id"); id != "" {
				if ids[id] {
					t.Errorf("%s: id %s comes twice", name, id)
				}
				ids[id] = true
			}
			if e.is("part") {
				parts = append(parts, strings.TrimPrefix(e.attr("id"), "c-"))
				if e.is("turns") == e.is("stands") || len(e.Nodes) < 2 || e.Nodes[0].XMLName.Local != "title" || e.Nodes[0].Text == "" {
					t.Errorf("%s: the group of %s lacks motion, title or shapes", name, e.attr("id"))
				}
			}
			if e.attr("style") != "" || e.XMLName.Local == "style" {
				t.Errorf("%s: style in the drawing", name)
			}
		})
		if !slices.Equal(parts, d.Parts) {
			t.Errorf("%s: groups %v, parts %v", name, parts, d.Parts)
		}
		key := strings.Join(append([]string{p.Build, v.Sheet, strconv.Itoa(p.Stages)}, p.Options...), " ")
		if was, ok := lists[key]; ok && !slices.Equal(was, d.Parts) {
			t.Errorf("%s: other parts than at another width: %v", name, d.Parts)
		}
		lists[key] = d.Parts
		stacked := v.Sheet == cutaway.Whole && p.Stages == 8 || v.Sheet == cutaway.Bowls && p.Stages == 8
		if stacked != (d.Behind > 0) {
			t.Errorf("%s: %d stages behind the break", name, d.Behind)
		}
	})
}

// Each part of the painting order is on some sheet of some pump, and each part
// on a sheet that has a label can be found by it.
func TestEveryPartIsDrawn(t *testing.T) {
	seen := map[string]bool{}
	sheets(t, []int{3}, func(_ string, _ cutaway.Pump, _ cutaway.View, d cutaway.Drawing) {
		for _, p := range d.Parts {
			seen[p] = true
		}
	})
	for _, a := range raw(t).Assemblies {
		for _, p := range a.Parts {
			if !seen[p] {
				t.Errorf("part %s of assembly %s is on no sheet", p, a.ID)
			}
		}
	}
}

// The water runs in water: every point of the blue arrows lies in a body of
// water (or in a channel of it), from inlet to outlet, at any number of stages.
func TestWaterPathRunsInWater(t *testing.T) {
	sheets(t, []int{1, 2, 8}, func(name string, p cutaway.Pump, v cutaway.View, d cutaway.Drawing) {
		var water, arrows [][]pt
		parse(t, d.Scene.SVG()).walk(func(e node) {
			switch {
			case e.XMLName.Local == "path" && e.is("water") && !e.is("ar"):
				water = append(water, flat(e.attr("d"))...)
			case e.XMLName.Local == "path" && e.is("ar") && e.is("water") && !e.is("hd"):
				arrows = append(arrows, flat(e.attr("d"))...)
			case e.XMLName.Local == "rect" && e.is("wet"):
				x, y := e.num("x"), e.num("y")
				water = append(water, []pt{{x, y}, {x + e.num("width"), y}, {x + e.num("width"), y + e.num("height")}, {x, y + e.num("height")}})
			}
		})
		// below the lowest body the arrows stand in the well, beside it too on
		// the sheets of a motor
		low := 0.0
		for _, w := range water {
			_, hi := box(w)
			low = max(low, hi.y)
		}
		outside := 0
		for _, a := range arrows {
			for _, q := range open(a, 6) {
				wet := q.y > low
				for _, w := range water {
					wet = wet || in([][]pt{w}, q) || away(w, q) < 3
				}
				if !wet {
					outside++
				}
			}
		}
		drivers := v.Sheet == cutaway.Motor && p.Build != "submersible"
		if len(arrows) == 0 && !drivers || outside > 0 && v.Sheet != cutaway.Motors && !(v.Sheet == cutaway.Motor && p.Build == "submersible") {
			t.Errorf("%s: %d arrows, %d points of the water's path lie outside the water", name, len(arrows), outside)
		}
	})
}

// open puts points along a line that is not closed.
func open(p []pt, step float64) []pt {
	var out []pt
	for i := 1; i < len(p); i++ {
		out = append(out, dense([]pt{p[i-1], p[i]}, step)...)
	}
	return out
}

// The body of water of a bowl assembly is one closed outline on each side,
// without a gap from its lowest to its highest wall.
func TestWaterIsOneBody(t *testing.T) {
	sheets(t, []int{1, 2, 3, 30}, func(name string, _ cutaway.Pump, v cutaway.View, d cutaway.Drawing) {
		if v.Sheet != cutaway.Bowls && v.Sheet != cutaway.Stage {
			return
		}
		var bodies []string
		parse(t, d.Scene.SVG()).walk(func(e node) {
			if e.is("fl") && e.is("water") {
				bodies = append(bodies, e.attr("d"))
			}
		})
		tall := 0
		for _, b := range bodies {
			lo, hi := box(flat(b)[0])
			if hi.y-lo.y > .75*d.Scene.Box.H {
				tall++
				if strings.Count(strings.ToUpper(b), "M") != 1 || !strings.HasSuffix(strings.ToUpper(b), "Z") {
					t.Errorf("%s: a body of water is not one closed outline", name)
				}
			}
		}
		if tall != 2 {
			t.Errorf("%s: %d bodies of water reach from foot to top, not one on each side", name, tall)
		}
	})
}

// Seen from above the shaft turns anticlockwise: the front of a turn arrow, low
// on the sheet, passes from left to right.
func TestTurnArrows(t *testing.T) {
	n := 0
	sheets(t, []int{2}, func(name string, _ cutaway.Pump, v cutaway.View, d cutaway.Drawing) {
		parse(t, d.Scene.SVG()).walk(func(e node) {
			if !e.is("ar") || !e.is("turn") || e.is("hd") {
				return
			}
			p := flat(e.attr("d"))[0]
			low := 0
			for i, q := range p {
				if q.y > p[low].y {
					low = i
				}
			}
			if v.Sheet == cutaway.Column && len(p) > 24 {
				return // the circle in the cut across
			}
			n++
			if low == 0 || low == len(p)-1 || p[low+1].x <= p[low-1].x {
				t.Errorf("%s: the shaft turns the wrong way", name)
			}
		})
	})
	if n == 0 {
		t.Error("no turn arrow on any sheet")
	}
}

var classes = regexp.MustCompile(`class="([^"]*)"`)

// Each class of a drawing has ink, and lettering is never under 12 px.
func TestClassesHaveInk(t *testing.T) {
	css, err := os.ReadFile("../../site/styles/cutaway.css")
	if err != nil {
		t.Fatal(err)
	}
	known := string(css)
	free := []string{"fig", "fluids", "assembly", "stands", "breaks", "path", "axes", "labels", "e", "m", "follow-water", "follow-oil", "rest", "turns"}
	seen := map[string]bool{}
	sheets(t, []int{8}, func(_ string, _ cutaway.Pump, _ cutaway.View, d cutaway.Drawing) {
		for _, m := range classes.FindAllStringSubmatch(d.Scene.SVG(), -1) {
			for _, c := range strings.Fields(m[1]) {
				seen[c] = true
			}
		}
	})
	for c := range seen {
		if !slices.Contains(free, c) && !regexp.MustCompile(`\.`+c+`\b`).MatchString(known) {
			t.Errorf("class %s has no rule in cutaway.css", c)
		}
	}
	for _, m := range regexp.MustCompile(`text\.c[nsb][^{]*\{[^}]*?([0-9.]+)px`).FindAllStringSubmatch(known, -1) {
		if number(m[1]) < 12 {
			t.Errorf("lettering of %s px", m[1])
		}
	}
}

func TestHiddenLabelsTellNothing(t *testing.T) {
	s, w := shapes(t), words(t)
	d := s.Draw(cutaway.Pump{Stages: 3}, cutaway.View{Prefix: "q", Sheet: cutaway.Bowls, Width: 768, Labels: cutaway.Hidden, Words: w})
	n := 0
	parse(t, d.Scene.SVG()).walk(func(e node) {
		if !e.is("part") {
			return
		}
		if e.Nodes[0].XMLName.Local == "title" {
			t.Errorf("%s has a title", e.attr("id"))
		}
		if l := e.attr("aria-label"); l != "" {
			n++
			if ok, _ := regexp.MatchString(`^part \d+, (turns|stands still), between \d+ and \d+$`, l); !ok {
				t.Errorf("neutral name %q", l)
			}
		}
	})
	if n < 8 || len(boxes(parse(t, d.Scene.SVG()))) > 1 {
		t.Errorf("%d neutral names, %d words", n, len(boxes(parse(t, d.Scene.SVG()))))
	}
}

// Whatever a caller asks for, something sound is drawn, and the same twice.
func TestAnyPumpDraws(t *testing.T) {
	s, w := shapes(t), words(t)
	bad := []float64{0, -1, .01, .2, .7, 99, math.NaN(), math.Inf(1)}
	for i, size := range bad {
		for k, build := range append([]string{"", "unknown"}, builds...) {
			if k < 2 && i > 0 {
				continue // these are drawn as one of the builds
			}
			p := cutaway.Pump{Build: build, Stages: i*7 - 5, Options: []string{"nothing"},
				Sizes: cutaway.Sizes{Column: size, BowlShaft: size, LineShaft: size, Tube: size}, Levels: cutaway.Levels{Known: true, Static: size, Pumping: 3, Setting: 9}}
			for _, sheet := range append([]string{"none"}, cutaway.Sheets(build)...) {
				v := cutaway.View{Prefix: "a", Sheet: sheet, Width: 500 * i, Words: w}
				d := s.Draw(p, v)
				if err := d.Scene.Check(); err != nil {
					t.Error(err)
				}
				one := d.Scene.SVG()
				if strings.Contains(one, "data-left-out") || strings.Contains(one, "NaN") {
					t.Errorf("%s %s at %g: a shape was left out", build, sheet, size)
				}
				again := s.Draw(p, v)
				if one != again.Scene.SVG() {
					t.Errorf("%s %s differs from run to run", build, sheet)
				}
			}
		}
	}
}
