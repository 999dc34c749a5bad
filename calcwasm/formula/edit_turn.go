package formula

// turn changes the sign of an item of a sum, or the side of a factor.
func turn(e *Expr, kind EditKind, term int) (*Expr, bool) {
	if e == nil || e.uses(term) == 0 {
		return e, false
	}
	inX := e.X != nil && e.X.uses(term) > 0
	deeper := e.Y
	if inX {
		deeper = e.X
	}
	// Of products the outermost is meant, whose line of the fraction one sees; of
	// sums the innermost.
	if kind == TimesFor || kind == OverFor {
		if out, ok := turnHere(e, kind, term, inX); ok {
			return out, true
		}
	}
	c := *e
	if e.Op == Call {
		c.Args = append([]*Expr(nil), e.Args...)
		for i, a := range e.Args {
			if out, ok := turn(a, kind, term); ok {
				c.Args[i] = out
				return &c, true
			}
		}
		return e, false
	}
	out, ok := turn(deeper, kind, term)
	if !ok && (kind == MinusFor || kind == PlusFor) {
		return turnHere(e, kind, term, inX)
	}
	if inX {
		c.X = out
	} else {
		c.Y = out
	}
	return &c, ok
}

func turnHere(e *Expr, kind EditKind, term int, inX bool) (*Expr, bool) {
	item := e.Y
	if inX {
		item = e.X
	}
	switch kind {
	case MinusFor, PlusFor:
		if e.Op != Add && e.Op != Sub || item.Op == Add || item.Op == Sub {
			return e, false
		}
		return turnSign(e, kind, inX)
	case TimesFor, OverFor:
		if e.Op != Mul && e.Op != Div {
			return e, false
		}
		return turnSide(e, kind, term)
	}
	return e, false
}

func turnSign(e *Expr, kind EditKind, inX bool) (*Expr, bool) {
	item := e.Y
	if inX {
		item = e.X
	}
	negative := !inX && e.Op == Sub
	if item.Op == Neg {
		negative = !negative
	}
	if negative != (kind == PlusFor) {
		return e, false
	}
	switch {
	case item.Op == Neg && inX:
		return node(e.Op, item.X, e.Y), true
	case item.Op == Neg:
		return node(e.Op, e.X, item.X), true
	case !inX && e.Op == Add:
		return node(Sub, e.X, e.Y), true
	case !inX:
		return node(Add, e.X, e.Y), true
	case e.Op == Add:
		return node(Sub, e.Y, e.X), true
	}
	return node(Sub, node(Neg, e.X, nil), e.Y), true
}

// turnSide takes a factor out of a product and puts it on the other side of
// the fraction.
func turnSide(e *Expr, kind EditKind, term int) (*Expr, bool) {
	factor, below := factorOf(e, term)
	if factor == nil || below != (kind == TimesFor) {
		return e, false
	}
	rest, _ := without(e, term)
	if rest == nil {
		return e, false
	}
	if kind == TimesFor {
		return node(Mul, rest, factor), true
	}
	return node(Div, rest, factor), true
}

// factorOf finds a term among the factors of a product and says whether it
// stands below the line.
func factorOf(e *Expr, term int) (factor *Expr, below bool) {
	switch {
	case e.uses(term) == 0:
		return nil, false
	case (e.Op == Ref || e.Op == Bare) && e.Term == term:
		return e, false
	case e.Op == Mul && e.X.uses(term) > 0:
		return factorOf(e.X, term)
	case e.Op == Mul:
		return factorOf(e.Y, term)
	case e.Op == Div && e.X.uses(term) > 0:
		return factorOf(e.X, term)
	case e.Op == Div:
		factor, below = factorOf(e.Y, term)
		return factor, !below
	}
	return nil, false
}
