package bindery

import (
	"bytes"
	"fmt"
	"path"
	"slices"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/leaf"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/reckon"
	"columnbowl/site"
)

// bowlsFolder is where the families of bowls stand in the content.
const bowlsFolder = "bowls"

// stretch is a piece of a file of the content and the markup that it becomes;
// empty where that stands elsewhere.
type stretch struct{ code, result string }

// stretches cuts a file of the content where the page does something new, and
// renders each piece the way the page does. root is the way from the page that
// shows them.
func (w *work) stretches(file, root string) ([]stretch, error) {
	folder, id := path.Dir(file), strings.TrimSuffix(strings.TrimSuffix(path.Base(file), ".md"), ".yaml")
	if v := w.paged(folder, id); v != nil {
		return w.pageStretches(v, root)
	}
	markup, err := w.dataMarkup(folder, id, root)
	return []stretch{{string(w.book.Files[file]), markup}}, err
}

// paged is the page of an example that is a page of text; nil if it is none.
func (w *work) paged(folder, id string) *shownPage {
	switch folder {
	case "terms":
		if t := w.book.TermByID[id]; t != nil {
			return &shownPage{page: &t.Page, term: t, top: []string{"h1", ".also", ".values", ".sources"}, view: func() (any, error) { return w.termView(t) }}
		}
	case "parts":
		if p := w.book.PartByID[id]; p != nil {
			return &shownPage{page: &p.Page, top: []string{"h1", ".also", ".plate", ".touch", ".sources"}, view: func() (any, error) { return w.partView(p) }}
		}
	case "chapters":
		if c := w.book.ChapterByID[id]; c != nil {
			return &shownPage{page: &c.Page, top: []string{"h1", ".also", ".opening", ".takeaway", ".sources"}, view: func() (any, error) { return w.chapterView(c, slices.Index(w.book.Chapters, c)+1) }}
		}
	case "questions":
		if a := w.book.AskedByID[id]; a != nil {
			return &shownPage{page: &a.Page, top: []string{"h1", ".also", ".short", ".sources"}, view: func() (any, error) { return w.askedView(a) }}
		}
	case "pairs":
		for _, p := range w.book.Pairs {
			if p.ID == id {
				return &shownPage{page: &p.Page, top: []string{"h1", ".short", ".sides", ".sources"}, view: func() (any, error) { return w.pairView(p) }}
			}
		}
	case "exercises":
		for _, e := range w.book.Exercises {
			if e.ID == id {
				return &shownPage{page: &e.Page, exercise: e, top: []string{"h1", ".also"}, view: func() (any, error) { return w.exerciseView(e) }}
			}
		}
	}
	return nil
}

// shownPage is a page of text whose stretches are shown.
type shownPage struct {
	page     *book.Page
	term     *book.Term     // of a term's page
	exercise *book.Exercise // of an exercise
	top      []string       // what its title block becomes: elements, or classes behind a point
	view     func() (any, error)

	whole *leaf.Node // the page itself
}

// pageStretches are the title block, and then text and blocks in turn.
func (w *work) pageStretches(v *shownPage, root string) ([]stretch, error) {
	f, err := (&page{v.page.File, v.view}).render(w.shells)
	if err != nil {
		return nil, err
	}
	if v.whole, err = leaf.Parse(strings.TrimSpace(string(f.Data))); err != nil {
		return nil, err
	}
	d := v.page.Doc
	at := afterLine(d.Source, d.Title.Off+d.Title.Len)
	list := []stretch{{string(d.Source[:at]), v.pick(v.top...)}}
	blocks := w.shownBlocks(v, root)
	for from := 0; from < len(d.Pieces); {
		to := from + 1
		for to < len(d.Pieces) && v.together(&d.Pieces[to-1], &d.Pieces[to]) {
			to++
		}
		end := len(d.Source)
		if to < len(d.Pieces) {
			end = lineStart(d.Source, d.Pieces[to].Off)
		}
		markup, err := blocks(from, to)
		if err != nil {
			return nil, err
		}
		list = append(list, stretch{string(d.Source[at:end]), markup})
		at, from = end, to
	}
	return list, nil
}

// together says whether two pieces that follow each other become one thing on
// the page: running text, a relation with its SI partner, a list of mistakes, a
// situation with the facts that it draws, and what an exercise asks.
func (v *shownPage) together(a, b *markdown.Piece) bool {
	kinds := func(p *markdown.Piece) markdown.Kind {
		if p.Kind == markdown.BlockPart {
			return p.Block.Kind
		}
		return ""
	}
	x, y := kinds(a), kinds(b)
	switch {
	case v.exercise != nil:
		said := func(k markdown.Kind) bool { return k == "" || k == markdown.Draw }
		return said(x) == said(y)
	case x == "" && y == "", x == markdown.Mistake && y == markdown.Mistake:
		return true
	}
	return y == markdown.SI || y == markdown.Behind // what is not shown stands with what it is for
}

// shownBlocks renders the pieces of a page from one to another.
func (w *work) shownBlocks(v *shownPage, root string) func(from, to int) (string, error) {
	d := v.page.Doc
	hooks := w.runningHooks(root)
	if v.term != nil {
		hooks.Block = func(b *markdown.Block) (string, error) { return w.termBlock(v, b, root) }
	}
	return func(from, to int) (string, error) {
		if v.exercise != nil && from == 0 {
			return v.pick(".situation"), nil
		} else if v.exercise != nil {
			return v.pick("ol.asked", ".wholeway"), nil
		}
		var b strings.Builder
		err := d.RenderPieces(&b, hooks, from, to)
		return b.String(), err
	}
}

