// Package bindery makes an edition of the handbook: it turns the loaded, proved
// book into pages and the files that they need.
//
// Conventions. Everything on a page is readable without a script: numbers,
// steps, drawings and both systems of units are written when the book is bound,
// by the same code that answers on the living page. Paths inside an edition are
// relative, so that it opens by double click. The same book gives the same
// bytes, however many processors render it.
package bindery

import (
	"errors"
	"fmt"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/bundle"
	"columnbowl/build/index"
	"columnbowl/calcwasm/answer"
	"columnbowl/site"
)

// Parts are the files of an edition that do not come from the content.
type Parts struct {
	PageScript, HubScript []byte // bundled
	WorkerScript          []byte // bundled: the service worker of a copy on a server
	Style                 []byte // bundled
	DrawnStyle            []byte // bundled: of the drawings that are files of their own
	Font                  []byte // of the formulas, woff2
	FontLicence           []byte // goes with the font, as the licence asks
	Wasm                  []byte // the engine
	Shells                *site.Set
}

// Options change how a book is bound. The zero value is what people want.
type Options struct {
	// Workers is how many pages are made at once; 0 means as many as there are
	// processors to use.
	Workers int

	// Evidence is what stands outside the book; nil if it was not compared.
	Evidence *Evidence
}

// form of the edition that Bind makes: a folder of pages.
const form = "folder"

// Bind makes the folder edition of a book. The book must be sound: proof it
// first.
func Bind(b *book.Book, parts Parts, opts Options) (*Edition, error) {
	w, err := begin(b, parts, opts)
	if err != nil {
		return nil, err
	}
	w.wells = &wells{inks: readPapers(string(parts.Style))}
	pages := w.pages()
	files, err := render(pages, parts.Shells, opts.Workers)
	if err != nil {
		return nil, err
	}
	for i := range files {
		files[i].Data = site.FewSigns(files[i].Data)
	}
	assets, err := assetFiles(b, parts)
	if err != nil {
		return nil, err
	}
	assets = append(assets, w.wells.list()...)
	if w.cuts != nil {
		script, err := bundle.PackScript(w.cuts.pack())
		if err != nil {
			return nil, err
		}
		assets = append(append(assets, w.cuts.files(opts.Workers)...), File{cutsScript, script})
	}
	if w.practice != nil {
		script, err := w.practice.script()
		if err != nil {
			return nil, err
		}
		assets = append(assets, script)
	}
	e := &Edition{BookID: b.Handbook.ID, Form: form, Files: append(files, assets...)}
	if err := e.arrange(); err != nil {
		return nil, err
	}
	hosting, err := w.hosting(e, parts.WorkerScript)
	if err != nil {
		return nil, err
	}
	e.Files = append(e.Files, hosting...)
	return e, e.arrange()
}

// begin prepares what all pages of a book are made from.
func begin(b *book.Book, parts Parts, opts Options) (*work, error) {
	if b.Engine == nil || !b.Whole {
		return nil, errors.New("this book has errors and cannot be bound: run columnbowl proof")
	}
	w, err := prepare(b, parts.Shells)
	if err != nil {
		return nil, err
	}
	w.evidence = opts.Evidence
	if err := w.preparePractice(); err != nil {
		return nil, err
	}
	if err := w.prepareCuts(parts.DrawnStyle); err != nil {
		return nil, err
	}
	if err := w.prepareGuides(); err != nil {
		return nil, err
	}
	return w, w.countParts()
}

// Paths of the pages and assets of an edition, from its folder.
const (
	homePath     = "index.html"
	chainPath    = "well-to-wire.html"
	deskPath     = "desk.html"
	hubPath      = "hub.html"
	termsPath    = "terms/index.html"
	partsPath    = "parts/index.html"
	sourcesPath  = "sources.html"
	pageScript   = "assets/page.js"
	hubScript    = "assets/hub.js"
	pageStyle    = "assets/page.css"
	mathFont     = "assets/columnbowl-math.woff2"
	fontLicence  = "assets/columnbowl-math-OFL.txt"
	enginePacked = "assets/engine.packed" // not .gz: some servers would unpack it on the way
	engineScript = "assets/engine.js"
	bookScript   = "assets/book.js"
	cutsScript   = "assets/cutaway.js"
	wordsScript  = "assets/words.js"
)

func termPath(id string) string     { return "terms/" + id + ".html" }
func partPath(id string) string     { return "parts/" + id + ".html" }
func questionPath(id string) string { return "questions/" + id + ".html" }
func chapterPath(id string) string  { return "chapters/" + id + ".html" }
func placePath(id string) string    { return "places/" + id + ".html" }

// rootOf is the way from a page to the edition's folder.
func rootOf(path string) string { return strings.Repeat("../", strings.Count(path, "/")) }

func assetFiles(b *book.Book, p Parts) ([]File, error) {
	engine, err := bundle.PackEngine(p.Wasm)
	if err != nil {
		return nil, err
	}
	data, err := bundle.BookScript(answer.Pack(b.Engine, b.Assembly))
	if err != nil {
		return nil, err
	}
	words, err := bundle.PackScript(index.Words(b))
	if err != nil {
		return nil, err
	}
	files := []File{{pageScript, p.PageScript}, {hubScript, p.HubScript}, {pageStyle, p.Style}, {mathFont, p.Font}, {fontLicence, p.FontLicence},
		{enginePacked, engine}, {engineScript, bundle.EngineScript(engine)}, {bookScript, data}, {wordsScript, words}}
	for _, f := range files {
		if len(f.Data) == 0 {
			return nil, fmt.Errorf("%s would be empty", f.Path)
		}
	}
	return files, nil
}
