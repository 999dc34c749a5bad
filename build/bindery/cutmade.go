package bindery

import (
	"slices"
	"strings"

	"columnbowl/calcwasm/cutaway"
	"columnbowl/site"
)

// made is one choice in how a pump is made, and what it changes in the drawings.
type made struct {
	options []string            // words of cutaway.Choices that this pump can have, the usual one first
	sheets  []string            // that look otherwise with another option
	brings  map[string][]string // by option: parts that the usual pump has not
}

// madeOf finds out by drawing which choices a build has: those that change one
// of its sheets.
func (c *cuts) madeOf(build string) []made {
	usual := map[string]cutaway.Drawing{}
	for _, sheet := range cutaway.Sheets(build) {
		usual[sheet] = c.bare(build, sheet)
	}
	var list []made
	for _, row := range cutaway.Choices {
		m := made{options: row[:1:1], brings: map[string][]string{}}
		for _, option := range row[1:] {
			for _, sheet := range cutaway.Sheets(build) {
				d := c.bare(build, sheet, option)
				if d.Scene.SVG() != usual[sheet].Scene.SVG() {
					m.add(option, sheet, usual[sheet].Parts, d.Parts)
				}
			}
		}
		if len(m.sheets) > 0 {
			list = append(list, m)
		}
	}
	return list
}

// bare is a drawing without labels, made to see what is in it.
func (c *cuts) bare(build, sheet string, options ...string) cutaway.Drawing {
	return c.shapes.Draw(cutaway.Pump{Build: build, Stages: 2, Options: options},
		cutaway.View{Sheet: sheet, Width: widths[2], Labels: cutaway.Hidden})
}

// add notes that a sheet changes with an option.
func (m *made) add(option, sheet string, before, after []string) {
	if !slices.Contains(m.options, option) {
		m.options = append(m.options, option)
	}
	if !slices.Contains(m.sheets, sheet) {
		m.sheets = append(m.sheets, sheet)
	}
	for _, part := range after {
		if !slices.Contains(before, part) && !slices.Contains(m.brings[option], part) {
			m.brings[option] = append(m.brings[option], part)
		}
	}
}

// choices are the choices of a build as its page tells them.
func (c *cuts) choices(build, root string) []site.Made {
	var list []site.Made
	for _, m := range c.ways[build] {
		v := site.Made{ID: m.options[0], Title: c.w.words["cut.choice."+m.options[0]], Sheets: strings.Join(m.sheets, " "), Idle: cutaway.Idle[m.options[0]]}
		for _, option := range m.options {
			o := site.MadeOption{ID: option, Name: c.w.words["cut.option."+option]}
			for _, part := range m.brings[option] {
				if c.w.book.PartByID[part] != nil {
					o.Parts = append(o.Parts, site.MadePart{ID: part, Link: c.w.partLink(part, root)})
				}
			}
			v.Options = append(v.Options, o)
		}
		list = append(list, v)
	}
	return list
}
