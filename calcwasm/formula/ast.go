package formula

import (
	"columnbowl/calcwasm/arith"
	"columnbowl/calcwasm/unit"
)

// Op is what a node of an expression does.
type Op uint8

const (
	Number  Op = iota // a constant: Value in SI, Text as written, Unit or nil
	Ref               // a term
	Bare              // the bare number of a term in a unit: capacity[gpm]
	In                // the number X taken as a quantity in Unit; made when a formula is turned round
	Word              // a value of a choice, by its place
	Hole              // a property of a family of bowls, Text by name: bowl:speed
	Neg               // -X
	Add               // X + Y
	Sub               // X - Y
	Mul               // X * Y
	Div               // X / Y
	Pow               // X ^ Y
	Call              // Func(Args…)
	Equal             // X = Y
	Unequal           // X != Y
	Less              // X < Y
	AtMost            // X <= Y
	More              // X > Y
	AtLeast           // X >= Y
	And               // X and Y
	Or                // X or Y
	Not               // not X
)

// Expr is a node of an expression. Nodes are never changed after checking;
// edits and inversions make new ones and share what stays the same.
type Expr struct {
	Op     Op
	Off    int
	Len    int
	X, Y   *Expr
	Args   []*Expr // of a Call
	Func   *Func
	Points []Point // of table(…) and curve(…)
	slopes []float64
	hole   string // of a call whose points come from a family: bowl:head
	mixed  bool   // the points of a call do not stand behind its one value
	Term   int    // of Ref and Bare; of a Hole the term that chooses the family, -1 if there is none
	Value  float64
	Unit   *unit.Unit
	Text   string
	Dim    unit.Dim // found by the check
}

// Point is one pair of a table or a curve, in SI.
type Point = arith.Point

// Relation is an equation between two expressions.
type Relation struct {
	Left, Right *Expr
	Source      string // the text it was parsed from
}

// Terms lists the terms that an expression uses, each once, in the order of the text.
func (e *Expr) Terms() []int {
	list := make([]int, 0, 4)
	e.walk(func(n *Expr) {
		if n.Op != Ref && n.Op != Bare && (n.Op != Hole || n.Term < 0) {
			return
		}
		for _, t := range list {
			if t == n.Term {
				return
			}
		}
		list = append(list, n.Term)
	})
	return list
}

// Terms lists the terms of both sides, the left-hand one first.
func (r *Relation) Terms() []int {
	list := r.Left.Terms()
next:
	for _, t := range r.Right.Terms() {
		for _, have := range list {
			if t == have {
				continue next
			}
		}
		list = append(list, t)
	}
	return list
}

// Target is the term that stands alone on the left-hand side, or -1.
func (r *Relation) Target() int {
	if r.Left.Op == Ref || r.Left.Op == Bare {
		return r.Left.Term
	}
	return -1
}

// OneWay says whether the relation can be read forward only, because it rounds
// or reads a table or a curve.
func (r *Relation) OneWay() bool {
	oneWay := false
	look := func(n *Expr) {
		if n.Op == Call && n.Func.OneWay {
			oneWay = true
		}
	}
	r.Left.walk(look)
	r.Right.walk(look)
	return oneWay
}

func (e *Expr) walk(visit func(*Expr)) {
	if e == nil {
		return
	}
	visit(e)
	e.X.walk(visit)
	e.Y.walk(visit)
	for _, a := range e.Args {
		a.walk(visit)
	}
}

// uses counts how often a term occurs.
func (e *Expr) uses(term int) int {
	n := 0
	e.walk(func(x *Expr) {
		if (x.Op == Ref || x.Op == Bare) && x.Term == term {
			n++
		}
	})
	return n
}

// same says whether two expressions are written alike.
func (e *Expr) same(o *Expr) bool {
	if e == nil || o == nil {
		return e == o
	}
	if e.Op != o.Op || e.Func != o.Func || e.hole != o.hole || len(e.Args) != len(o.Args) || len(e.Points) != len(o.Points) {
		return false
	}
	switch e.Op {
	case Number:
		return e.Value == o.Value && e.Dim == o.Dim
	case Ref:
		return e.Term == o.Term
	case Bare:
		return e.Term == o.Term && e.Unit.Symbol == o.Unit.Symbol
	case Word:
		return e.Value == o.Value
	case Hole:
		return e.Text == o.Text
	}
	for i := range e.Args {
		if !e.Args[i].same(o.Args[i]) {
			return false
		}
	}
	for i := range e.Points {
		if e.Points[i] != o.Points[i] {
			return false
		}
	}
	return e.X.same(o.X) && e.Y.same(o.Y)
}
