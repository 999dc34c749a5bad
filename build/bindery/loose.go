package bindery

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/index"
	"columnbowl/build/leaf"
	"columnbowl/calcwasm/answer"
)

// Loose is the text of a bound book before a cover goes round it: the same
// pages as in the folder edition, without their frames, in the order in which
// one reads them. Other editions are made of it.
type Loose struct {
	BookID  string
	Title   string // "Column & Bowl"
	Long    string // "A handbook of deep-well turbine pumps"
	About   string // a paragraph, plain text
	Version string
	Units   string            // which number stands large: "us" or "si"
	Words   map[string]string // of the interface
	Leaves  []Leaf
	Files   []File            // the drawings
	Frame   string            // of the folder's first page: what stands in its body before the main element
	Packs   []File            // what the engine needs beside its code, by name: the book, and what some pages add
	Places  []string          // ids of the places of the rail, top to bottom
	names   map[string]string // of the places
}

// Leaf is one page without its frame.
type Leaf struct {
	Path  string     // as in the folder edition: "terms/total-head.html"
	Title string     // escaped, as its heading writes it
	Place string     // id of the place of the rail that it belongs to; "" for none
	Main  *leaf.Node // its main element
}

// Kind is the folder of a page: "terms", "parts", "chapters"; "" for pages that
// stand alone.
func (l *Leaf) Kind() string { return strings.TrimSuffix(path.Dir(l.Path), ".") }

// Index says whether a page lists the others of its kind.
func (l *Leaf) Index() bool { return path.Base(l.Path) == "index.html" }

// CoverDrawing is the drawing for a cover: a whole pump without numbers. A book
// without drawings has none.
const CoverDrawing = "drawings/plain-oil-lubricated.svg"

// PlaceName is the name of a place of the rail.
func (l *Loose) PlaceName(id string) string { return l.names[id] }

// Loosen makes the pages of a book without their frames. The book must be
// sound: proof it first.
func Loosen(b *book.Book, parts Parts, opts Options) (*Loose, error) {
	whole := parts.Shells
	parts.Shells = whole.Loose()
	w, err := begin(b, parts, opts)
	if err != nil {
		return nil, err
	}
	home, err := (&page{homePath, w.homeView}).render(whole)
	if err != nil {
		return nil, err
	}
	w.loose = true
	pages := slices.DeleteFunc(w.pages(), func(p page) bool { return p.path == hubPath })
	files, err := render(pages, parts.Shells, opts.Workers)
	if err != nil {
		return nil, err
	}
	short, long := w.title()
	out := &Loose{BookID: b.Handbook.ID, Title: short, Long: capital(long), About: b.Handbook.About, Version: b.Handbook.Version,
		Units: w.units, Words: w.words, names: map[string]string{}}
	for _, p := range b.Handbook.Places {
		out.Places = append(out.Places, p.ID)
		out.names[p.ID] = p.Name
	}
	for _, f := range w.reading(files) {
		main, err := leaf.Parse(strings.TrimSpace(string(f.Data)))
		if err != nil {
			return nil, fmt.Errorf("%s: %w", f.Path, err)
		}
		l := Leaf{Path: f.Path, Title: out.Title, Place: w.placeOf(f.Path), Main: main}
		if h := main.Find(leaf.Tagged("h1")); h != nil && f.Path != homePath {
			l.Title = heading(h)
		}
		out.Leaves = append(out.Leaves, l)
	}
	out.Frame = frameOf(string(home.Data))
	out.Packs = w.packs()
	if w.cuts != nil {
		out.Files = w.cuts.files(opts.Workers)
		slices.SortFunc(out.Files, func(a, b File) int { return strings.Compare(a.Path, b.Path) })
	}
	return out, nil
}

// frameOf cuts the frame out of a page.
func frameOf(html string) string {
	_, body, _ := strings.Cut(html, "<body")
	_, body, _ = strings.Cut(body, ">")
	frame, _, _ := strings.Cut(body, "<main")
	return frame
}

// withoutGuides is the book as the loose editions have it, for what leads to all of its pages.
func (w *work) withoutGuides() *book.Book {
	b := *w.book
	b.Guides = nil
	return &b
}

// packs are what the engine of the page needs beside its code.
func (w *work) packs() []File {
	list := []File{{"book", answer.Pack(w.engine, w.book.Assembly)}, {"words", index.Words(w.withoutGuides())}}
	if w.cuts != nil {
		list = append(list, File{"cutaway", w.cuts.pack()})
	}
	if w.practice != nil {
		list = append(list, File{"exercises", w.practice.pack()})
	}
	return list
}

// heading is a page's name: its heading without the symbol beside it.
func heading(h *leaf.Node) string {
	name := &leaf.Node{}
	for _, k := range h.Kids {
		if !k.Is("symbol") {
			name.Kids = append(name.Kids, k)
		}
	}
	return name.Plain()
}

// shelves are the kinds of pages in the order of reading.
var shelves = []string{homePath, "chapters/", "builds/", "places/", chainPath, takeoffPath, deskPath, choicePath, "choices/", "faults/", glossaryPath, "pairs/", "terms/", "parts/", "questions/", "practice/", "guides/", sourcesPath}

// reading puts pages into the order in which one reads them: shelf by shelf, on
// each the list of what stands there first; what is looked up stands in the order
// of the places down the well.
func (w *work) reading(files []File) []File {
	rank := func(f File) int {
		at := slices.IndexFunc(shelves, func(s string) bool { return f.Path == s || strings.HasSuffix(s, "/") && strings.HasPrefix(f.Path, s) })
		if at < 0 {
			at = len(shelves)
		}
		at *= 2
		if path.Base(f.Path) == "index.html" {
			return at * (len(w.book.Handbook.Places) + 1)
		}
		at++
		at *= len(w.book.Handbook.Places) + 1
		switch folder, _, _ := strings.Cut(f.Path, "/"); folder {
		case "terms", "parts", "questions":
			place := w.placeOf(f.Path)
			depth := slices.IndexFunc(w.book.Handbook.Places, func(p book.Place) bool { return p.ID == place })
			if depth < 0 {
				depth = len(w.book.Handbook.Places)
			}
			at += depth
		}
		return at
	}
	out := slices.Clone(files)
	slices.SortStableFunc(out, func(a, b File) int { return rank(a) - rank(b) })
	return out
}

// placeOf is the place of the rail that a page belongs to.
func (w *work) placeOf(file string) string {
	folder, name := path.Split(strings.TrimSuffix(file, ".html"))
	switch folder {
	case "terms/":
		if t := w.book.TermByID[name]; t != nil {
			return t.Place
		}
	case "parts/":
		if p := w.book.PartByID[name]; p != nil {
			return p.Place
		}
	case "chapters/":
		for _, c := range w.book.Chapters {
			if c.ID == name {
				return c.Place
			}
		}
	case "questions/":
		for _, a := range w.book.Asked {
			if a.ID == name {
				return a.Place
			}
		}
	case "places/":
		return name
	}
	return ""
}
