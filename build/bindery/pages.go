package bindery

import (
	"columnbowl/build/book"
	"columnbowl/site"
)

// pages lists all pages of an edition.
func (w *work) pages() []page {
	list := []page{
		{homePath, w.homeView},
		{hubPath, w.hubView},
		{termsPath, w.termIndex},
		{partsPath, w.partIndex},
	}
	if w.hasChain() {
		list = append(list, page{chainPath, w.chainView})
	}
	if w.hasDesk() {
		list = append(list, page{deskPath, w.deskView})
	}
	if w.hasChoice() {
		list = append(list, page{choicePath, w.choiceView})
	}
	if w.hasTakeOff() {
		list = append(list, page{takeoffPath, w.takeoffView})
	}
	if w.evidence != nil {
		list = append(list, page{sourcesPath, w.sourcesView})
	}
	for _, t := range w.book.Terms {
		list = append(list, page{termPath(t.ID), func() (any, error) { return w.termView(t) }})
	}
	for _, p := range w.book.Parts {
		list = append(list, page{partPath(p.ID), func() (any, error) { return w.partView(p) }})
	}
	for i, c := range w.book.Chapters {
		list = append(list, page{chapterPath(c.ID), func() (any, error) { return w.chapterView(c, i+1) }})
	}
	if w.cuts != nil {
		list = append(list, page{buildsPath, w.buildsView})
		for _, build := range book.Builds {
			list = append(list, page{buildPath(build), func() (any, error) { return w.buildView(build) }})
		}
	}
	list = append(list, page{glossaryPath, w.glossaryView})
	if len(w.book.Pairs) > 0 {
		list = append(list, page{pairsPath, w.pairIndex})
	}
	for _, p := range w.book.Pairs {
		list = append(list, page{pairPath(p.ID), func() (any, error) { return w.pairView(p) }})
	}
	for _, t := range w.book.Tables {
		list = append(list, page{tablePath(t), func() (any, error) { return w.tableView(t) }})
	}
	if len(w.book.Asked) > 0 {
		list = append(list, page{askedPath, w.askedIndex})
	}
	for _, a := range w.book.Asked {
		list = append(list, page{questionPath(a.ID), func() (any, error) { return w.askedView(a) }})
	}
	if w.practice != nil {
		list = append(list, page{practicePath, w.practiceIndex}, page{cardsPath, w.cardsView}, page{progressPath, w.progressView})
		for _, e := range w.practice.order {
			list = append(list, page{exercisePath(e.ID), func() (any, error) { return w.exerciseView(e) }})
		}
	}
	if w.hasGuides() {
		for _, g := range w.book.Guides {
			list = append(list, page{guidePath(g.ID), func() (any, error) { return w.guideView(g) }})
		}
	}
	for i := range w.book.Handbook.Places {
		p := &w.book.Handbook.Places[i]
		list = append(list, page{placePath(p.ID), func() (any, error) { return w.placeView(p, i+1) }})
	}
	return list
}

func (w *work) hubView() (any, error) {
	short, _ := w.title()
	return &site.Hub{Book: short, Script: w.assets.hubs}, nil
}
