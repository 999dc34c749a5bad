package bindery

import (
	"fmt"
	"strconv"
	"strings"

	"columnbowl/build/book"
	"columnbowl/calcwasm/formula"
	"columnbowl/site"
)

// Evidence is what stands outside the book: published values and what the
// engine gives for them. The bindery only shows it.
type Evidence struct{ Sources []Source }

// Source is one published work and the cases taken from it.
type Source struct {
	Title  string // the work, its table and page
	ReadIn string // where it was read
	Notes  []string
	Cases  []Case
}

// Case is one published value beside the one computed.
type Case struct {
	Name, Given         string
	Term                string  // its id
	Published, Computed string  // with units; Published with its tolerance
	Mark                string  // read, derived, from memory, common practice
	Apart               float64 // the difference in units of the source's rounding
	Note                string
}

// kinds of cases in the order in which they are told, by their marks.
var kinds = []struct{ mark, word string }{
	{"read", "published"}, {"derived", "arithmetic"}, {"from memory", "from memory"}, {"common practice", "common practice"},
	{"table", "table cells"}, {disagrees, "that disagree and are explained"},
}

// disagrees marks a published value that the book does not give.
const disagrees = "disagrees"

// tally counts cases by their marks and keeps the largest difference.
type tally struct {
	count   map[string]int
	largest float64
}

func (t *tally) add(c *Case) {
	if t.count == nil {
		t.count = map[string]int{}
	}
	t.count[c.Mark]++
	if c.Mark != disagrees {
		t.largest = max(t.largest, c.Apart)
	}
}

// String is “7 published, 4 arithmetic”.
func (t *tally) String() string {
	var parts []string
	for _, k := range kinds {
		if n := t.count[k.mark]; n > 0 {
			parts = append(parts, strconv.Itoa(n)+" "+k.word)
		}
	}
	return strings.Join(parts, ", ")
}

func apart(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }

func sourceID(i int) string { return "source-" + strconv.Itoa(i+1) }

// checks puts into a term's title block what its computation was compared with.
func (w *work) checks(block *site.TitleBlock, t *book.Term, root string) {
	if w.evidence == nil || w.engine.Terms[t.Index].Kind == formula.Choice {
		return
	}
	var all tally
	for i := range w.evidence.Sources {
		s := &w.evidence.Sources[i]
		var here tally
		for k := range s.Cases {
			if c := &s.Cases[k]; c.Term == t.ID {
				here.add(c)
				all.add(c)
			}
		}
		if len(here.count) > 0 {
			block.Checks = append(block.Checks, site.Check{Source: s.Title, URL: root + sourcesPath + "#" + sourceID(i), Cases: here.String(), Largest: apart(here.largest)})
		}
	}
	block.Checked = checkedWords(&all)
}

// checkedWords is the sentence below the table of checks.
func checkedWords(all *tally) string {
	switch {
	case len(all.count) == 0:
		return noCheckWords
	case all.count["read"] == 0:
		return fmt.Sprintf(noOutsideWords, all)
	}
	return fmt.Sprintf(checkedAgainst, all, apart(all.largest))
}

// sourcesView fills the page of sources.
func (w *work) sourcesView() (any, error) {
	title := w.words["sources.title"]
	page := &site.Sources{Frame: w.frame(stand{path: sourcesPath, title: title, nav: "sources", block: site.TitleBlock{Scope: bookScope}})}
	var all tally
	checked := map[string]bool{}
	for i := range w.evidence.Sources {
		page.Sources = append(page.Sources, w.sourceView(i, &all, checked))
	}
	page.Summary = fmt.Sprintf(allSources, &all, len(w.evidence.Sources), apart(all.largest))
	for _, t := range w.book.Terms {
		if !checked[t.ID] && w.engine.Terms[t.Index].Kind != formula.Choice {
			page.Unknown = append(page.Unknown, w.termLink(t.Index, ""))
		}
	}
	return page, nil
}

func (w *work) sourceView(i int, all *tally, checked map[string]bool) site.Source {
	s := &w.evidence.Sources[i]
	var here tally
	v := site.Source{ID: sourceID(i), Title: s.Title, ReadIn: s.ReadIn, Notes: s.Notes}
	for k := range s.Cases {
		c := &s.Cases[k]
		here.add(c)
		all.add(c)
		checked[c.Term] = checked[c.Term] || c.Mark == "read"
		row := site.CaseRow{Name: c.Name, Given: c.Given, Published: c.Published, Computed: c.Computed, Mark: c.Mark, Off: apart(c.Apart), Note: c.Note}
		if c.Mark == disagrees {
			row.Mark = disagreesWord
			v.Apart = append(v.Apart, row.Name+": "+row.Published+"; "+computedWord(row.Computed)+". "+c.Note)
		}
		if t := w.book.TermByID[c.Term]; t != nil {
			row.Term = w.termLink(t.Index, "")
		}
		v.Table = append(v.Table, row)
	}
	v.Cases, v.Largest = here.String(), apart(here.largest)
	return v
}

func computedWord(text string) string {
	if text == "" {
		return nothingComputed
	}
	return fmt.Sprintf(computedHere, text)
}
