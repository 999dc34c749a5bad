package proof

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"columnbowl/build/book"
	"columnbowl/calcwasm/reckon"
)

// literal is a number of a condition, with the word behind it, which may be its
// unit.
var literal = regexp.MustCompile(`\d[\d.,]*(?: ?[^\s\d]\S*)?`)

// conditionGrounds are the numbers that a condition compares with.
func conditionGrounds(when string) []ground {
	var list []ground
	for _, text := range literal.FindAllString(when, -1) {
		v, u, _, ok := quantity(text)
		if ok {
			list = append(list, ground{u.Dim, v*u.Factor + u.Offset, u, nil})
		}
	}
	return list
}

// tableProse sees that the figures in the texts of a table rest on something.
// What “say” tells in words is what “when” says in the notation, so they have the
// same figures. The rest of a row has its source in the mark; a row that is
// arithmetic, and what is told about the table, have to follow from its facts.
func (c *checker) tableProse() {
	for _, t := range c.book.Tables {
		if c.left(t.File) {
			continue
		}
		facts := c.sheetGrounds(t)
		c.tableFiguresStand(t, "about", facts, "No fact of this table gives ")
		for i := range t.Rows {
			r, at := &t.Rows[i], "rows."+strconv.Itoa(i)+"."
			own := conditionGrounds(r.When)
			c.tableFiguresStand(t, at+"say", own, "The condition below it, “when”, does not have ")
			if r.Mark != "arithmetic" {
				continue
			}
			for _, field := range []string{"then", "prove", "reason"} {
				c.tableFiguresStand(t, at+field, slices.Concat(own, facts), "This row is marked as arithmetic, and neither its condition nor the facts of the table give ")
			}
		}
	}
}

// tableFiguresStand sees that each figure of a field is among the grounds.
func (c *checker) tableFiguresStand(t *book.Table, field string, grounds []ground, wrong string) {
	s := t.Where(field)
	if s == t.Where(field[:max(strings.LastIndex(field, "."), 0)]) {
		return // the row has no such field
	}
	for _, f := range allFigures(c.book.Files[t.File][s.Off:s.Off+s.Len], s.Off) {
		c.summary.Figures++
		if !slices.ContainsFunc(grounds, func(g ground) bool { return f.restsOn(&g) }) {
			c.found.Add(t.File, f.off, f.len, wrong+f.text+".", "")
		}
	}
}

// sheetGrounds are the facts with which the sheet of a table opens, and what
// follows from them.
func (c *checker) sheetGrounds(t *book.Table) []ground {
	var facts []reckon.Fact
	for _, f := range t.Facts {
		if term := c.book.TermByID[f.Term]; term != nil && f.Text != "" {
			if fact, err := c.book.Engine.Read(term.Index, f.Text); err == nil {
				facts = append(facts, fact)
			}
		}
	}
	return c.grounds(facts)
}
