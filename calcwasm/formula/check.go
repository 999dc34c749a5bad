package formula

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"columnbowl/calcwasm/unit"
)

// dimWord names a dimension for a message: "a length", "no dimension".
func dimWord(d unit.Dim) string {
	if d.IsNone() {
		return "a bare number"
	}
	return article(d.String())
}

// article puts “a” or “an” before a word, by its sound.
func article(word string) string {
	if strings.IndexByte("aeio", word[0]) >= 0 {
		return "an " + word
	}
	return "a " + word
}

func (p *parser) failExpr(e *Expr, message, suggest string) {
	p.failAt(e.Off, max(e.Len, 1), message, suggest)
}

// text is an expression as its author wrote it, for messages.
func (p *parser) text(e *Expr) string {
	return "“" + p.src[min(e.Off, len(p.src)):min(e.Off+e.Len, len(p.src))] + "”"
}

func (p *parser) checkRelation(r *Relation) {
	left, right := p.check(r.Left), p.check(r.Right)
	if len(p.errors) == 0 && left != right {
		message := "The left-hand side is " + dimWord(left) + ", the right-hand side " + dimWord(right) + "."
		if r.Left.Op == Ref && right.IsNone() {
			message += " If the right-hand side is a number in some unit, name the unit on the left: " +
				p.scope.terms[r.Left.Term].ID + "[" + p.scope.terms[r.Left.Term].US.Symbol + "]."
		}
		p.failExpr(r.Right, message, "")
	}
}

// check finds the dimension of an expression and of all its parts.
func (p *parser) check(e *Expr) unit.Dim {
	switch e.Op {
	case Word:
		p.failExpr(e, "There is no term "+p.text(e)+".", p.scope.Near(e.Text))
	case Hole:
		return p.checkHole(e)
	case Ref:
		if t := &p.scope.terms[e.Term]; t.Kind == Choice {
			example := "a value"
			if len(t.Values) > 0 {
				example = t.Values[0]
			}
			p.failExpr(e, "“"+t.ID+"” is a word, not a number: it can only stand in a condition, such as "+t.ID+" = "+example+".", "")
		}
	case Neg:
		e.Dim = p.check(e.X)
	case Add, Sub:
		e.Dim = p.checkSum(e)
	case Mul, Div:
		e.Dim = p.checkProduct(e)
	case Pow:
		e.Dim = p.checkPow(e)
	case Call:
		e.Dim = p.checkCall(e)
	}
	return e.Dim
}

func (p *parser) checkSum(e *Expr) unit.Dim {
	x, y := p.check(e.X), p.check(e.Y)
	if len(p.errors) == 0 && x != y {
		verb := "added"
		if e.Op == Sub {
			verb = "subtracted"
		}
		p.failExpr(e.Y, p.text(e.X)+" is "+dimWord(x)+" and "+p.text(e.Y)+" "+dimWord(y)+": they cannot be "+verb+".", "")
	}
	return x
}

// checkProduct finds the dimension of a product or a quotient. Exponents have
// an end: a product that goes beyond it cannot be divided back.
func (p *parser) checkProduct(e *Expr) unit.Dim {
	x, y := p.check(e.X), p.check(e.Y)
	d, back := x.Mul(y), x.Mul(y).Div(y)
	if e.Op == Div {
		d, back = x.Div(y), x.Div(y).Mul(y)
	}
	if back != x {
		p.failExpr(e, "This dimension has no meaning: an exponent in it is too large.", "")
	}
	return d
}

func (p *parser) checkPow(e *Expr) unit.Dim {
	x, y := p.check(e.X), p.check(e.Y)
	if len(p.errors) > 0 {
		return x
	}
	if !y.IsNone() {
		p.failExpr(e.Y, "An exponent is a bare number; this is "+dimWord(y)+".", "")
		return x
	}
	if x.IsNone() {
		return x
	}
	n, ok := constant(e.Y)
	num := n * 12
	if !ok || num != math.Trunc(num) || math.Abs(num) > 120 {
		p.failExpr(e.Y, p.text(e.X)+" is "+dimWord(x)+": only a simple constant exponent such as 2, 0.5 or 0.75 can stand over it. Take the bare number: name[unit].", "")
		return x
	}
	d, ok := x.Pow(int(num), 12)
	if !ok {
		p.failExpr(e.Y, "This power of "+dimWord(x)+" has no meaning here.", "")
	}
	return d
}

// constant is the value of a number, or of a number with a minus sign.
func constant(e *Expr) (float64, bool) {
	switch e.Op {
	case Number:
		return e.Value, true
	case Neg:
		v, ok := constant(e.X)
		return -v, ok
	case Div:
		x, okx := constant(e.X)
		y, oky := constant(e.Y)
		return x / y, okx && oky
	}
	return 0, false
}

