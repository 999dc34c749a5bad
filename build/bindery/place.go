package bindery

import (
	"fmt"

	"columnbowl/build/book"
	"columnbowl/site"
)

// placeView fills the page of a place of the rail: what hangs there.
func (w *work) placeView(p *book.Place, number int) (any, error) {
	path := placePath(p.ID)
	root := rootOf(path)
	s := stand{path: path, title: fmt.Sprintf(placeTitle, p.Name, number), say: p.About, place: p.ID, block: site.TitleBlock{Title: p.Name, Scope: p.Name}}
	var ids []string
	for _, o := range w.book.Handbook.Places {
		ids = append(ids, o.ID)
	}
	s.prev, s.next = neighbours(ids, p.ID, func(id string) site.Link {
		return site.Link{Name: w.placeName(id), URL: placePath(id)}
	})
	s.subs = nearest(w.chaptersAt[p.ID], "", func(id string) site.Link {
		return site.Link{Name: w.book.ChapterByID[id].Name, URL: chapterPath(id)}
	})
	v := &site.PlacePage{ID: p.ID, Name: p.Name, Number: number, About: paragraph(p.About)}
	for _, c := range w.book.Chapters {
		if c.Place == p.ID {
			v.Chapters = append(v.Chapters, site.Link{Name: c.Name, URL: root + chapterPath(c.ID)})
		}
	}
	for _, id := range w.terms {
		if t := w.book.TermByID[id]; t.Place == p.ID {
			v.Terms = append(v.Terms, w.termEntry(t, root))
		}
	}
	for _, id := range w.partList {
		if o := w.book.PartByID[id]; o.Place == p.ID {
			v.Parts = append(v.Parts, w.partEntry(o, root))
		}
	}
	v.Frame = w.frame(s)
	return v, nil
}
