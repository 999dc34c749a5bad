package cutaway_test

import (
	"encoding/xml"
	"fmt"
	"slices"
	"strings"
	"testing"

	"columnbowl/calcwasm/cutaway"
	"columnbowl/calcwasm/drawing"
)

// node is an element of a drawing as a reader of the SVG finds it.
type node struct {
	XMLName xml.Name
	Attrs   []xml.Attr `xml:",any,attr"`
	Nodes   []node     `xml:",any"`
	Text    string     `xml:",chardata"`
}

func (n node) attr(name string) string {
	for _, a := range n.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func (n node) num(name string) float64 { return number(n.attr(name)) }

func (n node) is(class string) bool { return slices.Contains(strings.Fields(n.attr("class")), class) }

func (n node) walk(f func(node)) {
	f(n)
	for _, c := range n.Nodes {
		c.walk(f)
	}
}

func parse(t testing.TB, svg string) node {
	t.Helper()
	var n node
	if err := xml.Unmarshal([]byte(svg), &n); err != nil {
		t.Fatal(err)
	}
	return n
}

// sheets draws sheets over builds, widths, stages and options.
func sheets(t *testing.T, stages []int, f func(name string, p cutaway.Pump, v cutaway.View, d cutaway.Drawing)) {
	s, w := shapes(t), words(t)
	others := [][]string{nil, {"bell", "semi-open", "key", "flanged", "mech-seal", "gear", "water-filled", "nipple", "pitless"}, {"strainer", "both-rings", "double-seal", "taper-up", "solid-shaft"}}
	for _, build := range builds {
		for _, sheet := range cutaway.Sheets(build) {
			for _, width := range []int{360, 768, 1280} {
				for k, n := range stages {
					if sheet != cutaway.Whole && sheet != cutaway.Bowls && k < len(stages)-1 {
						continue // only these two depend on the number of stages
					}
					for i, o := range others {
						if i > 0 && (k < len(stages)-1 || width == 1280) {
							continue // options do not depend on the number of stages
						}
						p := cutaway.Pump{Build: build, Stages: n, Options: o}
						v := cutaway.View{Prefix: "c", Sheet: sheet, Width: width, Words: w, Follow: []string{"water", "oil"}}
						f(fmt.Sprintf("%s %s %d px, %d stages, options %d", build, sheet, width, n, i), p, v, s.Draw(p, v))
					}
				}
			}
		}
	}
}

// wordBox is the box of words or of a balloon.
type wordBox struct {
	drawing.Box
	what string
}

func boxes(n node) []wordBox {
	var out []wordBox
	n.walk(func(e node) {
		switch {
		case e.XMLName.Local == "circle" && e.is("bal"):
			r := e.num("r")
			out = append(out, wordBox{drawing.Box{X: e.num("cx") - r, Y: e.num("cy") - r, W: 2 * r, H: 2 * r}, "balloon"})
		case e.XMLName.Local == "text" && (e.is("cn") || e.is("cs")):
			size := 16.0
			if e.is("cs") {
				size = 12.5
			}
			b := drawing.Text{Words: e.Text}.Bounds()
			w := b.W * size / 14
			x := e.num("x")
			if e.is("e") {
				x -= w
			} else if e.is("m") {
				x -= w / 2
			}
			out = append(out, wordBox{drawing.Box{X: x, Y: e.num("y") - .72*size, W: w, H: .92 * size}, e.Text})
		}
	})
	return out
}
