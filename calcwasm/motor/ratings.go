package motor

import "math"

// ratings are the standard ratings in hp: the hp column of NFPA 70 (NEC 2023)
// Table 430.250, which is the list of NEMA MG 1 from 1/2 to 500 hp.
var ratings = []float64{0.5, 0.75, 1, 1.5, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 75,
	100, 125, 150, 200, 250, 300, 350, 400, 450, 500}

// slack is the share by which a power may exceed a rating through the last bits
// of a computation.
const slack = 1e-9

// NextRating is the smallest standard rating (W) that carries a power (W): the
// service factor is left unused. Valid for powers above 0 up to 500 hp (373 kW);
// otherwise the reason in words.
// Source: NEMA MG 1 standard ratings, as in the hp column of NEC Table 430.250.
func NextRating(power float64) (rating float64, invalid string) {
	switch hp := power / horsepower; {
	case hp != hp:
		return math.NaN(), "the power is not a number"
	case hp <= 0:
		return math.NaN(), "no motor is wanted for a power of nothing"
	case hp > ratings[len(ratings)-1]*(1+slack):
		return math.NaN(), "the list of standard ratings ends at 500 hp"
	default:
		for _, r := range ratings {
			if hp <= r*(1+slack) {
				return r * horsepower, ""
			}
		}
	}
	return math.NaN(), "the list of standard ratings ends at 500 hp"
}
