// Package shaft is the line shaft of a vertical turbine pump: the power that
// its bearings eat, what the published table says it may carry, the stress in
// it, its weight and its stretch, and the choice of its size.
//
// Conventions. SI: diameters and lengths in m, speed in rad/s, torque in N·m
// for each radian, force in N, stress in Pa, power in W. Shafts are round, solid
// and of steel. Functions return a value and, where they have none, the reason
// in words; they never go beyond the published table. NaN in gives a reason,
// not a number.
package shaft

import "math"

const (
	inch       = 0.0254                      // m, exact
	foot       = 12 * inch                   // m
	poundForce = 0.45359237 * 9.80665        // N, exact
	horsepower = 550 * foot * poundForce     // W
	rpm        = 2 * math.Pi / 60            // rad/s
	perHundred = horsepower / (100 * foot)   // W/m in 1 hp/100 ft
	perFoot    = poundForce / foot           // N/m in 1 lbf/ft
	slack      = 0.1e-3                      // m: how near a diameter must be to a published size to count as it
	near       = 0.03                        // a speed within 3 % of a heading belongs to its column
	steel      = 0.2836 * poundForce / inch3 // N/m³: steel of 0.2836 lb/in³
	inch3      = inch * inch * inch
)
