// Package markdown reads a page of the handbook: a title block, then CommonMark
// with tables, in which fenced blocks of the notation become typed blocks and
// links with the schemes term:, part: and chapter: become typed links.
//
// Conventions. Every offset is a byte offset in the whole file, title block
// included. A Doc is never changed once it is made, so that pages can be
// rendered side by side. Markdown itself cannot fail; what a page must not hold
// (raw HTML, an unknown fenced language, a link that leads nowhere by its form)
// is told as diagnostics. Whether a link's goal exists is not known here.
//
// It is the only package that knows the Markdown library.
package markdown

import (
	"strings"

	"github.com/yuin/goldmark/ast"
)

// Kind is the first word of a fenced block that has a meaning.
type Kind string

// The fenced blocks of the notation, the check question and the picture of a
// chapter, the tables of families, and the blocks of an exercise.
const (
	Formula  Kind = "formula"
	SI       Kind = "si"
	Estimate Kind = "estimate"
	Assume   Kind = "assume"
	Worked   Kind = "worked"
	Mistake  Kind = "mistake"
	Caution  Kind = "caution"
	Question Kind = "question"
	Picture  Kind = "picture"
	Behind   Kind = "behind" // what figures of a text rest on: checked, and not shown
	Bowls    Kind = "bowls"  // a table of the families of bowls, made when the book is bound
	Draw     Kind = "draw"
	Ask      Kind = "ask"
	Choose   Kind = "choose"
	Order    Kind = "order"
	Example  Kind = "example" // a file of the content, in a guide: compiled, and shown with its result
	Show     Kind = "show"    // a stretch of one, or a command, in a guide: shown as it is written
)

// What a block of the kind Bowls shows, as its head says.
const (
	BowlSummary = "summary"
	BowlPoints  = "points"
)

// Shown are the notations that a block of the kind Show can be in.
var Shown = []string{"page", "notation", "yaml", "csv", "shell"}

// Kinds lists the blocks in the order in which authors learn them.
var Kinds = []Kind{Formula, SI, Estimate, Assume, Worked, Mistake, Caution, Question, Picture, Behind, Bowls, Draw, Ask, Choose, Order, Example, Show}

// PlainText is the fenced language that means nothing: text kept as it stands.
const PlainText = "text"

// Doc is a page that has been read.
type Doc struct {
	File     string
	Source   []byte // the whole file
	Title    Span   // the YAML of the title block, without its --- lines; empty if there is none
	Blocks   []*Block
	Links    []*Link
	Headings []*Heading
	Pieces   []Piece // what stands at the top level, in order
	Torn     bool    // some fence could not be read, so a block may be missing

	text []byte // Source with the title block blanked: what the tree points into
	root ast.Node
}

// Span is a stretch of a file.
type Span struct{ Off, Len int }

// Block is one fenced block of the notation.
type Block struct {
	Index int // its place in Doc.Blocks
	Kind  Kind
	Head  string // what follows the first word on the fence's line
	Body  string // the lines inside, without the marks of a list or a quote around them
	Span         // the first word on the fence's line

	Unclosed bool // its closing line is missing: the body is not what was meant

	// Of a question:
	Ask, Answer string

	// Of a picture: its name, the parts lit in it, and the words below it.
	Name string
	Lit  []string
	Say  string

	headOff int
	lines   []line
}

// line says where one line of a body stands in the file.
type line struct{ body, file, padding int }

// At is the file offset of a byte of the block's head or body. An offset behind
// the end gives the end of the last line, before the line's end.
func (b *Block) At(head bool, off int) int {
	if head {
		return b.headOff + min(max(off, 0), len(b.Head))
	}
	off = min(max(off, 0), len(strings.TrimRight(b.Body, "\r\n")))
	at := b.Off + b.Len
	for _, l := range b.lines {
		if l.body > off {
			break
		}
		at = l.file + max(off-l.body-l.padding, 0)
	}
	return at
}

// Scheme says what a link leads to.
type Scheme string

// The schemes of links. Here is a heading of the same page: "#the-tape".
const (
	ToTerm    Scheme = "term"
	ToPart    Scheme = "part"
	ToChapter Scheme = "chapter"
	ToAsked   Scheme = "question"
	ToTrain   Scheme = "exercise" // an exercise; behind # may stand the sheet: seed=4711, seed=4711&view=projector
	ToPair    Scheme = "pair"
	ToGuide   Scheme = "guide"
	ToBuild   Scheme = "build" // the page of a pump; behind # one of its drawings
	ToTable   Scheme = "table" // a table of choices or of faults
	ToPage    Scheme = "page"  // a page that the book has once: see Pages
	Here      Scheme = ""
)

// Pages are the pages that a book has once, by the names that links call them.
var Pages = []string{"home", "well-to-wire", "desk", "bowls", "take-off", "builds", "terms", "parts", "questions", "practice", "cards", "progress", "glossary", "pairs"}

// Link is a link of the running text.
type Link struct {
	Scheme   Scheme
	ID       string // of the term, part, chapter or question; empty for Here
	Fragment string // what follows "#"
	Text     string // the words of the link, without marks
	Title    string // "…" behind the goal
	Span            // the goal as it is written, or the link's beginning
}

// Heading is a heading of the running text.
type Heading struct {
	Level int // 2 to 6
	ID    string
	Text  string
	Span
}

// PieceKind says what stands at the top level of a page.
type PieceKind uint8

const (
	Other       PieceKind = iota // a list, a quote, a table, a rule, plain text
	Paragraph                    //
	HeadingPart                  // a heading
	BlockPart                    // a block of the notation
)

// Piece is one thing at the top level of a page.
type Piece struct {
	Kind  PieceKind
	Block *Block   // of a BlockPart
	Head  *Heading // of a HeadingPart
	Span
}

// Lead is the number of pieces before the first block of the notation or the
// first heading: the definition, on the page of a term.
func (d *Doc) Lead() int {
	for i, p := range d.Pieces {
		if p.Kind == HeadingPart || p.Kind == BlockPart {
			return i
		}
	}
	return len(d.Pieces)
}
