package drawing

// pump draws what hangs in the well: column with joints, shaft or cable, bowls
// and suction. While the setting is not known the column is dashed.
func (l *wellLayout) pump() {
	p, d := l.p, l.Scale.Datum
	h := l.top - d
	l.s.Add(Rect{X: p.cx - p.pipe, Y: d, W: 2 * p.pipe, H: h, Class: "pap"}, Rect{X: p.cx - p.pipe, Y: d, W: 2 * p.pipe, H: h, Class: "w-water"})
	wall := "out"
	if !l.known {
		wall = "hid"
	}
	l.s.Add(Line{p.cx - p.pipe, d, p.cx - p.pipe, l.top, wall, 0}, Line{p.cx + p.pipe, d, p.cx + p.pipe, l.top, wall, 0})
	if l.Build == Submersible {
		x := p.cx + p.pipe + 3.5
		l.s.Add(Line{x, d, x, l.top + l.bowls + 6, "out", 0}) // the cable, strapped outside
	} else {
		l.shaft()
	}
	for i, y := 0, d+15.0; y < l.top-4 && i < 200; i, y = i+1, y+15 {
		l.s.Add(Line{p.cx - p.pipe - 2, y, p.cx - p.pipe, y, "out", 0}, Line{p.cx + p.pipe, y, p.cx + p.pipe + 2, y, "out", 0})
	}
	l.stages()
	if l.Build == Submersible {
		l.motorBelow()
	} else {
		l.suction()
	}
}

// shaft runs from the motor to the bowls; in the oil-lubricated build inside a
// tube, which keeps the water off it.
func (l *wellLayout) shaft() {
	p, d := l.p, l.Scale.Datum
	if l.Build == OilLubricated {
		l.s.Add(Rect{X: p.cx - p.tube, Y: d - 14, W: 2 * p.tube, H: l.top - d + 14, Class: "she"},
			Line{p.cx - p.tube, d, p.cx - p.tube, l.top, "thin", 0}, Line{p.cx + p.tube, d, p.cx + p.tube, l.top, "thin", 0})
	}
	weight := 3.0
	if l.Narrow {
		weight = 2.2
	}
	l.s.Add(Line{p.cx, d - 28*p.head, p.cx, l.top + l.bowls + 6, "s-turn", weight})
}

// stages draws the bowl assembly; the lines are a sign of stages, not a count.
func (l *wellLayout) stages() {
	p := l.p
	b := Box{p.cx - p.bowl, l.top, 2 * p.bowl, l.bowls}
	if !l.known {
		l.s.Add(Rect{b.X, b.Y, b.W, b.H, "pap", "", 0}, Rect{b.X, b.Y, b.W, b.H, "hid", "", 0})
		return
	}
	boxed(l.s.Add, b, "w-still")
	n := 4
	if l.bowls > 28 {
		n = min(int(l.bowls/6), 24)
	}
	for i := 1; i < n; i++ {
		y := l.top + float64(i)*l.bowls/float64(n)
		l.s.Add(Line{b.X, y, b.X + b.W, y, "thin", 0})
	}
}

func (l *wellLayout) suction() {
	p, y := l.p, l.top+l.bowls
	boxed(l.s.Add, Box{p.cx - p.bowl*.5, y, p.bowl, 14}, "pap")
	l.s.Add(Rect{X: p.cx - p.bowl*.55, Y: y + 14, W: p.bowl * 1.1, H: 7, Class: "pap"},
		Rect{X: p.cx - p.bowl*.55, Y: y + 14, W: p.bowl * 1.1, H: 7, Fill: string(HatchEarth)},
		Rect{X: p.cx - p.bowl*.55, Y: y + 14, W: p.bowl * 1.1, H: 7, Class: "out"})
}

// motorBelow hangs the motor under the bowls: the intake screen, then the motor.
func (l *wellLayout) motorBelow() {
	p, y := l.p, l.top+l.bowls
	l.s.Add(Rect{X: p.cx - p.bowl*.6, Y: y, W: p.bowl * 1.2, H: 9, Class: "pap"},
		Rect{X: p.cx - p.bowl*.6, Y: y, W: p.bowl * 1.2, H: 9, Fill: string(HatchEarth)},
		Rect{X: p.cx - p.bowl*.6, Y: y, W: p.bowl * 1.2, H: 9, Class: "out"})
	boxed(l.s.Add, Box{p.cx - p.bowl*.75, y + 9, p.bowl * 1.5, 33}, "w-still")
	for i := 1; i < 4; i++ {
		x := p.cx - p.bowl*.75 + float64(i)*p.bowl*1.5/4
		l.s.Add(Line{x, y + 13, x, y + 38, "thin", 0})
	}
}

