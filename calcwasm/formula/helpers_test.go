package formula

import (
	"math"
	"strings"
	"testing"

	"columnbowl/calcwasm/unit"
)

// Two worlds serve all tests of the package: the trade world, whose terms have
// units, and the letter world, whose terms a … h are pure numbers, so that the
// shape of an expression can be read at a glance.

func mustLookup(symbol string) *unit.Unit {
	u, ok := unit.Lookup(symbol)
	if !ok {
		panic("the tests want the unit " + symbol)
	}
	return u
}

func quantity(id, symbol, us, si string) Term {
	return Term{ID: id, Name: strings.ReplaceAll(id, "-", " "), Symbol: symbol, US: mustLookup(us), SI: mustLookup(si)}
}

// pipeLoss is a function such as the physics rooms give: loss = k × flow² × length.
var pipeLoss = &Func{
	Name:   "pipe-loss",
	Params: []Param{{Name: "flow", Dim: unit.Flow}, {Name: "length", Dim: unit.Length}},
	Result: unit.Length,
	Eval: func(a []float64) (float64, string) {
		if a[0] < 0 {
			return 0, "the flow runs backwards"
		}
		return 25 * a[0] * a[0] * a[1], ""
	},
}

var trade = NewScope([]Term{
	quantity("total-head", "H", "ft", "m"),
	quantity("field-head", "H_f", "ft", "m"),
	quantity("column-loss", "h_c", "ft", "m"),
	quantity("head-loss", "", "ft", "m"),
	quantity("pumping-level", "", "ft", "m"),
	quantity("static-level", "", "ft", "m"),
	quantity("setting", "", "ft", "m"),
	quantity("discharge-elevation", "z", "ft", "m"),
	quantity("capacity", "Q", "gpm", "m3/h"),
	quantity("bowl-power", "P_b", "hp", "kW"),
	quantity("bowl-efficiency", "η_b", "%", "%"),
	quantity("specific-gravity", "", "1", "1"),
	quantity("discharge-pressure", "p", "psi", "kPa"),
	quantity("pressure-head", "", "ft", "m"),
	quantity("bowl-area", "A", "ft2", "m2"),
	quantity("water-velocity", "v", "ft/s", "m/s"),
	quantity("pump-speed", "n", "rpm", "rpm"),
	quantity("water-temperature", "T", "degF", "degC"),
	{ID: "stages", Name: "number of stages", Kind: Count, US: mustLookup("1"), SI: mustLookup("1")},
	{ID: "build", Name: "build", Kind: Choice, Values: []string{"water-lubricated", "oil-lubricated", "submersible"}},
}, []*Func{pipeLoss})

var letters = func() *Scope {
	var terms []Term
	for _, id := range strings.Split("a b c d e f g h", " ") {
		terms = append(terms, Term{ID: id, Name: id, US: mustLookup("1"), SI: mustLookup("1")})
	}
	return NewScope(terms, nil)
}()

// bowlPower is the trade's formula for the power at the bowls; 3960 =
// 33000 ft.lbf/min per hp / 8.3333 lb/gal, rounded.
const bowlPower = "bowl-power[hp] = capacity[gpm] * total-head[ft] * specific-gravity / (3960 * bowl-efficiency)"

func relation(t testing.TB, s *Scope, src string) *Relation {
	t.Helper()
	r, err := ParseRelation(src, s)
	if err != nil {
		t.Fatalf("%q should parse: %v", src, err)
	}
	return r
}

func expression(t testing.TB, s *Scope, src string) *Expr {
	t.Helper()
	e, err := ParseExpr(src, s)
	if err != nil {
		t.Fatalf("%q should parse: %v", src, err)
	}
	return e
}

func condition(t testing.TB, s *Scope, src string) *Expr {
	t.Helper()
	e, err := ParseCondition(src, s)
	if err != nil {
		t.Fatalf("%q should parse: %v", src, err)
	}
	return e
}

func termOf(t testing.TB, s *Scope, id string) int {
	t.Helper()
	i, ok := s.Find(id)
	if !ok {
		t.Fatalf("the test names a term %q that its scope lacks", id)
	}
	return i
}

// facts makes an Env from “term = value, …”; what is not named is not known.
func facts(t testing.TB, s *Scope, given string) *Env {
	t.Helper()
	v := NewEnv(s)
	if given == "" {
		return v
	}
	w, err := ParseWorked("given "+given+"\nexpect "+anExpectation(s), s)
	if err != nil {
		t.Fatalf("facts %q: %v", given, err)
	}
	for _, a := range w.Given {
		v.Values[a.Term] = a.Low
	}
	return v
}

func anExpectation(s *Scope) string {
	if _, ok := s.Find("a"); ok {
		return "a = 1"
	}
	return "total-head = 1 ft"
}

// close says whether two numbers agree within a relative tolerance.
func close(got, want, tolerance float64) bool {
	if got != got || want != want {
		return got != got && want != want
	}
	return got == want || math.Abs(got-want) <= tolerance*math.Max(math.Abs(got), math.Abs(want))
}

// parsers are the entries of the package by the names the tables use.
var parsers = map[string]func(src string, s *Scope) error{
	"relation":   func(src string, s *Scope) error { _, err := ParseRelation(src, s); return err },
	"condition":  func(src string, s *Scope) error { _, err := ParseCondition(src, s); return err },
	"expression": func(src string, s *Scope) error { _, err := ParseExpr(src, s); return err },
	"worked":     func(src string, s *Scope) error { _, err := ParseWorked(src, s); return err },
	"mistake":    func(src string, s *Scope) error { _, err := ParseMistake(src, s); return err },
	"caution":    func(src string, s *Scope) error { _, err := ParseCaution(src, s); return err },
	"assume":     func(src string, s *Scope) error { _, err := ParseAssumption(src, s); return err },
	"estimate":   func(src string, s *Scope) error { _, err := ParseEstimate(src, s); return err },
	"draw":       func(src string, s *Scope) error { _, err := ParseDraw(src, s); return err },
	"ask":        func(src string, s *Scope) error { _, err := ParseAsk(src, s); return err },
	"choose":     func(src string, _ *Scope) error { _, err := ParseChoose(src); return err },
	"order":      func(src string, _ *Scope) error { _, err := ParseOrder(src); return err },
}
