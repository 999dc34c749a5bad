package drawing

// down draws the wire and the band that goes down to the bowls. In the
// submersible build it is the cable that goes down, and the motor turns below.
func (l *powerLayout) down() {
	x := func(p float64) float64 { return l.xr - p*l.k }
	if l.Build == Submersible {
		l.cable(x)
		return
	}
	l.electric(NewPath("ink").M(0, l.ym).H(l.xl - 6).V(l.yt).H(0).Z())
	left := func(class string) *Path {
		return NewPath(class).M(l.xl-6, l.yt).H(x(l.brake)).L(x(l.thrust), l.datum).L(x(l.bowl), l.yb)
	}
	l.wash(left("w-turn").H(l.xr).V(l.ym).H(l.xl - 6).Z())
	l.s.Add(l.outline("s-turn", left("").H(x(l.bowl))), l.outline("s-turn", NewPath("").M(l.xl-6, l.ym).H(l.xr).V(l.yb)))
}

// cable is the band of the submersible build: electric down to the motor.
func (l *powerLayout) cable(x func(float64) float64) {
	ye := l.yb - 40
	edge := NewPath("out").M(0, l.ym).H(l.xr).V(ye).H(x(l.wire)).V(l.yt).H(0)
	if !l.known {
		l.s.Add(edge.With("hid"))
	} else {
		l.s.Add(edge.With("she"))
		wide := l.wire * l.k
		for i := range 3 { // three conductors: a cable, not a shaft
			a := wide * (.14 + .28*float64(i))
			b := a + wide*.16
			l.s.Add(poly("ink", true, 0, l.ym+a, l.xr-a, l.ym+a, l.xr-a, ye, l.xr-b, ye, l.xr-b, l.ym+b, 0, l.ym+b))
		}
		l.s.Add(edge)
	}
	left := func(class string) *Path {
		return NewPath(class).M(x(l.brake), ye).L(x(l.thrust), ye+14).L(x(l.bowl), l.yb)
	}
	l.wash(left("w-turn").H(l.xr).V(ye).Z())
	l.s.Add(l.outline("s-turn", left("").M(l.xr, ye).V(l.yb)))
}

// electric is a black band with light hatching.
func (l *powerLayout) electric(p *Path) {
	if !l.known {
		l.s.Add(p.With("hid"))
		return
	}
	l.s.Add(p, p.With("").Hatched(string(HatchPower)))
}

// wash fills a band; nothing is filled while nothing is known.
func (l *powerLayout) wash(p *Path) {
	if l.known {
		l.s.Add(p)
	}
}

// outline gives a band its edge; dashed while nothing is known.
func (l *powerLayout) outline(class string, p *Path) *Path {
	if !l.known {
		return p.With("hid")
	}
	return p.With(class).Weight(1.7)
}

// turn is where turning becomes water: the bowls, with what they lose falling
// out below.
func (l *powerLayout) turn() {
	wb, lost := l.up*l.k, (l.bowl-l.up)*l.k
	xi := l.xr - wb // outer edge of the U at the left
	mid, deep := (l.xr+l.xa)/2, l.yb+max(wb*.95, 16)
	in := min(22, (deep-l.yb)*.5)
	outer := func(p *Path) *Path {
		return p.M(xi, l.yb).Q(xi, deep, mid, deep).Q(l.xa+wb, deep, l.xa+wb, l.yb)
	}
	inner := func(p *Path) *Path {
		return p.Q(l.xa, l.yb+in, mid, l.yb+in).Q(l.xr, l.yb+in, l.xr, l.yb)
	}
	l.wash(inner(outer(NewPath("w-water")).H(l.xa)).Z())
	l.s.Add(l.outline("s-water", outer(NewPath(""))),
		l.outline("s-water", inner(NewPath("").M(l.xa, l.yb))))
	if lost > .3 {
		x := l.xr - l.bowl*l.k
		b := poly("w-turn", true, x, l.yb, x+lost, l.yb, x+lost, l.yb+18, x, l.yb+18)
		l.s.Add(b, b.With("").Hatched(string(HatchTurn)), b.With("s-turn").Weight(1))
	}
}

// rise is the water going up the column and out to the right.
func (l *powerLayout) rise() {
	xb, xc, wo := l.xa+l.up*l.k, l.xa+l.out*l.k, l.out*l.k
	l.wash(NewPath("w-water").M(l.xa, l.yb).H(xb).L(xc, l.datum).V(l.top).H(l.w).V(l.top - wo).H(l.xa).Z())
	l.s.Add(l.outline("s-water", NewPath("").M(xb, l.yb).L(xc, l.datum).V(l.top).H(l.w)),
		l.outline("s-water", NewPath("").M(l.w, l.top-wo).H(l.xa).V(l.yb)))
}

