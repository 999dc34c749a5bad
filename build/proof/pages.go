package proof

import (
	"slices"
	"strconv"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/cutaway"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/picture"
	"columnbowl/calcwasm/reckon"
)

// page checks what can be seen on one page: its text, the names of its blocks
// and where its links go.
func (c *checker) page(p *book.Page) {
	if p.Doc.Title.Off > 0 && !slices.ContainsFunc(p.Doc.Pieces[:p.Doc.Lead()], func(s markdown.Piece) bool { return s.Kind == markdown.Paragraph }) {
		what := map[book.PageKind]string{
			book.TermPage:    "This term has no definition: a paragraph before the first block or heading says what it is, and from where to where it is measured.",
			book.PartPage:    "This part has no text: the first paragraph says what it does.",
			book.AskedPage:   "This question has no longer answer below its title block: say why the short one is right.",
			book.ChapterPage: "This chapter has no text before its first heading or block: say what it is about.",
			book.PairPage:    "This pair has no text: say below the title block how the words come to be confused, and how to keep them apart.",
			book.GuidePage:   "This guide has no text: say what it helps with.",
		}
		c.at(p, firstOf(p.Doc), what[p.Kind], "")
	}
	c.blockNames(p)
	c.pictures(p)
	for _, l := range p.Doc.Links {
		c.link(p, l)
	}
}

// pictures sees that there are the pictures that a text names.
func (c *checker) pictures(p *book.Page) {
	var names []string
	for _, k := range picture.Pictures {
		names = append(names, k.Name)
	}
	if c.book.Shapes != nil {
		for _, build := range book.Builds {
			for _, sheet := range cutaway.Sheets(build) {
				if !slices.Contains(names, sheet) {
					names = append(names, sheet)
				}
			}
		}
	}
	for _, b := range p.Doc.Blocks {
		for _, id := range b.Lit {
			if c.book.PartByID[id] == nil {
				c.at(p, markdown.Span{Off: b.At(true, strings.Index(b.Head, id)), Len: len(id)}, "There is no part “"+id+"”.", formula.Nearest(id, keys(c.book.PartByID)))
			}
		}
		if b.Kind == markdown.Picture && b.Name != "" && !slices.Contains(names, b.Name) {
			c.at(p, markdown.Span{Off: b.At(true, 0), Len: len(b.Name)}, "There is no picture “"+b.Name+"”. There are: "+strings.Join(names, ", ")+".", formula.Nearest(b.Name, names))
		}
	}
}

// firstOf is the place where the text begins, or the file's end.
func firstOf(d *markdown.Doc) markdown.Span {
	if len(d.Pieces) > 0 {
		return d.Pieces[0].Span
	}
	return markdown.Span{Off: len(d.Source)}
}

// blockNames sees that named blocks and examples can be told apart.
func (c *checker) blockNames(p *book.Page) {
	seen := map[string]bool{}
	for _, k := range p.Doc.Blocks {
		name, what := k.Head, "name"
		switch k.Kind {
		case markdown.Worked:
			what = "title"
			if name == "" {
				c.at(p, k.Span, "A worked example has a title, which stands behind the word “worked”.", "worked Quillbeck Orchard")
				continue
			}
		case markdown.Estimate, markdown.Mistake, markdown.Caution:
			if name, _, _ = strings.Cut(name, " "); strings.HasPrefix(k.Head, reckon.EachBowl) {
				name = reckon.EachBowl
			}
		default:
			continue
		}
		key := what + " " + strings.ToLower(name)
		if seen[key] && name != "" {
			c.at(p, markdown.Span{Off: k.At(true, 0), Len: len(name)}, "The "+what+" “"+name+"” stands on this page twice.", "")
		}
		seen[key] = true
	}
}

func (c *checker) link(p *book.Page, l *markdown.Link) {
	c.summary.Links++
	if l.Scheme == markdown.ToBuild || l.Scheme == markdown.ToTable || l.Scheme == markdown.ToPage {
		c.outside(p, l)
		return
	}
	goal := p
	if l.Scheme != markdown.Here {
		goal = c.goal(l.Scheme, l.ID)
	}
	if goal == nil {
		c.at(p, l.Span, "There is no "+string(l.Scheme)+" “"+l.ID+"”.", c.otherGoal(l))
		return
	}
	if l.Fragment == "" || l.Scheme == markdown.ToTrain && seedOf.MatchString(l.Fragment) {
		return
	}
	if l.Scheme == markdown.ToTrain {
		c.at(p, l.Span, "Behind the # of an exercise stands its sheet: seed=4711, or seed=4711&view=projector for a room.", "")
		return
	}
	ids := make([]string, len(goal.Doc.Headings))
	for i, h := range goal.Doc.Headings {
		ids[i] = h.ID
	}
	if !slices.Contains(ids, l.Fragment) {
		near := formula.Nearest(l.Fragment, ids)
		if near != "" {
			near = string(l.Scheme) + ":" + l.ID + "#" + near
			near = strings.TrimPrefix(near, ":")
		}
		c.at(p, l.Span, "“"+goal.Name+"” has no heading “"+l.Fragment+"”.", near)
	}
}

