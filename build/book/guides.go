package book

import (
	"columnbowl/build/report"
)

// Guide is a page for those who work with the book: authors and trainers.
type Guide struct {
	Page
	Says   string // whom it helps with what, in one sentence
	Source string
}

func newGuide(page Page, found *report.List) *Guide {
	g := &Guide{Page: page}
	fields := []field{
		{"name", true, text(&g.Name)},
		{"also", false, texts(&g.Also)},
		{"says", true, text(&g.Says)},
		{"source", false, text(&g.Source)},
	}
	g.titled = readYAML(g.File, g.Doc.Source, g.Doc.Title, "the title block of a guide", fields, found)
	return g
}

func (l *loading) guides() {
	byID := map[string]*Guide{}
	for _, g := range readAll(l, GuidePage, newGuide) {
		if have := byID[g.ID]; have != nil {
			l.twice(&g.Page, have.File)
			continue
		}
		byID[g.ID] = g
		l.book.Guides = append(l.book.Guides, g)
	}
}
