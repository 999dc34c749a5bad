package answer

import (
	"errors"
	"strconv"
	"strings"

	"columnbowl/calcwasm/cutaway"
)

// drawings are the profiles of the pump and the words that its sheets need.
type drawings struct {
	shapes *cutaway.Shapes
	words  cutaway.Words
}

// CutawayPack begins a pack of profiles. After its first line come the words,
// one line each, then an empty line, then the profiles:
//
//	word	impeller	Impeller	bronze, turns	Lifts the water …
//	more	{0} more stages
const CutawayPack = "cutaway"

// Add takes a pack beside the book: what some pages need and others do not. Its
// first line says what it is.
func (d *Desk) Add(pack []byte) error {
	if IsWords(pack) {
		return d.Words(pack)
	}
	kind, rest, _ := strings.Cut(string(pack), "\n")
	switch kind {
	case CutawayPack:
		return d.addDrawings(rest)
	case ExercisePack:
		return d.Practise([]byte(rest))
	}
	return errors.New("this pack is none that the engine knows: “" + kind + "”")
}

func (d *Desk) addDrawings(pack string) error {
	words, profiles, ok := strings.Cut(pack, "\n\n")
	if !ok {
		return errors.New("the pack of drawings has no profiles")
	}
	shapes, err := cutaway.Load(profiles)
	if err != nil {
		return err
	}
	c := &drawings{shapes: shapes, words: cutaway.Words{Of: map[string]cutaway.Word{}}}
	for _, line := range strings.Split(words, "\n") {
		c.word(strings.Split(line, "\t"))
	}
	d.cuts = c
	return nil
}

func (c *drawings) word(f []string) {
	if len(f) == 5 && f[0] == "word" {
		c.words.Of[f[1]] = cutaway.Word{Name: f[2], Sub: f[3], Desc: f[4]}
	}
	if len(f) != 2 {
		return
	}
	switch f[0] {
	case "more":
		c.words.More = f[1]
	case "one-more":
		c.words.OneMore = f[1]
	case "turns":
		c.words.Turns = f[1]
	case "stands":
		c.words.Stands = f[1]
	case "free-turns":
		c.words.FreeTurns = f[1]
	case "free-stands":
		c.words.FreeStands = f[1]
	}
}

// cut answers a request for a sheet: the verb “cut”, then fields key=value:
// build, sheet, width, labels (named, numbered, masked, single, hidden), prefix,
// title, stages, options, follow and known (words split by spaces), column, tube,
// shaft (ratios). Masked is numbered, with neutral names in the place of all
// names; single is named, with numbers in the place of the names. Of both the
// labels in known are told all the same.
// The reply holds the drawing, and its labels with number, id, part, name and
// whether they turn.
func (d *Desk) cut(w *writer, text string) bool {
	rest, ok := strings.CutPrefix(strings.TrimSpace(text), "cut\t")
	if !ok {
		return false
	}
	if d.cuts == nil {
		w.object(func() { w.pair("error", "no drawings are loaded") })
		return true
	}
	p, v := d.cuts.request(strings.Split(rest, "\t"))
	sheet := d.cuts.shapes.Draw(p, v)
	w.object(func() {
		w.pair("svg", sheet.Scene.SVG())
		w.list("labels", len(sheet.Labels), func(i int) {
			l := sheet.Labels[i]
			w.object(func() {
				w.number("n", l.Number)
				w.pair("id", l.ID)
				w.pair("part", l.Part)
				w.pair("name", l.Name)
				w.flag("turns", l.Turns)
			})
		})
	})
	return true
}

func (c *drawings) request(fields []string) (p cutaway.Pump, v cutaway.View) {
	v.Words = c.words
	whole := func(text string) int { n, _ := strconv.Atoi(text); return n }
	part := func(text string) float64 { x, _ := strconv.ParseFloat(text, 64); return x }
	for _, f := range fields {
		key, value, _ := strings.Cut(f, "=")
		switch key {
		case "build":
			p.Build = value
		case "stages":
			p.Stages = whole(value)
		case "options":
			p.Options = strings.Fields(value)
		case "column":
			p.Sizes.Column = part(value)
		case "shaft":
			p.Sizes.LineShaft = part(value)
		case "tube":
			p.Sizes.Tube = part(value)
		case "sheet":
			v.Sheet = value
		case "width":
			v.Width = whole(value)
		case "prefix":
			v.Prefix = value
		case "title":
			v.Words.Title = value
		case "follow":
			v.Follow = strings.Fields(value)
		case "labels":
			v.Veiled = value == "masked" || value == "single"
			v.Labels = map[string]cutaway.Labels{"numbered": cutaway.Numbered, "masked": cutaway.Numbered, "hidden": cutaway.Hidden}[value]
		case "known":
			v.Known = strings.Fields(value)
		}
	}
	return p, v
}
