package proof

import (
	"math"
	"strconv"
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// examples computes every expected number of every worked example again.
func (c *checker) examples() {
	e := c.book.Engine
	for i := range e.Examples {
		if c.leftBlock(e.Examples[i].Block) {
			continue
		}
		c.summary.Examples++
		c.example(&e.Examples[i])
	}
}

func (c *checker) example(ex *reckon.Example) {
	facts, ok := c.facts(ex)
	if !ok {
		return
	}
	clashes := map[int]bool{} // by rule: each is told once
	for i := range ex.Expect {
		a := &ex.Expect[i]
		if gives(ex, a.Term) {
			c.inBlock(ex.Block, a.Off, a.Len, "“"+c.id(a.Term)+"” is given in this example, so it cannot be expected.", "")
			continue
		}
		c.summary.Numbers++
		r := c.book.Engine.Reckon(reckon.Question{Facts: facts, Want: a.Term})
		for k := range r.Clashes {
			if clash := &r.Clashes[k]; !clashes[clash.Rule] {
				clashes[clash.Rule] = true
				c.clash(ex, r, clash)
			}
		}
		if len(r.Clashes) == 0 {
			c.expected(ex, a, r)
		}
	}
}

func gives(ex *reckon.Example, term int) bool {
	for i := range ex.Given {
		if ex.Given[i].Term == term {
			return true
		}
	}
	return false
}

func (c *checker) id(term int) string { return c.book.Engine.Terms[term].ID }

// valueText is a value as its author wrote it.
func (c *checker) valueText(ex *reckon.Example, a *formula.Assign) string {
	body := c.book.Source.Blocks[ex.Block].Body
	return body[a.ValueOff : a.ValueOff+a.ValueLen]
}

// facts makes the facts of an example, and reports whether all of them are
// within the ranges of their terms and mean the same when a reader types them.
func (c *checker) facts(ex *reckon.Example) ([]reckon.Fact, bool) {
	facts := make([]reckon.Fact, len(ex.Given))
	sound := true
	for i := range ex.Given {
		a := &ex.Given[i]
		text := c.valueText(ex, a)
		facts[i] = reckon.Fact{Term: a.Term, Low: a.Low, Likely: (a.Low + a.High) / 2, High: a.High,
			Rounding: rounding(&c.book.Engine.Terms[a.Term], a), Text: text}
		if message := c.unfit(&facts[i]); message != "" {
			c.inBlock(ex.Block, a.ValueOff, a.ValueLen, message, "")
			sound = false
		}
	}
	return facts, sound
}

// alike is how near two readings of one number are.
const alike = 1e-9

// unfit says why a fact cannot stand in an example; it is empty if it can. The
// page opens with these facts in its fields, so a field must take them, and
// take them for the same value.
func (c *checker) unfit(f *reckon.Fact) string {
	t := &c.book.Engine.Terms[f.Term]
	if t.Kind == formula.Choice {
		return ""
	}
	slack := alike * (t.High - t.Low)
	switch {
	case f.Low < t.Low-slack || f.High > t.High+slack:
		return f.Text + " is outside the range of “" + t.ID + "”: from " + c.format(f.Term, t.Low) + " to " + c.format(f.Term, t.High) + "."
	case t.Kind == formula.Count && (f.Low != math.Trunc(f.Low) || f.High != math.Trunc(f.High)):
		return "“" + t.ID + "” is a count: a whole number."
	}
	typed, err := c.book.Engine.Read(f.Term, f.Text)
	if err != nil {
		return "A reader cannot type this into the field of the page: " + spaced(err.Error())
	}
	if math.Abs(typed.Low-f.Low) > alike*math.Abs(f.Low) || math.Abs(typed.High-f.High) > alike*math.Abs(f.High) {
		return "Typed into the field of the page, this means " + c.format(f.Term, typed.Likely) + ": write it with its unit."
	}
	return ""
}

// rounding is half of the last digit written, in SI. A count is exact.
func rounding(t *reckon.Term, a *formula.Assign) float64 {
	if t.Kind != formula.Quantity {
		return 0
	}
	_, _, d, _, err := unit.ReadNotation(a.Number)
	if err != nil {
		return 0
	}
	half := 0.5 * math.Pow10(d.Exponent-d.Decimals)
	if a.Unit == nil {
		return half
	}
	return half * a.Unit.Factor
}

func (c *checker) format(term int, v float64) string {
	return spaced(c.book.Engine.Format(term, v, formula.US))
}

// spaced puts plain spaces for no-break ones: messages go to a terminal.
func spaced(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

func (c *checker) clash(ex *reckon.Example, r *reckon.Result, clash *reckon.Clash) {
	message := "The facts of this example contradict each other: " + spaced(r.ClashText(clash, formula.US))
	for i := range ex.Given {
		if a := &ex.Given[i]; a.Term == clash.Term {
			c.inBlock(ex.Block, a.ValueOff, a.ValueLen, message, "")
			return
		}
	}
	c.atHead(c.book.Blocks[ex.Block], message, "")
}

// expected compares one expected value with what follows from the facts.
func (c *checker) expected(ex *reckon.Example, a *formula.Assign, r *reckon.Result) {
	if !r.Known(a.Term) {
		if c.book.Whole || r.Values[a.Term].State > reckon.Waits {
			c.inBlock(ex.Block, a.Off, a.Len, "“"+c.id(a.Term)+"” does not follow from the facts of this example: "+c.lacks(r, a.Term), "")
		}
		return
	}
	v := &r.Values[a.Term]
	text := c.valueText(ex, a)
	t := &c.book.Engine.Terms[a.Term]
	if t.Kind == formula.Choice {
		if v.Likely != a.Low {
			c.inBlock(ex.Block, a.ValueOff, a.ValueLen, "“"+t.ID+"” comes out as "+t.Values[int(v.Likely)]+", not "+text+".", t.Values[int(v.Likely)])
		}
		return
	}
	out, same := rewritten(text, a, v)
	if same {
		return
	}
	c.inBlock(ex.Block, a.ValueOff, a.ValueLen, "“"+t.ID+"” is expected to be "+text+", but "+out+" comes out.", out, c.steps(r, a.Term)...)
}

// rewritten is the computed value written with the digits and the unit of the
// expected one, and whether the two are the same. A range is compared at both
// of its ends.
func rewritten(text string, a *formula.Assign, v *reckon.Value) (out string, same bool) {
	in := func(x float64) float64 {
		if a.Unit == nil {
			return x
		}
		return a.Unit.FromSI(x)
	}
	if low, high, found := strings.Cut(text, " to "); found {
		outLow, sameLow := digitsOf(in(v.Low), low)
		outHigh, sameHigh := digitsOf(in(v.High), high)
		return outLow + " to " + outHigh, sameLow && sameHigh
	}
	return digitsOf(in(v.Likely), text)
}

// digitsOf writes a number with as many digits as a written one, and with its
// unit. Near a tie the last digit is the one that unit.Same takes.
func digitsOf(x float64, written string) (out string, same bool) {
	_, u, d, _, err := unit.ReadNotation(strings.TrimSpace(written))
	if err != nil {
		return written, false
	}
	tail := ""
	if d.Exponent != 0 {
		if x != 0 { // one digit before the point, as powers of ten are written
			d.Exponent = int(math.Floor(math.Log10(math.Abs(x))))
		}
		tail = "e" + strconv.Itoa(d.Exponent)
	}
	if u != nil {
		tail += " " + u.Symbol
	}
	scale := math.Pow10(d.Decimals)
	last := math.Round(x / math.Pow10(d.Exponent) * scale) // the number counted in its last digit
	for _, shift := range []float64{0, 1, -1} {
		out = strconv.FormatFloat((last+shift)/scale, 'f', d.Decimals, 64) + tail
		if unit.Same(x, out) {
			break
		}
	}
	return out, unit.Same(x, written)
}

// mostSteps is how many lines of a calculation a message shows.
const mostSteps = 6

// steps is the way to a value, as notes.
func (c *checker) steps(r *reckon.Result, term int) []string {
	chain := r.Chain(term)
	if len(chain) > mostSteps {
		chain = chain[len(chain)-mostSteps:]
	}
	var notes []string
	for _, t := range chain {
		notes = append(notes, spaced(r.Step(t, formula.US)))
	}
	return notes
}

// lacks says why a term is not known in a result.
func (c *checker) lacks(r *reckon.Result, term int) string {
	v := &r.Values[term]
	switch v.State {
	case reckon.NotApplicable:
		return "it does not exist in this build."
	case reckon.Outside:
		text := v.Reason + "."
		if v.Likely == v.Likely {
			text = c.format(term, v.Likely) + " comes out, " + text
		}
		return text
	case reckon.Several:
		var all []string
		for _, x := range v.Roots {
			all = append(all, c.format(term, x))
		}
		return "more than one value satisfies the relations (" + strings.Join(all, ", ") + ")."
	}
	if len(r.Missing) == 0 {
		return "no relation leads to it from here, whatever else is given."
	}
	sets := make([]string, len(r.Missing))
	for i, set := range r.Missing {
		ids := make([]string, len(set))
		for k, t := range set {
			ids[k] = c.id(t)
		}
		sets[i] = quoted(ids)
	}
	return "it would, with " + strings.Join(sets, ", or with ") + "."
}
