package shaft

import (
	"math"
	"strings"

	"columnbowl/calcwasm/arith"
	"columnbowl/calcwasm/unit"
)

// RatedPower is the power in W that a line shaft of a published size may carry
// at a speed in rad/s, by the published ratings. It holds for the published
// sizes alone. Speeds are taken as in Friction. The ratings were read from a
// scan: see rows for what was repaired and left out.
// Source: Hydraulic Institute Standards, vertical pumps, line-shaft selection
// table.
func RatedPower(diameter, speed float64) (power float64, invalid string) {
	r := find(diameter)
	if r == nil {
		return math.NaN(), noSize(diameter)
	}
	if !(speed > 0) {
		return math.NaN(), "the speed has to be above 0"
	}
	n := speed / rpm
	v, first, last, ok := at(&r.power, n)
	switch {
	case ok:
		return v * horsepower, ""
	case first == 0:
		return math.NaN(), "the power ratings of " + r.name + " shafts could not be read in the published table"
	}
	_, first, last, _ = at(&r.power, math.Inf(1))
	return math.NaN(), "for " + r.name + " shafts the power ratings that could be read run from " + unit.FormatPlain(first*rpm, turns) + " to " +
		speedText(last) + ", and " + speedText(n) + " is outside them"
}

// RatedThrust is the thrust in N that a line shaft of a published size may
// carry beside its rated power. The values of 1-11/16 and 1-15/16 in were
// repaired in the reading.
// Source: as RatedPower.
func RatedThrust(diameter float64) (thrust float64, invalid string) {
	if r := find(diameter); r != nil {
		return r.thrust * poundForce, ""
	}
	return math.NaN(), noSize(diameter)
}

// Weight is the weight of a plain line shaft for each metre of its length
// (N/m), from the published table: at its sizes as printed, between them by
// the power law through both neighbours. Outside 1 to 2-15/16 in there is no
// value; Rod has one for any size.
// Source: as RatedPower.
func Weight(diameter float64) (perLength float64, invalid string) {
	last := len(rows) - 1
	if !(diameter >= rows[0].diameter()-slack && diameter <= rows[last].diameter()+slack) {
		return math.NaN(), "the table of shaft weights runs from " + rows[0].name + " to " + rows[last].name
	}
	if r := find(diameter); r != nil {
		return r.weight * perFoot, ""
	}
	i := 0
	for i+2 < len(rows) && rows[i+1].diameter() < diameter { // beyond the last row by less than the slack: its interval
		i++
	}
	a, b := &rows[i], &rows[i+1]
	slope := arith.Log(b.weight/a.weight) / arith.Log(b.inches/a.inches)
	return a.weight * perFoot * arith.Pow(diameter/a.diameter(), slope), ""
}

// Rod is the weight of a round steel rod for each metre of its length (N/m):
// steel of 0.2836 lb/in³, in the trade's units 2.673 d² lb/ft (d in in).
// The published table of line shafts lies up to 0.11 % below it.
func Rod(diameter float64) float64 {
	return steel * math.Pi / 4 * float64(diameter*diameter)
}

// noSize lists the published sizes.
func noSize(diameter float64) string {
	names := make([]string, len(rows))
	for i := range rows {
		names[i] = strings.TrimSuffix(rows[i].name, " in")
	}
	asked := "this diameter"
	if diameter == diameter {
		asked = unit.FormatWith(diameter, inches)
	}
	return asked + " is not a published size of line shaft: " + strings.Join(names, ", ") + " in"
}
