package drawing

import (
	"math"
	"slices"
	"strconv"
)

// ends chooses the scale. It holds the right value and the wrong ones near it;
// one that lies more than eight times as far out as the middle one would press
// the others together, so it stands past a break at the end.
func (l *slipsLayout) ends() {
	centre := 0.0
	if l.Right.ok() {
		centre = l.Right.Value
	} else {
		centre = l.Wrong[len(l.Wrong)/2].Value
	}
	var off []float64
	for _, s := range l.Wrong {
		if d := math.Abs(s.Value - centre); d > 0 {
			off = append(off, d)
		}
	}
	reach := math.Inf(1)
	if len(off) > 0 {
		slices.Sort(off)
		reach = 8 * off[(len(off)-1)/2]
	}
	l.a, l.b = centre, centre
	for _, s := range l.Wrong {
		switch d := s.Value - centre; {
		case d < -reach:
			l.low = true
		case d > reach:
			l.up = true
		default:
			l.a, l.b = min(l.a, s.Value), max(l.b, s.Value)
		}
	}
	// closer than this the ends cannot be told apart from rounding
	if l.b-l.a <= math.Abs(centre)*1e-9 || l.b-l.a < 1e-9 {
		d := max(math.Abs(l.a)*.05, .5)
		l.a, l.b = l.a-d, l.b+d
	}
	l.step, l.decimals = niceStep((l.b-l.a)/4, l.w < 400)
	l.a, l.b = math.Floor(l.a/l.step)*l.step, math.Ceil(l.b/l.step)*l.step
}

// niceStep is the distance of ticks: 1, 2 or 5 times a power of ten, about
// rough long, and the decimals its multiples need.
func niceStep(rough float64, narrow bool) (float64, int) {
	if narrow {
		rough *= 1.6
	}
	e := math.Floor(math.Log10(rough))
	p := math.Pow(10, e)
	step := 10 * p
	for _, m := range []float64{1, 2, 5} {
		if m*p >= rough {
			step = m * p
			break
		}
	}
	return step, max(int(-math.Floor(math.Log10(step)+1e-9)), 0)
}

// ruler draws the scale: long ticks with numbers, a short one between, and a
// break at an end beyond which values stand.
func (l *slipsLayout) ruler() {
	y, from, to := l.axis, l.x(l.a), l.x(l.b)
	l.s.Add(Line{X1: from, Y1: y, X2: to, Y2: y, Class: "out"})
	l.brk(l.low, from, slipEdge-8)
	l.brk(l.up, to, l.w-slipEdge+8)
	right := math.Inf(1)
	if l.Right.ok() {
		right = l.x(l.Right.Value)
	}
	for i := 0; i <= 100; i++ {
		v := l.a + float64(i)*l.step
		if v > l.b+l.step*1e-6 {
			break
		}
		x := l.x(min(v, l.b))
		l.s.Add(Line{X1: x, Y1: y, X2: x, Y2: y + 7, Class: "thin"})
		words := l.print(v)
		if math.Abs(x-right) > classWidth(words, "")/2+4 { // the mark of the right value runs down here
			l.s.Add(Text{X: x, Y: y + 22, Words: words, Class: "m f"})
		}
		if half := l.x(v + l.step/2); v+l.step/2 < l.b {
			l.s.Add(Line{X1: half, Y1: y, X2: half, Y2: y + 4, Class: "thin"})
		}
	}
}

// brk draws a break of the scale from x to its far end.
func (l *slipsLayout) brk(on bool, x, end float64) {
	if !on {
		return
	}
	d := 1.0
	if end < x {
		d = -1
	}
	y := l.axis
	l.s.Add(NewPath("thin").M(x, y).H(x+4*d).L(x+7*d, y-5).L(x+11*d, y+5).L(x+14*d, y).H(end))
}

func (l *slipsLayout) print(v float64) string {
	if l.Tick != nil {
		return l.Tick(v)
	}
	s := strconv.FormatFloat(math.Round(v/l.step)*l.step, 'f', min(l.decimals, 12), 64)
	if s == "-0" {
		return "0"
	}
	return s
}
