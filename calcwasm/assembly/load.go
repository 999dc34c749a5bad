package assembly

import (
	"strconv"
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// Source is the builds of the book as an author writes them.
type Source struct{ Builds []BuildSource }

// BuildSource is one build; its ID is a word of the term build.
type BuildSource struct {
	ID, Name, Asked, Made         string
	Options, Totals, Hook, Refuse []string // ids of terms; Refuse: of cautions, term/name
	Notes                         []NoteSource
	Groups                        []GroupSource
}

// NoteSource is a note with its condition, which may be empty.
type NoteSource struct{ When, Say string }

// GroupSource is a group of parts.
type GroupSource struct {
	ID, Name, Mass string
	Lines          []LineSource
}

// LineSource is a part of a build. All but Part may be empty.
type LineSource struct{ Part, Name, Label, With, Run, Count, Length, Mass, When string }

// Problem is one thing wrong with a Source.
type Problem struct {
	Build    int    // its place in the Source
	Field    string // which value: “groups.0.parts.3.count”
	Off, Len int    // the place in the value, in bytes
	Message  string
	Suggest  string
}

type loader struct {
	book     *reckon.Book
	at       int // the build being read
	problems []Problem
}

// Load parses and checks a Source against the network. The Model can be used
// only if there are no problems.
func Load(src *Source, book *reckon.Book) (*Model, []Problem) {
	l := &loader{book: book}
	m := &Model{}
	for i := range src.Builds {
		l.at = i
		m.Builds = append(m.Builds, l.build(&src.Builds[i]))
	}
	return m, l.problems
}

func (l *loader) fail(field string, off, length int, message, suggest string) {
	l.problems = append(l.problems, Problem{Build: l.at, Field: field, Off: off, Len: length, Message: message, Suggest: suggest})
}

func (l *loader) build(s *BuildSource) Build {
	b := Build{ID: s.ID, Name: s.Name, Value: l.word(s.ID)}
	b.Asked, b.Made = l.length("asked", s.Asked), l.length("made", s.Made)
	b.Options = l.terms("options", s.Options)
	b.Totals = l.quantities("totals", s.Totals)
	b.Hook = l.quantities("hook", s.Hook)
	for i, id := range s.Refuse {
		b.Refuse = append(b.Refuse, l.caution(item("refuse", i), id))
	}
	for i, n := range s.Notes {
		b.Notes = append(b.Notes, Note{When: l.condition(item("notes", i)+".when", n.When), Say: n.Say})
	}
	for i := range s.Groups {
		b.Groups = append(b.Groups, l.group(item("groups", i), &s.Groups[i]))
	}
	return b
}

func item(list string, i int) string { return list + "." + strconv.Itoa(i) }

// word finds the build among the words of the term that chooses it.
func (l *loader) word(id string) int {
	t, ok := l.book.Find(reckon.BuildTerm)
	if !ok || l.book.Terms[t].Kind != formula.Choice {
		l.fail("", 0, 0, "The book has no choice term “"+reckon.BuildTerm+"”, and so no builds to have parts.", "")
		return -1
	}
	values := l.book.Terms[t].Values
	for i, v := range values {
		if v == id {
			return i
		}
	}
	l.fail("", 0, 0, "“"+id+"” is not one of the builds: "+strings.Join(values, ", ")+". The file is named after its build.", formula.Nearest(id, values))
	return -1
}

func (l *loader) term(field, id string) int {
	t, ok := l.book.Find(id)
	if !ok && id != "" {
		l.fail(field, 0, len(id), "There is no term “"+id+"”.", l.book.Scope.Near(id))
	}
	return t
}

func (l *loader) terms(field string, ids []string) []int {
	var list []int
	for i, id := range ids {
		list = append(list, l.term(item(field, i), id))
	}
	return list
}

// quantities are terms that are told as numbers.
func (l *loader) quantities(field string, ids []string) []int {
	list := l.terms(field, ids)
	for i, t := range list {
		if term := &l.book.Terms[t]; term.ID == ids[i] && term.Kind == formula.Choice {
			l.fail(item(field, i), 0, len(ids[i]), "“"+ids[i]+"” is a choice: a number is wanted here. Choices stand under options.", "")
		}
	}
	return list
}

// length is a term that must measure a length.
func (l *loader) length(field, id string) int {
	t := l.term(field, id)
	if len(l.book.Terms) > 0 && l.book.Terms[t].ID == id && l.book.Terms[t].Dim() != unit.Length {
		l.fail(field, 0, len(id), "“"+id+"” is no length: a setting is wanted here.", "")
	}
	return t
}

func (l *loader) caution(field, id string) int {
	var ids []string
	for i := range l.book.Cautions {
		if l.book.Cautions[i].ID == id {
			return i
		}
		ids = append(ids, l.book.Cautions[i].ID)
	}
	l.fail(field, 0, len(id), "There is no caution “"+id+"”. A caution is named by its term's id, a stroke and its own name.", formula.Nearest(id, ids))
	return 0
}

func (l *loader) group(field string, s *GroupSource) Group {
	g := Group{ID: s.ID, Name: s.Name, Mass: l.expr(field+".mass", s.Mass, unit.Mass, "a mass, such as bowl-weight")}
	for i := range s.Lines {
		at, p := item(field+".parts", i), &s.Lines[i]
		line := Line{Part: p.Part, Name: p.Name, Label: p.Label, With: p.With, Run: p.Run,
			Count:  l.expr(at+".count", p.Count, unit.None, "a bare number, such as column-pipes - 1"),
			Length: l.expr(at+".length", p.Length, unit.Length, "a length, such as section-length"),
			Mass:   l.expr(at+".mass", p.Mass, unit.Mass, "a mass, such as column-unit-weight * section-length"),
			When:   l.condition(at+".when", p.When)}
		if p.Run != "" && p.Length == "" {
			l.fail(at+".run", 0, len(line.Run), "A piece of a run has a length, or the run could not be added up.", "")
		}
		g.Lines = append(g.Lines, line)
	}
	return g
}

// expr parses an expression and sees that it measures what it should.
func (l *loader) expr(field, text string, dim unit.Dim, wanted string) *formula.Expr {
	if text == "" {
		return nil
	}
	e, err := formula.ParseExpr(text, l.book.Scope)
	if err != nil {
		l.notation(field, err)
		return nil
	}
	if e.Dim != dim {
		l.fail(field, 0, len(text), "“"+text+"” is "+dimWord(e.Dim)+"; wanted is "+wanted+".", "")
	}
	return e
}

func dimWord(d unit.Dim) string {
	if d.IsNone() {
		return "a bare number"
	}
	return "of the kind " + d.String()
}

func (l *loader) condition(field, text string) *formula.Expr {
	if text == "" {
		return nil
	}
	c, err := formula.ParseCondition(text, l.book.Scope)
	if err != nil {
		l.notation(field, err)
		return nil
	}
	return c
}

// notation takes the errors of the notation as problems of a value.
func (l *loader) notation(field string, err error) {
	switch err := err.(type) {
	case formula.Errors:
		for _, e := range err {
			l.fail(field, e.Off, e.Len, e.Message, e.Suggest)
		}
	case *formula.Error:
		l.fail(field, err.Off, err.Len, err.Message, err.Suggest)
	}
}
