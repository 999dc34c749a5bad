package drawing

// ground draws the earth at the surface, the datum line and the water in the
// ground with its cone of drawdown.
func (l *wellLayout) ground() {
	d, p := l.Scale.Datum, l.p
	l.cone()
	l.s.Add(Rect{X: 0, Y: d + 1, W: p.cx - p.wall, H: 9, Fill: string(HatchEarth)},
		Rect{X: p.cx + p.wall, Y: d + 1, W: l.right() - p.cx - p.wall, H: 9, Fill: string(HatchEarth)},
		Line{X1: 0, Y1: d, X2: p.w, Y2: d, Class: "chainl"})
}

// cone is the water table: level far away, drawn down to the pumping level at
// the well. With one level known it lies flat; with none it is left out. A
// level above grade (a flowing well) is not in the ground.
func (l *wellLayout) cone() {
	p, y, d := l.p, l.Scale.Y, l.Scale.Datum
	far, near := l.Static, l.Pumping
	if !far.ok() {
		far = near
	}
	if !near.ok() {
		near = far
	}
	if !far.ok() {
		return
	}
	b := l.Scale.Height - 22
	yf, yn := min(max(y(far.Value), d+12), b), min(max(y(near.Value), d+12), b)
	left, right, end := p.cx-p.wall, p.cx+p.wall, l.right()
	bend := .30 * (yn - yf)
	edge := func(class string) *Path {
		q := NewPath(class).M(0, yf).L(left*.22, yf).Q(left*.72, yf+bend*.6, left, yn)
		return q
	}
	side := func(class string) *Path {
		return NewPath(class).M(end, yf).L(right+(end-right)*.82, yf).Q(right+(end-right)*.24, yf+bend*.6, right, yn)
	}
	l.s.Add(edge("w-earth").V(b).H(0).Z(), side("w-earth").V(b).H(end).Z())
	if !l.open { // ground below the well
		l.s.Add(Rect{X: left, Y: l.bottom, W: right - left, H: b - l.bottom, Class: "w-earth"})
	}
	for _, q := range []*Path{edge("s-water"), side("s-water")} {
		q.Stroke, q.Dash = 1.2, "6 4"
		l.s.Add(q)
	}
}

// right is where the ground ends: short of the edge, so that the words of the
// picture beside it stand clear.
func (l *wellLayout) right() float64 {
	if l.Narrow {
		return l.p.w - 4
	}
	return l.p.w - 14
}

// water stands in the casing from the pumping level, or from the static level
// while the pumping level is not known.
func (l *wellLayout) water() {
	m := l.Pumping
	if !m.ok() {
		m = l.Static
	}
	if !m.ok() {
		return
	}
	p := l.p
	top := min(max(l.Scale.Y(m.Value), l.Scale.Datum), l.bottom)
	r := Rect{X: p.cx - p.inner, Y: top, W: 2 * p.inner, H: l.bottom - top, Class: "w-water"}
	l.s.Add(r)
	r.Class, r.Fill = "", string(HatchWater)
	l.s.Add(r, Line{r.X, top, r.X + r.W, top, "s-water", 1.3})
}

// casing draws the two walls as cut steel, with slots where the screen is.
func (l *wellLayout) casing() {
	p, d := l.p, l.Scale.Datum
	t := p.wall - p.inner
	for i, x := range []float64{p.cx - p.wall, p.cx + p.inner} {
		hatch := HatchStill
		if i == 1 {
			hatch = HatchStillBack
		}
		h := l.bottom - d + 1
		l.s.Add(Rect{X: x, Y: d - 1, W: t, H: h, Class: "pap"}, Rect{X: x, Y: d - 1, W: t, H: h, Fill: string(hatch)},
			Line{x, d - 1, x, l.bottom, "out", 0}, Line{x + t, d - 1, x + t, l.bottom, "out", 0})
		l.screen(x, t)
	}
	if !l.open {
		l.s.Add(Rect{X: p.cx - p.wall, Y: l.bottom, W: 2 * p.wall, H: 6, Fill: string(HatchEarth)},
			Line{p.cx - p.wall, l.bottom, p.cx + p.wall, l.bottom, "out", 0})
	}
}

func (l *wellLayout) screen(x, t float64) {
	if !l.ScreenFrom.ok() || !l.ScreenTo.ok() {
		return
	}
	from, to := l.Scale.Y(l.ScreenFrom.Value), l.Scale.Y(l.ScreenTo.Value)
	for y := max(from, l.Scale.Datum+4); y < min(to, l.bottom)-2; y += 6 {
		l.s.Add(Rect{X: x - .5, Y: y, W: t + 1, H: 2.4, Class: "pap"}, Line{x - 1, y, x + t + 1, y, "thin", 0})
	}
}

