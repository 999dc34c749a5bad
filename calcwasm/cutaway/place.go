package cutaway

import "math"

// knot is one step of a radial scale: radius r of the frame is drawn at to.
type knot struct{ r, to float64 }

// place puts a frame on the sheet: px = ox + k·x, py = oy − k·y, after the
// radial scale (a thicker shaft pushes its bearing outwards and leaves the
// casing where it is) and after the ends of pipes were stretched.
type place struct {
	ox, oy, k float64
	radial    []knot  // from the axis outwards; beyond the last one nothing changes
	flare     float64 // discharge case: scale of the outlet against its foot; 0 is 1
	plan      bool    // a cut across: the scale acts along the radius, not along x
	lo, hi    float64 // where ends at ∓stretchAt go, if not 0
}

// stretchAt is the y at which the pipes of the column frame end. They are drawn
// longer or shorter by moving only these ends.
const stretchAt = 1.21

func (p *place) at(x, y float64) point {
	if p.plan {
		if r := math.Hypot(x, y); r > 0 {
			f := p.radius(r, 0) / r
			x, y = x*f, y*f
		}
		return point{p.ox + p.k*x, p.oy - p.k*y}
	}
	x = p.radius(x, y)
	switch {
	case p.hi != 0 && y > stretchAt:
		y = p.hi
	case p.lo != 0 && y < -stretchAt:
		y = p.lo
	}
	return point{p.ox + p.k*x, p.oy - p.k*y}
}

// hubRadius is the radius of the discharge case's hub, which no flare moves.
const hubRadius = .18

func (p *place) radius(x, y float64) float64 {
	sign := 1.0
	if x < 0 {
		sign, x = -1, -x
	}
	if p.flare != 0 && x > hubRadius {
		x = hubRadius + (x-hubRadius)*(1+(p.flare-1)*smooth((y-.06)/.5))
	}
	from := knot{}
	for _, k := range p.radial {
		if x <= k.r {
			x = from.to + (x-from.r)*(k.to-from.to)/(k.r-from.r)
			break
		}
		from = k
	}
	return sign * x
}

// smooth goes from 0 to 1 without a kink at either end.
func smooth(t float64) float64 {
	t = min(max(t, 0), 1)
	return t * t * (3 - 2*t)
}

// segs places outlines on the sheet.
func (p *place) segs(in []seg) []seg {
	out := make([]seg, len(in))
	for i, s := range in {
		n := 2
		switch s.op {
		case 'C':
			n = 6
		case 'Z':
			n = 0
		}
		for k := 0; k < n; k += 2 {
			q := p.at(s.p[k], s.p[k+1])
			s.p[k], s.p[k+1] = q.x, q.y
		}
		out[i] = s
	}
	return out
}
