package formula

import (
	"errors"
	"strconv"
	"strings"

	"columnbowl/calcwasm/arith"
	"columnbowl/calcwasm/unit"
)

// A checked expression travels to the page as words in prefix order, so that
// the page needs no scanner, no parser and no checks: those are a third of the
// notation's code, and the book was proofed before it was bound.
//
//	#138.6'psi   a number as written, with its unit   #=0.5   one made by an inversion
//	@12          the term at place 12                  @12'gpm its bare number
//	~hp X        the number X taken in a unit          :2'word the third value of a choice
//	+ - * / ^ X Y                                      _ X     minus X
//	= ≠ < ≤ > ≥ & | X Y   ! X                          conditions
//	?speed       a hole for a property of a family of bowls
//	max(2 X Y    a function and how many arguments follow
//	curve(1:3'gpm X x1 y1 x2 y2 x3 y3                  points in SI, and the unit they were written in
//	curve(1?head X                                     the points come from a family
var opWords = [...]string{Neg: "_", Add: "+", Sub: "-", Mul: "*", Div: "/", Pow: "^", Equal: "=", Unequal: "≠", Less: "<",
	AtMost: "≤", More: ">", AtLeast: "≥", And: "&", Or: "|", Not: "!"}

func float(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// Pack writes an expression for the page.
func (e *Expr) Pack() string {
	var b strings.Builder
	e.pack(&b)
	return b.String()
}

func (e *Expr) pack(b *strings.Builder) {
	if b.Len() > 0 {
		b.WriteByte(' ')
	}
	mark := ""
	if e.Unit != nil {
		mark = "'" + e.Unit.Symbol
	}
	switch e.Op {
	case Number:
		if e.Text == "" {
			b.WriteString("#=" + float(e.Value))
			return
		}
		b.WriteString("#" + e.Text + mark)
	case Ref, Bare:
		b.WriteString("@" + strconv.Itoa(e.Term) + mark)
	case In:
		b.WriteString("~" + e.Unit.Symbol)
		e.X.pack(b)
	case Hole:
		b.WriteString("?" + e.Text)
	case Word:
		b.WriteString(":" + strconv.Itoa(int(e.Value)) + "'" + e.Text)
	case Call:
		e.packCall(b, mark)
	default:
		b.WriteString(opWords[e.Op])
		e.X.pack(b)
		if e.Y != nil {
			e.Y.pack(b)
		}
	}
}

func (e *Expr) packCall(b *strings.Builder, mark string) {
	b.WriteString(e.Func.Name + "(" + strconv.Itoa(len(e.Args)))
	if e.Points != nil {
		b.WriteString(":" + strconv.Itoa(len(e.Points)) + mark)
	}
	if e.hole != "" {
		b.WriteString("?" + e.hole)
	}
	for _, a := range e.Args {
		a.pack(b)
	}
	for _, p := range e.Points {
		b.WriteString(" " + float(p.X) + " " + float(p.Y))
	}
}

// errPacked is what a damaged pack gives; the page tells it in its own words.
var errPacked = errors.New("a packed expression cannot be read")

// Unpacker reads packed expressions of one scope. It takes room for many nodes at
// a time: a book has thousands, and a page reads them before it shows anything.
type Unpacker struct {
	scope *Scope
	room  []Expr
	ahead int // how many nodes it takes room for
}

// NewUnpacker makes an Unpacker for a whole book.
func NewUnpacker(scope *Scope) *Unpacker { return &Unpacker{scope: scope, ahead: 64} }

// Unpack reads an expression that Pack wrote.
func (r *Unpacker) Unpack(text string) (*Expr, error) {
	u := &unpacker{Unpacker: r, rest: text}
	e := u.expr()
	if u.bad || strings.TrimLeft(u.rest, " ") != "" {
		return nil, errPacked
	}
	return e, nil
}

// Unpack reads a single expression that Pack wrote.
func Unpack(text string, scope *Scope) (*Expr, error) {
	return (&Unpacker{scope: scope, ahead: 1}).Unpack(text)
}

// unpacker reads the words of one expression.
type unpacker struct {
	*Unpacker
	rest  string
	depth int
	bad   bool
}

// node is a new node like e.
func (u *unpacker) node(e Expr) *Expr {
	if len(u.room) == 0 {
		u.room = make([]Expr, u.ahead)
	}
	n := &u.room[0]
	u.room = u.room[1:]
	*n = e
	return n
}

func (u *unpacker) word() string {
	u.rest = strings.TrimLeft(u.rest, " ")
	if u.rest == "" {
		u.bad = true
		return "#=0"
	}
	end := strings.IndexByte(u.rest, ' ')
	if end < 0 {
		end = len(u.rest)
	}
	w := u.rest[:end]
	u.rest = u.rest[end:]
	return w
}

func (u *unpacker) float(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	u.bad = u.bad || err != nil
	return v
}

func (u *unpacker) place(text string, below int) int {
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 || n >= below {
		u.bad = true
		return 0
	}
	return n
}

func (u *unpacker) unit(symbol string) *unit.Unit {
	m, ok := unit.Lookup(symbol)
	u.bad = u.bad || !ok
	return m
}

func (u *unpacker) expr() *Expr {
	if u.depth++; u.depth > 2*longest {
		u.bad = true
	}
	defer func() { u.depth-- }()
	w := u.word()
	if u.bad {
		return u.node(Expr{})
	}
	text, mark, marked := strings.Cut(w[1:], "'")
	switch w[0] {
	case '#':
		return u.number(text, mark, marked)
	case '@':
		e := u.node(Expr{Op: Ref, Term: u.place(text, len(u.scope.terms))})
		if marked {
			e.Op, e.Unit = Bare, u.unit(mark)
		}
		return e
	case '~':
		return u.node(Expr{Op: In, Unit: u.unit(w[1:]), X: u.expr()})
	case '?':
		return u.hole(w[1:])
	case ':':
		return u.node(Expr{Op: Word, Value: u.float(text), Text: mark})
	}
	if name, rest, call := strings.Cut(w, "("); call {
		return u.call(name, rest)
	}
	return u.operation(w)
}

func (u *unpacker) hole(name string) *Expr {
	f := u.scope.field(name)
	if f == nil || f.Points {
		u.bad = true
		return u.node(Expr{})
	}
	return u.node(Expr{Op: Hole, Text: name, Term: u.scope.holes.Term, Dim: f.Dim})
}

func (u *unpacker) number(text, mark string, marked bool) *Expr {
	if v, made := strings.CutPrefix(text, "="); made {
		return u.node(Expr{Op: Number, Value: u.float(v)})
	}
	e := u.node(Expr{Op: Number, Text: text, Value: u.float(text)})
	if marked {
		if e.Unit = u.unit(mark); !u.bad {
			e.Value = e.Unit.ToSI(e.Value)
		}
	}
	return e
}

func (u *unpacker) operation(w string) *Expr {
	op, ok := opOf(w)
	if !ok {
		u.bad = true
		return u.node(Expr{})
	}
	e := u.node(Expr{Op: op, X: u.expr()})
	if op != Neg && op != Not {
		e.Y = u.expr()
	}
	return e
}

// opOf finds the operation that a word stands for.
func opOf(word string) (Op, bool) {
	for op := Neg; op <= Not; op++ {
		if op != Call && opWords[op] == word {
			return op, true
		}
	}
	return 0, false
}

func (u *unpacker) call(name, rest string) *Expr {
	counts, mark, marked := strings.Cut(rest, "'")
	counts, hole, _ := strings.Cut(counts, "?")
	args, points, _ := strings.Cut(counts, ":")
	e := u.node(Expr{Op: Call, Func: u.scope.funcs[name]})
	u.bad = u.bad || e.Func == nil
	for range u.place(args, 16) {
		e.Args = append(e.Args, u.expr())
	}
	if hole != "" {
		f := u.scope.field(hole)
		u.bad = u.bad || f == nil || !f.Points || !e.Func.fits(len(e.Args), 2)
		e.hole = hole
		return e
	}
	if points == "" {
		u.bad = u.bad || !e.Func.fits(len(e.Args), 0)
		return e
	}
	for range u.place(points, 10000) {
		x := u.float(u.word())
		e.Points = append(e.Points, Point{X: x, Y: u.float(u.word())})
	}
	if marked {
		e.Unit = u.unit(mark)
	}
	u.bad = u.bad || !e.Func.fits(len(e.Args), len(e.Points))
	if !u.bad && e.Func.smooth {
		e.slopes = arith.Slopes(e.Points)
	}
	return e
}
