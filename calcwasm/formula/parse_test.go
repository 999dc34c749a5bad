package formula

import (
	"strings"
	"testing"
)

// shape writes an expression with every pair in parentheses.
func shape(s *Scope, e *Expr) string {
	sign := map[Op]string{Add: "+", Sub: "-", Mul: "*", Div: "/", Pow: "^", Equal: "=", Unequal: "!=", Less: "<", AtMost: "<=", More: ">", AtLeast: ">=", And: "and", Or: "or"}
	switch e.Op {
	case Number, Word:
		return e.Text
	case Ref:
		return s.terms[e.Term].ID
	case Bare:
		return s.terms[e.Term].ID + "[" + e.Unit.Symbol + "]"
	case Neg:
		return "(-" + shape(s, e.X) + ")"
	case Not:
		return "(not " + shape(s, e.X) + ")"
	case Call:
		var args []string
		for _, a := range e.Args {
			args = append(args, shape(s, a))
		}
		return e.Func.Name + "(" + strings.Join(args, ", ") + ")"
	}
	return "(" + shape(s, e.X) + " " + sign[e.Op] + " " + shape(s, e.Y) + ")"
}

func TestPrecedence(t *testing.T) {
	for _, c := range []struct{ src, want string }{
		{"a + b * c", "(a + (b * c))"},
		{"(a + b) * c", "((a + b) * c)"},
		{"a - b - c", "((a - b) - c)"},
		{"a - (b - c)", "(a - (b - c))"},
		{"a / b / c", "((a / b) / c)"},
		{"a / b * c", "((a / b) * c)"},
		{"a * b ^ c", "(a * (b ^ c))"},
		{"a ^ b ^ c", "(a ^ (b ^ c))"},
		{"-a ^ b", "(-(a ^ b))"},
		{"(-a) ^ b", "((-a) ^ b)"},
		{"a ^ -b", "(a ^ (-b))"},
		{"-a * b", "((-a) * b)"},
		{"a - -b", "(a - (-b))"},
		{"--a", "(-(-a))"},
		{"min(a, b + c, d) / max(e, f)", "(min(a, (b + c), d) / max(e, f))"},
		{"sqrt(abs(a))", "sqrt(abs(a))"},
		{"((((a))))", "a"},
		{"a +\n b\n * c", "(a + (b * c))"},
	} {
		if got := shape(letters, expression(t, letters, c.src)); got != c.want {
			t.Errorf("%q groups as %s, should be %s", c.src, got, c.want)
		}
	}
}

func TestConditions(t *testing.T) {
	for _, c := range []struct{ src, want string }{
		{"pumping-level > setting", "(pumping-level > setting)"},
		{"build = oil-lubricated", "(build = oil-lubricated)"},
		{"build != submersible", "(build != submersible)"},
		{"oil-lubricated = build", "(build = oil-lubricated)"},
		{"build = submersible or build = oil-lubricated and stages > 3", "((build = submersible) or ((build = oil-lubricated) and (stages > 3)))"},
		{"(build = submersible or build = oil-lubricated) and stages > 3", "(((build = submersible) or (build = oil-lubricated)) and (stages > 3))"},
		{"not stages > 3 and stages < 9", "((not (stages > 3)) and (stages < 9))"},
		{"not (stages > 3 and stages < 9)", "(not ((stages > 3) and (stages < 9)))"},
		{"not not stages = 3", "(not (not (stages = 3)))"},
		{"(total-head + field-head) > setting", "((total-head + field-head) > setting)"},
		{"(total-head) <= (setting)", "(total-head <= setting)"},
		{"((stages >= 3))", "(stages >= 3)"},
		{"(max(total-head, field-head) > setting)", "(max(total-head, field-head) > setting)"},
		{"capacity[gpm] > 3 * stages", "(capacity[gpm] > (3 * stages))"},
	} {
		if got := shape(trade, condition(t, trade, c.src)); got != c.want {
			t.Errorf("%q groups as %s, should be %s", c.src, got, c.want)
		}
	}
}

func TestRelationKnowsItsTerms(t *testing.T) {
	r := relation(t, trade, "  "+bowlPower+"\n")
	var ids []string
	for _, i := range r.Terms() {
		ids = append(ids, trade.Term(i).ID)
	}
	if got := strings.Join(ids, " "); got != "bowl-power capacity total-head specific-gravity bowl-efficiency" {
		t.Errorf("terms: %s", got)
	}
	if r.Target() != termOf(t, trade, "bowl-power") {
		t.Errorf("target: %d", r.Target())
	}
	if r.Source != bowlPower {
		t.Errorf("source: %q", r.Source)
	}
	if relation(t, letters, "a + b = c").Target() != -1 {
		t.Error("a sum on the left is no target")
	}
}

func TestOneWay(t *testing.T) {
	for src, want := range map[string]bool{
		"a = b + c":                     false,
		"a = sqrt(min(b, abs(c)))":      false,
		"a = round-up(b) + c":           true,
		"a = 2 * table(b, 0: 1, 1: 2)":  true,
		"curve(b, 0: 1, 1: 2) = a":      true,
		"a = max(b, round-down(c / d))": true,
	} {
		if got := relation(t, letters, src).OneWay(); got != want {
			t.Errorf("%q one-way: %v", src, got)
		}
	}
}

// A browser's stack is small: nesting ends with a message, not with a crash.
func TestDepthLimit(t *testing.T) {
	nested := func(open, inside, close string, n int) string {
		return strings.Repeat(open, n) + inside + strings.Repeat(close, n)
	}
	for name, make := range map[string]func(n int) (parser, src string){
		"parentheses": func(n int) (string, string) { return "relation", "total-head = " + nested("(", "setting", ")", n) },
		"minus signs": func(n int) (string, string) { return "relation", "total-head = " + nested("-", "setting", "", n) },
		"calls":       func(n int) (string, string) { return "relation", "total-head = " + nested("abs(", "setting", ")", n) },
		"powers":      func(n int) (string, string) { return "relation", "stages = " + nested("1 ^ ", "1", "", n) },
		"not":         func(n int) (string, string) { return "condition", nested("not ", "stages > 1", "", n) },
		"conditions":  func(n int) (string, string) { return "condition", nested("(", "stages > 1", ")", n) },
	} {
		parser, src := make(deepest - 1)
		if err := parsers[parser](src, trade); err != nil {
			t.Errorf("%d %s should pass: %v", deepest-1, name, err)
		}
		parser, src = make(5000)
		err := parsers[parser](src, trade)
		if err == nil || err.Error() != "This expression is nested too deeply." {
			t.Errorf("5000 %s: %v", name, err)
		}
	}
}

// A chain a + a + a … makes a tree as deep as it is long, which every walk
// over it descends: it has to end with a message as well.
func TestChainsAreLimitedToo(t *testing.T) {
	for name, src := range map[string]string{
		"sum":     "total-head = setting" + strings.Repeat(" + setting", 20000),
		"product": "stages = 1" + strings.Repeat(" * 1", 20000),
	} {
		if _, err := ParseRelation(src, trade); err == nil {
			t.Errorf("a %s of 20000 parts is taken", name)
		}
	}
	if _, err := ParseCondition("stages > 1"+strings.Repeat(" or stages > 1", 20000), trade); err == nil {
		t.Error("a condition of 20000 parts is taken")
	}
}
