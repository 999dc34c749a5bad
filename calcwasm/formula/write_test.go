package formula

import (
	"strings"
	"testing"
)

// spaced writes a no-break space as “_”, so that it can be seen.
func spaced(text string) string { return strings.ReplaceAll(text, "\u00a0", "_") }

func TestWords(t *testing.T) {
	for _, c := range []struct {
		scope     *Scope
		src, want string
	}{
		{trade, "field-head + column-loss", "field head + column loss"},
		{trade, "capacity[gpm] * total-head[ft] / (3960 * bowl-efficiency)", "capacity [gpm] × total head [ft] / (3960 × bowl efficiency)"},
		{trade, "bowl-power[kW] / capacity[m3/h]", "bowl power [kW] / capacity [m³/h]"},
		{trade, "bowl-efficiency[%] + 72.5 %", "bowl efficiency [%] + 72.5 %"},
		{trade, "round-up(total-head / 27.5 ft)", "round-up(total head / 27.5 ft)"},
		{trade, "curve(capacity, 0 gpm: 1, 5 gpm: 2)", "curve(capacity, …)"},
		{letters, "a - b - c", "a − b − c"}, {letters, "a - (b - c)", "a − (b − c)"}, {letters, "a + (b - c)", "a + b − c"},
		{letters, "a / b / c", "a / b / c"}, {letters, "a / (b / c)", "a / (b / c)"}, {letters, "a / (b * c)", "a / (b × c)"}, {letters, "(a + b) * c", "(a + b) × c"},
		{letters, "a ^ 2", "a²"}, {letters, "a ^ 3", "a³"}, {letters, "a ^ 0.5", "a^0.5"}, {letters, "(a * b) ^ 2", "(a × b)²"}, {letters, "a ^ -1", "a^(−1)"},
		{letters, "(a ^ b) ^ c", "(a^b)^c"}, {letters, "a ^ b ^ c", "a^(b^c)"}, {letters, "a ^ (1/3)", "a^(1 / 3)"},
		{letters, "-a ^ 2", "−a²"}, {letters, "(-a) ^ 2", "(−a)²"}, {letters, "-(a + b)", "−(a + b)"}, {letters, "-(a * b)", "−(a × b)"},
		{letters, "min(a, max(b, c))", "min(a, max(b, c))"},
	} {
		if got := expression(t, c.scope, c.src).Words(c.scope); got != c.want {
			t.Errorf("%s reads %q, should read %q", c.src, got, c.want)
		}
	}
	for _, c := range []struct{ src, want string }{
		{"pumping-level >= setting and build != submersible", "pumping level ≥ setting and build ≠ submersible"},
		{"not (stages > 3 or stages <= 1)", "not (number of stages > 3 or number of stages ≤ 1)"},
		{"not stages > 3", "not number of stages > 3"},
		{"(stages > 3 or stages < 1) and setting = 5 ft", "(number of stages > 3 or number of stages < 1) and setting = 5 ft"},
	} {
		if got := condition(t, trade, c.src).Words(trade); got != c.want {
			t.Errorf("%s reads %q, should read %q", c.src, got, c.want)
		}
	}
}

// Two signs do not stand side by side.
func TestASignBehindAnOperatorIsInParentheses(t *testing.T) {
	for src, want := range map[string]string{"a - -b": "a − (−b)", "a * -b": "a × (−b)", "a / -b": "a / (−b)", "a + -b": "a + (−b)", "--a": "−(−a)"} {
		if got := expression(t, letters, src).Words(letters); got != want {
			t.Errorf("%s reads %q, should read %q", src, got, want)
		}
	}
}

const tradeFacts = "field-head = 187 ft, column-loss = 6.4 ft, head-loss = 0.6 ft, capacity = 500 gpm, total-head = 194 ft, specific-gravity = 1, " +
	"bowl-efficiency = 81 %, discharge-elevation = -12.5 ft, build = submersible, setting = 24973 ft, water-temperature = -5 degC"

