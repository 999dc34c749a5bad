package cutaway

import (
	"math"
	"slices"
)

// Draw makes one sheet. A sheet that the build does not have is drawn as the
// whole pump.
func (s *Shapes) Draw(p Pump, v View) Drawing {
	p.Stages = max(p.Stages, 1)
	if !slices.Contains(builds[:], p.Build) {
		p.Build = builds[0]
	}
	p.Sizes = p.Sizes.bound()
	c := &canvas{set: s, pump: p, view: v, fine: 1, margin: 14}
	if p.Build != builds[2] { // a line-shaft pump stands on a foundation
		p.Options = slices.DeleteFunc(slices.Clone(p.Options), func(o string) bool { return o == "pitless" })
	}
	c.words = append(chosen(p.Options), p.Build)
	c.w, c.side = 360, 0
	switch {
	case v.Width >= 1280:
		c.w, c.side = 1280, 270
	case v.Width >= 768:
		c.w, c.side = 768, 168
	}
	c.axis = c.w / 2
	if !slices.Contains(Sheets(p.Build), v.Sheet) {
		v.Sheet = Whole
	}
	c.sheet(v.Sheet)
	return c.scene()
}

var builds = [3]string{"water-lubricated", "oil-lubricated", "submersible"}

// Parts lists the ids of the parts that a sheet of this pump shows or hides
// behind a break, in painting order.
func (s *Shapes) Parts(p Pump, sheet string) []string {
	return s.Draw(p, View{Sheet: sheet, Width: 1280}).Parts
}

// chosen takes one word of each choice.
func chosen(options []string) []string {
	var out []string
	for _, row := range Choices {
		word := row[0]
		for _, w := range row {
			if slices.Contains(options, w) {
				word = w
			}
		}
		out = append(out, word)
	}
	return out
}

// usual sizes of the profiles as they are stored.
const (
	usualColumn    = .908
	usualBowlShaft = .158
	usualLineShaft = .196
	usualTube      = .344
)

func (z Sizes) bound() Sizes {
	within := func(v, usual, lo, hi float64) float64 {
		if !(v > 0) || math.IsInf(v, 0) {
			return usual
		}
		return min(max(v, lo), hi)
	}
	z.Column = within(z.Column, usualColumn, .6, 1.15)
	z.BowlShaft = within(z.BowlShaft, usualBowlShaft, .1, .2)
	z.LineShaft = within(z.LineShaft, usualLineShaft, .12, .24)
	z.Tube = max(within(z.Tube, usualTube, .3, .5), z.LineShaft+.12)
	return z
}

// bowlScale is the radial scale of the bowl frames: shaft and bearing follow
// the shaft, from the hub outwards nothing moves.
func (c *canvas) bowlScale() []knot {
	z := c.pump.Sizes
	if z.BowlShaft == usualBowlShaft {
		return nil
	}
	return []knot{{usualBowlShaft / 2, z.BowlShaft / 2}, {.128, .128}}
}

// columnScale is that of the column, the head and the cut across.
func (c *canvas) columnScale() []knot {
	z := c.pump.Sizes
	if z.LineShaft == usualLineShaft && (z.Tube == usualTube || c.pump.Build != builds[1]) {
		return nil
	}
	if c.pump.Build != builds[1] {
		return []knot{{usualLineShaft / 2, z.LineShaft / 2}, {.205, .205}}
	}
	return []knot{{usualLineShaft / 2, z.LineShaft / 2}, {usualTube / 2, z.Tube / 2}, {.40, .40}}
}

// flare widens the outlet of the discharge case to the column.
func (c *canvas) flare() float64 {
	const outlet = .454 // radius of the column pipe in the discharge frame
	r := c.pump.Sizes.Column / 2
	if math.Abs(r-outlet) < 1e-9 {
		return 0
	}
	return (r - hubRadius) / (outlet - hubRadius)
}

func (c *canvas) sheet(name string) {
	switch name {
	case Bowls:
		c.bowlSheet()
	case Stage:
		c.stageSheet()
	case Column:
		c.columnSheet()
	case Head:
		c.headSheet()
	case Motor:
		c.motorSheet()
	case StuffingBox:
		c.closureSheet(.86, 2.30, .50)
	case TubeTension:
		c.closureSheet(.86, 2.38, .80)
	case Line:
		c.lineSheet()
	case Power:
		c.powerSheet()
	case Motors:
		c.motorsSheet()
	default:
		c.wholeSheet()
	}
}

// free is the width of the sheet between the label columns.
func (c *canvas) free() float64 {
	if c.numbered() {
		return c.w - 2*(c.margin+2*balloonR+12)
	}
	return c.w - 2*(c.margin+c.side+26)
}

// fitScale is the scale at which width units fill the free width, at most limit.
func (c *canvas) fitScale(units, limit float64) float64 { return min(limit, c.free()/units) }
