package arith

import "math"

// Pow is x**y, within 1 unit in the last place. Special cases, in this order, are
// those of math.Pow:
//
//	Pow(x, ±0) = 1 for any x              Pow(1, y) = 1 for any y
//	Pow(x, 1) = x for any x               Pow(NaN, y), Pow(x, NaN) = NaN
//	Pow(±0, y) = ±Inf or +Inf for y < 0, ±0 or +0 for y > 0; the sign for odd y
//	Pow(-1, ±Inf) = 1
//	Pow(x, ±Inf) = +Inf or 0, as |x| is above or below 1
//	Pow(+Inf, y), Pow(-Inf, y) = ±Inf or ±0
//	Pow(x, y) = NaN for finite x < 0 and finite y that is not whole
func Pow(x, y float64) float64 {
	if special, z := powSpecial(x, y); special {
		return z
	}
	negative := x < 0 && odd(y)
	x = math.Abs(x)
	var z float64
	switch {
	case x == 1:
		z = 1
	case math.Abs(y) > 1<<64: // x**y is 0 or infinite: the nearest x to 1 is 2**-53 off
		if (x > 1) == (y > 0) {
			z = math.Inf(1)
		}
	case y == 0.5:
		z = math.Sqrt(x)
	case y == -1:
		z = 1 / x
	default:
		z = powPositive(x, y)
	}
	if negative {
		return -z
	}
	return z
}

func powSpecial(x, y float64) (bool, float64) {
	switch {
	case y == 0 || x == 1:
		return true, 1
	case y == 1:
		return true, x
	case math.IsNaN(x) || math.IsNaN(y):
		return true, math.NaN()
	case x == 0:
		return true, powOfZero(x, y)
	case math.IsInf(y, 0):
		switch {
		case x == -1:
			return true, 1
		case (math.Abs(x) < 1) == math.IsInf(y, 1):
			return true, 0
		}
		return true, math.Inf(1)
	case math.IsInf(x, 0):
		if math.IsInf(x, -1) {
			return true, powOfZero(1/x, -y) // 1/-Inf is the negative zero
		}
		if y < 0 {
			return true, 0
		}
		return true, math.Inf(1)
	case x < 0 && y != math.Floor(y):
		return true, math.NaN()
	}
	return false, 0
}

// powOfZero is ±0 to the power y ≠ 0.
func powOfZero(x, y float64) float64 {
	signed := math.Signbit(x) && odd(y)
	switch {
	case y < 0 && signed:
		return math.Inf(-1)
	case y < 0:
		return math.Inf(1)
	case signed:
		return x
	}
	return 0
}

// odd tells whether y is an odd whole number.
func odd(y float64) bool {
	if math.Abs(y) >= 1<<53 {
		return false
	}
	whole, frac := math.Modf(y)
	return frac == 0 && int64(whole)&1 == 1
}

// powPositive is x**y for finite x > 0, x ≠ 1: log2 x in two parts, times y in
// two parts, and 2 to that power.
func powPositive(x, y float64) float64 {
	t1, t2 := log2InParts(x)
	y1 := highPart(y)
	low := float64((y-y1)*t1) + float64(y*t2)
	high := float64(y1 * t1)
	return exp2OfParts(high, low)
}

// Coefficients of log2InParts: a polynomial in ss², and 2/(3 ln 2) whole and in
// its two parts.
const (
	l1 = 5.99999999999994648725e-01
	l2 = 4.28571428578550184252e-01
	l3 = 3.33333329818377432918e-01
	l4 = 2.72728123808534006489e-01
	l5 = 2.30660745775561754067e-01
	l6 = 2.06975017800338417784e-01

	cp  = 9.61796693925975554329e-01
	cpH = 9.61796700954437255859e-01
	cpL = -7.02846165095275826516e-09
)

// log2InParts is log2 x = t1 + t2, t1 with zeros in its low 32 bits, together
// good to about 68 bits.
func log2InParts(x float64) (t1, t2 float64) {
	m, e := math.Frexp(x) // 1/2 ≤ m < 1
	m, e = float64(2*m), e-1
	base, dpH, dpL := 1.0, 0.0, 0.0
	switch {
	case m >= 1.7320508075688772: // above √3
		m, e = m/2, e+1
	case m >= 1.224744871391589: // above √(3/2)
		base, dpH, dpL = 1.5, 5.84962487220764160156e-01, 1.35003920212974897128e-08
	}
	n := float64(e)
	// ss = (m-base)/(m+base) = sH + sL
	u, v := m-base, 1/(m+base)
	ss := float64(u * v)
	sH := highPart(ss)
	tH := highPart(m + base)
	tL := m - (tH - base)
	sL := float64(v * ((u - float64(sH*tH)) - float64(sH*tL)))
	// log m in terms of ss
	s2 := float64(ss * ss)
	r := float64(float64(s2*s2) * (l1 + float64(s2*(l2+float64(s2*(l3+float64(s2*(l4+float64(s2*(l5+float64(s2*l6)))))))))))
	r += float64(sL * (sH + ss))
	s2 = float64(sH * sH)
	tH = highPart(3 + s2 + r)
	tL = r - ((tH - 3) - s2)
	// u + v = ss·(1 + …)
	u = float64(sH * tH)
	v = float64(sL*tH) + float64(tL*ss)
	pH := highPart(u + v)
	pL := v - (pH - u)
	zH := float64(cpH * pH)
	zL := float64(cpL*pH) + float64(pL*cp) + dpL
	t1 = highPart(((zH + zL) + dpH) + n)
	return t1, zL - (((t1 - n) - dpH) - zH)
}

// exp2OfParts is 2**(high+low).
func exp2OfParts(high, low float64) float64 {
	const (
		p1 = 1.66666666666666019037e-01
		p2 = -2.77777777770155933842e-03
		p3 = 6.61375632143793436117e-05
		p4 = -1.65339022054652515390e-06
		p5 = 4.13813679705723846039e-08

		ln2  = 6.93147180559945286227e-01
		ln2H = 6.93147182464599609375e-01
		ln2L = -1.90465429995776804525e-09
		tiny = 8.0085662595372944372e-17 // -(1024 - log2(largest + half a unit))
	)
	z := high + low
	switch {
	case z > 1024 || (z == 1024 && low+tiny > z-high):
		return math.Inf(1)
	case z < -1080:
		return 0
	}
	n := math.Floor(z + 0.5)
	high -= n
	t := highPart(low + high)
	u := float64(t * ln2H)
	v := float64((low-(t-high))*ln2) + float64(t*ln2L)
	z = u + v
	w := v - (z - u)
	t = float64(z * z)
	c := z - float64(t*(p1+float64(t*(p2+float64(t*(p3+float64(t*(p4+float64(t*p5)))))))))
	r := float64(z*c)/(c-2) - (w + float64(z*w))
	return math.Ldexp(1-(r-z), int(n))
}
