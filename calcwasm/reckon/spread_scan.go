package reckon

import (
	"math"

	"columnbowl/calcwasm/formula"
)

// corners lists places to begin with: all combinations of ends; of many ranges
// the ends of each alone, all together, and for each result the combination
// that raises or lowers it along every axis.
func (s *spread) corners() [][]float64 {
	n := len(s.axes)
	if n <= allCorners {
		var list [][]float64
		for bits := range 1 << n {
			list = append(list, s.place(bits))
		}
		return list
	}
	all := 1<<n - 1
	list := [][]float64{s.place(0), s.place(all)}
	seen := map[int]bool{0: true, all: true}
	for _, bits := range s.slopes() {
		for _, b := range [...]int{bits, all &^ bits} {
			if !seen[b] && len(seen) < 1<<allCorners*2 {
				seen[b] = true
				list = append(list, s.place(b))
			}
		}
	}
	return list
}

// place is a corner: the bits tell which axes stand at their high ends.
func (s *spread) place(bits int) []float64 {
	at := make([]float64, len(s.axes))
	for k, x := range s.axes {
		at[k] = x.low
		if bits>>k&1 != 0 {
			at[k] = x.high
		}
	}
	return at
}

func (s *spread) middle() []float64 {
	at := make([]float64, len(s.axes))
	for k, x := range s.axes {
		at[k] = x.likely
	}
	return at
}

// slopes tells for each step along which axes it rises, from the middle.
func (s *spread) slopes() []int {
	bits := make([]int, len(s.steps))
	before := make([]float64, len(s.steps))
	for k, x := range s.axes {
		at := s.middle()
		at[k] = x.low
		if !s.sample(at) {
			continue
		}
		for i, t := range s.steps {
			before[i] = s.env.Values[t]
		}
		at[k] = x.high
		if !s.sample(at) {
			continue
		}
		for i, t := range s.steps {
			if s.env.Values[t] > before[i] {
				bits[i] |= 1 << k
			}
		}
	}
	return bits
}

// open computes bounds by interval evaluation, and tells whether some result may
// reach further than it does at the corners.
func (s *spread) open() bool {
	box := make([]formula.Interval, len(s.plain))
	for t, x := range s.plain {
		box[t] = formula.Interval{Low: x, High: x}
	}
	for _, x := range s.axes {
		box[x.term] = formula.Interval{Low: x.low, High: x.high}
	}
	any := false
	for _, t := range s.steps {
		box[t] = formula.Interval{Low: math.NaN(), High: math.NaN()}
		if e := s.res.Values[t].Expr; e != nil {
			box[t] = e.Bounds(box)
		}
		if !s.shut(t, box[t]) {
			any = true
		}
	}
	s.certain = box
	return any
}

// shut tells whether bounds prove that a result reaches no further than found.
func (s *spread) shut(t int, i formula.Interval) bool {
	slack := proven * (s.high[t] - s.low[t])
	return i.Low >= s.low[t]-slack && i.High <= s.high[t]+slack
}

// scan goes along the edges between corners: all of them, or, of many ranges,
// those of two corners and the lines through the middle.
func (s *spread) scan() {
	n := len(s.axes)
	if n > allCorners {
		for _, from := range [][]float64{s.place(0), s.place(1<<n - 1), s.middle()} {
			for k := range s.axes {
				s.line(from, k)
			}
		}
		return
	}
	for k := range s.axes {
		for bits := range 1 << n {
			if bits>>k&1 == 0 {
				s.line(s.place(bits), k)
			}
		}
		if n > 1 {
			s.line(s.middle(), k)
		}
	}
}

// polish goes on from the peaks that were found inside an edge along the other
// axes: a result may have its peak inside the ranges of several.
func (s *spread) polish() {
	if len(s.axes) == 1 {
		return
	}
	left := mostPolished
	for _, t := range s.steps {
		if s.shut(t, s.certain[t]) {
			continue
		}
		for _, place := range [...][]float64{s.atLow[t], s.atHigh[t]} {
			if s.inside(place) && left > 0 {
				left--
				from := append([]float64(nil), place...)
				for k := range s.axes {
					s.line(from, k)
				}
			}
		}
	}
}

// inside tells whether a place lies between the ends of some axis.
func (s *spread) inside(place []float64) bool {
	for k, x := range place {
		if x > s.axes[k].low && x < s.axes[k].high {
			return true
		}
	}
	return false
}

// line scans one axis from a place, and narrows down the peaks on it that reach
// further than anything found.
func (s *spread) line(from []float64, k int) {
	at := append([]float64(nil), from...)
	x := s.axes[k]
	rows := make([][]float64, scanSteps+1)
	for i := range rows {
		at[k] = x.low + (x.high-x.low)*float64(i)/scanSteps
		if !s.sample(at) {
			continue
		}
		rows[i] = make([]float64, len(s.steps))
		for j, t := range s.steps {
			rows[i][j] = s.env.Values[t]
		}
	}
	for j, t := range s.steps {
		if s.shut(t, s.certain[t]) {
			continue
		}
		for i := 1; i < scanSteps; i++ {
			if rows[i-1] == nil || rows[i] == nil || rows[i+1] == nil || s.refined == mostRefined {
				continue
			}
			a, b, c := rows[i-1][j], rows[i][j], rows[i+1][j]
			near := (s.high[t] - s.low[t]) / 8
			width := (x.high - x.low) / scanSteps
			switch {
			case b >= a && b >= c && b > math.Min(a, c) && b >= s.high[t]-near:
				s.narrow(at, k, t, x.low+width*float64(i-1), 2*width, 1)
			case b <= a && b <= c && b < math.Max(a, c) && b <= s.low[t]+near:
				s.narrow(at, k, t, x.low+width*float64(i-1), 2*width, -1)
			}
		}
	}
}

// narrow seeks a peak (sign 1) or a dip (-1) of a term by golden section.
func (s *spread) narrow(at []float64, k, t int, from, width, sign float64) {
	const golden = 0.6180339887498949
	s.refined++
	value := func(x float64) float64 {
		at[k] = x
		if !s.sample(at) {
			return math.Inf(-1)
		}
		return sign * s.env.Values[t]
	}
	a, b := from, from+width
	x, y := b-golden*(b-a), a+golden*(b-a)
	fx, fy := value(x), value(y)
	for range narrowings {
		if fx >= fy {
			b, y, fy = y, x, fx
			x = b - golden*(b-a)
			fx = value(x)
		} else {
			a, x, fx = x, y, fy
			y = a + golden*(b-a)
			fy = value(y)
		}
	}
}
