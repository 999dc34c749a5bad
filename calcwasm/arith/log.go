package arith

import "math"

// Coefficients of (log(1+f) - 2s)/s as a polynomial in s² with s = f/(2+f).
const (
	lg1 = 6.666666666666735130e-01
	lg2 = 3.999999999940941908e-01
	lg3 = 2.857142874366239149e-01
	lg4 = 2.222219843214978396e-01
	lg5 = 1.818357216161805012e-01
	lg6 = 1.531383769920937332e-01
	lg7 = 1.479819860511658591e-01
)

// Log is the natural logarithm of x, within 1 unit in the last place.
//
// Special cases: Log(+Inf) = +Inf, Log(0) = -Inf, Log(x < 0) = NaN,
// Log(NaN) = NaN.
func Log(x float64) float64 {
	if special, y := logSpecial(x); special {
		return y
	}
	f, k := reduced(x)
	hfsq, r := logTail(f)
	return float64(k*ln2Hi) - ((hfsq - (r + float64(k*ln2Lo))) - f)
}

// Log10 is the decimal logarithm of x, within 1 unit in the last place, and
// exact for the powers of ten. Special cases as Log.
func Log10(x float64) float64 {
	if special, y := logSpecial(x); special {
		return y
	}
	const (
		ivLn10Hi  = 4.34294481878168880939e-01 // 1/ln 10, its high bits
		ivLn10Lo  = 2.50829467116452752298e-11
		log10Of2H = 3.01029995663611771306e-01 // log10 2, its high bits
		log10Of2L = 3.69423907715893078616e-13
	)
	f, k := reduced(x)
	hfsq, r := logTail(f)
	// log(1+f) = hi + lo, hi with zeros in its low 32 bits so that products with
	// the high constants are exact.
	hi := highPart(f - hfsq)
	lo := (f - hi) - hfsq + r
	valHi := float64(hi * ivLn10Hi)
	big := float64(k * log10Of2H)
	valLo := float64(k*log10Of2L) + float64((lo+hi)*ivLn10Lo) + float64(lo*ivLn10Hi)
	w := big + valHi
	return valLo + ((big - w) + valHi) + w
}

func logSpecial(x float64) (bool, float64) {
	switch {
	case math.IsNaN(x) || math.IsInf(x, 1):
		return true, x
	case x < 0:
		return true, math.NaN()
	case x == 0:
		return true, math.Inf(-1)
	}
	return false, 0
}

// reduced writes x as (1+f)·2**k with sqrt(1/2) ≤ 1+f < sqrt(2).
func reduced(x float64) (f, k float64) {
	m, e := math.Frexp(x)
	if m < math.Sqrt2/2 {
		m, e = float64(m*2), e-1
	}
	return m - 1, float64(e)
}

// logTail gives f²/2 and r such that log(1+f) = f - f²/2 + r.
func logTail(f float64) (hfsq, r float64) {
	s := f / (2 + f)
	s2 := float64(s * s)
	s4 := float64(s2 * s2)
	t1 := float64(s2 * (lg1 + float64(s4*(lg3+float64(s4*(lg5+float64(s4*lg7)))))))
	t2 := float64(s4 * (lg2 + float64(s4*(lg4+float64(s4*lg6)))))
	hfsq = float64(0.5 * f * f)
	return hfsq, float64(s * (hfsq + (t1 + t2)))
}

// highPart clears the low 32 bits of x.
func highPart(x float64) float64 {
	return math.Float64frombits(math.Float64bits(x) &^ (1<<32 - 1))
}
