package drawing

import "strconv"

// stack works out where each rung begins and ends.
func (l *ladderLayout) stack() {
	d := l.Scale.Datum
	l.base = d + nominal
	if l.Lift.ok() {
		l.base = l.Scale.Y(l.Lift.Value)
	} else {
		l.complete = false
	}
	if l.Lift.Name != "" || l.Lift.ok() {
		l.pieces = append(l.pieces, piece{Mark: l.Lift, y0: l.base, y1: d, under: true})
	}
	y := d
	l.top = min(d, l.base)
	for _, r := range l.Rungs {
		next := y - l.loose()
		if r.ok() {
			next = y - r.Value*l.Scale.Per
		} else {
			l.complete = false
		}
		l.pieces = append(l.pieces, piece{Mark: r.Mark, kind: r.Kind, y0: y, y1: next})
		y = next
	}
	l.top = y
}

// loose is the height of a rung that is not known: the nominal one, or less
// where the scale of the chain leaves less room above the ladder.
func (l *ladderLayout) loose() float64 {
	n := 0.0
	for _, r := range l.Rungs {
		if !r.ok() {
			n++
		}
	}
	return max(min(nominal, (l.Scale.Datum-l.above()*l.Scale.Per-4)/max(n, 1)), 0)
}

// ground is the datum line with the earth beside the well.
func (l *ladderLayout) ground() {
	d := l.Scale.Datum
	if l.Form == LadderTerm {
		l.s.Add(Rect{X: 0, Y: d, W: l.p.x - 36, H: 7, Fill: string(HatchEarth)})
	}
	l.s.Add(Line{X1: 0, Y1: d, X2: l.p.w, Y2: d, Class: "chainl"})
	if l.Datum != "" && l.Form == LadderTerm {
		l.s.Add(Text{X: 0, Y: d - 6, Words: l.Datum, Class: "f ha"})
	}
}

// bars draws the rungs one on the other: washes and hatches first, thin lines
// between them, one outline round each run of known rungs. A negative rung (a
// gauge below the datum) goes down again, at half breadth, dashed, over the bar.
func (l *ladderLayout) bars() {
	x, w := l.p.x, l.p.bar
	var back []Item
	for _, p := range l.pieces {
		h := p.y0 - p.y1
		switch {
		case !p.ok():
			l.s.Add(Rect{x, p.y1, w, h, "hid", "", 0})
		case h < 0:
			back = append(back, Rect{x, p.y0, w / 2, -h, "hid", "", 0})
		default:
			l.s.Add(l.fill(p, Rect{X: x, Y: p.y1, W: w, H: h})...)
			l.s.Add(Line{X1: x, Y1: p.y1, X2: x + w, Y2: p.y1, Class: "thin"})
		}
	}
	l.outlines()
	l.s.Add(back...)
	l.s.Add(Line{X1: l.p.total - 4, Y1: l.base, X2: x, Y2: l.base, Class: "s-water", Stroke: 1.3})
	if l.Form == LadderTerm {
		levelSign(l.s.Add, x-14, l.base)
	}
}

// fill is what a rung is made of.
func (l *ladderLayout) fill(p piece, r Rect) []Item {
	wash, hatch := r, r
	switch {
	case p.kind == RungLoss:
		wash.Class, hatch.Fill = "pap", string(HatchLoss)
	case p.under:
		wash.Class, hatch.Fill = "w-water", string(HatchWater)
	default:
		wash.Class = "w-water"
		return []Item{wash}
	}
	return []Item{wash, hatch}
}

// outlines draws the heavy line round runs of rungs that are to scale.
func (l *ladderLayout) outlines() {
	for i := 0; i < len(l.pieces); {
		k := i
		lo, hi := l.pieces[i].y0, l.pieces[i].y0
		for k < len(l.pieces) && l.pieces[k].ok() {
			lo, hi = min(lo, l.pieces[k].y1), max(hi, l.pieces[k].y0)
			k++
		}
		if k > i {
			l.s.Add(Rect{X: l.p.x, Y: lo, W: l.p.bar, H: hi - lo, Class: "out"})
		}
		i = max(k, i+1)
	}
}

