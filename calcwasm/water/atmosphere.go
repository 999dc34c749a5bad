package water

import (
	"math"

	"columnbowl/calcwasm/arith"
)

// The lowest layer of the U.S. Standard Atmosphere 1976, Table 4 and eq. 33a.
const (
	seaPressure    = 101325.0       // Pa
	seaTemperature = 288.15         // K
	lapse          = 0.0065         // K/m of geopotential height
	gravity        = 9.80665        // m/s²
	molarMass      = 28.9644e-3     // kg/mol
	gasConstant    = 8.31432        // J/(mol·K), the value of the 1976 standard
	earthRadius    = 6356766.0      // m, effective, eq. 18
	lowestSite     = -1000 * 0.3048 // m
	highestSite    = 36000 * 0.3048 // m, just below the top of the layer
	siteSlack      = 1e-6           // m
	exponent       = gravity * molarMass / (gasConstant * lapse)
)

// Atmosphere is the absolute air pressure in Pa at an altitude in m above the
// sea, in the standard atmosphere. Valid from −1000 ft to 36,000 ft
// (−305 m to 10,973 m), otherwise the reason in words. Weather moves the
// pressure of a day by about 3 % either way.
// Source: U.S. Standard Atmosphere 1976 (NOAA, NASA, USAF), eqs. 18 and 33a.
func Atmosphere(altitude float64) (pressure float64, invalid string) {
	switch {
	case altitude < lowestSite-siteSlack:
		return math.NaN(), "the table of the atmosphere begins at −1000 ft (−305 m)"
	case altitude > highestSite+siteSlack:
		return math.NaN(), "the table of the atmosphere ends at 36,000 ft (10,973 m)"
	case altitude != altitude:
		return math.NaN(), "the altitude is not a number"
	}
	height := earthRadius * altitude / (earthRadius + altitude) // geopotential, eq. 18
	return seaPressure * arith.Pow(1-lapse*height/seaTemperature, exponent), ""
}
