package drawing

import (
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// The style sheet gives the entries of the rail the measures that the layout
// counts with.
func TestRailSpotsInStyleSheet(t *testing.T) {
	css, err := os.ReadFile("../../site/styles/rail.css")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		what string
		box  Box
	}{{".place rect", railSpot}, {".subs rect", subSpot}} {
		got := Box{X: measure(string(css), c.what, "x"), W: measure(string(css), c.what, "width"), H: measure(string(css), c.what, "height")}
		if got != c.box {
			t.Errorf("rail.css gives %s %v, the drawing counts with %v", c.what, got, c.box)
		}
	}
	if r := measure(string(css), ".place circle", "r"); r != balloonR {
		t.Errorf("rail.css gives balloons the radius %g, the drawing counts with %g", r, balloonR)
	}
}

// measure is a length in px that the rules of a selector set, or -999.
func measure(css, selector, property string) float64 {
	set := regexp.MustCompile(`\n  ` + property + `: (-?[\d.]+)px;`)
	for rule := range strings.SplitSeq(css, "}") {
		name, body, _ := strings.Cut(rule, "{")
		if m := set.FindStringSubmatch(body); m != nil && strings.Contains(name, selector) {
			v, _ := strconv.ParseFloat(m[1], 64)
			return v
		}
	}
	return -999
}
