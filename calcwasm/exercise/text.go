package exercise

import (
	"math"
	"strconv"
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// Situation is the text of a sheet with its facts written in.
func (sh *Sheet) Situation() string { return Fill(sh.Template.Text, sh.FactText) }

// FactText is the value of a drawn fact as the sheet writes it; empty for what
// is no fact.
func (sh *Sheet) FactText(id string) string {
	for i := range sh.Template.Facts {
		if t := sh.Template.Facts[i].Term; sh.set.Book.Terms[t].ID == id {
			return sh.fact(t)
		}
	}
	return ""
}

// fact writes a fact with all its digits: 1.1875 in, not 1.188 in. In SI it is
// written as it is reckoned with there, and as it was drawn: 29.657 m (97.3 ft).
func (sh *Sheet) fact(term int) string {
	drawn := sh.drawnText(term)
	if u := sh.unit(term); sh.System == formula.SI && u != nil && u.Symbol != sh.set.Book.Terms[term].US.Symbol {
		return siText(sh.values[term], u) + "\u00a0" + u.Print + " (" + drawn + ")"
	}
	return drawn
}

func (sh *Sheet) drawnText(term int) string {
	t, v := &sh.set.Book.Terms[term], sh.values[term]
	text := sh.set.Book.Format(term, v, formula.US)
	if t.Kind == formula.Choice {
		return text
	}
	short := unit.Format(v, t.US)
	full := strconv.FormatFloat(t.US.FromSI(v), 'g', 7, 64)
	if len(full) <= len(short) || strings.ContainsAny(full+short, "e,×") {
		return text
	}
	return strings.Replace(full, "-", "−", 1) + text[len(short):]
}

// siText writes the number of a fact in SI: five digits, so that it moves an
// answer of four by next to nothing, four below one, and whole numbers in full.
func siText(v float64, u *unit.Unit) string {
	n, digits := u.FromSI(v), 5
	if math.Abs(n) < 1 {
		digits = 4
	}
	text := strconv.FormatFloat(n, 'g', digits, 64)
	if strings.Contains(text, "e+") {
		text = strconv.FormatFloat(n, 'f', 0, 64)
	}
	return strings.Replace(text, "-", "−", 1)
}

// told is a fact as the sheet tells it in SI, where it is rounded.
func (sh *Sheet) told(term int) float64 {
	v, u := sh.values[term], sh.unit(term)
	for i := range sh.Template.Facts {
		if sh.Template.Facts[i].Term == term && u.Symbol != sh.set.Book.Terms[term].US.Symbol {
			n, err := strconv.ParseFloat(strings.Replace(siText(v, u), "−", "-", 1), 64)
			if err == nil {
				return u.ToSI(n)
			}
		}
	}
	return v
}

// unit is the unit in which a sheet tells and asks a term.
func (sh *Sheet) unit(term int) *unit.Unit { return sh.set.Book.Terms[term].In(sh.System) }

// Unit is the unit in which an item is asked, as it is printed.
func (sh *Sheet) Unit(i int) string {
	if u := sh.unit(sh.Items[i].Term); sh.Items[i].Kind == Number && u != nil {
		return u.Print
	}
	return ""
}

// format writes a value of a term with its unit.
func (sh *Sheet) format(term int, v float64) string { return sh.set.Book.Format(term, v, sh.System) }

// Fill puts a text in place of each {name} of another text.
func Fill(text string, of func(name string) string) string {
	var b strings.Builder
	for {
		open := strings.IndexByte(text, '{')
		end := strings.IndexByte(text[max(open, 0):], '}')
		if open < 0 || end < 0 {
			b.WriteString(text)
			return b.String()
		}
		b.WriteString(text[:open])
		b.WriteString(of(text[open+1 : open+end]))
		text = text[open+end+1:]
	}
}

// Names lists what stands in braces in a text, with the byte where each begins.
func Names(text string) (names []string, at []int) {
	from := 0
	for {
		open := strings.IndexByte(text[from:], '{')
		if open < 0 {
			return names, at
		}
		open += from
		end := strings.IndexByte(text[open:], '}')
		if end < 0 {
			return names, at
		}
		names, at = append(names, text[open+1:open+end]), append(at, open+1)
		from = open + end
	}
}

// Amount writes a value of an item's term with its unit.
func (sh *Sheet) Amount(i int, v float64) string {
	return sh.format(sh.Items[i].Term, v)
}

// Title is how an item is called: the name of its term, or its question.
func (sh *Sheet) Title(i int) string {
	if sh.Items[i].Kind == Number {
		return sh.set.Book.Terms[sh.Items[i].Term].Title
	}
	return sh.Items[i].Ask
}

// RightOption is the right one of the options of a choice.
func (sh *Sheet) RightOption(i int) formula.Option {
	return sh.Items[i].Options[sh.Items[i].Answer[0]-'A']
}

// Step is one number on the way to an item.
type Step struct {
	Relation string // “field head = pumping level + pressure head”; empty for what is assumed
	Numbers  string // “field head = 197 ft + 138.6 ft”; empty where nothing is left to reckon
	Line     string // “field head = 197 ft + 138.6 ft = 335.6 ft”
}

// Steps is the way to an item, one line for each number.
func (sh *Sheet) Steps(i int) []string {
	var lines []string
	for _, s := range sh.Way(i) {
		lines = append(lines, s.Line)
	}
	return lines
}

// Way is the way to an item from what stands before it on the sheet, one step
// for each number.
func (sh *Sheet) Way(i int) []Step {
	if sh.Items[i].Kind != Number {
		return nil
	}
	sg := sh.segment(i, nil)
	b := sh.set.Book
	var steps []Step
	for _, k := range sg.steps {
		st := &sh.plan.steps[k]
		v := sh.format(st.term, sg.env.Values[st.term])
		name := b.Terms[st.term].Name + " = "
		one := Step{Line: name + v}
		if e := sh.form(st); e != nil {
			one.Relation = name + e.Words(b.Scope)
			if work := e.Substituted(b.Scope, sg.env, sh.System); work != v {
				one.Numbers = name + work
				one.Line = one.Numbers + " = " + v
			}
		}
		steps = append(steps, one)
	}
	return steps
}

// form is the expression that explains a step: in SI the relation in its SI form,
// where there is one.
func (sh *Sheet) form(st *step) *formula.Expr {
	if partner := sh.set.Book.Rules[st.rule].SI; sh.System == formula.SI && partner != nil && st.expr != nil {
		if e, ok := partner.Isolate(st.term); ok {
			return e
		}
	}
	return st.expr
}

// Cautions lists what can hurt somebody in the situation of a sheet: the texts
// of the book's cautions that it raises, and that its author allows.
func (sh *Sheet) Cautions() []string {
	env := sh.set.work
	copy(env.Values, sh.values)
	var fires []int
	for _, c := range append(append([]int(nil), sh.plan.stands...), sh.plan.checks...) {
		if caution := &sh.set.Book.Cautions[c]; sh.plan.about(caution.Home) && caution.When.Test(env) == formula.True {
			fires = append(fires, c)
		}
	}
	var list []string
	for _, t := range sh.set.Book.Tell(fires) {
		list = append(list, t.Words())
		for _, c := range t.Own() {
			list = append(list, c.Say)
		}
	}
	return list
}

// Trace is what one mistake gives in an item of a sheet.
type Trace struct {
	Slip  int
	Value float64
	Off   float64 // how far rounding moves it
	Here  bool    // the mistake is in the item's own formula, not on the way to it
}

// Traces lists what each mistake gives in an item when all before it is right.
func (sh *Sheet) Traces(i int) []Trace {
	if sh.Items[i].Kind != Number {
		return nil
	}
	sg := sh.segment(i, nil)
	var list []Trace
	for _, g := range sg.singles()[1:] {
		if g.lesson != rightLesson {
			list = append(list, Trace{g.slip, g.value, g.tol, g.at == len(sg.steps)-1})
		}
	}
	return list
}

// Off is how far from the right number an answer of an item may be, in SI, when
// all before it is right: by rounding, and at all, as the author allows.
func (sh *Sheet) Off(i int) (rounding, allowed float64) {
	sg := sh.segment(i, nil)
	return sg.tol, math.Max(sg.tol, sh.Template.Ask[i].Within*math.Abs(sh.Items[i].Right))
}

// Fact is a fact of a sheet.
type Fact struct {
	Term  int
	Value float64
}

// Facts lists the facts of a sheet, in the order in which they were drawn.
func (sh *Sheet) Facts() []Fact {
	var list []Fact
	for i := range sh.Template.Facts {
		t := sh.Template.Facts[i].Term
		list = append(list, Fact{t, sh.values[t]})
	}
	return list
}
