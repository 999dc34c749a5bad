package proof

import (
	"columnbowl/build/report"
	"columnbowl/calcwasm/reckon"
)

// alone looks for terms that nothing is done with, and notes those that no
// formula computes.
func (c *checker) alone() {
	e := c.book.Engine
	used, computed := make([]bool, len(e.Terms)), make([]bool, len(e.Terms))
	for i := range e.Rules {
		c.takesPart(&e.Rules[i], used, computed)
	}
	for i := range e.Examples {
		for _, a := range e.Examples[i].Given {
			used[a.Term] = true
		}
	}
	for i := range e.Rows {
		mark(used, e.Rows[i].When.Terms())
	}
	for i, t := range c.book.Terms {
		s := t.Where("")
		switch {
		case !used[i] && c.book.Whole:
			c.found.Add(t.File, s.Off, s.Len, "Nothing is done with “"+t.ID+"”: it stands in no relation and in no table of choices, and no worked example gives it.", "")
		case !computed[i]:
			c.summary.Notes = append(c.summary.Notes, report.Diagnostic{Severity: report.Info, File: t.File, Off: s.Off, Len: s.Len,
				Message: "No formula computes “" + t.ID + "”: it can only be given."})
		}
	}
}

func (c *checker) takesPart(rule *reckon.Rule, used, computed []bool) {
	if rule.When != nil {
		mark(used, rule.When.Terms())
	}
	if rule.Target >= 0 {
		used[rule.Target], computed[rule.Target] = true, true
	}
	if rule.Relation == nil {
		return
	}
	terms := rule.Relation.Terms()
	mark(used, terms)
	if rule.Strength == reckon.Identity && !rule.Relation.OneWay() {
		mark(computed, terms)
	}
}

func mark(list []bool, terms []int) {
	for _, t := range terms {
		list[t] = true
	}
}
