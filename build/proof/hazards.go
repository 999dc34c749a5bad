package proof

import (
	"bytes"
	"slices"
	"strconv"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
)

// hazards sees that each hazard is named by some page, and that a page which
// speaks of one opens with its caution.
func (c *checker) hazards() {
	h := &c.book.Hazards
	named := map[string]bool{}
	for _, p := range c.book.Pages() {
		for _, id := range p.Hazards {
			named[id] = true
		}
		if p.Kind != book.ExercisePage && !p.Doc.Torn {
			c.unnamed(p)
		}
	}
	for i, x := range h.List {
		if !named[x.ID] {
			s := h.Where("hazards." + strconv.Itoa(i) + ".id")
			c.found.Add(book.HazardsFile, s.Off, s.Len, "No page names the hazard “"+x.ID+"”: name it where it can hurt somebody, or take it out.", "")
		}
	}
}

// fired sees that a page whose caution is a case of a hazard opens with it.
func (c *checker) fired() {
	for i := range c.book.Engine.Cautions {
		k := &c.book.Engine.Cautions[i]
		if k.Hazard == "" || c.leftBlock(k.Block) {
			continue
		}
		if ref := c.book.Blocks[k.Block]; !slices.Contains(ref.Page.Hazards, k.Hazard) {
			c.atHead(ref, "The caution is a case of “"+k.Hazard+"”, and its page does not open with that hazard: write into its title block", "hazards: ["+k.Hazard+"]")
		}
	}
}

// unnamed tells of words of a hazard on a page that does not name it.
func (c *checker) unnamed(p *book.Page) {
	low := lower(proseOf(p.Doc).text)
	for _, x := range c.book.Hazards.List {
		if slices.Contains(p.Hazards, x.ID) {
			continue
		}
		for _, w := range x.Words {
			if at := bytes.Index(low, []byte(w)); at >= 0 && standsAlone(low, at, at+len(w)) {
				c.at(p, markdown.Span{Off: at, Len: len(w)}, "This page speaks of “"+w+"” and does not open with the caution: write into its title block", "hazards: ["+x.ID+"]")
				break
			}
		}
	}
}
