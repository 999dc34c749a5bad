package proof

import (
	"slices"
	"strconv"

	"columnbowl/build/book"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// mistakes sees that every mistake shows in its example: it can be computed
// there, and gives another number than the right formula.
func (c *checker) mistakes() {
	e := c.book.Engine
	for i := range e.Mistakes {
		if c.leftBlock(e.Mistakes[i].Block) {
			continue
		}
		ex := c.shownIn(&e.Mistakes[i])
		if ex == nil {
			continue
		}
		if facts, sound := c.facts(ex); sound { // what is unsound is told once: the list drops doubles
			c.mistake(&e.Mistakes[i], ex, facts)
		}
	}
}

// shownIn is the example that a mistake is shown in: the one it names, or the
// first of its page.
func (c *checker) shownIn(m *reckon.Mistake) *reckon.Example {
	e := c.book.Engine
	var titles []string
	for i := range e.Examples {
		ex := &e.Examples[i]
		if ex.Home != m.Home {
			continue
		}
		if m.In == "" || ex.Title == m.In {
			return ex
		}
		titles = append(titles, ex.Title)
	}
	switch {
	case !c.book.Whole: // the example may be there and broken
	case m.In == "":
		c.atHead(c.book.Blocks[m.Block], "The page has no worked example in which this mistake could be shown.", "")
	default:
		c.atHead(c.book.Blocks[m.Block], "The page has no worked example “"+m.In+"”.", inLine(formula.Nearest(m.In, titles)))
	}
	return nil
}

func inLine(title string) string {
	if title == "" {
		return ""
	}
	return `in "` + title + `"`
}

func (c *checker) mistake(m *reckon.Mistake, ex *reckon.Example, facts []reckon.Fact) {
	ref := c.book.Blocks[m.Block]
	r := c.book.Engine.Reckon(reckon.Question{Facts: facts, Want: m.Home})
	where := "in the example “" + ex.Title + "”"
	if !r.Known(m.Home) {
		c.hidden(ref, "“"+c.id(m.Home)+"” is not known "+where+", so this mistake cannot be shown there.")
		return
	}
	wrong, why := c.wrongValue(m, r)
	if why != "" {
		c.hidden(ref, "This mistake cannot be computed "+where+": "+why)
		return
	}
	t := &c.book.Engine.Terms[m.Home]
	if fourDigits(t.US.FromSI(wrong)) == fourDigits(t.US.FromSI(r.Values[m.Home].Likely)) {
		c.atHead(ref, "This mistake gives "+c.format(m.Home, wrong)+" "+where+", the same as the right formula. Show it in an example in which it makes a difference.", "")
	}
}

// hidden tells of a mistake that its example cannot show. While blocks are
// broken it is not told: one of them may be what is missing.
func (c *checker) hidden(ref book.BlockRef, message string) {
	if c.book.Whole {
		c.atHead(ref, message, "", "Give there what it needs, or name another example of the page: in \"title\".")
	}
}

// wrongValue computes a mistake with the values of its example, in SI; why says
// what is in the way.
func (c *checker) wrongValue(m *reckon.Mistake, r *reckon.Result) (v float64, why string) {
	env := r.Env()
	v = m.Wrong.Right.Eval(env)
	if m.Wrong.Left.Op == formula.Bare {
		v = m.Wrong.Left.Unit.ToSI(v)
	}
	if v == v {
		return v, ""
	}
	if env.Invalid != "" {
		return v, env.Invalid + "."
	}
	var lacking []string
	for _, t := range m.Wrong.Right.Terms() { // a value, not a condition: all its terms are needed
		if !env.Known(t) {
			lacking = append(lacking, c.id(t))
		}
	}
	slices.Sort(lacking)
	return v, quoted(lacking) + " is not known there."
}

// fourDigits is how a reader sees a number.
func fourDigits(x float64) string { return strconv.FormatFloat(x, 'e', 3, 64) }
