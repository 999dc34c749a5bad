package bindery

import (
	"cmp"
	"errors"
	"fmt"
	"html"
	"html/template"
	"slices"
	"strconv"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/answer"
	"columnbowl/calcwasm/exercise"
	"columnbowl/site"
)

// Paths of the pages of practice.
const (
	practicePath = "practice/index.html"
	cardsPath    = "practice/cards.html"
	progressPath = "practice/progress.html"
)

func exercisePath(id string) string { return "practice/" + id + ".html" }

// printedSeed is the seed of the sheets that are printed on the pages.
const printedSeed = 1

// practice is the exercises of a book, ready to be drawn, and one sheet of each.
// The sheets are drawn before the pages are made: a Set is for one goroutine.
type practice struct {
	set    *exercise.Set
	order  []*book.Exercise // by place, then level
	sheets map[string]*drawnSheet
}

// drawnSheet is a drawn sheet with all that is written about it.
type drawnSheet struct {
	facts    map[string]string // by term
	cautions []string
	items    []site.ExerciseItem
}

// preparePractice draws the sheets; a book without exercises has no such pages.
func (w *work) preparePractice() error {
	if len(w.book.Exercises) == 0 {
		return nil
	}
	ground := ""
	if w.keep != nil {
		ground = Ground(w.book)
	}
	var err error
	w.practice, err = Recall(w.keep, "practice", ground, func() (*practice, error) {
		set, found := w.book.Practice()
		if set == nil || len(found) > 0 {
			return nil, errors.New("the exercises of this book have errors: run columnbowl proof")
		}
		return w.drawSheets(set, slices.Clone(w.book.Exercises))
	})
	return err
}

// drawSheets draws the printed sheets of exercises, which come in their order of
// reading.
func (w *work) drawSheets(set *exercise.Set, list []*book.Exercise) (*practice, error) {
	p := &practice{set: set, order: list, sheets: map[string]*drawnSheet{}}
	depth := map[string]int{}
	for i, place := range w.book.Handbook.Places {
		depth[place.ID] = i
	}
	slices.SortStableFunc(p.order, func(a, b *book.Exercise) int {
		return cmp.Or(cmp.Compare(depth[a.Place], depth[b.Place]), cmp.Compare(a.Level, b.Level))
	})
	for _, e := range p.order {
		sheet, why := set.Draw(set.Find(e.ID), printedSeed)
		if sheet == nil {
			return nil, fmt.Errorf("no sheet of the exercise %s can be drawn: %s", e.ID, why)
		}
		p.sheets[e.ID] = w.drawSheet(set, sheet)
	}
	return p, nil
}

// pack is the exercises for the page's engine.
func (p *practice) pack() []byte { return append([]byte(answer.ExercisePack+"\n"), p.set.Pack()...) }

func (w *work) drawSheet(set *exercise.Set, sheet *exercise.Sheet) *drawnSheet {
	d := &drawnSheet{facts: map[string]string{}, cautions: sheet.Cautions()}
	for _, f := range sheet.Facts() {
		id := set.Book.Terms[f.Term].ID
		d.facts[id] = sheet.FactText(id)
	}
	for i := range sheet.Items {
		d.items = append(d.items, w.drawItem(set, sheet, i))
	}
	return d
}

func (w *work) drawItem(set *exercise.Set, sheet *exercise.Sheet, i int) site.ExerciseItem {
	item := &sheet.Items[i]
	it := site.ExerciseItem{N: i + 1, Ask: sheet.Title(i)}
	switch item.Kind {
	case exercise.Number:
		term := &set.Book.Terms[item.Term]
		it.Kind, it.URL, it.Unit = "number", rootOf(practicePath)+termPath(term.ID), term.US.Print
		it.Right, it.Steps = sheet.Amount(i, item.Right), sheet.Steps(i)
	case exercise.Choice:
		right := sheet.RightOption(i)
		it.Kind, it.Right, it.Say = "choice", item.Answer+": "+right.Text, right.Say
		for k, o := range item.Options {
			it.Options = append(it.Options, site.Lettered{Letter: letterOf(k), Text: o.Text})
		}
	case exercise.Ordering:
		var names []string
		for k, name := range item.Names {
			it.Options = append(it.Options, site.Lettered{Letter: letterOf(k), Text: name})
		}
		for _, c := range item.Answer {
			names = append(names, item.Names[c-'A'])
		}
		it.Kind, it.Right = "order", item.Answer+": "+strings.Join(names, ", ")
	}
	return it
}

