package proof

import (
	"slices"
	"strconv"

	"columnbowl/build/book"
	"columnbowl/calcwasm/formula"
)

// tables checks the tables of choices and faults: that what they name exists,
// and that each row leads to something. Conditions were parsed when the book
// was loaded.
func (c *checker) tables() {
	for _, t := range c.book.Tables {
		if t.Place != "" && !slices.Contains(c.placeIDs(), t.Place) {
			c.inTable(t, "place", "There is no place of the handbook “"+t.Place+"”.", formula.Nearest(t.Place, c.placeIDs()))
		}
		words := c.choiceWords(t)
		seen := map[string]bool{}
		for i := range t.Rows {
			r, at := &t.Rows[i], "rows."+strconv.Itoa(i)
			c.summary.Rows++
			if seen[r.ID] && r.ID != "" {
				c.inTable(t, at+".id", "The row “"+r.ID+"” stands in this table twice.", "")
			}
			seen[r.ID] = true
			c.row(t, r, at, words)
		}
		c.tableFacts(t)
	}
}

func (c *checker) inTable(t *book.Table, field, message, suggest string) {
	s := t.Where(field)
	c.found.Add(t.File, s.Off, s.Len, message, suggest)
}

// choiceWords are the words of the choice that a table weighs; nil for none.
func (c *checker) choiceWords(t *book.Table) []string {
	if t.Choice == "" {
		return nil
	}
	term := c.book.TermByID[t.Choice]
	switch {
	case term == nil:
		c.inTable(t, "choice", "There is no term “"+t.Choice+"”.", formula.Nearest(t.Choice, keys(c.book.TermByID)))
		return nil
	case term.KindWord != book.ChoiceOf:
		c.inTable(t, "choice", "“"+t.Choice+"” is no choice (kind: choice): a table weighs the words of a choice.", "")
		return nil
	}
	var words []string
	for _, v := range term.Values {
		words = append(words, v.ID)
	}
	return words
}

func (c *checker) row(t *book.Table, r *book.Row, at string, words []string) {
	for _, side := range []struct {
		key  string
		list []string
	}{{"for", r.For}, {"against", r.Against}} {
		for i, w := range side.list {
			field := at + "." + side.key + "." + strconv.Itoa(i)
			switch {
			case w == "" || words == nil && t.Choice != "": // told already
			case words == nil:
				c.inTable(t, field, "This table weighs no choice: name it under “choice” at the top, or write what follows under “then”.", "")
			case !slices.Contains(words, w):
				c.inTable(t, field, "“"+w+"” is no word of “"+t.Choice+"”.", formula.Nearest(w, words))
			case side.key == "against" && slices.Contains(r.For, w):
				c.inTable(t, field, "“"+w+"” stands on both sides: a row speaks for it or against it.", "")
			}
		}
	}
	switch {
	case len(r.For)+len(r.Against) == 0 && r.Then == "":
		c.inTable(t, at, "Nothing follows from this row: write for or against with words of the choice, or then.", "")
	case r.Decides && len(r.Against) == 0:
		c.inTable(t, at+".decides", "A row decides by ruling something out: write it under “against”.", "")
	}
	if t.Folder == book.FaultsFolder && r.Prove == "" {
		c.inTable(t, at, "A suspicion without a proof is a guess: write under “prove” how it is made sure.", "")
	}
	if r.Mark == "published" && r.Source == "" {
		c.inTable(t, at+".mark", "A published reason names its work under “source”. If you know it from memory, write mark: from memory.", "")
	}
}

// tableFacts checks the facts with which a table's sheet opens.
func (c *checker) tableFacts(t *book.Table) {
	for _, f := range t.Facts {
		term := c.book.TermByID[f.Term]
		if term == nil {
			c.inTable(t, "facts."+f.Term+"#key", "There is no term “"+f.Term+"”.", formula.Nearest(f.Term, keys(c.book.TermByID)))
			continue
		}
		if c.book.Engine == nil || f.Text == "" {
			continue
		}
		if _, err := c.book.Engine.Read(term.Index, f.Text); err != nil {
			c.inTable(t, "facts."+f.Term, err.Error(), "")
		}
	}
}
