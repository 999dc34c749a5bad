package bindery

import (
	"cmp"
	"fmt"
	"html/template"
	"slices"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/answer"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/site"
)

// termView fills the page of a term.
func (w *work) termView(t *book.Term) (any, error) {
	path, term := termPath(t.ID), &w.engine.Terms[t.Index]
	root := rootOf(path)
	examples, err := w.reckonedOf(t.Index)
	if err != nil {
		return nil, err
	}
	main := w.mainExample(t, examples)
	v := &site.Term{
		Frame: w.termFrame(t, main), ID: t.ID, Name: t.Name, Symbol: symbol(t.Symbol), UnitUS: longUnit(term.US), UnitSI: longUnit(term.SI),
		Also: t.Also, Relations: w.relations(t.Index), Figures: w.termFigures(t.ID), Chain: w.termStrip(t, root), Pairs: w.pairsOf(markdown.ToTerm, t.ID, root),
		Cautions: w.cautionsOf(t.Index, main.result), Sources: sources(t.Source),
		StandsOn: w.termLinks(w.standsOn[t.Index], root), UsedBy: w.termLinks(w.usedBy[t.Index], root),
	}
	if v.Definition, err = w.pieces(t.Doc, root, 0, t.Doc.Lead()); err != nil {
		return nil, err
	}
	if v.Body, err = w.pieces(t.Doc, root, t.Doc.Lead(), len(t.Doc.Pieces)); err != nil {
		return nil, err
	}
	for i, id := range term.Values {
		v.Values = append(v.Values, site.Choice{ID: id, Name: term.Labels[i]})
	}
	v.Sheet = w.sheet(sheetID, main, []group{{terms: w.termRows(t.Index, main)}}, root)
	if w.hasChain() {
		v.Sheet.Carry = root + chainPath
	}
	for _, e := range examples {
		v.Worked = append(v.Worked, w.worked(e, sheetID, root))
	}
	if v.Slips, err = w.slipsOf(t.Index, examples); err != nil {
		return nil, err
	}
	for _, id := range t.Confused {
		v.Confused = append(v.Confused, w.confusedTerm(id, root))
	}
	for _, id := range w.parts[t.Index] {
		v.Parts = append(v.Parts, w.partLink(id, root))
	}
	return v, nil
}

// mainExample is the first example of a term's page; its facts are those of the
// sheet. Without an example the sheet opens empty.
func (w *work) mainExample(t *book.Term, examples []*example) *example {
	if len(examples) > 0 {
		return examples[0]
	}
	return w.unknown(t.Name, t.Index)
}

// sheetID is the id of the one sheet of a page.
const sheetID = "sheet"

// reckonedOf works out all examples of a term's page.
func (w *work) reckonedOf(term int) ([]*example, error) {
	list := make([]*example, len(w.byTerm[term]))
	for i, ex := range w.byTerm[term] {
		e, err := w.reckoned(ex)
		if err != nil {
			return nil, err
		}
		list[i] = e
	}
	return list, nil
}

func (w *work) termFrame(t *book.Term, main *example) site.Frame {
	s := stand{path: termPath(t.ID), title: t.Name, say: firstSentence(t.Doc), place: t.Place, trail: w.placeTrail(t.Place),
		block: site.TitleBlock{Scope: w.placeName(t.Place), Sheet: w.sheetOf(w.terms, t.ID)}}
	w.checks(&s.block, t, rootOf(s.path))
	if len(main.facts) > 0 {
		s.block.Facts = whose(main.title)
	}
	link := func(id string) site.Link { return site.Link{Name: w.book.TermByID[id].Name, URL: termPath(id)} }
	s.subs = nearest(w.termsAt[t.Place], t.ID, link)
	s.prev, s.next = neighbours(w.terms, t.ID, link)
	s.hazards = t.Hazards
	return w.frame(s)
}

// sheetOf is "12 of 109": where a page stands in a list.
func (w *work) sheetOf(ids []string, id string) string {
	for i, other := range ids {
		if other == id {
			return fmt.Sprintf(sheetOfWords, i+1, len(ids))
		}
	}
	return ""
}

// whose facts an example has: what stands before the colon of its title.
func whose(title string) string {
	name, _, _ := strings.Cut(title, ":")
	return name
}

func (w *work) termLink(t int, root string) site.Link {
	term := w.book.Terms[t]
	return site.Link{Name: term.Name, URL: root + termPath(term.ID)}
}

func (w *work) termLinks(terms []int, root string) []site.Link {
	var list []site.Link
	for _, t := range terms {
		list = append(list, w.termLink(t, root))
	}
	return list
}

// confusedTerm is a link with the first sentence of the other's definition: it
// is the difference that the reader needs.
func (w *work) confusedTerm(id, root string) site.Link {
	t := w.book.TermByID[id]
	l := w.termLink(t.Index, root)
	l.Note = firstSentence(t.Doc)
	return l
}

// cautionsOf are the cautions of a term's page, with how they stand for the
// facts of its sheet.
func (w *work) cautionsOf(term int, r *reckon.Result) []site.Caution {
	var list []site.Caution
	for _, i := range w.cautions[term] {
		if !w.opensWith(&w.engine.Cautions[i]) {
			list = append(list, w.caution(i, r))
		}
	}
	return list
}

// opensWith says whether a page has a caution's words in its opening already.
func (w *work) opensWith(c *reckon.Caution) bool {
	h := w.engine.Hazard(c.Hazard)
	return h != nil && h.Say == c.Say && slices.Contains(w.book.TermByID[w.engine.Terms[c.Home].ID].Hazards, h.ID)
}

func (w *work) caution(i int, r *reckon.Result) site.Caution {
	c := &w.engine.Cautions[i]
	out := site.Caution{ID: c.ID, Danger: c.Danger, When: conditionWords(w.engine, c.When), Say: paragraph(c.Say)}
	for _, s := range r.Cautions {
		if s.Caution != i {
			continue
		}
		out.State = answer.TruthWord(s.Truth)
		for _, t := range r.Lacks(s) {
			out.Lacks = append(out.Lacks, w.engine.Terms[t].Name)
		}
	}
	return out
}

// sources is the line of sources of a page.
func sources(text string) []template.HTML {
	if text == "" {
		return nil
	}
	return []template.HTML{template.HTML(escape(text))}
}

// chainStrip shows where a term stands between well and wire: a window of the
// spine around it. Terms that are no link of it have no strip.
func (w *work) chainStrip(term int, root string) []site.ChainLink {
	at := -1
	for i, t := range w.spine {
		if t == term {
			at = i
		}
	}
	if at < 0 {
		return nil
	}
	const links = 7
	from := max(0, min(at-links/2, len(w.spine)-links))
	var list []site.ChainLink
	for _, t := range w.spine[from:min(from+links, len(w.spine))] {
		l := w.termLink(t, root)
		link := site.ChainLink{Name: l.Name, URL: l.URL, Here: t == term, State: site.State(w.chain.result.Values[t].State.String())}
		if w.chain.result.Known(t) {
			link.Value = both(w.chain.result, t)
			if w.engine.Terms[t].Kind == formula.Choice {
				link.Value.US.N = cmp.Or(w.chain.result.Word(t), "–")
			}
		}
		list = append(list, link)
	}
	return list
}
