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
	case Number, Ref, Bare, Word, Hole:
		w.b.WriteString(w.leaf(e))
	case Neg:
		w.b.WriteString("−")
		w.operand(e.X, strength(Neg)+1)
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
		if printed(e.Y).Op == Neg {
			right = strength(Neg) + 1
		}
		w.operand(e.Y, right)
	}
}

func (w *textWriter) power(e *Expr) {
	w.base(printed(e.X))
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

// base writes what is raised to a power; a number with its unit is taken as one:
// (187 ft)².
func (w *textWriter) base(e *Expr) {
	if e.Op == Ref || e.Op == Number || e.Op == Bare {
		if text := w.leaf(e); strings.Contains(text, "\u00a0") && !strings.HasPrefix(text, "(") {
			w.b.WriteString("(" + text + ")")
			return
		}
	}
	w.operand(e, strength(Pow)+1)
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
	points := e.pointWords("…")
	if points != "" && e.Func.OnPoints != nil {
		w.b.WriteString(points + ", ")
		points = ""
	}
	for i, a := range e.Args {
		if i > 0 {
			w.b.WriteString(", ")
		}
		w.write(a)
	}
	if points != "" {
		w.b.WriteString(", " + points)
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
		case Hole:
			return holeWords(x.Text)
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
	text = strings.Replace(text, "-", "−", 1)
	if x.Unit != nil && x.Unit.Print != "" {
		return text + " " + x.Unit.Print
	}
	return text
}

// constantIn writes a constant in a system of units: 10 ft among metres would
// not add up. It takes the unit that a term of the same kind has there.
func constantIn(s *Scope, x *Expr, system System) string {
	plain := strings.Replace(constantText(x), " ", "\u00a0", 1)
	if system == US || x.Unit == nil || x.Unit.System != unit.US {
		return plain
	}
	var same *Term
	for i := range s.terms {
		if t := &s.terms[i]; t.US != nil && t.US.Dim == x.Unit.Dim && (same == nil || t.US.Symbol == x.Unit.Symbol && same.US.Symbol != x.Unit.Symbol) {
			same = t
		}
	}
	if same == nil {
		return plain
	}
	return unit.FormatWith(x.Value, same.SI)
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
	case Hole:
		return holeWords(x.Text)
	}
	return constantIn(s, x, system)
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
	p := sumPrinter{s, v, system, u, e.Op == In && e.Unit.Symbol == u.Symbol}
	inner := printed(e)
	sum, ok := p.add(inner)
	if !ok || inner.Op != Add && inner.Op != Sub {
		return false
	}
	return unit.FormatPlain(u.ToSI(sum), u) != unit.FormatPlain(e.eval(v), u)
}

// sumPrinter adds the parts of a sum as they are printed, in one unit.
type sumPrinter struct {
	s      *Scope
	v      *Env
	system System
	u      *unit.Unit
	bare   bool // the sum is one of bare numbers in that unit
}

func (p *sumPrinter) add(e *Expr) (float64, bool) {
	e = printed(e)
	switch e.Op {
	case Add, Sub:
		x, okx := p.add(e.X)
		y, oky := p.add(e.Y)
		if e.Op == Sub {
			y = -y
		}
		return x + y, okx && oky
	case Neg:
		x, ok := p.add(e.X)
		return -x, ok
	case Ref:
		if t := p.s.terms[e.Term].In(p.system); t != nil && t.Symbol == p.u.Symbol {
			return printedNumber(p.v.Values[e.Term], p.u)
		}
	case Bare:
		if p.bare && e.Unit.Symbol == p.u.Symbol || p.u.Dim.IsNone() {
			return printedNumber(p.v.Values[e.Term], e.Unit)
		}
	case Number:
		switch {
		case e.Unit == nil && (p.bare || p.u.Dim.IsNone()):
			return e.Value, true
		case e.Unit != nil && e.Unit.Dim == p.u.Dim:
			return printedNumber(e.Value, p.u)
		}
	}
	return 0, false
}

func printedNumber(si float64, u *unit.Unit) (float64, bool) {
	n, err := strconv.ParseFloat(unit.FormatPlain(si, u), 64)
	return n, err == nil
}
