package formula

import (
	"strconv"
	"strings"

	"columnbowl/calcwasm/unit"
)

// deepest is how far expressions may nest: more than any author needs, and far
// less than the small stack of a browser's WebAssembly bears.
const deepest = 100

// longest is how many operations may be chained in one expression: a + a + a …
// makes a tree as deep as it is long.
const longest = 500

type parser struct {
	src    string
	tokens []token
	i      int
	scope  *Scope
	errors Errors
	depth  int
	links  int
	lost   bool // something structural is missing: what follows would only be noise
}

func newParser(src string, scope *Scope) *parser {
	p := &parser{src: src, scope: scope}
	p.tokens = scan(src, &p.errors)
	return p
}

func (p *parser) tok() token { return p.tokens[p.i] }

func (p *parser) take() token {
	t := p.tokens[p.i]
	if t.kind != tokEnd {
		p.i++
	}
	return t
}

func (p *parser) isOp(op string) bool { return p.tok().kind == tokOp && p.tok().text == op }

func (p *parser) isWord(word string) bool { return p.tok().kind == tokName && p.tok().text == word }

func (p *parser) acceptOp(op string) bool {
	if p.isOp(op) {
		p.i++
		return true
	}
	return false
}

func (p *parser) acceptWord(word string) bool {
	if p.isWord(word) {
		p.i++
		return true
	}
	return false
}

func (p *parser) fail(t token, message string) {
	p.failAt(t.off, max(t.len, 1), message, "")
}

func (p *parser) failAt(off, length int, message, suggest string) {
	if !p.lost {
		p.errors = append(p.errors, &Error{Off: off, Len: length, Message: message, Suggest: suggest})
	}
}

// expected reports what should stand here and gives the rest of the text up.
func (p *parser) expected(what string) {
	t := p.tok()
	found := "“" + p.src[t.off:min(t.off+t.len, len(p.src))] + "” stands here"
	if t.kind == tokEnd {
		found = "the text ends here"
	}
	p.fail(t, "Expected "+what+", but "+found+".")
	p.lost = true
	p.i = len(p.tokens) - 1
}

func (p *parser) done() error {
	if p.tok().kind != tokEnd {
		p.expected("an operator or the end")
	}
	return p.errors.sorted()
}

// ParseRelation parses “term = expression” and checks its names and dimensions.
func ParseRelation(src string, scope *Scope) (*Relation, error) {
	p := newParser(src, scope)
	r := p.relation()
	if err := p.done(); err != nil {
		return nil, err
	}
	return r, nil
}

// ParseCondition parses a condition such as “pumping-level > setting”.
func ParseCondition(src string, scope *Scope) (*Expr, error) {
	p := newParser(src, scope)
	c := p.condition()
	if err := p.done(); err != nil {
		return nil, err
	}
	return c, nil
}

// ParseExpr parses an expression that has a value.
func ParseExpr(src string, scope *Scope) (*Expr, error) {
	p := newParser(src, scope)
	e := p.checked(p.sum())
	if err := p.done(); err != nil {
		return nil, err
	}
	return e, nil
}

func (p *parser) relation() *Relation {
	from := p.tok().off
	left := p.sum()
	if !p.acceptOp("=") {
		p.expected("“=” between the two sides of the relation")
		return nil
	}
	right := p.sum()
	r := &Relation{Left: left, Right: right, Source: p.src[from:p.lastEnd()]}
	if len(p.errors) == 0 {
		p.checkRelation(r)
	}
	return r
}

func (p *parser) lastEnd() int {
	if p.i == 0 {
		return 0
	}
	t := p.tokens[p.i-1]
	return min(t.off+t.len, len(p.src))
}

func (p *parser) checked(e *Expr) *Expr {
	if len(p.errors) == 0 {
		p.check(e)
	}
	return e
}

func (p *parser) pair(op Op, x, y *Expr) *Expr {
	if p.links++; p.links > longest {
		p.fail(p.tok(), "This expression is too long: more than "+strconv.Itoa(longest)+" operations.")
		p.lost = true
		p.i = len(p.tokens) - 1
	}
	return &Expr{Op: op, Off: x.Off, Len: max(p.lastEnd()-x.Off, 1), X: x, Y: y}
}

func (p *parser) sum() *Expr {
	x := p.product()
	for {
		switch {
		case p.acceptOp("+"):
			x = p.pair(Add, x, p.product())
		case p.acceptOp("-"):
			x = p.pair(Sub, x, p.product())
		default:
			return x
		}
	}
}

func (p *parser) product() *Expr {
	x := p.sign()
	for {
		switch {
		case p.acceptOp("*"):
			x = p.pair(Mul, x, p.sign())
		case p.acceptOp("/"):
			x = p.pair(Div, x, p.sign())
		default:
			return x
		}
	}
}

func (p *parser) enter(t token) bool {
	p.depth++
	if p.depth > deepest {
		p.fail(t, "This expression is nested too deeply.")
		p.lost = true
		p.i = len(p.tokens) - 1
		return false
	}
	return true
}

