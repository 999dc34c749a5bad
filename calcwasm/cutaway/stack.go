package cutaway

import (
	"slices"

	"columnbowl/calcwasm/drawing"
)

// pitch of the stages in bowl diameters, and how far up and down the parts of
// the bowl assembly reach from its lowest joint.
const (
	pitch      = .9
	outletTop  = .95 // of the discharge case and the foot of the column
	suctionEnd = 1.16
)

// stack draws the bowl assembly: its lowest joint at (ox, oy), k px per bowl
// diameter, drawn of its stages shown. The bowl of the highest stage is one
// casting with the discharge case, as the parts model counts: one bowl fewer
// than stages (common practice; other builders part the two).
func (c *canvas) stack(ox, oy, k float64, drawn int) *place {
	radial := c.bowlScale()
	height := float64(drawn) * pitch
	low := &place{ox: ox, oy: oy, k: k, radial: radial, hi: height + 1.35}
	c.one("suction", low)
	c.one("shaft", &place{ox: ox, oy: oy, k: k, radial: radial, hi: height + c.shaftTop()})
	for i := range drawn {
		p := &place{ox: ox, oy: oy - float64(i)*pitch*k, k: k, radial: radial}
		if i < drawn-1 {
			c.put("stage", p, i, i == 0, false)
			continue
		}
		below := c.words
		c.words = append(slices.Clip(below), "top-stage")
		c.put("stage", p, i, i == 0, true)
		c.words = below
		c.one("top", p)
	}
	up := &place{ox: ox, oy: oy - height*k, k: k, radial: radial, flare: c.flare()}
	c.put("discharge", up, drawn-1, true, true)
	c.bodyOfWater(low, up, drawn)
	return up
}

// shaftTop is where the bowl shaft ends above the last joint: in the middle of
// its coupling, or under the cap of a submersible's discharge case.
func (c *canvas) shaftTop() float64 {
	if holds("submersible", c.words) {
		return .515
	}
	return .79
}

// strainer hangs the strainer where the suction ends, if the pump has one.
func (c *canvas) strainer(ox, oy, k float64) {
	at := .88
	if holds("tailpipe", c.words) {
		at = .985
	}
	c.one("strainer", &place{ox: ox, oy: oy + at*k, k: k})
}

// bodyOfWater joins the walls of suction, stages and discharge case to one
// closed body on each side of the axis. Parts lie on it, so no white sliver can
// show between them.
func (c *canvas) bodyOfWater(low, up *place, drawn int) {
	wall := c.wall("suction", low)
	for i := range drawn {
		wall = append(wall, c.wall("stage", &place{ox: low.ox, oy: low.oy - float64(i)*pitch*low.k, k: low.k})...)
	}
	wall = append(wall, c.wall("discharge", up)...)
	c.water(low.ox, wall)
}

// water closes a wall to one body on each side of the axis.
func (c *canvas) water(ox float64, wall []point) {
	for _, side := range [2]float64{1, -1} {
		p := drawing.NewPath("fl water").M(ox, wall[0].y)
		for _, q := range wall {
			p.L(tenth(ox+side*(q.x-ox)), tenth(q.y))
		}
		p.L(ox, wall[len(wall)-1].y).Z()
		c.fluids = append(c.fluids, layered{1, p})
	}
}

// wall is the water's outer boundary in a frame, upwards.
func (c *canvas) wall(frame string, p *place) []point {
	var out []point
	for _, s := range c.set.frame(frame) {
		if s.cut == "wall" && holds(s.when, c.words) {
			for _, poly := range flatten(p.segs(s.outlines[0])) {
				out = append(out, poly...)
			}
		}
	}
	return out
}
