// Package water is ordinary water as pumps meet it: how dense and how viscous
// it is, at what pressure it boils, and how heavily the air above it presses.
//
// Conventions. Temperatures are in kelvin, pressures absolute and in pascal,
// densities in kg/m³, viscosities in Pa·s, altitudes in metres above the sea.
// Functions return a value and, where they have none, the reason in words; they
// never extrapolate. They hold for clean liquid water from 0 °C to 100 °C at
// atmospheric pressure; NaN in gives a reason, not a number.
package water

const (
	freezing = 273.15 // K at 0 °C
	boiling  = 373.15 // K at 100 °C; water boils there at sea level, lower down the thermometer on a mountain
	slack    = 1e-9   // K: 32 °F and 212 °F turned into kelvin may miss 0 °C and 100 °C by the last bit
)

// liquid says why there is no value at a temperature, "" if there is one.
func liquid(temperature float64) string {
	switch {
	case temperature >= freezing-slack && temperature <= boiling+slack:
		return ""
	case temperature < freezing:
		return "water freezes at 0 °C (32 °F), and the water properties begin there"
	case temperature > boiling:
		return "the water properties end at 100 °C (212 °F), where water boils at sea level"
	}
	return "the temperature of the water is not a number"
}
