package bindery

import (
	"fmt"
	"slices"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/picture"
	"columnbowl/calcwasm/reckon"
	"columnbowl/site"
)

const pairsPath = "pairs/index.html"

func pairPath(id string) string { return "pairs/" + id + ".html" }

// pairView fills the page of words that are easily confused: each with its
// definition, its relation and its picture, side by side.
func (w *work) pairView(p *book.Pair) (any, error) {
	path := pairPath(p.ID)
	root := rootOf(path)
	s := stand{path: path, title: p.Name, say: p.Apart, place: p.Place, nav: "terms", trail: []site.Link{w.pairsLink("")},
		block: site.TitleBlock{Scope: w.placeName(p.Place)}}
	var ids []string
	names := map[string]string{}
	for i, o := range w.book.Pairs {
		ids = append(ids, o.ID)
		names[o.ID] = o.Name
		if o == p {
			s.block.Sheet = fmt.Sprintf(sheetOfWords, i+1, len(w.book.Pairs))
		}
	}
	s.prev, s.next = neighbours(ids, p.ID, func(id string) site.Link { return site.Link{Name: names[id], URL: pairPath(id)} })
	v := &site.Pair{Frame: w.frame(s), ID: p.ID, Name: p.Name, Apart: paragraph(p.Apart), Whose: w.book.Handbook.ChainTitle, Figures: w.pairFigures(p), Sources: sources(p.Source)}
	for _, g := range p.Between {
		side, err := w.pairSide(g, root)
		if err != nil {
			return nil, err
		}
		v.Sides = append(v.Sides, side)
	}
	var err error
	v.Body, err = w.running(p.Doc, root)
	return v, err
}

func (w *work) pairSide(g book.Goal, root string) (site.PairSide, error) {
	if g.Scheme == markdown.ToPart {
		return w.partSide(w.book.PartByID[g.ID], root)
	}
	t := w.book.TermByID[g.ID]
	s := site.PairSide{Link: w.termLink(t.Index, root), Symbol: symbol(t.Symbol), Also: t.Also}
	s.UnitUS, s.UnitSI = unitsOf(&w.engine.Terms[t.Index])
	if w.chain.result.Known(t.Index) {
		s.Value = both(w.chain.result, t.Index)
	}
	// The first relation of its page is the one that defines a term.
	for i := range w.engine.Rules {
		if rule := &w.engine.Rules[i]; rule.Home == t.Index && rule.Relation != nil && rule.Strength == reckon.Identity {
			s.Relation = w.relation(rule).Words
			break
		}
	}
	var err error
	s.Says, err = w.pieces(t.Doc, root, 0, min(1, t.Doc.Lead()))
	return s, err
}

// partSide shows a part with what its plate says; of its drawings the first,
// which is that of the pump that most people know it from.
func (w *work) partSide(p *book.Part, root string) (site.PairSide, error) {
	s := site.PairSide{Link: w.partLink(p.ID, root), Also: p.Also, Motion: p.Motion, Builds: p.Builds, Wetted: p.Wetted, PerPump: p.Number}
	if w.cuts != nil {
		if list := w.cuts.partFigures(p, root); len(list) > 0 {
			s.Lit = list[:1]
		}
	}
	var err error
	s.Says, err = w.pieces(p.Doc, root, 0, min(1, p.Doc.Lead()))
	return s, err
}

// pairFigures is the picture that most of the words are marks of: they are told
// apart on one scale.
func (w *work) pairFigures(p *book.Pair) []site.Figure {
	best, most := "", 0
	for _, k := range picture.Pictures {
		n := 0
		for _, g := range p.Between {
			if g.Scheme == markdown.ToTerm && slices.Contains(k.Terms, g.ID) {
				n++
				if n > most {
					best, most = g.ID, n
				}
			}
		}
	}
	if most < 2 {
		return nil
	}
	return w.termFigures(best)
}

func (w *work) pairsLink(root string) site.Link {
	return site.Link{Name: w.words["pairs.title"], URL: root + pairsPath}
}

// pairsOf are the pairs that a term or a part is one of.
func (w *work) pairsOf(scheme markdown.Scheme, id, root string) []site.Link {
	var list []site.Link
	for _, p := range w.book.Pairs {
		if p.Has(scheme, id) {
			list = append(list, site.Link{Name: p.Name, URL: root + pairPath(p.ID)})
		}
	}
	return list
}

// pairIndex lists the pairs under the places of the pump.
func (w *work) pairIndex() (any, error) {
	root := rootOf(pairsPath)
	title := w.words["pairs.title"]
	v := &site.PairIndex{Frame: w.frame(stand{path: pairsPath, title: title, nav: "terms", trail: []site.Link{w.glossaryLink("")}, block: site.TitleBlock{Scope: bookScope}}), Count: len(w.book.Pairs)}
	for _, place := range w.book.Handbook.Places {
		g := site.AskedGroup{Place: w.placeLink(place.ID, root)}
		for _, p := range w.book.Pairs {
			if p.Place == place.ID {
				g.Questions = append(g.Questions, site.Link{Name: p.Name, URL: root + pairPath(p.ID), Note: p.Apart})
			}
		}
		if len(g.Questions) > 0 {
			v.Groups = append(v.Groups, g)
		}
	}
	return v, nil
}
