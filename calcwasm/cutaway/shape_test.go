package cutaway_test

import (
	"bytes"
	"compress/gzip"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"os"

	"columnbowl/build/book"
	"columnbowl/calcwasm/cutaway"
)

type pt struct{ x, y float64 }

func in(polys [][]pt, q pt) bool {
	c := false
	for _, p := range polys {
		for i, a := range p {
			b := p[(i+1)%len(p)]
			if (a.y <= q.y) != (b.y <= q.y) && q.x < a.x+(q.y-a.y)*(b.x-a.x)/(b.y-a.y) {
				c = !c
			}
		}
	}
	return c
}

// away is the distance of a point from the nearest edge of a polygon.
func away(p []pt, q pt) float64 {
	m := math.Inf(1)
	for i, a := range p {
		b := p[(i+1)%len(p)]
		dx, dy := b.x-a.x, b.y-a.y
		t := 0.0
		if l := dx*dx + dy*dy; l > 0 {
			t = min(max(((q.x-a.x)*dx+(q.y-a.y)*dy)/l, 0), 1)
		}
		m = min(m, math.Hypot(q.x-a.x-t*dx, q.y-a.y-t*dy))
	}
	return m
}

func raw(t testing.TB) *book.Shapes {
	t.Helper()
	s, found := book.LoadShapes(os.DirFS("../../content"))
	if len(found) > 0 {
		t.Fatal(found[0].File, found[0].Line, found[0].Message)
	}
	return s
}

var lines = []string{"mark", "edge", "faint", "hidden", "groove", "thread", "spring", "axis", "seam", "cable", "wire", "sheet", "arrow", "small", "turn", "wall"}

func TestAnchorsLieInside(t *testing.T) {
	for _, f := range raw(t).Frames {
		for _, s := range f.Shapes {
			if len(s.Anchor) != 2 || slices.Contains(lines, s.Cut) {
				continue
			}
			q := pt{number(s.Anchor[0]), number(s.Anchor[1])}
			if s.Half != "whole" {
				q.x = math.Abs(q.x)
			}
			ok := false
			for _, d := range s.Outlines {
				ok = ok || in(flat(d), q)
			}
			if !ok {
				t.Errorf("%s, %s: the anchor %v lies outside the outlines", f.Name, s.Part, s.Anchor)
			}
		}
	}
}

func number(s string) float64 { v, _ := strconv.ParseFloat(s, 64); return v }

func TestOutlinesDoNotCrossThemselves(t *testing.T) {
	side := func(a, b, c pt) float64 { return (b.x-a.x)*(c.y-a.y) - (b.y-a.y)*(c.x-a.x) }
	for _, f := range raw(t).Frames {
		for _, s := range f.Shapes {
			if slices.Contains(lines, s.Cut) {
				continue
			}
			for _, d := range s.Outlines {
				for _, p := range flat(d) {
					p = distinct(p)
					for i := range p {
						for j := i + 2; j < len(p); j++ {
							if (j+1)%len(p) == i {
								continue
							}
							a, b, c, e := p[i], p[(i+1)%len(p)], p[j], p[(j+1)%len(p)]
							if side(a, b, c)*side(a, b, e) < -1e-12 && side(c, e, a)*side(c, e, b) < -1e-12 {
								t.Errorf("%s, %s: the outline crosses itself near %.3f %.3f", f.Name, s.Part, a.x, a.y)
							}
						}
					}
				}
			}
		}
	}
}

func distinct(p []pt) []pt {
	out := p[:1:1]
	for _, q := range p[1:] {
		if l := out[len(out)-1]; math.Hypot(q.x-l.x, q.y-l.y) > 1e-6 {
			out = append(out, q)
		}
	}
	if l := out[len(out)-1]; len(out) > 1 && math.Hypot(out[0].x-l.x, out[0].y-l.y) < 1e-6 {
		out = out[:len(out)-1]
	}
	return out
}

// dense puts points along the edges of a polygon.
func dense(p []pt, step float64) []pt {
	var out []pt
	for i, a := range p {
		b := p[(i+1)%len(p)]
		n := max(1, int(math.Hypot(b.x-a.x, b.y-a.y)/step))
		for k := range n {
			f := float64(k) / float64(n)
			out = append(out, pt{a.x + (b.x-a.x)*f, a.y + (b.y-a.y)*f})
		}
	}
	return out
}

// face is a cut face in the place where it stands in a pump.
type face struct {
	s    book.Shape
	p    []pt
	left bool // stands on the left only
	both bool
}

func faces(f book.Frame, dy float64, words []string) []face {
	var out []face
	for _, s := range f.Shapes {
		if s.Cut != "hatch" || !fits(s.When, words) || f.Name == "plan" {
			continue
		}
		for _, d := range s.Outlines {
			p := distinct(flat(d)[0])
			for i := range p {
				p[i].y += dy
			}
			out = append(out, face{s, p, s.Half == "left", s.Half == "" || s.Half == "both"})
		}
	}
	return out
}

