package published

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

var header = []string{"case", "given", "term", "expect", "tolerance", "mark", "note"}

// Problems are all that is wrong with the files, in their order.
type Problems []Problem

func (p Problems) Error() string {
	lines := make([]string, len(p))
	for i := range p {
		lines[i] = p[i].String()
	}
	return strings.Join(lines, "\n")
}

func (p Problem) String() string {
	if p.Line == 0 {
		return p.File + ": " + p.Message
	}
	return fmt.Sprintf("%s:%d: %s", p.File, p.Line, p.Message)
}

// loader reads one file after the other and collects what is wrong.
type loader struct {
	set   *Set
	file  *File
	line  int
	found Problems
}

func (l *loader) fail(format string, args ...any) {
	l.found = append(l.found, Problem{File: l.file.Name, Line: l.line, Message: fmt.Sprintf(format, args...)})
}

// Load reads all .csv files of a folder against a book. The error is Problems
// when the files were there and something in them is wrong.
func Load(fsys fs.FS, b *reckon.Book) (*Set, error) {
	names, err := fs.Glob(fsys, "*.csv")
	if err != nil {
		return nil, err
	}
	l := &loader{set: &Set{book: b}}
	slices.Sort(names)
	for _, name := range names {
		text, err := fs.ReadFile(fsys, name)
		if err != nil {
			return nil, err
		}
		l.file, l.line = &File{Name: path.Base(name)}, 0
		l.comments(string(text))
		l.rows(string(text))
		l.whole()
		l.set.Files = append(l.set.Files, l.file)
	}
	if len(l.found) > 0 {
		return nil, l.found
	}
	return l.set, nil
}

// comments takes the lines that begin with #.
func (l *loader) comments(text string) {
	for i, line := range strings.Split(text, "\n") {
		rest, ok := strings.CutPrefix(line, "#")
		if !ok {
			continue
		}
		l.line = i + 1
		key, value, _ := strings.Cut(rest, ":")
		value = strings.TrimSpace(value)
		switch key = strings.TrimSpace(key); {
		case value == "":
			l.fail("A comment line says “# source: …”, “# read in: …” or “# note: …”; “%s” has nothing behind its colon.", strings.TrimSpace(line))
		case key == "source":
			l.file.Source = joined(l.file.Source, value)
		case key == "read in":
			l.file.ReadIn = joined(l.file.ReadIn, value)
		case key == "note":
			l.file.Notes = append(l.file.Notes, value)
		default:
			l.fail("“%s” is no key of the comment lines: they are source, read in and note.", key)
		}
	}
	l.line = 0
}

func joined(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}

// rows takes the table.
func (l *loader) rows(text string) {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment, r.FieldsPerRecord = '#', -1
	for first := true; ; first = false {
		row, err := r.Read()
		if err == io.EOF {
			if first {
				l.fail("The file has no rows.")
			}
			return
		}
		if bad := (*csv.ParseError)(nil); errors.As(err, &bad) {
			l.line = bad.Line
			l.fail("This is no row of a CSV file: %v.", bad.Err)
			return
		}
		l.line, _ = r.FieldPos(0)
		switch {
		case first && !slices.Equal(row, header):
			l.fail("The first row is %s.", strings.Join(header, ","))
			return
		case first:
		case len(row) != len(header):
			l.fail("This row has %d fields and not %d; a field with a comma stands in quotation marks.", len(row), len(header))
		default:
			for i := range row {
				row[i] = strings.TrimSpace(row[i])
			}
			l.row(row)
		}
	}
}

// whole checks what can be seen of the file as a whole.
func (l *loader) whole() {
	l.line = 0
	if l.file.Source == "" {
		l.fail("The file names no source: begin with a line “# source: …”.")
	}
	read := slices.ContainsFunc(l.file.Cases, func(c *Case) bool { return c.Mark == Read || c.Mark == Disagrees || c.Mark == Table })
	if read && l.file.ReadIn == "" {
		l.fail("Rows are marked read, disagrees or table, and no line “# read in: …” says where.")
	}
	seen := map[string]bool{}
	for _, c := range l.file.Cases {
		key := fmt.Sprint(c.Name, c.Term, c.Facts, c.Choose)
		if l.line = c.Line; seen[key] {
			l.fail("The case “%s” stands in this file twice.", c.Name)
		}
		seen[key] = true
	}
}

