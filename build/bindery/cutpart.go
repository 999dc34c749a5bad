package bindery

import (
	"fmt"
	"slices"
	"strings"

	"columnbowl/build/book"
	"columnbowl/calcwasm/cutaway"
	"columnbowl/site"
)

// other is a sheet of a pump that is made otherwise than usual: with a gear
// drive, with flanges. It is drawn where some part is on no usual sheet.
type other struct{ build, sheet, option string }

// name stands in the place of a sheet's name: in the table of what is drawn, and
// in the name of the file.
func (o other) name() string { return o.sheet + "-" + o.option }

// drawOthers draws what the part pages need beyond the usual sheets.
func (c *cuts) drawOthers() {
	c.otherOf = map[string]other{}
	for _, p := range c.w.book.Parts {
		for _, build := range p.Builds {
			if c.usual(build, p.ID) != "" {
				continue
			}
			o, ok := c.find(build, p.ID)
			if !ok {
				continue
			}
			c.otherOf[build+"/"+p.ID] = o
			if slices.Contains(c.others, o) {
				continue
			}
			c.others = append(c.others, o)
			for _, width := range widths {
				c.drawn[cutName(build, o.name(), width)] = c.draw(build, o.sheet, width, o.option)
			}
		}
	}
}

// find tries one option after the other, of those that the profiles of the part
// hang on, until a sheet names the part.
func (c *cuts) find(build, part string) (other, bool) {
	hangs := c.hangs(part)
	for _, choice := range cutaway.Choices {
		for _, option := range choice[1:] {
			if !slices.Contains(hangs, option) {
				continue
			}
			for _, sheet := range closest(build, part) {
				d := c.shapes.Draw(cutaway.Pump{Build: build, Stages: usualStages, Options: []string{option}}, cutaway.View{Sheet: sheet, Width: widths[0]})
				if labels(d, part) {
					return other{build, sheet, option}, true
				}
			}
		}
	}
	return other{}, false
}

// hangs are the words in the conditions of a part's profiles.
func (c *cuts) hangs(part string) []string {
	var words []string
	for _, f := range c.w.book.Shapes.Frames {
		for i := range f.Shapes {
			if f.Shapes[i].Part == part {
				words = append(words, strings.FieldsFunc(f.Shapes[i].When, func(r rune) bool { return r == ' ' || r == '|' || r == '!' })...)
			}
		}
	}
	return words
}

func (c *cuts) isOther(build, sheet string) bool {
	return slices.ContainsFunc(c.others, func(o other) bool { return o.build == build && o.name() == sheet })
}

// nearest are the sheets from the closest view to the widest.
var nearest = []string{cutaway.Stage, cutaway.Column, cutaway.StuffingBox, cutaway.TubeTension, cutaway.Motor, cutaway.Motors,
	cutaway.Line, cutaway.Bowls, cutaway.Head, cutaway.Power, cutaway.Whole}

// beside are parts that a sheet names only because they lie round what it is about.
var beside = map[string][]string{
	cutaway.StuffingBox: {"discharge-head", "head-shaft"},
	cutaway.TubeTension: {"discharge-head", "head-shaft", "enclosing-tube"},
	cutaway.Motor:       {"discharge-head", "head-shaft", "head-shaft-coupling"},
}

// closest are the sheets of a build that may show a part, the closest view first.
func closest(build, part string) []string {
	var list, last []string
	for _, sheet := range nearest {
		switch {
		case !slices.Contains(cutaway.Sheets(build), sheet):
		case slices.Contains(beside[sheet], part):
			last = append(last, sheet)
		default:
			list = append(list, sheet)
		}
	}
	return append(list, last...)
}

// usual is the sheet of the usual pump that shows a part largest: one that names
// it, or else one that has it; "" if there is none.
func (c *cuts) usual(build, part string) string {
	sheets := closest(build, part)
	for _, sheet := range sheets {
		if labels(c.drawn[cutName(build, sheet, widths[0])], part) {
			return sheet
		}
	}
	for _, sheet := range sheets {
		if slices.Contains(c.drawn[cutName(build, sheet, widths[0])].Parts, part) {
			return sheet
		}
	}
	return ""
}

func labels(d cutaway.Drawing, part string) bool {
	return slices.ContainsFunc(d.Labels, func(l cutaway.Label) bool { return l.ID == part })
}

// partFigures show where a part is: for each build that has it the sheet that
// shows it best, with the part lit.
func (c *cuts) partFigures(p *book.Part, root string) []site.Lit {
	var list []site.Lit
	for _, build := range p.Builds {
		o := other{build: build, sheet: c.usual(build, p.ID)}
		drawn := o.sheet
		if drawn == "" {
			o = c.otherOf[build+"/"+p.ID]
			drawn = o.name()
		}
		if o.sheet != "" {
			list = append(list, c.partFigure(p, o, drawn, root))
		}
	}
	return list
}

func (c *cuts) partFigure(p *book.Part, o other, drawn, root string) site.Lit {
	lit := site.Lit{Build: o.build, Sheet: c.w.words["cut.sheet."+o.sheet], URL: root + buildPath(o.build) + "#" + o.sheet, Alt: fmt.Sprintf(litAlt, p.Name, c.title(o.build, o.sheet))}
	if o.option != "" {
		lit.With = c.w.words["cut.with."+o.option]
		lit.Alt += ", " + lit.With
	}
	lit.Layouts = c.layouts(o.build, drawn, root, c.place(o.build, drawn, p.ID))
	for _, l := range c.drawn[cutName(o.build, drawn, widths[0])].Labels {
		if l.ID == p.ID {
			lit.Number = l.Number
		}
	}
	return lit
}
