// Package proof checks a loaded book: every number is computed again, every
// form of a formula compared with its partner, every link and name followed. A
// book that fails must not be published.
//
// All that is wrong is told in one run. What can be wrong only because of
// another error (an example whose formula could not be read) is left untold.
package proof

import (
	"fmt"
	"slices"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/build/report"
)

// Summary counts what has been checked.
type Summary struct {
	Terms, Parts, Chapters int
	Asked                  int // questions of the counter
	Relations              int // formulas and estimates
	Partners               int // relations compared with their SI form
	Assumptions            int
	Examples               int
	Numbers                int // expected values computed again
	Figures                int // numbers with a unit in the text of chapters, questions and tables
	Mistakes, Cautions     int
	Links                  int // of the text and of the title blocks
	Exercises              int // drawn for many seeds
	Rows                   int // of the tables of choices and faults
	Shown                  int // examples of the guides, compiled with the book

	// Published is a line on the published values that were compared; empty if
	// none were at hand. Summary.Outside fills it.
	Published string

	// Notes are worth knowing and stop nothing: terms that no formula computes, and
	// terms that no published value checks.
	Notes report.List
}

func (s *Summary) String() string {
	parts := []string{
		count(s.Terms, "term"), count(s.Parts, "part"), count(s.Chapters, "chapter"), count(s.Asked, "question"), count(s.Relations, "relation"),
		fmt.Sprintf("%d of them in two systems of units", s.Partners), count(s.Assumptions, "assumption"),
		count(s.Examples, "worked example") + " with " + count(s.Numbers, "number") + " computed again",
		count(s.Mistakes, "mistake"), count(s.Cautions, "caution"), count(s.Links, "link"),
	}
	if s.Figures > 0 {
		parts = append(parts, count(s.Figures, "figure")+" in the text of chapters, questions and tables followed to what they rest on")
	}
	if s.Exercises > 0 {
		parts = append(parts, count(s.Exercises, "exercise")+fmt.Sprintf(" drawn for %d seeds", seeds))
	}
	if s.Rows > 0 {
		parts = append(parts, count(s.Rows, "row")+" of choices and faults")
	}
	if s.Shown > 0 {
		parts = append(parts, count(s.Shown, "example")+" of the guides compiled")
	}
	return strings.Join(parts, ", ")
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// checker is one run over a book.
type checker struct {
	book    *book.Book
	found   report.List
	summary Summary
	only    map[string]bool // the files that are checked; nil for all
	stop    func() bool     // whether the run is no longer wanted; nil: it is
	running []string        // see runningNames

	lowNames    []string            // the names of all terms in small letters
	longerNames map[string][]string // see longer
}

// left says whether a file is left out of this run.
func (c *checker) left(file string) bool {
	return c.only != nil && !c.only[file] || c.stop != nil && c.stop()
}

// leftBlock says whether the page of a block is left out.
func (c *checker) leftBlock(block int) bool { return c.left(c.book.Blocks[block].Page.File) }

// Check checks a book that has been loaded, also one whose loading told of
// errors. The list is placed and holds errors only; those of the loading are
// not in it.
func Check(b *book.Book) (report.List, Summary) { return (&checker{book: b}).whole() }

// CheckUnless is Check, for runs that may become useless on the way: it ends
// soon after stop says so, and then reports false. What it has found is not
// worth telling then.
func CheckUnless(b *book.Book, stop func() bool) (report.List, Summary, bool) {
	found, summary := (&checker{book: b, stop: stop}).whole()
	return found, summary, !stop()
}

// CheckFiles checks at once what an author who has changed some files wants to
// know first: their links, names and numbers, and that all lists of the book
// still lead somewhere. What their change does to the numbers of other pages,
// and the spelling, is left to Check.
func CheckFiles(b *book.Book, files map[string]bool) report.List {
	c := &checker{book: b, only: files}
	for _, p := range slices.Concat(b.Pages(), b.FurtherPages()) {
		if !c.left(p.File) {
			c.page(p)
			c.bowlTables(p)
		}
	}
	c.handbook()
	c.titles()
	c.pairs()
	c.builds()
	c.tables()
	c.words()
	if b.Engine != nil {
		c.examples()
		c.tableProse()
		c.mistakes()
		c.partners()
		c.alone()
		// To make the exercises ready is dear: only for those who have changed one.
		if slices.ContainsFunc(b.Exercises, func(e *book.Exercise) bool { return files[e.File] }) {
			c.exercises()
		}
	}
	return c.found.Place(b.Files)
}

// whole is a run over all that the checker does not leave out.
func (c *checker) whole() (report.List, Summary) {
	b := c.book
	c.summary.Terms, c.summary.Parts, c.summary.Chapters = len(b.Terms), len(b.Parts), len(b.Chapters)
	c.summary.Asked = len(b.Asked)
	c.handbook()
	for _, p := range slices.Concat(b.Pages(), b.FurtherPages()) {
		c.page(p)
		c.bowlTables(p)
	}
	c.titles()
	c.pairs()
	c.builds()
	c.tables()
	c.words()
	c.texts()
	c.hazards()
	if b.Engine != nil {
		c.fired()
		c.counts()
		c.examples()
		c.prose()
		c.tableProse()
		c.mistakes()
		c.partners()
		c.openings()
		c.alone()
		c.exercises()
	}
	if c.book.Assembly != nil {
		c.sums()
	}
	c.guides()
	c.summary.Notes = c.summary.Notes.Place(b.Files)
	return c.found.Place(b.Files), c.summary
}

// at tells an error at a stretch of a page.
func (c *checker) at(p *book.Page, s markdown.Span, message, suggest string, notes ...string) {
	c.found.Add(p.File, s.Off, s.Len, message, suggest, notes...)
}

// inBlock tells an error at a stretch of a block's body.
func (c *checker) inBlock(block, off, length int, message, suggest string, notes ...string) {
	ref := c.book.Blocks[block]
	from := ref.Block.At(false, off)
	to := max(ref.Block.At(false, off+length), from)
	c.at(ref.Page, markdown.Span{Off: from, Len: to - from}, message, suggest, notes...)
}

// atHead tells an error at a block as a whole: at its head, or at its kind when
// the head is empty.
func (c *checker) atHead(ref book.BlockRef, message, suggest string, notes ...string) {
	s := ref.Block.Span
	if ref.Block.Head != "" {
		s = markdown.Span{Off: ref.Block.At(true, 0), Len: len(ref.Block.Head)}
	}
	c.at(ref.Page, s, message, suggest, notes...)
}

func (c *checker) counts() {
	e := c.book.Engine
	for i := range e.Rules {
		if e.Rules[i].Relation == nil {
			c.summary.Assumptions++
		} else {
			c.summary.Relations++
		}
	}
	c.summary.Mistakes, c.summary.Cautions = len(e.Mistakes), len(e.Cautions)
}

// quoted lists ids for a sentence.
func quoted(ids []string) string {
	words := make([]string, len(ids))
	for i, id := range ids {
		words[i] = "“" + id + "”"
	}
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

func keys[T any](m map[string]T) []string {
	list := make([]string, 0, len(m))
	for k := range m {
		list = append(list, k)
	}
	slices.Sort(list)
	return list
}
