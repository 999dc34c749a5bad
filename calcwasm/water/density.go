package water

import "math"

// Density is the density in kg/m³ of liquid water of a temperature in K under
// the pressure of the atmosphere (0.1 MPa). Valid from 0 °C to 100 °C,
// otherwise the reason in words.
//
// A hundred metres of water above make it 0.05 % denser, dissolved salts more:
// 1 % is about 13 g of salt in a litre. Uncertainty of the equation: 0.0001 %
// at 20 °C, 0.02 % at 100 °C (the release's own, from memory).
// Source: IAPWS SR6-08(2011), Revised Supplementary Release on Properties of
// Liquid Water at 0.1 MPa, eq. 2 and Table 1.
func Density(temperature float64) (density float64, invalid string) {
	if why := liquid(temperature); why != "" {
		return math.NaN(), why
	}
	return densityOf(temperature), ""
}

// Constants of SR6-08, Table 1.
const (
	specificGasConstant = 461.51805 // J/(kg·K)
	scaleTemperature    = 10.0      // K
	scalePressure       = 1e5       // Pa
	poleAbove           = 593.0     // K
	poleBelow           = 232.0     // K
)

// densityOf is eq. 2 of SR6-08: the inverse of a specific volume in powers of
// α and β, which grow towards the two poles.
func densityOf(temperature float64) float64 {
	a := scaleTemperature / (poleAbove - temperature)
	b := scaleTemperature / (temperature - poleBelow)
	a2 := a * a
	a4 := a2 * a2
	hot := float64(8.32299658e9*a) - 1.63552118e9 // powers 9 and 8
	hot = float64(hot*a) + 1.00231247e8           // 7
	hot = float64(float64(hot*a)*a) - 2.22521604e5
	hot = float64(hot*a) + 6.74458446e3 // 4
	cold := 0.0
	for _, c := range [...]float64{-1.19946761e-2, 3.38713507e-2, -4.23546241e-2, 3.11337859e-2, -1.53195665e-2, 5.78545292e-3} {
		cold = float64((cold + c) * b)
	}
	volume := specificGasConstant * scaleTemperature / scalePressure * (1.93763157e-2 + float64(hot*a4) + cold)
	return 1 / volume
}
