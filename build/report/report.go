// Package report holds what is wrong with a book, and prints it for the person
// who wrote it: where it is, what is wrong, and what to write instead.
//
// Conventions. A place is a file and a byte offset in it; line and column are
// counted only when a list is placed, because offsets add up across nesting and
// lines do not. A message is a whole sentence. A suggestion is the text to
// write in place of the marked one, and nothing else. All problems of a run are
// collected, so that an author mends them in one go.
package report

import (
	"cmp"
	"path"
	"path/filepath"
	"slices"
	"unicode/utf8"
)

// Severity tells what a diagnostic means for the book.
type Severity uint8

const (
	Error Severity = iota // the book must not be published
	Info                  // worth knowing; nothing has to be done
)

func (s Severity) String() string {
	if s == Info {
		return "info"
	}
	return "error"
}

// Diagnostic is one thing to tell about a place in a file.
type Diagnostic struct {
	Severity Severity
	File     string   // slash-separated, inside the content folder; "" when it is about the whole book
	Off, Len int      // bytes of the file; Len 0 marks one character; Off is WholeFile when no place is meant
	Line     int      // 1 and up, counted by Place; 0 before
	Column   int      // 1 and up, in characters, counted by Place
	Message  string   // what is wrong, as a whole sentence
	Suggest  string   // the text to write instead, "" when nothing is known
	Notes    []string // reasons and ways out, each a whole sentence
	Frame    Frame    // the line of the file, cut by Place
}

// Frame is the line that a diagnostic is about, and a line to print under it
// with the marker. Both are empty when there is nothing to show.
type Frame struct{ Line, Mark string }

// WholeFile is the offset of a diagnostic that is about a file as a whole.
const WholeFile = -1

// List is what a run has found.
type List []Diagnostic

// Add appends an error.
func (l *List) Add(file string, off, length int, message, suggest string, notes ...string) {
	*l = append(*l, Diagnostic{File: file, Off: off, Len: length, Message: message, Suggest: suggest, Notes: notes})
}

// Errors counts the diagnostics that stop a book from being published.
func (l List) Errors() int {
	n := 0
	for i := range l {
		if l[i].Severity == Error {
			n++
		}
	}
	return n
}

// In returns the list with its files named inside a folder, as a person at the
// command line has to open them.
func (l List) In(folder string) List {
	out := slices.Clone(l)
	for i := range out {
		if out[i].File != "" {
			out[i].File = path.Join(filepath.ToSlash(folder), out[i].File)
		}
	}
	return out
}

// Files are the texts that diagnostics point into, by their names.
type Files map[string][]byte

// Place returns the list sorted by file and place, without doubles, and with
// line, column and frame. A place outside its file is moved to the file's end.
// A list may be placed more than once.
func (l List) Place(files Files) List {
	out := slices.Clone(l)
	slices.SortStableFunc(out, func(a, b Diagnostic) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Off, b.Off), cmp.Compare(a.Severity, b.Severity), cmp.Compare(a.Message, b.Message))
	})
	out = slices.CompactFunc(out, func(a, b Diagnostic) bool {
		return a.File == b.File && a.Off == b.Off && a.Severity == b.Severity && a.Message == b.Message
	})
	for i := range out {
		d := &out[i]
		src, ok := files[d.File]
		if !ok || d.Off == WholeFile {
			continue
		}
		d.Off = min(max(d.Off, 0), len(src))
		d.Len = min(max(d.Len, 0), len(src)-d.Off)
		d.Line, d.Column = Position(src, d.Off)
		d.Frame = frame(src, d.Off, d.Len)
	}
	return out
}

// Position counts line and column (both from 1, the column in characters) of a
// byte offset.
func Position(src []byte, off int) (line, column int) {
	off = min(max(off, 0), len(src))
	line = 1
	start := 0
	for i, c := range src[:off] {
		if c == '\n' {
			line, start = line+1, i+1
		}
	}
	return line, 1 + utf8.RuneCount(src[start:off])
}

// Offset is the byte offset of a line and a column (both from 1, the column in
// characters); it stays inside the text.
func Offset(src []byte, line, column int) int {
	off := 0
	for ; line > 1 && off < len(src); off++ {
		if src[off] == '\n' {
			line--
		}
	}
	for ; column > 1 && off < len(src) && src[off] != '\n'; column-- {
		_, n := utf8.DecodeRune(src[off:])
		off += n
	}
	return off
}
