package unit

import "math"

// The exact definitions all factors are made of. They are untyped constants, so
// the arithmetic on them is exact and each factor is rounded once.
// Sources: the international yard and pound agreement of 1959, the definitions
// in NIST SP 811 appendix B, and the SI brochure. Values from memory; the
// published table testdata/published/units.csv checks the results.
const (
	inch       = 0.0254                   // m, exact
	foot       = 12 * inch                // m
	yard       = 3 * foot                 // m
	mile       = 5280 * foot              // m
	acre       = 43560 * foot * foot      // m², on the international foot
	gallon     = 231 * inch * inch * inch // m³, US liquid gallon, exact
	litre      = 0.001                    // m³, exact
	minute     = 60.0                     // s
	hour       = 60 * minute              // s
	day        = 24 * hour                // s
	pound      = 0.45359237               // kg, exact
	gravity    = 9.80665                  // m/s², standard acceleration of free fall, exact
	poundForce = pound * gravity          // N
	psi        = poundForce / (inch * inch)
	horsepower = 550 * foot * poundForce // W: 550 ft·lbf/s
	atmosphere = 101325.0                // Pa, exact
	mercury    = 13595.1                 // kg/m³, conventional density of mercury
	turn       = 2 * math.Pi             // rad in one turn
	kelvinAt0C = 273.15                  // K at 0 °C, exact
	kelvinAt0F = 459.67 * 5 / 9          // K at 0 °F, exact
	gpm        = gallon / minute         // m³/s
	cubicFoot  = foot * foot * foot      // m³
	kWh        = 1000 * hour             // J
	rpm        = turn / minute           // rad/s
)

// specificSpeedUS is the SI value of one step of the US index: rpm, gpm and ft
// in the form N·Q^(1/2)/h^(3/4). Square roots are exactly rounded everywhere,
// so h^(3/4) is made of two of them.
var specificSpeedUS = rpm * math.Sqrt(gpm) / (math.Sqrt(foot) * math.Sqrt(math.Sqrt(foot)))
