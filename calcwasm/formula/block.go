package formula

import (
	"math"
	"strings"

	"columnbowl/calcwasm/unit"
)

// Assign is one “term = value” of a worked example or an assumption.
type Assign struct {
	Term      int
	Low, High float64    // in SI; equal for a plain number; the place of the word for a choice
	Unit      *unit.Unit // as written; nil for a choice
	Number    string     // the digits as written: "343.0"
	Off, Len  int        // the whole of it
	ValueOff  int        // the value
	ValueLen  int        //
}

// Worked is a worked example: facts, and what they must lead to.
type Worked struct{ Given, Expect []Assign }

// Mistake is a wrong way that people take, as edits of the right formula.
type Mistake struct {
	Edits []*Edit
	Say   string
	In    string // title of the worked example it is shown in; empty for the first
}

// Caution is a condition that means danger or nonsense.
type Caution struct {
	When      *Expr
	Say       string // empty if the hazard's own words are enough
	Danger    bool
	Hazard    string // the kind of danger, empty if it is of no kind that the book lists
	Condition string // the condition's text
}

// Assumption is a value that fills in last.
type Assumption struct {
	Assign
	Say string
}

// Estimate is a relation that fills its term while nothing better is known.
type Estimate struct {
	Relation *Relation
	Say      string
}

// ParseWorked parses the body of a “worked” block.
func ParseWorked(src string, scope *Scope) (*Worked, error) {
	p := newParser(src, scope)
	w := &Worked{}
	for p.tok().kind != tokEnd {
		switch {
		case p.acceptWord("given"):
			w.Given = p.assigns(w.Given)
		case p.acceptWord("expect"):
			w.Expect = p.assigns(w.Expect)
		default:
			p.expected("a line “given term = value” or “expect term = value”")
		}
	}
	if len(p.errors) == 0 && len(w.Expect) == 0 {
		p.fail(p.tok(), "This example expects nothing: add a line “expect term = value”.")
	}
	return w, p.done()
}

func (p *parser) assigns(list []Assign) []Assign {
	for {
		a := p.assign()
		for _, have := range list {
			if have.Term == a.Term && len(p.errors) == 0 {
				p.failAt(a.Off, a.Len, "“"+p.scope.terms[a.Term].ID+"” stands here twice.", "")
			}
		}
		list = append(list, a)
		if p.lost || !p.acceptOp(",") && !p.nextAssign() {
			return list
		}
	}
}

// nextAssign says whether the next line goes on with another “term = value”.
func (p *parser) nextAssign() bool {
	t := p.tok()
	return t.kind == tokName && t.first && !Reserved(t.text) && p.i+1 < len(p.tokens) && p.tokens[p.i+1].text == "="
}

func (p *parser) assign() Assign {
	t := p.tok()
	a := Assign{Off: t.off, Term: -1}
	if t.kind != tokName || Reserved(t.text) {
		p.expected("the name of a term")
		return a
	}
	p.take()
	i, ok := p.scope.Find(t.text)
	if !ok {
		p.failAt(t.off, t.len, "There is no term “"+t.text+"”.", p.scope.Near(t.text))
	}
	if !p.acceptOp("=") {
		p.expected("“=”")
		return a
	}
	a.Term, a.ValueOff = i, p.tok().off
	if ok && p.scope.terms[i].Kind == Choice {
		p.choiceValue(&a)
	} else {
		p.quantityValue(&a, ok)
	}
	a.ValueLen, a.Len = p.lastEnd()-a.ValueOff, p.lastEnd()-a.Off
	return a
}

func (p *parser) choiceValue(a *Assign) {
	term := &p.scope.terms[a.Term]
	t := p.take()
	for i, v := range term.Values {
		if t.kind == tokName && v == t.text {
			a.Low, a.High = float64(i), float64(i)
			return
		}
	}
	p.failAt(t.off, max(t.len, 1), "“"+term.ID+"” is one of: "+join(term.Values, " or ")+".", Nearest(t.text, term.Values))
}

