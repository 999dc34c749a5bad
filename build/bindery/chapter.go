package bindery

import (
	"fmt"
	"html/template"
	"strconv"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/site"
)

// chapterView fills the page of a chapter. Its worked examples are sheets in
// the running text, its check questions fold up their answers.
func (w *work) chapterView(c *book.Chapter, number int) (any, error) {
	path := chapterPath(c.ID)
	root := rootOf(path)
	v := &site.Chapter{Frame: w.chapterFrame(c, number), ID: c.ID, Name: c.Name, Number: number, Aims: c.Aims, Takeaway: c.Takeaway, Sources: sources(c.Source),
		Minutes: minutes(c.Doc), Chain: w.chapterStrip(c, root)}
	for _, h := range c.Doc.Headings {
		if h.Level == 2 {
			// the list counts: a heading that counts itself need not
			name := strings.TrimPrefix(h.Text, strconv.Itoa(len(v.Contents)+1)+". ")
			v.Contents = append(v.Contents, site.Link{Name: name, URL: "#" + h.ID})
		}
	}
	var err error
	v.Body, err = w.running(c.Doc, root)
	return v, err
}

// running renders a running text: its worked examples are sheets in it, its
// check questions fold up their answers, its pictures are drawn.
func (w *work) running(d *markdown.Doc, root string) (template.HTML, error) {
	var text strings.Builder
	if err := d.Render(&text, w.runningHooks(root)); err != nil {
		return "", err
	}
	return template.HTML(text.String()), nil
}

// runningHooks render what stands in one running text, piece by piece.
func (w *work) runningHooks(root string) markdown.Hooks {
	sheets, pictures := 0, 0
	return markdown.Hooks{Link: w.links(root), Block: func(b *markdown.Block) (string, error) {
		switch b.Kind {
		case markdown.Question:
			return w.piece(site.Question{Ask: paragraph(b.Ask), Answer: paragraph(b.Answer)})
		case markdown.Picture:
			pictures++
			return w.chapterPicture(b, pictures, root)
		case markdown.Behind:
			return "", nil // for the proof alone
		}
		ex := w.examples[b]
		if ex == nil {
			return "", fmt.Errorf("a block “%s” has no place in a running text", b.Kind)
		}
		e, err := w.reckoned(ex)
		if err != nil {
			return "", err
		}
		sheets++
		return w.piece(w.chapterSheet(e, sheets, root))
	}}
}

// chapterSheet is a worked example of a chapter: its facts, what leads to its
// results, and the results.
func (w *work) chapterSheet(e *example, n int, root string) *site.Sheet {
	var rows []int
	seen := map[int]bool{}
	add := func(t int) {
		if !seen[t] {
			seen[t] = true
			rows = append(rows, t)
		}
	}
	for _, f := range e.result.Question.Facts {
		add(f.Term)
	}
	for _, t := range append(e.chain(), e.expect...) {
		add(t)
	}
	return w.sheet(fmt.Sprintf("%s-%d", sheetID, n), e, []group{{terms: rows}}, root)
}

func (w *work) piece(view any) (string, error) {
	html, err := w.shells.Piece(view)
	return string(html), err
}

func (w *work) chapterFrame(c *book.Chapter, number int) site.Frame {
	s := stand{path: chapterPath(c.ID), title: c.Name, say: firstSentence(c.Doc), place: c.Place, trail: w.placeTrail(c.Place),
		block: site.TitleBlock{Scope: w.placeName(c.Place), Sheet: fmt.Sprintf(sheetOfWords, number, len(w.book.Chapters))}}
	link := func(id string) site.Link { return site.Link{Name: w.book.ChapterByID[id].Name, URL: chapterPath(id)} }
	s.subs = nearest(w.chaptersAt[c.Place], c.ID, link)
	s.prev, s.next = neighbours(w.chapters, c.ID, link)
	s.hazards = c.Hazards
	return w.frame(s)
}
