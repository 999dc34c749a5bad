package formula

import "testing"

// apply runs the edits of a mistake's text on a relation.
func apply(t *testing.T, s *Scope, formula, edits string) (*Relation, *Error) {
	t.Helper()
	m, err := ParseMistake(edits+"\nsay \"x\"", s)
	if err != nil {
		t.Fatalf("%q should parse: %v", edits, err)
	}
	return relation(t, s, formula).Apply(s, m.Edits)
}

type editCase struct{ formula, edits, want string }

func runEdits(t *testing.T, s *Scope, list []editCase) {
	t.Helper()
	for _, c := range list {
		wrong, err := apply(t, s, c.formula, c.edits)
		if err != nil {
			t.Errorf("%s, %s: %v; should be %s", c.formula, c.edits, err, c.want)
			continue
		}
		if got := wrong.Right.Words(s); got != c.want {
			t.Errorf("%s, %s\n\tgives  %s\n\tshould %s", c.formula, c.edits, got, c.want)
		}
	}
}

func TestPutFor(t *testing.T) {
	runEdits(t, letters, []editCase{
		{"a = b + c", "put d for c", "b + d"},
		{"a = b * c / (3960 * d)", "put 1714 for 3960", "b × c / (1714 × d)"},
		{"a = b + c * b", "put d for b", "d + c × d"},
		{"a = b * (c + d)", "put c - d for c + d", "b × (c − d)"},
		{"a = b ^ 2", "put b for b ^ 2", "b"},
		{"a = b ^ c", "put d for c", "b^d"},
		{"a = max(b, c)", "put d for c", "max(b, d)"},
		{"a = sqrt(b + c)", "put b for b + c", "sqrt(b)"},
		{"a = round-up(b / c)", "put b / c for round-up(b / c)", "b / c"},
		{"a = b + c", "put d for b\nput e for c", "d + e"},
		{"a = b + c", "put c for b", "c + c"},
	})
	runEdits(t, trade, []editCase{
		{"total-head = pumping-level + column-loss", "put static-level for pumping-level", "static level + column loss"},
		{"pressure-head[ft] = 2.31 * total-head[ft]", "put field-head for total-head", "2.31 × field head [ft]"},
		{"bowl-power[hp] = capacity[gpm] * total-head[ft]", "put capacity[L/s] for capacity[gpm]", "capacity [L/s] × total head [ft]"},
		{"stages = total-head / 10 ft", "put 10 m for 10 ft", "total head / 10 m"},
	})
}

func TestLeaveOut(t *testing.T) {
	runEdits(t, letters, []editCase{
		{"a = b + c + d", "leave out c", "b + d"},
		{"a = b + c + d", "leave out b, d", "c"},
		{"a = b - c", "leave out c", "b"},
		{"a = b - c", "leave out b", "−c"},
		{"a = b - c + d", "leave out b", "−c + d"},
		{"a = b * c", "leave out b", "c"},
		{"a = b / c", "leave out c", "b"},
		{"a = b / c", "leave out b", "1 / c"},
		{"a = b * c / (3960 * d)", "leave out d", "b × c / 3960"},
		{"a = b * c / (d * e)", "leave out d, e", "b × c"},
		{"a = b * (c + d)", "leave out d", "b × c"},
		{"a = b * (c + d)", "leave out c, d", "b"},
		{"a = b * (c - d)", "leave out d", "b × c"},
		{"a = b + c * d", "leave out c", "b + d"},
		{"a = b * c ^ 2", "leave out c", "b"},
		{"a = b ^ c", "leave out c", "b"},
		{"a = (b + c) ^ 2", "leave out c", "b²"},
		{"a = b + sqrt(c)", "leave out c", "b"},
		{"a = b + max(c, d)", "leave out c", "b + d"},
		{"a = b + max(c, d, e)", "leave out c", "b + max(d, e)"},
		{"a = b + max(c + d, e)", "leave out c", "b + max(d, e)"},
		{"a = b - (-c)", "leave out c", "b"},
		{"a = b + c * b", "leave out b", "c"},
		{"a = b * round-up(c / d)", "leave out d", "b × round-up(c)"},
	})
	runEdits(t, trade, []editCase{
		{bowlPower, "leave out specific-gravity", "capacity [gpm] × total head [ft] / (3960 × bowl efficiency)"},
		{bowlPower, "leave out bowl-efficiency", "capacity [gpm] × total head [ft] × specific gravity / 3960"},
		{"total-head = field-head + column-loss + head-loss", "leave out column-loss, head-loss", "field head"},
	})
}

func TestMinusAndPlus(t *testing.T) {
	runEdits(t, letters, []editCase{
		{"a = b + c", "minus for plus c", "b − c"},
		{"a = b + c", "minus for plus b", "c − b"},
		{"a = b - c", "plus for minus c", "b + c"},
		{"a = b - c", "minus for plus b", "−b − c"},
		{"a = b + c + d", "minus for plus b", "c − b + d"},
		{"a = b + c - d", "plus for minus d", "b + c + d"},
		{"a = b - c + d", "plus for minus c", "b + c + d"},
		{"a = b * (c + d)", "minus for plus d", "b × (c − d)"},
		{"a = b / (c + d)", "minus for plus d", "b / (c − d)"},
		{"a = b + c * d", "minus for plus d", "b − c × d"},
		{"a = sqrt(b + c)", "minus for plus c", "sqrt(b − c)"},
		{"a = max(b + c, d)", "minus for plus c", "max(b − c, d)"},
		{"a = (b + c) ^ 2", "minus for plus c", "(b − c)²"},
		{"a = b ^ (c + d)", "minus for plus d", "b^(c − d)"},
		{"a = b + c", "minus for plus b\nminus for plus c", "−c − b"},
		{"a = b - (c + d)", "minus for plus d", "b − (c − d)"},
		{"a = b + c * (d + e)", "minus for plus e", "b + c × (d − e)"},
		{"a = -b + c", "plus for minus b", "b + c"},
	})
}

