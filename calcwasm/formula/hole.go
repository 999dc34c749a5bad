package formula

import (
	"strings"

	"columnbowl/calcwasm/arith"
	"columnbowl/calcwasm/unit"
)

// A relation can be written once for all families of bowls: where a property of
// the family belongs it has a hole, bowl:speed or bowl:head. Such a relation
// computes nothing until Fill has put the property of one family in.

// owner is what stands before the colon of a hole.
const owner = "bowl"

// Field is a property of a family that a hole can name.
type Field struct {
	Name   string
	Dim    unit.Dim // of the number, or of what the points of a list give
	Points bool     // it is a list of points over a flow
	Words  []string // it is one of these words, and stands in conditions only
}

// Holes is what a scope knows of families: the term that chooses one (-1 if
// there is none), and their properties.
type Holes struct {
	Term   int
	Fields []Field
}

// WithHoles tells a scope what its holes can name. It is called once, before
// anything is parsed.
func (s *Scope) WithHoles(h Holes) { s.holes = h }

// field finds the property that a hole names, nil if there is none.
func (s *Scope) field(name string) *Field {
	for i := range s.holes.Fields {
		if f := &s.holes.Fields[i]; f.Name == name {
			return f
		}
	}
	return nil
}

// hole reads bowl:speed.
func (p *parser) hole(t token) *Expr {
	name := t.text[len(owner)+1:]
	e := &Expr{Op: Hole, Off: t.off, Len: t.len, Term: p.scope.holes.Term, Text: name}
	if f := p.scope.field(name); f != nil {
		e.Dim = f.Dim
		return e
	}
	names := make([]string, len(p.scope.holes.Fields))
	for i, f := range p.scope.holes.Fields {
		names[i] = f.Name
	}
	suggest := Nearest(name, names)
	if suggest != "" {
		suggest = owner + ":" + suggest
	}
	p.failAt(t.off, t.len, "A family of bowls has no “"+name+"”. It has "+join(names, " and ")+".", suggest)
	return e
}

// list is the list of points that an argument names, nil if it names none.
func (p *parser) list(e *Expr) *Field {
	if e.Op != Hole {
		return nil
	}
	if f := p.scope.field(e.Text); f != nil && f.Points {
		return f
	}
	return nil
}

// checkHole refuses a list or a word where a number belongs.
func (p *parser) checkHole(e *Expr) unit.Dim {
	f := p.scope.field(e.Text)
	switch {
	case f == nil: // told when it was read
	case f.Points:
		p.failExpr(e, p.text(e)+" is a list of points: it stands in curve(…) or table(…), or as the first value of a function that takes points.", "")
	case f.Words != nil:
		p.failExpr(e, p.text(e)+" is a word, not a number: it can only stand in a condition, such as "+owner+":"+f.Name+" = "+f.Words[0]+".", "")
	}
	return e.Dim
}

// checkList takes the list of points out of the arguments of a call and keeps
// its name. It reports whether the call may be checked further.
func (p *parser) checkList(e *Expr, at int) (unit.Dim, bool) {
	f, list := e.Func, p.list(e.Args[at])
	switch {
	case f.points && (at != 1 || len(e.Args) != 2 || len(e.Points) > 0):
		p.failExpr(e, f.Name+"(x, "+owner+":"+list.Name+") takes one value and one list of points.", "")
	case f.points && e.Args[0].Dim != unit.Flow:
		p.failExpr(e.Args[0], p.text(e.Args[0])+" is "+dimWord(e.Args[0].Dim)+"; the points of a family stand over a flow.", "")
	case !f.points && f.OnPoints == nil:
		p.failExpr(e.Args[at], f.Name+"(…) takes no list of points.", "")
	case !f.points && at != 0:
		p.failExpr(e.Args[at], "The list of points comes first: "+f.usage()+".", "")
	case !f.points && list.Dim != f.Gives:
		p.failExpr(e.Args[at], f.Name+"(…) takes points that give "+dimWord(f.Gives)+"; those of "+p.text(e.Args[at])+" give "+dimWord(list.Dim)+".", "")
	}
	e.hole = list.Name
	e.Args = append(e.Args[:at:at], e.Args[at+1:]...)
	return list.Dim, f.points
}

