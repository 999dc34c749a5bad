package column

import (
	"math"

	"columnbowl/calcwasm/pipe"
)

const (
	gravity  = 9.80665     // m/s²
	narrow   = 1.9 * inch  // m: the pipe at which the C-factor formula begins
	inch     = 0.0254      // m
	twiceG   = 2 * gravity // m/s²
	circle   = math.Pi / 4 // area of a circle over its diameter squared
	noHeight = "the roughness of a wall is 0 or more"
)

// Friction is the friction of the ring, head over length, by Darcy and
// Weisbach with the hydraulic diameter:
//
//	h/L = f/(D − d) · V²/2g
//
// In laminar flow it is exact. In turbulent flow the factor f is Colebrook's,
// taken at the effective diameter (D − d)/s, where s is what laminar flow in
// the ring takes more than in a pipe: the published correction, which brings
// the error of the plain hydraulic diameter, about 10 % too little, down to
// about 5 %. Between Reynolds numbers of 2000 and 4000, counted with the
// effective diameter, there is no value. Without an inner diameter it is the
// friction of the full pipe. Flow in m³/s, diameters and roughness in m,
// density in kg/m³, viscosity in Pa·s.
// Source: the effective diameter from Fluid Mechanics (McGraw-Hill), section
// on noncircular ducts (from memory); laminar flow: textbooks.
func Friction(flow, outer, inner, density, viscosity, roughness float64) (slope float64, invalid string) {
	re, invalid := Reynolds(flow, outer, inner, density, viscosity)
	if invalid != "" {
		return math.NaN(), invalid
	}
	if !(roughness >= 0) {
		return math.NaN(), noHeight
	}
	s := shape(inner / outer)
	hydraulic := outer - inner
	f, invalid := pipe.FrictionFactor(re/s, roughness*s/hydraulic)
	if invalid != "" {
		return math.NaN(), invalid
	}
	v, _ := Velocity(flow, outer, inner)
	return f / hydraulic * float64(v*v) / twiceG, ""
}

// CFactor is the friction of the ring, head over length, by the definition of
// the Hazen-Williams formula, V = 1.318 C R^0.63 S^0.54 (ft, s), with the
// hydraulic radius R = (D − d)/4 of the ring. The coefficient C is a pure
// number from 60 to 160. It is meant for water near 60 °F in turbulent flow; a
// ring whose diameters differ by less than the bore of a 2 in pipe has no
// value. Without an inner diameter it is the formula for the full pipe.
// Source: the definition as for pipes; taking the radius of the ring in it is
// this book's teaching method.
func CFactor(flow, outer, inner, c float64) (slope float64, invalid string) {
	v, invalid := Velocity(flow, outer, inner)
	if invalid != "" {
		return math.NaN(), invalid
	}
	bore := outer - inner // of the pipe with the same hydraulic radius
	if bore < narrow {
		return math.NaN(), "the ring is narrower than a 2 in pipe is wide: the C-factor formula does not reach so far"
	}
	return pipe.HazenWilliams(v*circle*float64(bore*bore), bore, c)
}
