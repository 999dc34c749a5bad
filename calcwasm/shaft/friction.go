package shaft

import (
	"math"

	"columnbowl/calcwasm/arith"
	"columnbowl/calcwasm/unit"
)

// Friction is the power that the bearings of a line shaft take, for each metre
// of its length (W/m): for an open shaft in water, or an enclosed one with
// drip-fed oil or water. A flooded enclosing tube takes twice as much.
// Diameter in m, speed in rad/s.
//
// It is the published table. A speed within 3 % of a heading takes that
// heading's cell scaled in step with the speed; between headings it is linear;
// between two sizes it follows the power law through both of them. Sizes under
// 1 in and over 2-15/16 in, and speeds beyond the cells of the sizes next to
// it, have no value. The cells are printed to 0.01 hp and the sources of the
// reading allow 0.03 to 0.05 hp per 100 ft.
// Source: Hydraulic Institute Standards, vertical pumps, line-shaft mechanical
// friction table, read in a scanned reprint.
func Friction(diameter, speed float64) (perLength float64, invalid string) {
	first, last := &rows[0], &rows[len(rows)-1]
	switch {
	case !(speed > 0):
		return math.NaN(), "a shaft that stands has no friction loss: the speed has to be above 0"
	case !(diameter >= first.diameter()-slack):
		return math.NaN(), "the friction table begins at " + first.name + " shafts"
	case diameter > last.diameter()+slack:
		return math.NaN(), "the friction table ends at " + last.name + " shafts"
	}
	n := speed / rpm
	small, large := neighbours(diameter)
	v0, ok0 := small.friction0(n)
	v1, ok1 := large.friction0(n)
	if own := find(diameter); own != nil && own.hasFriction() && !(ok0 && ok1) {
		small, large = own, own
		v0, ok0 = own.friction0(n)
		v1, ok1 = v0, ok0
	}
	switch {
	case !ok0:
		return math.NaN(), small.outside(n)
	case !ok1:
		return math.NaN(), large.outside(n)
	case small == large:
		return v0 * perHundred, ""
	}
	slope := arith.Log(v1/v0) / arith.Log(large.inches/small.inches)
	return v0 * perHundred * arith.Pow(diameter/small.diameter(), slope), ""
}

func (r *row) friction0(n float64) (float64, bool) {
	v, _, _, ok := at(&r.friction, n)
	return v, ok
}

func (r *row) hasFriction() bool { return r.friction != [len(columns)]float64{} }

// neighbours are the sizes with friction on both sides of a diameter that lies
// inside the table.
func neighbours(diameter float64) (small, large *row) {
	for i := range rows {
		r := &rows[i]
		if !r.hasFriction() {
			continue
		}
		if small == nil || r.diameter() <= diameter {
			small = r
		}
		if large == nil && r.diameter() >= diameter {
			large = r
		}
	}
	if large == nil {
		large = small
	}
	return small, large
}

// outside says at which speeds the table has friction for this size.
func (r *row) outside(n float64) string {
	_, first, last, _ := at(&r.friction, math.Inf(1))
	return "for " + r.name + " shafts the friction table runs from " + unit.FormatPlain(first*rpm, turns) + " to " + speedText(last) +
		", and " + speedText(n) + " is outside it"
}
