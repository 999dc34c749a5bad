package drawing

import (
	"math"
	"strconv"
)

// absolute writes a path with the coordinates as they are.
func (w *writer) absolute(steps []step) {
	for _, s := range steps {
		w.b = append(w.b, s.op)
		for i, v := range s.p[:s.n] {
			if i > 0 {
				w.raw(" ")
			}
			w.num(v)
		}
	}
}

// relative writes a path as steps from the point before, in hundredths of a
// pixel. Each step is counted from where the pen stands after rounding, so that
// no error adds up. Level and upright lines are h and v.
func (w *writer) relative(steps []step) {
	var x, y, x0, y0 int // pen and beginning of the outline, hundredths
	for _, s := range steps {
		if s.op == 'Z' {
			w.raw("z")
			x, y = x0, y0
			continue
		}
		to := s.p
		switch s.op {
		case 'H':
			to = [6]float64{s.p[0], float64(y) / 100}
		case 'V':
			to = [6]float64{float64(x) / 100, s.p[0]}
		}
		n := max(int(s.n), 2)
		dx, dy := hundredths(to[n-2])-x, hundredths(to[n-1])-y
		switch {
		case n == 2 && s.op != 'M' && dy == 0:
			w.deltas('h', dx)
		case n == 2 && s.op != 'M' && dx == 0:
			w.deltas('v', dy)
		default:
			var d [6]int
			for i := 0; i < n; i += 2 {
				d[i], d[i+1] = hundredths(to[i])-x, hundredths(to[i+1])-y
			}
			op := s.op
			if op == 'H' || op == 'V' {
				op = 'L'
			}
			w.deltas(op+'a'-'A', d[:n]...)
		}
		x, y = x+dx, y+dy
		if s.op == 'M' {
			x0, y0 = x, y
		}
	}
}

func hundredths(v float64) int { return int(math.Round(v * 100)) }

// deltas writes a command and its numbers; a sign parts them as well as a space.
func (w *writer) deltas(op byte, d ...int) {
	w.b = append(w.b, op)
	for i, v := range d {
		if i > 0 && v >= 0 {
			w.b = append(w.b, ' ')
		}
		if v < 0 {
			w.b = append(w.b, '-')
			v = -v
		}
		if v >= 100 || v == 0 {
			w.b = strconv.AppendInt(w.b, int64(v/100), 10)
		}
		if r := v % 100; r != 0 {
			w.b = append(w.b, '.', byte('0'+r/10))
			if r%10 != 0 {
				w.b = append(w.b, byte('0'+r%10))
			}
		}
	}
}