func (p *parser) quantityValue(a *Assign, known bool) {
	low, t := p.signedNumber()
	a.Low, a.High, a.Unit, a.Number = low, low, t.unit, t.text
	units := []*unit.Unit{t.unit}
	if p.acceptWord("to") {
		high, h := p.signedNumber()
		if t.unit == nil && h.unit != nil { // 180 to 200 ft
			low = h.unit.ToSI(low)
			units = nil
		}
		a.Low, a.High, a.Unit = low, high, h.unit
		units = append(units, h.unit)
		if high < low {
			p.failAt(a.ValueOff, p.lastEnd()-a.ValueOff, "A range runs from the lower value to the higher one.", "")
		}
	}
	if known && !p.lost {
		p.checkValue(a, units)
	}
}

// checkValue holds a value against its term: the dimension of both ends of a
// range, and that a count is a whole number.
func (p *parser) checkValue(a *Assign, units []*unit.Unit) {
	term := &p.scope.terms[a.Term]
	length := p.lastEnd() - a.ValueOff
	for _, u := range units {
		d := dimOf(u)
		if d == term.Dim() {
			continue
		}
		suggest := ""
		if u == nil {
			written := p.src[a.ValueOff:p.lastEnd()]
			if suggest = written + " " + term.US.Symbol; strings.Contains(written, " to ") && units[0] != nil {
				suggest = written + " " + units[0].Symbol
			}
		}
		p.failAt(a.ValueOff, length, "“"+term.ID+"” is "+dimWord(term.Dim())+", and this is "+dimWord(d)+".", suggest)
		return
	}
	if term.Kind == Count && (a.Low < 0 || a.Low != math.Trunc(a.Low) || a.High != math.Trunc(a.High)) {
		p.failAt(a.ValueOff, length, "“"+term.ID+"” counts things: it is a whole number, 0 or more.", "")
	}
}

func (p *parser) signedNumber() (float64, token) {
	negative := p.acceptOp("-")
	t := p.tok()
	if t.kind != tokNumber {
		p.expected("a number with its unit")
		return 0, t
	}
	p.take()
	if negative {
		if t.unit != nil {
			n := t.unit.FromSI(t.value)
			t.text = "-" + t.text
			return t.unit.ToSI(-n), t
		}
		t.text = "-" + t.text
		return -t.value, t
	}
	return t.value, t
}

func (p *parser) say(required bool) string {
	if !p.acceptWord("say") {
		if required {
			p.expected("a line say \"…\"")
		}
		return ""
	}
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

// ParseAssumption parses the body of an “assume” block.
func ParseAssumption(src string, scope *Scope) (*Assumption, error) {
	p := newParser(src, scope)
	a := &Assumption{Assign: p.assign()}
	a.Say = p.say(true)
	return a, p.done()
}

// ParseEstimate parses the body of an “estimate” block.
func ParseEstimate(src string, scope *Scope) (*Estimate, error) {
	p := newParser(src, scope)
	e := &Estimate{Relation: p.relation()}
	e.Say = p.say(true)
	if e.Relation != nil && e.Relation.Target() < 0 && len(p.errors) == 0 {
		p.failExpr(e.Relation.Left, "An estimate fills one term: that term alone stands on the left-hand side.", "")
	}
	return e, p.done()
}

// ParseCaution parses the body of a “caution” block.
func ParseCaution(src string, scope *Scope) (*Caution, error) {
	p := newParser(src, scope)
	c := &Caution{}
	p.danger(c)
	if !p.acceptWord("when") {
		p.expected("a line “when condition”")
	}
	from := p.tok().off
	c.When = p.condition()
	c.Condition = src[from:max(from, p.lastEnd())]
	p.danger(c)
	c.Say = p.say(false)
	p.danger(c)
	if c.Say == "" && c.Hazard == "" && len(p.errors) == 0 {
		p.expected("a line say \"…\"")
	}
	return c, p.done()
}

// danger reads “danger”, and behind it the hazard that the caution is a case of.
func (p *parser) danger(c *Caution) {
	if !p.acceptWord("danger") {
		return
	}
	c.Danger = true
	if t := p.tok(); t.kind == tokName && !p.isWord("when") && !p.isWord("say") {
		p.take()
		c.Hazard = t.text
	}
}
