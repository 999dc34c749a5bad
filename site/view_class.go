package site

import "html/template"

// Handouts is the file of a class's sheets, to be printed: one sheet for each
// learner and exercise.
type Handouts struct {
	Title, Book, Version string
	Paper                string // "a4" or "letter"
	Sheets               []Handout
}

// Handout is one exercise of one learner, with room for the answers.
type Handout struct {
	Exercise, Learner, Sign, Seed, Level string
	Book, Version                        string
	Text                                 template.HTML
	Cautions                             []string
	Numeric                              bool // numbers are asked
	Items                                []Asked
}

// Asked is one thing asked on a handout.
type Asked struct {
	N       int
	Ask     string
	Unit    string // of a number
	Options []Lettered
	Numeric bool
	Order   bool
}

// Lettered is an answer to choose, or a thing to put in order.
type Lettered struct{ Letter, Text string }

// Keys is the trainer's file: the right answers of the class at a glance, then
// for each sheet the way to them and what each mistake gives.
type Keys struct {
	Title, Book, Version, Paper string
	Glances                     []Glance
	Sheets                      []KeySheet
}

// Glance is the right answers of all learners to one exercise, to walk round with.
type Glance struct {
	Exercise string
	Items    []GlanceItem
	Rows     []GlanceRow
}

// GlanceItem heads a column of answers; only numbers have a name and a unit,
// because choices differ from sheet to sheet.
type GlanceItem struct {
	N          int
	Name, Unit string
}

// GlanceRow is one learner's right answers.
type GlanceRow struct {
	Sign, Learner string
	Answers       []string
}

// KeySheet is the key of one sheet.
type KeySheet struct {
	Exercise, Learner, Sign, Seed string
	Facts                         []Known
	Items                         []KeyItem
}

// Known is a fact of a sheet.
type Known struct{ Name, Value string }

// KeyItem is the key of one item.
type KeyItem struct {
	N          int
	Ask, Right string
	Steps      []string
	Slips      []KeySlip
	Say        string
}

// KeySlip is what one mistake gives.
type KeySlip struct{ Value, Say string }

// ClassReport is what came out of a class: which mistakes were made how often
// and by whom, what to teach again first, and each learner's answers.
type ClassReport struct {
	Title, Book, Version, Paper string
	Sheets                      int
	Signs                       []string // of the learners, over the columns of the picture; none for a large class
	Slips                       []ClassSlip
	Teach                       []Teach // pages
	Hard                        []Teach // questions to choose from, and orders
	Items                       []ClassItem
	Learners                    []Report
	Faults                      []string
}

// ClassSlip is a row of the picture: one mistake of the class.
type ClassSlip struct {
	N        int
	Say      string
	Page     string // the term to read again
	Count    int
	Bar      template.HTML
	Learners []string // for each learner: "sure", "maybe" or ""
	Who      string   // in place of that for a large class
}

// Teach is one thing to teach again.
type Teach struct {
	Name string
	Who  string
	N    int
	Of   int // how many had a question; 0 for a page
}

// ClassItem is how the class did in one item.
type ClassItem struct {
	Exercise, Ask      string
	Right, Part, Wrong int
	Bar                template.HTML
}

// Report is what one learner did on one sheet.
type Report struct {
	First                   bool // of this learner's sheets
	Learner, Sign, Exercise string
	Points, Of              int
	Items                   []Judged
}

// Judged is one answer with its mark.
type Judged struct {
	N                  int
	Ask, Answer, Right string
	Verdict            string // picks the word: "right", "mistake", …
	Own                bool
	Say                string
	Causes             []string
	Read               string // the pages to read again
}