// termBlock is what the page of a term makes of one block, where it stands on
// that page.
func (w *work) termBlock(v *shownPage, b *markdown.Block, root string) (string, error) {
	stands := func(block int) bool { return w.book.Blocks[block].Block == b }
	switch b.Kind {
	case markdown.Formula, markdown.Estimate, markdown.Assume:
		for i := range w.engine.Rules {
			if r := &w.engine.Rules[i]; stands(r.Block) {
				return w.piece(w.relation(r))
			}
		}
	case markdown.Bowls:
		table, err := w.bowlTable(b)
		return w.wide(table), err
	case markdown.Worked:
		e, err := w.reckoned(w.examples[b])
		if err != nil {
			return "", err
		}
		return w.piece(w.worked(e, "", root))
	case markdown.Mistake:
		i := slices.IndexFunc(w.engine.Mistakes, func(m reckon.Mistake) bool { return stands(m.Block) })
		if i != w.slips[v.term.Index][0] {
			return "", nil // the list stands beside the first of them
		}
		return v.pick(".slipping"), nil
	case markdown.Caution:
		main := w.mainExample(v.term, nil)
		if list, err := w.reckonedOf(v.term.Index); err != nil {
			return "", err
		} else if len(list) > 0 {
			main = list[0]
		}
		for i := range w.engine.Cautions {
			if stands(w.engine.Cautions[i].Block) {
				return w.piece(w.caution(i, main.result))
			}
		}
	}
	return "", nil // an SI partner stands with its relation
}

// pick cuts elements out of the page, each the first of its kind: "h1",
// ".plate", "ol.asked".
func (v *shownPage) pick(what ...string) string {
	var b []byte
	for _, name := range what {
		tag, class, classed := strings.Cut(name, ".")
		found := v.whole.Find(func(n *leaf.Node) bool {
			return n.Tag != "" && (tag == "" || n.Tag == tag) && (!classed || n.Is(class))
		})
		if found != nil {
			b = leaf.AppendHTML(b, found)
		}
	}
	return string(b)
}

// dataMarkup is what becomes of a file of figures: a family of bowls, a build,
// a table.
func (w *work) dataMarkup(folder, id, root string) (string, error) {
	switch folder {
	case bowlsFolder:
		return w.familyMarkup(id)
	case book.BuildFolder:
		return w.buildMarkup(id, root)
	}
	for _, t := range w.book.Tables {
		if t.Folder == folder && t.ID == id {
			f, err := (&page{t.File, func() (any, error) { return w.tableView(t) }}).render(w.shells)
			if err != nil {
				return "", err
			}
			v := shownPage{}
			v.whole, err = leaf.Parse(strings.TrimSpace(string(f.Data)))
			if err != nil {
				return "", err
			}
			return v.pick("h1", ".head.prose", ".rulesum", ".ruletable"), nil
		}
	}
	return "", fmt.Errorf("it is no page and no file of figures")
}

// familyMarkup is a family of bowls in the two tables of the families.
func (w *work) familyMarkup(id string) (string, error) {
	i := slices.IndexFunc(w.engine.Bowls, func(b *reckon.Bowl) bool { return b.ID == id })
	if i < 0 {
		return "", fmt.Errorf("there is no family %s", id)
	}
	var b strings.Builder
	for _, t := range []table{w.bowlSummary(), w.bowlPoints()} {
		t.rows = slices.DeleteFunc(t.rows, func(row []cell) bool { return row[0].text != w.engine.Bowls[i].Name })
		b.WriteString(w.wide(t.html()))
	}
	if w.engine.Bowls[i].Origin == reckon.Invented {
		b.WriteString(`<p class="demo">` + escape(w.words["sheet.demo"]) + `</p>`)
	}
	return b.String(), nil
}

// buildMarkup takes a pump of a build off, with the facts of the take-off.
func (w *work) buildMarkup(id, root string) (string, error) {
	var facts []site.Fact
	for _, f := range w.book.Handbook.TakeOff.Facts {
		if f.Term == reckon.BuildTerm {
			f.Text = id
		}
		facts = append(facts, site.Fact{Term: f.Term, Text: f.Text})
	}
	list, err := w.takeoffList(facts)
	if err != nil {
		return "", err
	}
	markup, err := w.piece(list)
	// The list is written for a page in the edition's folder.
	markup = `<div class="listing">` + markup + `</div>`
	return strings.NewReplacer(`href="parts/`, `href="`+root+`parts/`, `href="terms/`, `href="`+root+`terms/`).Replace(markup), err
}

func lineStart(src []byte, at int) int { return bytes.LastIndexByte(src[:at], '\n') + 1 }

// afterLine is where the line behind the next line end begins: behind the line
// --- that closes a title block.
func afterLine(src []byte, at int) int {
	for at < len(src) && !bytes.HasPrefix(src[at:], []byte("---")) {
		at++
	}
	if i := bytes.IndexByte(src[at:], '\n'); i >= 0 {
		return at + i + 1
	}
	return len(src)
}

// wide is a table that may be wider than its place: it is moved sideways there,
// and the keyboard reaches it for that.
func (w *work) wide(table string) string {
	return `<div class="wide" tabindex="0" role="group" aria-label="` + escape(w.words["guide.table"]) + `">` + table + `</div>`
}