func TestTimesAndOver(t *testing.T) {
	runEdits(t, letters, []editCase{
		{"a = b * c", "over for times c", "b / c"},
		{"a = b * c", "over for times b", "c / b"},
		{"a = b / c", "times for over c", "b × c"},
		{"a = b * c / d", "over for times b", "c / d / b"},
		{"a = b * c / d", "times for over d", "b × c × d"},
		{"a = b * c / (d * e)", "times for over d", "b × c / e × d"},
		{"a = b * c / (d * e)", "times for over e", "b × c / d × e"},
		{"a = b / (c / d)", "over for times d", "b / c / d"},
		{"a = 1 / (b * c)", "times for over c", "1 / b × c"},
		{"a = b + c / d", "times for over d", "b + c × d"},
		{"a = b * (c + d / e)", "times for over e", "b × (c + d × e)"},
		{"a = (b + c) / d", "times for over d", "(b + c) × d"},
		{"a = sqrt(b / c)", "times for over c", "sqrt(b × c)"},
		{"a = -b / c", "times for over c", "−b × c"},
		{"a = round-up(b / c)", "times for over c", "round-up(b × c)"},
	})
	runEdits(t, trade, []editCase{
		{bowlPower, "times for over bowl-efficiency", "capacity [gpm] × total head [ft] × specific gravity / 3960 × bowl efficiency"},
		{"pressure-head[ft] = 2.31 * discharge-pressure[psi] / specific-gravity", "times for over specific-gravity", "2.31 × discharge pressure [psi] × specific gravity"},
	})
}

func TestBareFor(t *testing.T) {
	v := facts(t, trade, "discharge-pressure = 50 psi, pumping-level = 120 ft, pressure-head = 115.5 ft")
	for _, c := range []struct {
		formula, edit string
		want          float64
	}{
		{"total-head = pumping-level + pressure-head", "bare discharge-pressure[psi] for pressure-head[ft]", 170 * 0.3048},
		{"total-head[ft] = pumping-level[ft] + pressure-head[ft]", "bare discharge-pressure[psi] for pressure-head[ft]", 170},
		{"total-head[m] = pumping-level[m] + pressure-head[m]", "bare discharge-pressure[psi] for pressure-head[ft]", 170 * 0.3048},
		{"total-head = pumping-level + pressure-head", "bare pressure-head[m] for pressure-head[ft]", (120 + 115.5*0.3048) * 0.3048},
	} {
		wrong, err := apply(t, trade, c.formula, c.edit)
		if err != nil {
			t.Errorf("%s, %s: %v", c.formula, c.edit, err)
			continue
		}
		if got := wrong.Right.Eval(v); !close(got, c.want, 1e-12) {
			t.Errorf("%s, %s: %v, should be %v", c.formula, c.edit, got, c.want)
		}
	}
	wrong, _ := apply(t, trade, "total-head = pumping-level + pressure-head", "bare discharge-pressure[psi] for pressure-head[ft]\nleave out pumping-level")
	if wrong == nil || !close(wrong.Right.Eval(v), 50*0.3048, 1e-12) {
		t.Error("a bare number goes together with leaving out")
	}
}

func TestFunctionForFunction(t *testing.T) {
	runEdits(t, letters, []editCase{
		{"a = round-up(b / c)", "round-down for round-up", "round-down(b / c)"},
		{"a = max(b, min(c, d))", "min for max", "min(b, min(c, d))"},
		{"a = b + sqrt(c)", "abs for sqrt", "b + abs(c)"},
	})
	wrong, err := apply(t, letters, "a = curve(b, 0: 0, 1: 1, 2: 8)", "table for curve")
	v := facts(t, letters, "b = 0.5")
	if err != nil || !close(wrong.Right.Eval(v), 0.5, 1e-14) {
		t.Errorf("a table read for a curve at 0.5 is 0.5 (%v)", err)
	}
	wrong, err = apply(t, letters, "a = table(b, 0: 0, 1: 1, 2: 8)", "curve for table")
	if err != nil || !close(wrong.Right.Eval(v), 0.28125, 1e-14) { // as in TestCurveByHand
		t.Errorf("a curve read for a table at 0.5 is 0.28125 (%v)", err)
	}
}

func TestWholeAndCombined(t *testing.T) {
	runEdits(t, letters, []editCase{
		{"a = b + c", "whole a = b * c", "b × c"},
		{"a = b + c", "whole a = b * c\nput d for c", "b × d"},
		{"a = b * c / d + e", "leave out e\ntimes for over d\nput f for b", "f × c × d"},
		{"a = round-up(b / c) + d", "round-down for round-up\nminus for plus d", "round-down(b / c) − d"},
		{"a = b - c * d", "plus for minus c\nover for times d", "b + c / d"},
	})
}

func TestTheRightFormulaStaysAsItWas(t *testing.T) {
	r := relation(t, letters, "a = max(b, c) + sqrt(d) * (e - f) / g ^ 2")
	before := r.Right.Words(letters)
	for _, edits := range []string{"put b for d", "leave out b, e, g", "minus for plus e", "plus for minus f", "min for max", "bare b[%] for c[%]"} {
		m, err := ParseMistake(edits+"\nsay \"x\"", letters)
		if err != nil {
			t.Fatalf("%s: %v", edits, err)
		}
		if _, bad := r.Apply(letters, m.Edits); bad != nil {
			t.Errorf("%s: %v", edits, bad)
		}
		if after := r.Right.Words(letters); after != before {
			t.Fatalf("%s changed the right formula itself: %s", edits, after)
		}
	}
}
