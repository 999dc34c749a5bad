package proof

import (
	"slices"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// prose sees that each figure in the text of a chapter or of a question of the
// counter is one that the book computes: given or following in a worked example
// of the page or of a page that it links to, on the sheet of a family of bowls in
// them, or told by a block “behind”.
func (c *checker) prose() {
	byPage := map[*book.Page][]*reckon.Example{}
	for i := range c.book.Engine.Examples {
		ex := &c.book.Engine.Examples[i]
		page := c.book.Blocks[ex.Block].Page
		byPage[page] = append(byPage[page], ex)
	}
	cache := map[*book.Page][]ground{}
	of := func(p *book.Page) []ground {
		list, found := cache[p]
		if !found {
			for _, ex := range byPage[p] {
				if facts, ok := c.facts(ex); ok {
					list = append(list, c.grounds(facts)...)
				}
			}
			cache[p] = list
		}
		return list
	}
	for _, p := range c.told() {
		if p.Doc.Torn || c.left(p.File) {
			continue
		}
		own := of(p)
		behind, known := c.behind(p, byPage[p])
		grounds := slices.Concat(own, known)
		linked := c.linkedPages(p)
		stands := func(f *figure) bool {
			return slices.ContainsFunc(grounds, func(g ground) bool { return f.restsOn(&g) }) ||
				slices.ContainsFunc(linked, func(q *book.Page) bool {
					return slices.ContainsFunc(of(q), func(g ground) bool { return f.restsOn(&g) })
				})
		}
		c.figuresStand(p, textFigures(p), stands)
		c.figuresStand(p, behind, stands)
	}
}

// told are the pages whose figures are followed.
func (c *checker) told() []*book.Page {
	var list []*book.Page
	for _, ch := range c.book.Chapters {
		list = append(list, &ch.Page)
	}
	for _, a := range c.book.Asked {
		list = append(list, &a.Page)
	}
	return list
}

func (c *checker) figuresStand(p *book.Page, list []figure, stands func(*figure) bool) {
	for i := range list {
		f := &list[i]
		c.summary.Figures++
		if !stands(f) {
			c.at(p, markdown.Span{Off: f.off, Len: f.len}, "No worked example of this "+p.Kind.String()+", or of a page that it links to, gives "+f.text+". Put the number right, link to the page that has it, or tell in a block “behind” what it rests on.", "")
		}
	}
}

// linkedPages are the pages to which a page links in its text.
func (c *checker) linkedPages(p *book.Page) []*book.Page {
	var list []*book.Page
	for _, l := range p.Doc.Links {
		var q *book.Page
		switch l.Scheme {
		case markdown.ToTerm:
			if t := c.book.TermByID[l.ID]; t != nil {
				q = &t.Page
			}
		case markdown.ToChapter:
			if t := c.book.ChapterByID[l.ID]; t != nil {
				q = &t.Page
			}
		case markdown.ToAsked:
			if t := c.book.AskedByID[l.ID]; t != nil {
				q = &t.Page
			}
		}
		if q != nil && q != p && !slices.Contains(list, q) {
			list = append(list, q)
		}
	}
	return list
}

// grounds are all values that are given or follow from facts, and the figures of
// the family of bowls among them.
func (c *checker) grounds(facts []reckon.Fact) []ground {
	return c.groundsOf(c.book.Engine.Reckon(reckon.Question{Facts: facts, Want: -1, Plain: true}))
}

func (c *checker) groundsOf(r *reckon.Result) []ground {
	var list []ground
	for i := range r.Values {
		t := &c.book.Engine.Terms[i]
		switch {
		case !r.Known(i):
		case t.Kind == formula.Quantity:
			list = append(list, ground{t.Dim(), r.Values[i].Likely, t.US, t.SI})
		case t.ID == reckon.BowlTerm:
			list = append(list, c.familyGrounds(t.Values[int(r.Values[i].Likely)])...)
		}
	}
	return list
}

func (c *checker) familyGrounds(id string) []ground {
	var list []ground
	add := func(f reckon.Figure) {
		if f.Known() && f.Unit != nil {
			list = append(list, ground{f.Unit.Dim, f.SI, f.Unit, nil})
		}
	}
	for _, b := range c.book.Source.Bowls {
		if b.ID != id {
			continue
		}
		for _, field := range reckon.BowlFields() {
			add(b.Value(field.Name))
		}
		for _, p := range b.Points {
			add(p.Capacity)
			add(p.Head)
			add(p.Efficiency)
			add(p.NPSHRequired)
		}
	}
	return list
}
