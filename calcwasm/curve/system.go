package curve

import "math"

// Stages is the number of stages that a total head asks for when each makes the
// curve's head (both in m): rounded up. NaN if one is not above zero.
func Stages(total, each float64) float64 {
	if !(total > 0 && each > 0) {
		return math.NaN()
	}
	n := total / each
	if r := math.Round(n); math.Abs(n-r) <= slack*r {
		return r
	}
	return math.Ceil(n)
}

// System is what the well and the pipes ask for: a fixed head, a part that grows
// in proportion to the flow (the drawdown of the well) and one that grows with
// its square (friction).
type System struct {
	Fixed  float64 // m
	Linear float64 // m per m3/s
	Square float64 // m per (m3/s)²
}

// HeadAt is the head that the system asks for at a flow.
func (s System) HeadAt(flow float64) float64 {
	return s.Fixed + float64(s.Linear*flow) + float64(float64(s.Square*flow)*flow)
}

// steps is how finely the flows of a curve are searched for crossings.
const steps = 256

// Operating finds where a number of stages meets the system: all flows at which
// both have the same head, smallest first. A falling pump curve and a rising
// system cross once; a pump curve that sags towards no flow can cross twice, and
// then the smaller flow is not stable. Where they do not meet the reason in
// words.
func Operating(s Stage, stages float64, sys System) (flows []float64, invalid string) {
	low, high := s.Head.Ends()
	k := float64(s.Speed * s.Trim)
	first, last := float64(low*k), float64(high*k)
	spare := func(q float64) float64 {
		h, _ := s.Head.At(math.Min(math.Max(q/k, low), high)) // q/k may miss an end by its last bit
		return float64(stages*float64(h*float64(k*k))) - sys.HeadAt(q)
	}
	before := spare(first)
	if before == 0 {
		flows = append(flows, first)
	}
	for i := 1; i <= steps; i++ {
		a := first + float64((last-first)*float64(i-1)/steps)
		b := first + float64((last-first)*float64(i)/steps)
		after := spare(b)
		switch {
		case after == 0:
			flows = append(flows, b)
		case float64(before*after) < 0:
			flows = append(flows, crossing(spare, a, b, before))
		}
		before = after
	}
	switch {
	case len(flows) > 0:
		return flows, ""
	case before > 0:
		return nil, "the pump runs beyond the end of its curve: the system asks for less head than the pump makes there"
	case before != before:
		return nil, "a value is not a number"
	}
	return nil, "the pump never reaches the head that the system asks for"
}

// crossing halves an interval whose ends have different signs to its last bits.
func crossing(f func(float64) float64, a, b, atA float64) float64 {
	for range 200 {
		x := a/2 + b/2
		if x <= a || x >= b {
			break
		}
		if v := f(x); float64(v*atA) > 0 {
			a = x
		} else {
			b = x
		}
	}
	return b
}
