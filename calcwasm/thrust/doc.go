// Package thrust is the axial load of a vertical turbine pump: the push of the
// water on the impellers, the weight that hangs on the shaft, what the driver's
// thrust bearing must bear and what it costs, and the push upwards that a start
// against an empty column can bring.
//
// Conventions. SI: forces in N, heads in m, the thrust factor in N for each m of
// head, speed in rad/s, power in W. Downward is positive. Specific gravity is
// counted as everywhere in the book: 1 is the water for which the thrust factor
// is printed. NaN in gives NaN, or a reason.
package thrust

import "math"

const (
	foot       = 0.3048                  // m
	poundForce = 0.45359237 * 9.80665    // N
	horsepower = 550 * foot * poundForce // W
	rpm        = 2 * math.Pi / 60        // rad/s
)
