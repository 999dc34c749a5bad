package arith

import "math"

// The two parts of ln 2: hi has zeros in its low 32 bits, so that k*hi is exact
// for every exponent k.
const (
	ln2Hi = 6.93147180369123816490e-01
	ln2Lo = 1.90821492927058770002e-10
	log2e = 1.44269504088896338700e+00
)

// Limits of Exp: beyond them the result overflows, or is below the smallest
// subnormal number.
const (
	expOverflow  = 7.09782712893383973096e+02
	expUnderflow = -7.45133219101941108420e+02
)

// Exp is e**x, within 1 unit in the last place.
//
// Special cases: Exp(+Inf) = +Inf, Exp(NaN) = NaN, Exp(-Inf) = 0; large values
// overflow to 0 or +Inf, very small ones to 1.
func Exp(x float64) float64 {
	const nearZero = 1.0 / (1 << 28)
	switch {
	case math.IsNaN(x) || math.IsInf(x, 1):
		return x
	case math.IsInf(x, -1), x < expUnderflow:
		return 0
	case x > expOverflow:
		return math.Inf(1)
	case -nearZero < x && x < nearZero:
		return 1 + x
	}
	// x = k·ln2 + (hi - lo), |hi - lo| ≤ ln2/2
	k := 0
	if x < 0 {
		k = int(float64(log2e*x) - 0.5)
	} else if x > 0 {
		k = int(float64(log2e*x) + 0.5)
	}
	hi := x - float64(float64(k)*ln2Hi)
	lo := float64(float64(k) * ln2Lo)
	return expOfParts(hi, lo, k)
}

// expOfParts is e**(hi-lo) · 2**k for |hi-lo| ≤ ln2/2, by the rational form
// e**r = 1 + 2r/(R(r)-r) whose R(r²) is a polynomial of degree 5.
func expOfParts(hi, lo float64, k int) float64 {
	const (
		p1 = 1.66666666666666657415e-01
		p2 = -2.77777777770155933842e-03
		p3 = 6.61375632143793436117e-05
		p4 = -1.65339022054652515390e-06
		p5 = 4.13813679705723846039e-08
	)
	r := hi - lo
	t := float64(r * r)
	c := r - float64(t*(p1+float64(t*(p2+float64(t*(p3+float64(t*(p4+float64(t*p5)))))))))
	y := 1 - ((lo - float64(r*c)/(2-c)) - hi)
	return math.Ldexp(y, k)
}
