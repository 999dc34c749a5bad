package book

import (
	"bytes"
	"io/fs"
	"slices"
	"sync"

	"columnbowl/build/markdown"
	"columnbowl/build/report"
)

// Reader loads one content again and again while it is being written. What has
// been read of files that have not changed is taken over, and so are the
// profiles of the drawings: a Doc and Shapes are only read once they are made.
// The zero value is ready; it is safe for several goroutines.
type Reader struct {
	mu     sync.Mutex
	docs   map[string]parsed
	shapes *Shapes // without mistakes; nil: none yet
}

// parsed is a page as Markdown.
type parsed struct {
	doc   *markdown.Doc
	found report.List
}

// Load is as the function Load, and gives the same book.
func (r *Reader) Load(fsys fs.FS) (*Book, report.List) { return load(fsys, r) }

// parse reads a page as Markdown, if it is another one than before. A nil Reader
// keeps nothing.
func (r *Reader) parse(name string, src []byte) (*markdown.Doc, report.List) {
	if r == nil {
		return markdown.Parse(name, src)
	}
	r.mu.Lock()
	p, ok := r.docs[name]
	r.mu.Unlock()
	if ok && bytes.Equal(p.doc.Source, src) {
		return p.doc, slices.Clone(p.found)
	}
	p.doc, p.found = markdown.Parse(name, src)
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.docs == nil {
		r.docs = map[string]parsed{}
	}
	r.docs[name] = p
	return p.doc, slices.Clone(p.found)
}

// readShapes reads the profiles, if one of their files is another than before.
func (r *Reader) readShapes(fsys fs.FS) (*Shapes, report.List) {
	if r == nil {
		return LoadShapes(fsys)
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.shapes != nil && r.shapes.stillIn(fsys) {
		return r.shapes, nil
	}
	shapes, found := LoadShapes(fsys)
	r.shapes = nil
	if len(found) == 0 {
		r.shapes = shapes
	}
	return shapes, found
}

// stillIn says whether the files of the profiles are those they were read from.
func (s *Shapes) stillIn(fsys fs.FS) bool {
	names, err := fs.Glob(fsys, ShapesFolder+"/*.yaml")
	if err != nil || len(names) != len(s.files) {
		return false
	}
	for _, name := range names {
		had, ok := s.files[name]
		if now, err := fs.ReadFile(fsys, name); !ok || err != nil || !bytes.Equal(had, now) {
			return false
		}
	}
	return true
}
