package formula

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestRoots(t *testing.T) {
	for _, c := range []struct {
		name      string
		f         func(x float64) float64
		low, high float64
		want      []float64
		tol       float64 // absolute
	}{
		{"a straight line", func(x float64) float64 { return x - 2 }, 0, 10, []float64{2}, 1e-13},
		{"a cubic", func(x float64) float64 { return ((x-6)*x+11)*x - 6 }, 0, 10.1, []float64{1, 2, 3}, 1e-12},
		{"Wilkinson's idea with five roots", func(x float64) float64 { return (x - 1) * (x - 2) * (x - 3) * (x - 4) * (x - 5) }, 0.03, 7, []float64{1, 2, 3, 4, 5}, 1e-12},
		{"a cosine", math.Cos, 0, 10, []float64{math.Pi / 2, 3 * math.Pi / 2, 5 * math.Pi / 2}, 1e-12},
		{"an exponential", func(x float64) float64 { return math.Exp(x) - 1e6 }, 0, 100, []float64{math.Log(1e6)}, 1e-12},
		{"a root at each end", func(x float64) float64 { return x * (x - 10) }, 0, 10, []float64{0, 10}, 0},
		{"roots on the grid", func(x float64) float64 { return (x - 1) * (x - 2) }, 0, 192, []float64{1, 2}, 0},
		{"negative roots", func(x float64) float64 { return x*x - 2 }, -5, 5, []float64{-math.Sqrt2, math.Sqrt2}, 1e-14},
		{"a root near zero in a wide range", func(x float64) float64 { return x - 1e-9 }, 0, 1e3, []float64{1e-9}, 1e-20},
		{"two close roots between two steps", func(x float64) float64 { return (x - 3.111) * (x - 3.112) }, 0, 10, []float64{3.111, 3.112}, 1e-11},
		{"two very close roots", func(x float64) float64 { return (x - 3.1111) * (x - 3.11111) }, 0, 10, []float64{3.1111, 3.11111}, 1e-10},
		{"a touching root", func(x float64) float64 { return (x - math.E) * (x - math.E) }, 0, 10, []float64{math.E}, 1e-6},
		{"a touching root from below", func(x float64) float64 { return -(x - math.E) * (x - math.E) }, 0, 10, []float64{math.E}, 1e-6},
		{"a touching root of absolutes", func(x float64) float64 { return math.Abs(x - math.E) }, 0, 10, []float64{math.E}, 1e-12},
		{"a touching root of a polynomial written out", func(x float64) float64 { return x*x - 6.2*x + 9.61 }, 0, 10, []float64{3.1}, 1e-6},
		{"a touching root beside a crossing one", func(x float64) float64 { return (x - math.E) * (x - math.E) * (x - 7.7) }, 0, 10, []float64{math.E, 7.7}, 1e-6},
		{"a dip that does not reach zero", func(x float64) float64 { return (x-math.E)*(x-math.E) + 1e-5 }, 0, 10, nil, 0},
		{"none", func(x float64) float64 { return x*x + 1 }, -5, 5, nil, 0},
		{"none for a constant", func(float64) float64 { return 3 }, 0, 1, nil, 0},
		{"none where nothing is known", func(float64) float64 { return math.NaN() }, 0, 1, nil, 0},
		{"a pole", func(x float64) float64 { return 1 / (x - math.E) }, 0, 10, nil, 0},
		{"a pole and a root", func(x float64) float64 { return (x - 7.7) / (x - math.E) }, 0, 10, []float64{7.7}, 1e-12},
		{"the tangent", math.Tan, 1, 8, []float64{math.Pi, 2 * math.Pi}, 1e-12},
		{"an even pole", func(x float64) float64 { return 1/((x-math.E)*(x-math.E)) - 1 }, 0, 10, []float64{math.E - 1, math.E + 1}, 1e-12},
		{"a root beside what is not valid", func(x float64) float64 { return math.Sqrt(x) - 1 }, -5, 5.3, []float64{1}, 1e-12},
	} {
		got := Roots(c.f, c.low, c.high)
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, should be %v", c.name, got, c.want)
			continue
		}
		for i := range got {
			if math.Abs(got[i]-c.want[i]) > c.tol {
				t.Errorf("%s: %v, should be %v", c.name, got[i], c.want[i])
			}
		}
	}
}

// A jump over zero is no root, be it to infinity or from 1 to −1.
func TestAJumpIsNoRoot(t *testing.T) {
	for name, f := range map[string]func(x float64) float64{
		"a step":           func(x float64) float64 { return math.Copysign(1, x-math.E) },
		"a step uphill":    func(x float64) float64 { return x - math.E + math.Copysign(0.5, x-math.E) },
		"a step on slopes": func(x float64) float64 { return (1 + x/10) * math.Copysign(1, math.E-x) },
	} {
		if got := Roots(f, 0, 10); len(got) > 0 {
			t.Errorf("%s has roots %v", name, got)
		}
	}
}

