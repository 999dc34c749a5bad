package cutaway

import (
	"columnbowl/calcwasm/drawing"
)

// scales of the whole pump in px: of the head for a column diameter, and of the
// bowls for a bowl diameter. The column follows the bowls; a break hides the
// change of scale.
const (
	wholeHead = 86.0
	wholeBowl = 110.0
	casing    = .80 // radius of the well's casing in column diameters of the head
)

// wholeSheet: everything, with the column shortened.
func (c *canvas) wholeSheet() {
	c.fine = .62
	sub := holds("submersible", c.words)
	kh, kb := wholeHead, wholeBowl
	if c.numbered() {
		f := min(1, c.free()/(2.98*kh))
		kh, kb = kh*f, kb*f
	}
	kc := kb * c.pump.Sizes.Column
	high := 2.97 + c.driverHeight() + .1
	if sub {
		high = 1.66
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
		deep = 2.42
	}
	bottom := joint + deep*kb
	c.h = bottom + c.margin
	ground := oy + .13*kh
	rc := casing * kh
	reach := min(300, c.free()/2)
	static, pumping := c.levels(ground, colTop+8, colEnd-.5*kc)
	c.earth(ground, bottom, rc, reach, static, pumping)
	g := c.group("well-casing")
	s := c.group("well-screen")
	screen := joint + .60*kb
	if deep > 2 {
		screen = joint + 1.5*kb
	}
	for _, side := range [2]float64{-1, 1} {
		x := c.axis + side*rc
		if side < 0 {
			x -= 5
		}
		g.items = append(g.items, layered{1, drawing.Rect{X: x, Y: oy + .02*kh, W: 5, H: screen - oy - .02*kh, Class: "sol"}})
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
	if l.Known && l.Setting > 0 {
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
		soil := drawing.NewPath("soil").M(x(0), ground).L(far, ground).L(far, bottom).L(x(0), bottom).Z()
		line := drawing.NewPath("lvl").M(x(0), pumping)
		wet := drawing.NewPath("wet").M(x(0), pumping)
		for _, p := range cone[1:] {
			if p.out+rc+5 > reach {
				break
			}
			y := tenth(static + (pumping-static)*p.share)
			line.L(x(p.out), y)
			wet.L(x(p.out), y)
		}
		wet.L(far, tenth(static+(pumping-static)*.04)).L(far, bottom).L(x(0), bottom).Z()
		line.L(far, tenth(static+(pumping-static)*.04))
		c.fluids = append(c.fluids, layered{.1, soil}, layered{.2, wet}, layered{.3, line},
			layered{.3, drawing.NewPath("lvl rest").M(x(0), static).L(far, static)},
			layered{.3, drawing.NewPath("gr").M(tenth(c.axis+side*(reach*.40)), ground).L(far, ground)})
	}
	c.fluids = append(c.fluids, layered{.25, drawing.Rect{X: c.axis - rc, Y: pumping, W: 2 * rc, H: bottom - pumping, Class: "wet"}},
		layered{.4, drawing.Line{X1: c.axis - rc, Y1: pumping, X2: c.axis + rc, Y2: pumping, Class: "lvl"}})
	c.triangle(c.axis-reach+60, static)
	c.triangle(c.axis-rc+9, pumping)
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
