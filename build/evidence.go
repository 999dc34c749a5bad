package main

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"columnbowl/build/bindery"
	"columnbowl/build/published"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// evidence is the published values and what came out, in the form in which the
// bindery shows them; nil if the book was not compared.
func evidence(b *reckon.Book, outcomes []published.Outcome) *bindery.Evidence {
	if len(outcomes) == 0 {
		return nil
	}
	e := &bindery.Evidence{}
	var file *published.File
	for i := range outcomes {
		o := &outcomes[i]
		c := o.Case
		if c.File != file {
			file = c.File
			e.Sources = append(e.Sources, bindery.Source{Title: sentence(file.Source), ReadIn: file.ReadIn, Notes: sentences(file.Notes)})
		}
		s := &e.Sources[len(e.Sources)-1]
		s.Cases = append(s.Cases, bindery.Case{Name: c.Name, Given: given(b, c), Term: b.Terms[c.Term].ID, Published: c.ExpectText + " ± " + c.ToleranceText,
			Computed: inUnitOf(b, c, o.Value), Mark: c.Mark.String(), Apart: o.Deviation, Note: c.Note})
	}
	return e
}

// given is the facts of a case with the names of their terms.
func given(b *reckon.Book, c *published.Case) string {
	parts := make([]string, 0, len(c.Facts)+len(c.Choose))
	for _, f := range c.Facts {
		parts = append(parts, b.Terms[f.Term].Name+" "+f.Text)
	}
	for _, f := range c.Choose {
		parts = append(parts, b.Terms[f.Term].Name+" by the estimate "+f.Text)
	}
	return strings.Join(parts, "; ")
}

// inUnitOf writes a computed value in the unit of the published one, with seven
// digits: enough to see how near the two are.
func inUnitOf(b *reckon.Book, c *published.Case, v float64) string {
	if v != v {
		return "" // a row that disagrees because the book refuses
	}
	_, symbol, _ := strings.Cut(c.ExpectText, " ")
	u, ok := unit.Lookup(strings.TrimSpace(symbol))
	if !ok || u.Dim != b.Terms[c.Term].US.Dim {
		return b.Format(c.Term, v, formula.US)
	}
	return strings.TrimSpace(strconv.FormatFloat(u.FromSI(v), 'g', 7, 64) + " " + u.Print)
}

// sentence begins a text with a capital: the comment lines of a file of cases do not.
func sentence(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(r)) + text[n:]
}

func sentences(texts []string) []string {
	list := make([]string, len(texts))
	for i, t := range texts {
		list[i] = sentence(t)
	}
	return list
}