func letterOf(i int) string { return string(rune('A' + i)) }

// practiceIndex lists the exercises under the places of the pump.
func (w *work) practiceIndex() (any, error) {
	title := w.words["practice.title"]
	v := &site.Practice{Frame: w.frame(stand{path: practicePath, title: title, nav: "practice", block: site.TitleBlock{Scope: bookScope}}),
		Count: len(w.practice.order), CardsURL: "cards.html", ProgressURL: "progress.html"}
	root := rootOf(practicePath)
	for _, p := range w.book.Handbook.Places {
		g := site.PracticeGroup{ID: p.ID, Place: w.placeLink(p.ID, root)}
		for _, e := range w.practice.order {
			if e.Place == p.ID {
				g.Entries = append(g.Entries, w.practiceEntry(e, root))
			}
		}
		if len(g.Entries) > 0 {
			v.Groups = append(v.Groups, g)
		}
	}
	return v, nil
}

func (w *work) practiceEntry(e *book.Exercise, root string) site.PracticeEntry {
	t := w.practice.set.Find(e.ID)
	entry := site.PracticeEntry{Link: site.Link{Name: e.Name, URL: e.ID + ".html"}, ID: e.ID, Level: e.Level, Trains: w.trains(t, root)}
	if len(t.Choose) > 0 {
		entry.Kinds = append(entry.Kinds, "choice")
	}
	if len(t.Order) > 0 {
		entry.Kinds = append(entry.Kinds, "order")
	}
	return entry
}

// trains are the terms that an exercise asks for.
func (w *work) trains(t *exercise.Template, root string) []site.Link {
	var list []site.Link
	for _, a := range t.Ask {
		list = append(list, w.termLink(a.Term, root))
	}
	return list
}

// exerciseView fills the page of an exercise.
func (w *work) exerciseView(e *book.Exercise) (any, error) {
	path := exercisePath(e.ID)
	root, sheet, t := rootOf(path), w.practice.sheets[e.ID], w.practice.set.Find(e.ID)
	s := stand{path: path, title: e.Name, place: e.Place, nav: "practice", trail: []site.Link{w.practiceLink()},
		block: site.TitleBlock{Scope: w.placeName(e.Place), Demo: true}}
	var ids []string
	for _, o := range w.practice.order {
		ids = append(ids, o.ID)
	}
	s.block.Sheet = strconv.Itoa(printedSeed)
	names := map[string]string{}
	for _, o := range w.practice.order {
		names[o.ID] = o.Name
	}
	s.prev, s.next = neighbours(ids, e.ID, func(id string) site.Link { return site.Link{Name: names[id], URL: exercisePath(id)} })
	text, err := w.situation(e, root, sheet)
	return &site.Exercise{Frame: w.frame(s), ID: e.ID, Name: e.Name, Level: e.Level, Seed: strconv.Itoa(printedSeed), Trains: w.trains(t, root),
		Text: text, Cautions: sheet.cautions, Numeric: len(t.Ask) > 0, Items: sheet.items}, err
}

// situation is the text of an exercise with the facts of its printed sheet, each
// in an element of its own, so that the living page can put others there.
func (w *work) situation(e *book.Exercise, root string, sheet *drawnSheet) (template.HTML, error) {
	var b strings.Builder
	if err := e.Doc.RenderPieces(&b, markdown.Hooks{Link: w.links(root)}, 0, e.Doc.Lead()); err != nil {
		return "", err
	}
	return template.HTML(exercise.Fill(strings.TrimSpace(b.String()), func(id string) string {
		return `<span class="fact" data-fact="` + html.EscapeString(id) + `">` + html.EscapeString(sheet.facts[id]) + `</span>`
	})), nil
}

func (w *work) practiceLink() site.Link {
	return site.Link{Name: w.words["practice.title"], URL: practicePath}
}
