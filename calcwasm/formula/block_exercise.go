package formula

import "columnbowl/calcwasm/unit"

// Draw is the body of a “draw” block: the facts of an exercise, in the order in
// which they are drawn, and what must hold for a draw to be kept.
type Draw struct {
	Facts []Drawn
	Keep  []*Expr
}

// Drawn is one fact of an exercise.
type Drawn struct {
	Term     int
	From, To *Expr   // a range; To is nil for a single value
	Step     float64 // of a range, in SI: the fact is a multiple of it
	OneOf    []*Expr // the values to choose from, in place of a range
	Off, Len int
}

// Asked is one line of an “ask” block: a term that the learner works out.
type Asked struct {
	Term     int
	Step     float64 // SI; how fine the answer is wanted, 0 for four significant digits
	Within   float64 // relative; how far a value read off a chart may be out, 0 if it is reckoned
	Off, Len int
}

// ParseDraw parses the body of a “draw” block: lines “term = value”, “term =
// from to until step size”, “term = one of a, b, c” and “keep when condition”.
// A bound may use facts drawn above it.
func ParseDraw(src string, scope *Scope) (*Draw, error) {
	p := newParser(src, scope)
	d := &Draw{}
	for p.tok().kind != tokEnd {
		if p.acceptWord("keep") {
			p.need("when")
			d.Keep = append(d.Keep, p.condition())
			continue
		}
		f := p.drawn()
		for _, have := range d.Facts {
			if have.Term == f.Term && len(p.errors) == 0 {
				p.failAt(f.Off, f.Len, "“"+scope.terms[f.Term].ID+"” is drawn twice.", "")
			}
		}
		d.Facts = append(d.Facts, f)
	}
	return d, p.done()
}

func (p *parser) drawn() Drawn {
	f := Drawn{Off: p.tok().off}
	f.Term = p.termName()
	if !p.acceptOp("=") {
		p.expected("“=” and the value to draw")
		return f
	}
	if p.acceptWord("one") {
		p.need("of")
		f.OneOf = append(f.OneOf, p.drawnValue(f.Term))
		for p.acceptOp(",") {
			f.OneOf = append(f.OneOf, p.drawnValue(f.Term))
		}
	} else {
		f.From = p.drawnValue(f.Term)
		if p.acceptWord("to") {
			f.To = p.drawnValue(f.Term)
			p.need("step")
			f.Step = p.size(f.Term)
		}
	}
	f.Len = max(p.lastEnd()-f.Off, 1)
	return f
}

// drawnValue reads a value of a term: a word of a choice, or an expression.
func (p *parser) drawnValue(term int) *Expr {
	t, tok := &p.scope.terms[term], p.tok()
	if t.Kind == Choice {
		p.take()
		for i, v := range t.Values {
			if tok.text == v {
				return &Expr{Op: Word, Off: tok.off, Len: tok.len, Text: v, Value: float64(i)}
			}
		}
		p.failAt(tok.off, max(tok.len, 1), "“"+t.ID+"” is one of: "+join(t.Values, " or ")+".", Nearest(tok.text, t.Values))
		return &Expr{Op: Word}
	}
	e := p.checked(p.sum())
	if len(p.errors) == 0 && e.Dim != t.Dim() {
		p.failExpr(e, "“"+t.ID+"” is "+dimWord(t.Dim())+", and this is "+dimWord(e.Dim)+".", "")
	}
	return e
}

// size reads a difference of a term's values: “0.5 ft”.
func (p *parser) size(term int) float64 {
	t, n := &p.scope.terms[term], p.tok()
	v, _ := p.signedNumber()
	if p.lost {
		return 0
	}
	if n.unit != nil {
		v -= n.unit.Offset // a step of temperature is no temperature
	}
	switch {
	case t.Kind == Choice || dimOf(n.unit) != t.Dim():
		p.fail(n, "“"+t.ID+"” is "+dimWord(t.Dim())+": write a step of it, such as "+stepOf(t)+".")
	case !(v > 0):
		p.fail(n, "A step is larger than 0.")
	}
	return v
}

func stepOf(t *Term) string {
	if t.US == nil || t.US.Dim == (unit.Dim{}) {
		return "1"
	}
	return "1 " + t.US.Symbol
}