// Holed says whether an expression has a hole.
func (e *Expr) Holed() bool {
	holed := false
	e.walk(func(n *Expr) { holed = holed || n.Op == Hole || n.hole != "" })
	return holed
}

// Holed says whether a relation has a hole.
func (r *Relation) Holed() bool { return r.Left.Holed() || r.Right.Holed() }

// Fill puts the properties of a family into the holes. get returns the number,
// the word or the points (made by NewNumber, NewWord, NewPoints) for the name
// of a property, nil if the family has none. Without one of its properties an
// expression cannot be filled.
func (e *Expr) Fill(get func(name string) *Expr) (*Expr, bool) {
	if !e.Holed() {
		return e, true
	}
	if e.Op == Hole {
		n := get(e.Text)
		return n, n != nil
	}
	c := *e
	okX, okY := true, true
	if e.X != nil {
		c.X, okX = e.X.Fill(get)
	}
	if e.Y != nil {
		c.Y, okY = e.Y.Fill(get)
	}
	if !okX || !okY {
		return nil, false
	}
	c.Args = make([]*Expr, len(e.Args))
	for i, a := range e.Args {
		var ok bool
		if c.Args[i], ok = a.Fill(get); !ok {
			return nil, false
		}
	}
	if e.hole != "" {
		n := get(e.hole)
		if n == nil {
			return nil, false
		}
		c.hole, c.Points, c.Unit = "", n.Points, n.Unit
		if e.Func.smooth || e.Func.OnPoints != nil {
			c.slopes = n.slopes
		}
	}
	return &c, true
}

// NewNumber is a constant for Fill: as written, with its unit and in SI.
func NewNumber(text string, u *unit.Unit, si float64) *Expr {
	return &Expr{Op: Number, Text: text, Unit: u, Value: si, Dim: dimOf(u)}
}

// NewWord is a word for Fill, by its place in the field's list.
func NewWord(text string, place int) *Expr {
	return &Expr{Op: Word, Text: text, Value: float64(place)}
}

// NewPoints is a list of points for Fill, in SI and rising in X; u is the unit
// in which messages name their ends. There are two points or more.
func NewPoints(points []Point, u *unit.Unit) *Expr {
	return &Expr{Points: points, Unit: u, slopes: arith.Slopes(points)}
}

// Line is the smooth line through the points of a family, for functions of the
// physics; curve(…) draws the same.
type Line struct{ points *Expr }

// Ends are the first and the last X of the points.
func (l Line) Ends() (first, last float64) {
	p := l.points.Points
	return p[0].X, p[len(p)-1].X
}

// At reads the line. Outside its points it is NaN and says so.
func (l Line) At(x float64) (y float64, invalid string) {
	y, ok := lookUp(l.points, x)
	if !ok {
		return y, "the curve does not reach to this flow"
	}
	return y, ""
}

// LineOf is the line of NewPoints.
func LineOf(points *Expr) Line { return Line{points} }

// pointWords is what stands for the points of a call, empty if it has none.
func (e *Expr) pointWords(known string) string {
	switch {
	case e.hole != "":
		return holeWords(e.hole)
	case e.Points != nil:
		return known
	}
	return ""
}

// holeWords is a hole as it stands in running text.
func holeWords(name string) string {
	return strings.Replace(strings.ReplaceAll(name, "-", " "), "npsh", "NPSH", 1) + " of the " + owner
}

// chooser is the term that chooses the family of an expression's first hole, -1
// if it has none.
func (e *Expr) chooser() int {
	t := -1
	e.walk(func(n *Expr) {
		if n.Op == Hole && t < 0 {
			t = n.Term
		}
	})
	return t
}
