package exercise

import (
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

// fact writes a fact with all its digits: 1.1875 in, not 1.188 in.
func (sh *Sheet) fact(term int) string {
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
	return sh.set.Book.Format(sh.Items[i].Term, v, formula.US)
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

// Steps is the way to an item from what stands before it on the sheet, one line
// for each number: “field head = 197 ft + 138.6 ft + 0.41 ft = 336 ft”.
func (sh *Sheet) Steps(i int) []string {
	if sh.Items[i].Kind != Number {
		return nil
	}
	sg := sh.segment(i, nil)
	b := sh.set.Book
	var lines []string
	for _, k := range sg.steps {
		st := &sh.plan.steps[k]
		v := b.Format(st.term, sg.env.Values[st.term], formula.US)
		line := b.Terms[st.term].Name + " = "
		if st.expr != nil {
			work := st.expr.Substituted(b.Scope, sg.env, formula.US)
			if work != v {
				line += work + " = "
			}
		}
		lines = append(lines, line+v)
	}
	return lines
}

// Cautions lists what can hurt somebody in the situation of a sheet: the texts
// of the book's cautions that it raises, and that its author allows.
func (sh *Sheet) Cautions() []string {
	env := sh.set.work
	copy(env.Values, sh.values)
	var list []string
	for _, c := range append(append([]int(nil), sh.plan.stands...), sh.plan.checks...) {
		if caution := &sh.set.Book.Cautions[c]; sh.plan.about(caution.Home) && caution.When.Test(env) == formula.True {
			list = append(list, caution.Say)
		}
	}
	return list
}

// Trace is what one mistake gives in an item of a sheet.
type Trace struct {
	Slip  int
	Value float64
	Here  bool // the mistake is in the item's own formula, not on the way to it
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
			list = append(list, Trace{g.slip, g.value, g.at == len(sg.steps)-1})
		}
	}
	return list
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
