package book

import (
	"slices"
	"strings"
)

// names compares what pages are called. A name belongs to one page of its kind;
// a further word (“also”) may be shared, and is noted for the search.
func (l *loading) names() {
	owners := map[string][]string{} // word -> ids, terms before parts
	add := func(p *Page, word string) {
		key := strings.ToLower(word)
		if key != "" && !slices.Contains(owners[key], p.ID) {
			owners[key] = append(owners[key], p.ID)
		}
	}
	for _, list := range [][]*Page{l.termPages(), l.partPages(), l.chapterPages(), l.askedPages(), l.pairPages(), l.guidePages()} {
		byName := map[string]*Page{}
		for _, p := range list {
			l.name(byName, p)
			if p.Kind != TermPage && p.Kind != PartPage {
				continue
			}
			add(p, p.Name)
			for _, w := range p.Also {
				add(p, w)
			}
		}
	}
	for word, ids := range owners {
		if len(ids) > 1 {
			l.book.Shared[word] = ids
		}
	}
}

func (l *loading) name(byName map[string]*Page, p *Page) {
	key := strings.ToLower(p.Name)
	if have := byName[key]; have != nil && key != "" {
		s := p.Where("name")
		l.found.Add(p.File, s.Off, s.Len, "The name “"+p.Name+"” is taken by "+have.File+". Two pages may share a word only under “also”.", "")
	} else {
		byName[key] = p
	}
	for i, w := range p.Also {
		s := p.Where(item("also", i))
		switch {
		case w == "":
		case strings.EqualFold(w, p.Name):
			l.found.Add(p.File, s.Off, s.Len, "“"+w+"” is the name itself; “also” lists other words.", "")
		case slices.ContainsFunc(p.Also[:i], func(v string) bool { return strings.EqualFold(v, w) }):
			l.found.Add(p.File, s.Off, s.Len, "“"+w+"” stands twice under “also”.", "")
		}
	}
}

func (l *loading) termPages() []*Page {
	list := make([]*Page, len(l.book.Terms))
	for i, t := range l.book.Terms {
		list[i] = &t.Page
	}
	return list
}

func (l *loading) partPages() []*Page {
	list := make([]*Page, len(l.book.Parts))
	for i, t := range l.book.Parts {
		list[i] = &t.Page
	}
	return list
}

func (l *loading) chapterPages() []*Page {
	list := make([]*Page, len(l.book.Chapters))
	for i, t := range l.book.Chapters {
		list[i] = &t.Page
	}
	return list
}

func (l *loading) askedPages() []*Page {
	list := make([]*Page, len(l.book.Asked))
	for i, a := range l.book.Asked {
		list[i] = &a.Page
	}
	return list
}

func (l *loading) pairPages() []*Page {
	list := make([]*Page, len(l.book.Pairs))
	for i, t := range l.book.Pairs {
		list[i] = &t.Page
	}
	return list
}

func (l *loading) guidePages() []*Page {
	list := make([]*Page, len(l.book.Guides))
	for i, t := range l.book.Guides {
		list[i] = &t.Page
	}
	return list
}

// FurtherPages lists the pairs and the guides: they are checked as the others
// are, but the search does not lead to them.
func (b *Book) FurtherPages() []*Page {
	l := loading{book: b}
	return slices.Concat(l.pairPages(), l.guidePages())
}

// Pages lists all pages: terms, parts, chapters, questions.
func (b *Book) Pages() []*Page {
	l := loading{book: b}
	return slices.Concat(l.termPages(), l.partPages(), l.chapterPages(), l.askedPages())
}