func (p *parser) leave() { p.depth-- }

func (p *parser) sign() *Expr {
	t := p.tok()
	if !p.acceptOp("-") {
		return p.power()
	}
	if n := p.tok(); n.kind == tokNumber && n.unit != nil && n.unit.Offset != 0 {
		p.take() // -5 degC is a temperature, not a temperature with its sign changed
		return &Expr{Op: Number, Off: t.off, Len: n.off + n.len - t.off, Value: n.unit.ToSI(-n.unit.FromSI(n.value)), Unit: n.unit, Text: "-" + n.text, Dim: n.unit.Dim}
	}
	if !p.enter(t) {
		return &Expr{Off: t.off, Len: t.len}
	}
	defer p.leave()
	x := p.sign()
	return &Expr{Op: Neg, Off: t.off, Len: max(p.lastEnd()-t.off, 1), X: x}
}

func (p *parser) power() *Expr {
	x := p.atom()
	if t := p.tok(); p.acceptOp("^") {
		if !p.enter(t) {
			return x
		}
		defer p.leave()
		return p.pair(Pow, x, p.sign())
	}
	return x
}

func (p *parser) atom() *Expr {
	t := p.tok()
	switch {
	case t.kind == tokNumber:
		p.take()
		return &Expr{Op: Number, Off: t.off, Len: t.len, Value: t.value, Unit: t.unit, Text: t.text, Dim: dimOf(t.unit)}
	case t.kind == tokName:
		return p.name()
	case p.isOp("("):
		if !p.enter(t) {
			return &Expr{Off: t.off, Len: t.len}
		}
		defer p.leave()
		p.take()
		x := p.sum()
		if !p.acceptOp(")") {
			p.expected("“)”")
		}
		return x
	}
	p.expected("a term, a number or “(”")
	return &Expr{Off: t.off, Len: max(t.len, 1)}
}

func dimOf(u *unit.Unit) unit.Dim {
	if u == nil {
		return unit.Dim{}
	}
	return u.Dim
}

func (p *parser) name() *Expr {
	t := p.take()
	if strings.HasPrefix(t.text, owner+":") {
		return p.hole(t)
	}
	if p.isOp("(") {
		return p.call(t)
	}
	i, ok := p.scope.Find(t.text)
	if !ok {
		if p.tok().kind == tokUnit { // a misspelt term: its unit is not a second mistake
			p.take()
		}
		return &Expr{Op: Word, Off: t.off, Len: t.len, Text: t.text, Value: -1}
	}
	e := &Expr{Op: Ref, Off: t.off, Len: t.len, Term: i, Dim: p.scope.terms[i].Dim()}
	if u := p.tok(); u.kind == tokUnit {
		p.take()
		return p.bare(e, u)
	}
	return e
}

func (p *parser) bare(ref *Expr, u token) *Expr {
	t := &p.scope.terms[ref.Term]
	e := &Expr{Op: Bare, Off: ref.Off, Len: u.off + u.len - ref.Off, Term: ref.Term, Unit: u.unit}
	switch {
	case t.Kind == Choice:
		p.fail(u, "“"+t.ID+"” is a word, not a quantity: it has no unit.")
	case u.unit != nil && u.unit.Dim != t.Dim():
		p.fail(u, "“"+t.ID+"” is "+dimWord(t.Dim())+" and cannot be counted in "+u.text+" ("+dimWord(u.unit.Dim)+"); its own unit is "+t.US.Symbol+".")
	}
	return e
}

func (p *parser) call(name token) *Expr {
	e := &Expr{Op: Call, Off: name.off}
	f, ok := p.scope.funcs[name.text]
	if !ok {
		p.failAt(name.off, name.len, "There is no function “"+name.text+"”.", p.scope.Near(name.text))
		f = unknownFunc
	}
	e.Func = f
	if !p.enter(name) {
		return e
	}
	defer p.leave()
	p.take() // (
	for more := !p.isOp(")"); more; more = p.acceptOp(",") {
		p.argument(e)
	}
	if !p.acceptOp(")") {
		p.expected("“,” or “)”")
	}
	e.Len = p.lastEnd() - e.Off
	return e
}

// argument reads one argument, or one “x: y” pair of a table or a curve.
func (p *parser) argument(e *Expr) {
	x := p.sum()
	first := len(e.Args) == 0
	if !p.acceptOp(":") {
		e.mixed = e.mixed || len(e.Points) > 0
		e.Args = append(e.Args, x)
		return
	}
	e.mixed = e.mixed || first
	y := p.sum()
	if e.Func != unknownFunc && !e.Func.points {
		p.failAt(x.Off, max(p.lastEnd()-x.Off, 1), "Only table(…) and curve(…) take pairs of points.", "")
		return
	}
	e.Args = append(e.Args, x, y)
	e.Points = append(e.Points, Point{})
}
