package site

import "html/template"

// Rules is the page of a table of choices or of faults (rules.html): a sheet of
// facts, and rows of which some hold for them.
type Rules struct {
	Frame
	ID    string // required: id of the table
	Name  string // required
	About template.HTML
	Sheet *Sheet // required
	Rows  []Rule
	Holds int // how many rows hold for the facts of the sheet
	Open  int // how many are not checked
}

// Rule is one row.
type Rule struct {
	ID                                string // required
	Say                               string // the condition in words
	When                              string // the condition as it is tested, in words of the terms
	State                             string // holds, not, unchecked: for the facts of the sheet
	Lacks                             string // what it lacks to be checked, names joined by commas
	For                               []string
	Against                           []string
	Decides                           bool
	Then, Prove, Reason, Mark, Source string
}
