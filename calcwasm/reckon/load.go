package reckon

import (
	"math"
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// BuildTerm is the choice that says which pump it is; titles name its values
// under “applies”.
const BuildTerm = "build"

// loader turns a Source into a Book and collects what is wrong on the way.
type loader struct {
	src      *Source
	book     *Book
	problems []Problem
}

// Load parses and checks a Source. The Book can be used only if there are no
// problems.
func Load(src *Source, funcs ...*formula.Func) (*Book, []Problem) {
	l := &loader{src: src, book: &Book{ID: src.ID, Title: src.Title, Money: src.Money, Bowls: src.Bowls, Hazards: src.Hazards}}
	terms := make([]formula.Term, len(src.Terms))
	l.book.Terms = make([]Term, len(src.Terms))
	for i := range src.Terms {
		l.term(i)
		terms[i] = l.book.Terms[i].Term
	}
	l.book.Scope = formula.NewScope(terms, funcs)
	l.book.findBuild()
	for i := range src.Terms {
		l.applies(i)
	}
	for i := range src.Blocks {
		if src.Blocks[i].Kind != MistakeBlock {
			l.block(i)
		}
	}
	for i := range src.Blocks { // after all formulas and examples
		if src.Blocks[i].Kind == MistakeBlock {
			l.block(i)
		}
	}
	l.book.index()
	return l.book, l.problems
}

func (l *loader) wrongTitle(term int, field, message, suggest string) {
	l.problems = append(l.problems, Problem{Term: term, Block: -1, Field: field, Message: message, Suggest: suggest})
}

func (l *loader) term(i int) {
	s, t := &l.src.Terms[i], &l.book.Terms[i]
	t.Term = formula.Term{ID: s.ID, Name: s.Running, Symbol: s.Symbol}
	if t.Name == "" {
		t.Name = running(s.Name)
	}
	t.Title = s.Name
	t.Ask, t.Otherwise = s.Ask, math.NaN()
	if formula.Reserved(s.ID) {
		l.wrongTitle(i, "id", "“"+s.ID+"” is a word of the notation and cannot be a term.", "")
	}
	switch s.Kind {
	case "", "quantity":
	case "count":
		t.Kind = formula.Count
	case "choice":
		l.choice(i)
		return
	default:
		l.wrongTitle(i, "kind", "“"+s.Kind+"” is no kind of term: write quantity, count or choice.", formula.Nearest(s.Kind, []string{"quantity", "count", "choice"}))
	}
	t.US = l.unit(i, "unit.us", s.US)
	t.SI = l.unit(i, "unit.si", s.SI)
	if t.US.Dim != t.SI.Dim {
		l.wrongTitle(i, "unit.si", s.SI+" measures "+t.SI.Dim.String()+", "+s.US+" measures "+t.US.Dim.String()+": the two units of a term measure the same.", "")
	}
	t.Low, t.High = l.quantity(i, "range.from", s.From), l.quantity(i, "range.to", s.To)
	if t.Low >= t.High {
		l.wrongTitle(i, "range.to", "The range runs from "+s.From+" to "+s.To+": “to” must be the larger one.", "")
	}
	if s.Otherwise != "" {
		t.Otherwise = l.quantity(i, "otherwise", s.Otherwise)
	}
	switch s.Pressure {
	case "":
	case "gauge":
		t.Reference = unit.Gauge
	case "absolute":
		t.Reference = unit.Absolute
	default:
		l.wrongTitle(i, "pressure", "A pressure is “gauge” or “absolute”, not “"+s.Pressure+"”.", "")
	}
}

func (l *loader) choice(i int) {
	s, t := &l.src.Terms[i], &l.book.Terms[i]
	t.Kind = formula.Choice
	if s.ID == BowlTerm {
		for _, b := range l.src.Bowls {
			t.Values, t.Labels = append(t.Values, b.ID), append(t.Labels, b.Label())
		}
	}
	for v := 0; v+1 < len(s.Values); v += 2 {
		t.Values = append(t.Values, s.Values[v])
		t.Labels = append(t.Labels, s.Values[v+1])
	}
	if len(t.Values) < 2 {
		l.wrongTitle(i, "values", "A choice needs two values or more.", "")
	}
	t.Low, t.High = 0, float64(len(t.Values)-1)
}

func (l *loader) unit(term int, field, symbol string) *unit.Unit {
	if u, ok := unit.Lookup(symbol); ok {
		return u
	}
	l.wrongTitle(term, field, "There is no unit “"+symbol+"”.", unit.Suggest(symbol))
	u, _ := unit.Lookup("1")
	return u
}

// quantity reads a value of the title block, such as “3000 ft”.
func (l *loader) quantity(term int, field, text string) float64 {
	t := &l.book.Terms[term]
	if text == "" {
		l.wrongTitle(term, field, "“"+t.ID+"” needs a range: the values that make sense, such as from 0 to 3000 "+t.US.Symbol+".", "")
		return 0
	}
	e, err := formula.ParseExpr(text, formula.NewScope(nil, nil))
	if err != nil {
		l.wrongTitle(term, field, "“"+text+"” is not a quantity: "+err.Error(), "")
		return 0
	}
	if e.Dim != t.US.Dim {
		l.wrongTitle(term, field, "“"+text+"” is not a quantity of the term's dimension ("+t.US.Dim.String()+").", "")
	}
	return e.Eval(formula.NewEnv(formula.NewScope(nil, nil)))
}

func (l *loader) applies(i int) {
	names := l.src.Terms[i].Applies
	if len(names) == 0 {
		return
	}
	if l.book.build < 0 {
		l.wrongTitle(i, "applies", "“applies” names builds, and the book has no choice term “"+BuildTerm+"”.", "")
		return
	}
	values := l.book.Terms[l.book.build].Values
next:
	for _, name := range names {
		for v, have := range values {
			if have == name {
				l.book.Terms[i].Applies = append(l.book.Terms[i].Applies, v)
				continue next
			}
		}
		l.wrongTitle(i, "applies", "“"+name+"” is not one of the builds: "+strings.Join(values, ", ")+".", formula.Nearest(name, values))
	}
}

// fail takes the errors of the notation as problems of a block.
func (l *loader) fail(block int, head bool, shift int, err error) {
	add := func(e *formula.Error) {
		l.problems = append(l.problems, Problem{Term: -1, Block: block, Head: head, Off: e.Off + shift, Len: e.Len, Message: e.Message, Suggest: e.Suggest})
	}
	switch err := err.(type) {
	case formula.Errors:
		for _, e := range err {
			add(e)
		}
	case *formula.Error:
		add(err)
	}
}

func (l *loader) wrongBlock(block int, head bool, message string) {
	k := &l.src.Blocks[block]
	length := len(k.Body)
	if head {
		length = len(k.Head)
	}
	l.fail(block, head, 0, &formula.Error{Len: max(length, 1), Message: message})
}

func (l *loader) block(i int) {
	k := &l.src.Blocks[i]
	home := -1
	if h, ok := l.book.Scope.Find(k.Term); ok {
		home = h
	}
	switch k.Kind {
	case FormulaBlock:
		l.formula(i, home)
	case SIBlock:
		l.si(i, home)
	case EstimateBlock:
		l.estimate(i, home)
	case AssumeBlock:
		l.assumption(i, home)
	case WorkedBlock:
		w, err := formula.ParseWorked(k.Body, l.book.Scope)
		l.fail(i, false, 0, err)
		if err == nil {
			l.book.Examples = append(l.book.Examples, Example{Title: k.Head, Home: home, Worked: *w, Block: i})
		}
	case CautionBlock:
		l.caution(i, home)
	case MistakeBlock:
		l.mistake(i, home)
	default:
		l.wrongBlock(i, true, "“"+string(k.Kind)+"” is no block of the notation.")
	}
}

// caution takes a caution in. One that names a hazard and says nothing more
// speaks with the hazard's words.
func (l *loader) caution(i, home int) {
	k := &l.src.Blocks[i]
	c, err := formula.ParseCaution(k.Body, l.book.Scope)
	l.fail(i, false, 0, err)
	if err != nil {
		return
	}
	if c.Hazard != "" {
		h := l.book.Hazard(c.Hazard)
		if h == nil {
			l.wrongBlock(i, false, "“"+c.Hazard+"” is no hazard of the book. "+l.hazardsThere())
			return
		}
		if c.Say == "" {
			c.Say = h.Say
		}
	}
	l.book.Cautions = append(l.book.Cautions, Caution{ID: l.name(i, k.Head, "caution"), Home: home, Caution: *c, Block: i})
}

// hazardsThere names the hazards that a caution may name.
func (l *loader) hazardsThere() string {
	ids := make([]string, len(l.book.Hazards))
	for i, h := range l.book.Hazards {
		ids[i] = h.ID
	}
	if len(ids) == 0 {
		return "It has none."
	}
	return "It has " + strings.Join(ids, ", ") + "."
}

// name makes the id of a named block: term/name.
func (l *loader) name(block int, head, what string) string {
	head = strings.TrimSpace(head)
	if head == "" || strings.ContainsAny(head, " \t\"") {
		l.wrongBlock(block, true, "A "+what+" has a name of its own: small words joined by hyphens.")
	}
	return l.src.Blocks[block].Term + "/" + head
}

// when parses the condition in a block's head, from the byte where it starts.
func (l *loader) when(block int, head string, shift int) *formula.Expr {
	rest, found := strings.CutPrefix(head, "when ")
	if !found {
		if strings.TrimSpace(head) != "" {
			l.wrongBlock(block, true, "Expected “when CONDITION”, but “"+strings.TrimSpace(head)+"” stands here.")
		}
		return nil
	}
	c, err := formula.ParseCondition(rest, l.book.Scope)
	l.fail(block, true, shift+len("when "), err)
	return c
}
