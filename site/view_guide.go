package site

import "html/template"

// Guide is a page for those who work with the book: authors and trainers
// (guides/ID.html).
type Guide struct {
	Frame
	ID, Name string        // required
	Says     template.HTML // whom it helps with what
	Contents []Link
	Body     template.HTML
	Sources  []template.HTML
}

// Shown is a stretch of a notation or a command, as it is written.
type Shown struct {
	Language string        // required: one of those of build/highlight
	Code     template.HTML // its words in classes
}

// ShownFile is a file of the content with what the pages make of it, stretch
// by stretch.
type ShownFile struct {
	File string // required: "terms/total-head.md"
	Rows []ShownRow
}

// ShownRow is a stretch of a file and its result; a stretch whose result stands
// elsewhere has none.
type ShownRow struct{ Code, Result template.HTML }
