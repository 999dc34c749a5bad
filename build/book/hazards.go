package book

import (
	"errors"
	"io/fs"
	"slices"

	"go.yaml.in/yaml/v3"

	"columnbowl/build/markdown"
	"columnbowl/calcwasm/formula"
)

// HazardsFile holds the cautions that pages open with, so that they are the same
// everywhere.
const HazardsFile = "cautions.yaml"

// Hazards is what can hurt somebody.
type Hazards struct {
	Stop string // the sentence that stands before all of them
	List []Hazard

	titled
}

// Hazard is one of them. A page on which one of the words stands names it.
type Hazard struct {
	ID, Name, Say string
	Words         []string
}

// Find is the hazard of an id, or nil.
func (h *Hazards) Find(id string) *Hazard {
	i := slices.IndexFunc(h.List, func(x Hazard) bool { return x.ID == id })
	if i < 0 {
		return nil
	}
	return &h.List[i]
}

// hazards reads the file, if the book has one, and follows the names on pages.
func (l *loading) hazards() {
	h := &l.book.Hazards
	src, err := fs.ReadFile(l.fsys, HazardsFile)
	switch {
	case err == nil:
		l.book.Files[HazardsFile] = src
		h.titled = readYAML(HazardsFile, src, markdown.Span{Len: len(src)}, "the file "+HazardsFile, []field{
			{"stop", true, text(&h.Stop)}, {"hazards", true, items(h.hazard)}}, &l.found)
	case !errors.Is(err, fs.ErrNotExist):
		l.found.Add(HazardsFile, 0, 0, "This file cannot be read: "+reason(err)+".", "")
	}
	var ids []string
	for i, x := range h.List {
		if slices.Contains(ids, x.ID) {
			s := h.Where(item("hazards", i) + ".id")
			l.found.Add(HazardsFile, s.Off, s.Len, "The hazard “"+x.ID+"” stands here twice.", "")
		}
		ids = append(ids, x.ID)
	}
	for _, p := range l.book.Pages() {
		l.hazardNames(p.File, &p.titled, p.Hazards, ids)
	}
	for _, t := range l.book.Tables {
		l.hazardNames(t.File, &t.titled, t.Hazards, ids)
	}
}

// hazardNames follows the hazards that a page or a table names.
func (l *loading) hazardNames(file string, at *titled, names, known []string) {
	for i, id := range names {
		if id != "" && !slices.Contains(known, id) {
			s := at.Where(item("hazards", i))
			l.found.Add(file, s.Off, s.Len, "There is no hazard “"+id+"” in "+HazardsFile+".", formula.Nearest(id, known))
		}
	}
}

func (h *Hazards) hazard(y *yamlReader, at string, n *yaml.Node) {
	var x Hazard
	y.mapping(at, "a hazard", n, []field{{"id", true, text(&x.ID)}, {"name", true, text(&x.Name)}, {"say", true, text(&x.Say)}, {"words", false, texts(&x.Words)}})
	h.List = append(h.List, x)
}
