package bindery

import (
	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/site"
)

// partView fills the page of a part.
func (w *work) partView(p *book.Part) (any, error) {
	path := partPath(p.ID)
	root := rootOf(path)
	v := &site.Part{
		Frame: w.partFrame(p), ID: p.ID, Name: p.Name, Also: p.Also, Builds: p.Builds, Motion: p.Motion, Wetted: p.Wetted, Pressure: p.Pressure,
		PerPump: p.Number, Material: p.Material, Size: p.Size, Wear: p.Wear, Terms: w.termLinks(w.about[p.ID], root), Sources: sources(p.Source),
		Pairs: w.pairsOf(markdown.ToPart, p.ID, root),
	}
	first := min(1, p.Doc.Lead())
	var err error
	if v.Function, err = w.pieces(p.Doc, root, 0, first); err != nil {
		return nil, err
	}
	if v.Body, err = w.pieces(p.Doc, root, first, len(p.Doc.Pieces)); err != nil {
		return nil, err
	}
	if v.Counts = w.partCounts(p); len(v.Counts) > 0 {
		v.CountedAt = w.countedAt
	}
	if w.cuts != nil {
		v.Lit = w.cuts.partFigures(p, root)
	}
	for side, where := range book.Sides {
		for _, id := range *p.Touching.Side(side) {
			v.Neighbours = append(v.Neighbours, site.Neighbour{Where: where, Link: w.partLink(id, root)})
		}
	}
	for _, id := range p.Confused {
		l := w.partLink(id, root)
		l.Note = firstSentence(w.book.PartByID[id].Doc)
		v.Confused = append(v.Confused, l)
	}
	return v, nil
}

func (w *work) partFrame(p *book.Part) site.Frame {
	s := stand{path: partPath(p.ID), title: p.Name, say: firstSentence(p.Doc), place: p.Place, trail: w.placeTrail(p.Place),
		block: site.TitleBlock{Scope: w.placeName(p.Place), Sheet: w.sheetOf(w.partList, p.ID)}}
	link := func(id string) site.Link { return w.partLink(id, "") }
	s.subs = nearest(w.partsAt[p.Place], p.ID, link)
	s.prev, s.next = neighbours(w.partList, p.ID, link)
	s.hazards = p.Hazards
	return w.frame(s)
}

func (w *work) partLink(id, root string) site.Link {
	p := w.book.PartByID[id]
	return site.Link{Name: p.Name, URL: root + partPath(id), Motion: p.Motion}
}
