package answer

import (
	"strconv"
	"strings"

	"columnbowl/calcwasm/exercise"
	"columnbowl/calcwasm/formula"
)

// ExercisePack begins a pack of exercises, for Add; a line of its own.
const ExercisePack = "exercises"

// Practise takes the packed exercises of the book.
func (d *Desk) Practise(pack []byte) error {
	set, err := exercise.Unpack(pack, d.book)
	if err == nil {
		d.set = set
	}
	return err
}

// practice answers a request about an exercise: “sheet”, “key” or “mark”, each
// with the exercise's id and the seed, and “si” for a sheet in SI; the lines of
// “mark” hold the answers, “answer”, the place of the item from 0 on, and the
// text as typed. It says whether the request was one of these.
func (d *Desk) practice(w *writer, text string) bool {
	first, rest, _ := strings.Cut(text, "\n")
	f := strings.Split(first, "\t")
	if f[0] != "sheet" && f[0] != "key" && f[0] != "mark" {
		return false
	}
	sheet, why := d.sheet(f)
	w.object(func() {
		if sheet == nil {
			w.pair("error", why)
			return
		}
		switch f[0] {
		case "sheet":
			d.asked(w, sheet)
		case "key":
			w.list("items", len(sheet.Items), func(i int) { d.keyOf(w, sheet, i) })
		case "mark":
			d.marks(w, sheet, rest)
		}
	})
	return true
}

// sheet draws the sheet that a request names.
func (d *Desk) sheet(f []string) (*exercise.Sheet, string) {
	if d.set == nil {
		return nil, "No exercises are loaded."
	}
	if len(f) != 3 && (len(f) != 4 || f[3] != "us" && f[3] != "si") {
		return nil, "A request about an exercise names the exercise and the seed, and us or si."
	}
	t := d.set.Find(f[1])
	seed, err := strconv.ParseUint(f[2], 10, 64)
	switch {
	case t == nil:
		return nil, "There is no exercise “" + f[1] + "”."
	case err != nil:
		return nil, "A seed is a whole number, not “" + f[2] + "”."
	}
	sheet, why := d.set.Draw(t, seed)
	if sheet != nil && f[len(f)-1] == "si" {
		sheet.System = formula.SI
	}
	return sheet, why
}

var kindWords = [...]string{exercise.Number: "number", exercise.Choice: "choice", exercise.Ordering: "order"}

// asked writes a sheet without its answers.
func (d *Desk) asked(w *writer, sh *exercise.Sheet) {
	w.pair("id", sh.Template.ID)
	w.pair("name", sh.Template.Name)
	w.number("level", sh.Template.Level)
	w.pair("text", sh.Situation())
	facts := sh.Facts()
	w.list("facts", len(facts), func(i int) {
		id := d.book.Terms[facts[i].Term].ID
		w.object(func() {
			w.pair("id", id)
			w.pair("text", sh.FactText(id))
		})
	})
	cautions := sh.Cautions()
	w.list("cautions", len(cautions), func(i int) { w.text(cautions[i]) })
	w.list("items", len(sh.Items), func(i int) {
		item := &sh.Items[i]
		w.object(func() {
			w.pair("kind", kindWords[item.Kind])
			w.pair("ask", sh.Title(i))
			if item.Kind == exercise.Number {
				w.pair("term", d.book.Terms[item.Term].ID)
				w.pair("unit", sh.Unit(i))
			}
			w.list("options", len(item.Options), func(k int) { w.text(item.Options[k].Text) })
			w.list("names", len(item.Names), func(k int) { w.text(item.Names[k]) })
		})
	})
}

// keyOf writes the right answer of an item and the way to it.
func (d *Desk) keyOf(w *writer, sh *exercise.Sheet, i int) {
	item := &sh.Items[i]
	w.object(func() {
		if item.Kind != exercise.Number {
			w.pair("right", item.Answer)
			if item.Kind == exercise.Choice {
				w.pair("say", sh.RightOption(i).Say)
			}
			return
		}
		w.pair("right", sh.Amount(i, item.Right))
		steps := sh.Way(i)
		w.list("steps", len(steps), func(k int) { w.text(steps[k].Line) })
		w.list("relations", len(steps), func(k int) { w.text(steps[k].Relation) })
		w.list("numbers", len(steps), func(k int) { w.text(steps[k].Numbers) })
	})
}

func (d *Desk) marks(w *writer, sh *exercise.Sheet, lines string) {
	answers := make([]string, len(sh.Items))
	for _, line := range strings.Split(lines, "\n") {
		f := strings.SplitN(line, "\t", 3)
		if i, err := strconv.Atoi(f[min(1, len(f)-1)]); err == nil && f[0] == "answer" && len(f) == 3 && i >= 0 && i < len(answers) {
			answers[i] = f[2]
		}
	}
	marks, points := sh.Mark(answers), 0
	w.list("marks", len(marks), func(i int) {
		points += marks[i].Points
		d.mark(w, &marks[i])
	})
	w.number("points", points)
	w.number("most", exercise.MostPoints*len(marks))
}

func (d *Desk) mark(w *writer, m *exercise.Mark) {
	w.object(func() {
		w.pair("verdict", m.Verdict.String())
		w.number("points", m.Points)
		w.pair("say", m.Say)
		w.flag("own", m.Own)
		w.list("causes", len(m.Causes), func(k int) {
			w.object(func() {
				w.list("slips", len(m.Causes[k].Slips), func(j int) {
					slip := d.set.Slip(m.Causes[k].Slips[j])
					w.object(func() {
						w.pair("id", slip.ID)
						w.pair("term", d.book.Terms[slip.Home].ID)
						w.pair("name", d.book.Terms[slip.Home].Title)
						w.pair("say", slip.Say)
					})
				})
			})
		})
	})
}
