package water

import (
	"math"

	"columnbowl/calcwasm/arith"
)

// The critical point of ordinary water, the scale of SR1-86(1992), section 1.
const (
	criticalTemperature = 647.096  // K
	criticalPressure    = 22.064e6 // Pa
	criticalDensity     = 322.0    // kg/m³, the scale of R12-08
)

// VapourPressure is the absolute pressure in Pa at which water of a
// temperature in K boils: its saturation pressure. Valid from 0 °C to 100 °C,
// otherwise the reason in words. Just below the triple point (0.01 °C) the
// equation is taken 0.01 K further than its release goes.
//
// Uncertainty of the equation: 0.025 % up to 100 °C (the release's own).
// Source: IAPWS SR1-86(1992), Revised Supplementary Release on Saturation
// Properties of Ordinary Water Substance, eq. 1.
func VapourPressure(temperature float64) (pressure float64, invalid string) {
	if why := liquid(temperature); why != "" {
		return math.NaN(), why
	}
	return saturationPressure(temperature), ""
}

// saturationPressure is eq. 1 of SR1-86 over the whole of its range,
// 273.16 K to 647.096 K.
func saturationPressure(temperature float64) float64 {
	t := 1 - temperature/criticalTemperature
	root := math.Sqrt(t)
	t2 := t * t
	t3 := t2 * t
	t4 := t2 * t2
	sum := float64(-7.85951783*t) + float64(1.84408259*float64(t*root)) + float64(-11.7866497*t3) +
		float64(22.6807411*float64(t3*root)) + float64(-15.9618719*t4) + float64(1.80122502*float64(float64(t4*t3)*root))
	return criticalPressure * arith.Exp(criticalTemperature/temperature*sum)
}
