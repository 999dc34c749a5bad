package motor

import "math"

// Class is a level of nominal efficiency.
type Class uint8

const (
	EnergyEfficient Class = iota // NEMA MG 1 Table 12-11
	Premium                      // NEMA MG 1 Table 12-12
)

// Enclosure says how the motor is housed.
type Enclosure uint8

const (
	Open     Enclosure = iota // air of the room passes through it
	Enclosed                  // a fan blows over its closed frame
)

// efficiencyRatings are the rows of both tables, in hp.
var efficiencyRatings = []float64{1, 1.5, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 125, 150, 200}

// efficiencies are nominal full-load efficiencies in per cent: open motors of
// 2, 4 and 6 poles, then enclosed ones. 0 where the table has no motor.
//
// Sources: 10 CFR 431.25(a) as of 2005 (levels of the Energy Policy Act of
// 1992) = NEMA MG 1 Table 12-11; 10 CFR 431.25 Table 1 (from 19 December 2010)
// = NEMA MG 1 Table 12-12. Both exact.
var efficiencies = [2][][6]float64{{
	{0, 82.5, 80.0, 75.5, 82.5, 80.0},    // 1 hp
	{82.5, 84.0, 84.0, 82.5, 84.0, 85.5}, // 1.5 hp
	{84.0, 84.0, 85.5, 84.0, 84.0, 86.5}, // 2 hp
	{84.0, 86.5, 86.5, 85.5, 87.5, 87.5}, // 3 hp
	{85.5, 87.5, 87.5, 87.5, 87.5, 87.5}, // 5 hp
	{87.5, 88.5, 88.5, 88.5, 89.5, 89.5}, // 7.5 hp
	{88.5, 89.5, 90.2, 89.5, 89.5, 89.5}, // 10 hp
	{89.5, 91.0, 90.2, 90.2, 91.0, 90.2}, // 15 hp
	{90.2, 91.0, 91.0, 90.2, 91.0, 90.2}, // 20 hp
	{91.0, 91.7, 91.7, 91.0, 92.4, 91.7}, // 25 hp
	{91.0, 92.4, 92.4, 91.0, 92.4, 91.7}, // 30 hp
	{91.7, 93.0, 93.0, 91.7, 93.0, 93.0}, // 40 hp
	{92.4, 93.0, 93.0, 92.4, 93.0, 93.0}, // 50 hp
	{93.0, 93.6, 93.6, 93.0, 93.6, 93.6}, // 60 hp
	{93.0, 94.1, 93.6, 93.0, 94.1, 93.6}, // 75 hp
	{93.0, 94.1, 94.1, 93.6, 94.5, 94.1}, // 100 hp
	{93.6, 94.5, 94.1, 94.5, 94.5, 94.1}, // 125 hp
	{93.6, 95.0, 94.5, 94.5, 95.0, 95.0}, // 150 hp
	{94.5, 95.0, 94.5, 95.0, 95.0, 95.0}, // 200 hp
}, {
	{77.0, 85.5, 82.5, 77.0, 85.5, 82.5}, // 1 hp
	{84.0, 86.5, 86.5, 84.0, 86.5, 87.5}, // 1.5 hp
	{85.5, 86.5, 87.5, 85.5, 86.5, 88.5}, // 2 hp
	{85.5, 89.5, 88.5, 86.5, 89.5, 89.5}, // 3 hp
	{86.5, 89.5, 89.5, 88.5, 89.5, 89.5}, // 5 hp
	{88.5, 91.0, 90.2, 89.5, 91.7, 91.0}, // 7.5 hp
	{89.5, 91.7, 91.7, 90.2, 91.7, 91.0}, // 10 hp
	{90.2, 93.0, 91.7, 91.0, 92.4, 91.7}, // 15 hp
	{91.0, 93.0, 92.4, 91.0, 93.0, 91.7}, // 20 hp
	{91.7, 93.6, 93.0, 91.7, 93.6, 93.0}, // 25 hp
	{91.7, 94.1, 93.6, 91.7, 93.6, 93.0}, // 30 hp
	{92.4, 94.1, 94.1, 92.4, 94.1, 94.1}, // 40 hp
	{93.0, 94.5, 94.1, 93.0, 94.5, 94.1}, // 50 hp
	{93.6, 95.0, 94.5, 93.6, 95.0, 94.5}, // 60 hp
	{93.6, 95.0, 94.5, 93.6, 95.4, 94.5}, // 75 hp
	{93.6, 95.4, 95.0, 94.1, 95.4, 95.0}, // 100 hp
	{94.1, 95.4, 95.0, 95.0, 95.4, 95.0}, // 125 hp
	{94.1, 95.8, 95.4, 95.0, 95.8, 95.8}, // 150 hp
	{95.0, 95.8, 95.4, 95.4, 96.2, 95.8}, // 200 hp
}}

// NominalEfficiency is the nominal full-load efficiency (a fraction) of a
// surface motor by its rating (W) and its number of poles (2, 4 or 6), for
// 60 Hz. A motor made to it may lie below it by its tolerance; a submersible
// motor is less efficient and stands in no such table.
//
// Valid for ratings of 1 to 200 hp within 1 % of a row, otherwise the reason in
// words.
func NominalEfficiency(c Class, e Enclosure, rating, poles float64) (efficiency float64, invalid string) {
	column := poles/2 - 1
	if column != 0 && column != 1 && column != 2 {
		return math.NaN(), "the table of efficiencies has motors of 2, 4 and 6 poles only"
	}
	row := find(efficiencyRatings, rating)
	if row < 0 {
		return math.NaN(), noRating(efficiencyRatings, rating, "table of efficiencies")
	}
	v := efficiencies[c][row][3*int(e)+int(column)]
	if v == 0 {
		return math.NaN(), "the table has no efficiency for an open two-pole motor of 1 hp"
	}
	return v / 100, ""
}
