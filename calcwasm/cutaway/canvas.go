package cutaway

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"columnbowl/calcwasm/drawing"
)

// canvas collects one sheet.
type canvas struct {
	set   *Shapes
	pump  Pump
	view  View
	words []string // options in force, build, and words of the sheet

	w, h      float64
	fine      float64 // factor of the hatch spacing: 1, or less on small sheets
	side      float64 // width of a label column
	margin    float64
	axis      float64   // x of the centre line: labels without a side go where they lie
	headScale float64   // px per column diameter of the head, on the whole pump
	plain     bool      // labels of parts only, no features: a sheet that shows everything
	lies      bool      // the drawing lies: numbers stand in a row above it
	block     int       // of the drawing being made, on a sheet with several
	cols      []*column // label columns, if they are not the usual two

	fluids []layered
	groups []*group
	gaps   []gap // hatch spacing of the parts drawn so far: one for a whole part
	paths  []*pathGroup
	top    []drawing.Item // breaks, covers, frames of the sheet: over the parts
	marks  []drawing.Item // centre lines and turn arrows: over the breaks
	calls  []*call
	notes  []note // words beside breaks
	window []span // the y ranges of the sheet that are covered
	behind int
}

// layered is an item with its place in the painting order of its group.
type layered struct {
	z    float64
	item drawing.Item
}

// group is what is drawn of one part.
type group struct {
	part  string
	at    point // middle of what was drawn first
	items []layered
}

// gap is the hatch spacing of a part in one material.
type gap struct {
	part, material string
	turns          bool
	px             float64
}

// spacing is what the first face of a part asks for, px: the others follow it.
func (c *canvas) spacing(s *shape, thick float64) float64 {
	for _, g := range c.gaps {
		if g.part == s.part && g.material == s.material && g.turns == s.turns {
			return g.px
		}
	}
	px := max(2.5, min(max(thick/2.6, 3.4), 6.6)*c.fine)
	c.gaps = append(c.gaps, gap{s.part, s.material, s.turns, px})
	return px
}

type pathGroup struct {
	name  string
	items []drawing.Item
}

type span struct{ from, to float64 }

type note struct {
	x, y  float64
	words string
}

func (c *canvas) group(part string) *group {
	for _, g := range c.groups {
		if g.part == part {
			return g
		}
	}
	g := &group{part: part}
	c.groups = append(c.groups, g)
	return g
}

func (c *canvas) path(name string) *pathGroup {
	for _, p := range c.paths {
		if p.name == name {
			return p
		}
	}
	p := &pathGroup{name: name}
	c.paths = append(c.paths, p)
	return p
}

// put draws all shapes of a frame that the pump has. stage counts repeated
// frames from the bottom, of those drawn; top is true on the one that carries
// the labels.
func (c *canvas) put(frame string, p *place, stage int, lowest, highest bool) {
	for _, s := range c.set.frame(frame) {
		if s.cut == "wall" || p.k < s.least || !holds(s.when, c.words) {
			continue
		}
		c.shape(s, p, stage)
		if s.hasAnchor && (s.low && lowest || !s.low && highest) {
			c.call(s, p)
		}
	}
}

// one draws a frame that does not repeat.
func (c *canvas) one(frame string, p *place) { c.put(frame, p, 0, true, true) }

// halves gives the outlines of a shape on the sheet, both halves if it has them.
func (s *shape) halves(p *place) [][]seg {
	var out [][]seg
	for _, o := range s.outlines {
		if s.half != 'l' {
			out = append(out, p.segs(o))
		}
		if s.half == 'l' || s.half == 'b' {
			out = append(out, p.segs(mirror(o)))
		}
	}
	return out
}

func (c *canvas) call(s *shape, p *place) {
	for _, k := range c.calls {
		if k.id == s.label && k.block == c.block {
			return
		}
	}
	if c.plain && strings.Contains(s.label, "/") {
		return
	}
	if _, ok := c.view.Words.Of[s.label]; !ok && strings.Contains(s.label, "/") {
		return // a feature that the caller has no words for
	}
	at := p.at(s.anchor.x, s.anchor.y)
	c.calls = append(c.calls, &call{id: s.label, part: s.part, turns: s.turns, x: at.x, y: at.y, side: s.side, block: c.block})
}

