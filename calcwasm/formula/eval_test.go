package formula

import (
	"math"
	"testing"
)

func TestEval(t *testing.T) {
	for _, c := range []struct {
		src  string
		want float64
	}{
		{"a + b * c", 14}, {"a - b - c", -5}, {"a / b / d", 2.0 / 3 / 0.5}, {"-a ^ 2", -4}, {"(-a) ^ 2", 4},
		{"a ^ b ^ a", 512}, {"a ^ -1", 0.5}, {"c ^ d", 2}, {"8 ^ (1/3)", 2}, {"2 ^ 10", 1024},
		{"a[%]", 200}, {"72.5 %", 0.725},
		{"min(a, b, c)", 2}, {"max(a, c, b)", 4}, {"min(-a, b)", -2},
		{"sqrt(c)", 2}, {"sqrt(0)", 0}, {"abs(a - c)", 2}, {"abs(c - a)", 2},
		{"round-up(2.01)", 3}, {"round-up(2)", 2}, {"round-up(-2.5)", -2}, {"round-up(0.1 + 0.2 - 0.3)", 0},
		{"round-up(0.1 * 30)", 3}, {"round-down(0.29 * 100)", 29}, {"round-down(2.99)", 2}, {"round-down(-2.5)", -3},
		{"table(a, 0: 10, 4: 20)", 15}, {"table(b, 0: 10, 2: 20, 4: 0)", 10}, {"table(a, 0: 10, 2: 20, 4: 0)", 20},
		{"table(0, 0: 10, 4: 20)", 10}, {"table(4, 0: 10, 4: 20)", 20}, {"table(-1, -2: 10, -1: 20, 0: 0)", 20},
		{"max(min(a, b), min(b, c), min(c, a))", 3},
		{"min(max(a, min(b, c)), sqrt(max(c, 9)))", 3},
	} {
		v := facts(t, letters, "a = 2, b = 3, c = 4, d = 0.5")
		if got := expression(t, letters, c.src).Eval(v); !close(got, c.want, 1e-14) || v.Invalid != "" {
			t.Errorf("%s is %v (%s), should be %v", c.src, got, v.Invalid, c.want)
		}
	}
}

// The trade's rule of thumb: 500 gpm × 194 ft × 1 / (3960 × 0.81) = 30.2407… hp
// by hand.
func TestEvalOfTradeFormulas(t *testing.T) {
	v := facts(t, trade, "capacity = 500 gpm, total-head = 194 ft, specific-gravity = 1, bowl-efficiency = 81 %, discharge-pressure = 50 psi, water-temperature = 68 degF")
	for _, c := range []struct {
		src       string
		want, tol float64
	}{
		{"capacity[gpm] * total-head[ft] * specific-gravity / (3960 * bowl-efficiency)", 97000 / 3207.6, 1e-13},
		{"2.31 * discharge-pressure[psi] / specific-gravity", 115.5, 1e-13},
		{"water-temperature[degC]", 20, 1e-12},
		{"water-temperature[degF]", 68, 1e-12},
		{"bowl-efficiency[%]", 81, 1e-14},
		{"pipe-loss(capacity, total-head)", 25 * 0.0315450982 * 0.0315450982 * 59.1312, 1e-8}, // 500 gpm = 0.0315450982 m3/s
	} {
		if got := expression(t, trade, c.src).Eval(v); !close(got, c.want, c.tol) {
			t.Errorf("%s is %v, should be %v", c.src, got, c.want)
		}
	}
}

func TestEvalWithoutAFactIsNaNAndNotInvalid(t *testing.T) {
	for _, src := range []string{"h", "-h", "a + h", "h - a", "a * h", "h / a", "a / h", "h ^ 2", "2 ^ h", "h[%]", "min(a, h)", "max(h, a)", "sqrt(h)",
		"abs(h)", "round-up(h)", "table(h, 0: 1, 2: 3)", "curve(h, 0: 1, 2: 3)", "0 * h"} {
		v := facts(t, letters, "a = 2")
		if got := expression(t, letters, src).Eval(v); got == got || v.Invalid != "" {
			t.Errorf("%s without h is %v (%q)", src, got, v.Invalid)
		}
	}
}

// A computation that is not valid tells the reason.
func TestEvalRefusesWithTheReason(t *testing.T) {
	for _, c := range []struct{ src, want string }{
		{"a / (b - b)", "it would divide by zero"},
		{"1 + 2 * (a / 0)", "it would divide by zero"},
		{"min(a, b / 0)", "it would divide by zero"},
		{"sqrt(a - b)", "the square root of a negative number"},
		{"table(b, 0: 1, 2: 3)", "the table runs from 0 to 2, and 3 is outside it"},
		{"curve(-a, 0: 1, 2: 3)", "the curve runs from 0 to 2, and −2 is outside it"},
	} {
		v := facts(t, letters, "a = 2, b = 3")
		if got := expression(t, letters, c.src).Eval(v); got == got || v.Invalid != c.want {
			t.Errorf("%s is %v with reason %q, should be NaN with %q", c.src, got, v.Invalid, c.want)
		}
	}
	v := facts(t, trade, "capacity = 500 gpm")
	e := expression(t, trade, "table(capacity, 0 gpm: 63 ft, 400 gpm: 59.3 ft)")
	e.Eval(v)
	if v.Invalid != "the table runs from 0\u00a0gpm to 400\u00a0gpm, and 500\u00a0gpm is outside it" {
		t.Errorf("a table names its place in its own unit: %q", v.Invalid)
	}
	v = facts(t, trade, "capacity = -5 gpm, setting = 10 ft")
	if got := expression(t, trade, "pipe-loss(capacity, setting)").Eval(v); got == got || v.Invalid != "the flow runs backwards" {
		t.Errorf("a function's own reason: %v %q", got, v.Invalid)
	}
}

