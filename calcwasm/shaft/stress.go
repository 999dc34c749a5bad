package shaft

import "math"

// Torque is the twist in N·m for each radian that a power in W makes at a
// speed in rad/s: T = P/ω, the trade's 5252 hp/rpm (lbf·ft). A shaft that
// stands has none.
func Torque(power, speed float64) (torque float64, invalid string) {
	if !(speed > 0) || power != power {
		return math.NaN(), "the speed has to be above 0"
	}
	return power / speed, ""
}

// Stress is the largest shear stress in Pa in a round shaft under torque (N·m
// for each radian) and pull (N), at a diameter in m: the root of the threads
// or any undercut, where the shaft is thinnest.
//
//	S = √((2F/πd²)² + (16T/πd³)²)
//
// In the trade's units the second item is 321,000 P/(N d³). It takes torque
// and pull as steady; bending, shock and the notch of the thread are not in it.
// Source: ANSI/AWWA E101-88, line-shaft clause (from memory); strength of
// materials.
func Stress(torque, thrust, diameter float64) (stress float64, invalid string) {
	if !(diameter > 0) || torque != torque || thrust != thrust {
		return math.NaN(), "the diameter has to be above 0"
	}
	d2 := float64(diameter * diameter)
	pull := 2 * thrust / (math.Pi * d2)
	twist := 16 * torque / (math.Pi * float64(d2*diameter))
	return math.Sqrt(float64(pull*pull) + float64(twist*twist)), ""
}

// Size is the smallest published size, as its diameter in m, in which the
// stress of Stress stays within the allowed one (Pa). The stress is counted at
// the diameter less the cut (m), which is what thread and undercut take off.
// Where no published size is enough, or nothing is left of the smallest one,
// there is none.
func Size(torque, thrust, allowed, cut float64) (diameter float64, invalid string) {
	switch {
	case !(allowed > 0):
		return math.NaN(), "the allowed stress has to be above 0"
	case !(cut >= 0) || torque != torque || thrust != thrust:
		return math.NaN(), "the thread takes 0 or more off the diameter"
	}
	for i := range rows {
		d := rows[i].diameter()
		if d <= cut {
			continue
		}
		if s, _ := Stress(torque, thrust, d-cut); s <= allowed {
			return d, ""
		}
	}
	return math.NaN(), "no published size is strong enough: the list of line shafts ends at " + rows[len(rows)-1].name
}

// Stretch is how much longer a shaft gets, in m, when a force in N pulls at it:
// e = F L/(A E), length and diameter in m, modulus of elasticity in Pa. It holds
// while the stress stays well under the yield point.
// Source: strength of materials.
func Stretch(force, length, diameter, modulus float64) (stretch float64, invalid string) {
	if !(diameter > 0) || !(modulus > 0) || !(length >= 0) || force != force {
		return math.NaN(), "diameter and modulus have to be above 0"
	}
	return force * length / (math.Pi / 4 * float64(diameter*diameter) * modulus), ""
}
