package bindery

import (
	"html/template"
	"slices"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/site"
)

// Cards and progress: what there is to know of each term and part, and for what
// it is counted how far somebody has come. The ids are those of the browser's
// memory: "t/total-head", "p/head-shaft".

func (w *work) cardsView() (any, error) {
	root := rootOf(cardsPath)
	s := stand{path: cardsPath, title: w.words["practice.cards"], nav: "practice", trail: []site.Link{w.practiceLink()}, block: site.TitleBlock{Scope: bookScope}}
	v := &site.Cards{Frame: w.frame(s)}
	for _, p := range w.book.Handbook.Places {
		v.Places = append(v.Places, site.Learnt{ID: p.ID, Name: p.Name, URL: root + placePath(p.ID)})
	}
	for _, id := range w.terms {
		v.Terms = append(v.Terms, w.termCard(w.book.TermByID[id], root))
	}
	for _, id := range w.partList {
		v.Parts = append(v.Parts, w.partCard(w.book.PartByID[id], root))
	}
	return v, nil
}

// termCard holds the definition of a term and its first identity, which is what
// one should know by heart; estimates are looked up.
func (w *work) termCard(t *book.Term, root string) site.Card {
	c := site.Card{Link: w.termLink(t.Index, root), ID: "t/" + t.ID, Place: t.Place, Says: firstSentence(t.Doc)}
	if rule := w.engine.First(t.Index); rule != nil && rule.Strength == reckon.Identity {
		c.Formula = template.HTML(strings.Join(rule.Relation.MathParts(w.engine.Scope, formula.InWords), " "))
	}
	return c
}

// partCard holds the function of a part, and a drawing with it lit: that of the
// first of its pumps that shows it.
func (w *work) partCard(p *book.Part, root string) site.Card {
	c := site.Card{Link: w.partLink(p.ID, root), ID: "p/" + p.ID, Place: p.Place, Says: firstSentence(p.Doc)}
	if w.cuts != nil {
		if list := w.cuts.partFigures(p, root); len(list) > 0 {
			c.Picture = list[0].Layouts.Narrow.URL
		}
	}
	return c
}

func (w *work) progressView() (any, error) {
	root := rootOf(progressPath)
	s := stand{path: progressPath, title: w.words["practice.progress"], nav: "practice", trail: []site.Link{w.practiceLink()}, block: site.TitleBlock{Scope: bookScope}}
	v := &site.Progress{Frame: w.frame(s)}
	for _, e := range w.practice.order {
		v.Exercises = append(v.Exercises, site.Learnt{ID: "e/" + e.ID, Name: e.Name, URL: root + exercisePath(e.ID)})
	}
	for _, c := range w.book.Chapters {
		v.Chapters = append(v.Chapters, site.Learnt{ID: "c/" + c.ID, Name: c.Name, URL: root + chapterPath(c.ID), Of: speaksOf(c.Doc)})
	}
	for _, id := range w.terms {
		l := w.termLink(w.book.TermByID[id].Index, root)
		v.Terms = append(v.Terms, site.Learnt{ID: "t/" + id, Name: l.Name, URL: l.URL})
	}
	for _, id := range w.partList {
		l := w.partLink(id, root)
		v.Parts = append(v.Parts, site.Learnt{ID: "p/" + id, Name: l.Name, URL: l.URL})
	}
	return v, nil
}

// speaksOf lists the terms and parts that a text links to.
func speaksOf(d *markdown.Doc) []string {
	var list []string
	for _, l := range d.Links {
		id := ""
		switch l.Scheme {
		case markdown.ToTerm:
			id = "t/" + l.ID
		case markdown.ToPart:
			id = "p/" + l.ID
		}
		if id != "" && !slices.Contains(list, id) {
			list = append(list, id)
		}
	}
	return list
}
