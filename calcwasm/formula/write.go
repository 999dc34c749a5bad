package formula

import (
	"strconv"
	"strings"

	"columnbowl/calcwasm/unit"
)

// binding strength of an operation, for parentheses.
func strength(op Op) int {
	switch op {
	case Or:
		return 1
	case And:
		return 2
	case Not:
		return 3
	case Equal, Unequal, Less, AtMost, More, AtLeast:
		return 4
	case Add, Sub:
		return 5
	case Mul, Div:
		return 6
	case Neg:
		return 7
	case Pow:
		return 8
	}
	return 9
}

// printed looks through nodes that only change the unit.
func printed(e *Expr) *Expr {
	for e.Op == In || e.Op == Call && e.Func == notNegative {
		if e.Op == In {
			e = e.X
		} else {
			e = e.Args[0]
		}
	}
	return e
}

var infix = map[Op]string{Add: " + ", Sub: " − ", Mul: " × ", Div: " / ", Pow: "^", Equal: " = ", Unequal: " ≠ ", Less: " < ",
	AtMost: " ≤ ", More: " > ", AtLeast: " ≥ ", And: " and ", Or: " or "}

// textWriter writes an expression as one line of text; how a leaf is written
// is left to the caller.
type textWriter struct {
	b    strings.Builder
	leaf func(e *Expr) string
}

func (w *textWriter) write(e *Expr) {
	e = printed(e)
	switch e.Op {
	case Number, Ref, Bare, Word:
		w.b.WriteString(w.leaf(e))
	case Neg:
		w.b.WriteString("−")
		w.operand(e.X, strength(Neg))
	case Not:
		w.b.WriteString("not ")
		w.operand(e.X, strength(Not))
	case Call:
		w.call(e)
	case Pow:
		w.power(e)
	default:
		right := strength(e.Op)
		if e.Op == Sub || e.Op == Div {
			right++
		}
		w.operand(e.X, strength(e.Op))
		w.b.WriteString(infix[e.Op])
		w.operand(e.Y, right)
	}
}

func (w *textWriter) power(e *Expr) {
	w.operand(e.X, strength(Pow)+1)
	if n, ok := constant(e.Y); ok && n == 2 {
		w.b.WriteString("²")
		return
	} else if ok && n == 3 {
		w.b.WriteString("³")
		return
	}
	w.b.WriteString("^")
	w.operand(e.Y, strength(Pow)+1)
}

func (w *textWriter) operand(e *Expr, least int) {
	e = printed(e)
	if strength(e.Op) < least {
		w.b.WriteString("(")
		w.write(e)
		w.b.WriteString(")")
		return
	}
	w.write(e)
}

func (w *textWriter) call(e *Expr) {
	w.b.WriteString(e.Func.Name)
	w.b.WriteString("(")
	for i, a := range e.Args {
		if i > 0 {
			w.b.WriteString(", ")
		}
		w.write(a)
	}
	if e.Points != nil {
		w.b.WriteString(", …")
	}
	w.b.WriteString(")")
}

// Words writes an expression with the names of its terms:
// “field head + column loss”. A bare number of a term has its unit behind it.
func (e *Expr) Words(s *Scope) string {
	w := textWriter{leaf: func(x *Expr) string {
		switch x.Op {
		case Ref:
			return s.terms[x.Term].Name
		case Bare:
			return s.terms[x.Term].Name + " [" + x.Unit.Print + "]"
		case Word:
			return x.Text
		}
		return constantText(x)
	}}
	w.write(e)
	return w.b.String()
}

func constantText(x *Expr) string {
	text := x.Text
	if text == "" {
		return unit.Format(x.Value, unitless)
	}
	if x.Unit != nil {
		return text + " " + x.Unit.Print
	}
	return text
}

var unitless = mustUnit("1")

func mustUnit(symbol string) *unit.Unit {
	u, ok := unit.Lookup(symbol)
	if !ok {
		panic("formula: the table of units lacks " + symbol)
	}
	return u
}

// Substituted writes an expression with the values of its terms put in, in one
// system of units: “187 ft + 6.4 ft + 0.6 ft”.
func (e *Expr) Substituted(s *Scope, v *Env, system System) string {
	w := textWriter{leaf: func(x *Expr) string { return leafValue(s, v, system, x) }}
	w.write(e)
	return w.b.String()
}

func leafValue(s *Scope, v *Env, system System, x *Expr) string {
	switch x.Op {
	case Ref:
		t := &s.terms[x.Term]
		if t.Kind == Choice {
			return choiceName(t, v.Values[x.Term])
		}
		return signed(unit.FormatWith(v.Values[x.Term], t.In(system)))
	case Bare:
		return signed(unit.Format(v.Values[x.Term], x.Unit))
	case Word:
		return x.Text
	}
	return constantText(x)
}

// signed keeps a negative number from running into the operator before it.
func signed(text string) string {
	if strings.HasPrefix(text, "−") {
		return "(" + text + ")"
	}
	return text
}

func choiceName(t *Term, v float64) string {
	if i := int(v); v == v && i >= 0 && i < len(t.Values) {
		return t.Values[i]
	}
	return "?"
}

// Rounded says whether an expression is a plain sum whose printed parts do not
// add up to its printed result, so that the line should say so.
func (e *Expr) Rounded(s *Scope, v *Env, system System, u *unit.Unit) bool {
	sum, ok := printedSum(s, v, system, printed(e), u)
	if !ok {
		return false
	}
	result := e.eval(v)
	return unit.FormatPlain(u.ToSI(sum), u) != unit.FormatPlain(result, u)
}

// printedSum adds the parts of a sum as they are printed, in the unit u.
func printedSum(s *Scope, v *Env, system System, e *Expr, u *unit.Unit) (float64, bool) {
	switch e.Op {
	case Add, Sub:
		x, okx := printedSum(s, v, system, e.X, u)
		y, oky := printedSum(s, v, system, e.Y, u)
		if e.Op == Sub {
			y = -y
		}
		return x + y, okx && oky
	case Ref:
		if s.terms[e.Term].In(system) != nil && s.terms[e.Term].In(system).Symbol == u.Symbol {
			n, err := strconv.ParseFloat(unit.FormatPlain(v.Values[e.Term], u), 64)
			return n, err == nil
		}
	}
	return 0, false
}
