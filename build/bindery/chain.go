package bindery

import (
	"fmt"
	"slices"

	"columnbowl/build/book"
	"columnbowl/site"
)

// chainExample works out the facts that the page from well to wire opens with.
func (w *work) chainExample() (*example, error) {
	h := &w.book.Handbook
	return w.opened("chain", &book.Opening{Title: h.ChainTitle, Facts: h.ChainFacts, Want: h.ChainWant})
}

// findSpine is the longest way on which the last result of the chain hangs:
// from a fact in the well, each term following from the one before. It is found
// in the worked chain, so that another book has another spine.
func (w *work) findSpine() []int {
	length := map[int]int{}
	var measure func(t int) int
	measure = func(t int) int {
		if n, done := length[t]; done {
			return n
		}
		length[t] = 0 // a loop ends here
		longest := 0
		for _, f := range w.chain.result.Values[t].From {
			longest = max(longest, measure(f))
		}
		length[t] = longest + 1
		return longest + 1
	}
	end := w.spineEnd(measure)
	if end < 0 {
		return nil
	}
	spine := []int{end}
	for {
		last := spine[len(spine)-1]
		next := -1
		for _, f := range w.chain.result.Values[last].From {
			if !slices.Contains(spine, f) && (next < 0 || measure(f) > measure(next)) {
				next = f
			}
		}
		if next < 0 {
			slices.Reverse(spine)
			return spine
		}
		spine = append(spine, next)
	}
}

// spineEnd is the wanted term of the chain, or else the one with the longest way.
func (w *work) spineEnd(measure func(int) int) int {
	if w.chain.want >= 0 {
		return w.chain.want
	}
	end := -1
	for _, g := range w.book.Handbook.Chain {
		for _, id := range g.Terms {
			if t, ok := w.engine.Find(id); ok && measure(t) > 1 && (end < 0 || measure(t) > measure(end)) {
				end = t
			}
		}
	}
	return end
}

// hasChain says whether the book has a page from well to wire.
func (w *work) hasChain() bool { return len(w.book.Handbook.Chain) > 0 }

// chainView fills the page from well to wire.
func (w *work) chainView() (any, error) {
	h := &w.book.Handbook
	lead := chainNoFacts
	if len(h.ChainFacts) > 0 {
		lead = fmt.Sprintf(chainLead, w.chain.title)
	}
	f := w.frame(stand{path: chainPath, title: w.words["chain.title"], say: lead, nav: "chain",
		block: site.TitleBlock{Scope: chainScope, Facts: h.ChainTitle}})
	groups, err := w.sheetGroups("chain", h.Chain)
	if err != nil {
		return nil, err
	}
	return &site.Chain{Frame: f, Lead: paragraph(lead), Pictures: w.chainPictures(true), Details: w.chainPictures(false), Sheet: w.sheet(sheetID, w.chain, groups, "")}, nil
}