// dim is the dimension of a head that counts from the water. If a rung is not
// known the picture is not to scale, and the line follows what is drawn.
func (l *ladderLayout) dim(m Mark, x, top float64, class string, heavy bool) {
	if m.Name == "" && !m.ok() {
		return
	}
	if m.ok() && l.complete {
		top = l.base - m.Value*l.Scale.Per
	}
	l.s.Add(Line{X1: x, Y1: top, X2: l.p.x, Y2: top, Class: "dim"})
	dimension{x: x, y1: top, y2: l.base, words: m.words(), class: class, heavy: heavy && m.ok(), unknown: !m.ok(),
		lo: 2, hi: l.Scale.Height - 2}.draw(l.s.Add)
}

func (l *ladderLayout) dimensions() {
	l.dim(l.Total, l.p.total, l.top, "b", true)
	top := l.top
	for i := len(l.pieces) - 1; i >= 0 && l.pieces[i].kind == RungLoss; i-- {
		top = l.pieces[i].y0
	}
	l.dim(l.Field, l.p.field, top, "f", false)
}

// rungs marks what each stage makes: an equal part of the total.
func (l *ladderLayout) rungs() {
	n := l.Stages
	if l.p.stage == 0 || n <= 0 || n > 400 || !l.Total.ok() || !l.complete || l.Total.Value <= 0 {
		return
	}
	x, h := l.p.stage, l.Total.Value*l.Scale.Per
	l.s.Add(Line{x, l.base - h, x, l.base, "s-turn", 1.4})
	each := h / float64(n)
	step := 1 // when rungs come too close, every second, fifth, tenth … stands
	for _, s := range []int{1, 2, 5, 10, 20, 50, 100} {
		if step = s; each*float64(s) >= 4 {
			break
		}
	}
	for i := 0; i <= n; i += step {
		y := l.base - float64(i)*each
		l.s.Add(Line{x - 4, y, x + 4, y, "s-turn", 1.6})
	}
	if each < 15 || l.Form == LadderNarrow {
		return
	}
	for i := range n {
		l.s.Add(Text{X: x + 7, Y: l.base - (float64(i)+.5)*each + 5, Words: strconv.Itoa(i + 1), Class: "c-turn ha"})
	}
}

// labels names the rungs at the right, from the top down.
func (l *ladderLayout) labels() {
	edge := l.p.x + l.p.bar
	var calls []callout
	for i := len(l.pieces) - 1; i >= 0; i-- {
		p := l.pieces[i]
		c := callout{x: edge - 9, y: (p.y0 + p.y1) / 2, faint: !p.ok()}
		if l.Form == LadderTerm {
			c.lines, c.value = l.oneLine(p.Mark), p.Text
		} else {
			c.lines = p.say(0, 0, l.p.room, l.p.valueClass).lines
		}
		calls = append(calls, c)
	}
	if l.Form == LadderTerm && l.Level != "" {
		calls = append(calls, callout{x: edge, y: l.base, lines: []Text{{Words: l.Level, Class: "f"}}})
	}
	col := callColumn{turn: l.p.turn, stop: l.p.stop, text: l.p.text, edge: l.p.w, lo: 2, hi: l.Scale.Height - 4, halo: true}
	if l.Form != LadderTerm {
		col.hi = l.base + 12
	}
	l.labelled = col.draw(l.s.Add, calls)
}

// oneLine sets name and value in two columns; a long name takes two lines.
func (l *ladderLayout) oneLine(m Mark) []Text {
	value := classWidth(m.Text, "")
	var out []Text
	for _, s := range wrap(m.Name, "", l.p.room-value-10) {
		out = append(out, Text{Words: s})
	}
	return out
}

// feet sets the words below the ladder.
func (l *ladderLayout) feet() {
	if l.Form == LadderTerm {
		return
	}
	x := 0.0
	if l.Form == LadderChain {
		x = l.p.total // the words of the well end at the left edge
	}
	y := max(l.base+20, l.labelled+16)
	for _, f := range []struct{ words, class string }{{l.Foot, "f"}, {l.StageText, "c-turn"}} {
		for _, line := range wrap(f.words, f.class, l.p.w-x-2) {
			l.s.Add(Text{X: x, Y: y, Words: line, Class: f.class})
			y += leading
		}
	}
}
