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

	"columnbowl/calcwasm/arith"
)

// Point is one data point: a flow (m3/s) and what the stage has there (a head in
// m, an efficiency as a fraction, a power in W, an NPSH in m).
type Point = arith.Point

// Curve is a smooth line through data points that keeps their shape: between
// two points it neither rises above nor falls below both of them (see
// arith.Slopes). It is the line that curve(…) of the notation draws.
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
	c.slopes = arith.Slopes(c.points)
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
	return arith.Along(c.points, c.slopes, x), ""
}
