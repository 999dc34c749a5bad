package drawing

import "strings"

// collector gathers the bounds of shapes.
type collector struct {
	any            bool
	x0, y0, x1, y1 float64
	dx             float64 // how far the group of the shape is moved to the right
	texts          []Box   // every line of words, for checks of overlap
}

func (c *collector) point(x, y float64) {
	x += c.dx
	if !c.any {
		c.any, c.x0, c.y0, c.x1, c.y1 = true, x, y, x, y
		return
	}
	c.x0, c.y0 = min(c.x0, x), min(c.y0, y)
	c.x1, c.y1 = max(c.x1, x), max(c.y1, y)
}

func (c *collector) box(b Box) {
	c.point(b.X, b.Y)
	c.point(b.X+b.W, b.Y+b.H)
}

func (l Line) span(c *collector)   { c.point(l.X1, l.Y1); c.point(l.X2, l.Y2) }
func (r Rect) span(c *collector)   { c.box(Box{r.X, r.Y, r.W, r.H}) }
func (k Circle) span(c *collector) { c.box(Box{k.X - k.R, k.Y - k.R, 2 * k.R, 2 * k.R}) }
func (l Link) span(c *collector)   { spanAll(c, l.Items) }

func (g Group) span(c *collector) {
	c.dx += g.X
	spanAll(c, g.Items)
	c.dx -= g.X
}

// span takes control points as if they lay on the curve: a bound from above.
func (p *Path) span(c *collector) {
	x, y := 0.0, 0.0
	for _, s := range p.steps {
		switch s.op {
		case 'H':
			x = s.p[0]
			c.point(x, y)
		case 'V':
			y = s.p[0]
			c.point(x, y)
		default:
			for i := 0; i+1 < int(s.n); i += 2 {
				x, y = s.p[i], s.p[i+1]
				c.point(x, y)
			}
		}
	}
}

func (t Text) span(c *collector) {
	b := t.Bounds()
	c.box(b)
	b.X += c.dx
	c.texts = append(c.texts, b)
}

// Bounds estimates the box of the words from above (see textWidth).
func (t Text) Bounds() Box {
	w := classWidth(t.Words, t.Class)
	up, down := sizeText*.78, sizeText*.24
	from := 0.0
	for _, k := range strings.Fields(t.Class) {
		switch k {
		case "m":
			from = -w / 2
		case "e":
			from = -w
		case "big":
			up, down = sizeBig*.78, sizeBig*.24
		case "mid":
			up, down = sizeMid*.78, sizeMid*.24
		}
	}
	if t.Turned {
		return Box{t.X - up, t.Y - from - w, up + down, w}
	}
	return Box{t.X + from, t.Y - up, w, up + down}
}

func spanAll(c *collector, items []Item) {
	for _, it := range items {
		it.span(c)
	}
}

// Bounds is the box around all shapes of the scene; text is estimated from
// above. It is zero for an empty scene.
func (s *Scene) Bounds() Box {
	c := &collector{}
	spanAll(c, s.Items)
	return Box{c.x0, c.y0, c.x1 - c.x0, c.y1 - c.y0}
}

// Words lists the boxes of all lines of words, in drawing order.
func (s *Scene) Words() []Box {
	c := &collector{}
	spanAll(c, s.Items)
	return c.texts
}
