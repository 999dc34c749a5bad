package proof

import (
	"slices"
	"strconv"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/formula"
)

// pairs follows the words that the pairs stand between. At least one of the
// words must name another under “confused”: what is shown side by side is said
// on the pages of the words too.
func (c *checker) pairs() {
	known := map[markdown.Scheme][]string{markdown.ToTerm: keys(c.book.TermByID), markdown.ToPart: keys(c.book.PartByID)}
	for _, p := range c.book.Pairs {
		c.named(&p.Page, "place", p.Place, "place of the handbook", c.placeIDs())
		sound := true
		for i, g := range p.Between {
			if g == (book.Goal{}) { // told when it was read
				sound = false
				continue
			}
			c.summary.Links++
			at := p.Where("between." + strconv.Itoa(i))
			switch {
			case c.goal(g.Scheme, g.ID) == nil:
				near := formula.Nearest(g.ID, known[g.Scheme])
				if near != "" {
					near = string(g.Scheme) + ":" + near
				}
				c.at(&p.Page, at, "There is no "+string(g.Scheme)+" “"+g.ID+"”.", near)
				sound = false
			case slices.Contains(p.Between[:i], g):
				c.at(&p.Page, at, "“"+g.ID+"” stands here twice.", "")
				sound = false
			}
		}
		if sound && len(p.Between) > 1 && !c.confuses(p.Between) {
			c.at(&p.Page, p.Where("between"), "None of these pages names another of them under “confused”, so no way leads here: name one there.", "")
		}
	}
}

// confuses says whether a page of the list names another one as confused.
func (c *checker) confuses(list []book.Goal) bool {
	for _, g := range list {
		var named []string
		if t := c.book.TermByID[g.ID]; t != nil && g.Scheme == markdown.ToTerm {
			named = t.Confused
		} else if p := c.book.PartByID[g.ID]; p != nil {
			named = p.Confused
		}
		for _, other := range list {
			if other.Scheme == g.Scheme && slices.Contains(named, other.ID) {
				return true
			}
		}
	}
	return false
}
