package bindery

import (
	"cmp"
	"slices"
	"strings"
	"unicode/utf8"

	"columnbowl/build/book"
	"columnbowl/site"
)

func (w *work) termEntry(t *book.Term, root string) site.IndexEntry {
	e := site.IndexEntry{Link: w.termLink(t.Index, root), Symbol: symbol(t.Symbol), First: firstSentence(t.Doc), Also: t.Also, Place: w.placeLink(t.Place, root)}
	e.UnitUS, e.UnitSI = unitsOf(&w.engine.Terms[t.Index])
	return e
}

func (w *work) partEntry(p *book.Part, root string) site.IndexEntry {
	return site.IndexEntry{Link: w.partLink(p.ID, root), Builds: p.Builds, Everywhere: len(p.Builds) == len(book.Builds), First: firstSentence(p.Doc), Also: p.Also, Place: w.placeLink(p.Place, root)}
}

func (w *work) placeLink(id, root string) site.Link {
	if w.book.PlaceByID[id] == nil {
		return site.Link{}
	}
	return site.Link{Name: w.placeName(id), URL: root + placePath(id)}
}

// termIndex fills the list of all terms.
func (w *work) termIndex() (any, error) {
	root := rootOf(termsPath)
	var entries []site.IndexEntry
	for _, t := range w.book.Terms {
		entries = append(entries, w.termEntry(t, root))
	}
	title := w.words["terms.title"]
	f := w.frame(stand{path: termsPath, title: title, nav: "terms", block: site.TitleBlock{Scope: bookScope}})
	return &site.TermIndex{Frame: f, GlossaryURL: root + glossaryPath, Count: len(entries), Groups: letters(entries)}, nil
}

// partIndex fills the list of all parts.
func (w *work) partIndex() (any, error) {
	root := rootOf(partsPath)
	var entries []site.IndexEntry
	for _, p := range w.book.Parts {
		entries = append(entries, w.partEntry(p, root))
	}
	title := w.words["parts.title"]
	f := w.frame(stand{path: partsPath, title: title, nav: "parts", block: site.TitleBlock{Scope: bookScope}})
	return &site.PartIndex{Frame: f, GlossaryURL: root + glossaryPath, Count: len(entries), Groups: letters(entries)}, nil
}

// letters groups a list under its first letters, in the order of the alphabet.
func letters(entries []site.IndexEntry) []site.IndexGroup {
	slices.SortStableFunc(entries, func(a, b site.IndexEntry) int {
		return cmp.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name))
	})
	var groups []site.IndexGroup
	for _, e := range entries {
		_, n := utf8.DecodeRuneInString(e.Name)
		letter := strings.ToUpper(e.Name[:n])
		if len(groups) == 0 || groups[len(groups)-1].Letter != letter {
			groups = append(groups, site.IndexGroup{Letter: letter})
		}
		last := &groups[len(groups)-1]
		last.Entries = append(last.Entries, e)
	}
	return groups
}
