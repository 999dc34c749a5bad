package cutaway

import (
	"errors"
	"math"
	"strconv"
)

// point is a place in a frame or on the sheet.
type point struct{ x, y float64 }

func (p point) to(q point) float64 { return math.Hypot(q.x-p.x, q.y-p.y) }

// seg is one step of an outline: M and L use the first two numbers of p, C all
// six (two control points and the end), Z none.
type seg struct {
	op byte
	p  [6]float64
}

// end is where the pen stands after the step.
func (s seg) end() point {
	if s.op == 'C' {
		return point{s.p[4], s.p[5]}
	}
	return point{s.p[0], s.p[1]}
}

var arity = [...]struct {
	op byte
	n  int
}{{'M', 2}, {'L', 2}, {'C', 6}, {'Z', 0}}

// ParsePath reads the data of an outline: M, L, C and Z with absolute
// coordinates in the unit of its frame, the first command M. It reports how
// many outlines the data holds and whether all are closed.
func ParsePath(d string) (outlines int, closed bool, err error) {
	segs, err := parsePath(d)
	if err != nil {
		return 0, false, err
	}
	open := 0
	for _, s := range segs {
		switch s.op {
		case 'M':
			outlines++
			open++
		case 'Z':
			open--
		}
	}
	return outlines, open == 0, nil
}

func parsePath(d string) ([]seg, error) {
	var out []seg
	for i := 0; i < len(d); {
		n := -1
		for _, a := range arity {
			if a.op == d[i] {
				n = a.n
			}
		}
		if n < 0 || len(out) == 0 && d[i] != 'M' {
			return nil, errors.New("an outline is written with M, L, C and Z and begins with M, not with " + strconv.Quote(d[i:i+1]))
		}
		s := seg{op: d[i]}
		i++
		for k := range n {
			v, next, ok := number(d, i)
			if !ok {
				return nil, errors.New("after " + string(s.op) + " stand " + strconv.Itoa(n) + " numbers; number " + strconv.Itoa(k+1) + " cannot be read")
			}
			s.p[k], i = v, next
		}
		for i < len(d) && d[i] == ' ' {
			i++
		}
		out = append(out, s)
	}
	if len(out) < 2 {
		return nil, errors.New("an outline has two points at least")
	}
	return out, nil
}

// number reads one number and the separators before it.
func number(d string, i int) (v float64, next int, ok bool) {
	for i < len(d) && (d[i] == ' ' || d[i] == ',') {
		i++
	}
	from := i
	if i < len(d) && (d[i] == '-' || d[i] == '+') {
		i++
	}
	for i < len(d) && (d[i] >= '0' && d[i] <= '9' || d[i] == '.') {
		i++
	}
	v, err := strconv.ParseFloat(d[from:i], 64)
	return v, i, err == nil && v < 100 && v > -100
}

// mirror is the other half: x becomes -x.
func mirror(in []seg) []seg {
	out := make([]seg, len(in))
	for i, s := range in {
		for k := 0; k < len(s.p); k += 2 {
			s.p[k] = -s.p[k]
		}
		out[i] = s
	}
	return out
}

// steps of a curve when it is flattened: the chord leaves a curve of 60 px by
// less than a tenth of a pixel.
const flatSteps = 12

// flatten turns outlines into polygons; open ones stay open lines.
func flatten(in []seg) [][]point {
	var all [][]point
	var cur []point
	for _, s := range in {
		switch s.op {
		case 'M':
			if len(cur) > 0 {
				all = append(all, cur)
			}
			cur = []point{s.end()}
		case 'L':
			cur = append(cur, s.end())
		case 'C':
			cur = bend(cur, s)
		}
	}
	if len(cur) > 0 {
		all = append(all, cur)
	}
	return all
}

func bend(cur []point, s seg) []point {
	a := cur[len(cur)-1]
	for i := 1; i <= flatSteps; i++ {
		t := float64(i) / flatSteps
		u := 1 - t
		w0, w1, w2, w3 := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		cur = append(cur, point{w0*a.x + w1*s.p[0] + w2*s.p[2] + w3*s.p[4], w0*a.y + w1*s.p[1] + w2*s.p[3] + w3*s.p[5]})
	}
	return cur
}

// thickness is the mean thickness of polygons: area over half the perimeter.
func thickness(polys [][]point) float64 {
	area, round := 0.0, 0.0
	for _, p := range polys {
		for i, a := range p {
			b := p[(i+1)%len(p)]
			area += a.x*b.y - b.x*a.y
			round += a.to(b)
		}
	}
	if round == 0 {
		return 0
	}
	return math.Abs(area) / round
}

// inside is true if a point lies in the polygons, even-odd.
func inside(polys [][]point, q point) bool {
	in := false
	for _, p := range polys {
		for i, a := range p {
			b := p[(i+1)%len(p)]
			if (a.y <= q.y) != (b.y <= q.y) && q.x < a.x+(q.y-a.y)*(b.x-a.x)/(b.y-a.y) {
				in = !in
			}
		}
	}
	return in
}

// bounds of polygons.
func bounds(polys [][]point) (lo, hi point) {
	lo, hi = point{math.Inf(1), math.Inf(1)}, point{math.Inf(-1), math.Inf(-1)}
	for _, p := range polys {
		for _, q := range p {
			lo = point{min(lo.x, q.x), min(lo.y, q.y)}
			hi = point{max(hi.x, q.x), max(hi.y, q.y)}
		}
	}
	return lo, hi
}