func fits(when string, words []string) bool {
	for _, c := range strings.Fields(when) {
		alt, not := strings.CutPrefix(c, "!")
		any := false
		for _, a := range strings.Split(alt, "|") {
			any = any || slices.Contains(words, a)
		}
		if any == not {
			return false
		}
	}
	return true
}

// standing are the cut faces of a pump, in groups that share a unit.
func standing(t *testing.T, words []string) map[string][]face {
	out := map[string][]face{}
	for _, f := range raw(t).Frames {
		switch f.Name {
		case "suction":
			out["bowls"] = append(out["bowls"], faces(f, 0, words)...)
		case "stage":
			out["bowls"] = append(append(out["bowls"], faces(f, 0, words)...), faces(f, .9, append(slices.Clip(words), "top-stage"))...)
		case "discharge":
			out["bowls"] = append(out["bowls"], faces(f, 1.8, words)...)
		case "driver":
			out["head"] = append(out["head"], faces(f, 2.97, words)...)
		case "column", "head", "submotor":
			out[f.Name] = append(out[f.Name], faces(f, 0, words)...)
		}
	}
	return out
}

// pumps are the words of pumps that show every option.
func pumps() map[string][]string {
	return map[string][]string{
		"water":   append([]string{"water-lubricated"}, usual()...),
		"oil":     append([]string{"oil-lubricated"}, usual()...),
		"sub":     append([]string{"submersible"}, usual()...),
		"other":   {"oil-lubricated", "bell", "both-rings", "double-seal", "nipple", "enclosed", "collet", "taper-up", "flanged", "packed", "solid-shaft", "water-filled"},
		"pitless": append([]string{"submersible", "pitless"}, usual()...),
		"third":   {"water-lubricated", "strainer", "bowl-ring", "single-seal", "plain-top", "semi-open", "key", "taper-down", "flanged", "mech-seal", "gear", "water-filled"},
	}
}

func usual() []string {
	var out []string
	for _, row := range cutaway.Choices {
		out = append(out, row[0])
	}
	return out
}

// No two cut faces overlap by more than the clearance that is drawn: .0035.
func TestCutFacesDoNotOverlap(t *testing.T) {
	for name, words := range pumps() {
		for where, list := range standing(t, words) {
			each(list, func(a, b face) {
				deep := max(depth(a.p, b.p), depth(b.p, a.p))
				if deep > .0035 {
					t.Errorf("%s, %s: %s and %s overlap by %.4f", name, where, a.s.Part, b.s.Part, deep)
				}
			})
		}
	}
}

func depth(a, b []pt) float64 {
	m := 0.0
	for _, q := range dense(a, .012) {
		if in([][]pt{b}, q) {
			m = max(m, away(b, q))
		}
	}
	return m
}

// each calls f for the pairs that can meet: on the same side and near.
func each(list []face, f func(a, b face)) {
	for i, a := range list {
		for _, b := range list[:i] {
			if a.both == b.both && a.left != b.left || !near(a.p, b.p) {
				continue
			}
			f(a, b)
		}
	}
}

func near(a, b []pt) bool {
	lo, hi := box(a)
	lo2, hi2 := box(b)
	return lo.x < hi2.x+.005 && lo2.x < hi.x+.005 && lo.y < hi2.y+.005 && lo2.y < hi.y+.005
}

func box(p []pt) (lo, hi pt) {
	lo, hi = p[0], p[0]
	for _, q := range p {
		lo, hi = pt{min(lo.x, q.x), min(lo.y, q.y)}, pt{max(hi.x, q.x), max(hi.y, q.y)}
	}
	return lo, hi
}

// Faces that touch differ in material, motion or angle, so that two parts never
// look like one. Alternating hatches are those of neighbours in a stack.
func TestTouchingPartsDiffer(t *testing.T) {
	plain := []string{"laminations", "copper", "packing", "rubber", "concrete"}
	for name, words := range pumps() {
		for where, list := range standing(t, words) {
			each(list, func(a, b face) {
				same := a.s.Material == b.s.Material && a.s.Motion == b.s.Motion && a.s.Hatch == b.s.Hatch
				if !same || a.s.Part == b.s.Part || a.s.Alternate != "" || b.s.Alternate != "" || slices.Contains(plain, a.s.Material) {
					return
				}
				for _, q := range dense(a.p, .012) {
					if away(b.p, q) < .004 {
						t.Errorf("%s, %s: %s and %s touch and carry one hatch", name, where, a.s.Part, b.s.Part)
						return
					}
				}
			})
		}
	}
}

// What goes to the page with every drawing stays small.
func TestPackedShapesAreSmall(t *testing.T) {
	var b bytes.Buffer
	w, _ := gzip.NewWriterLevel(&b, gzip.BestCompression)
	text := raw(t).Pack()
	if _, err := w.Write([]byte(text)); err != nil || w.Close() != nil {
		t.Fatal(err)
	}
	if b.Len() > 25000 {
		t.Errorf("the packed shapes are %d bytes, %d compressed; 25 kB are allowed", len(text), b.Len())
	}
	t.Log(len(text), b.Len())
}
