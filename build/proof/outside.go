package proof

import (
	"columnbowl/build/book"
	"columnbowl/build/report"
)

// Outside takes what the published values say of a book: a line on all of them,
// and the ids of the terms that none of them checks, those that are computed
// and those that are facts. Each of these terms becomes a note.
func (s *Summary) Outside(b *book.Book, line string, computed, facts []string) {
	s.Published = line
	note := func(ids []string, rest string) {
		for _, id := range ids {
			t := b.TermByID[id]
			if t == nil {
				continue
			}
			at := t.Where("")
			s.Notes = append(s.Notes, report.Diagnostic{Severity: report.Info, File: t.File, Off: at.Off, Len: at.Len,
				Message: "No published value checks “" + id + "”" + rest + "."})
		}
	}
	note(computed, ", which is computed")
	note(facts, ": it is a fact, or follows from others backwards")
	s.Notes = s.Notes.Place(b.Files)
}
