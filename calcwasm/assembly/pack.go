package assembly

import (
	"errors"
	"strconv"
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// PackForm is the first line of a packed model; it tells its version.
const PackForm = "column-and-bowl builds 1"

// Pack writes a model as lines of fields split by tabs, for the page. The
// author's texts hold neither tabs nor line ends: the loader of the book joins
// what YAML breaks over lines.
func (m *Model) Pack() []byte {
	w := &packer{}
	w.line(PackForm)
	for i := range m.Builds {
		b := &m.Builds[i]
		w.line("build", b.ID, b.Name, strconv.Itoa(b.Value), strconv.Itoa(b.Asked), strconv.Itoa(b.Made),
			places(b.Options), places(b.Totals), places(b.Hook), places(b.Refuse))
		for _, n := range b.Notes {
			w.line("note", packed(n.When), n.Say)
		}
		for g := range b.Groups {
			w.group(&b.Groups[g])
		}
	}
	return []byte(w.b.String())
}

type packer struct{ b strings.Builder }

func (w *packer) line(fields ...string) {
	for i, f := range fields {
		if i > 0 {
			w.b.WriteByte('\t')
		}
		for _, part := range strings.FieldsFunc(f, func(r rune) bool { return r == '\t' || r == '\n' || r == '\r' }) {
			w.b.WriteString(part)
		}
	}
	w.b.WriteByte('\n')
}

func (w *packer) group(g *Group) {
	w.line("group", g.ID, g.Name, packed(g.Mass))
	for i := range g.Lines {
		p := &g.Lines[i]
		w.line("part", p.Part, p.Name, p.Label, p.With, p.Run, packed(p.Count), packed(p.Length), packed(p.Mass), packed(p.When))
	}
}

func packed(e *formula.Expr) string {
	if e == nil {
		return ""
	}
	return e.Pack()
}

func places(list []int) string {
	words := make([]string, len(list))
	for i, p := range list {
		words[i] = strconv.Itoa(p)
	}
	return strings.Join(words, " ")
}

type unpacker struct {
	book  *reckon.Book
	model *Model
	bad   bool
}

// Unpack reads what Pack wrote, for the book that it was packed with.
func Unpack(text []byte, book *reckon.Book) (*Model, error) {
	u := &unpacker{book: book, model: &Model{}}
	for i, line := range strings.Split(strings.TrimSuffix(string(text), "\n"), "\n") {
		if f := strings.Split(line, "\t"); i == 0 {
			u.bad = line != PackForm
		} else {
			u.line(f)
		}
		if u.bad {
			return nil, errors.New("the data of the builds cannot be read: line " + strconv.Itoa(i+1) + " is not of the form that this engine knows")
		}
	}
	return u.model, nil
}

func (u *unpacker) line(f []string) {
	switch {
	case f[0] == "build" && len(f) == 10:
		terms := len(u.book.Terms)
		u.model.Builds = append(u.model.Builds, Build{ID: f[1], Name: f[2], Value: u.place(f[3], 64), Asked: u.place(f[4], terms), Made: u.place(f[5], terms),
			Options: u.places(f[6], terms), Totals: u.places(f[7], terms), Hook: u.places(f[8], terms), Refuse: u.places(f[9], len(u.book.Cautions))})
	case len(u.model.Builds) == 0:
		u.bad = true
	case f[0] == "note" && len(f) == 3:
		b := u.last()
		b.Notes = append(b.Notes, Note{When: u.expr(f[1]), Say: f[2]})
	case f[0] == "group" && len(f) == 4:
		b := u.last()
		b.Groups = append(b.Groups, Group{ID: f[1], Name: f[2], Mass: u.expr(f[3])})
	case f[0] == "part" && len(f) == 10 && len(u.last().Groups) > 0:
		b := u.last()
		g := &b.Groups[len(b.Groups)-1]
		g.Lines = append(g.Lines, Line{Part: f[1], Name: f[2], Label: f[3], With: f[4], Run: f[5],
			Count: u.expr(f[6]), Length: u.expr(f[7]), Mass: u.expr(f[8]), When: u.expr(f[9])})
	default:
		u.bad = true
	}
}

func (u *unpacker) last() *Build { return &u.model.Builds[len(u.model.Builds)-1] }

func (u *unpacker) expr(text string) *formula.Expr {
	if text == "" {
		return nil
	}
	e, err := formula.Unpack(text, u.book.Scope)
	u.bad = u.bad || err != nil
	return e
}

func (u *unpacker) place(text string, below int) int {
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 || n >= below {
		u.bad = true
		return 0
	}
	return n
}

func (u *unpacker) places(text string, below int) []int {
	var list []int
	for _, word := range strings.Fields(text) {
		list = append(list, u.place(word, below))
	}
	return list
}
