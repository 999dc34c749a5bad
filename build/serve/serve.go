// Package serve shows a book to its author while it is written: it makes the
// pages that are asked for, hands them to a browser on the same machine, watches
// the content, and makes the pages anew when a file changes.
//
// Conventions. The server is meant for the loopback address and knows no files
// but those of the edition: what a request names is looked up in the edition and
// never on the disk. A request that names another host is refused, so that no
// page from elsewhere can read the book through a name of its own that leads to
// this machine. A content with a mistake never takes the place of the pages: the
// browser shows the mistake over the old ones. What is shown has the bytes of a
// whole binding, but for the one script that listens for changes.
package serve

import (
	"crypto/sha256"
	"encoding/hex"
	"sync"
	"sync/atomic"

	"columnbowl/build/bindery"
	"columnbowl/build/book"
	"columnbowl/build/bundle"
	"columnbowl/build/report"
	"columnbowl/site"
)

// Options are what a Server works with.
type Options struct {
	// Content takes the content as it stands now, and is asked again and again.
	// Files that have not changed may be the same slices as before.
	Content func() (book.Memory, error)

	Folder  string // how the content folder is named in messages
	Watched bool   // whether the content can change

	Parts bindery.Parts

	// Evidence compares a sound book with the values that stand outside it, and
	// tells what does not agree, with its places named already. It gets the files
	// that the book was loaded from.
	Evidence func(*book.Book, book.Memory) (*bindery.Evidence, report.List, error)

	// Log is told each change of state in one line; nil for nobody.
	Log func(line string)
}

// State is what the author is told.
type State uint8

const (
	Proving State = iota // the pages are new; the proof of the whole book is not done yet
	Sound                // the pages are new and nothing is wrong
	Wrong                // the content has a mistake; the pages are those from before it
)

// Server is one book that is being read. It is an http.Handler; Run keeps it up
// to date.
type Server struct {
	opts      Options
	words     map[string]string
	script    []byte // of every page that is shown, beside its own
	style     []byte
	reader    book.Reader
	keep      bindery.Keep
	pending   atomic.Bool  // the content has changed since it was last taken
	listeners atomic.Int64 // pages that wait for changes

	mu      sync.Mutex
	now     *shown // nil before the first sound one
	proved  *shown // the last one that the whole proof has passed
	state   State
	told    string        // what is wrong, as the proof prints it
	changed chan struct{} // closed and replaced at every change
}

// shown is an edition as readers see it.
type shown struct {
	draft *bindery.Draft
	sum   string // of what the living pages reckon with
}

// New makes a server that has nothing to show yet.
func New(opts Options) (*Server, error) {
	words, err := site.Words()
	if err != nil {
		return nil, err
	}
	s := &Server{opts: opts, words: words, changed: make(chan struct{})}
	s.script, s.style, err = bundle.Reading(site.Files)
	return s, err
}

// view is what stands at one moment.
type view struct {
	*shown
	state   State
	told    string
	changed <-chan struct{}
}

func (s *Server) view() view {
	s.mu.Lock()
	defer s.mu.Unlock()
	return view{s.now, s.state, s.told, s.changed}
}

// turn changes what stands, and wakes those who wait for it.
func (s *Server) turn(change func()) {
	s.mu.Lock()
	change()
	close(s.changed)
	s.changed = make(chan struct{})
	s.mu.Unlock()
}

// tag is a sum of what a page shows and reckons with: a page whose tag has
// changed loads itself again. A page that is not there has one too.
func (v *view) tag(path string) string {
	if v.shown == nil {
		return "nothing"
	}
	data, found, err := v.draft.File(path)
	if err != nil || !found {
		return "missing"
	}
	return sumOf(data, []byte(v.sum))
}

func sumOf(texts ...[]byte) string {
	h := sha256.New()
	for _, t := range texts {
		h.Write(t)
	}
	return hex.EncodeToString(h.Sum(nil))[:16]
}
