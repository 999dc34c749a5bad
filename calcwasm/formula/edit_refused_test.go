package formula

import (
	"strings"
	"testing"
)

func TestEditsThatFindNothing(t *testing.T) {
	for _, c := range []struct{ formula, edits, want string }{
		{"a = b + c", "put d for e", "The formula has nothing that this edit changes."},
		{"a = b + c", "put 1714 for 3960", "The formula has nothing that this edit changes."},
		{"a = b + c", "round-down for round-up", "The formula has nothing that this edit changes."},
		{"a = b + c", "bare d[%] for e[%]", "The formula has nothing that this edit changes."},
		{"a = b + c", "leave out d", "The formula does not use “d”."},
		{"a = b + c", "leave out a", "The formula does not use “a”."},
		{"a = b + c", "minus for plus d", "The formula does not use “d”."},
		{"a = b + c", "leave out b, c", "Without “c” nothing is left of the formula."},
		{"a = b", "leave out b", "Without “b” nothing is left of the formula."},
		{"a = b + c", "plus for minus c", "“c” does not stand in the formula in that way."},
		{"a = b - c", "minus for plus c", "“c” does not stand in the formula in that way."},
		{"a = b + c", "over for times c", "“c” does not stand in the formula in that way."},
		{"a = b * c", "times for over c", "“c” does not stand in the formula in that way."},
		{"a = b / c", "over for times c", "“c” does not stand in the formula in that way."},
		{"a = b", "minus for plus b", "“b” does not stand in the formula in that way."},
		{"a = -b + c", "minus for plus b", "“b” does not stand in the formula in that way."},
	} {
		wrong, err := apply(t, letters, c.formula, c.edits)
		if err == nil {
			t.Errorf("%s, %s gives %s; should be refused", c.formula, c.edits, wrong.Right.Words(letters))
			continue
		}
		if err.Message != c.want {
			t.Errorf("%s, %s: %s\n\tshould say %s", c.formula, c.edits, err.Message, c.want)
		}
	}
}

func TestRefusalsPointAtTheirEdit(t *testing.T) {
	const text = "put d for b\nleave out  g, h\nsay \"x\""
	m, err := ParseMistake(text, letters)
	if err != nil {
		t.Fatal(err)
	}
	for formula, want := range map[string]string{
		"a = c + g + h": "put d for b",
		"a = b + h":     "leave out  g",
		"a = b + g":     "h",
	} {
		_, bad := relation(t, letters, formula).Apply(letters, m.Edits)
		if bad == nil || !strings.HasPrefix(text[bad.Off:bad.Off+bad.Len], want) {
			t.Errorf("%s: the refusal should point at %q: %v", formula, want, bad)
		}
	}
}

// However deep an edit sits, sides that no longer agree are refused: otherwise
// the page would print feet plus feet per second.
func TestEditsMayNotBreakDimensions(t *testing.T) {
	for _, c := range []struct{ formula, edits string }{
		{"total-head = field-head", "put capacity for field-head"},
		{"total-head = field-head + column-loss", "put capacity for column-loss"},
		{"total-head = field-head + column-loss", "put capacity for field-head"},
		{"total-head = 2 * field-head", "put capacity for field-head"},
		{"capacity = bowl-area * water-velocity", "put setting for water-velocity"},
		{"capacity = bowl-area * water-velocity", "leave out bowl-area"},
		{"capacity = bowl-area * water-velocity", "over for times bowl-area"},
		{"total-head = field-head + column-loss * setting / static-level", "times for over static-level"},
		{"total-head = field-head + column-loss * setting / static-level", "leave out static-level"},
		{"total-head = field-head - max(column-loss, head-loss)", "put capacity for head-loss"},
		{"total-head = field-head + sqrt(bowl-area)", "abs for sqrt"},
		{"total-head = field-head + abs(column-loss)", "sqrt for abs"},
		{"bowl-area = setting ^ 2 + bowl-area", "put capacity for setting"},
		{"column-loss = pipe-loss(capacity, setting)", "put setting for capacity"},
		{"stages = 2 ^ (total-head / field-head)", "leave out field-head"},
		{"stages = round-up(total-head / field-head)", "leave out field-head"},
		{"total-head = field-head + table(setting, 0 ft: 0 ft, 500 ft: 3 ft)", "put capacity for setting"},
		{"total-head = field-head + column-loss", "put total-head[ft] for column-loss"},
	} {
		if wrong, err := apply(t, trade, c.formula, c.edits); err == nil {
			t.Errorf("%s, %s passes as %s", c.formula, c.edits, wrong.Right.Words(trade))
		} else if !strings.Contains(err.Message, "With this edit") {
			t.Errorf("%s, %s: %s", c.formula, c.edits, err.Message)
		}
	}
}

func TestARefusalOfDimensionsSaysWhatToWrite(t *testing.T) {
	const text = "put discharge-pressure for pressure-head"
	_, err := apply(t, trade, "total-head = pressure-head", text)
	const want = "With this edit the right-hand side is a pressure, the left-hand side a length: a number read in a wrong unit is written “bare a[unit] for b[unit]”."
	if err == nil || err.Message != want || err.Off != 0 || err.Len != len(text) {
		t.Errorf("%+v", err)
	}
}

// A function that takes another number of values, or points, cannot stand in.
func TestFunctionsOfAnotherKindAreRefused(t *testing.T) {
	for _, c := range []struct{ formula, edits string }{
		{"a = max(b, c)", "sqrt for max"},
		{"a = sqrt(b)", "max for sqrt"},
		{"a = round-up(b)", "table for round-up"},
		{"a = table(b, 0: 1, 1: 2)", "round-up for table"},
	} {
		wrong, err := apply(t, letters, c.formula, c.edits)
		if err == nil {
			t.Errorf("%s, %s gives %s; should be refused", c.formula, c.edits, wrong.Right.Words(letters))
		}
	}
}
