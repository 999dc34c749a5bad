package formula

import "strings"

// Style says how MathML names the terms.
type Style uint8

const (
	InWords   Style = iota // total head = field head + …
	InLetters              // H = H_f + …
)

// MathML writes the relation as a block of presentation MathML (Core). In
// letters, a term without a symbol keeps its name.
func (r *Relation) MathML(s *Scope, style Style) string {
	w := &mathWriter{scope: s, style: style}
	w.open("math", ` display="block"`)
	w.open("mrow", "")
	w.write(r.Left)
	w.operator("=")
	w.write(r.Right)
	w.close("mrow")
	w.close("math")
	return w.b.String()
}

// Lettered says whether all terms of the relation have symbols, so that it can
// be written in letters alone.
func (r *Relation) Lettered(s *Scope) bool {
	for _, t := range r.Terms() {
		if s.terms[t].Symbol == "" {
			return false
		}
	}
	return true
}

type mathWriter struct {
	b     strings.Builder
	scope *Scope
	style Style
}

func (w *mathWriter) open(tag, attrs string) { w.b.WriteString("<" + tag + attrs + ">") }
func (w *mathWriter) close(tag string)       { w.b.WriteString("</" + tag + ">") }

func (w *mathWriter) leaf(tag, text string) {
	w.open(tag, "")
	w.b.WriteString(escape(text))
	w.close(tag)
}

func (w *mathWriter) operator(sign string) { w.leaf("mo", sign) }

func escape(s string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;").Replace(s)
}

var mathInfix = map[Op]string{Add: "+", Sub: "−", Mul: "×", Equal: "=", Unequal: "≠", Less: "<", AtMost: "≤", More: ">", AtLeast: "≥", And: "and", Or: "or"}

func (w *mathWriter) write(e *Expr) {
	e = printed(e)
	switch e.Op {
	case Number:
		w.number(e)
	case Ref, Bare:
		w.term(e)
	case Word:
		w.leaf("mtext", e.Text)
	case Hole:
		w.leaf("mtext", holeWords(e.Text))
	case Neg:
		w.operator("−")
		w.operand(e.X, strength(Neg))
	case Not:
		w.leaf("mtext", "not ")
		w.operand(e.X, strength(Not))
	case Div:
		w.open("mfrac", "")
		w.row(e.X)
		w.row(e.Y)
		w.close("mfrac")
	case Pow:
		w.open("msup", "")
		w.group(e.X, strength(Pow)+1)
		w.row(e.Y)
		w.close("msup")
	case Call:
		w.call(e)
	default:
		w.pair(e)
	}
}

func (w *mathWriter) pair(e *Expr) {
	right := strength(e.Op)
	if e.Op == Sub {
		right++
	}
	w.operand(e.X, strength(e.Op))
	w.operator(mathInfix[e.Op])
	w.operand(e.Y, right)
}

func (w *mathWriter) row(e *Expr) {
	w.open("mrow", "")
	w.write(e)
	w.close("mrow")
}

func (w *mathWriter) group(e *Expr, least int) {
	w.open("mrow", "")
	w.operand(e, least)
	w.close("mrow")
}

func (w *mathWriter) operand(e *Expr, least int) {
	e = printed(e)
	if strength(e.Op) < least && e.Op != Div || e.Op == Div && least > strength(Neg) {
		w.operator("(")
		w.write(e)
		w.operator(")")
		return
	}
	w.write(e)
}

func (w *mathWriter) number(e *Expr) {
	if e.Unit == nil {
		w.leaf("mn", constantText(e))
		return
	}
	w.open("mrow", "")
	w.leaf("mn", e.Text)
	w.leaf("mtext", "\u00a0"+e.Unit.Print)
	w.close("mrow")
}

func (w *mathWriter) term(e *Expr) {
	t := &w.scope.terms[e.Term]
	if e.Op == Bare && e.Unit.Print != "" {
		w.open("msub", "")
		w.name(t)
		w.leaf("mtext", e.Unit.Print)
		w.close("msub")
		return
	}
	w.name(t)
}

func (w *mathWriter) name(t *Term) {
	if w.style == InWords || t.Symbol == "" {
		w.leaf("mtext", t.Name)
		return
	}
	base, sub, has := strings.Cut(t.Symbol, "_")
	if !has {
		w.symbol(base)
		return
	}
	w.open("msub", "")
	w.symbol(base)
	w.symbol(sub)
	w.close("msub")
}

// symbol writes one letter in italics and an abbreviation upright.
func (w *mathWriter) symbol(text string) {
	w.leaf("mi", text)
}

// brackets of the functions that mathematics writes as signs.
var brackets = map[string][2]string{"round-up": {"⌈", "⌉"}, "round-down": {"⌊", "⌋"}, "abs": {"|", "|"}}

func (w *mathWriter) call(e *Expr) {
	if e.Func.Name == "sqrt" {
		w.open("msqrt", "")
		w.write(e.Args[0])
		w.close("msqrt")
		return
	}
	sign, ok := brackets[e.Func.Name]
	if !ok {
		sign = [2]string{"(", ")"}
		w.leaf("mi", e.Func.Name)
	}
	w.operator(sign[0])
	points := e.pointWords("points")
	if points != "" && e.Func.OnPoints != nil { // such functions read the points first
		w.leaf("mtext", points)
		w.operator(",")
		points = ""
	}
	for i, a := range e.Args {
		if i > 0 {
			w.operator(",")
		}
		w.write(a)
	}
	if points != "" {
		w.operator(",")
		w.leaf("mtext", points)
	}
	w.operator(sign[1])
}
