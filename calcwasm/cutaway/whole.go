package cutaway

import (
	"columnbowl/calcwasm/drawing"
)

// scales of the whole pump: px for a column diameter of the head, and at most so
// many times that for a bowl diameter, so that wide bowls on a slim column still
// go into the casing. Head, column and bowls have one scale unless that limit
// holds; then the breaks hide the change.
const (
	wholeHead = 100.0
	wholeBowl = 1.3
	casing    = .80 // radius of the well's casing in column diameters of the head
)

// wholeSheet: everything, with the column shortened.
func (c *canvas) wholeSheet() {
	c.fine, c.plain = .62, true
	sub := holds("submersible", c.words)
	kh := c.fitScale(2.98, wholeHead)
	kb := min(kh/c.pump.Sizes.Column, wholeBowl*kh)
	kc := kb * c.pump.Sizes.Column
	c.headScale = kh
	high := 2.97 + c.driverHeight() + .1
	if sub {
		high = c.plateHeight()
	}
	oy := c.margin + high*kh
	drawn := min(c.pump.Stages, 3)
	colTop := oy + .86*kh
	colLen := 5.2 * kc
	joint := colTop + colLen + 1.30*kb + float64(drawn)*pitch*kb - .35*kb
	c.well(oy, kh, kc, colTop, colTop+colLen, joint, kb)
	up := c.stack(c.axis, joint, kb, drawn)
	c.strainer(c.axis, joint, kb)
	mid := colTop + colLen*.52
	c.one("column", &place{ox: c.axis, oy: mid, k: kc, radial: c.columnScale(),
		hi: (mid - colTop + 2) / kc, lo: -(up.oy - 1.30*kb - mid + 1) / kc})
	c.head(c.axis, oy, kh)
	half := casing*kh + 14
	c.band(c.axis-half, c.axis+half, colTop-2, 13, 3)
	c.band(c.axis-half, c.axis+half, up.oy-1.28*kb, 13, 3)
	if n := c.pump.Stages - drawn; n > 0 {
		c.stagesBand(c.axis-half, c.axis+half, joint-(pitch+.5)*kb, n)
	}
	c.centre(c.axis, c.margin, c.h-c.margin)
}

// well draws what stands round the pump: ground, casing, screen, levels.
func (c *canvas) well(oy, kh, kc, colTop, colEnd, joint, kb float64) {
	deep := 1.62
	if holds("submersible", c.words) {
		deep = 2.82
	}
	bottom := joint + deep*kb
	c.h = bottom + c.margin
	ground := oy + .13*kh
	rc := casing * kh
	reach := min(330, c.free()/2)
	static, pumping := c.levels(ground, colTop+8, colEnd-.5*kc)
	c.earth(ground, bottom, rc, reach, static, pumping)
	g := c.group("well-casing")
	s := c.group("well-screen")
	from := oy + .02*kh
	if holds("submersible pitless", c.words) {
		from = oy - .62*kh
	}
	screen := joint + .60*kb
	if deep > 2 {
		screen = joint + 1.9*kb
	}
	for _, side := range [2]float64{-1, 1} {
		x := c.axis + side*rc
		if side < 0 {
			x -= 5
		}
		g.items = append(g.items, layered{1, drawing.Rect{X: x, Y: from, W: 5, H: screen - from, Class: "sol"}})
		for y := screen + 4; y < bottom-4; y += 7 {
			s.items = append(s.items, layered{1, drawing.Rect{X: x, Y: tenth(y), W: 5, H: 3.5, Class: "sol"}})
		}
	}
	c.scenery("well-casing", c.axis-rc-2.5, (colEnd+joint)/2, 'l')
	c.scenery("well-screen", c.axis-rc-2.5, bottom-24, 'l')
	c.scenery("grade", c.axis-reach+20, ground, 'l')
	c.scenery("static-level", c.axis-reach+34, static, 'l')
	c.scenery("pumping-level", c.axis-rc+8, pumping, 'l')
}

// scenery labels scenery, if the caller has words for it.
func (c *canvas) scenery(id string, x, y float64, side byte) {
	if _, ok := c.view.Words.Of[id]; ok || id == "well-casing" || id == "well-screen" {
		c.calls = append(c.calls, &call{id: id, part: id, x: x, y: y, side: side})
	}
}

