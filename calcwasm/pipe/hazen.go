package pipe

import (
	"math"

	"columnbowl/calcwasm/arith"
)

const (
	foot           = 0.3048 // m
	smallestBore   = 1.9 * foot / 12
	leastC, mostC  = 60.0, 160.0
	viscosityAt60F = 1.217e-5 * foot * foot // m²/s, the water of the Hydraulic Institute's pipe tables
)

// HazenWilliams is the friction of water in a full pipe, head over length, by
// the definition V = 1.318 C R^0.63 S^0.54 (ft, s; R is a quarter of the bore).
// Flow in m³/s, bore in m, the coefficient C a pure number from 60 to 160.
//
// It holds for water near 60 °F in turbulent flow, in pipes of 2 in and more;
// smaller pipes (a bore under 1.9 in) and flow that is laminar or may be
// (Reynolds number under 4000 at 60 °F) have no value. Colder and warmer water
// is not told apart. Other constants in print, made by rounding this
// definition, lie from 0.4 % below it to 1.8 % above.
// Source: A. Hazen and G. S. Williams, Hydraulic Tables (1905), from memory;
// the constant as in the references' list of forms.
func HazenWilliams(flow, bore, c float64) (slope float64, invalid string) {
	switch {
	case !(flow > 0):
		return math.NaN(), "no flow: the formula has no friction for it"
	case !(bore >= smallestBore):
		return math.NaN(), "the Hazen-Williams formula is for pipes of 2 in and more: use the friction factor for smaller ones"
	case !(c >= leastC && c <= mostC):
		return math.NaN(), "Hazen-Williams coefficients of pipes run from 60 to 160"
	}
	velocity := flow / (math.Pi / 4 * float64(bore*bore))
	if velocity*bore/viscosityAt60F < firstTurbulent {
		return math.NaN(), "the water creeps: the Hazen-Williams formula is for turbulent flow"
	}
	radius := bore / 4 / foot
	return arith.Pow(velocity/foot/(1.318*c*arith.Pow(radius, 0.63)), 1/0.54), ""
}
