package bindery

import (
	"fmt"
	"strings"

	"columnbowl/build/markdown"
	"columnbowl/calcwasm/reckon"
)

// bowlTable writes a block “bowls”: a table of the families, made from the same
// figures as the network reckons with.
func (w *work) bowlTable(b *markdown.Block) (string, error) {
	if b.Kind != markdown.Bowls {
		return "", nil
	}
	var t table
	switch b.Head {
	case markdown.BowlSummary:
		t = w.bowlSummary()
	case markdown.BowlPoints:
		t = w.bowlPoints()
	default:
		return "", fmt.Errorf("there is no table of bowls “%s”", b.Head)
	}
	return t.html(), nil
}

// table is a table of figures, a column for each heading.
type table struct {
	headings []string
	rows     [][]cell
}

// cell is a text, or a figure whose unit stands in the heading when the whole
// column has the same.
type cell struct {
	text   string
	figure reckon.Figure
}

func (w *work) bowlSummary() table {
	t := table{headings: []string{"family", "speed", "best flow", "head of one stage there", "efficiency there", "outside diameter", "origin"}}
	for _, b := range w.engine.Bowls {
		best := b.Best()
		if best == nil {
			best = &reckon.BowlPoint{}
		}
		t.rows = append(t.rows, []cell{{text: b.Name}, {figure: b.Value("speed")}, {figure: best.Capacity}, {figure: best.Head},
			{figure: best.Efficiency}, {figure: b.Value("outside-diameter")}, {text: reckon.Origins[b.Origin]}})
	}
	return t
}

func (w *work) bowlPoints() table {
	t := table{headings: []string{"family", "capacity", "head", "efficiency", "NPSH required"}}
	for _, b := range w.engine.Bowls {
		for _, p := range b.Points {
			t.rows = append(t.rows, []cell{{text: b.Name}, {figure: p.Capacity}, {figure: p.Head}, {figure: p.Efficiency}, {figure: p.NPSHRequired}})
		}
	}
	return t
}

// unitOf is the unit that all figures of a column have; empty if they differ.
func (t *table) unitOf(column int) string {
	common := ""
	for _, row := range t.rows {
		f := row[column].figure
		switch {
		case !f.Known():
		case common == "":
			common = f.Unit.Print
		case common != f.Unit.Print:
			return ""
		}
	}
	return common
}

func (t *table) html() string {
	var s strings.Builder
	units := make([]string, len(t.headings))
	s.WriteString("<table>\n<thead>\n<tr>\n")
	for i, h := range t.headings {
		if units[i] = t.unitOf(i); units[i] != "" {
			h += ", " + units[i]
		}
		s.WriteString("<th>" + escape(h) + "</th>\n")
	}
	s.WriteString("</tr>\n</thead>\n<tbody>\n")
	for _, row := range t.rows {
		s.WriteString("<tr>\n")
		for i, c := range row {
			s.WriteString("<td>" + escape(c.in(units[i])) + "</td>\n")
		}
		s.WriteString("</tr>\n")
	}
	s.WriteString("</tbody>\n</table>\n")
	return s.String()
}

// in is what stands in a cell under a heading with a unit.
func (c cell) in(heading string) string {
	switch {
	case !c.figure.Known():
		return c.text
	case heading == c.figure.Unit.Print:
		return c.figure.Text
	}
	return c.figure.Text + "\u00a0" + c.figure.Unit.Print
}