// ParseAsk parses the body of an “ask” block: the terms that a learner works
// out, one on each line, in order: “total-head”, “pumping-level to 0.1 ft” or,
// for what is read off a chart, “curve-stage-head within 2 %”.
func ParseAsk(src string, scope *Scope) ([]Asked, error) {
	p := newParser(src, scope)
	var list []Asked
	for p.tok().kind != tokEnd {
		a := Asked{Off: p.tok().off}
		a.Term = p.termName()
		if p.acceptWord("to") {
			a.Step = p.size(a.Term)
		}
		if p.acceptWord("within") {
			n := p.tok()
			if v, t := p.signedNumber(); !p.lost && (t.unit == nil || t.unit.Symbol != "%" || !(v > 0) || v > 0.2) {
				p.fail(n, "How far a reading may be out is a percentage up to 20 %, such as within 2 %.")
			} else {
				a.Within = v
			}
		}
		a.Len = max(p.lastEnd()-a.Off, 1)
		for _, have := range list {
			if have.Term == a.Term && len(p.errors) == 0 {
				p.failAt(a.Off, a.Len, "“"+scope.terms[a.Term].ID+"” is asked twice.", "")
			}
		}
		list = append(list, a)
	}
	if len(list) == 0 && len(p.errors) == 0 {
		p.fail(p.tok(), "Nothing is asked: write a term on each line.")
	}
	return list, p.done()
}

// Option is one answer that a choice question offers, with what to tell a
// person who takes it.
type Option struct{ Text, Say string }

// Choose is the body of a “choose” block: a question with one right answer.
type Choose struct {
	Ask   string
	Right Option
	Wrong []Option
}

// ParseChoose parses the body of a “choose” block: ask "…", right "…" and two
// or more lines wrong "…" say "…".
func ParseChoose(src string) (*Choose, error) {
	p := newParser(src, NewScope(nil, nil))
	c := &Choose{Ask: p.quoted("ask")}
	c.Right = Option{Text: p.quoted("right"), Say: p.say(false)}
	for p.isWord("wrong") {
		w := Option{Text: p.quoted("wrong")}
		w.Say = p.say(true)
		c.Wrong = append(c.Wrong, w)
	}
	if len(c.Wrong) < 2 && len(p.errors) == 0 {
		p.fail(p.tok(), "A choice offers three answers or more: add lines wrong \"…\" say \"…\".")
	}
	return c, p.done()
}

// Order is the body of an “order” block: things to put in order.
type Order struct {
	Ask   string
	Take  int // how many of the items a sheet shows; 0 for all
	Items []string
}

// ParseOrder parses the body of an “order” block: ask "…", perhaps take 6, and
// items "…", "…" in their right order.
func ParseOrder(src string) (*Order, error) {
	p := newParser(src, NewScope(nil, nil))
	o := &Order{Ask: p.quoted("ask")}
	n := p.tok()
	if p.acceptWord("take") {
		n = p.tok()
		v, _ := p.signedNumber()
		o.Take = int(v)
	}
	o.Items = append(o.Items, p.quoted("items"))
	for p.acceptOp(",") {
		o.Items = append(o.Items, p.text1())
	}
	switch {
	case len(p.errors) > 0:
	case len(o.Items) < 3:
		p.fail(p.tok(), "There is little to put in order: write three items or more.")
	case len(o.Items) > 26:
		p.fail(p.tok(), "The items are called A to Z: write 26 at most.")
	case o.Take != 0 && (o.Take < 3 || o.Take > len(o.Items)):
		p.fail(n, "A sheet takes three items or more, and no more than there are.")
	}
	return o, p.done()
}

// quoted reads a word and the text in quotation marks behind it.
func (p *parser) quoted(word string) string {
	if !p.acceptWord(word) {
		p.expected(word + " \"…\"")
		return ""
	}
	return p.text1()
}

func (p *parser) text1() string {
	t := p.tok()
	if t.kind != tokString {
		p.expected("text in quotation marks")
		return ""
	}
	p.take()
	if t.text == "" {
		p.fail(t, "There is nothing between the quotation marks.")
	}
	return t.text
}
