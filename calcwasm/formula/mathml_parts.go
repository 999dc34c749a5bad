package formula

// MathParts writes the relation as a row of inline pieces, so that a narrow page
// can break it between them: after each item of the sum on the right-hand side
// (“total head = field head”, “+ column loss”, “+ …”), and in a product of
// functions before each factor and after each argument.
func (r *Relation) MathParts(s *Scope, style Style) []string {
	p := &partWriter{mathWriter: mathWriter{scope: s, style: style}}
	p.open("math", "")
	p.write(r.Left)
	p.operator("=")
	for i, item := range items(r.Right, nil, "+") {
		if i > 0 {
			p.cut()
		}
		if i > 0 || item.sign == "−" {
			p.infix(item.sign)
		}
		p.factors(printed(item.expr))
	}
	p.close("math")
	return append(p.parts, p.b.String())
}

// partWriter writes a row of pieces.
type partWriter struct {
	mathWriter
	parts []string
}

// cut ends a piece and begins the next.
func (p *partWriter) cut() {
	p.close("math")
	p.parts = append(p.parts, p.b.String())
	p.b.Reset()
	p.open("math", "")
}

// infix writes a sign that joins two things also at the head of a piece, where
// it would be set as a sign of what follows.
func (p *partWriter) infix(sign string) {
	p.open("mo", ` form="infix"`)
	p.b.WriteString(sign)
	p.close("mo")
}

// factors writes an item: a product that calls a function in pieces, anything
// else as one.
func (p *partWriter) factors(e *Expr) {
	switch {
	case e.Op == Mul && p.calls(e):
		p.factors(printed(e.X))
		p.cut()
		p.infix("×")
		p.factors(printed(e.Y))
	case p.calls(e) && e.Op == Call:
		p.arguments(e)
	default:
		p.operand(e, strength(Mul))
	}
}

// calls says whether a product has a function of several arguments among its
// factors, written with its name.
func (p *partWriter) calls(e *Expr) bool {
	e = printed(e)
	if e.Op == Mul {
		return p.calls(e.X) || p.calls(e.Y)
	}
	_, bracketed := brackets[e.Func.name()]
	return e.Op == Call && !bracketed && len(e.Args) > 1
}

func (f *Func) name() string {
	if f == nil {
		return ""
	}
	return f.Name
}

func (p *partWriter) arguments(e *Expr) {
	p.leaf("mi", e.Func.Name)
	p.operator("(")
	if points := e.pointWords("points"); points != "" { // such functions read the points first
		p.leaf("mtext", points)
		p.operator(",")
		p.cut()
	}
	for i, a := range e.Args {
		p.mathWriter.write(a)
		if i < len(e.Args)-1 {
			p.operator(",")
			p.cut()
		}
	}
	p.operator(")")
}

// signedItem is an item of a sum with its sign.
type signedItem struct {
	sign string
	expr *Expr
}

// items takes a sum apart. What is subtracted stays together.
func items(e *Expr, list []signedItem, sign string) []signedItem {
	e = printed(e)
	if sign == "+" && (e.Op == Add || e.Op == Sub) {
		list = items(e.X, list, sign)
		if e.Op == Sub {
			return append(list, signedItem{"−", e.Y})
		}
		return items(e.Y, list, sign)
	}
	return append(list, signedItem{sign, e})
}
