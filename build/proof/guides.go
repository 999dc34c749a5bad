package proof

import (
	"regexp"
	"slices"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/cutaway"
	"columnbowl/calcwasm/formula"
)

// guides compiles the examples of the guides with the book, as if they were
// files of it, and checks them as those are checked. What an example breaks
// elsewhere is told in no guide: each is meant to stand beside the book.
func (c *checker) guides() {
	for _, g := range c.book.Guides {
		for _, b := range g.Doc.Blocks {
			if b.Kind == markdown.Show && !slices.Contains(markdown.Shown, b.Head) {
				c.atHead(book.BlockRef{Page: &g.Page, Block: b}, "A block “show” says in what it is written: "+orList(markdown.Shown)+".", formula.Nearest(b.Head, markdown.Shown))
			}
		}
	}
	with, found := c.book.WithExamples()
	if with == nil {
		return
	}
	e := &checker{book: with, only: map[string]bool{}, stop: c.stop}
	for _, example := range c.book.Examples() {
		e.only[example.File] = true
		c.summary.Shown++
	}
	for _, p := range append(with.Pages(), with.FurtherPages()...) {
		if !e.left(p.File) {
			e.page(p)
			e.bowlTables(p)
		}
	}
	e.titles()
	e.pairs()
	e.builds()
	if with.Engine != nil {
		e.examples()
		e.mistakes()
		e.partners()
		e.alone()
		e.exercises()
	}
	if with.Assembly != nil {
		e.sums()
	}
	c.found = append(c.found, append(found, c.book.InGuides(e.found)...)...)
}

func orList(words []string) string {
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}

// seedOf is what stands behind the # of an exercise.
var seedOf = regexp.MustCompile(`^seed=\d{1,19}(&view=projector)?$`)

// further is the page of an exercise, a pair or a guide, nil if there is none.
func (c *checker) further(s markdown.Scheme, id string) *book.Page {
	for _, p := range c.furtherPages(s) {
		if p.ID == id {
			return p
		}
	}
	return nil
}

func (c *checker) furtherIDs(s markdown.Scheme) []string {
	var ids []string
	for _, p := range c.furtherPages(s) {
		ids = append(ids, p.ID)
	}
	return ids
}

func (c *checker) furtherPages(s markdown.Scheme) []*book.Page {
	var list []*book.Page
	switch s {
	case markdown.ToTrain:
		for _, e := range c.book.Exercises {
			list = append(list, &e.Page)
		}
	case markdown.ToPair:
		for _, e := range c.book.Pairs {
			list = append(list, &e.Page)
		}
	case markdown.ToGuide:
		for _, e := range c.book.Guides {
			list = append(list, &e.Page)
		}
	}
	return list
}

// outside follows a link to a page that is made of no file of its own.
func (c *checker) outside(p *book.Page, l *markdown.Link) {
	known, what := c.onePages(), "page"
	switch l.Scheme {
	case markdown.ToBuild:
		known, what = book.Builds, "build"
		if c.book.Shapes == nil {
			known = nil
		}
	case markdown.ToTable:
		known, what = nil, "table of choices or faults"
		for _, t := range c.book.Tables {
			known = append(known, t.ID)
		}
	}
	if !slices.Contains(known, l.ID) {
		near := formula.Nearest(l.ID, known)
		if near != "" {
			near = string(l.Scheme) + ":" + near
		}
		c.at(p, l.Span, "There is no "+what+" “"+l.ID+"” in this book.", near)
		return
	}
	if l.Fragment == "" {
		return
	}
	var sheets []string
	if l.Scheme == markdown.ToBuild {
		sheets = cutaway.Sheets(l.ID)
	}
	if !slices.Contains(sheets, l.Fragment) {
		near := formula.Nearest(l.Fragment, sheets)
		if near != "" {
			near = string(l.Scheme) + ":" + l.ID + "#" + near
		}
		c.at(p, l.Span, "The "+what+" “"+l.ID+"” has no place “"+l.Fragment+"” that a link can lead to.", near)
	}
}

// onePages are the pages that this book has once.
func (c *checker) onePages() []string {
	b, h := c.book, &c.book.Handbook
	has := map[string]bool{"well-to-wire": len(h.Chain) > 0, "desk": len(h.Desk) > 0, "bowls": len(h.Choice.Groups) > 0, "take-off": len(h.TakeOff.Groups) > 0, "builds": b.Shapes != nil,
		"questions": len(b.Asked) > 0, "practice": len(b.Exercises) > 0, "cards": len(b.Exercises) > 0, "progress": len(b.Exercises) > 0, "pairs": len(b.Pairs) > 0}
	return slices.DeleteFunc(slices.Clone(markdown.Pages), func(name string) bool {
		there, conditional := has[name]
		return conditional && !there
	})
}
