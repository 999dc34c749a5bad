package book

import (
	"path"
	"slices"
	"strings"

	"columnbowl/build/markdown"
	"columnbowl/build/report"
)

// Example is a file of the content that stands in a guide. It is no part of the
// book, but it must be one that could be.
type Example struct {
	Guide *Guide
	Block *markdown.Block
	File  string // "terms/pond-depth.md"
}

// Examples lists the examples of the guides, in their order.
func (b *Book) Examples() []Example {
	var list []Example
	for _, g := range b.Guides {
		for _, k := range g.Doc.Blocks {
			if k.Kind == markdown.Example && !k.Unclosed {
				list = append(list, Example{g, k, k.Head})
			}
		}
	}
	return list
}

// WithExamples loads the book once more with the examples of its guides among
// its files, as if an author had put them there. The guides themselves, and the
// drawings, are left out. The list tells what is wrong with the examples, at
// their places in the guides. Both are nil if there are no examples.
//
// An example whose file the book has already takes its place: a build always
// does, because the pumps of the book are three, and an author may have copied
// the example and changed it since.
func (b *Book) WithExamples() (*Book, report.List) {
	examples := b.Examples()
	if len(examples) == 0 {
		return nil, nil
	}
	files := memory{}
	for name, text := range b.Files {
		if !strings.HasPrefix(name, folders[GuidePage]+"/") {
			files[name] = text
		}
	}
	var found report.List
	for _, e := range examples {
		folder := path.Dir(e.File)
		if path.Clean(e.File) != e.File || !slices.Contains(exampleFolders, folder) {
			found.Add(e.Guide.File, e.Block.At(true, 0), max(len(e.Block.Head), 1), "An example names the file that it would be, in one of the folders "+strings.Join(exampleFolders, ", ")+".", "")
			continue
		}
		files[e.File] = []byte(e.Block.Body)
	}
	with, more := Load(files)
	return with, append(found, b.InGuides(more)...).Place(b.Files)
}

// exampleFolders are those that guides show files of.
var exampleFolders = []string{"terms", "parts", "builds", "bowls", "questions", "exercises", "pairs", "chapters", ChoicesFolder, FaultsFolder}

// InGuides keeps what a list tells of the examples, and puts it to its place in
// the guides.
func (b *Book) InGuides(list report.List) report.List {
	examples := b.Examples()
	var out report.List
	for _, d := range list {
		i := slices.IndexFunc(examples, func(e Example) bool { return e.File == d.File })
		if i < 0 {
			continue
		}
		e := examples[i]
		from, to := e.Block.At(true, 0), e.Block.At(true, len(e.Block.Head))
		if d.Off != report.WholeFile {
			from = e.Block.At(false, d.Off)
			to = max(e.Block.At(false, d.Off+d.Len), from)
		}
		d.File, d.Off, d.Len = e.Guide.File, from, to-from
		out = append(out, d)
	}
	return out
}
