package reckon

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// Fact is a value that somebody supplies.
type Fact struct {
	Term              int
	Low, Likely, High float64    // SI; a choice has the place of its word
	Rounding          float64    // half of the last digit typed, in SI: how far it may be off
	Text              string     // as typed
	Unit              *unit.Unit // in which it was typed; nil for a choice
	Notes             []string   // words on how it was read
	Height            bool       // typed as a height in the field of a pressure: Low, Likely and High are metres, turned when the specific gravity is known
}

// Question is what Reckon is asked.
type Question struct {
	Facts  []Fact
	Want   int            // the term wanted; -1 for all that follows
	Plain  bool           // circles of relations are not cut (step 7 of the guide): much faster where many questions are compared
	Choose map[int]string // the estimate to use for a term, by name, in place of its first one
}

// State is how a term stands in a Result.
type State uint8

const (
	Missing       State = iota // not known; a person could supply it
	Waits                      // not known; it follows once others are
	Given                      // supplied
	Follows                    // derived by identities
	Estimated                  // filled by an estimate
	Assumed                    // filled by an assumption
	Clashes                    // given or derived, and contradicted
	NotApplicable              // does not exist in this build
	Outside                    // computed, but outside its validity
	Several                    // more than one value satisfies the relations
)

var stateNames = [...]string{"missing", "waits", "given", "follows", "estimated", "assumed", "clash", "not-applicable", "outside", "several"}

func (s State) String() string { return stateNames[s] }

// Value is what a Result knows of one term.
type Value struct {
	State             State
	Low, Likely, High float64       // SI; NaN if not known
	Rounding          float64       // how far rounding in the facts may have moved it
	Rule              int           // the rule that gave it, -1 if none
	From              []int         // the terms it was computed from
	Expr              *formula.Expr // what was evaluated, nil if it was searched or assumed
	Searched          bool          // found by a search inside its range
	Loop              []int         // the terms of the loop that the search ran round
	Roots             []float64     // of Several: every value found
	Reason            string        // of Outside: why
	Alternatives      []Alternative
	Fact              int // place of the fact in the question, -1 if none
}

// Alternative is what one estimate of a term would give.
type Alternative struct {
	Rule   int
	Value  float64
	Reason string // why it gives nothing
	Chosen bool
}

// Clash is a relation that does not hold.
type Clash struct {
	Term       int     // the term on which it shows
	Rule       int     // the relation that fails
	Have, Want float64 // the value the term has, and the one the relation asks for
	Facts      []int   // the given terms that cannot all be right
}

// CautionState is how a caution stands.
type CautionState struct {
	Caution int
	Truth   formula.Truth // True: it fires; False: clear; Unknown: not checked
}

// Result is all that follows from a Question.
type Result struct {
	Book     *Book
	Question Question
	Values   []Value // by term
	Order    []int   // the derived terms, in the order in which they were found
	Clashes  []Clash
	Cautions []CautionState
	Missing  [][]int // the smallest sets of facts that would give the wanted term
	Hangs    []Hang  // on which ranges and assumptions the wanted term hangs most

	env  *formula.Env
	base *run // with the likely values
}

// Known says whether a term has a value to go on with.
func (r *Result) Known(term int) bool {
	switch r.Values[term].State {
	case Given, Follows, Estimated, Assumed, Clashes, NotApplicable:
		return r.Values[term].Likely == r.Values[term].Likely
	}
	return false
}
