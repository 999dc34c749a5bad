package formula

import "columnbowl/calcwasm/arith"

// EditKind is the way in which a mistake changes a formula.
type EditKind uint8

const (
	Put      EditKind = iota // put To for From
	LeaveOut                 // leave out Term
	MinusFor                 // minus for plus Term
	PlusFor                  // plus for minus Term
	TimesFor                 // times for over Term
	OverFor                  // over for times Term
	BareFor                  // bare To for From: a number in one unit taken as one in another
	FuncFor                  // round-down for round-up
	WholeFor                 // another relation altogether
)

// Edit is one change that turns a right formula into a wrong one.
type Edit struct {
	Kind     EditKind
	Off, Len int // where it stands in the mistake's text
	Term     int
	From, To *Expr
	FuncFrom *Func
	FuncTo   *Func
	Whole    *Relation
}

// Apply makes the wrong relation that a list of edits turns r into. It fails,
// with the reason, if an edit finds nothing to change or leaves a relation
// whose sides have different dimensions.
func (r *Relation) Apply(scope *Scope, edits []*Edit) (*Relation, *Error) {
	wrong := &Relation{Left: r.Left, Right: r.Right, Source: r.Source}
	for _, ed := range edits {
		if ed.Kind == WholeFor {
			wrong = ed.Whole
			continue
		}
		right, changed, reason := ed.apply(scope, wrong.Right)
		if reason == "" && !changed {
			reason = "The formula has nothing that this edit changes."
		}
		if reason != "" {
			return nil, &Error{Off: ed.Off, Len: ed.Len, Message: reason}
		}
		wrong = &Relation{Left: wrong.Left, Right: right, Source: wrong.Source}
	}
	return wrong, wrong.sound(scope, edits)
}

// sound checks the dimensions of a relation that edits have changed.
func (r *Relation) sound(scope *Scope, edits []*Edit) *Error {
	last := edits[len(edits)-1]
	fail := func(message string) *Error {
		return &Error{Off: edits[0].Off, Len: last.Off + last.Len - edits[0].Off, Message: message + ": a number read in a wrong unit is written “bare a[unit] for b[unit]”."}
	}
	right, bad := r.Right.measure(scope)
	if bad != nil {
		return fail("With this edit “" + bad.Words(scope) + "” mixes dimensions")
	}
	if left, _ := r.Left.measure(scope); left != right {
		return fail("With this edit the right-hand side is " + dimWord(right) + ", the left-hand side " + dimWord(left))
	}
	return nil
}

func (ed *Edit) apply(scope *Scope, e *Expr) (out *Expr, changed bool, reason string) {
	switch ed.Kind {
	case Put:
		out, changed = e.replace(func(n *Expr) *Expr { return putFor(n, ed.From, ed.To) })
	case BareFor:
		out, changed = e.replace(func(n *Expr) *Expr { return bareFor(n, ed.From, ed.To) })
	case FuncFor:
		misfit := false
		out, changed = e.replace(func(n *Expr) *Expr {
			if n.Op != Call || n.Func != ed.FuncFrom {
				return nil
			}
			if !ed.FuncTo.fits(len(n.Args), len(n.Points)) {
				misfit = true
				return nil
			}
			c := *n
			c.Func, c.slopes = ed.FuncTo, nil
			if c.Func.smooth {
				c.slopes = arith.Slopes(c.Points)
			}
			return &c
		})
		if misfit {
			reason = ed.FuncTo.Name + "(…) takes other values than " + ed.FuncFrom.Name + "(…) and cannot stand for it."
		}
		return out, changed, reason
	case LeaveOut:
		if e.uses(ed.Term) == 0 {
			return e, false, "The formula does not use “" + scope.terms[ed.Term].ID + "”."
		}
		out, changed = without(e, ed.Term)
		if out == nil {
			return e, false, "Without “" + scope.terms[ed.Term].ID + "” nothing is left of the formula."
		}
	default:
		if e.uses(ed.Term) == 0 {
			return e, false, "The formula does not use “" + scope.terms[ed.Term].ID + "”."
		}
		out, changed = turn(e, ed.Kind, ed.Term)
		if !changed {
			return e, false, "“" + scope.terms[ed.Term].ID + "” does not stand in the formula in that way."
		}
	}
	return out, changed, ""
}

// replace makes a copy in which change has put something else for some nodes.
func (e *Expr) replace(change func(*Expr) *Expr) (*Expr, bool) {
	if e == nil {
		return nil, false
	}
	if n := change(e); n != nil {
		return n, true
	}
	c := *e
	var inX, inY, inArgs bool
	c.X, inX = e.X.replace(change)
	c.Y, inY = e.Y.replace(change)
	c.Args = make([]*Expr, len(e.Args))
	for i, a := range e.Args {
		var in bool
		c.Args[i], in = a.replace(change)
		inArgs = inArgs || in
	}
	if !inX && !inY && !inArgs {
		return e, false
	}
	return &c, true
}

// putFor puts a term for a term also where the formula takes the bare number.
func putFor(n, from, to *Expr) *Expr {
	if n.same(from) {
		return to
	}
	if n.Op == Bare && from.Op == Ref && n.Term == from.Term && to.Op == Ref && to.Dim == from.Dim {
		c := *n
		c.Term = to.Term
		return &c
	}
	return nil
}

func bareFor(n, from, to *Expr) *Expr {
	switch {
	case n.Op == Ref && n.Term == from.Term:
		return &Expr{Op: In, X: to, Unit: from.Unit, Dim: from.Unit.Dim}
	case n.Op == Bare && n.Term == from.Term && n.Unit.Symbol == from.Unit.Symbol:
		return to
	case n.Op == Bare && n.Term == from.Term:
		return node(Mul, to, number(from.Unit.Factor/n.Unit.Factor))
	}
	return nil
}

// without drops every occurrence of a term: an item of a sum falls away, a
// factor becomes 1. It is nil if nothing would be left.
func without(e *Expr, term int) (*Expr, bool) {
	if e.uses(term) == 0 {
		return e, false
	}
	switch e.Op {
	case Ref, Bare:
		return nil, true
	case Neg:
		if x, _ := without(e.X, term); x != nil {
			return node(Neg, x, nil), true
		}
		return nil, true
	case Add, Sub, Mul, Div:
		return withoutPair(e, term)
	case Pow:
		x, _ := without(e.X, term)
		y, _ := without(e.Y, term)
		if x == nil || y == nil {
			return x, true
		}
		return node(Pow, x, y), true
	case Call:
		c := *e
		c.Args = nil
		for _, a := range e.Args {
			if k, _ := without(a, term); k != nil {
				c.Args = append(c.Args, k)
			}
		}
		switch choosing := e.Func.Name == "min" || e.Func.Name == "max"; {
		case choosing && len(c.Args) == 1:
			return c.Args[0], true
		case len(c.Args) < len(e.Args) && (!choosing || len(c.Args) == 0):
			return nil, true
		}
		return &c, true
	}
	return e, false
}

func withoutPair(e *Expr, term int) (*Expr, bool) {
	x, _ := without(e.X, term)
	y, _ := without(e.Y, term)
	switch {
	case x == nil && y == nil:
		return nil, true
	case y == nil:
		return x, true
	case x != nil:
		return node(e.Op, x, y), true
	case e.Op == Sub:
		return node(Neg, y, nil), true
	case e.Op == Div:
		return node(Div, number(1), y), true
	}
	return y, true
}
