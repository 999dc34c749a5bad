package unit

import (
	"math"
	"strconv"
)

// slack is the relative amount by which a computed number may fall short of a
// half and still be rounded up: a product such as 1.15*100 is a hair below 115.
// It is capped, so that large numbers are not moved.
const (
	slack    = 1e-9
	mostSlip = 1e-3
)

// tens are the powers of ten from 10^-8 to 10^22, each the float64 next to it;
// those from 0 on are exact. Every number on a page is written with them.
var tens = [...]float64{1e-8, 1e-7, 1e-6, 1e-5, 1e-4, 1e-3, 1e-2, 1e-1, 1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10,
	1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22}

const leastTen = -8

// powerOfTen is 10^n. Powers from 0 to 22 are exact, and the strconv value is
// correctly rounded for the others.
func powerOfTen(n int) float64 {
	if at := n - leastTen; at >= 0 && at < len(tens) {
		return tens[at]
	}
	value, _ := strconv.ParseFloat("1e"+strconv.Itoa(n), 64)
	return value
}

// scaled is x·10^n with one rounding for |n| ≤ 22.
func scaled(x float64, n int) float64 {
	if x == 0 {
		return 0 // also where the power of ten is beyond float64
	}
	if n < 0 {
		return x / powerOfTen(-n)
	}
	return float64(x * powerOfTen(n))
}

// steps rounds |x|·10^decimals to a whole number, halves away from zero.
func steps(x float64, decimals int) float64 {
	v := math.Abs(scaled(x, decimals))
	return math.Floor(v + min(float64(v*slack), mostSlip) + 0.5)
}

// exponentOf is the power of ten of the first digit of x ≠ 0: 2 for 187.
//
// It is the exponent of the shortest decimals that are read as x. These rise with
// x, and a float64 next to a power of ten has that power as its shortest
// decimals: hence comparing with the powers tells the same.
func exponentOf(x float64) int {
	x = math.Abs(x)
	if x >= tens[0] && x < tens[len(tens)-1] {
		at := 0
		for x >= tens[at+1] {
			at++
		}
		return at + leastTen
	}
	text := strconv.FormatFloat(x, 'e', -1, 64)
	for i := range text {
		if text[i] == 'e' {
			n, _ := strconv.Atoi(text[i+1:])
			return n
		}
	}
	return 0
}
