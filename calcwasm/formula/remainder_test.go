package formula

import (
	"testing"

	"pgregory.net/rapid"
)

// What is left of a run of pipe when full lengths are taken off, by hand.
func TestRemainder(t *testing.T) {
	for _, c := range []struct {
		src  string
		want float64
	}{
		{"remainder(247, 20)", 7}, {"remainder(240, 20)", 0}, {"remainder(5, 20)", 5}, {"remainder(0, 20)", 0},
		{"remainder(0.3, 0.1)", 0}, {"remainder(0.1 * 3, 0.1)", 0}, {"remainder(-5, 20)", 15}, {"remainder(b, a)", 1},
	} {
		v := facts(t, letters, "a = 2, b = 3")
		if got := expression(t, letters, c.src).Eval(v); !close(got, c.want, 1e-12) || v.Invalid != "" {
			t.Errorf("%s is %v (%s), should be %v", c.src, got, v.Invalid, c.want)
		}
	}
	v := facts(t, letters, "a = 2")
	if got := expression(t, letters, "remainder(a, a - 2)").Eval(v); got == got || v.Invalid == "" {
		t.Errorf("a step of nothing gives %v without a reason", got)
	}
}

// Feet become metres inside: a length of whole steps must leave nothing there.
func TestRemainderOfWholeSteps(t *testing.T) {
	e := expression(t, trade, "remainder(total-head, field-head)")
	head, _ := trade.Find("total-head")
	step, _ := trade.Find("field-head")
	rapid.Check(t, func(t *rapid.T) {
		v := NewEnv(trade)
		feet := float64(rapid.IntRange(1, 45).Draw(t, "step"))
		n := rapid.IntRange(0, 2000).Draw(t, "n")
		left := rapid.IntRange(0, int(feet)-1).Draw(t, "left")
		v.Values[step], v.Values[head] = feet*0.3048, (feet*float64(n)+float64(left))*0.3048
		if got := e.Eval(v); !close(got, float64(left)*0.3048, 1e-6) {
			t.Fatalf("%d × %v ft and %d ft leave %v m", n, feet, left, got)
		}
	})
}

func TestRemainderIsForwardOnly(t *testing.T) {
	r, err := ParseRelation("a = remainder(b, c)", letters)
	if err != nil || !r.OneWay() {
		t.Errorf("one-way: %v, %v", r.OneWay(), err)
	}
	complain(t, "relation", []complaint{
		says("total-head = «remainder(field-head)»", "remainder(a, step) takes two values: what is divided, and the step that is taken off it."),
		says("total-head = remainder(field-head, «3»)", "…they cannot be compared."),
	})
	e := expression(t, letters, "remainder(b, c)")
	back, err := Unpack(e.Pack(), letters)
	if err != nil || back.Words(letters) != e.Words(letters) {
		t.Errorf("packed and unpacked: %v, %v", back, err)
	}
}
