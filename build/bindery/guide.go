package bindery

import (
	"errors"
	"fmt"
	"html/template"
	"slices"
	"strings"
	"sync"

	"columnbowl/build/book"
	"columnbowl/build/highlight"
	"columnbowl/build/markdown"
	"columnbowl/site"
)

func guidePath(id string) string { return "guides/" + id + ".html" }

// hasGuides says whether the pages lead to guides. Editions without a frame
// leave them out: they are for readers, and guides for those who make the book
// or teach from it.
func (w *work) hasGuides() bool { return len(w.book.Guides) > 0 && !w.loose }

// guideLinks are the ways to all guides.
func (w *work) guideLinks(root string) []site.Link {
	if !w.hasGuides() {
		return nil
	}
	var list []site.Link
	for _, g := range w.book.Guides {
		list = append(list, site.Link{Name: g.Name, URL: root + guidePath(g.ID), Note: g.Says})
	}
	return list
}

// prepareGuides lets the pages of the guides ask for the book with their
// examples, which are no part of the book itself. Other pages do without it.
func (w *work) prepareGuides() {
	if len(w.book.Guides) > 0 && w.shells.Loose() != nil {
		w.shown = sync.OnceValues(w.withExamples)
	}
}

func (w *work) withExamples() (*work, error) {
	with, found := w.book.WithExamples()
	if with == nil {
		return nil, nil
	}
	if found.Errors() > 0 || with.Engine == nil || !with.Whole {
		return nil, errors.New("the examples of the guides have errors: run columnbowl proof")
	}
	s, err := prepare(with, w.shells.Loose())
	if err != nil {
		return nil, err
	}
	s.loose, s.cuts, s.assets = true, w.cuts, w.assets
	// What an example changes may keep an exercise of the book from being drawn:
	// only those of the examples are.
	set, _ := with.Practice()
	var list []*book.Exercise
	for _, e := range with.Exercises {
		if slices.ContainsFunc(w.book.Examples(), func(x book.Example) bool { return x.File == e.File }) {
			list = append(list, e)
		}
	}
	s.practice, err = s.drawSheets(set, list)
	return s, err
}

// guideView fills the page of a guide.
func (w *work) guideView(g *book.Guide) (any, error) {
	path := guidePath(g.ID)
	root := rootOf(path)
	s := stand{path: path, title: g.Name, say: g.Says, block: site.TitleBlock{Scope: w.words["guides"]}}
	var ids []string
	names := map[string]string{}
	for _, o := range w.book.Guides {
		ids = append(ids, o.ID)
		names[o.ID] = o.Name
	}
	s.prev, s.next = neighbours(ids, g.ID, func(id string) site.Link { return site.Link{Name: names[id], URL: guidePath(id)} })
	v := &site.Guide{Frame: w.frame(s), ID: g.ID, Name: g.Name, Says: paragraph(g.Says), Sources: sources(g.Source)}
	for _, h := range g.Doc.Headings {
		if h.Level == 2 {
			v.Contents = append(v.Contents, site.Link{Name: h.Text, URL: "#" + h.ID})
		}
	}
	examples := 0
	hooks := markdown.Hooks{Link: w.links(root), Block: func(b *markdown.Block) (string, error) {
		switch b.Kind {
		case markdown.Show:
			return w.piece(site.Shown{Language: b.Head, Code: template.HTML(highlight.HTML(b.Head, strings.TrimRight(b.Body, "\n")))})
		case markdown.Example:
			examples++
			return w.shownFile(b, fmt.Sprintf("x%d-", examples), root)
		}
		return "", fmt.Errorf("a block “%s” has no place in a guide", b.Kind)
	}}
	var text strings.Builder
	if err := g.Doc.Render(&text, hooks); err != nil {
		return nil, err
	}
	v.Body = template.HTML(text.String())
	return v, nil
}

// shownFile is an example of a guide: its file, and beside each stretch of it
// what the page makes of it.
func (w *work) shownFile(b *markdown.Block, prefix, root string) (string, error) {
	shown, err := w.shown()
	if err != nil {
		return "", err
	}
	rows, err := shown.stretches(b.Head, root)
	if err != nil {
		return "", fmt.Errorf("the example %s: %w", b.Head, err)
	}
	file := site.ShownFile{File: b.Head}
	for _, s := range rows {
		row := site.ShownRow{Code: template.HTML(highlight.HTML(highlight.Of(b.Head), strings.Trim(s.code, "\n")))}
		if row.Result, err = w.still(s.result, fmt.Sprintf("%s%d-", prefix, len(file.Rows)+1), root); err != nil {
			return "", fmt.Errorf("the example %s: %w", b.Head, err)
		}
		file.Rows = append(file.Rows, row)
	}
	return w.piece(file)
}
