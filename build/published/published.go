// Package published compares what the book computes with values that stand
// outside it: published tables, worked examples of textbooks and handbooks.
//
// Conventions. One CSV file holds the cases of one source. It begins with
// comment lines:
//
//	# source: the work, with its table or equation and page
//	# read in: where the text was read (wanted as soon as a row is marked read)
//	# note: anything a reader of the numbers should know; any number of lines
//
// then the header case,given,term,expect,tolerance,mark,note and one row for
// each case:
//
//	given      facts as on a command line, separated by “; ”:
//	           capacity = 500 gpm; lift = 60 ft
//	           “choose column-loss = NAME” takes an estimate that is not the first
//	term       the term to compute
//	expect     its published value, with a unit: 141.8 ft
//	tolerance  what the source's own rounding allows: a quantity of the same
//	           dimension (0.1 ft), or a share in per cent (0.5 %); for a term that
//	           is itself in per cent, points of it. “exact” allows the last bits only
//	mark       read, derived, from memory, common practice, table (a cell of a
//	           table that the book itself holds: shows that it was copied rightly),
//	           or disagrees (seen in the source, and the book gives another value or
//	           none; the note has to say why)
//
// A tolerance is never widened to make a case pass, and a row that does not
// agree is not left out: it is marked, and fails should the two come to agree.
// Where the book refuses to compute a value (a pipe under 2 in, an altitude
// below its range), the note says so with the words “The book does not compute”:
// a row that says this fails when a value comes out, and a row that does not say
// it fails when none does. A fact that is only missing is no refusal.
//
// Reading is strict: what is not understood is told with file and line, and
// nothing is run.
package published

import (
	"columnbowl/calcwasm/reckon"
)

// Mark says how a value came into its file.
type Mark uint8

const (
	Read      Mark = iota // seen in the source: an outside check
	Derived               // computed from a formula or from read values: tests arithmetic
	Memory                // known and not looked up: a statement to verify
	Practice              // a rule of the trade
	Disagrees             // seen in the source, and the book gives another value: the note says why
	Table                 // a cell of a table that the book holds: shows only that it was copied rightly
)

// notComputed are the words by which a note tells that the book refuses.
const notComputed = "The book does not compute"

var marks = [...]string{"read", "derived", "from memory", "common practice", "disagrees", "table"}

func (m Mark) String() string { return marks[m] }

// Set is all files of cases.
type Set struct {
	Files []*File // by name
	book  *reckon.Book
}

// File is the cases of one source.
type File struct {
	Name   string // "05_power_examples.csv"
	Source string // the work, its table and page
	ReadIn string // where it was read
	Notes  []string
	Cases  []*Case
}

// Case is one published value and the facts that lead to it.
type Case struct {
	File      *File
	Line      int
	Name      string
	Facts     []Setting
	Choose    []Setting // estimates by name
	Term      int       // place in the book
	Expect    float64   // SI
	Tolerance float64   // SI; 0 for exact
	Mark      Mark
	Note      string

	ExpectText, ToleranceText string // as written
}

// Setting is a term and the text of its value, as a person would type it.
type Setting struct {
	Term int
	Text string
}

// Problem is one thing wrong with a file.
type Problem struct {
	File    string
	Line    int // 0 for the file as a whole
	Message string
}

// Cases lists the cases of all files.
func (s *Set) Cases() []*Case {
	var list []*Case
	for _, f := range s.Files {
		list = append(list, f.Cases...)
	}
	return list
}
