// Package curve works with the curve of one full-diameter stage of a bowl
// family: reading it between its data points, carrying it to another speed or a
// trimmed impeller, counting stages, and finding where a pump settles on its
// system.
//
// Conventions. All values are SI: flows in m3/s, heads in m, speeds in rad/s.
// A computation that is not valid gives NaN and the reason in words, without a
// full stop. A curve is never read outside its data points.
package curve

import (
	"errors"
	"math"
)

// Point is one data point: a flow (m3/s) and what the stage has there (a head in
// m, an efficiency as a fraction, a power in W, an NPSH in m).
type Point struct{ X, Y float64 }

// Curve is a smooth line through data points that keeps their shape: between
// two points it neither rises above nor falls below both of them. The slopes at
// the points are those of F. N. Fritsch and J. Butland, SIAM J. Sci. Stat.
// Comput. 5 (1984): a weighted harmonic mean inside, the one-sided three-point
// rule at the ends. It is the line that curve(…) of the notation draws.
type Curve struct {
	points []Point
	slopes []float64
}

// Line is a head curve of one full-diameter stage, however it is kept: a Curve,
// or the line that the notation draws through the points of a family.
type Line interface {
	Ends() (first, last float64)                    // the flows between which it can be read
	At(flow float64) (head float64, invalid string) // outside them NaN, and why
}

var _ Line = (*Curve)(nil)

// New makes a curve of two points or more, in rising order of X.
func New(points []Point) (*Curve, error) {
	if len(points) < 2 {
		return nil, errors.New("a curve needs two points or more")
	}
	for i, p := range points {
		if math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0) {
			return nil, errors.New("a point of the curve is not a number")
		}
		if i > 0 && p.X <= points[i-1].X {
			return nil, errors.New("the points of a curve must rise")
		}
	}
	c := &Curve{points: append([]Point(nil), points...)}
	c.slopes = slopes(c.points)
	return c, nil
}

// Ends are the first and the last X of the data.
func (c *Curve) Ends() (first, last float64) {
	return c.points[0].X, c.points[len(c.points)-1].X
}

// At reads the curve. Outside the data it is NaN and says so.
func (c *Curve) At(x float64) (y float64, invalid string) {
	first, last := c.Ends()
	switch {
	case x != x:
		return math.NaN(), "the flow is not a number"
	case x < first:
		return math.NaN(), "the curve begins at a larger flow"
	case x > last:
		return math.NaN(), "the curve ends at a smaller flow"
	}
	i := 1
	for i < len(c.points)-1 && x > c.points[i].X {
		i++
	}
	a, b := c.points[i-1], c.points[i]
	h := b.X - a.X
	t := (x - a.X) / h
	t2 := float64(t * t)
	t3 := float64(t2 * t)
	// The cubic of Hermite with the slopes at both ends.
	return float64((float64(2*t3)-float64(3*t2)+1)*a.Y) +
		float64(float64((t3-float64(2*t2)+t)*h)*c.slopes[i-1]) +
		float64((float64(3*t2)-float64(2*t3))*b.Y) +
		float64(float64((t3-t2)*h)*c.slopes[i]), ""
}

func slopes(p []Point) []float64 {
	n := len(p)
	h, d, m := make([]float64, n-1), make([]float64, n-1), make([]float64, n)
	for i := range h {
		h[i] = p[i+1].X - p[i].X
		d[i] = (p[i+1].Y - p[i].Y) / h[i]
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
