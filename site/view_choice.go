package site

import "html/template"

// Choosing is the page on which bowls are chosen (bowls.html): a sheet of facts,
// and the families ranked for them.
type Choosing struct {
	Frame
	Lead    template.HTML
	DeskURL string        // "" if the book has no such page
	Sheet   *Sheet        // required
	Choice  *Ranking      // required: what the engine told for the facts of the sheet
	SVG     template.HTML // required: the curves of the first family
}

// Ranking is the ranking as the engine tells it in its reply: the fields are
// those of DEVELOPERS.md, and scripts/bowls.ts writes the same when the facts
// change.
type Ranking struct {
	Drawn, Capacity, SVG string
	At                   int
	Columns              []ChoiceColumn
	Families             []ChoiceFamily
	Column               ColumnRanking
}

// ChoiceColumn is a term that is told of every family.
type ChoiceColumn struct{ ID, Name string }

// ChoiceFamily is one family in the ranking.
type ChoiceFamily struct {
	ID, Name, Speed, Demo, Verdict, Stages string
	Shaft                                  bool
	Cells                                  []PieceText
	Reasons                                []ChoiceReason
}

// ChoiceReason is a sentence for or against a family.
type ChoiceReason struct{ Kind, Term, US, SI string }

// ColumnRanking is what the engine told of columns and shafts.
type ColumnRanking struct {
	Columns []ChoiceColumn
	Options []ColumnOption
}

// ColumnOption is one column with its shaft.
type ColumnOption struct {
	Column, Tube, Shaft string
	Cells               []PieceText
	Reasons             []ChoiceReason
}
