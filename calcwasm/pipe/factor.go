package pipe

import (
	"math"

	"columnbowl/calcwasm/arith"
)

// Bounds of the flow regimes and of the Colebrook equation.
const (
	lastLaminar    = 2000.0 // Reynolds number up to which a pipe's flow is laminar for certain
	firstTurbulent = 4000.0 // and from which it is turbulent
	lastReynolds   = 1e8    // end of the published diagram
	roughest       = 0.05   // relative roughness at the end of the published diagram
)

// FrictionFactor is the Darcy friction factor of a full round pipe: 64/Re in
// laminar flow (exact; Re up to 2000), the Colebrook equation in turbulent flow
// (Re 4000 to 10⁸, relative roughness 0 to 0.05). In between the flow may be
// the one or the other, with factors that differ by half, and there is no
// value. Roughness is relative: height of the roughness over diameter.
//
// The equation is solved to the last bits; against measured pipes it is good
// to about 10 %, most of it in the roughness.
// Sources: C. F. Colebrook, J. Inst. Civ. Engrs 11 (1939) 133; L. F. Moody,
// Trans. ASME 66 (1944) 671, for the limits (both from memory).
func FrictionFactor(reynolds, roughness float64) (factor float64, invalid string) {
	switch {
	case !(reynolds > 0):
		return math.NaN(), "no flow: the Reynolds number has to be above 0"
	case !(roughness >= 0):
		return math.NaN(), "the roughness of a pipe is 0 or more"
	case reynolds <= lastLaminar:
		return 64 / reynolds, ""
	case reynolds < firstTurbulent:
		return math.NaN(), "between Reynolds numbers of 2000 and 4000 the flow is neither surely laminar nor surely turbulent: its friction cannot be told"
	case reynolds > lastReynolds:
		return math.NaN(), "the friction diagram ends at a Reynolds number of 100,000,000"
	case roughness > roughest:
		return math.NaN(), "the friction diagram ends at a roughness of 1/20 of the diameter"
	}
	return colebrook(reynolds, roughness), ""
}

// colebrook solves 1/√f = −2 log₁₀(k/3.7 + 2.51/(Re √f)) by Newton's method
// for x = 1/√f, in which the equation is nearly a straight line: three or four
// steps from the explicit formula of Swamee and Jain exhaust the digits.
func colebrook(reynolds, k float64) float64 {
	rough, smooth := k/3.7, 2.51/reynolds
	x := -2 * arith.Log10(rough+5.74/arith.Pow(reynolds, 0.9))
	for range 12 {
		sum := rough + float64(smooth*x)
		g := x + float64(2*arith.Log10(sum))
		step := g / (1 + 2*smooth/(math.Ln10*sum))
		x -= step
		if math.Abs(step) <= 1e-15*x {
			break
		}
	}
	return 1 / float64(x*x)
}