func (l *loader) row(row []string) {
	before := len(l.found)
	c := &Case{File: l.file, Line: l.line, Name: row[0], Note: row[6], ExpectText: row[3], ToleranceText: row[4]}
	if c.Name == "" {
		l.fail("The case has no name.")
	}
	c.Mark = l.mark(row[5])
	if c.Mark == Disagrees && c.Note == "" {
		l.fail("A row that disagrees says why in its note.")
	}
	c.Term = l.term(row[2])
	if c.Term >= 0 {
		l.given(c, row[1])
		l.expected(c)
	}
	if len(l.found) == before {
		l.file.Cases = append(l.file.Cases, c)
	}
}

func (l *loader) mark(text string) Mark {
	m := slices.Index(marks[:], text)
	if m < 0 {
		l.fail("“%s” is no mark: write read, derived, from memory, common practice, table or disagrees.", text)
	}
	return Mark(max(m, 0))
}

// term finds a term, or tells that there is none and gives -1.
func (l *loader) term(id string) int {
	t, ok := l.set.book.Find(id)
	if ok {
		return t
	}
	if near := l.set.book.Scope.Near(id); near != "" {
		l.fail("There is no term “%s”. Did you mean %s?", id, near)
	} else {
		l.fail("There is no term “%s”.", id)
	}
	return -1
}

// given takes the facts and sees that a person could type them.
func (l *loader) given(c *Case, text string) {
	seen := map[int]bool{}
	for _, item := range strings.Split(text, ";") {
		item = strings.TrimSpace(item)
		if item == "" {
			continue
		}
		id, value, ok := strings.Cut(item, "=")
		if !ok {
			l.fail("“%s” is no fact: write term = value, and “;” between two of them.", item)
			continue
		}
		id, value = strings.TrimSpace(id), strings.TrimSpace(value)
		chosen, choose := strings.CutPrefix(id, "choose ")
		term := l.term(strings.TrimSpace(chosen))
		switch {
		case term < 0:
		case choose:
			l.estimate(c, term, value)
		case term == c.Term:
			l.fail("“%s” is given, so it cannot be expected.", id)
		case seen[term]:
			l.fail("“%s” is given twice.", id)
		default:
			seen[term] = true
			l.fact(c, id, term, value)
			c.Facts = append(c.Facts, Setting{term, value})
		}
	}
}

// fact sees that a person could type the value of a fact. One that can be read
// and lies outside its term's range is a refusal, which a row that disagrees may
// be about: the run tells.
func (l *loader) fact(c *Case, id string, term int, value string) {
	f, err := l.set.book.Read(term, value)
	if outside := f.Text != ""; err != nil && !(outside && c.Mark == Disagrees) {
		l.fail("%s: %v", id, err)
	}
}

// estimate takes the choice of an estimate, which must be one of the term's.
func (l *loader) estimate(c *Case, term int, name string) {
	var names []string
	for _, r := range l.set.book.Rules {
		if r.Strength == reckon.Estimate && r.Target == term {
			names = append(names, r.Name)
		}
	}
	if !slices.Contains(names, name) {
		l.fail("“%s” has no estimate “%s”; it has: %s.", l.set.book.Terms[term].ID, name, strings.Join(names, ", "))
		return
	}
	c.Choose = append(c.Choose, Setting{term, name})
}

// expected takes the published value and its tolerance.
func (l *loader) expected(c *Case) {
	t := &l.set.book.Terms[c.Term]
	if t.Kind == formula.Choice {
		l.fail("“%s” is a word: only numbers can be compared.", t.ID)
		return
	}
	value, u, ok := l.quantity(t, c.ExpectText, "The expected value")
	if !ok {
		return
	}
	c.Expect = value
	if u != nil {
		c.Expect = u.ToSI(value)
	}
	c.Tolerance = l.tolerance(t, c, value, u)
}
