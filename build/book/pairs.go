package book

import (
	"slices"
	"strings"

	"columnbowl/build/markdown"
	"columnbowl/build/report"
)

// Pair is the page of two or more words that are easily confused: they stand
// side by side there, with what tells them apart.
type Pair struct {
	Page
	Place   string // id of the place on the rail
	Between []Goal // in the order in which they stand beside each other
	Apart   string // in one sentence what tells them apart
	Source  string
}

// Goal is a term or a part, as links of the text name them.
type Goal struct {
	Scheme markdown.Scheme // markdown.ToTerm or markdown.ToPart
	ID     string
}

// Has says whether a term or a part is one of the pair.
func (p *Pair) Has(s markdown.Scheme, id string) bool {
	return slices.Contains(p.Between, Goal{s, id})
}

func newPair(page Page, found *report.List) *Pair {
	p := &Pair{Page: page}
	var between []string
	fields := []field{
		{"name", true, text(&p.Name)},
		{"also", false, texts(&p.Also)},
		{"between", true, texts(&between)},
		{"place", true, text(&p.Place)},
		{"apart", true, text(&p.Apart)},
		{"source", false, text(&p.Source)},
	}
	p.titled = readYAML(p.File, p.Doc.Source, p.Doc.Title, "the title block of a pair", fields, found)
	for i, word := range between {
		scheme, id, _ := strings.Cut(word, ":")
		g := Goal{markdown.Scheme(scheme), id}
		if word != "" && (g.Scheme != markdown.ToTerm && g.Scheme != markdown.ToPart || id == "") {
			s := p.Where(item("between", i))
			found.Add(p.File, s.Off, s.Len, "A pair stands between terms and parts: write term:… or part:…, not “"+word+"”.", "")
			g = Goal{} // keeps the place, so that the others are told at theirs
		}
		p.Between = append(p.Between, g)
	}
	if s, ok := p.at["between"]; ok && len(between) < 2 {
		found.Add(p.File, s.Off, s.Len, "A pair needs two words at least that are taken for each other.", "")
	}
	return p
}

func (l *loading) pairs() {
	byID := map[string]*Pair{}
	for _, p := range readAll(l, PairPage, newPair) {
		if have := byID[p.ID]; have != nil {
			l.twice(&p.Page, have.File)
			continue
		}
		byID[p.ID] = p
		l.book.Pairs = append(l.book.Pairs, p)
	}
}
