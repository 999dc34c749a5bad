package book

import (
	"cmp"
	"io/fs"
	"path"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"

	"columnbowl/build/markdown"
	"columnbowl/build/report"
	"columnbowl/calcwasm/formula"
)

// Folders of the tables.
const (
	ChoicesFolder = "choices" // which of several is the right one, and why
	FaultsFolder  = "faults"  // what readings tell
)

// Marks tell where a reason comes from.
var Marks = []string{"common practice", "published", "from memory", "arithmetic"}

// Table is a file of rows, each a condition on the facts and what follows from
// it: the choice of a build, the materials for a water, the faults behind the
// readings of a test.
type Table struct {
	ID, File, Folder string
	Name, About      string
	Place            string   // id of the place on the rail
	Choice           string   // the choice term whose words the rows weigh; "" if they weigh none
	Title            string   // whose facts the sheet opens with
	Facts            []Fact   // those facts
	Hazards          []string // of cautions.yaml
	Rows             []Row

	titled
}

// Row is one row of a table.
type Row struct {
	ID      string
	Say     string   // the condition in words
	When    string   // the same in the notation
	For     []string // words of the choice that the condition speaks for
	Against []string // words that it speaks against
	Decides bool     // it rules the words against out, whatever else is said
	Then    string   // what to choose, or what to suspect
	Prove   string   // how a suspicion is proved
	Reason  string
	Mark    string // one of Marks
	Source  string // the work; needed when the mark is published
}

// tables reads the tables of choices and of faults.
func (l *loading) tables() {
	for _, folder := range []string{ChoicesFolder, FaultsFolder} {
		names, _ := fs.Glob(l.fsys, folder+"/*") // the pattern is sound
		for _, name := range names {
			if !strings.HasPrefix(path.Base(name), ".") {
				l.table(folder, name)
			}
		}
	}
	slices.SortStableFunc(l.book.Tables, func(a, b *Table) int { return cmp.Compare(a.File, b.File) })
}

func (l *loading) table(folder, name string) {
	id, ok := strings.CutSuffix(path.Base(name), ".yaml")
	if !ok || !goodID.MatchString(id) {
		l.found.Add(name, report.WholeFile, 0, "A table is a file named by its id, small words joined by hyphens, that ends in .yaml, such as "+folder+"/lubrication.yaml.", "")
		return
	}
	src, err := fs.ReadFile(l.fsys, name)
	if err != nil {
		l.found.Add(name, report.WholeFile, 0, "This file cannot be read: "+reason(err)+".", "")
		return
	}
	if slices.ContainsFunc(l.book.Tables, func(t *Table) bool { return t.ID == id }) {
		l.found.Add(name, report.WholeFile, 0, "Another table has the id “"+id+"”: rename one of the files.", "")
		return
	}
	l.book.Files[name] = src
	t := &Table{ID: id, File: name, Folder: folder}
	t.titled = readYAML(name, src, markdown.Span{Len: len(src)}, "a table", []field{
		{"name", true, text(&t.Name)}, {"about", true, text(&t.About)}, {"place", true, text(&t.Place)}, {"choice", false, text(&t.Choice)},
		{"title", false, text(&t.Title)}, {"hazards", false, texts(&t.Hazards)},
		{"facts", false, pairs("a list of terms with values", func(term, value string) { t.Facts = append(t.Facts, Fact{term, value}) })},
		{"rows", true, items(t.row)},
	}, &l.found)
	l.book.Tables = append(l.book.Tables, t)
}

// row reads one row.
func (t *Table) row(y *yamlReader, at string, n *yaml.Node) {
	var r Row
	var decides string
	y.mapping(at, "a row", n, []field{
		{"id", true, text(&r.ID)}, {"say", true, text(&r.Say)}, {"when", true, text(&r.When)},
		{"for", false, texts(&r.For)}, {"against", false, texts(&r.Against)}, {"decides", false, oneOf(&decides, "yes")},
		{"then", false, text(&r.Then)}, {"prove", false, text(&r.Prove)},
		{"reason", true, text(&r.Reason)}, {"mark", true, oneOf(&r.Mark, Marks...)}, {"source", false, text(&r.Source)},
	})
	r.Decides = decides == "yes"
	t.Rows = append(t.Rows, r)
}

// conditions gives the engine the rows' conditions. A condition that cannot be
// read is told at its place inside the text.
func (l *loading) conditions() {
	if l.book.Engine == nil {
		return
	}
	for _, t := range l.book.Tables {
		for i, r := range t.Rows {
			if r.When == "" {
				continue // told when it was read
			}
			s := t.Where(item("rows", i) + ".when")
			if err := l.book.Engine.AddRow(t.ID, r.ID, r.When); err != nil {
				l.inCondition(t, s, r.When, err)
			}
		}
	}
}

func (l *loading) inCondition(t *Table, s markdown.Span, when string, err error) {
	var list formula.Errors
	switch e := err.(type) {
	case formula.Errors:
		list = e
	case *formula.Error:
		list = formula.Errors{e}
	}
	shift := max(strings.Index(string(l.book.Files[t.File][s.Off:s.Off+s.Len]), when), 0) // behind the quote
	for _, e := range list {
		l.found.Add(t.File, s.Off+shift+e.Off, max(e.Len, 1), e.Message, e.Suggest)
	}
}
