package drawing

// railWell draws the well of the rail. All measures are those of a well 864
// high; below the head they stretch with the height. The rail stands on every
// page, so what is of one ink is one path.
type railWell struct{ h float64 }

const railCX = 52.5 // centre line of the well

// y stretches a depth of the 864 px design; motor and head keep their size.
func (w railWell) y(d float64) float64 {
	if d <= railHead {
		return d
	}
	return railHead + (d-railHead)*(w.h-railHead)/(railUnit-railHead)
}

func (w railWell) draw(g *Group) {
	w.casing(g)
	w.water(g)
	w.head(g)
	w.column(g)
	w.bowls(g)
	w.below(g)
}

// casing is the hole: two walls hatched as cut steel, screen slots near the
// bottom.
func (w railWell) casing(g *Group) {
	for i, x := range []float64{23, 73} {
		hatch := HatchStill
		if i == 1 {
			hatch = HatchStillBack
		}
		g.Add(Rect{X: x, Y: railHead + 5, W: 9, H: w.h - railHead - 5, Fill: string(hatch), Opacity: .55},
			Line{x, railHead + 5, x, w.h, "dim", 0}, Line{x + 9, railHead + 5, x + 9, w.h, "dim", 0})
	}
	// the slots of the screen are the dashes of wide lines, the cuts those of wider ones
	slots, cuts := NewPath("slot"), NewPath("cut-slot")
	for _, x := range []float64{27.5, 77.5} {
		slots.M(x, w.y(758)).V(w.h - 4)
		cuts.M(x, w.y(758)+.8).V(w.h - 4)
	}
	g.Add(slots, cuts)
}

// water stands from the pumping level down; the static level is dashed.
func (w railWell) water(g *Group) {
	top := w.y(262)
	r := Rect{X: 32, Y: top, W: 41, H: w.h - top, Class: "w-water", Opacity: .6}
	g.Add(r)
	r.Class, r.Fill, r.Opacity = "", string(HatchWater), 0
	g.Add(r, Line{12, w.y(182), 73, w.y(182), "hid", 0}, Line{12, top, 73, top, "s-water", 1.3})
	levelSign(g.Add, 14, top)
	levelSign(g.Add, 14, w.y(182))
}

// head is what stands above grade: motor, discharge head with its flange, base.
func (w railWell) head(g *Group) {
	boxed(g.Add, Box{railCX - 13, 8, 26, 28}, "w-still")
	ribs := NewPath("thin")
	for i := range 4 {
		ribs.M(railCX-13+float64(i+1)*5.2, 12).V(32)
	}
	g.Add(ribs, NewPath("out").M(railCX-9, 8).Q(railCX, 2, railCX+9, 8))
	body := poly("w-still", true, railCX-11, 36, railCX+11, 36, railCX+15, 70, railCX-15, 70)
	g.Add(body, body.With("out"))
	boxed(g.Add, Box{railCX + 12.5, 50, 13, 9}, "w-still")
	g.Add(Line{railCX + 26, 47, railCX + 26, 62, "out", 0}, Rect{X: railCX - 26, Y: 70, W: 52, H: 5, Class: "ink"})
}

// column hangs from the head: pipe with joints, water inside, the line shaft.
func (w railWell) column(g *Group) {
	end := w.y(540)
	g.Add(Rect{X: railCX - 8, Y: 75, W: 16, H: end - 75, Class: "pap"},
		Rect{X: railCX - 8, Y: 75, W: 16, H: end - 75, Class: "w-water"},
		Line{railCX - 8, 75, railCX - 8, end, "out", 0}, Line{railCX + 8, 75, railCX + 8, end, "out", 0},
		Line{railCX, 40, railCX, w.y(540) + 100, "s-turn", 2.4})
	joints := NewPath("pap")
	for d := 110.0; d < 530; d += 43 {
		joints.box(railCX-10, w.y(d), 20, 5)
	}
	g.Add(joints, joints.With("out"))
}

// bowls: six stages, each with its impeller, then the suction pipe and strainer.
func (w railWell) bowls(g *Group) {
	top := w.y(540)
	bowls, impellers := NewPath("w-still"), NewPath("s-turn").Weight(2)
	for i := range 6 {
		y := top + float64(i)*15
		bowls.M(railCX-10, y).H(railCX+10).L(railCX+14, y+5).V(y+10).L(railCX+10, y+15).H(railCX-10).L(railCX-14, y+10).V(y + 5).Z()
		impellers.M(railCX-8, y+5).L(railCX, y+10).L(railCX+8, y+5)
	}
	g.Add(bowls, bowls.With("out"), impellers)
	y := top + 90
	boxed(g.Add, Box{railCX - 7, y, 14, 36}, "pap")
	g.Add(Rect{X: railCX - 8, Y: y + 36, W: 16, H: 14, Class: "pap"},
		Rect{X: railCX - 8, Y: y + 36, W: 16, H: 14, Fill: string(HatchEarth)},
		Rect{X: railCX - 8, Y: y + 36, W: 16, H: 14, Class: "out"})
}

// below is the motor of the submersible build, dashed because it belongs to
// another pump than the one drawn.
func (w railWell) below(g *Group) {
	y := w.y(540) + 150
	g.Add(Rect{X: railCX - 9, Y: y, W: 18, H: 42, Class: "hid"},
		NewPath("hid").M(railCX-5, y).V(y-7).H(railCX+5).V(y))
}

// touch is the x of the shape a leader at depth y ends on.
func (w railWell) touch(y float64) float64 {
	steps := []struct{ from, x float64 }{
		{0, railCX + 13}, {36, railCX + 11}, {62, railCX + 13}, {75, railCX + 8}, {w.y(170), 73}, {w.y(275), railCX + 8},
		{w.y(400), railCX + 1}, {w.y(540), railCX + 12}, {w.y(540) + 62, railCX + 1}, {w.y(540) + 92, railCX + 7},
		{w.y(540) + 150, railCX + 9}, {w.y(540) + 192, 82},
	}
	x := steps[0].x
	for _, s := range steps {
		if y >= s.from {
			x = s.x
		}
	}
	return x
}

// levelSign is the sign of a water level: a triangle standing on its line.
func levelSign(add func(...Item), x, y float64) {
	t := poly("pap", true, x-5, y-8, x+5, y-8, x, y)
	add(t, t.With("s-water").Weight(1.3), NewPath("s-water").Weight(1.3).M(x-6, y+2.8).H(x+6))
}

// leaders ties each balloon to its depth. They run level to the casing, turn
// in lanes beside it and run level again; lanes are dealt so that none cross.
func (l *railLayout) leaders(g *Group) {
	w := railWell{h: l.height}
	lane := lanes(l.anchor, l.y, railBend+4, railX-balloonR-6)
	for i, p := range l.Places {
		a, y := l.anchor[i], l.y[i]
		class, dot, r := "dim", "fnt", 2.0
		if p.Lit {
			class, dot, r = "out", "ink", 3.6
		}
		x := w.touch(a)
		g.Add(NewPath(class).M(x, a).H(lane[i]-3).L(lane[i]+3, y).H(railX-balloonR), Circle{x, a, r, dot})
	}
}
