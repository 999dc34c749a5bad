package column

import (
	"math"

	"columnbowl/calcwasm/arith"
)

// fullest is how much of the column's bore a shaft or tube may fill.
const fullest = 0.99

// ring sees that there is a ring for the water, and says why not.
func ring(outer, inner float64) string {
	switch {
	case !(outer > 0):
		return "the column needs an inside diameter above 0"
	case !(inner >= 0):
		return "the shaft or tube has a diameter of 0 or more"
	case inner > fullest*outer:
		return "the shaft or tube fills the column: no ring is left for the water"
	}
	return ""
}

// Area is the free area of the ring in m²: π/4 (D² − d²).
func Area(outer, inner float64) (area float64, invalid string) {
	if why := ring(outer, inner); why != "" {
		return math.NaN(), why
	}
	return math.Pi / 4 * (outer - inner) * (outer + inner), ""
}

// Velocity is flow over free area, in m/s; in the trade's units
// 0.4085 Q/(D² − d²) (ft/s, gpm, in).
func Velocity(flow, outer, inner float64) (velocity float64, invalid string) {
	area, invalid := Area(outer, inner)
	if invalid == "" && flow != flow {
		invalid = "there is no flow to go by"
	}
	return flow / area, invalid
}

// HydraulicDiameter is four times the free area over all the wall that the
// water wets, which for a ring is the difference of the diameters (m). The
// wetted wall is that of both: π (D + d).
func HydraulicDiameter(outer, inner float64) (diameter float64, invalid string) {
	if why := ring(outer, inner); why != "" {
		return math.NaN(), why
	}
	return outer - inner, ""
}

// Reynolds is the Reynolds number of the ring, counted with its hydraulic
// diameter: ρ V (D − d)/μ.
func Reynolds(flow, outer, inner, density, viscosity float64) (reynolds float64, invalid string) {
	v, invalid := Velocity(flow, outer, inner)
	if invalid == "" && (!(density > 0) || !(viscosity > 0)) {
		invalid = "density and viscosity have to be above 0"
	}
	return density * v * (outer - inner) / viscosity, invalid
}

// shape is how much more a ring rubs in laminar flow than a pipe of the same
// hydraulic diameter: f·Re over 64. It is 1 for an empty pipe and grows to 1.5
// as the ring gets thin:
//
//	(1 − r)²/(1 + r² + (1 − r²)/ln r),  r = d/D
//
// exact for laminar flow in a concentric ring (H. Lamb; textbooks).
func shape(r float64) float64 {
	if r == 0 {
		return 1
	}
	r2 := float64(r * r)
	gap := 1 - r
	return float64(gap*gap) / (1 + r2 + (1-r2)/arith.Log(r))
}
