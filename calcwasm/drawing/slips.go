package drawing

import (
	"cmp"
	"slices"
)

// Slip is a wrong way and the number it gives.
type Slip struct {
	Mark          // Name is shown while pointing at it; Text is the number as printed
	Number string // in the balloon: "1"
}

// Slips is the number line of mistakes: the right value and the wrong ones as
// balloons on one scale.
type Slips struct {
	Prefix, Title, Desc string
	Right               Mark                 // Text is set at the mark: "343.0 ft is right"
	Wrong               []Slip               // in any order
	Narrow              bool                 // 328 px, else 940 px
	Width               float64              // of the scene in px, if neither fits the column: 300 to 1600
	Tick                func(float64) string // prints a tick; nil prints plain numbers
}

// slipsLayout is the number line with its scale worked out.
type slipsLayout struct {
	Slips
	s        *Scene
	w        float64
	a, b     float64 // ends of the scale
	axis     float64 // y of the scale
	low, up  bool    // wrong values beyond the ends
	decimals int
	step     float64
}

const slipEdge = 20.0 // the scale keeps this far from the edges

// Layout draws the number line. Without a right value it shows the wrong ones
// alone; with nothing known the scene is empty.
func (s Slips) Layout() *Scene {
	l := &slipsLayout{Slips: s, w: 940}
	if s.Narrow {
		l.w = 328
	}
	if finite(s.Width) && s.Width > 0 {
		l.w = min(max(s.Width, 300), 1600)
	}
	var known []Slip
	for _, x := range s.Wrong {
		if x.ok() {
			known = append(known, x)
		}
	}
	slices.SortStableFunc(known, func(a, b Slip) int { return cmp.Compare(a.Value, b.Value) })
	l.Wrong = known
	rows := l.rows()
	l.axis = 26 + 30*float64(rows) + 4
	l.s = &Scene{Prefix: s.Prefix, Class: "fig", Title: s.Title, Desc: s.Desc, Box: Box{0, 0, l.w, l.axis + 48}, Width: l.w}
	if len(known) == 0 && !s.Right.ok() {
		return l.s
	}
	l.ends()
	l.ruler()
	l.balloons(rows)
	l.right()
	return l.s
}

// x places a value; one beyond the scale stands past its end.
func (l *slipsLayout) x(v float64) float64 {
	m := slipEdge + l.margin()
	switch {
	case v < l.a:
		return slipEdge - 2
	case v > l.b:
		return l.w - slipEdge + 2
	}
	return m + (v-l.a)/(l.b-l.a)*(l.w-2*m)
}

// margin makes room for the break at the ends.
func (l *slipsLayout) margin() float64 {
	if l.low || l.up {
		return 22
	}
	return 0
}

// rows of balloons: as many as needed for 26 px each.
func (l *slipsLayout) rows() int {
	per := int((l.w - 2*slipEdge) / 27)
	return min(max((len(l.Wrong)+per-1)/per, 1), 6)
}

// balloons stand above their values, pushed apart; leaders bend between the
// same two heights and keep their order, so none cross.
func (l *slipsLayout) balloons(rows int) {
	n := len(l.Wrong)
	if n == 0 {
		return
	}
	want := make([]float64, n)
	for i, s := range l.Wrong {
		want[i] = l.x(s.Value)
	}
	gap := same(27/float64(rows), n)
	at := spread(want, gap, 13, l.w-13)
	for i, s := range l.Wrong {
		y := 16 + 30*float64(i%rows)
		knee := 16 + 30*float64(rows-1) + 14
		g := Group{Title: s.words()}
		g.Add(NewPath("thin").M(want[i], l.axis).V(l.axis-8).L(at[i], knee).V(y), Circle{at[i], y, 11, "balloon"},
			Text{X: at[i], Y: y + 4.8, Words: s.Number, Class: "m"})
		l.s.Add(g)
	}
}

// right marks the right value below the line, where no balloon can be.
func (l *slipsLayout) right() {
	if !l.Right.ok() {
		return
	}
	x, y := l.x(l.Right.Value), l.axis
	l.s.Add(poly("ink", true, x, y, x-6, y-11, x+6, y-11))
	w := classWidth(l.Right.Text, "b")
	tx := min(max(x, w/2+2), l.w-w/2-2)
	l.s.Add(Text{X: tx, Y: y + 42, Words: l.Right.Text, Class: "m b"})
	l.s.Add(Line{X1: x, Y1: y, X2: x, Y2: y + 29, Class: "thin"})
}
