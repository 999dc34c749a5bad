package formula

// ParseMistake parses the body of a “mistake” block.
func ParseMistake(src string, scope *Scope) (*Mistake, error) {
	p := newParser(src, scope)
	m := &Mistake{}
	for p.tok().kind != tokEnd && !p.isWord("say") && !p.isWord("in") {
		m.Edits = append(m.Edits, p.edits()...)
	}
	p.shownIn(m)
	m.Say = p.say(true)
	p.shownIn(m)
	if len(m.Edits) == 0 && len(p.errors) == 0 {
		p.failAt(0, 1, "A mistake needs an edit: put … for …, leave out …, minus for plus …, times for over …, bare … for …, whole ….", "")
	}
	return m, p.done()
}

// shownIn reads the line that names the worked example a mistake is shown in.
func (p *parser) shownIn(m *Mistake) {
	if !p.acceptWord("in") {
		return
	}
	t := p.take()
	if t.kind != tokString {
		p.fail(t, "After “in” stands the title of a worked example, in quotation marks.")
	}
	m.In = t.text
}

// edits reads one line of edits; “leave out a, b” makes one of each name.
func (p *parser) edits() []*Edit {
	start := p.tok()
	ed := &Edit{Off: start.off}
	var more []*Edit
	switch {
	case p.acceptWord("put"):
		ed.Kind = Put
		ed.To = p.checked(p.sum())
		p.need("for")
		ed.From = p.checked(p.sum())
	case p.acceptWord("leave"):
		p.need("out")
		ed.Kind, ed.Term = LeaveOut, p.termName()
		for p.acceptOp(",") {
			t := p.tok()
			more = append(more, &Edit{Kind: LeaveOut, Off: t.off, Len: t.len, Term: p.termName()})
		}
	case p.acceptWord("minus"):
		p.turned(ed, MinusFor, "plus")
	case p.acceptWord("plus"):
		p.turned(ed, PlusFor, "minus")
	case p.acceptWord("times"):
		p.turned(ed, TimesFor, "over")
	case p.acceptWord("over"):
		p.turned(ed, OverFor, "times")
	case p.acceptWord("bare"):
		p.bareEdit(ed)
	case p.acceptWord("whole"):
		ed.Kind, ed.Whole = WholeFor, p.relation()
	case p.tok().kind == tokName && (p.scope.funcs[p.tok().text] != nil || p.tokens[min(p.i+1, len(p.tokens)-1)].text == "for"):
		ed.Kind, ed.FuncTo = FuncFor, p.function()
		p.need("for")
		ed.FuncFrom = p.function()
	default:
		p.expected("put, leave out, minus for plus, plus for minus, times for over, over for times, bare, whole or a function")
	}
	ed.Len = max(p.lastEnd()-ed.Off, 1)
	return append([]*Edit{ed}, more...)
}

func (p *parser) need(word string) {
	if !p.acceptWord(word) {
		p.expected("“" + word + "”")
	}
}

func (p *parser) turned(ed *Edit, kind EditKind, other string) {
	ed.Kind = kind
	p.need("for")
	p.need(other)
	ed.Term = p.termName()
}

func (p *parser) termName() int {
	t := p.tok()
	if t.kind != tokName || Reserved(t.text) {
		p.expected("the name of a term")
		return 0
	}
	p.take()
	i, ok := p.scope.Find(t.text)
	if !ok {
		p.failAt(t.off, max(t.len, 1), "There is no term “"+t.text+"”.", p.scope.Near(t.text))
		return 0
	}
	return i
}

func (p *parser) function() *Func {
	t := p.take()
	f := p.scope.funcs[t.text]
	if f == nil {
		p.failAt(t.off, max(t.len, 1), "There is no function “"+t.text+"”.", p.scope.Near(t.text))
	}
	return f
}

func (p *parser) bareEdit(ed *Edit) {
	ed.Kind = BareFor
	ed.To = p.checked(p.atom())
	p.need("for")
	ed.From = p.checked(p.atom())
	if len(p.errors) == 0 && (ed.To.Op != Bare || ed.From.Op != Bare) {
		p.failAt(ed.Off, max(p.lastEnd()-ed.Off, 1), "Write both with a unit: bare discharge-pressure[psi] for pressure-head[ft].", "")
	}
}
