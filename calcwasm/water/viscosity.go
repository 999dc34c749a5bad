package water

import (
	"math"

	"columnbowl/calcwasm/arith"
)

// Viscosity is the dynamic viscosity in Pa·s of liquid water of a temperature
// in K, at the density that Density gives. Valid from 0 °C to 100 °C,
// otherwise the reason in words.
//
// The enhancement near the critical point is left out (μ₂ = 1), as the release
// allows away from it. Uncertainty of the formulation: 1 % for liquid water.
// Source: IAPWS R12-08, Release on the IAPWS Formulation 2008 for the
// Viscosity of Ordinary Water Substance, eqs. 10 to 12.
func Viscosity(temperature float64) (viscosity float64, invalid string) {
	if why := liquid(temperature); why != "" {
		return math.NaN(), why
	}
	return viscosityAt(temperature, densityOf(temperature)), ""
}

// viscosityOfGas are the coefficients of R12-08, Table 1.
var viscosityOfGas = [4]float64{1.67752, 2.20462, 0.6366564, -0.241605}

// viscosityOfDensity are the coefficients of R12-08, Table 2: rows are powers
// of 1/T − 1, columns powers of the reduced density less 1.
var viscosityOfDensity = [6][7]float64{
	{0.520094, 0.222531, -0.281378, 0.161913, -0.0325372, 0, 0},
	{0.0850895, 0.999115, -0.906851, 0.257399, 0, 0, 0},
	{-1.08374, 1.88797, -0.772479, 0, 0, 0, 0},
	{-0.289555, 1.26613, -0.489837, 0, 0.0698452, 0, -0.00435673},
	{0, 0, -0.257040, 0, 0, 0.00872102, 0},
	{0, 0.120573, 0, 0, 0, 0, -0.000593264},
}

// viscosityAt is μ₀·μ₁ of R12-08 in Pa·s at a temperature in K and a density
// in kg/m³.
func viscosityAt(temperature, density float64) float64 {
	t := temperature / criticalTemperature
	inverse, d := 1/t, density/criticalDensity-1
	gas := 0.0 // eq. 11
	for i := len(viscosityOfGas) - 1; i >= 0; i-- {
		gas = float64(gas*inverse) + viscosityOfGas[i]
	}
	sum := 0.0 // eq. 12, both sums by Horner's rule
	for i := len(viscosityOfDensity) - 1; i >= 0; i-- {
		row := 0.0
		for j := len(viscosityOfDensity[i]) - 1; j >= 0; j-- {
			row = float64(row*d) + viscosityOfDensity[i][j]
		}
		sum = float64(sum*(inverse-1)) + row
	}
	return 1e-6 * (100 * math.Sqrt(t) / gas) * arith.Exp(density/criticalDensity*sum)
}
