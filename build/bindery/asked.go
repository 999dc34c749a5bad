package bindery

import (
	"fmt"

	"columnbowl/build/book"
	"columnbowl/site"
)

const askedPath = "questions/index.html"

// askedView fills the page of a question of the counter.
func (w *work) askedView(a *book.Asked) (any, error) {
	path := questionPath(a.ID)
	root := rootOf(path)
	s := stand{path: path, title: a.Name, say: a.Answer, place: a.Place, nav: "questions", trail: []site.Link{w.askedLink("")},
		block: site.TitleBlock{Scope: w.placeName(a.Place)}}
	var ids []string
	for i, o := range w.book.Asked {
		ids = append(ids, o.ID)
		if o == a {
			s.block.Sheet = fmt.Sprintf(sheetOfWords, i+1, len(w.book.Asked))
		}
	}
	s.prev, s.next = neighbours(ids, a.ID, func(id string) site.Link {
		return site.Link{Name: w.book.AskedByID[id].Name, URL: questionPath(id)}
	})
	s.hazards = a.Hazards
	v := &site.CounterQuestion{Frame: w.frame(s), ID: a.ID, Name: a.Name, Also: a.Also, Answer: paragraph(a.Answer), Sources: sources(a.Source)}
	var err error
	v.Body, err = w.running(a.Doc, root)
	return v, err
}

func (w *work) askedLink(root string) site.Link {
	return site.Link{Name: w.words["questions.title"], URL: root + askedPath}
}

// askedIndex lists the questions under the places of the pump.
func (w *work) askedIndex() (any, error) {
	root := rootOf(askedPath)
	title := w.words["questions.title"]
	v := &site.AskedIndex{Frame: w.frame(stand{path: askedPath, title: title, nav: "questions", block: site.TitleBlock{Scope: bookScope}}), Count: len(w.book.Asked)}
	for _, p := range w.book.Handbook.Places {
		g := site.AskedGroup{Place: w.placeLink(p.ID, root)}
		for _, a := range w.book.Asked {
			if a.Place == p.ID {
				g.Questions = append(g.Questions, site.Link{Name: a.Name, URL: root + questionPath(a.ID), Note: a.Answer})
			}
		}
		if len(g.Questions) > 0 {
			v.Groups = append(v.Groups, g)
		}
	}
	return v, nil
}
