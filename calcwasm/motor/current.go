package motor

import "math"

// systems are the voltages of the columns of the table of currents, each with
// the range of line voltages that it serves (note of the Code's table, from
// memory).
var systems = [4]struct{ low, high float64 }{{200, 210}, {220, 240}, {440, 480}, {550, 600}}

// currents are full-load currents in A at 208, 230, 460 and 575 V, one row for
// each rating. 0 where the table has none.
//
// Source: NFPA 70 (NEC 2023) Table 430.250, induction type, squirrel cage and
// wound rotor. Exact.
var currents = [][4]float64{
	{2.4, 2.2, 1.1, 0.9},   // 0.5 hp
	{3.5, 3.2, 1.6, 1.3},   // 0.75 hp
	{4.6, 4.2, 2.1, 1.7},   // 1 hp
	{6.6, 6.0, 3.0, 2.4},   // 1.5 hp
	{7.5, 6.8, 3.4, 2.7},   // 2 hp
	{10.6, 9.6, 4.8, 3.9},  // 3 hp
	{16.7, 15.2, 7.6, 6.1}, // 5 hp
	{24.2, 22, 11, 9},      // 7.5 hp
	{30.8, 28, 14, 11},     // 10 hp
	{46.2, 42, 21, 17},     // 15 hp
	{59.4, 54, 27, 22},     // 20 hp
	{74.8, 68, 34, 27},     // 25 hp
	{88, 80, 40, 32},       // 30 hp
	{114, 104, 52, 41},     // 40 hp
	{143, 130, 65, 52},     // 50 hp
	{169, 154, 77, 62},     // 60 hp
	{211, 192, 96, 77},     // 75 hp
	{273, 248, 124, 99},    // 100 hp
	{343, 312, 156, 125},   // 125 hp
	{396, 360, 180, 144},   // 150 hp
	{528, 480, 240, 192},   // 200 hp
	{0, 0, 302, 242},       // 250 hp
	{0, 0, 361, 289},       // 300 hp
	{0, 0, 414, 336},       // 350 hp
	{0, 0, 477, 382},       // 400 hp
	{0, 0, 515, 412},       // 450 hp
	{0, 0, 590, 472},       // 500 hp
}

// CodeCurrent is the full-load current (A) that the electrical code's table
// gives a three-phase motor by its rating (W) and the line voltage (V). The code
// uses it to size conductors; the nameplate of a good motor shows less.
//
// Valid for the standard ratings from 1/2 to 500 hp and for line voltages of 200
// to 210, 220 to 240, 440 to 480 and 550 to 600 V, otherwise the reason in words.
func CodeCurrent(rating, voltage float64) (current float64, invalid string) {
	row := find(ratings, rating)
	if row < 0 {
		return math.NaN(), noRating(ratings, rating, "code's table of currents")
	}
	for i, s := range systems {
		if voltage < s.low || voltage > s.high {
			continue
		}
		if currents[row][i] == 0 {
			return math.NaN(), "the code's table has no motor of " + number(ratings[row]) + " hp for so low a voltage"
		}
		return currents[row][i], ""
	}
	return math.NaN(), "the code's table has columns for 200 to 210, 220 to 240, 440 to 480 and 550 to 600 V"
}
