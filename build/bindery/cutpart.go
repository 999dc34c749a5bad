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
// drive, with flanges. It is drawn where some part is on no usual sheet; parts
// whose options go together share one.
type other struct {
	build, sheet string
	options      []string
	parts        []string // that it is drawn for
}

// name stands in the place of a sheet's name: in the table of what is drawn, and
// in the name of the file.
func (o *other) name() string { return o.sheet + "-" + strings.Join(o.options, "-") }

// seenIn is where a part is drawn of which the usual pump has none.
type seenIn struct {
	*other
	option string // the one that brings the part
}

// drawOthers draws what the part pages need beyond the usual sheets.
func (c *cuts) drawOthers() {
	for _, p := range c.w.book.Parts {
		for _, build := range p.Builds {
			if c.usual(build, p.ID) != "" {
				continue
			}
			if sheet, option := c.find(build, p.ID); sheet != "" {
				c.otherOf[build+"/"+p.ID] = seenIn{c.join(build, sheet, option, p.ID), option}
			}
		}
	}
	for _, o := range c.others {
		for _, width := range widths {
			c.drawn[cutName(o.build, o.name(), width)] = c.draw(o.build, o.sheet, width, o.options...)
		}
	}
}

// join adds an option to a sheet that is drawn already, if all its parts stay in
// it; otherwise there is one sheet more.
func (c *cuts) join(build, sheet, option, part string) *other {
	for _, o := range c.others {
		if o.build != build || o.sheet != sheet {
			continue
		}
		options := o.options
		if !slices.Contains(options, option) {
			options = append(slices.Clip(options), option)
		}
		d := c.trial(build, sheet, options...)
		if labels(d, part) && !slices.ContainsFunc(o.parts, func(p string) bool { return !labels(d, p) }) {
			o.options, o.parts = options, append(o.parts, part)
			return o
		}
	}
	o := &other{build, sheet, []string{option}, []string{part}}
	c.others = append(c.others, o)
	return o
}

// trial is a drawing made to see what is in it.
func (c *cuts) trial(build, sheet string, options ...string) cutaway.Drawing {
	return c.shapes.Draw(cutaway.Pump{Build: build, Stages: usualStages, Options: options}, cutaway.View{Sheet: sheet, Width: widths[0]})
}

// find tries one option after the other, of those that the profiles of the part
// hang on, until a sheet names the part; "" if none does.
func (c *cuts) find(build, part string) (sheet, option string) {
	hangs := c.hangs(part)
	for _, choice := range cutaway.Choices {
		for _, option := range choice[1:] {
			if !slices.Contains(hangs, option) {
				continue
			}
			for _, sheet := range closest(build, part) {
				if labels(c.trial(build, sheet, option), part) {
					return sheet, option
				}
			}
		}
	}
	return "", ""
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
	return slices.ContainsFunc(c.others, func(o *other) bool { return o.build == build && o.name() == sheet })
}

// nearestFirst are the sheets from the closest view to the widest.
var nearestFirst = []string{cutaway.Stage, cutaway.Column, cutaway.StuffingBox, cutaway.TubeTension, cutaway.Motor, cutaway.Motors,
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
	for _, sheet := range nearestFirst {
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
		if sheet := c.usual(build, p.ID); sheet != "" {
			list = append(list, c.partFigure(p, build, sheet, sheet, "", root))
		} else if o, ok := c.otherOf[build+"/"+p.ID]; ok {
			list = append(list, c.partFigure(p, build, o.sheet, o.name(), o.option, root))
		}
	}
	return list
}

// partFigure is a part in one drawing of a sheet: the usual one, or one made with
// an option.
func (c *cuts) partFigure(p *book.Part, build, sheet, drawn, option, root string) site.Lit {
	lit := site.Lit{Build: build, Sheet: c.w.words["cut.sheet."+sheet], URL: root + buildPath(build) + "#" + sheet, Alt: fmt.Sprintf(litAlt, p.Name, c.title(build, sheet))}
	if option != "" {
		lit.With = c.w.words["cut.with."+option]
		lit.Alt += ", " + lit.With
	}
	lit.Layouts = c.layouts(build, drawn, root, c.place(build, drawn, p.ID))
	for _, l := range c.drawn[cutName(build, drawn, widths[0])].Labels {
		if l.ID == p.ID {
			lit.Number = l.Number
		}
	}
	return lit
}