func TestEvalForgetsTheReasonOfTheLastTime(t *testing.T) {
	v := facts(t, letters, "a = 2")
	expression(t, letters, "a / 0").Eval(v)
	if got := expression(t, letters, "a").Eval(v); got != 2 || v.Invalid != "" {
		t.Errorf("%v %q", got, v.Invalid)
	}
}

// A value just outside must not be printed like the end of the table.
func TestAValueJustOutsideIsPrintedApart(t *testing.T) {
	v := NewEnv(letters)
	expression(t, letters, "table(2.0001, 0: 1, 2: 3)").Eval(v)
	if v.Invalid == "the table runs from 0 to 2, and 2 is outside it" {
		t.Errorf("for 2.0001 the reason reads %q", v.Invalid)
	}
}

// The reader must not be told “not known” where the truth is “not possible”.
func TestImpossiblePowersTellTheReason(t *testing.T) {
	for _, src := range []string{"(-a) ^ 0.5", "(-a) ^ 1.852", "(a - a) ^ -1", "(1e200 * a) ^ 2", "1e200 * a * 1e200"} {
		v := facts(t, letters, "a = 2")
		if got := expression(t, letters, src).Eval(v); got == got || v.Invalid == "" {
			t.Errorf("%s is %v with reason %q, should be NaN with a reason", src, got, v.Invalid)
		}
	}
}

func TestDivisionOfTheUnknownByZeroIsNotKnown(t *testing.T) {
	v := facts(t, letters, "a = 2")
	e := expression(t, letters, "h / (a - a)")
	if got := e.Eval(v); got == got {
		t.Errorf("h / 0 is %v", got)
	}
}

// −5 °F is 252.6 K; it is not the opposite of 5 °F in kelvin.
func TestNegativeTemperatures(t *testing.T) {
	for src, want := range map[string]float64{"-5 degC": 268.15, "-40 degF": 233.15, "-5 ft": -1.524} {
		if got := expression(t, trade, src).Eval(NewEnv(trade)); !close(got, want, 1e-12) {
			t.Errorf("%s is %v in SI, should be %v", src, got, want)
		}
	}
	v := facts(t, trade, "water-temperature = 20 degF")
	if got := condition(t, trade, "water-temperature < -5 degF").Test(v); got != False {
		t.Errorf("20 degF < -5 degF is %v", got)
	}
	if got := condition(t, trade, "water-temperature > -5 degF").Test(v); got != True {
		t.Errorf("20 degF > -5 degF is %v", got)
	}
	v = facts(t, trade, "water-temperature = -15 degC")
	if got := expression(t, trade, "table(water-temperature, -20 degC: 1, -10 degC: 3)").Eval(v); !close(got, 2, 1e-12) {
		t.Errorf("half way between -20 and -10 degC the table gives %v (%s), should give 2", got, v.Invalid)
	}
}

func TestEvalAllocatesNothing(t *testing.T) {
	v := facts(t, trade, "capacity = 500 gpm, total-head = 194 ft, specific-gravity = 1, bowl-efficiency = 81 %, setting = 200 ft, build = submersible")
	for _, src := range []string{
		"capacity[gpm] * total-head[ft] * specific-gravity / (3960 * bowl-efficiency)",
		"max(total-head, min(setting, sqrt(setting * total-head)), pipe-loss(capacity, setting))",
		"curve(capacity, 0 gpm: 63 ft, 400 gpm: 59.3 ft, 800 gpm: 40 ft) + table(setting, 0 ft: 1 ft, 500 ft: 2 ft)",
	} {
		e := expression(t, trade, src)
		if n := testing.AllocsPerRun(100, func() { e.Eval(v) }); n != 0 {
			t.Errorf("%s allocates %v times", src, n)
		}
	}
	c := condition(t, trade, "not (build = submersible and total-head > setting) or stages > 3")
	if n := testing.AllocsPerRun(100, func() { c.Test(v) }); n != 0 {
		t.Errorf("a condition allocates %v times", n)
	}
}

func TestEnvStartsEmpty(t *testing.T) {
	v := NewEnv(letters)
	for i := range v.Values {
		if v.Known(i) {
			t.Errorf("%s is known from the start", letters.Term(i).ID)
		}
	}
	v.Values[2] = 0
	if !v.Known(2) {
		t.Error("zero is a known value")
	}
	v.Values[2] = math.Inf(1)
	v.Clear()
	if v.Known(2) {
		t.Error("Clear forgets")
	}
}
