package book

import (
	"cmp"
	"errors"
	"io/fs"
	"path"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"sync"

	"columnbowl/build/markdown"
	"columnbowl/build/report"
	"columnbowl/calcwasm/formula"
)

// folders of the content, by the kind of their pages.
var folders = map[PageKind]string{TermPage: "terms", PartPage: "parts", ChapterPage: "chapters", AskedPage: "questions", ExercisePage: "exercises",
	PairPage: "pairs", GuidePage: "guides"}

// allowed are the blocks that each kind of page may hold.
var allowed = map[PageKind][]markdown.Kind{
	TermPage:    {markdown.Formula, markdown.SI, markdown.Estimate, markdown.Assume, markdown.Worked, markdown.Mistake, markdown.Caution, markdown.Bowls},
	ChapterPage: {markdown.Worked, markdown.Question, markdown.Picture, markdown.Behind},
	AskedPage:   {markdown.Worked, markdown.Picture, markdown.Behind},

	PairPage:  {markdown.Worked, markdown.Picture},
	GuidePage: {markdown.Example, markdown.Show},

	ExercisePage: {markdown.Draw, markdown.Ask, markdown.Choose, markdown.Order},
}

// loading is a book that is being read.
type loading struct {
	fsys   fs.FS
	reader *Reader // nil when nothing is taken over
	book   *Book
	found  report.List

	brokenBowls []string // ids of families that could not be read
}

// Load reads the content folder. The Book is there also when something is wrong
// with it, as far as it could be read: only a book without errors in the list
// may be published. The list is placed: sorted, with lines and columns.
func Load(fsys fs.FS) (*Book, report.List) { return load(fsys, nil) }

func load(fsys fs.FS, reader *Reader) (*Book, report.List) {
	l := &loading{fsys: fsys, reader: reader, book: &Book{
		TermByID: map[string]*Term{}, PartByID: map[string]*Part{}, ChapterByID: map[string]*Chapter{}, AskedByID: map[string]*Asked{},
		PlaceByID: map[string]*Place{}, Files: report.Files{}, Shared: map[string][]string{},
	}}
	l.handbook()
	l.terms()
	l.parts()
	l.chapters()
	l.asked()
	l.pairs()
	l.guides()
	l.bowls()
	l.tables()
	l.hazards()
	l.asking()
	l.names()
	l.builds()
	l.network()
	l.conditions()
	l.assemble()
	l.exercises()
	return l.book, append(l.found.Place(l.book.Files), l.shapes()...)
}

// shapes reads the profiles of the drawings, if the book has any.
func (l *loading) shapes() report.List {
	if info, err := fs.Stat(l.fsys, ShapesFolder); err != nil || !info.IsDir() {
		return nil
	}
	var found report.List
	l.book.Shapes, found = l.reader.readShapes(l.fsys)
	return found
}

func (l *loading) handbook() {
	src, err := fs.ReadFile(l.fsys, HandbookFile)
	if err != nil {
		l.found.Add("", report.WholeFile, 0, "The content folder has no "+HandbookFile+" that can be read ("+reason(err)+"). It names the book, its places and its chapters.", "")
		return
	}
	l.book.Files[HandbookFile] = src
	h := &l.book.Handbook
	h.read(src, &l.found)
	for i := range h.Places {
		l.book.PlaceByID[h.Places[i].ID] = &h.Places[i]
	}
}

// reason is the cause of a file error without the path, which is named already.
func reason(err error) string {
	if p := (*fs.PathError)(nil); errors.As(err, &p) {
		return p.Err.Error()
	}
	return err.Error()
}

// pages lists the files of a kind of page, by id.
func (l *loading) pages(kind PageKind) []string {
	var files []string
	err := fs.WalkDir(l.fsys, folders[kind], func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if !d.IsDir() && !strings.HasPrefix(d.Name(), ".") {
			files = append(files, name)
		}
		return nil
	})
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		l.found.Add(folders[kind], report.WholeFile, 0, "This folder cannot be read: "+reason(err)+".", "")
	}
	slices.SortFunc(files, func(a, b string) int {
		return cmp.Or(cmp.Compare(path.Base(a), path.Base(b)), cmp.Compare(a, b))
	})
	return files
}