// leftLabels: wire and motor above the band, losses down its left side, and
// what goes down the shaft turned inside it.
func (l *powerLayout) leftLabels() {
	x := func(p float64) float64 { return l.xr - p*l.k }
	l.two(0, l.ym-27, l.Wire, "")
	loss := l.Motor.say(l.xl+4, l.ym+3, 110, "mid b")
	room := l.xl - 22
	var calls []callout
	mid := l.datum + (l.yb-l.datum)*.5
	bowls := l.Bowls.say(x(l.bowl)+min(4, (l.bowl-l.up)*l.k/2), l.yb+10, room, "mid b")
	thrust, shaft := l.Thrust, l.Shaft
	if l.Build == Submersible {
		calls = append(calls, l.Motor.say(x(l.brake)+2, l.yb-35, room, "mid b"), thrust.say(x(l.thrust)+2, l.yb-25, room, "mid b"),
			shaft.say(x(l.bowl)+2, l.yb-14, room, "mid b"), l.Down.say(x(l.bowl)+6, l.yb-3, room, "mid b c-turn"), bowls)
	} else {
		l.motorLabel(loss)
		calls = append(calls, thrust.say(x(l.thrust)+1, l.datum+8, room, "mid b"), shaft.say((x(l.thrust)+x(l.bowl))/2+1, mid, room, "mid b"), bowls)
	}
	l.column(calls, room)
	if l.Build == Submersible {
		l.inside(x(l.wire)-10, l.wire*l.k, Mark{Name: l.Cable}, "")
		return
	}
	l.inside((x(l.bowl)+l.xr)/2, l.bowl*l.k, l.Down, "c-turn")
}

// column sets the losses at the left: words from the left edge, leaders to the
// band.
func (l *powerLayout) column(calls []callout, room float64) {
	callColumn{turn: l.xl - 6, stop: l.xl - 14, text: room, lo: l.datum + 6, hi: l.yb + roomFoot - 6, halo: true}.draw(l.s.Add, calls)
}

// motorLabel stands above the corner of the band, right of the wire's words.
func (l *powerLayout) motorLabel(c callout) {
	if len(c.lines) == 0 {
		return
	}
	x, y := l.xl+4, l.ym-32
	class := "dim"
	if c.faint {
		class = "hid"
	} else {
		l.s.Add(Circle{x, l.ym + 3, 2.2, "ink"})
	}
	l.s.Add(NewPath(class).M(x, l.ym+3).V(y).H(x + 12))
	for i, t := range c.lines {
		t.X, t.Y = x+16, y+5+float64(i-len(c.lines)+2)*leading-leading/2
		l.s.Add(t)
	}
}

// inside turns words into a band at x; a band too thin for them has them
// beside it, with paper behind.
func (l *powerLayout) inside(x, breadth float64, m Mark, class string) {
	if m.words() == "" {
		return
	}
	c := join("m mid b", class)
	if breadth < 20 {
		c = join(c, "ha")
	}
	y := (l.datum + l.yb) / 2
	if w := classWidth(m.words(), c); w > l.yb-l.datum-8 {
		c = join("m b", class)
	}
	l.s.Add(Text{X: x + 6, Y: y, Words: m.words(), Class: c, Turned: true})
}

// rightLabels: water in the column, what column and head take, what is left.
func (l *powerLayout) rightLabels() {
	xc := l.xa + l.out*l.k
	l.inside(l.xa+(l.up+l.out)*l.k/4, l.out*l.k, l.Up, "c-water")
	room := l.w - xc - 30
	c := l.Column.say(l.xa+(l.up+l.out)*l.k/2, l.datum+(l.yb-l.datum)*.36, room, "mid b")
	callColumn{turn: xc + 14, stop: xc + 20, text: xc + 26, lo: l.datum + 8, hi: l.yb + 40}.draw(l.s.Add, []callout{c})
	wo := l.out * l.k
	l.two(l.w, l.top-wo-27, l.Out, "c-water e")
	if l.Share == "" || !l.known {
		return
	}
	if wo >= 26 {
		l.s.Add(Text{X: l.w - 10, Y: l.top - wo/2 + 7.5, Words: l.Share, Class: "big e"})
		return
	}
	l.s.Add(Text{X: l.w - 4, Y: l.top + 19, Words: l.Share, Class: "big e"})
}

// two sets a name and its value below.
func (l *powerLayout) two(x, y float64, m Mark, class string) {
	if m.words() == "" {
		return
	}
	l.s.Add(Text{X: x, Y: y, Words: m.Name, Class: join("f", class)}, Text{X: x, Y: y + 19, Words: m.Text, Class: join("mid b", class)})
}
