package proof

import (
	"fmt"
	"slices"
	"strconv"

	"columnbowl/build/book"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// mostPlaces is how many places the rail has room for.
const mostPlaces = 11

// inHandbook tells an error at a value of handbook.yaml.
func (c *checker) inHandbook(field, message, suggest string, notes ...string) {
	s := c.book.Handbook.Where(field)
	c.found.Add(book.HandbookFile, s.Off, s.Len, message, suggest, notes...)
}

// handbook follows the names in handbook.yaml.
func (c *checker) handbook() {
	h := &c.book.Handbook
	if len(h.Places) > mostPlaces {
		c.inHandbook("places."+strconv.Itoa(mostPlaces), fmt.Sprintf("The rail has room for %d places.", mostPlaces), "")
	}
	ids := c.placeIDs()
	for i, id := range ids {
		if id != "" && slices.Contains(ids[:i], id) {
			c.inHandbook("places."+strconv.Itoa(i)+".id", "The place “"+id+"” stands here twice.", "")
		}
	}
	c.list("chapters", h.Chapters, "chapter", keys(c.book.ChapterByID), map[string]bool{})
	for _, ch := range c.book.Chapters {
		if len(h.Chapters) > 0 && !slices.Contains(h.Chapters, ch.ID) {
			c.at(&ch.Page, ch.Where(""), "This chapter is not in the order of the book: name “"+ch.ID+"” under chapters in "+book.HandbookFile+".", "")
		}
	}
	for _, s := range c.sheets() {
		c.sheetTerms(s)
	}
}

// sheet is a sheet that handbook.yaml opens, and the key that its values stand under.
type sheet struct {
	key string
	book.Opening
}

func (c *checker) sheets() []sheet {
	h := &c.book.Handbook
	return []sheet{{"chain", book.Opening{Groups: h.Chain, Title: h.ChainTitle, Facts: h.ChainFacts, Want: h.ChainWant}}, {"takeoff", h.TakeOff}, {"choice", h.Choice}}
}

// sheetTerms follows the names of terms of a sheet.
func (c *checker) sheetTerms(s sheet) {
	terms := keys(c.book.TermByID)
	seen := map[string]bool{}
	for i, g := range s.Groups {
		c.list(s.key+"."+strconv.Itoa(i)+".terms", g.Terms, "term", terms, seen)
	}
	for _, f := range s.Facts {
		if !slices.Contains(terms, f.Term) {
			c.inHandbook(s.key+"-facts."+f.Term+"#key", "There is no term “"+f.Term+"”.", formula.Nearest(f.Term, terms))
		}
	}
	if s.Want != "" && !slices.Contains(terms, s.Want) {
		c.inHandbook(s.key+"-want", "There is no term “"+s.Want+"”.", formula.Nearest(s.Want, terms))
	}
	c.desk(terms)
}

// desk follows the names of the enquiry sheet. What is asked, and what it looks
// for, must have a line there: a question without a line leads nowhere.
func (c *checker) desk(terms []string) {
	h := &c.book.Handbook
	onSheet := map[string]bool{}
	for i, g := range h.Desk {
		c.list("desk."+strconv.Itoa(i)+".terms", g.Terms, "term", terms, onSheet)
	}
	lines := slices.DeleteFunc(keys(onSheet), func(id string) bool { return !slices.Contains(terms, id) })
	for _, a := range h.DeskAsk {
		t := c.book.TermByID[a.Term]
		switch {
		case !onSheet[a.Term]:
			c.inHandbook("desk-ask."+a.Term+"#key", "“"+a.Term+"” is asked, but has no line in a group of desk.", formula.Nearest(a.Term, lines))
		case t != nil && t.Ask == "":
			c.inHandbook("desk-ask."+a.Term+"#key", "The page of “"+a.Term+"” has no question: write ask in its title block, or take it out of this list.", "")
		}
	}
	for i, q := range h.DeskWhat {
		at := "desk-what." + strconv.Itoa(i)
		c.list(at+".show", q.Show, "term", terms, map[string]bool{})
		c.list(at+".change", q.Change, "term", terms, map[string]bool{})
		c.whatIf(at, &q, terms)
	}
	if h.DeskWant != "" && !onSheet[h.DeskWant] {
		c.inHandbook("desk-want", "“"+h.DeskWant+"” has no line in a group of desk.", formula.Nearest(h.DeskWant, lines))
	}
}

// whatIf looks at what a prepared question changes: an amount or sizes that its
// terms take, and the page that says more.
func (c *checker) whatIf(at string, q *book.WhatIf, terms []string) {
	if (len(q.Change) > 0) != (q.By != "" || len(q.Sizes) > 0) {
		c.inHandbook(at+".ask", "A prepared question changes terms by an amount or to the next size: write change with by or sizes, or none of them.", "")
	}
	for _, id := range q.Change {
		t := c.book.TermByID[id]
		if t == nil {
			continue
		}
		if _, err := c.book.Engine.Read(t.Index, q.By); q.By != "" && err != nil {
			c.inHandbook(at+".by", err.Error(), "")
		}
		for k, size := range q.Sizes {
			if _, err := c.book.Engine.Read(t.Index, size); err != nil {
				c.inHandbook(at+".sizes."+strconv.Itoa(k), err.Error(), "")
			}
		}
	}
	if q.Page != "" && !slices.ContainsFunc(c.book.Asked, func(a *book.Asked) bool { return a.ID == q.Page }) {
		c.inHandbook(at+".page", "There is no question “"+q.Page+"”.", "")
	}
}

// list checks ids that must be known and stand once.
func (c *checker) list(field string, ids []string, what string, known []string, seen map[string]bool) {
	for i, id := range ids {
		if id == "" {
			continue
		}
		c.summary.Links++
		at := field + "." + strconv.Itoa(i)
		switch {
		case seen[id]:
			c.inHandbook(at, "“"+id+"” stands here twice.", "")
		case !slices.Contains(known, id):
			c.inHandbook(at, "There is no "+what+" “"+id+"”.", formula.Nearest(id, known))
		}
		seen[id] = true
	}
}

// openings sees that the facts with which the sheets of handbook.yaml open can
// be read and do not contradict each other.
func (c *checker) openings() {
	for _, s := range c.sheets() {
		c.opening(s)
	}
}

func (c *checker) opening(s sheet) {
	e := c.book.Engine
	q := reckon.Question{Want: -1}
	for _, f := range s.Facts {
		term, ok := e.Find(f.Term)
		if !ok {
			continue
		}
		fact, err := e.Read(term, f.Text)
		if err != nil {
			c.inHandbook(s.key+"-facts."+f.Term, err.Error(), "")
			continue
		}
		q.Facts = append(q.Facts, fact)
	}
	if len(q.Facts) == 0 {
		return
	}
	r := e.Reckon(q)
	for i := range r.Clashes {
		c.inHandbook(s.key+"-facts."+e.Terms[r.Clashes[i].Term].ID, "These facts contradict each other: "+r.ClashText(&r.Clashes[i], formula.US), "")
	}
}
