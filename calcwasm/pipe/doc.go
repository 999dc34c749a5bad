// Package pipe is friction in pipes that run full, and the dimensions of
// standard pipes. Other rooms, the column among them, stand on its friction
// factor.
//
// Conventions. SI: lengths and diameters in m, flow in m³/s; friction is head
// over length of pipe (m/m, the same number in ft/ft); the friction factor is
// the Darcy one, four times the Fanning factor that some textbooks print.
// Functions return a value and, where they have none, the reason in words; they
// never extrapolate. NaN in gives a reason, not a number.
package pipe
