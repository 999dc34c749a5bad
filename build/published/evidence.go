package published

import (
	"fmt"
	"slices"

	"columnbowl/calcwasm/formula"
)

// Evidence is what stands behind the computation of one term, for its page.
type Evidence struct {
	Read, Derived, Memory, Practice int
	Table                           int     // cells of the book's own tables: no outside check
	Disagrees                       int     // explained in their notes: no outside check
	Largest                         float64 // deviation in units of the source's rounding, over all cases that agree
	Files                           []*File // the sources, by name
	Failed                          int     // cases that do not hold
}

// Summary is what all cases say together.
type Summary struct {
	Evidence
	At *Case // where the largest deviation is; nil without cases
}

func (e *Evidence) add(o *Outcome) {
	switch o.Case.Mark {
	case Read:
		e.Read++
	case Derived:
		e.Derived++
	case Memory:
		e.Memory++
	case Practice:
		e.Practice++
	case Table:
		e.Table++
	case Disagrees:
		e.Disagrees++
	}
	if !o.Holds() {
		e.Failed++
	}
	if o.Case.Mark != Disagrees {
		e.Largest = max(e.Largest, o.Deviation)
	}
	if !slices.Contains(e.Files, o.Case.File) {
		e.Files = append(e.Files, o.Case.File)
	}
}

// Cases is how many cases there are in all.
func (e *Evidence) Cases() int {
	return e.Read + e.Derived + e.Memory + e.Practice + e.Table + e.Disagrees
}

// Gather sums the outcomes up: for each term, by its id, and for all.
func (s *Set) Gather(outcomes []Outcome) (byTerm map[string]*Evidence, all Summary) {
	byTerm = map[string]*Evidence{}
	for i := range outcomes {
		o := &outcomes[i]
		id := s.book.Terms[o.Case.Term].ID
		if byTerm[id] == nil {
			byTerm[id] = &Evidence{}
		}
		byTerm[id].add(o)
		if o.Case.Mark != Disagrees && (all.At == nil || o.Deviation > all.Largest) {
			all.At = o.Case
		}
		all.add(o)
	}
	return byTerm, all
}

// Unchecked lists the ids of the quantities and counts of the book that no read
// value checks, in the book's order: those that a relation of the book computes,
// and those that are facts (or follow only backwards). Choices are words and are
// not counted.
func (s *Set) Unchecked(byTerm map[string]*Evidence) (computed, facts []string) {
	target := make([]bool, len(s.book.Terms))
	for _, r := range s.book.Rules {
		if r.Relation != nil && r.Target >= 0 {
			target[r.Target] = true
		}
	}
	for i := range s.book.Terms {
		t := &s.book.Terms[i]
		if e := byTerm[t.ID]; t.Kind == formula.Choice || e != nil && e.Read > 0 {
			continue
		}
		if target[i] {
			computed = append(computed, t.ID)
		} else {
			facts = append(facts, t.ID)
		}
	}
	return computed, facts
}

// String is the line that a test run prints.
func (s *Summary) String() string {
	text := fmt.Sprintf("published checks: %d read in a source, %d arithmetic, %d from memory, %d common practice; %d table cells; %d disagree, explained; from %d files",
		s.Read, s.Derived, s.Memory, s.Practice, s.Table, s.Disagrees, len(s.Files))
	if s.At != nil {
		text += fmt.Sprintf("; largest deviation %.2f of the source's rounding (%s:%d, %s)", s.Largest, s.At.File.Name, s.At.Line, s.At.Name)
	}
	if s.Failed > 0 {
		text += fmt.Sprintf("; %d do not hold", s.Failed)
	}
	return text
}
