package reckon

import (
	"slices"
	"strconv"
	"strings"

	"columnbowl/calcwasm/unit"
)

// BowlProblem is one thing wrong with a family as it was written.
type BowlProblem struct {
	Item    int // which item of the list, -1 for the family as a whole
	Column  int // of a point: which of its figures, -1 for the whole item
	Message string
}

// Points of a family: fewer make no curve, more are not needed for one.
const leastPoints, mostPoints = 3, 12

// bowlReader reads a family item by item.
type bowlReader struct {
	bowl     *Bowl
	at       int   // the item being read
	pointAt  []int // the items that the points stand in
	problems []BowlProblem
	seen     []string // the keys that were read
}

// ReadBowl reads a family from items of a key and what it says: “name Lapwing
// 10”, “origin invented”, “speed 1770 rpm”, “point 800 gpm; 45.0 ft; 81.0 %; 9.9
// ft”. A pack and a page's request have the same items. Figures may be written
// as a person types them; without a unit they are in the unit of BowlFields and
// PointFields. The family can be used only if there are no problems.
func ReadBowl(id string, items []string) (*Bowl, []BowlProblem) {
	r := &bowlReader{bowl: &Bowl{ID: id, values: make([]Figure, len(bowlFields))}}
	for i, item := range items {
		r.at = i
		key, text, _ := strings.Cut(item, " ")
		r.item(key, strings.TrimSpace(text))
	}
	r.at = -1
	if id == "" || strings.ContainsAny(id, " \t\n") {
		r.fail(-1, "The family has no id: small words joined by hyphens, such as other-bowl.")
	}
	r.complete()
	if len(r.problems) == 0 {
		r.usual()
		r.shape()
	}
	return r.bowl, r.problems
}

func (r *bowlReader) fail(column int, words ...string) {
	r.problems = append(r.problems, BowlProblem{Item: r.at, Column: column, Message: strings.Join(words, "")})
}

func (r *bowlReader) item(key, text string) {
	b := r.bowl
	if key == "point" {
		r.point(text)
		return
	}
	if slices.Contains(r.seen, key) {
		r.fail(-1, "“", key, "” is said twice of this family.")
	}
	r.seen = append(r.seen, key)
	switch key {
	case "name":
		b.Name = text
	case "note":
		b.Note = text
	case "origin":
		if at := slices.Index(Origins[:], text); at > 0 {
			b.Origin = Origin(at)
			return
		}
		r.fail(-1, "“", text, "” is no origin of a curve: it is invented, measured or builder's sheet.")
	default:
		for i := range bowlFields {
			if bowlFields[i].Name == key {
				b.values[i] = r.figure(&bowlFields[i], text, -1)
				return
			}
		}
		r.fail(-1, "A family of bowls has no “", key, "”.")
	}
}

// point reads the figures of one point, with semicolons between them.
func (r *bowlReader) point(text string) {
	p := &BowlPoint{}
	cells := strings.Split(text, ";")
	if len(cells) > len(pointFields) {
		r.fail(-1, "A point has four figures at most: capacity; head; efficiency; NPSH required.")
		return
	}
	for i := range pointFields {
		cell := ""
		if i < len(cells) {
			cell = strings.TrimSpace(cells[i])
		}
		switch {
		case cell != "":
			*p.figure(i) = r.figure(&pointFields[i], cell, i)
		case pointFields[i].Needed:
			r.fail(i, "This point lacks its ", pointFields[i].Name, ".")
		}
	}
	r.bowl.Points = append(r.bowl.Points, *p)
	r.pointAt = append(r.pointAt, r.at)
}

// figure reads one number and holds it against its range.
func (r *bowlReader) figure(f *BowlField, text string, column int) Figure {
	own, _ := unit.Lookup(f.Unit)
	out := strict(text, own)
	if !out.Known() {
		typed, err := unit.Read(text, unit.Field{Unit: own, Name: f.spoken()})
		switch {
		case err != nil:
			r.fail(column, err.Error())
			return Figure{}
		case typed.Low != typed.High:
			r.fail(column, "“", text, "” is a range; a curve has one figure here.")
			return Figure{}
		}
		out = Figure{Text: unit.FormatPlain(typed.Likely, typed.Unit), Unit: typed.Unit, SI: typed.Likely}
	}
	low, high := own.ToSI(f.Low), own.ToSI(f.High)
	if slack := edge * (high - low); out.SI < low-slack || out.SI > high+slack {
		r.fail(column, "“", text, "” is outside what makes sense for the ", f.spoken(), " of a bowl: from ", plain(low, own), " to ", plain(high, own), ".")
	}
	return out
}

// spoken is the field's name in running text.
func (f *BowlField) spoken() string {
	return strings.Replace(strings.ReplaceAll(f.Name, "-", " "), "npsh", "NPSH", 1)
}

// plain is a figure for a message, with plain spaces.
func plain(si float64, u *unit.Unit) string {
	return strings.ReplaceAll(unit.FormatWith(si, u), "\u00a0", " ")
}

// strict takes a figure as files and packs have it, digits as they stand: “63.0
// ft”. A bare number is strict only where the figure is a pure number.
func strict(text string, own *unit.Unit) Figure {
	digits, symbol, _ := strings.Cut(text, " ")
	v, err := strconv.ParseFloat(digits, 64)
	if symbol == "" && own.Symbol == "1" {
		symbol = own.Symbol
	}
	u, ok := unit.Lookup(symbol)
	if err != nil || !ok || u.Dim != own.Dim || u.Symbol != own.Symbol && own.Dim.IsNone() || strings.Trim(digits, "0123456789.") != "" {
		return Figure{}
	}
	return Figure{Text: digits, Unit: u, SI: u.ToSI(v)}
}

// complete tells what a family lacks.
func (r *bowlReader) complete() {
	if r.bowl.Name == "" {
		r.fail(-1, "The family has no name.")
	}
	if !slices.Contains(r.seen, "origin") {
		r.fail(-1, "The family does not say where its figures come from: origin is invented, measured or builder's sheet.")
	}
	for i := range bowlFields {
		if bowlFields[i].Needed && !slices.Contains(r.seen, bowlFields[i].Name) {
			r.fail(-1, "The family does not say its ", bowlFields[i].Name, ": a curve belongs to one.")
		}
	}
	if n := len(r.bowl.Points); n < leastPoints || n > mostPoints {
		r.fail(-1, "A curve is laid through ", strconv.Itoa(leastPoints), " to ", strconv.Itoa(mostPoints), " points; this family has ", strconv.Itoa(n), ".")
	}
}

// usual fills in what is taken if nothing is said.
func (r *bowlReader) usual() {
	for i := range bowlFields {
		if f := &bowlFields[i]; f.Usual != "" && !r.bowl.values[i].Known() {
			u, _ := unit.Lookup(f.Unit)
			r.bowl.values[i] = strict(f.Usual, u)
		}
	}
}
