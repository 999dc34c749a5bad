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

// powerOfTen is 10^n. Powers from 0 to 22 are exact, and the strconv value is
// correctly rounded for the others.
func powerOfTen(n int) float64 {
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
func exponentOf(x float64) int {
	text := strconv.FormatFloat(math.Abs(x), 'e', -1, 64)
	for i := range text {
		if text[i] == 'e' {
			n, _ := strconv.Atoi(text[i+1:])
			return n
		}
	}
	return 0
}