// scene puts the sheet together in painting order.
func (c *canvas) scene() Drawing {
	v := c.view
	d := Drawing{Behind: c.behind, Scene: &drawing.Scene{
		Prefix: v.Prefix, Class: c.class(), Title: v.Words.Title, Desc: v.Words.Desc, Role: "group",
	}}
	c.keepVisible()
	labels := c.layout() // may make the sheet taller
	d.Scene.Box = drawing.Box{W: c.w, H: math.Ceil(c.h)}
	d.Scene.Width, d.Scene.Height = d.Scene.Box.W, d.Scene.Box.H
	d.Labels = c.numbers()
	for i := range d.Labels {
		l := &d.Labels[i]
		if l.Name = c.name(l.ID); c.secret(l.ID) {
			l.Name = c.neutral(l.ID, l.Turns, d.Labels)
		}
	}
	d.Scene.Add(drawing.Rect{W: c.w, H: math.Ceil(c.h), Class: "cp"})
	slices.SortStableFunc(c.fluids, func(a, b layered) int { return cmp.Compare(a.z, b.z) })
	fluids := drawing.Group{Class: "fluids", Hidden: true}
	for _, f := range c.fluids {
		fluids.Add(f.item)
	}
	d.Scene.Add(fluids)
	for _, a := range c.set.assemblies {
		if g, parts := c.assembly(a, d.Labels); len(parts) > 0 {
			d.Scene.Add(g)
			d.Parts = append(d.Parts, parts...)
		}
	}
	for _, p := range c.paths {
		d.Scene.Add(drawing.Group{Class: "path path-" + p.name, Hidden: true, Items: p.items})
	}
	d.Scene.Add(drawing.Group{Class: "breaks", Hidden: true, Items: c.top})
	d.Scene.Add(drawing.Group{Class: "axes", Hidden: true, Items: c.marks})
	d.Scene.Add(drawing.Group{Class: "labels", Hidden: true, Items: labels})
	return d
}

func (c *canvas) class() string {
	class := "fig cutaway"
	if c.fine < 1 {
		class += " small"
	}
	for _, f := range c.view.Follow {
		class += " follow-" + f
	}
	return class
}

// assembly is the group of an assembly with the groups of its parts.
func (c *canvas) assembly(a assembly, labels []Label) (drawing.Group, []string) {
	out := drawing.Group{Class: "assembly", Attrs: [][2]string{{"data-assembly", a.id}}}
	var parts []string
	for _, id := range a.parts {
		i := slices.IndexFunc(c.groups, func(g *group) bool { return g.part == id })
		if i < 0 {
			continue
		}
		g := c.groups[i]
		slices.SortStableFunc(g.items, func(a, b layered) int { return cmp.Compare(a.z, b.z) })
		one := c.named(id, labels)
		for _, it := range g.items {
			one.Add(it.item)
		}
		out.Add(one)
		parts = append(parts, id)
	}
	return out, parts
}

// named is the empty group of a part with its name, or a neutral one.
func (c *canvas) named(id string, labels []Label) drawing.Group {
	g := drawing.Group{ID: id, Class: "part stands", Attrs: [][2]string{{"role", "img"}}}
	turns := slices.Contains(c.set.turning, id)
	if turns {
		g.Class = "part turns"
	}
	no := slices.IndexFunc(labels, func(l Label) bool { return l.ID == id })
	if no >= 0 {
		g.Attrs = append(g.Attrs, [2]string{"data-number", digits(labels[no].Number)})
	}
	if c.secret(id) {
		if name := c.neutral(id, turns, labels); name != "" {
			g.Attrs = append(g.Attrs, [2]string{"aria-label", name})
		}
		return g
	}
	g.Title, g.Desc = c.name(id), c.view.Words.Of[id].Desc
	g.Attrs = append(g.Attrs, [2]string{"aria-labelledby", c.view.Prefix + "-" + id + "-title"})
	return g
}

// name is the caller's word for an id; a part without one shows its id.
func (c *canvas) name(id string) string {
	if w, ok := c.view.Words.Of[id]; ok && w.Name != "" {
		return w.Name
	}
	return strings.ReplaceAll(id, "-", " ")
}
