// Package suction is what the water needs over an open inlet. Head over the
// eye and NPSH are plain sums, which the book's pages state themselves.
//
// Conventions. SI: flow in m³/s, lengths in m. Functions return a value and,
// where they have none, the reason in words. NaN in gives a reason.
package suction

import "math"

const gravity = 9.80665 // m/s², standard

// The bells for which the standard is written, as wide as its figures go (from
// memory), and the velocities beyond which its rule no longer applies.
const (
	smallestBell = 0.10 // m
	largestBell  = 3.0  // m
	fastest      = 3.7  // m/s (12 ft/s): no inlet bell is chosen as small as that
)

// MinimumSubmergence is the depth in m of water over an open inlet bell that
// keeps a surface vortex from drawing air: S = D (1.0 + 2.3 F), F = V/√(gD),
// with D the outside diameter of the bell in m and V the mean velocity through
// it. Flow in m³/s, 0 or more; bells of 0.10 m to 3.0 m (4 in to 118 in) and
// velocities up to 3.7 m/s (12 ft/s), otherwise the reason in words.
//
// It is a rule for intakes with a free surface and even approach; it is no
// measure of what happens in a well, and no NPSH.
// Source: ANSI/HI 9.8 (1998, 2012, 2018), read in secondary texts; the limits
// from memory.
func MinimumSubmergence(flow, bell float64) (depth float64, invalid string) {
	switch {
	case !(flow >= 0):
		return math.NaN(), "the flow into a bell is 0 or more"
	case !(bell >= smallestBell && bell <= largestBell):
		return math.NaN(), "the rule for submergence is for inlet bells of 4 in to 118 in (100 mm to 3000 mm)"
	}
	velocity := flow / (math.Pi / 4 * float64(bell*bell))
	if velocity > fastest {
		return math.NaN(), "the water would enter the bell faster than 12 ft/s (3.7 m/s), which the rule for submergence does not cover"
	}
	return bell * (1 + 2.3*velocity/math.Sqrt(gravity*bell)), ""
}
