package cutaway

import (
	"math"
	"slices"

	"columnbowl/calcwasm/drawing"
)

// Hatches are real lines, not pattern fills: they print the same everywhere,
// both halves of a part line up, and a test can count them.

// hatchLine is one scan line inside polygons.
type hatchLine struct {
	a, b point
	no   int // number of the scan line over the whole sheet
}

// scanner holds the direction of a hatch.
type scanner struct{ cos, sin float64 }

func (s scanner) turn(p point) point { return point{p.x*s.cos + p.y*s.sin, -p.x*s.sin + p.y*s.cos} }
func (s scanner) back(p point) point { return point{p.x*s.cos - p.y*s.sin, p.x*s.sin + p.y*s.cos} }

// trim keeps the ends of hatch lines off the outline, which is drawn below them.
const trim = .7

// scan cuts polygons with parallel lines at angle (degrees, on a sheet whose y
// grows downwards) and spacing. Lines are counted over the whole sheet, so that
// the halves of a part carry one hatch.
func scan(polys [][]point, angle, spacing, phase float64) []hatchLine {
	s := scanner{math.Cos(angle * math.Pi / 180), math.Sin(angle * math.Pi / 180)}
	turned := make([][]point, len(polys))
	for i, p := range polys {
		turned[i] = make([]point, len(p))
		for j, q := range p {
			turned[i][j] = s.turn(q)
		}
	}
	lo, hi := bounds(turned)
	var out []hatchLine
	var xs []float64
	for k := math.Ceil((lo.y - phase) / spacing); k <= math.Floor((hi.y-phase)/spacing); k++ {
		y := k*spacing + phase + 1e-6
		xs = crossings(xs[:0], turned, y)
		for i := 0; i+1 < len(xs); i += 2 {
			if xs[i+1]-xs[i] > 2.4*trim {
				out = append(out, hatchLine{s.back(point{xs[i] + trim, y}), s.back(point{xs[i+1] - trim, y}), int(k)})
			}
		}
	}
	return out
}

func crossings(xs []float64, polys [][]point, y float64) []float64 {
	for _, p := range polys {
		for i, a := range p {
			b := p[(i+1)%len(p)]
			if (a.y <= y) != (b.y <= y) {
				xs = append(xs, a.x+(y-a.y)*(b.x-a.x)/(b.y-a.y))
			}
		}
	}
	slices.Sort(xs)
	return xs
}

// tenth rounds to a tenth of a pixel: finer is not seen and costs bytes.
func tenth(v float64) float64 { return math.Round(v*10) / 10 }

func (c *canvas) lines(class string, ls []hatchLine, keep func(int) bool) drawing.Item {
	p := drawing.NewPath(class)
	p.Steps = true
	n := 0
	for _, l := range ls {
		if keep == nil || keep(l.no) {
			p.M(tenth(l.a.x), tenth(l.a.y)).L(tenth(l.b.x), tenth(l.b.y))
			n++
		}
	}
	if n == 0 {
		return nil
	}
	return p
}

func even(n int) bool { return n&1 == 0 }
func odd(n int) bool  { return n&1 != 0 }

// hatchItems are the lines of one part: pattern by material, angle by part,
// spacing by the thinnest of its outlines (thick, px).
func (c *canvas) hatchItems(s *shape, polys [][]point, thick float64) []drawing.Item {
	gap := c.spacing(s, thick)
	angle := -s.hatch // the sheet's y points down
	line, dash := "hl", "hl hd"
	if s.turns {
		line, dash = "hl t", "hl hd t"
	}
	var out []drawing.Item
	add := func(it drawing.Item) {
		if it != nil {
			out = append(out, it)
		}
	}
	switch s.material {
	case "steel":
		add(c.lines(line, append(scan(polys, angle, gap*1.5, 0), scan(polys, angle, gap*1.5, gap*.42)...), nil))
	case "bronze":
		ls := scan(polys, angle, gap, 0)
		add(c.lines(line, ls, even))
		add(c.lines(dash, ls, odd))
	case "rubber":
		add(c.lines("hl rub", append(scan(polys, 45, 3.2, 0), scan(polys, -45, 3.2, 0)...), nil))
	case "packing":
		add(c.lines(line, append(scan(polys, 45, 4.2, 0), scan(polys, -45, 4.2, 0)...), nil))
	case "copper":
		add(c.lines(line, append(scan(polys, 45, 4, 0), scan(polys, -45, 4, 0)...), nil))
	case "laminations":
		add(c.lines(line+" lam", scan(polys, 0, max(2.2, 3*c.fine), 0), nil))
	case "concrete":
		add(stones(polys))
	default:
		add(c.lines(line, scan(polys, angle, gap, 0), nil))
	}
	return out
}

// stones are the dots and triangles of concrete, from a small generator of
// fixed seed: the same everywhere.
func stones(polys [][]point) drawing.Item {
	lo, hi := bounds(polys)
	seed := uint32(7)
	next := func() float64 { seed = seed*1664525 + 1013904223; return float64(seed>>8) / (1 << 24) }
	p := drawing.NewPath("st")
	p.Steps = true
	n := int((hi.x - lo.x) * (hi.y - lo.y) / 90)
	for i := range min(n, 4000) {
		q := point{tenth(lo.x + (hi.x-lo.x)*next()), tenth(lo.y + (hi.y-lo.y)*next())}
		if !inside(polys, q) || !inside(polys, point{q.x + 5, q.y + 4}) {
			continue
		}
		if i%5 != 0 {
			p.M(q.x, q.y).L(q.x+1.2, q.y)
		} else {
			p.M(q.x, q.y).L(q.x+5, q.y+1).L(q.x+2, q.y+4.6).Z()
		}
	}
	return p
}
