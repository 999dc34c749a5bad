package formula

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestIsolateByHand(t *testing.T) {
	for _, c := range []struct{ relation, term, want string }{
		{"a = b", "b", "a"}, {"a = b", "a", "b"},
		{"a = b + c", "b", "(a - c)"}, {"a = b + c", "c", "(a - b)"},
		{"a = b - c", "b", "(a + c)"}, {"a = b - c", "c", "(b - a)"},
		{"a = b * c", "c", "(a / b)"}, {"a = b / c", "b", "(a * c)"}, {"a = b / c", "c", "(b / a)"},
		{"a = -b", "b", "(-a)"}, {"a = sqrt(b)", "b", "(≥0(a) ^ )"}, {"a = b ^ 0.5", "b", "(≥0(a) ^ )"},
		{"a + b = c * d", "d", "((a + b) / c)"}, {"a * b = c + d", "a", "((c + d) / b)"},
		{"a = b * c / (d * e)", "e", "(((b * c) / a) / d)"},
	} {
		e, ok := relation(t, letters, c.relation).Isolate(termOf(t, letters, c.term))
		if !ok {
			t.Errorf("%s should give %s", c.relation, c.term)
			continue
		}
		if got := shape(letters, e); got != c.want {
			t.Errorf("%s gives %s = %s, should be %s", c.relation, c.term, got, c.want)
		}
	}
}

func TestIsolateLeavesToTheSearch(t *testing.T) {
	for _, c := range []struct{ relation, term string }{
		{"a = b", "c"}, {"a = b + b", "b"}, {"a = b * (1 - b)", "b"}, {"a * b = b", "b"},
		{"a = b ^ 2", "b"}, {"a = b ^ 4", "b"}, {"a = b ^ 3", "b"}, {"a = b ^ 6", "b"}, {"a = b ^ -2", "b"}, {"a = b ^ (2/3)", "b"},
		{"a = 2 ^ b", "b"}, {"a = b ^ c", "b"}, {"a = b ^ 0", "b"},
		{"a = max(b, c)", "b"}, {"a = abs(b)", "b"},
		{"a = round-up(b)", "b"}, {"a = round-up(b) * c", "c"}, {"a = table(b, 0: 1, 1: 2)", "b"},
	} {
		if e, ok := relation(t, letters, c.relation).Isolate(termOf(t, letters, c.term)); ok {
			t.Errorf("%s cannot be solved for %s by algebra alone: %s", c.relation, c.term, shape(letters, e))
		}
	}
	for _, src := range []string{"a = round-up(b)", "a = b + curve(c, 0: 1, 1: 2)"} {
		if _, ok := relation(t, letters, src).Isolate(termOf(t, letters, "a")); !ok {
			t.Errorf("%s reads forward", src)
		}
	}
}

func TestIsolateWithUnits(t *testing.T) {
	v := facts(t, trade, "capacity = 500 gpm, total-head = 194 ft, specific-gravity = 1, bowl-efficiency = 81 %, bowl-power = 30.24 hp, water-temperature = 68 degF")
	r := relation(t, trade, bowlPower)
	for id, want := range map[string]float64{
		"capacity": 30.24 * 3960 * 0.81 / 194, "total-head": 30.24 * 3960 * 0.81 / 500,
		"bowl-efficiency": 500 * 194 / (3960 * 30.24) * 100, "specific-gravity": 30.24 * 3960 * 0.81 / (500 * 194), "bowl-power": 500 * 194 / (3960 * 0.81),
	} {
		term := termOf(t, trade, id)
		e, ok := r.Isolate(term)
		if !ok {
			t.Errorf("the power formula should give %s", id)
			continue
		}
		if e.dimension() != trade.Term(term).Dim() {
			t.Errorf("%s comes out as a %s", id, e.dimension())
		}
		if got := trade.Term(term).US.FromSI(e.Eval(v)); !close(got, want, 1e-12) {
			t.Errorf("%s is %v, should be %v", id, got, want)
		}
	}
	e, ok := relation(t, trade, "stages = 2 * water-temperature[degF] - 36").Isolate(termOf(t, trade, "water-temperature"))
	v.Values[termOf(t, trade, "stages")] = 100
	if !ok || !close(e.Eval(v), 293.15, 1e-12) { // 68 degF = 20 degC
		t.Errorf("a temperature comes back as %v", e.Eval(v))
	}
}

