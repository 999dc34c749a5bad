package formula

import "math"

// intervals is how finely a range is searched for changes of sign; the first
// and the last interval are cut into parts, because a dip between two roots
// shows only where it has neighbours on both sides.
const (
	intervals = 192
	parts     = 8
)

// Roots finds where f is zero between low and high (low < high): every change
// of sign that a search in steps of 1/192 of the range shows, and touching
// points between them, each to the last bits; up to the edge of where f has a
// value. Where f is NaN, and where it jumps over zero, there is no root.
func Roots(f func(x float64) float64, low, high float64) []float64 {
	var roots []float64
	var x, y [3]float64
	last := intervals + 2*(parts-1)
	for i := 0; i <= last; i++ {
		x[0], x[1] = x[1], x[2]
		y[0], y[1] = y[1], y[2]
		x[2] = gridPoint(i, low, high)
		y[2] = f(x[2])
		switch {
		case y[2] == 0:
			roots = append(roots, x[2])
		case i > 0 && opposed(y[1], y[2]):
			if r, ok := between(f, x[1], x[2], y[1], y[2]); ok {
				roots = append(roots, r)
			}
		case i > 0 && (y[1] != y[1]) != (y[2] != y[2]):
			if r, ok := atEdge(f, x[1], x[2], y[1], y[2]); ok {
				roots = append(roots, r)
			}
		case i > 1 && touching(y):
			roots = append(roots, touch(f, x[0], x[2], y)...)
		}
	}
	return distinct(roots, high-low)
}

// atEdge looks for a root between a place where f has a value and the edge
// behind which it has none: a motor of 95 hp leaves next to nothing for the
// bearing, and less than nothing a little further on.
func atEdge(f func(float64) float64, a, b, fa, fb float64) (float64, bool) {
	valid, beyond, at := a, b, fa
	if fa != fa {
		valid, beyond, at = b, a, fb
	}
	edge, last := valid, at
	for range 50 {
		m := edge/2 + beyond/2
		if y := f(m); y == y {
			edge, last = m, y
		} else {
			beyond = m
		}
	}
	if !opposed(at, last) {
		return 0, false
	}
	return between(f, valid, edge, at, last)
}

// gridPoint is the i-th place at which a range is looked at.
func gridPoint(i int, low, high float64) float64 {
	const end = intervals + 2*(parts-1)
	at := float64(i - parts + 1)
	switch {
	case i <= parts:
		at = float64(i) / parts
	case i == end:
		return high
	case i >= end-parts:
		at = intervals - float64(end-i)/parts
	}
	return low + float64(at/intervals*(high-low))
}

// opposed and sameSign compare signs; products of very small numbers vanish.
func opposed(a, b float64) bool  { return a < 0 && b > 0 || a > 0 && b < 0 }
func sameSign(a, b float64) bool { return a < 0 && b < 0 || a > 0 && b > 0 }

// touching says whether |f| has a dip at the middle of three neighbours.
func touching(y [3]float64) bool {
	return sameSign(y[0], y[1]) && sameSign(y[1], y[2]) && math.Abs(y[1]) <= math.Abs(y[0]) && math.Abs(y[1]) <= math.Abs(y[2])
}

// touch looks for roots at a dip: two close ones, or one that only touches zero.
func touch(f func(float64) float64, a, b float64, y [3]float64) []float64 {
	const golden = 0.6180339887498949 // (sqrt 5 - 1) / 2
	scale := math.Max(math.Abs(y[0]), math.Abs(y[2]))
	low, high := a, b
	for range 80 {
		c, d := high-float64(golden*(high-low)), low+float64(golden*(high-low))
		fc, fd := f(c), f(d)
		if opposed(fc, y[0]) {
			return twoAround(f, a, c, b, y, fc)
		}
		if opposed(fd, y[0]) {
			return twoAround(f, a, d, b, y, fd)
		}
		if math.Abs(fc) < math.Abs(fd) {
			high = d
		} else {
			low = c
		}
	}
	m := low/2 + high/2
	if math.Abs(f(m)) <= 1e-12*scale {
		return []float64{m}
	}
	return nil
}

