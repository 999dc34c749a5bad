package cutaway

import (
	"columnbowl/calcwasm/drawing"
)

// thin is the mean thickness in px below which a cut face is filled, not hatched.
const thin = 3.2

// shape draws one profile in the way of its cut:
//
//	hatch    cut face, material hatch
//	rib      cut along its flat face: tint only, thin outline
//	solid    too thin to hatch
//	shaft    turning round bar, never cut: bands of light and shade
//	sleeve   a bar over the shaft; bar: its end seen from above
//	view     seen from outside, thin outline; seen: beyond the cut; body: large
//	         outside view; fin: relief on it; mesh: wire cloth
//	channel  a space with an outline, filled with its material (oil, water)
//	fluid    a body of water, oil or filling behind the parts
//	grease, resin, paper   fills without outline; gleam, shade: light on a body
//	edge, faint, hidden, groove, thread, spring, axis, seam   lines
//	cable, wire, sheet   things drawn as thick lines
//	arrow, small   a path followed, part names the path; turn   a turn arrow
//	mark     a label only
func (c *canvas) shape(s *shape, p *place, stage int) {
	if s.cut == "mark" {
		return
	}
	segs := s.halves(p)
	switch s.cut {
	case "arrow", "small", "turn":
		c.follow(s, segs)
		return
	case "fluid":
		it := layered{s.z, path("fl "+s.material, segs)}
		if s.part == "water" || s.part == "oil" {
			c.fluids = append(c.fluids, it)
			return
		}
		c.group(s.part).items = append(c.group(s.part).items, it)
		return
	}
	g := c.group(s.part)
	if len(g.items) == 0 && len(segs) > 0 {
		lo, hi := bounds(flatten(segs[0]))
		g.at = point{(lo.x + hi.x) / 2, (lo.y + hi.y) / 2}
	}
	for _, it := range c.inked(s, segs, stage) {
		g.items = append(g.items, layered{s.z, it})
	}
}

// inked gives the items of a shape that belongs to a part.
func (c *canvas) inked(s *shape, segs [][]seg, stage int) []drawing.Item {
	turning := ""
	if s.turns {
		turning = " t"
	}
	line := func(class string) []drawing.Item { return []drawing.Item{path(class+turning, segs)} }
	switch s.cut {
	case "hatch":
		return c.cutFace(s, segs, stage)
	case "solid":
		return []drawing.Item{path(solidClass(s), segs)}
	case "rib":
		return line("rib " + s.material)
	case "shaft":
		return shaft(segs)
	case "sleeve":
		return append(line("slv"), lightBand(segs))
	case "bar":
		return line("shaft")
	case "mesh":
		return append(line("mesh"), c.meshLines(segs)...)
	case "cable", "wire":
		return []drawing.Item{path(s.cut+"-o", segs), path(s.cut+"-i", segs)}
	case "channel":
		return line("chan " + s.material)
	case "grease", "resin", "paper":
		return line(s.cut)
	}
	class := lineClass(s.cut)
	if s.cut == "view" && s.material == "bronze" {
		class += " vb"
	}
	return line(class)
}

// lineClass is the class of the cuts that need no more than one path.
func lineClass(cut string) string {
	switch cut {
	case "view":
		return "vw"
	case "seen":
		return "seen"
	case "edge":
		return "ed"
	case "gleam":
		return "lgt"
	case "shade":
		return "shd"
	case "thread", "spring":
		return "th"
	}
	return cut
}

func solidClass(s *shape) string {
	switch {
	case s.material == "rubber":
		return "sol rub"
	case s.turns:
		return "sol t"
	}
	return "sol"
}

// cutFace is a cut part: tint and outline, then the hatch over it.
func (c *canvas) cutFace(s *shape, segs [][]seg, stage int) []drawing.Item {
	thick := -1.0
	var polys [][]point
	for _, o := range segs {
		flat := flatten(o)
		if t := thickness(flat); thick < 0 || t < thick {
			thick = t
		}
		polys = append(polys, flat...)
	}
	if thick < thin {
		return []drawing.Item{path(solidClass(s), segs)}
	}
	class := "cut " + s.material
	if s.turns {
		class += " t"
	}
	out := []drawing.Item{path(class, segs)}
	h := *s
	if s.alternate && stage%2 != 0 {
		h.hatch = -h.hatch
	} else if s.turns && s.part == "impeller" && stage%2 != 0 {
		h.hatch *= 2 // impellers 30 and 60 in turn
	}
	return append(out, c.hatchItems(&h, polys, thick)...)
}

// path is an SVG path of placed outlines.
func path(class string, segs [][]seg) *drawing.Path {
	p := drawing.NewPath(class)
	p.Steps = true
	for _, o := range segs {
		for _, s := range o {
			switch s.op {
			case 'M':
				p.M(s.p[0], s.p[1])
			case 'L':
				p.L(s.p[0], s.p[1])
			case 'C':
				p.C(s.p[0], s.p[1], s.p[2], s.p[3], s.p[4], s.p[5])
			case 'Z':
				p.Z()
			}
		}
	}
	return p
}

// bands of a round bar, as shares of its width: shade, light, shade.
var bands = [3]struct {
	from, to float64
	class    string
}{{.04, .17, "shd"}, {.32, .50, "lgt"}, {.80, .96, "shd"}}

func shaft(segs [][]seg) []drawing.Item {
	out := []drawing.Item{path("shaft", segs)}
	for _, o := range segs {
		lo, hi := bounds(flatten(o))
		for _, b := range bands {
			w := hi.x - lo.x
			out = append(out, drawing.Rect{X: lo.x + w*b.from, Y: lo.y + 1, W: w * (b.to - b.from), H: hi.y - lo.y - 2, Class: b.class})
		}
	}
	return out
}

func lightBand(segs [][]seg) drawing.Item {
	lo, hi := bounds(flatten(segs[0]))
	w := hi.x - lo.x
	return drawing.Rect{X: lo.x + .33*w, Y: lo.y + 1, W: w * .2, H: hi.y - lo.y - 2, Class: "lgt"}
}

func (c *canvas) meshLines(segs [][]seg) []drawing.Item {
	var polys [][]point
	for _, o := range segs {
		polys = append(polys, flatten(o)...)
	}
	if it := c.lines("ml", append(scan(polys, 45, 5, 0), scan(polys, -45, 5, 0)...), nil); it != nil {
		return []drawing.Item{it}
	}
	return nil
}
