package formula

func (p *parser) condition() *Expr {
	c := p.or()
	if len(p.errors) == 0 {
		p.checkCondition(c)
	}
	return c
}

func (p *parser) or() *Expr {
	x := p.and()
	for p.acceptWord("or") {
		x = p.pair(Or, x, p.and())
	}
	return x
}

func (p *parser) and() *Expr {
	x := p.not()
	for p.acceptWord("and") {
		x = p.pair(And, x, p.not())
	}
	return x
}

func (p *parser) not() *Expr {
	t := p.tok()
	if !p.acceptWord("not") {
		return p.comparison()
	}
	if !p.enter(t) {
		return &Expr{Off: t.off, Len: t.len}
	}
	defer p.leave()
	return &Expr{Op: Not, Off: t.off, Len: t.len, X: p.not()}
}

var comparisons = []struct {
	sign string
	op   Op
}{{"=", Equal}, {"!=", Unequal}, {"<=", AtMost}, {">=", AtLeast}, {"<", Less}, {">", More}}

func (p *parser) comparison() *Expr {
	if t := p.tok(); p.isOp("(") && p.parenIsCondition() {
		if !p.enter(t) {
			return &Expr{Off: t.off, Len: t.len}
		}
		defer p.leave()
		p.take()
		c := p.or()
		if !p.acceptOp(")") {
			p.expected("“)”")
		}
		return c
	}
	x := p.sum()
	for _, c := range comparisons {
		if p.acceptOp(c.sign) {
			e := p.pair(c.op, x, p.sum())
			p.chained()
			return e
		}
	}
	p.expected("a comparison (= != < <= > >=)")
	return x
}

// chained refuses a second comparison right behind a first one.
func (p *parser) chained() {
	for _, c := range comparisons {
		if p.isOp(c.sign) {
			p.fail(p.tok(), "Two comparisons are joined with “and”: 3 < stages and stages < 9.")
			p.lost = true
			p.i = len(p.tokens) - 1
		}
	}
}

// parenIsCondition looks ahead: a parenthesis that holds a comparison groups
// conditions, any other groups a sum.
func (p *parser) parenIsCondition() bool {
	level := 0
	for _, t := range p.tokens[p.i:] {
		if t.kind != tokOp && t.kind != tokName {
			continue
		}
		switch t.text {
		case "(":
			level++
		case ")":
			if level--; level == 0 {
				return false
			}
		case "=", "!=", "<", "<=", ">", ">=", "and", "or", "not":
			if level > 0 {
				return true
			}
		}
	}
	return false
}
