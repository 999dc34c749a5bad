// Package column is the flow in the column: the ring between the column pipe
// and the shaft or the enclosing tube in it, and the full pipe where there is
// neither, as in a submersible.
//
// Conventions. SI: flow in m³/s, diameters in m, density in kg/m³, dynamic
// viscosity in Pa·s, roughness as a height in m; friction is head over length
// (m/m, the same number in ft/ft). The inner diameter is that of the shaft or
// the outside of the tube; 0 is an empty pipe. The ring is taken as smooth-sided
// along its length and concentric: couplings, bearing retainers and spiders are
// not in it. Functions return a value and, where they have none, the reason in
// words. NaN in gives a reason, not a number.
package column
