// Package assembly is the parts model: each build of the pump as its parts from
// top to bottom, and how many of each a pump has. What a build is made of stands
// in the book (content/builds); counts, lengths and masses are expressions over
// the terms of the network, so that an edited book needs no Go.
//
// A Model is loaded and checked once (Load), or read from a pack in a page
// (Unpack). Pieces then takes what package reckon found out about a pump and
// gives every piece with its place, its quantity, its length and its mass, and
// what is missing to tell more.
//
// Conventions. Values are in SI: metres and kilograms. NaN is a value that is
// not known. Terms, cautions and builds are known by their places in the lists
// of reckon.Book and of its build term. A run is a string of pieces, end to end,
// that makes the setting: column, shaft, tube.
package assembly

import "columnbowl/calcwasm/formula"

// Model is every build of the book, in the order of the build term's words.
type Model struct{ Builds []Build }

// Build is one kind of pump: its parts in groups, from top to bottom.
type Build struct {
	ID, Name    string
	Value       int    // place among the words of the term build
	Asked, Made int    // terms: the setting wanted, and the one that the pieces make
	Options     []int  // choices that decide which parts there are
	Totals      []int  // terms worth telling with the pieces: weights, oil, cable
	Hook        []int  // of the totals those of which the largest is shown large
	Refuse      []int  // cautions that make the combination impossible
	Notes       []Note // what is said beside the list
	Groups      []Group
}

// Note is a sentence to be told while its condition holds.
type Note struct {
	When *formula.Expr // nil if it is always told
	Say  string
}

// Group is a stretch of the pump: driver, head, column, bowls, suction.
type Group struct {
	ID, Name string
	Mass     *formula.Expr // of the whole group where its lines have no masses of their own; nil if there is none
	Lines    []Line
}

// Line is a part at one place of the pump.
type Line struct {
	Part  string        // id of its page
	Name  string        // of the page: “Column pipe”
	Label string        // which of several: “top special”; may be empty
	With  string        // id of the part that it comes with and is not ordered apart from; may be empty
	Run   string        // the run that its length belongs to; may be empty
	Count *formula.Expr // nil for one
	// Length and Mass are those of one piece; nil where they are not told.
	Length, Mass *formula.Expr
	When         *formula.Expr // nil if every pump of the build has it
}

// Of returns the build with a place among the words of the build term, or nil.
func (m *Model) Of(value int) *Build {
	for i := range m.Builds {
		if m.Builds[i].Value == value {
			return &m.Builds[i]
		}
	}
	return nil
}