// goal is the page of an id, nil if there is none.
func (c *checker) goal(s markdown.Scheme, id string) *book.Page {
	switch s {
	case markdown.ToTerm:
		if t := c.book.TermByID[id]; t != nil {
			return &t.Page
		}
	case markdown.ToPart:
		if t := c.book.PartByID[id]; t != nil {
			return &t.Page
		}
	case markdown.ToChapter:
		if t := c.book.ChapterByID[id]; t != nil {
			return &t.Page
		}
	case markdown.ToAsked:
		if t := c.book.AskedByID[id]; t != nil {
			return &t.Page
		}
	case markdown.ToTrain, markdown.ToPair, markdown.ToGuide:
		return c.further(s, id)
	}
	return nil
}

// otherGoal is what a dead link may have meant: the same id as another kind of
// page, or the id most like it.
func (c *checker) otherGoal(l *markdown.Link) string {
	for _, s := range []markdown.Scheme{markdown.ToTerm, markdown.ToPart, markdown.ToChapter, markdown.ToAsked, markdown.ToTrain, markdown.ToPair, markdown.ToGuide} {
		if s != l.Scheme && c.goal(s, l.ID) != nil {
			return string(s) + ":" + l.ID
		}
	}
	ids := map[markdown.Scheme][]string{markdown.ToTrain: c.furtherIDs(markdown.ToTrain), markdown.ToPair: c.furtherIDs(markdown.ToPair), markdown.ToGuide: c.furtherIDs(markdown.ToGuide), markdown.ToTerm: keys(c.book.TermByID), markdown.ToPart: keys(c.book.PartByID), markdown.ToChapter: keys(c.book.ChapterByID), markdown.ToAsked: keys(c.book.AskedByID)}
	if near := formula.Nearest(l.ID, ids[l.Scheme]); near != "" {
		return string(l.Scheme) + ":" + near
	}
	return ""
}

// titles follows the names in the title blocks.
func (c *checker) titles() {
	terms, parts, places := keys(c.book.TermByID), keys(c.book.PartByID), c.placeIDs()
	for _, t := range c.book.Terms {
		c.named(&t.Page, "place", t.Place, "place of the handbook", places)
		c.namedAll(&t.Page, "confused", t.Confused, "term", terms)
	}
	for _, t := range c.book.Parts {
		c.named(&t.Page, "place", t.Place, "place of the handbook", places)
		c.namedAll(&t.Page, "confused", t.Confused, "part", parts)
		c.neighbours(t, parts)
	}
	for _, t := range c.book.Chapters {
		c.named(&t.Page, "place", t.Place, "place of the handbook", places)
	}
	for _, t := range c.book.Asked {
		c.named(&t.Page, "place", t.Place, "place of the handbook", places)
	}
}

// neighbours follows the names of the parts that touch a part, and sees that no
// other page puts the two the other way round. Parts that alternate in a stack
// (bowl, impeller, bowl) stand on both sides of each other.
func (c *checker) neighbours(p *book.Part, parts []string) {
	for side, where := range book.Sides {
		list := *p.Neighbours.Side(side)
		c.namedAll(&p.Page, "neighbours."+where, list, "part", parts)
		for i, id := range list {
			other, ok := c.book.PartByID[id]
			if !ok || id <= p.ID || slices.Contains(*p.Neighbours.Side(side ^ 1), id) || !slices.Contains(*other.Neighbours.Side(side), p.ID) {
				continue
			}
			at := p.Where("neighbours." + where + "." + strconv.Itoa(i))
			c.at(&p.Page, at, "“"+id+"” cannot be "+where+" this part: its own page says that this part is "+where+" it.", "")
		}
	}
}

func (c *checker) placeIDs() []string {
	var ids []string
	for _, p := range c.book.Handbook.Places {
		ids = append(ids, p.ID)
	}
	return ids
}

// named checks one id of a title block. An empty one has been told when the
// page was read.
func (c *checker) named(p *book.Page, field, id, what string, known []string) {
	if id == "" || known == nil {
		return
	}
	c.summary.Links++
	if !slices.Contains(known, id) {
		c.at(p, p.Where(field), "There is no "+what+" “"+id+"”.", formula.Nearest(id, known))
	}
}

func (c *checker) namedAll(p *book.Page, field string, ids []string, what string, known []string) {
	for i, id := range ids {
		at := field + "." + strconv.Itoa(i)
		switch {
		case id == p.ID:
			c.at(p, p.Where(at), "“"+id+"” is this very page.", "")
		case slices.Contains(ids[:i], id):
			c.at(p, p.Where(at), "“"+id+"” stands here twice.", "")
		default:
			c.named(p, at, id, what, known)
		}
	}
}