func (p *parser) checkCall(e *Expr) unit.Dim {
	f := e.Func
	list := -1
	for i, a := range e.Args {
		if list < 0 && p.list(a) != nil {
			list = i
			continue
		}
		p.check(a)
	}
	if len(p.errors) > 0 {
		return unit.Dim{}
	}
	if list >= 0 {
		if d, whole := p.checkList(e, list); whole || len(p.errors) > 0 {
			return d
		}
	} else if f.OnPoints != nil {
		p.failExpr(e, f.usage()+" reads the points of a family of bowls: its first value is a list such as "+owner+":head.", "")
		return f.Result
	}
	if check := ownCheck(f); check != nil {
		return check(p, e)
	}
	if len(e.Args) != len(f.Params) {
		p.failExpr(e, f.usage()+" takes "+strconv.Itoa(len(f.Params))+" values; "+strconv.Itoa(len(e.Args))+" stand here.", "")
		return f.Result
	}
	for i, a := range e.Args {
		if a.Dim != f.Params[i].Dim {
			p.failExpr(a, "The "+f.Params[i].Name+" of "+f.Name+"(…) is "+dimWord(f.Params[i].Dim)+"; "+p.text(a)+" is "+dimWord(a.Dim)+".", "")
		}
	}
	return f.Result
}

func (p *parser) checkCondition(e *Expr) {
	switch e.Op {
	case And, Or:
		p.checkCondition(e.X)
		p.checkCondition(e.Y)
	case Not:
		p.checkCondition(e.X)
	case Equal, Unequal, Less, AtMost, More, AtLeast:
		p.checkComparison(e)
	default:
		p.failExpr(e, "Expected a condition, but "+p.text(e)+" is a value.", "")
	}
}

func (p *parser) checkComparison(e *Expr) {
	if p.choice(e.Y) != nil && p.choice(e.X) == nil && (e.X.Op == Word || e.X.Op == Ref) {
		e.X, e.Y = e.Y, e.X
	}
	if t := p.choice(e.X); t != nil {
		p.checkChoice(e, t)
		return
	}
	if e.X.Op == Hole {
		if f := p.scope.field(e.X.Text); f != nil && f.Words != nil {
			p.checkChoice(e, &Term{ID: owner + ":" + f.Name, Values: f.Words})
			return
		}
	}
	x := p.check(e.X)
	if len(p.errors) > 0 && e.Y.Op == Word {
		return // the word may belong to the choice that is misspelt
	}
	y := p.check(e.Y)
	if len(p.errors) == 0 && x != y {
		p.failExpr(e.Y, p.text(e.X)+" is "+dimWord(x)+" and "+p.text(e.Y)+" "+dimWord(y)+": they cannot be compared.", "")
	}
}

// choice is the choice term that an expression is, or nil.
func (p *parser) choice(e *Expr) *Term {
	if e.Op == Ref && p.scope.terms[e.Term].Kind == Choice {
		return &p.scope.terms[e.Term]
	}
	return nil
}

// asWord takes a name that is both a term and a word for the word.
func (p *parser) asWord(e *Expr) {
	if e.Op == Ref {
		*e = Expr{Op: Word, Off: e.Off, Len: e.Len, Text: p.scope.terms[e.Term].ID, Value: -1}
	}
}

func (p *parser) checkChoice(e *Expr, t *Term) {
	if e.Op != Equal && e.Op != Unequal {
		p.failExpr(e, "“"+t.ID+"” is a word: it can only be compared with = or !=.", "")
		return
	}
	if e.Y.Op == Ref && slices.Contains(t.Values, p.scope.terms[e.Y.Term].ID) {
		p.asWord(e.Y)
	}
	if e.Y.Op == Word {
		for i, v := range t.Values {
			if v == e.Y.Text {
				e.Y.Value = float64(i)
				return
			}
		}
		p.failExpr(e.Y, p.text(e.Y)+" is not one of the values of "+t.ID+".", Nearest(e.Y.Text, t.Values))
		return
	}
	p.failExpr(e.Y, "“"+t.ID+"” is compared with one of its values: "+join(t.Values, " or ")+".", "")
}

func join(words []string, last string) string {
	out := ""
	for i, w := range words {
		switch {
		case i == 0:
		case i == len(words)-1:
			out += last
		default:
			out += ", "
		}
		out += w
	}
	return out
}

// dimension is the dimension of an expression whose parts have been checked.
func (e *Expr) dimension() unit.Dim {
	if e.Op == Number {
		return dimOf(e.Unit)
	}
	return e.Dim
}