// The search must not depend on the size of the numbers: money is large,
// roughness in metres is small.
func TestRootsOfAnySize(t *testing.T) {
	for _, size := range []float64{1e-160, 1e-12, 1, 1e12, 1e160} {
		got := Roots(func(x float64) float64 { return size * (x - 2) * (x - 5) }, 0, 10.01)
		if len(got) != 2 || !close(got[0], 2, 1e-12) || !close(got[1], 5, 1e-12) {
			t.Errorf("times %v: %v, should be [2 5]", size, got)
		}
		got = Roots(func(x float64) float64 { return x - 2*size }, 0, 10.01*size)
		if len(got) != 1 || !close(got[0], 2*size, 1e-12) {
			t.Errorf("range times %v: %v", size, got)
		}
	}
}

// Two roots within the first or the last step of the range are roots as well.
func TestTwoRootsAtTheEdges(t *testing.T) {
	for _, c := range []struct{ r, s float64 }{{0.01, 0.03}, {9.97, 9.99}} {
		got := Roots(func(x float64) float64 { return (x - c.r) * (x - c.s) }, 0, 10)
		if len(got) != 2 || math.Abs(got[0]-c.r) > 1e-10 || math.Abs(got[1]-c.s) > 1e-10 {
			t.Errorf("%v, should be [%v %v]", got, c.r, c.s)
		}
	}
}

func TestOddRangesEnd(t *testing.T) {
	line := func(x float64) float64 { return x - 1 }
	for _, c := range [][2]float64{{1, 1}, {5, 0}, {math.NaN(), 1}, {0, math.Inf(1)}, {math.Inf(-1), math.Inf(1)}, {-math.MaxFloat64, math.MaxFloat64}} {
		for _, r := range Roots(line, c[0], c[1]) {
			if !close(r, 1, 1e-9) {
				t.Errorf("between %v and %v: root %v", c[0], c[1], r)
			}
		}
	}
}

func TestRootsOfRandomPolynomials(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "n")
		want := make([]float64, n)
		x := 0.3
		for i := range want {
			x += rapid.Float64Range(0.2, 1.8).Draw(t, "gap")
			want[i] = x
		}
		lead := rapid.SampledFrom([]float64{-3, 0.001, 1, 1e6}).Draw(t, "lead")
		got := Roots(func(x float64) float64 {
			y := lead
			for _, r := range want {
				y *= x - r
			}
			return y
		}, 0, 10)
		if len(got) != n {
			t.Fatalf("%v, should be %v", got, want)
		}
		for i := range got {
			if math.Abs(got[i]-want[i]) > 1e-11 {
				t.Fatalf("%v, should be %v", got, want)
			}
		}
	})
}

func TestSolve(t *testing.T) {
	for _, c := range []struct {
		relation, given, term string
		low, high             float64
		want                  string
	}{
		{"a = b + c", "a = 5, c = 2", "b", 0, 10, "3"},
		{"a = b ^ 2", "a = 9", "b", 0, 10, "3"},
		{"a = b ^ 2", "a = 9", "b", -10, 10.5, "-3 3"},
		{"a = b * (10 - b)", "a = 21", "b", 0, 10, "3 7"},
		{"a = b * (10 - b)", "a = 25", "b", 0, 10.3, "5"},
		{"a = b * (10 - b)", "a = 26", "b", 0, 10, ""},
		{"a = max(b, c)", "a = 5, c = 2", "b", 0, 10.3, "5"},
		{"a = 2 ^ b", "a = 8", "b", 0, 10.3, "3"},
		{"a = b + b * c", "a = 12, c = 3", "b", 0, 10.3, "3"},
		{"a = b / c", "a = 0, b = 3", "c", 0, 10, ""},
		{"a = b / c", "a = 2", "c", 0, 10, ""},
		{"a = round-up(b)", "b = 2.2", "a", 0, 10, "3"},
		{"a = round-up(b)", "a = 3", "b", 0, 10, ""},
		{"a = b ^ 3", "a = -8", "b", -10, 10.3, "-2"},
		{"a = sqrt(b)", "a = -3", "b", 0, 100, ""},
		{"a = b ^ 0.5", "a = -3", "b", 0, 100, ""},
		{"a = b ^ 0.25", "a = -3", "b", 0, 100, ""},
		{"a = b ^ -2", "a = 0.25", "b", -10.3, 10, "-2 2"},
		{"a = b + c", "a = 5, c = 2", "b", 10, 20, ""},
	} {
		v := facts(t, letters, c.given)
		var parts []string
		for _, x := range relation(t, letters, c.relation).Solve(termOf(t, letters, c.term), v, c.low, c.high) {
			parts = append(parts, fmt.Sprint(math.Round(x*1e5)/1e5))
		}
		slices.Sort(parts)
		if got := strings.Join(parts, " "); got != c.want {
			t.Errorf("%s, given %s, for %s in [%v, %v]: %q, should be %q", c.relation, c.given, c.term, c.low, c.high, got, c.want)
		}
	}
}

// v's value of the term is NaN afterwards, and no reason is left behind.
func TestSolveLeavesTheEnvClean(t *testing.T) {
	for _, src := range []string{"a = b + c", "a = b * b + c", "a = c / b"} {
		v := facts(t, letters, "a = 5, b = 7, c = 0")
		b := termOf(t, letters, "b")
		relation(t, letters, src).Solve(b, v, 0, 10)
		if v.Known(b) || v.Invalid != "" {
			t.Errorf("%s: afterwards b is %v and the reason %q", src, v.Values[b], v.Invalid)
		}
	}
}
