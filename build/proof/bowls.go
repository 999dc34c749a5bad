package proof

import (
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/formula"
)

// bowlTables sees that each table of families is one that the bindery makes.
func (c *checker) bowlTables(p *book.Page) {
	kinds := []string{markdown.BowlSummary, markdown.BowlPoints}
	for _, b := range p.Doc.Blocks {
		ref := book.BlockRef{Page: p, Block: b}
		switch {
		case b.Kind != markdown.Bowls:
		case b.Head != markdown.BowlSummary && b.Head != markdown.BowlPoints:
			c.atHead(ref, "A block “bowls” shows a table of the families: write behind it which, bowls summary or bowls points.", formula.Nearest(b.Head, kinds))
		case strings.TrimSpace(b.Body) != "":
			c.atHead(ref, "The table of families is made from the files in bowls: nothing stands inside this block.", "")
		case len(c.book.Bowls) == 0:
			c.atHead(ref, "The book has no families of bowls: put a file into bowls, or leave this table out.", "")
		}
	}
}
