package drawing

// The shapes write themselves, one element per line, attributes always in the
// order class, id, geometry, fill, stroke, opacity, transform.

func (l Line) sound() bool { return finite(l.X1, l.Y1, l.X2, l.Y2, l.Stroke) }

func (l Line) write(w *writer) {
	if !w.keep(l) {
		return
	}
	w.open("line", l.Class, "")
	w.geometry([]string{"x1", "y1", "x2", "y2"}, l.X1, l.Y1, l.X2, l.Y2)
	w.numAttr("stroke-width", l.Stroke)
	w.raw("/>\n")
}

func (r Rect) sound() bool { return finite(r.X, r.Y, r.W, r.H, r.Opacity) }

func (r Rect) write(w *writer) {
	if !w.keep(r) {
		return
	}
	w.open("rect", r.Class, "")
	w.geometry([]string{"x", "y", "width", "height"}, r.X, r.Y, max(r.W, 0), max(r.H, 0))
	w.fill(r.Fill)
	w.numAttr("opacity", r.Opacity)
	w.raw("/>\n")
}

func (c Circle) sound() bool { return finite(c.X, c.Y, c.R) }

func (c Circle) write(w *writer) {
	if !w.keep(c) {
		return
	}
	w.open("circle", c.Class, "")
	w.geometry([]string{"cx", "cy", "r"}, c.X, c.Y, max(c.R, 0))
	w.raw("/>\n")
}

func (p *Path) sound() bool {
	for _, s := range p.steps {
		if !finite(s.p[:s.n]...) {
			return false
		}
	}
	return finite(p.Stroke, p.Opacity)
}

func (p *Path) write(w *writer) {
	if len(p.steps) == 0 || !w.keep(p) {
		return
	}
	w.open("path", p.Class, "")
	w.raw(` d="`)
	if p.Steps {
		w.relative(p.steps)
	} else {
		w.absolute(p.steps)
	}
	w.raw(`"`)
	w.fill(p.Fill)
	w.numAttr("stroke-width", p.Stroke)
	w.attr("stroke-dasharray", p.Dash)
	w.numAttr("opacity", p.Opacity)
	w.raw("/>\n")
}

func (t Text) sound() bool { return finite(t.X, t.Y) }

func (t Text) write(w *writer) {
	if t.Words == "" || !w.keep(t) {
		return
	}
	w.open("text", t.Class, "")
	if t.Turned {
		w.raw(` transform="translate(`)
		w.num(t.X)
		w.raw(" ")
		w.num(t.Y)
		w.raw(`) rotate(-90)"`)
	} else {
		w.geometry([]string{"x", "y"}, t.X, t.Y)
	}
	w.raw(">")
	w.text(t.Words)
	w.raw("</text>\n")
}

func (g Group) sound() bool { return finite(g.X) && allSound(g.Items) }

func (g Group) write(w *writer) {
	w.open("g", g.Class, g.ID)
	if g.Hidden {
		w.raw(` aria-hidden="true"`)
	}
	for _, a := range g.Attrs {
		w.attr(a[0], a[1])
	}
	if g.X != 0 {
		w.raw(` transform="translate(`)
		w.num(g.X)
		w.raw(`)"`)
	}
	w.raw(">\n")
	w.groupWords(g.ID, g.Title, g.Desc)
	for _, it := range g.Items {
		it.write(w)
	}
	w.raw("</g>\n")
}

func (l Link) sound() bool { return allSound(l.Items) }

func (l Link) write(w *writer) {
	w.open("a", l.Class, l.ID)
	w.attr("href", l.Href)
	w.attr("aria-label", l.Label)
	if l.Current {
		w.raw(` aria-current="page"`)
	}
	w.raw(">\n")
	w.groupWords("", l.Title, "")
	for _, it := range l.Items {
		it.write(w)
	}
	w.raw("</a>\n")
}

// groupWords writes title and desc of a group; they take ids only from a group
// that has one, so that ids stay unique.
func (w *writer) groupWords(id, title, desc string) {
	tid, did := "", ""
	if id != "" {
		tid, did = w.id(id+"-title"), w.id(id+"-desc")
	}
	w.words("title", title, tid)
	w.words("desc", desc, did)
}

// keep counts a shape that cannot be drawn.
func (w *writer) keep(it Item) bool {
	if it.sound() {
		return true
	}
	w.left++
	return false
}

func (w *writer) open(element, class, id string) {
	w.raw("<" + element)
	w.attr("class", class)
	if id != "" {
		w.attr("id", w.id(id))
	}
}

// geometry leaves out what is 0: a browser takes it for that anyway.
func (w *writer) geometry(names []string, v ...float64) {
	for i, n := range names {
		w.numAttr(n, v[i])
	}
}

// fill points to a hatch of this drawing.
func (w *writer) fill(hatch string) {
	if hatch != "" {
		w.attr("fill", "url(#"+w.id(hatch)+")")
	}
}

func allSound(items []Item) bool {
	for _, it := range items {
		if !it.sound() {
			return false
		}
	}
	return true
}

func hasLink(items []Item) bool {
	for _, it := range items {
		switch v := it.(type) {
		case Link:
			return true
		case Group:
			if hasLink(v.Items) {
				return true
			}
		}
	}
	return false
}
