package book

import (
	"errors"
	"io/fs"
	"path"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"

	"columnbowl/build/markdown"
	"columnbowl/build/report"
	"columnbowl/calcwasm/assembly"
)

// BuildFolder holds one file for each build: its parts from top to bottom.
const BuildFolder = "builds"

// Build is a file of the builds' folder. The names of its parts are those of
// their pages.
type Build struct {
	File string // "builds/submersible.yaml"
	assembly.BuildSource

	titled
}

// builds reads the files of the builds, in the order of the pumps of the book.
// Folders beside them hold what is drawn of a build, and are not read here.
func (l *loading) builds() {
	files, err := fs.ReadDir(l.fsys, BuildFolder)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		l.found.Add(BuildFolder, report.WholeFile, 0, "This folder cannot be read: "+reason(err)+".", "")
	}
	for _, f := range files {
		if !f.IsDir() && !strings.HasPrefix(f.Name(), ".") {
			l.build(path.Join(BuildFolder, f.Name()))
		}
	}
	slices.SortStableFunc(l.book.Builds, func(a, b *Build) int { return place(Builds, a.ID) - place(Builds, b.ID) })
}

func (l *loading) build(name string) {
	id, ok := strings.CutSuffix(path.Base(name), ".yaml")
	if !ok {
		l.found.Add(name, report.WholeFile, 0, "Only builds (files whose name ends in .yaml) belong into "+BuildFolder+".", "")
		return
	}
	src, err := fs.ReadFile(l.fsys, name)
	if err != nil {
		l.found.Add(name, report.WholeFile, 0, "This build cannot be read: "+reason(err)+".", "")
		return
	}
	l.book.Files[name] = src
	b := &Build{File: name}
	b.ID = id
	b.titled = readYAML(name, src, markdown.Span{Len: len(src)}, "a build", b.fields(), &l.found)
	for g := range b.Groups {
		for i := range b.Groups[g].Lines {
			b.Groups[g].Lines[i].Name = l.partName(b.Groups[g].Lines[i].Part)
		}
	}
	l.book.Builds = append(l.book.Builds, b)
}

// partName is the name of a part's page. A part without one is an error that
// the proof tells; its id stands for its name until then.
func (l *loading) partName(id string) string {
	if p := l.book.PartByID[id]; p != nil {
		return p.Name
	}
	if id == "" {
		return ""
	}
	return capital(strings.ReplaceAll(id, "-", " "))
}

func (b *Build) fields() []field {
	return []field{
		{"name", true, text(&b.Name)},
		{"asked", true, text(&b.Asked)},
		{"made", true, text(&b.Made)},
		{"options", false, texts(&b.Options)},
		{"totals", false, texts(&b.Totals)},
		{"hook", false, texts(&b.Hook)},
		{"refuse", false, texts(&b.Refuse)},
		{"notes", false, items(b.note)},
		{"groups", true, items(b.group)},
	}
}

func (b *Build) note(y *yamlReader, path string, n *yaml.Node) {
	var s assembly.NoteSource
	y.mapping(path, "a note", n, []field{{"when", false, text(&s.When)}, {"say", true, text(&s.Say)}})
	b.Notes = append(b.Notes, s)
}

func (b *Build) group(y *yamlReader, path string, n *yaml.Node) {
	var g assembly.GroupSource
	y.mapping(path, "a group of parts", n, []field{
		{"id", true, text(&g.ID)},
		{"name", true, text(&g.Name)},
		{"mass", false, text(&g.Mass)},
		{"parts", true, items(func(y *yamlReader, path string, n *yaml.Node) {
			var s assembly.LineSource
			y.mapping(path, "a part of a build", n, []field{
				{"part", true, text(&s.Part)},
				{"label", false, text(&s.Label)},
				{"with", false, text(&s.With)},
				{"run", false, text(&s.Run)},
				{"count", false, text(&s.Count)},
				{"length", false, text(&s.Length)},
				{"mass", false, text(&s.Mass)},
				{"when", false, text(&s.When)},
			})
			g.Lines = append(g.Lines, s)
		})},
	})
	b.Groups = append(b.Groups, g)
}

// assemble checks the builds against the network. Without a whole network they
// are not judged: what is wrong with them may be wrong with a term only.
func (l *loading) assemble() {
	b := l.book
	if b.Engine == nil || !b.Whole {
		return
	}
	src := &assembly.Source{}
	for _, k := range b.Builds {
		src.Builds = append(src.Builds, k.BuildSource)
	}
	model, problems := assembly.Load(src, b.Engine)
	for _, p := range problems {
		k := b.Builds[p.Build]
		s := k.Where(p.Field)
		off, length := s.Off+p.Off, p.Len
		switch {
		case p.Field == "" || length == 0:
			off, length = s.Off, s.Len
		case off < len(b.Files[k.File]) && (b.Files[k.File][s.Off] == '"' || b.Files[k.File][s.Off] == '\''):
			off++
		}
		l.found.Add(k.File, off, length, p.Message, p.Suggest)
	}
	if len(problems) == 0 {
		b.Assembly = model
	}
}