func TestSubstituted(t *testing.T) {
	v := facts(t, trade, tradeFacts)
	for _, c := range []struct{ src, us, si string }{
		{"field-head + column-loss + head-loss", "187_ft + 6.4_ft + 0.6_ft", "57_m + 1.951_m + 0.1829_m"},
		{"capacity[gpm] * total-head[ft] * specific-gravity / (3960 * bowl-efficiency)", "500 × 194 × 1 / (3960 × 81_%)", "500 × 194 × 1 / (3960 × 81_%)"},
		{"field-head + discharge-elevation", "187_ft + (−12.5_ft)", "57_m + (−3.81_m)"},
		{"field-head - discharge-elevation", "187_ft − (−12.5_ft)", "57_m − (−3.81_m)"},
		{"field-head[ft] - discharge-elevation[ft]", "187 − (−12.5)", "187 − (−12.5)"},
		{"-discharge-elevation", "−(−12.5_ft)", "−(−3.81_m)"},
		{"discharge-elevation[ft] ^ 2", "(−12.5)²", "(−12.5)²"},
		{"capacity[gpm] ^ 2", "500²", "500²"},
		{"setting", "24,973_ft", "7612_m"},
		{"2 * water-temperature[degC]", "2 × (−5)", "2 × (−5)"},
		{"max(field-head, total-head)", "max(187_ft, 194_ft)", "max(57_m, 59.13_m)"},
		{"sqrt(field-head[ft])", "sqrt(187)", "sqrt(187)"},
		{"(field-head + column-loss) / total-head", "(187_ft + 6.4_ft) / 194_ft", "(57_m + 1.951_m) / 59.13_m"},
		{"pumping-level", "–_ft", "–_m"},
	} {
		e := expression(t, trade, c.src)
		if got := spaced(e.Substituted(trade, v, US)); got != c.us {
			t.Errorf("%s in US units reads %q, should read %q", c.src, got, c.us)
		}
		if got := spaced(e.Substituted(trade, v, SI)); got != c.si {
			t.Errorf("%s in SI reads %q, should read %q", c.src, got, c.si)
		}
	}
	if got := condition(t, trade, "build = submersible").Substituted(trade, v, US); got != "submersible = submersible" {
		t.Errorf("a choice reads %q", got)
	}
}

// 5 ft² is an area; the square of 5 ft is (5 ft)².
func TestTheSquareOfAQuantityIsInParentheses(t *testing.T) {
	v := facts(t, trade, tradeFacts)
	for src, want := range map[string]string{
		"field-head ^ 2":       "(187_ft)²",
		"field-head ^ 3":       "(187_ft)³",
		"bowl-efficiency ^ 2":  "(81_%)²",
		"capacity ^ 0.5":       "(500_gpm)^0.5",
		"specific-gravity ^ 2": "1²",
	} {
		if got := spaced(expression(t, trade, src).Substituted(trade, v, US)); got != want {
			t.Errorf("%s reads %q, should read %q", src, got, want)
		}
	}
}

// In a line of SI numbers a constant of the formula is in SI as well.
func TestConstantsFollowTheSystem(t *testing.T) {
	v := facts(t, trade, tradeFacts)
	e := expression(t, trade, "field-head + 10 ft")
	if got := spaced(e.Substituted(trade, v, SI)); strings.Contains(got, "ft") {
		t.Errorf("metres and feet stand in one sum: %q", got)
	}
	if got := spaced(e.Substituted(trade, v, US)); got != "187_ft + 10_ft" {
		t.Errorf("a constant's unit hangs on a no-break space as well: %q", got)
	}
}

func TestSubstitutedInverses(t *testing.T) {
	v := facts(t, trade, "bowl-power = 30.24 hp, total-head = 194 ft, specific-gravity = 1, bowl-efficiency = 81 %")
	e, ok := relation(t, trade, bowlPower).Isolate(termOf(t, trade, "capacity"))
	if !ok {
		t.Fatal("the power formula should give the capacity")
	}
	if got := spaced(e.Substituted(trade, v, US)); got != "30.24 × 3960 × 81_% / 1 / 194" {
		t.Errorf("%q", got)
	}
	if got := e.Words(trade); got != "bowl power [hp] × 3960 × bowl efficiency / specific gravity / total head [ft]" {
		t.Errorf("%q", got)
	}
}

func TestRounded(t *testing.T) {
	for _, c := range []struct {
		src, given string
		want       bool
	}{
		{"field-head + column-loss", "field-head = 100.04 ft, column-loss = 100.04 ft", true}, // 100 + 100 = 200.1
		{"field-head + column-loss", "field-head = 187 ft, column-loss = 6.4 ft", false},
		{"field-head + column-loss + head-loss", "field-head = 187.04 ft, column-loss = 6.404 ft, head-loss = 0.6 ft", false},
		{"field-head - column-loss", "field-head = 200.04 ft, column-loss = 100.06 ft", true}, // 200 − 100.1 = 99.98
		{"field-head - column-loss", "field-head = 200 ft, column-loss = 100 ft", false},
		{"2 * field-head", "field-head = 100.04 ft", false},
		{"field-head + column-loss", "field-head = 100.04 ft", false},
		{"field-head", "field-head = 100.04 ft", false},
		{"(field-head + column-loss) - head-loss", "field-head = 100.04 ft, column-loss = 100.04 ft, head-loss = 1 ft", true},
		{"field-head + 100.04 ft", "field-head = 100.04 ft", true}, // a constant is printed in full: 100 + 100.04 = 200.1
	} {
		if got := expression(t, trade, c.src).Rounded(trade, facts(t, trade, c.given), US, mustLookup("ft")); got != c.want {
			t.Errorf("%s with %s: %v", c.src, c.given, got)
		}
	}
}

// Trade formulas add bare numbers: those sums can miss as well.
func TestRoundedOfBareNumbers(t *testing.T) {
	v := facts(t, trade, "field-head = 100.04 ft, column-loss = 100.04 ft")
	if !expression(t, trade, "field-head[ft] + column-loss[ft]").Rounded(trade, v, US, mustLookup("1")) {
		t.Error("100 + 100 = 200.1 is not called rounded")
	}
}
