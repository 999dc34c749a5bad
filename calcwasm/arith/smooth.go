package arith

import "math"

// Point is one pair of a table or a curve.
type Point struct{ X, Y float64 }

// Slopes are the slopes at the points of a smooth line that keeps their shape:
// between two points it neither rises above nor falls below both of them. They
// are those of F. N. Fritsch and J. Butland, A method for constructing local
// monotone piecewise cubic interpolants, SIAM J. Sci. Stat. Comput. 5 (1984):
// the weighted harmonic mean inside, the one-sided three-point rule at the ends.
// There must be two points or more, in rising order of X.
func Slopes(pts []Point) []float64 {
	n := len(pts)
	h, d, m := make([]float64, n-1), make([]float64, n-1), make([]float64, n)
	for i := range h {
		h[i] = pts[i+1].X - pts[i].X
		d[i] = (pts[i+1].Y - pts[i].Y) / h[i]
	}
	if n == 2 {
		m[0], m[1] = d[0], d[0]
		return m
	}
	for i := 1; i < n-1; i++ {
		if float64(d[i-1]*d[i]) <= 0 {
			continue // a highest or lowest point: level
		}
		w1, w2 := float64(2*h[i])+h[i-1], h[i]+float64(2*h[i-1])
		m[i] = (w1 + w2) / (w1/d[i-1] + w2/d[i])
	}
	m[0] = endSlope(h[0], h[1], d[0], d[1])
	m[n-1] = endSlope(h[n-2], h[n-3], d[n-2], d[n-3])
	return m
}

// endSlope is the three-point rule, held back where it would spoil the shape.
func endSlope(h0, h1, d0, d1 float64) float64 {
	s := (float64((float64(2*h0)+h1)*d0) - float64(h0*d1)) / (h0 + h1)
	switch {
	case float64(s*d0) <= 0:
		return 0
	case float64(d0*d1) <= 0 && math.Abs(s) > 3*math.Abs(d0):
		return 3 * d0
	}
	return s
}

// Along reads the line through pts at x, which must lie between the first and
// the last of them: with slopes the cubic of Hermite, without a straight line
// from point to point.
func Along(pts []Point, slopes []float64, x float64) float64 {
	i, last := 1, len(pts)-1
	for i < last && x > pts[i].X {
		i++
	}
	a, b := pts[i-1], pts[i]
	h := b.X - a.X
	t := (x - a.X) / h
	if slopes == nil {
		return a.Y + float64(t*(b.Y-a.Y))
	}
	t2 := float64(t * t)
	t3 := float64(t2 * t)
	return float64((float64(2*t3)-float64(3*t2)+1)*a.Y) +
		float64(float64((t3-float64(2*t2)+t)*h)*slopes[i-1]) +
		float64((float64(3*t2)-float64(2*t3))*b.Y) +
		float64(float64((t3-t2)*h)*slopes[i])
}
