// Package picture turns a reckoned question into the pictures of the book: it
// knows which terms are the marks of which picture, and hands their values to
// the room that draws. The same picture is printed when a page is bound and
// drawn again when a number on the page changes.
//
// The words of the pictures come from the caller (keys “picture.…” of the
// words of the interface); {0} in them is filled in. A term that the book does
// not have, or whose value is not known, is a mark that is not known.
package picture

import (
	"strings"

	"columnbowl/calcwasm/drawing"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// Forms of a picture: on a term's page it has its own scale; on the page from
// well to wire all of them share one, and phones have narrow ones.
const (
	Term   = "term"
	Wide   = "wide"
	Narrow = "narrow"
)

// Words are the words of the interface, by key.
type Words map[string]string

// fill is a text with {0} filled in. A key without words shows itself, so that
// it is seen.
func (w Words) fill(key, with string) string {
	text, ok := w[key]
	if !ok {
		return key
	}
	before, after, found := strings.Cut(text, "{0}")
	if !found {
		return text
	}
	return before + with + after
}

// Pen draws the pictures of one result in one system of units.
type Pen struct {
	Result *reckon.Result
	System formula.System
	Prefix string // of the ids, unique on the page
	Words  Words
}

// Picture is a kind of picture and the terms that are its marks. The page of
// such a term shows it.
type Picture struct {
	Name  string
	Forms bool // has a wide and a narrow form; the others have one for all
	Terms []string
	draw  func(p Pen, form string) *drawing.Scene
}

// Pictures are all kinds, in the order of the page from well to wire.
var Pictures = []Picture{
	{"well", true, []string{"static-level", "drawdown", "pumping-level", "setting", "well-depth", "screen-top", "lowest-level",
		"discharge-elevation", "lift", "discharge-pressure", "gauge-height"}, Pen.drawWell},
	{"ladder", true, []string{"pressure-head", "discharge-velocity-head", "field-head", "column-loss", "column-loss-rate", "head-loss",
		"total-head", "stages", "stage-head", "curve-stage-head"}, Pen.drawLadder},
	{"power", true, []string{"input-power", "brake-power", "thrust-bearing-loss", "shaft-loss", "field-power", "bowl-power", "bowl-efficiency",
		"bowl-water-power", "water-power", "overall-efficiency", "motor-efficiency", "field-efficiency", "drive-efficiency", "cable-loss"}, Pen.drawPower},
	{"annulus", false, []string{"column-velocity", "column-inside-diameter", "column-size", "tube-outside-diameter", "tube-size"}, Pen.drawAnnulus},
	{"thrust", false, []string{"hydraulic-thrust", "total-thrust", "largest-thrust", "shaft-weight", "impeller-weight", "bearing-rating", "thrust-margin"}, Pen.drawThrust},
	{"stretch", false, []string{"shaft-stretch", "impeller-adjustment", "lateral", "running-clearance", "nut-turns"}, Pen.drawStretch},
}

// Named finds a kind of picture.
func Named(name string) (Picture, bool) {
	for _, p := range Pictures {
		if p.Name == name {
			return p, true
		}
	}
	return Picture{}, false
}

// Draw lays the picture out in one of the forms.
func (p Picture) Draw(pen Pen, form string) *drawing.Scene { return p.draw(pen, form) }

// mark is a term as a mark of a picture, in the unit that the system gives it.
func (p Pen) mark(id string) drawing.Mark {
	t, ok := p.Result.Book.Find(id)
	if !ok {
		return drawing.Mark{}
	}
	term, r := &p.Result.Book.Terms[t], p.Result
	if !r.Known(t) {
		return drawing.Unknown(term.Name)
	}
	return drawing.At(term.In(p.System).FromSI(r.Values[t].Likely), term.Name, r.Text(t, p.System))
}

// as is a mark measured in the unit of another term, for a picture in which
// both stand on one scale; its words keep the unit of its own.
func (p Pen) as(id, other string) drawing.Mark {
	m := p.mark(id)
	a, ok := p.Result.Book.Find(id)
	b, ok2 := p.Result.Book.Find(other)
	if ok && ok2 && m.Known {
		m.Value = p.Result.Book.Terms[b].In(p.System).FromSI(p.Result.Values[a].Likely)
	}
	return m
}

// named gives a mark another name than its term's.
func (p Pen) named(m drawing.Mark, key string) drawing.Mark {
	m.Name = p.say(key)
	return m
}

func (p Pen) say(key string) string { return p.Words.fill(key, "") }

// less is the difference of two terms as a mark, in the unit of the second:
// what is lost between them.
func (p Pen) less(from, to, key string) drawing.Mark {
	book, r, name := p.Result.Book, p.Result, p.say(key)
	a, oka := book.Find(from)
	b, okb := book.Find(to)
	if !oka || !okb || !r.Known(a) || !r.Known(b) {
		return drawing.Unknown(name)
	}
	u, lost := book.Terms[b].In(p.System), r.Values[a].Likely-r.Values[b].Likely
	return drawing.At(u.FromSI(lost), name, unit.FormatWith(lost, u))
}

// text is a term's value as words, "" if it is not known.
func (p Pen) text(id string) string {
	if m := p.mark(id); m.Known {
		return m.Text
	}
	return ""
}

// build is the pump of the facts: its word, and how it is drawn.
func (p Pen) build() (string, drawing.Build) {
	t, ok := p.Result.Book.Find("build")
	if !ok {
		return "", drawing.WaterLubricated
	}
	word := p.Result.Word(t)
	switch word {
	case "oil-lubricated":
		return word, drawing.OilLubricated
	case "submersible":
		return word, drawing.Submersible
	}
	return word, drawing.WaterLubricated
}

// said lists marks as words, for those who do not see the picture.
func said(marks ...drawing.Mark) string {
	text := ""
	for _, m := range marks {
		if !m.Known || m.Text == "" {
			continue
		}
		if text != "" {
			text += ", "
		}
		text += m.Name + " " + m.Text
	}
	return text
}
