package arith

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

var inf, nan = math.Inf(1), math.NaN()

// edges are the numbers where special cases begin or end.
var edges = []float64{
	0, math.Copysign(0, -1), 1, -1, 2, -2, 3, -3, 0.5, -0.5, 1.5, -2.5, inf, -inf, nan,
	math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64, -math.SmallestNonzeroFloat64,
	math.Nextafter(1, 2), math.Nextafter(1, 0), 0x1p53, 0x1p53 - 1, -(0x1p53 - 1), 0x1p-1022, 0x1p64, -0x1p64, 0x1p65, 1e300, 1e-300,
	709.782712893384, 709.9, -744.4400719213812, -745.2, 1024, -1074, -1075, 0x1p-29, -0x1p-29, 10, 100, 1e-5,
}

func alike(a, b float64, most float64) bool {
	if math.IsNaN(a) || math.IsNaN(b) {
		return math.IsNaN(a) && math.IsNaN(b)
	}
	return math.Signbit(a) == math.Signbit(b) && units(a, b) <= most
}

// Where the result is 0, infinite or no number the standard library is followed;
// where it is an ordinary number, the 300-bit result: math.Log and math.Pow are
// far off near the smallest numbers and for huge exponents on some processors.
func TestSpecialCasesAsTheStandardLibrary(t *testing.T) {
	check := func(function string, x, y, got, want float64) {
		t.Helper()
		if ordinary(got) && ordinary(x) && ordinary(y) {
			if function == "pow" {
				x = math.Abs(x) // the sign is checked by the other edges
			}
			want = math.Copysign(exact(function, x, y), want)
			if function == "log" || function == "log10" {
				want = exact(function, x, y)
			}
		}
		if !alike(got, want, 1) {
			t.Errorf("%s(%v, %v) = %v, want %v", function, x, y, got, want)
		}
	}
	for _, x := range edges {
		check("exp", x, 1, Exp(x), math.Exp(x))
		check("log", x, 1, Log(x), math.Log(x))
		check("log10", x, 1, Log10(x), math.Log10(x))
		if got, want := Sqrt(x), math.Sqrt(x); !alike(got, want, 0) {
			t.Errorf("Sqrt(%v) = %v, want %v", x, got, want)
		}
		for _, y := range edges {
			check("pow", x, y, Pow(x, y), math.Pow(x, y))
		}
	}
}

// ordinary tells whether x is finite and not 0.
func ordinary(x float64) bool { return x != 0 && !math.IsNaN(x) && !math.IsInf(x, 0) }

func TestPowersOfTen(t *testing.T) {
	p := 1.0
	for n := 0; n <= 22; n++ { // 10^22 is the last exact one
		if got := Log10(p); got != float64(n) {
			t.Errorf("Log10(1e%d) = %v", n, got)
		}
		if got := Pow(10, float64(n)); got != p {
			t.Errorf("Pow(10, %d) = %v, want %v", n, got, p)
		}
		p *= 10
	}
}

func TestAgainstTheStandardLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(1e-6, 1e6).Draw(t, "x")
		y := rapid.Float64Range(-5, 5).Draw(t, "y")
		z := rapid.Float64Range(-700, 700).Draw(t, "z")
		// math.Exp in assembly is up to 2 units off and math.Pow up to 9, so they are
		// a coarse check; TestAccuracy is the fine one.
		if !alike(Exp(z), math.Exp(z), 3) {
			t.Fatalf("Exp(%v) = %v, want %v", z, Exp(z), math.Exp(z))
		}
		if !alike(Log(x), math.Log(x), 2) {
			t.Fatalf("Log(%v) = %v, want %v", x, Log(x), math.Log(x))
		}
		if math.Abs(Log10(x)-math.Log10(x)) > 1e-15*max(1, math.Abs(math.Log10(x))) {
			t.Fatalf("Log10(%v) = %v, want %v", x, Log10(x), math.Log10(x))
		}
		if !alike(Pow(x, y), math.Pow(x, y), 12) {
			t.Fatalf("Pow(%v, %v) = %v, want %v", x, y, Pow(x, y), math.Pow(x, y))
		}
	})
}

func TestIdentities(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(1e-3, 1e3).Draw(t, "x")
		y := rapid.Float64Range(-4, 4).Draw(t, "y")
		if got := Log(Exp(y)); math.Abs(got-y) > 1e-15*max(1, math.Abs(y)) {
			t.Fatalf("Log(Exp(%v)) = %v", y, got)
		}
		if got := Pow(x, y) * Pow(x, -y); math.Abs(got-1) > 1e-15 {
			t.Fatalf("%v^%v times its inverse is %v", x, y, got)
		}
	})
}

// The bits of many results in one number. It is the same on every processor;
// a build where it is not has fused or replaced an operation.
func TestSameBitsEverywhere(t *testing.T) {
	const want = 0x47b510afec87d677
	hash := uint64(14695981039346656037) // FNV-1a over the words
	mix := func(x float64) { hash = (hash ^ math.Float64bits(x)) * 1099511628211 }
	seed := uint64(1)
	next := func() float64 { // 0 to 1 by a linear congruence with 53 bits taken
		seed = seed*6364136223846793005 + 1442695040888963407
		return float64(seed>>11) / (1 << 53)
	}
	for range 100_000 {
		x, y := next(), next()
		mix(Exp(float64(1400*x) - 700))
		mix(Log(float64(1e6*x) + 1e-6))
		mix(Log10(float64(1e3*x) + 1e-6))
		mix(Pow(float64(1e3*x)+1e-6, float64(10*y)-5))
	}
	if hash != want {
		t.Errorf("the results hash to %#x, want %#x", hash, uint64(want))
	}
}

func BenchmarkExp(b *testing.B) {
	for i := range b.N {
		Exp(float64(i%100) / 7)
	}
}

func BenchmarkPow(b *testing.B) {
	for i := range b.N {
		Pow(float64(i%100)/7+1, 1.852)
	}
}