// drawInvertible draws a relation text whose terms each occur once, with a
// value for it. Differences are kept from cancelling, and values from running
// away, so that rounding stays near the last bits.
type drawn struct {
	text  string
	value float64
}

func drawInvertible(t *rapid.T, names *[]string, v *Env, depth int, exponents []float64) drawn {
	if depth == 0 || len(*names) < 2 {
		if len(*names) == 0 || rapid.IntRange(0, 5).Draw(t, "number") == 0 {
			n := rapid.IntRange(1, 20).Draw(t, "n")
			return drawn{fmt.Sprint(n), float64(n)}
		}
		id := (*names)[0]
		*names = (*names)[1:]
		i, _ := letters.Find(id)
		v.Values[i] = rapid.Float64Range(0.5, 2).Draw(t, id)
		return drawn{id, v.Values[i]}
	}
	x := drawInvertible(t, names, v, depth-1, exponents)
	op := rapid.SampledFrom([]string{"+", "-", "*", "/", "^"}).Draw(t, "op")
	if op == "^" {
		n := rapid.SampledFrom(exponents).Draw(t, "exponent")
		if y := math.Pow(x.value, n); y < 1e4 && y > 1e-4 {
			return drawn{fmt.Sprintf("(%s) ^ %v", x.text, n), y}
		}
		op = "+"
	}
	y := drawInvertible(t, names, v, depth-1, exponents)
	if op == "-" && x.value < y.value*1.05 {
		op = "+"
	}
	return drawn{fmt.Sprintf("(%s %s %s)", x.text, op, y.text), map[string]float64{"+": x.value + y.value, "-": x.value - y.value, "*": x.value * y.value, "/": x.value / y.value}[op]}
}

// holds puts a value in and says how far the two sides are apart.
func holds(r *Relation, v *Env, term int, x float64) bool {
	was := v.Values[term]
	v.Values[term] = x
	ok := close(r.Left.Eval(v), r.Right.Eval(v), 1e-9)
	v.Values[term] = was
	return ok
}

func TestIsolatePutBackHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := NewEnv(letters)
		names := []string{"b", "c", "d", "e", "f", "g", "h"}
		d := drawInvertible(t, &names, v, rapid.IntRange(1, 3).Draw(t, "depth"), []float64{0.5, 0.75, 1, 1.5, 1.852, -1, -0.54})
		v.Values[0] = d.value
		r, err := ParseRelation("a = "+d.text, letters)
		if err != nil {
			t.Fatalf("%s: %v", d.text, err)
		}
		for _, term := range r.Terms() {
			e, ok := r.Isolate(term)
			if !ok {
				t.Fatalf("a = %s should give %s", d.text, letters.Term(term).ID)
			}
			if e.uses(term) > 0 {
				t.Fatalf("a = %s: %s stands on both sides", d.text, letters.Term(term).ID)
			}
			x := e.Eval(v)
			if !close(x, v.Values[term], 1e-9) || !holds(r, v, term, x) {
				t.Fatalf("a = %s gives %s = %v, was %v", d.text, letters.Term(term).ID, x, v.Values[term])
			}
		}
	})
}

// With squares the search has to find the value again, among others perhaps.
func TestSolvePutBackHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := NewEnv(letters)
		names := []string{"b", "c", "d", "e", "f"}
		d := drawInvertible(t, &names, v, rapid.IntRange(1, 3).Draw(t, "depth"), []float64{2, 2, 4, 0.5, -1})
		v.Values[0] = d.value
		r, err := ParseRelation("a = "+d.text, letters)
		if err != nil {
			t.Fatalf("%s: %v", d.text, err)
		}
		for _, term := range r.Terms() {
			was := v.Values[term]
			found := false
			for _, x := range r.Solve(term, v, was/7, was*7) {
				found = found || close(x, was, 1e-8)
				if !holds(r, v, term, x) {
					t.Fatalf("a = %s: the root %s = %v does not hold", d.text, letters.Term(term).ID, x)
				}
			}
			if !found {
				t.Fatalf("a = %s: %s = %v is not found", d.text, letters.Term(term).ID, was)
			}
			v.Values[term] = was
		}
	})
}
