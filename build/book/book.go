// Package book loads the handbook: the title blocks and texts of its terms,
// parts and chapters, its order, and the network of its relations.
//
// Conventions. A Book is never changed once it is loaded, so pages can be made
// side by side. Pages keep where each value of their title block stands, so
// that later checks can point at it. An id is the file's name without .md:
// small words joined by hyphens. All lists have a fixed order: terms and parts
// by id, chapters as the handbook orders them.
package book

import (
	"columnbowl/build/markdown"
	"columnbowl/build/report"
	"columnbowl/calcwasm/assembly"
	"columnbowl/calcwasm/reckon"
)

// Book is the handbook as its authors wrote it.
type Book struct {
	Handbook Handbook
	Asking   Asking     // how people say the facts
	Hazards  Hazards    // the cautions that pages open with
	Terms    []*Term    // by id; the same order as Source.Terms and Engine.Terms
	Parts    []*Part    // by id
	Chapters []*Chapter // in the order of the book; those it does not name at the end
	Asked    []*Asked   // the questions of the counter, by id
	Bowls    []*Bowl    // the families of bowls, by nominal size
	Pairs    []*Pair    // words that are easily confused, by id
	Guides   []*Guide   // for those who work with the book, by id
	Tables   []*Table   // of choices and of faults, by file

	Exercises []*Exercise // by id

	TermByID    map[string]*Term
	PartByID    map[string]*Part
	ChapterByID map[string]*Chapter
	AskedByID   map[string]*Asked
	PlaceByID   map[string]*Place

	// Shared lists words that several terms or parts go by, each with the ids:
	// a search for the word shows them all.
	Shared map[string][]string

	// Shapes are the profiles of the cutaway drawings; nil if the book has none.
	Shapes *Shapes

	Files  report.Files   // the text of every file, by its name in the content folder
	Source *reckon.Source // what the engine is given
	Blocks []BlockRef     // for each block of Source where it stands

	// Builds are the kinds of pump with their parts, and Assembly what the engine
	// makes of them. Assembly is nil when a build or a block has problems.
	Builds   []*Build
	Assembly *assembly.Model

	// Engine is the network. It is nil when a title block has problems. When
	// blocks have problems, Whole is false, and Source, Blocks and Engine hold
	// only the sound ones: enough to go on checking, not to publish.
	Engine *reckon.Book
	Whole  bool
}

// BlockRef says where a block of the Source stands.
type BlockRef struct {
	Page  *Page
	Block *markdown.Block
}

// PageKind says what a page is about.
type PageKind uint8

const (
	TermPage PageKind = iota
	PartPage
	ChapterPage
	AskedPage
	ExercisePage
	PairPage
	GuidePage
)

var pageKinds = [...]string{"term", "part", "chapter", "question", "exercise", "pair", "guide"}

func (k PageKind) String() string { return pageKinds[k] }

// Page is what all pages have in common.
type Page struct {
	Kind PageKind
	ID   string // file name without .md
	File string // "terms/total-head.md"
	Name string // "Total head"
	Also []string
	Doc  *markdown.Doc

	Hazards []string // ids of what can hurt somebody who does what the page is about

	titled
}

// Term is the page of a quantity or a choice. Texts stand as they were written;
// Book.Engine has them as numbers.
type Term struct {
	Page
	Index     int    // its place in Book.Terms, Source.Terms and Engine.Terms
	Running   string // the name inside a sentence, where it is not just the name in small letters: "Reynolds number"
	Symbol    string // "H", "H_b"
	US, SI    string // unit symbols; "1" for a pure number
	From, To  string // range
	Place     string // id of the place on the rail
	Ask       string // the question to a person who can supply it
	KindWord  string // "quantity", "count" or "choice"
	Values    []Choice
	Applies   []string // builds it exists in; empty for all
	Otherwise string   // its value in other builds
	Pressure  string   // "", "gauge" or "absolute"
	Confused  []string // ids of terms
	Source    string
}

// Choice is one value of a term that is a choice.
type Choice struct{ ID, Name string }

// Part is the page of a component.
type Part struct {
	Page
	Builds     []string // of water-lubricated, oil-lubricated, submersible
	Place      string
	Motion     string   // turns, stands or both
	Wetted     []string // of water, oil, leakage, grease, filling; or dry alone
	Pressure   string   // yes or no: holds discharge or bowl pressure
	Number     string   // per pump
	Material   string
	Size       string     // how it is sized
	Wear       string     // signs of wear and failure
	Neighbours Neighbours // as its page names them
	Touching   Neighbours // those, and the parts whose pages name this one
	Confused   []string   // ids of parts
	Source     string
}

// Chapter is a page of running text.
type Chapter struct {
	Page
	Place    string
	Aims     []string
	Takeaway []string
	Source   string
}

// Asked is a question that customers ask at the counter, with its answer.
type Asked struct {
	Page          // Name is the question as it is asked, Also other ways to ask it
	Place  string // id of the place on the rail
	Answer string // short and right: what to say on the telephone
	Source string
}

// Handbook is the order of the book.
type Handbook struct {
	Title, ID, Version string
	Units              string // "us" or "si": which stands large before the reader chooses
	Money              string // the sign that prices are printed with
	About              string // a short paragraph on what the book is; may be empty
	Places             []Place
	Chapters           []string
	Chain              []Group // the groups of the page from well to wire
	ChainTitle         string  // whose facts the chain opens with: "Quillbeck Orchard"
	ChainFacts         []Fact  // the facts the chain opens with
	ChainWant          string  // the term it looks for at first; may be empty
	Desk               []Group // the groups of the enquiry sheet; none: the book has no desk
	DeskAsk            []Fact  // what is asked there, in this order: a term, and why it matters
	DeskWant           string  // the result of the enquiry sheet
	Choice             Opening // the sheet of the page on which bowls are chosen; without groups there is none
	DeskWhat           []WhatIf
	TakeOff            Opening // the sheet of the page that counts pieces; without groups there is none

	titled
}

// Place is one of the places of the rail, top to bottom.
type Place struct{ ID, Name, About string }

// Group is a titled group of terms of the chain or of the desk.
type Group struct {
	Name  string
	Terms []string
}

// WhatIf is a prepared question of the desk, which opens with the sheet's
// numbers in. By and Sizes are both empty where nothing is changed.
type WhatIf struct {
	Name   string   // as customers ask it
	Show   []string // the terms that answer it; the first is looked for
	Change []string // the terms that are changed, those of them that are facts
	By     string   // by how much: "50 ft"
	Sizes  []string // or to the next larger of these
	Page   string   // the question of the counter that says more
}

// Opening is a sheet of facts in groups, and what it opens with.
type Opening struct {
	Groups []Group
	Title  string // whose facts: "Quillbeck Orchard"
	Facts  []Fact
	Want   string // the term it looks for at first; may be empty
}

// Fact is a term and its value, as text: "static-level", "140 ft".
type Fact struct{ Term, Text string }

// titled knows where the values of a title block (or of handbook.yaml) stand.
type titled struct{ at map[string]markdown.Span }

// Where is the place of a value, named by its path: "range.from", "confused.1",
// "chain.0.terms.2". A value that is not there has the place of what it would
// stand in.
func (t *titled) Where(field string) markdown.Span {
	for {
		if s, ok := t.at[field]; ok {
			return s
		}
		if field == "" {
			return markdown.Span{}
		}
		field = parent(field)
	}
}

// parent is the path without its last step; of a single step it is "".
func parent(field string) string {
	for i := len(field) - 1; i >= 0; i-- {
		if field[i] == '.' {
			return field[:i]
		}
	}
	return ""
}
