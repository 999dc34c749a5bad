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
	"strings"

	"columnbowl/build/book"
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
	Packed                []byte // the engine as bundle.PackEngine packs it; nil: it is packed here
	Shells                *site.Set
}

// Options change how a book is bound. The zero value is what people want.
type Options struct {
	// Workers is how many pages are made at once; 0 means as many as there are
	// processors to use.
	Workers int

	// Evidence is what stands outside the book; nil if it was not compared.
	Evidence *Evidence

	// Keep is what may be taken over from an earlier binding; nil for none.
	Keep *Keep
}

// form of the edition that Bind makes: a folder of pages.
const form = "folder"

// begin prepares what all pages of a book are made from.
func begin(b *book.Book, parts Parts, opts Options) (*work, error) {
	if b.Engine == nil || !b.Whole {
		return nil, errors.New("this book has errors and cannot be bound: run columnbowl proof")
	}
	w, err := prepare(b, parts.Shells)
	if err != nil {
		return nil, err
	}
	w.evidence, w.keep = opts.Evidence, opts.Keep
	if err := w.preparePractice(); err != nil {
		return nil, err
	}
	if err := w.prepareCuts(parts.DrawnStyle); err != nil {
		return nil, err
	}
	w.prepareGuides()
	return w, w.countParts()
}

// Paths of the pages and assets of an edition, from its folder.
const (
	homePath    = "index.html"
	chainPath   = "well-to-wire.html"
	deskPath    = "desk.html"
	hubPath     = "hub.html"
	termsPath   = "terms/index.html"
	partsPath   = "parts/index.html"
	sourcesPath = "sources.html"
)

// The engine comes in two forms: for served pages, and as a script for pages
// that are opened by double click.
const (
	enginePacked = "engine.packed" // not .gz: some servers would unpack it on the way
	engineScript = "engine.js"
)

func termPath(id string) string     { return "terms/" + id + ".html" }
func partPath(id string) string     { return "parts/" + id + ".html" }
func questionPath(id string) string { return "questions/" + id + ".html" }
func chapterPath(id string) string  { return "chapters/" + id + ".html" }
func placePath(id string) string    { return "places/" + id + ".html" }

// rootOf is the way from a page to the edition's folder.
func rootOf(path string) string { return strings.Repeat("../", strings.Count(path, "/")) }