// dimensions stand at the left, the longest furthest out.
func (l *wellLayout) dimensions() {
	p, d := l.p, l.Scale.Datum
	side := p.cx - p.wall
	hi := l.Scale.Height - 4
	add := func(m Mark, x, y, to float64, class string, unknown bool) {
		if m.Name == "" && !m.ok() {
			return
		}
		l.s.Add(Line{X1: x, Y1: y, X2: to, Y2: y, Class: "dim"})
		dimension{x: x, y1: d, y2: y, words: m.words(), class: class, unknown: unknown, lo: 4, hi: hi}.draw(l.s.Add)
	}
	add(l.Setting, p.setting, l.top, p.cx-p.bowl, "f", !l.known)
	if l.Pumping.ok() {
		add(l.Pumping, p.pumping, l.Scale.Y(l.Pumping.Value), side, "", false)
		levelSign(l.s.Add, p.cx-p.inner+.5*(p.inner-p.pipe), l.Scale.Y(l.Pumping.Value))
	}
	if l.Static.ok() {
		y := l.Scale.Y(l.Static.Value)
		add(l.Static, p.static, y, side, "f", false)
		levelSign(l.s.Add, (p.static+side)/2, y)
	}
	if l.Datum != "" && !l.Narrow {
		l.s.Add(Text{X: 0, Y: d - 8, Words: l.Datum, Class: "f"})
	}
}

// labels name drawdown, shaft and stages: in a column at the right, or in the
// narrow form turned beside the well and below at the left.
func (l *wellLayout) labels() {
	p, d := l.p, l.Scale.Datum
	from, to := 0.0, 0.0
	down := l.Static.ok() && l.Pumping.ok() && l.Drawdown.words() != ""
	if down {
		from, to = l.Scale.Y(l.Static.Value), l.Scale.Y(l.Pumping.Value)
	}
	x := p.cx + p.wall + 14
	if l.Narrow {
		l.narrowLabels(from, to, down)
		return
	}
	var calls []callout
	room := p.w - x - 26
	if down {
		l.s.Add(Line{X1: p.cx + p.wall, Y1: from, X2: x + 5, Y2: from, Class: "dim"}, Line{X1: p.cx + p.wall, Y1: to, X2: x + 5, Y2: to, Class: "dim"})
		dimension{x: x, y1: from, y2: to}.draw(l.s.Add)
		calls = append(calls, l.Drawdown.say(x, (from+to)/2, room, ""))
	}
	shaft := l.top - 24
	if to > 0 && to < l.top {
		shaft = (to + l.top) / 2
	}
	at := p.cx + p.tube*.6
	if l.Build == Submersible { // the words are about the cable, not a shaft
		at = p.cx + p.pipe + 3.5
	}
	calls = append(calls, words(l.Shaft, at, shaft, room), words(l.Stages, p.cx+p.bowl-2, l.top+l.bowls/2, room))
	callColumn{turn: x + 6, stop: x + 16, text: x + 26, lo: d + 14, hi: l.Scale.Height - 4}.draw(l.s.Add, calls)
}

func (l *wellLayout) narrowLabels(from, to float64, down bool) {
	p := l.p
	if down {
		x := p.cx + p.wall + 23
		l.s.Add(Line{X1: p.cx + p.wall, Y1: from, X2: x + 4, Y2: from, Class: "dim"}, Line{X1: p.cx + p.wall, Y1: to, X2: x + 4, Y2: to, Class: "dim"})
		dimension{x: x, y1: from, y2: to, words: l.Drawdown.words(), lo: l.Scale.Datum + 14, hi: l.Scale.Height - 4}.draw(l.s.Add)
	}
	if l.Stages.Text == "" {
		return
	}
	y := l.top + l.bowls + 24
	if y > l.Scale.Height-6 {
		return
	}
	l.s.Add(NewPath("dim").M(p.cx-p.bowl+2, l.top+l.bowls/2).L(p.cx-p.wall-8, y-5).H(p.cx-p.wall-12),
		Circle{p.cx - p.bowl + 2, l.top + l.bowls/2, 2.2, "ink"}, Text{X: p.cx - p.wall - 15, Y: y, Words: l.Stages.Text, Class: "e"})
}

// words is a callout of plain words; nothing if the mark has none.
func words(m Mark, x, y, room float64) callout {
	c := callout{x: x, y: y}
	for _, s := range wrap(m.words(), "", room) {
		c.lines = append(c.lines, Text{Words: s})
	}
	return c
}
