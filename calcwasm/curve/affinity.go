package curve

import (
	"math"
	"strconv"

	"columnbowl/calcwasm/arith"
)

// How far the affinity laws are trusted (common practice; a builder's sheet for
// the speed or the trim in question is better).
const (
	slowest  = 0.5  // speed over speed of the curve
	fastest  = 1.2  // above it the pressure rating, the shaft and NPSH are new questions
	smallest = 0.85 // impeller diameter over full diameter
)

// slack is the share by which a value may lie outside a limit through the last
// bits of a computation.
const slack = 1e-9

// rpm is 1 turn a minute in rad/s.
const rpm = 2 * math.Pi / 60

// SpeedRatio is the speed over the speed for which a curve is drawn (both in
// rad/s). With it flows go in proportion, heads with its square and powers with
// its cube, at unchanged efficiency. Valid from 0.5 to 1.2, otherwise the reason
// in words.
func SpeedRatio(speed, drawn float64) (ratio float64, invalid string) {
	if !(speed > 0 && drawn > 0) {
		return math.NaN(), "a curve belongs to a speed above zero"
	}
	ratio = speed / drawn
	if ratio < slowest-slack || ratio > fastest+slack {
		return math.NaN(), "the curve is drawn for " + turns(drawn) + " rpm and is carried to speeds from " +
			turns(slowest*drawn) + " to " + turns(fastest*drawn) + " rpm only; " + turns(speed) + " rpm is outside"
	}
	return ratio, ""
}

func turns(speed float64) string {
	return strconv.FormatFloat(math.Round(speed/rpm), 'f', -1, 64)
}

// Stage is a head curve at a speed and with a trim.
type Stage struct {
	Head  Line    // one full-diameter stage at its own speed
	Speed float64 // speed over the speed of the curve
	Trim  float64 // impeller diameter over full diameter
}

// HeadAt is the head of one stage at a flow: flows go with Speed·Trim, heads
// with its square. Outside the carried data it is NaN and says so.
func (s Stage) HeadAt(flow float64) (head float64, invalid string) {
	k := float64(s.Speed * s.Trim)
	h, invalid := s.Head.At(flow / k)
	return float64(h * float64(k*k)), invalid
}

// AffinityFactor is the factor k with which one stage makes a head (m) at a flow
// (m3/s): its curve shrunk to flows × k and heads × k². It stands for a speed
// ratio, a trim ratio or their product. The point of the whole curve that the
// wanted one comes from lies on the parabola H ~ Q² through it: the square root
// of the heads alone is too small a factor, because the flow shrinks too.
//
// Source: the affinity laws. Valid for a curve that does not rise; where the
// parabola misses the curve, the reason in words.
func AffinityFactor(c Line, flow, head float64) (factor float64, invalid string) {
	first, last := c.Ends()
	if !(flow >= 0 && head > 0) {
		return math.NaN(), "the affinity laws carry a flow that is not negative and a head above zero"
	}
	if flow < slack*last { // a flow of nothing: the search below would lose its last bits
		h, invalid := c.At(0)
		return math.Sqrt(head / h), invalid
	}
	// below is how far the curve lies under the parabola, over the flow where it
	// meets it; it rises with the flow.
	below := func(x float64) float64 {
		h, _ := c.At(x)
		r := x / flow
		return float64(head*float64(r*r)) - h
	}
	switch {
	case below(last) < 0:
		return math.NaN(), "the curve ends before the point that this one comes from by the affinity laws"
	case below(first) > 0:
		return math.NaN(), "the curve begins behind the point that this one comes from by the affinity laws"
	}
	low, high := first, last
	for range 200 {
		x := low/2 + high/2
		if x <= low || x >= high {
			break
		}
		if below(x) < 0 {
			low = x
		} else {
			high = x
		}
	}
	return flow / high, ""
}

// TrimFor is the trim with which one stage makes a head at a flow, at the speed
// of the curve. Valid down to 0.85; where the full diameter is too weak, or the
// cut too deep, the reason in words.
func TrimFor(c *Curve, flow, head float64) (trim float64, invalid string) {
	full, invalid := c.At(flow)
	switch {
	case invalid != "":
		return math.NaN(), invalid
	case !(flow > 0 && head > 0):
		return math.NaN(), "the trim is found at a flow and a head above zero"
	case head > full*(1+slack):
		return math.NaN(), "even a full-diameter impeller does not make this head here"
	}
	trim, invalid = AffinityFactor(c, flow, head)
	if invalid == "" && trim < smallest {
		return math.NaN(), "the impeller would be cut below 0.85 of its diameter: take fewer stages or a smaller bowl"
	}
	return math.Min(trim, 1), invalid
}

// SpecificSpeed is speed × flow^½ / head^¾ of one full-diameter stage at its
// best efficiency, in rad/s, m3/s and m. NaN if one of them is not above zero.
// Source: definition; in rpm, gpm and ft it is the US index.
func SpecificSpeed(speed, flow, head float64) float64 {
	if !(speed > 0 && flow > 0 && head > 0) {
		return math.NaN()
	}
	return float64(speed*math.Sqrt(flow)) / arith.Pow(head, 0.75)
}
