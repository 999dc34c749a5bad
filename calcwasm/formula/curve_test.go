package formula

import (
	"math"
	"slices"
	"testing"

	"columnbowl/calcwasm/arith"
	"pgregory.net/rapid"
)

// curveOf makes a curve or a table of a through points, without the parser.
func curveOf(pts []Point, smooth bool) *Expr {
	e := &Expr{Op: Call, Func: letters.funcs["table"], Points: pts, Args: []*Expr{{Op: Ref, Term: 0}}}
	if smooth {
		e.Func, e.slopes = letters.funcs["curve"], arith.Slopes(pts)
	}
	return e
}

func at(e *Expr, x float64) float64 {
	v := NewEnv(letters)
	v.Values[0] = x
	return e.Eval(v)
}

// By hand, with the weighted harmonic mean of Fritsch and Butland: through
// (0, 0), (1, 1), (2, 8) the slopes are 0, 6 / (3/1 + 3/7) = 1.75 and
// (3·7 − 1) / 2 = 10; the cubic pieces at their middles follow from them.
func TestCurveByHand(t *testing.T) {
	e := expression(t, letters, "curve(a, 0: 0, 1: 1, 2: 8)")
	for x, want := range map[float64]float64{0: 0, 0.5: 0.28125, 1: 1, 1.5: 3.46875, 2: 8} {
		if got := at(e, x); !close(got, want, 1e-14) {
			t.Errorf("at %v the curve is %v, should be %v", x, got, want)
		}
	}
}

func TestCurveThroughTwoPointsIsStraight(t *testing.T) {
	e := expression(t, letters, "curve(a, 1: 10, 3: 4)")
	for x, want := range map[float64]float64{1: 10, 1.5: 8.5, 2: 7, 3: 4} {
		if got := at(e, x); !close(got, want, 1e-14) {
			t.Errorf("at %v the curve is %v, should be %v", x, got, want)
		}
	}
}

func TestFlatPartsStayFlat(t *testing.T) {
	e := expression(t, letters, "curve(a, 0: 0, 1: 5, 2: 5, 3: 9)")
	for x := 1.0; x <= 2; x += 0.125 {
		if got := at(e, x); !close(got, 5, 1e-14) {
			t.Errorf("at %v the curve is %v, should stay at 5", x, got)
		}
	}
}

func TestOutsideThePointsNothingIsRead(t *testing.T) {
	for _, name := range []string{"curve", "table"} {
		e := expression(t, letters, name+"(a, 1: 10, 3: 4, 4: 2)")
		for _, x := range []float64{0.999999, 4.000001, math.Inf(1), math.Inf(-1), -1} {
			if got := at(e, x); got == got {
				t.Errorf("%s at %v is %v", name, x, got)
			}
		}
	}
}

func drawPoints(t *rapid.T) []Point {
	n := rapid.IntRange(2, 9).Draw(t, "points")
	pts := make([]Point, n)
	x := rapid.Float64Range(-100, 100).Draw(t, "from")
	for i := range pts {
		pts[i] = Point{X: x, Y: rapid.Float64Range(-1000, 1000).Draw(t, "y")}
		x += rapid.Float64Range(0.01, 50).Draw(t, "step")
	}
	return pts
}

func TestCurvePassesThroughItsPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pts := drawPoints(t)
		for _, e := range []*Expr{curveOf(pts, true), curveOf(pts, false)} {
			for _, p := range pts {
				if got := at(e, p.X); math.Abs(got-p.Y) > 1e-12*1000 {
					t.Fatalf("%s at %v is %v, the point is %v", e.Func.Name, p.X, got, p.Y)
				}
			}
		}
	})
}

// Between two points the curve stays between their heights.
func TestCurveDoesNotOvershoot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pts := drawPoints(t)
		e := curveOf(pts, true)
		for i := 1; i < len(pts); i++ {
			a, b := pts[i-1], pts[i]
			low, high := min(a.Y, b.Y)-1e-9, max(a.Y, b.Y)+1e-9
			for k := 0; k <= 32; k++ {
				x := a.X + (b.X-a.X)*float64(k)/32
				if y := at(e, x); y < low || y > high {
					t.Fatalf("between %v and %v the curve is %v at %v", a, b, y, x)
				}
			}
		}
	})
}

func TestMonotonePointsGiveAMonotoneCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pts := drawPoints(t)
		var ys []float64
		for _, p := range pts {
			ys = append(ys, p.Y)
		}
		slices.Sort(ys)
		falling := rapid.Bool().Draw(t, "falling")
		for i := range pts {
			pts[i].Y = ys[i]
			if falling {
				pts[i].Y = -ys[i]
			}
		}
		e := curveOf(pts, true)
		last := at(e, pts[0].X)
		first, end := pts[0].X, pts[len(pts)-1].X
		for k := 1; k <= 400; k++ {
			y := at(e, min(end, first+(end-first)*float64(k)/400))
			if falling && y > last+1e-9 || !falling && y < last-1e-9 {
				t.Fatalf("the curve turns back from %v to %v", last, y)
			}
			last = y
		}
	})
}

// The curve has no corner at a point: slopes from both sides agree.
func TestCurveHasNoCorners(t *testing.T) {
	pts := []Point{{X: 0, Y: 63}, {X: 100, Y: 62.4}, {X: 200, Y: 61.1}, {X: 400, Y: 59.3}, {X: 500, Y: 52}, {X: 600, Y: 40}}
	e := curveOf(pts, true)
	for _, p := range pts[1 : len(pts)-1] {
		const h = 1e-4
		left, right := (p.Y-at(e, p.X-h))/h, (at(e, p.X+h)-p.Y)/h
		if math.Abs(left-right) > 1e-5 {
			t.Errorf("at %v the slope is %v on the left and %v on the right", p.X, left, right)
		}
	}
}
