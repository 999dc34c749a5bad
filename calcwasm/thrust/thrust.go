package thrust

import "math"

// Hydraulic is the downward push of the water on all impellers, in N: thrust
// factor (N/m) × total head of the bowls (m) × specific gravity. The factor
// counts for the total head, so the stages are in it already.
// Source: usage of the Hydraulic Institute and AWWA (from memory).
func Hydraulic(factor, head, gravity float64) float64 { return factor * head * gravity }

// Total is what the driver's thrust bearing carries: the hydraulic thrust and
// the weight of all that turns, in N.
func Total(hydraulic, weight float64) float64 { return hydraulic + weight }

// shutoffRise is how much larger the thrust factor is at no flow than at the
// duty: a teaching rule of this book, not a published value.
const shutoffRise = 1.1

// Largest is the thrust in N at shutoff: the factor is taken a tenth larger
// there (a teaching rule of this book), the head is the shutoff head in m.
func Largest(factor, shutoffHead, gravity, weight float64) float64 {
	return float64(shutoffRise*Hydraulic(factor, shutoffHead, gravity)) + weight
}

// BearingLoss is the power in W that a driver's thrust bearing takes because of
// its load: 0.0075 hp for each 100 rpm and each 1000 lbf. Speed in rad/s, thrust
// in N; no value for a thrust that lifts.
// Source: Hydraulic Institute Standards, vertical pumps, and the appendix of
// ANSI/AWWA E101 (both from memory).
func BearingLoss(speed, thrust float64) (power float64, invalid string) {
	if !(speed >= 0) || !(thrust >= 0) {
		return math.NaN(), "speed and thrust of a loaded bearing are 0 or more"
	}
	return 0.0075 * horsepower * (speed / rpm / 100) * (thrust / poundForce / 1000), ""
}

// Margin is the rating of a thrust bearing over the largest thrust on it. At 1
// nothing is in hand.
func Margin(rating, largest float64) (margin float64, invalid string) {
	if !(largest > 0) || rating != rating {
		return math.NaN(), "without a thrust there is no margin"
	}
	return rating / largest, ""
}

// EyeMomentum is the upward force in N of the water that runs into one impeller
// and is turned sideways there: density (kg/m³) × flow (m³/s) × velocity in the
// eye (m/s). At a start against an empty column the pressure that pushes the
// impellers down is not there yet, and this force is.
// Source: momentum; the trade's estimate of the momentary upthrust.
func EyeMomentum(density, flow, velocity float64) (force float64, invalid string) {
	if !(density > 0) || !(flow >= 0) || !(velocity >= 0) {
		return math.NaN(), "density has to be above 0, flow and velocity 0 or more"
	}
	return density * flow * velocity, ""
}
