package arith

import "math"

// Sqrt is the square root of x. IEEE 754 demands that it is rounded exactly, so
// math.Sqrt gives the same bits everywhere.
func Sqrt(x float64) float64 { return math.Sqrt(x) }