// foot breaks the well off if it goes on below the picture.
func (l *wellLayout) foot() {
	if !l.open {
		return
	}
	p, b := l.p, l.bottom
	wave := func(class string) *Path {
		return NewPath(class).M(p.cx-p.wall-8, b).H(p.cx-16).L(p.cx-7, b-7).L(p.cx+7, b+7).L(p.cx+16, b).H(p.cx + p.wall + 8)
	}
	l.s.Add(wave("pap").V(b+20).H(p.cx-p.wall-8).Z(), wave("thin"))
}

// surface draws what stands on the datum: head and motor as signs, and the
// standpipe that shows the pressure at the gauge as water.
func (l *wellLayout) surface() {
	p, d := l.p, l.Scale.Datum
	k := p.head
	mouth := l.standpipe()
	if l.Build == Submersible {
		b := NewPath("w-still").M(p.cx-p.pipe, d-4).V(d-16*k).Q(p.cx-p.pipe, d-32*k, p.cx+8*k, d-32*k).H(p.cx+20*k).V(d-10*k).
			H(p.cx+p.pipe+4*k).Q(p.cx+p.pipe, d-10*k, p.cx+p.pipe, d-4).Z()
		l.s.Add(b, b.With("out"))
	} else {
		b := poly("w-still", true, p.cx-16*k, d-30*k, p.cx+16*k, d-30*k, p.cx+22*k, d-4, p.cx-22*k, d-4)
		l.s.Add(b, b.With("out"))
		boxed(l.s.Add, Box{p.cx - 19*k, d - 76*k, 38 * k, 46 * k}, "w-still")
		for i := range 5 {
			x := p.cx - 19*k + float64(i+1)*6.3*k
			l.s.Add(Line{x, d - 70*k, x, d - 36*k, "thin", 0})
		}
		l.s.Add(NewPath("out").M(p.cx-13*k, d-76*k).Q(p.cx, d-85*k, p.cx+13*k, d-76*k))
	}
	l.s.Add(mouth...)
	l.s.Add(Rect{X: p.cx - 40*k, Y: d - 4, W: 80 * k, H: 4, Class: "ink"})
}

// standpipe shows how high the pressure would lift water above the gauge. It
// returns the discharge pipe, which is drawn over the head.
func (l *wellLayout) standpipe() []Item {
	p, d, k := l.p, l.Scale.Datum, l.p.head
	y0, y1 := d-22*k, d-8*k
	wash := NewPath("w-water").M(p.cx+20*k, y0).H(p.stand - p.standW/2).V(y1).H(p.cx + 21*k).Z()
	if !l.Pressure.ok() || l.Pressure.Value <= 0 {
		return []Item{NewPath("w-water").M(p.cx+20*k, y0).H(p.w - 4).V(y1).H(p.cx + 21*k).Z(), NewPath("out").M(p.cx+20*k, y0).H(p.w-4).M(p.cx+21*k, y1).H(p.w - 4)}
	}
	head := l.Pressure.Value
	if l.Gauge.ok() {
		head += l.Gauge.Value
	}
	top := min(l.Scale.Y(-head), y0-4)
	a, b := p.stand-p.standW/2, p.stand+p.standW/2
	r := Rect{X: a, Y: top, W: p.standW, H: y1 - top, Class: "w-water"}
	l.s.Add(r)
	r.Class, r.Fill = "", string(HatchWater)
	l.s.Add(r, NewPath("hid").M(a, y0).V(top-14).M(b, y1).V(top-14))
	levelSign(l.s.Add, p.stand, top)
	l.says(top)
	return []Item{wash, NewPath("out").M(p.cx+20*k, y0).H(a).M(p.cx+21*k, y1).H(b)}
}

// says sets the words at the standpipe: beside it at its top; in the narrow
// form to its left, above the motor.
func (l *wellLayout) says(top float64) {
	p := l.p
	x, class := p.stand+p.standW/2+7, ""
	y := top + 5
	if l.Narrow {
		x, class = p.stand-p.standW/2-5, " e"
		over := l.Scale.Datum - 90*p.head // the motor's top
		y = min(top+5, over-float64(len(l.PressureSays)-1)*leading)
		y = max(y, 13)
	}
	y = min(y, l.Scale.Datum-30-float64(len(l.PressureSays)-1)*leading)
	for i, s := range l.PressureSays {
		c := "f"
		if i == 0 {
			c = ""
		}
		l.s.Add(Text{X: x, Y: y + float64(i)*leading, Words: s, Class: c + class})
	}
}