// levels places static and pumping level on the shortened column: in the right
// order and share, but never so near to each other or to an end that they could
// not be read.
func (c *canvas) levels(ground, top, end float64) (static, pumping float64) {
	l := c.pump.Levels
	s, p := .28, .62
	if l.Known && l.Setting > 0 && l.Static >= 0 && l.Pumping >= 0 {
		s = min(max(l.Static/l.Setting, .08), .80)
		p = min(max(l.Pumping/l.Setting, s+.12), .95)
	}
	return top + s*(end-top), top + p*(end-top)
}

// shares of the drawdown at distances from the casing, px: the cone.
var cone = [6]struct{ out, share float64 }{{0, 1}, {14, .74}, {40, .50}, {85, .29}, {150, .13}, {228, .05}}

func (c *canvas) earth(ground, bottom, rc, reach, static, pumping float64) {
	for _, side := range [2]float64{-1, 1} {
		x := func(out float64) float64 { return tenth(c.axis + side*(rc+5+out)) }
		far := tenth(c.axis + side*reach)
		c.fluids = append(c.fluids, layered{.1, drawing.NewPath("soil").M(x(0), ground).L(far, ground).L(far, bottom).L(x(0), bottom).Z()})
		var line []point
		for _, p := range cone {
			if p.out+rc+5 < reach-10 {
				line = append(line, point{x(p.out), tenth(static + (pumping-static)*p.share)})
			}
		}
		line = append(line, point{far, tenth(static + (pumping-static)*.04)})
		wet := spline(drawing.NewPath("wet"), line).L(far, bottom).L(x(0), bottom).Z()
		grade := drawing.NewPath("gr").M(tenth(c.axis+side*max(1.36*c.headScale, rc+20)), ground).L(far, ground)
		c.fluids = append(c.fluids, layered{.2, wet}, layered{.3, spline(drawing.NewPath("lvl"), line)},
			layered{.3, drawing.NewPath("lvl rest").M(x(0), static).L(far, static)}, layered{.3, grade}, layered{.3, c.strokes(side, reach, ground)})
	}
	c.fluids = append(c.fluids, layered{.25, drawing.Rect{X: c.axis - rc, Y: pumping, W: 2 * rc, H: bottom - pumping, Class: "wet"}},
		layered{.4, drawing.Line{X1: c.axis - rc, Y1: pumping, X2: c.axis + rc, Y2: pumping, Class: "lvl"}})
	c.triangle(c.axis-(rc+reach)/2, static)
	c.triangle(c.axis-rc+9, pumping)
}

// strokes are the short slanting lines under a grade line, three by three.
func (c *canvas) strokes(side, reach, ground float64) drawing.Item {
	p := drawing.NewPath("th")
	for x := 1.36*c.headScale + 8; x < reach-16; x += 26 {
		for d := 0.0; d < 15; d += 6 {
			at := tenth(c.axis + side*x + d)
			p.M(at, ground).L(at-8, ground+9)
		}
	}
	return p
}

// spline draws a smooth line through points: at a point it runs parallel to the
// chord of the neighbours.
func spline(p *drawing.Path, q []point) *drawing.Path {
	p.M(q[0].x, q[0].y)
	for i := 0; i+1 < len(q); i++ {
		a, b := q[max(i-1, 0)], q[min(i+2, len(q)-1)]
		k := .17
		p.C(tenth(q[i].x+(q[i+1].x-a.x)*k), tenth(q[i].y+(q[i+1].y-a.y)*k),
			tenth(q[i+1].x-(b.x-q[i].x)*k), tenth(q[i+1].y-(b.y-q[i].y)*k), q[i+1].x, q[i+1].y)
	}
	return p
}

// triangle is the sign of a water level.
func (c *canvas) triangle(x, y float64) {
	p := drawing.NewPath("tri").M(x, y).L(x-6, y-10).L(x+6, y-10).Z()
	c.fluids = append(c.fluids, layered{.5, p})
	for i, w := range [3]float64{5, 3.4, 1.8} {
		v := y + 3 + 2.8*float64(i)
		c.fluids = append(c.fluids, layered{.5, drawing.Line{X1: x - w, Y1: v, X2: x + w, Y2: v, Class: "lvl"}})
	}
}
