package book

import (
	"cmp"
	"io/fs"
	"math"
	"path"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"

	"columnbowl/build/markdown"
	"columnbowl/build/report"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// bowlsFolder holds the families of bowls, one file each.
const bowlsFolder = "bowls"

// Bowl is the file of a family of bowls. What it says stands in Figures, checked
// by the engine; a family with an error is left out of the book.
type Bowl struct {
	ID      string // file name without .yaml
	File    string // "bowls/lapwing-10.yaml"
	Figures *reckon.Bowl

	titled
}

// size is the nominal size, in m.
func (b *Bowl) size() float64 {
	if f := b.Figures.Value("nominal-size"); f.Known() {
		return f.SI
	}
	return math.Inf(1)
}

// bowlFile is a file while it is read: the items for the engine, and for each
// the path at which it stands.
type bowlFile struct {
	name, origin, note string
	items, paths       []string
}

func (f *bowlFile) add(path, item string) {
	f.items, f.paths = append(f.items, item), append(f.paths, path)
}

// bowls reads the families, and puts them in the order of their nominal size;
// those of one size, and those that name none, in the order of their ids.
func (l *loading) bowls() {
	names, err := fs.Glob(l.fsys, bowlsFolder+"/*")
	if err != nil {
		return
	}
	for _, name := range names {
		if strings.HasPrefix(path.Base(name), ".") {
			continue
		}
		id, ok := strings.CutSuffix(path.Base(name), ".yaml")
		if !ok {
			l.found.Add(name, report.WholeFile, 0, "Only families of bowls (files whose name ends in .yaml) belong into "+bowlsFolder+".", "")
			continue
		}
		src, err := fs.ReadFile(l.fsys, name)
		if err != nil {
			l.found.Add(name, report.WholeFile, 0, "This file cannot be read: "+reason(err)+".", "")
			continue
		}
		l.book.Files[name] = src
		l.bowl(id, name, src)
	}
	slices.SortStableFunc(l.book.Bowls, func(a, b *Bowl) int { return cmp.Compare(a.size(), b.size()) })
}

// bowl reads the file of one family.
func (l *loading) bowl(id, name string, src []byte) {
	before := len(l.found)
	if !goodID.MatchString(id) || formula.Reserved(id) {
		l.found.Add(name, report.WholeFile, 0, "The file's name is the id of the family: small words joined by hyphens, such as lapwing-10.yaml.", "")
	}
	f := &bowlFile{}
	b := &Bowl{ID: id, File: name}
	b.titled = readYAML(name, src, markdown.Span{Len: len(src)}, "a family of bowls", f.fields(), &l.found)
	if len(l.found) == before {
		f.add("name", "name "+f.name)
		f.add("origin", "origin "+f.origin)
		if f.note != "" {
			f.add("note", "note "+f.note)
		}
		var problems []reckon.BowlProblem
		b.Figures, problems = reckon.ReadBowl(id, f.items)
		for _, p := range problems {
			b.tell(f, p, &l.found)
		}
	}
	if len(l.found) > before {
		l.brokenBowls = append(l.brokenBowls, id)
		return
	}
	l.book.Bowls = append(l.book.Bowls, b)
}

// fields are the keys of a family: its figures are those that the engine knows.
func (f *bowlFile) fields() []field {
	fields := []field{{"name", true, text(&f.name)}, {"origin", true, oneOf(&f.origin, reckon.Origins[1:]...)}, {"note", false, text(&f.note)}, {"points", true, items(f.point)}}
	for _, known := range reckon.BowlFields() {
		fields = append(fields, field{known.Name, known.Needed, func(y *yamlReader, path string, n *yaml.Node) {
			if s := figure(y, path, n, known); s != "" {
				f.add(path, known.Name+" "+s)
			}
		}})
	}
	return fields
}

// point reads one point of the curves.
func (f *bowlFile) point(y *yamlReader, path string, n *yaml.Node) {
	cells := make([]string, len(reckon.PointFields()))
	var fields []field
	for i, known := range reckon.PointFields() {
		fields = append(fields, field{known.Name, known.Needed, func(y *yamlReader, path string, n *yaml.Node) {
			cells[i] = figure(y, path, n, known)
		}})
	}
	y.mapping(path, "a point", n, fields)
	f.add(path, "point "+strings.Join(cells, ";"))
}

// figure takes a number with its unit. A file always names the unit, so that
// nobody has to know which one would be meant.
func figure(y *yamlReader, path string, n *yaml.Node, f reckon.BowlField) string {
	var s string
	if text(&s)(y, path, n); s == "" {
		return ""
	}
	_, u, _, rest, err := unit.ReadNotation(s)
	own, _ := unit.Lookup(f.Unit)
	switch {
	case err != nil:
		y.fail(y.span(n), err.Error(), "")
	case rest != "":
		y.fail(y.span(n), "“"+strings.TrimSpace(rest)+"” stands behind a number with its unit: write one figure, such as "+example(f)+".", "")
	case u == nil && own.Symbol != "1":
		y.fail(y.span(n), "“"+last(path)+"” has a unit: write it, such as "+example(f)+".", s+" "+own.Symbol)
	case u != nil && u.Dim != own.Dim || own.Symbol == "%" && u.Symbol != "%":
		y.fail(y.span(n), "“"+last(path)+"” is not counted in "+u.Symbol+": write it as "+example(f)+".", "")
	default:
		return s
	}
	return ""
}

// example is a figure that a message can show.
func example(f reckon.BowlField) string {
	middle := strconv.FormatFloat(f.Low+(f.High-f.Low)/4, 'e', 1, 64) // two digits are enough
	v, _ := strconv.ParseFloat(middle, 64)
	number := strconv.FormatFloat(v, 'f', -1, 64)
	if f.Unit == "1" {
		return number
	}
	return number + " " + f.Unit
}

// tell turns a problem into a diagnostic at its place in the file.
func (b *Bowl) tell(f *bowlFile, p reckon.BowlProblem, found *report.List) {
	at := "points"
	if p.Item >= 0 {
		at = f.paths[p.Item]
	}
	if p.Column >= 0 {
		at = join(at, reckon.PointFields()[p.Column].Name)
	}
	s := b.Where(at)
	found.Add(b.File, s.Off, s.Len, p.Message, "")
}
