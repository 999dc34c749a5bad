// Package motor holds what published tables say of three-phase motors: the
// standard ratings, the nominal efficiencies and the code's full-load currents.
//
// Conventions. All values are SI: powers in W, voltages in V, currents in A,
// efficiencies as fractions. A function that can be asked for something outside
// its table returns NaN and the reason in words, without a full stop. Nothing
// is extrapolated, and nothing is read between two ratings: a motor is made in
// the sizes of the table.
package motor

import (
	"math"
	"strconv"
)

// horsepower is 550 ft·lbf/s in W, exact (NIST SP 811 B.8).
const horsepower = 550 * 0.3048 * 4.4482216152605

// atRating is how far a power may be off a rating, as a share of it, and still
// be taken for it: 75 kW is sold as 100 hp (74.57 kW).
const atRating = 0.01

// find is the place of a rating (W) in a list of ratings in hp, or -1.
func find(ratings []float64, rating float64) int {
	for i, r := range ratings {
		if math.Abs(rating/horsepower-r) <= atRating*r {
			return i
		}
	}
	return -1
}

// noRating says that a table has no such motor.
func noRating(ratings []float64, rating float64, table string) string {
	hp := rating / horsepower
	first, last := ratings[0], ratings[len(ratings)-1]
	text := "the " + table + " has no motor of " + number(math.Round(hp*100)/100) + " hp"
	switch {
	case hp != hp:
		return "the rating is not a number"
	case hp < first:
		return text + ": it begins at " + number(first) + " hp"
	case hp > last:
		return text + ": it ends at " + number(last) + " hp"
	}
	for i := range ratings[1:] {
		if hp < ratings[i+1] {
			return text + ": the sizes beside it are " + number(ratings[i]) + " and " + number(ratings[i+1]) + " hp"
		}
	}
	return text
}

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
