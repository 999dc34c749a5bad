package bindery

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/reckon"
	"columnbowl/site"
)

// work is what all pages are made from. It is prepared once and then only read,
// by several goroutines.
type work struct {
	book   *book.Book
	engine *reckon.Book
	source *reckon.Source
	shells *site.Set
	words  map[string]string
	units  string // which number stands large: "us" or "si"
	loose  bool   // pages are made without their frame

	assets   *assets   // empty where pages have no frame
	evidence *Evidence // nil if the book was not compared
	cuts     *cuts     // nil if the book has no drawings
	practice *practice // nil if the book has no exercises
	wells    *wells    // nil where all of a page stands in it
	keep     *Keep     // nil keeps nothing

	shown func() (*work, error) // the book with the examples of its guides, loaded once; nil if it has no guides

	counted   map[string]map[string]float64 // by build and part, at the facts of the take-off
	countedAt string                        // the setting they are counted for

	examples map[*markdown.Block]*reckon.Example
	byTerm   [][]*reckon.Example // of each term's page, in its order
	cautions map[int][]int       // of each term: its cautions, as places in Engine.Cautions
	slips    map[int][]int       // of each term: its mistakes
	standsOn [][]int             // for each term what it is computed from
	usedBy   [][]int             // for each term what is computed from it
	parts    [][]string          // for each term the parts it speaks of
	about    map[string][]int    // for each part the terms that speak of it

	terms, partList []string // ids in the order of reading
	chapters        []string
	termsAt         placed
	partsAt         placed
	chaptersAt      placed
	chain           *example       // the facts of the page from well to wire
	spine           []int          // the links between well and wire, top to bottom
	groups          map[string]int // of each term of the chain its group
}

func prepare(b *book.Book, shells *site.Set) (*work, error) {
	words, err := site.Words()
	if err != nil {
		return nil, err
	}
	n := len(b.Terms)
	w := &work{assets: &assets{}, book: b, engine: b.Engine, source: b.Source, shells: shells, words: words, units: cmp.Or(b.Handbook.Units, "us"),
		examples: map[*markdown.Block]*reckon.Example{}, byTerm: make([][]*reckon.Example, n),
		cautions: map[int][]int{}, slips: map[int][]int{}, about: map[string][]int{},
		standsOn: make([][]int, n), usedBy: make([][]int, n), parts: make([][]string, n)}
	w.indexExamples()
	w.indexRules()
	w.indexParts()
	w.order()
	if w.chain, err = w.chainExample(); err != nil {
		return nil, err
	}
	w.spine = w.findSpine()
	w.groups = w.groupOf()
	return w, nil
}

func (w *work) indexExamples() {
	for i := range w.engine.Examples {
		ex := &w.engine.Examples[i]
		w.examples[w.book.Blocks[ex.Block].Block] = ex
		if ex.Home >= 0 {
			w.byTerm[ex.Home] = append(w.byTerm[ex.Home], ex)
		}
	}
	for i := range w.engine.Cautions {
		home := w.engine.Cautions[i].Home
		w.cautions[home] = append(w.cautions[home], i)
	}
	for i := range w.engine.Mistakes {
		home := w.engine.Mistakes[i].Home
		w.slips[home] = append(w.slips[home], i)
	}
}

// indexRules notes for each term what its relations compute it from.
func (w *work) indexRules() {
	for i := range w.engine.Rules {
		rule := &w.engine.Rules[i]
		if rule.Relation == nil || rule.Target < 0 {
			continue
		}
		for _, t := range rule.Relation.Right.Terms() {
			if t != rule.Target && !slices.Contains(w.standsOn[rule.Target], t) {
				w.standsOn[rule.Target] = append(w.standsOn[rule.Target], t)
				w.usedBy[t] = append(w.usedBy[t], rule.Target)
			}
		}
	}
}

// indexParts notes which terms and parts speak of each other.
func (w *work) indexParts() {
	for _, t := range w.book.Terms {
		for _, l := range t.Doc.Links {
			if l.Scheme == markdown.ToPart && !slices.Contains(w.parts[t.Index], l.ID) {
				w.parts[t.Index] = append(w.parts[t.Index], l.ID)
				w.about[l.ID] = append(w.about[l.ID], t.Index)
			}
		}
	}
}

// order finds the order of reading: along the chain first, then down the rail.
func (w *work) order() {
	rank := map[string]int{}
	for _, g := range w.book.Handbook.Chain {
		for _, id := range g.Terms {
			if _, seen := rank[id]; !seen {
				rank[id] = len(rank) - len(w.book.Terms)
			}
		}
	}
	depth := map[string]int{}
	for i, p := range w.book.Handbook.Places {
		depth[p.ID] = i
	}
	for _, t := range w.book.Terms {
		w.terms = append(w.terms, t.ID)
	}
	slices.SortStableFunc(w.terms, func(a, b string) int {
		return cmp.Or(cmp.Compare(rank[a], rank[b]), cmp.Compare(depth[w.book.TermByID[a].Place], depth[w.book.TermByID[b].Place]))
	})
	for _, p := range w.book.Parts {
		w.partList = append(w.partList, p.ID)
	}
	slices.SortStableFunc(w.partList, func(a, b string) int {
		return cmp.Compare(depth[w.book.PartByID[a].Place], depth[w.book.PartByID[b].Place])
	})
	w.sortByPlace()
}

// firstSentence is the beginning of a page's text, for lists.
func firstSentence(d *markdown.Doc) string {
	if d.Lead() == 0 {
		return ""
	}
	text := strings.Join(strings.Fields(d.PlainText(0)), " ")
	for i := 0; i < len(text); i++ {
		if text[i] != '.' && text[i] != '?' {
			continue
		}
		rest := text[i+1:]
		next, _ := utf8.DecodeRuneInString(strings.TrimLeft(rest, " "))
		if rest == "" || rest[0] == ' ' && unicode.IsUpper(next) {
			return text[:i+1]
		}
	}
	return text
}
