package bindery

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
)

// File is one file of an edition.
type File struct {
	Path string // from the edition's folder, with slashes: "terms/total-head.html"
	Data []byte
}

// Edition is a bound book, ready to be written.
type Edition struct {
	BookID string
	Form   string // the form of the edition: "folder"
	Files  []File // sorted by path, without the marker
}

// Size is the number of bytes of all files.
func (e *Edition) Size() int {
	n := 0
	for _, f := range e.Files {
		n += len(f.Data)
	}
	return n
}

// File finds a file of the edition by its path.
func (e *Edition) File(path string) ([]byte, bool) {
	i, ok := slices.BinarySearchFunc(e.Files, path, func(f File, p string) int { return strings.Compare(f.Path, p) })
	if !ok {
		return nil, false
	}
	return e.Files[i].Data, true
}

// Kind groups the files of an edition for a short table.
type Kind struct {
	Name  string
	Files int
	Bytes int
}

// Kinds counts the files by the folder that they stand in.
func (e *Edition) Kinds() []Kind {
	var list []Kind
	for _, f := range e.Files {
		name := "front pages"
		if folder, _, ok := strings.Cut(f.Path, "/"); ok {
			name = folder
		}
		if i := slices.IndexFunc(list, func(k Kind) bool { return k.Name == name }); i >= 0 {
			list[i].Files++
			list[i].Bytes += len(f.Data)
			continue
		}
		list = append(list, Kind{Name: name, Files: 1, Bytes: len(f.Data)})
	}
	return list
}

// Marker is the file by which a folder is known as an edition. It lists every
// file, so that the tool never removes what it did not write.
const Marker = "edition.txt"

const markerHead = "Column & Bowl edition 1"

// marker writes the marker of an edition.
func (e *Edition) marker() []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s\nbook: %s\nform: %s\n\nMade by the columnbowl command, which replaces this folder as a whole. Files:\n", markerHead, e.BookID, e.Form)
	for _, f := range e.Files {
		fmt.Fprintln(&b, f.Path)
	}
	return b.Bytes()
}

// markerOf is what a marker says.
type markerOf struct {
	BookID, Form string
	Files        map[string]bool
}

func readMarker(text []byte) (markerOf, bool) {
	m := markerOf{Files: map[string]bool{Marker: true}}
	lines := strings.Split(strings.TrimSuffix(string(text), "\n"), "\n")
	if len(lines) < 5 || lines[0] != markerHead {
		return m, false
	}
	var okBook, okForm bool
	m.BookID, okBook = strings.CutPrefix(lines[1], "book: ")
	m.Form, okForm = strings.CutPrefix(lines[2], "form: ")
	for _, l := range lines[5:] {
		m.Files[l] = true
	}
	return m, okBook && okForm
}