// readAll reads all pages of a kind side by side, and keeps them in the order
// of their ids; title makes the page's own structure.
func readAll[T any](l *loading, kind PageKind, title func(p Page, found *report.List) T) []T {
	type one struct {
		page  T
		file  string
		src   []byte
		found report.List
		ok    bool
	}
	files := l.pages(kind)
	read := make([]one, len(files))
	var wait sync.WaitGroup
	room := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i, name := range files {
		wait.Add(1)
		room <- struct{}{}
		go func() {
			defer func() { <-room; wait.Done() }()
			o := &read[i]
			var p Page
			if p, o.ok = l.readPage(kind, name, &o.found); o.ok {
				o.file, o.src = name, p.Doc.Source
				o.page = title(p, &o.found)
			}
		}()
	}
	wait.Wait()
	list := make([]T, 0, len(files))
	for i := range read {
		l.found = append(l.found, read[i].found...)
		if read[i].ok {
			l.book.Files[read[i].file] = read[i].src
			list = append(list, read[i].page)
		}
	}
	return list
}

var goodID = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)

func (l *loading) readPage(kind PageKind, name string, found *report.List) (Page, bool) {
	p := Page{Kind: kind, File: name}
	id, ok := strings.CutSuffix(path.Base(name), ".md")
	if !ok {
		found.Add(name, report.WholeFile, 0, "Only pages (files whose name ends in .md) belong into "+folders[kind]+".", "")
		return p, false
	}
	src, err := fs.ReadFile(l.fsys, name)
	if err != nil {
		found.Add(name, report.WholeFile, 0, "This page cannot be read: "+reason(err)+".", "")
		return p, false
	}
	p.ID = id
	if !goodID.MatchString(id) {
		found.Add(name, report.WholeFile, 0, "The file's name is the id of the page: small words joined by hyphens, such as total-head.md.", "")
	}
	doc, more := l.reader.parse(name, src)
	p.Doc = doc
	*found = append(*found, more...)
	p.misplaced(found)
	return p, true
}

// misplaced tells of blocks that a page of this kind cannot hold.
func (p *Page) misplaced(found *report.List) {
	for _, b := range p.Doc.Blocks {
		if slices.Contains(allowed[p.Kind], b.Kind) {
			continue
		}
		message := "The page of a " + p.Kind.String() + " holds no blocks of the notation"
		if list := allowed[p.Kind]; len(list) > 0 {
			message = "A block “" + string(b.Kind) + "” has no place on the page of a " + p.Kind.String() + ", which holds only " + kindWords(list)
		}
		found.Add(p.File, b.Off, b.Len, message+".", "")
	}
}

func kindWords(list []markdown.Kind) string {
	words := make([]string, len(list))
	for i, k := range list {
		words[i] = string(k)
	}
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}

func (l *loading) terms() {
	for _, t := range readAll(l, TermPage, newTerm) {
		if have := l.book.TermByID[t.ID]; have != nil {
			l.twice(&t.Page, have.File)
			continue
		}
		if formula.Reserved(t.ID) {
			l.found.Add(t.File, report.WholeFile, 0, "“"+t.ID+"” is a word of the notation and cannot be the id of a term: rename the file.", "")
		}
		t.Index = len(l.book.Terms)
		l.book.TermByID[t.ID] = t
		l.book.Terms = append(l.book.Terms, t)
	}
}

func (l *loading) parts() {
	for _, t := range readAll(l, PartPage, newPart) {
		if have := l.book.PartByID[t.ID]; have != nil {
			l.twice(&t.Page, have.File)
			continue
		}
		l.book.PartByID[t.ID] = t
		l.book.Parts = append(l.book.Parts, t)
	}
	mirror(l.book.Parts, l.book.PartByID)
}

func (l *loading) chapters() {
	for _, c := range readAll(l, ChapterPage, newChapter) {
		if have := l.book.ChapterByID[c.ID]; have != nil {
			l.twice(&c.Page, have.File)
			continue
		}
		l.book.ChapterByID[c.ID] = c
		l.book.Chapters = append(l.book.Chapters, c)
	}
	order := l.book.Handbook.Chapters
	slices.SortStableFunc(l.book.Chapters, func(a, b *Chapter) int {
		return cmp.Compare(place(order, a.ID), place(order, b.ID))
	})
}

func (l *loading) asked() {
	for _, a := range readAll(l, AskedPage, newAsked) {
		if have := l.book.AskedByID[a.ID]; have != nil {
			l.twice(&a.Page, have.File)
			continue
		}
		l.book.AskedByID[a.ID] = a
		l.book.Asked = append(l.book.Asked, a)
	}
}

func (l *loading) twice(p *Page, other string) {
	l.found.Add(p.File, report.WholeFile, 0, "The id “"+p.ID+"” is taken by "+other+": an id belongs to one "+p.Kind.String()+" only.", "")
}

// place is where an id stands in a list; behind its end when it is not in it.
func place(list []string, id string) int {
	if i := slices.Index(list, id); i >= 0 {
		return i
	}
	return len(list)
}
