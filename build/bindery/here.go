package bindery

import (
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/site"
)

// wordsPerMinute is how fast a text of this kind is read with care (a careful
// reader of technical prose: common practice is 150 to 200).
const wordsPerMinute = 170

// minutes is how long a page takes to read, examples left aside: at least one.
func minutes(d *markdown.Doc) int {
	n := 0
	for i, p := range d.Pieces {
		if p.Kind != markdown.BlockPart {
			n += len(strings.Fields(d.PlainText(i)))
		}
	}
	return max(1, (n+wordsPerMinute/2)/wordsPerMinute)
}

// groupAnchor is the id of a group of the chain on its page.
func groupAnchor(i int) string { return "group-" + string(rune('1'+i)) }

// groupOf numbers the terms of the chain by their group.
func (w *work) groupOf() map[string]int {
	of := map[string]int{}
	for i, g := range w.book.Handbook.Chain {
		for _, id := range g.Terms {
			if _, seen := of[id]; !seen {
				of[id] = i
			}
		}
	}
	return of
}

// groupStrip is the chain in its groups, with the marked ones in ink. Nothing
// marked, no strip: the page has no place in the chain.
func (w *work) groupStrip(marked map[int]bool, root string) []site.ChainLink {
	if len(marked) == 0 {
		return nil
	}
	var list []site.ChainLink
	for i, g := range w.book.Handbook.Chain {
		list = append(list, site.ChainLink{Name: g.Name, URL: root + chainPath + "#" + groupAnchor(i), Here: marked[i]})
	}
	return list
}

// chapterStrip shows which stretch of the chain a chapter is about: the groups
// whose terms its text speaks of, without those that it only touches in passing.
func (w *work) chapterStrip(c *book.Chapter, root string) []site.ChainLink {
	of, count, most := w.groups, map[int]int{}, 0
	seen := map[string]bool{}
	for _, l := range c.Doc.Links {
		g, ok := of[l.ID]
		if l.Scheme != markdown.ToTerm || !ok || seen[l.ID] {
			continue
		}
		seen[l.ID] = true
		count[g]++
		most = max(most, count[g])
	}
	marked := map[int]bool{}
	for g, n := range count {
		if 3*n >= 2*most {
			marked[g] = true
		}
	}
	return w.groupStrip(marked, root)
}

// termStrip is the strip of a term: its neighbours on the spine, or, for a term
// beside the spine, the groups of the chain that it is in or that it leads to.
func (w *work) termStrip(t *book.Term, root string) []site.ChainLink {
	if list := w.chainStrip(t.Index, root); list != nil {
		return list
	}
	marked := map[int]bool{}
	// Outwards from the term, one step of relations at a time, until the chain is
	// reached: what stands nearest tells where one is.
	front, seen := []int{t.Index}, map[int]bool{t.Index: true}
	for len(front) > 0 && len(marked) == 0 {
		var next []int
		for _, i := range front {
			if g, ok := w.groups[w.book.Terms[i].ID]; ok {
				marked[g] = true
			}
			for _, u := range w.usedBy[i] {
				if !seen[u] {
					seen[u] = true
					next = append(next, u)
				}
			}
		}
		front = next
	}
	return w.groupStrip(marked, root)
}