func twoAround(f func(float64) float64, a, m, b float64, y [3]float64, fm float64) []float64 {
	var roots []float64
	if r, ok := between(f, a, m, y[0], fm); ok {
		roots = append(roots, r)
	}
	if r, ok := between(f, m, b, fm, y[2]); ok {
		roots = append(roots, r)
	}
	return roots
}

// jump is how far a value must have come down, from those at the ends of its
// interval, to be a root and not a jump over zero.
const jump = 1e-6

// between finds the root that a change of sign encloses, by the method of
// Brent (Algorithms for Minimization without Derivatives, 1973, chapter 4). A
// jump over zero (a pole) is no root and is refused.
func between(f func(float64) float64, a, b, fa, fb float64) (float64, bool) {
	c, fc := a, fa
	d := b - a
	e := d
	start := math.Max(math.Abs(fa), math.Abs(fb))
	for range 200 {
		if sameSign(fb, fc) {
			c, fc = a, fa
			d = b - a
			e = d
		}
		if math.Abs(fc) < math.Abs(fb) {
			a, b, c = b, c, b
			fa, fb, fc = fb, fc, fb
		}
		tol := 2 * 2.220446049250313e-16 * math.Abs(b)
		m := (c - b) / 2
		if fb == 0 || math.Abs(m) <= tol {
			return b, math.Abs(fb) <= jump*start
		}
		d, e = brentStep(a, b, c, fa, fb, fc, d, e, m, tol)
		a, fa = b, fb
		switch {
		case math.Abs(d) > tol:
			b += d
		case m > 0:
			b += tol
		default:
			b -= tol
		}
		if fb = f(b); fb != fb {
			return 0, false
		}
	}
	return b, math.Abs(fb) <= jump*start
}

func brentStep(a, b, c, fa, fb, fc, d, e, m, tol float64) (float64, float64) {
	if math.Abs(e) < tol || math.Abs(fa) <= math.Abs(fb) {
		return m, m
	}
	var p, q float64
	s := fb / fa
	if a == c {
		p, q = float64(2*m*s), 1-s
	} else {
		r, t := fb/fc, fa/fc
		p = float64(s * (float64(2*m*float64(t*(t-r))) - float64((b-a)*(r-1))))
		q = float64(float64((t-1)*(r-1)) * (s - 1))
	}
	if p > 0 {
		q = -q
	} else {
		p = -p
	}
	if 2*p < math.Min(float64(3*m*q)-math.Abs(tol*q), math.Abs(e*q)) {
		return p / q, d
	}
	return m, m
}

// distinct drops roots that were found twice.
func distinct(roots []float64, width float64) []float64 {
	var list []float64
	for _, r := range roots {
		if len(list) == 0 || math.Abs(r-list[len(list)-1]) > 1e-9*width {
			list = append(list, r)
		}
	}
	return list
}

// Solve finds the values of a term in [low, high] for which the relation holds,
// the other terms standing in v. It uses algebra where it can and a search
// where it must. v's value of the term is NaN afterwards.
func (r *Relation) Solve(term int, v *Env, low, high float64) []float64 {
	v.Values[term] = math.NaN()
	if e, ok := r.Isolate(term); ok {
		x := e.Eval(v)
		v.Invalid = ""
		if x >= low && x <= high {
			return []float64{x}
		}
		return nil
	}
	if r.OneWay() {
		return nil
	}
	residual := func(x float64) float64 {
		v.Values[term] = x
		return r.Left.eval(v) - r.Right.eval(v)
	}
	roots := Roots(residual, low, high)
	v.Values[term] = math.NaN()
	v.Invalid = ""
	return roots
}
