package formula

import "math"

// Isolate turns a relation round for one of its terms by algebra: the result
// is an expression that computes the term from the others. It succeeds where
// the term occurs once and every step from it to the equals sign can be undone
// (sums, products, powers, roots); otherwise the caller has to search (Roots).
// A relation that is one-way is isolated for its left-hand term only.
func (r *Relation) Isolate(term int) (*Expr, bool) {
	if r.Left.uses(term)+r.Right.uses(term) != 1 {
		return nil, false
	}
	if r.OneWay() && r.Target() != term {
		return nil, false
	}
	side, other := r.Left, r.Right
	if side.uses(term) == 0 {
		side, other = r.Right, r.Left
	}
	for {
		if side.Op == Ref {
			return other, true
		}
		if side.Op == Bare {
			return &Expr{Op: In, X: other, Unit: side.Unit, Dim: side.Unit.Dim}, true
		}
		next, undone, ok := undo(side, other, term)
		if !ok {
			return nil, false
		}
		side, other = next, undone
	}
}

// undo moves the outermost operation of side to the other side of the equation.
func undo(side, other *Expr, term int) (next, undone *Expr, ok bool) {
	inX := side.X != nil && side.X.uses(term) > 0
	switch side.Op {
	case Neg:
		return side.X, node(Neg, other, nil), true
	case Add:
		if inX {
			return side.X, node(Sub, other, side.Y), true
		}
		return side.Y, node(Sub, other, side.X), true
	case Sub:
		if inX {
			return side.X, node(Add, other, side.Y), true
		}
		return side.Y, node(Sub, side.X, other), true
	case Mul:
		if inX {
			return side.X, node(Div, other, side.Y), true
		}
		return side.Y, node(Div, other, side.X), true
	case Div:
		if inX {
			return side.X, node(Mul, other, side.Y), true
		}
		return side.Y, node(Div, side.X, other), true
	case Pow:
		return undoPower(side, other, inX)
	case Call:
		if side.Func.Name == "sqrt" {
			return side.Args[0], node(Pow, positive(other), number(2)), true
		}
	}
	return nil, nil, false
}

// positive marks a value that can only be zero or more.
func positive(x *Expr) *Expr {
	return &Expr{Op: Call, Func: notNegative, Args: []*Expr{x}, Dim: x.Dim}
}

// undoPower takes the root of a power whose exponent is a plain fraction, such
// as 1.852. Whole exponents have a second, negative root or a sign to keep, and
// are left to the search, which looks inside the term's range.
func undoPower(side, other *Expr, inX bool) (next, undone *Expr, ok bool) {
	n, fixed := constant(side.Y)
	if inX && fixed && n == 1 {
		return side.X, other, true
	}
	if inX && fixed && n == -1 {
		return side.X, node(Div, number(1), other), true
	}
	if !inX || !fixed || n == math.Trunc(n) || side.Y.Op == Div {
		return nil, nil, false
	}
	inverse := number(1 / n)
	if 1/n != math.Trunc(1/n) {
		inverse = &Expr{Op: Div, X: number(1), Y: side.Y}
	}
	return side.X, node(Pow, positive(other), inverse), true
}

func number(v float64) *Expr { return &Expr{Op: Number, Value: v} }

// node makes an inner node with its dimension.
func node(op Op, x, y *Expr) *Expr {
	e := &Expr{Op: op, X: x, Y: y, Dim: x.Dim}
	switch op {
	case Mul:
		e.Dim = x.Dim.Mul(y.Dim)
	case Div:
		e.Dim = x.Dim.Div(y.Dim)
	case Pow:
		if n, ok := constant(y); ok && !x.Dim.IsNone() {
			if d, fits := x.Dim.Pow(int(n*12), 12); fits {
				e.Dim = d
			}
		}
	}
	return e
}
