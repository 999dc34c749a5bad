package answer

import (
	"strings"

	"columnbowl/calcwasm/assembly"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// Pack puts a book and its builds into one text, which Open takes.
func Pack(book *reckon.Book, builds *assembly.Model) []byte {
	pack := book.Pack()
	if builds != nil && len(builds.Builds) > 0 {
		pack = append(pack, builds.Pack()...)
	}
	return pack
}

// cutBuilds parts a pack into the book and its builds, which may be wanting.
func cutBuilds(pack []byte) (book, builds []byte) {
	if at := strings.Index(string(pack), "\n"+assembly.PackForm+"\n"); at >= 0 {
		return pack[:at+1], pack[at+1:]
	}
	return pack, nil
}

// WithBuilds gives a desk the builds of its book, for requests of pieces.
func (d *Desk) WithBuilds(m *assembly.Model) *Desk {
	d.builds = m
	return d
}

// pieces writes the parts of the pump from top to bottom. While the build is
// not known there is only the question for it.
func (d *Desk) pieces(w *writer, res *reckon.Result) {
	if d.builds == nil {
		return
	}
	build, ok := d.book.Find(reckon.BuildTerm)
	w.member("pieces", func() {
		w.object(func() {
			if !ok || !res.Known(build) {
				d.asks(w, []int{build})
				return
			}
			if b := d.builds.Of(int(res.Values[build].Likely)); b != nil {
				d.list(w, assembly.Pieces(res, b))
			}
		})
	})
}

func (d *Desk) list(w *writer, l *assembly.List) {
	w.pair("build", l.Build.ID)
	w.pair("name", l.Build.Name)
	w.list("groups", len(l.Build.Groups), func(g int) {
		group := &l.Build.Groups[g]
		w.object(func() {
			w.pair("id", group.ID)
			w.pair("name", group.Name)
			both(w, "mass", l.GroupMass[g], unit.Mass)
			from, to := l.Of(g)
			w.list("parts", to-from, func(i int) { d.piece(w, &l.Pieces[from+i]) })
		})
	})
	w.list("runs", len(l.Runs), func(i int) {
		w.object(func() {
			w.pair("name", l.Runs[i].Name)
			both(w, "length", l.Runs[i].Length, unit.Length)
			w.flag("agrees", l.Runs[i].Agrees)
		})
	})
	w.list("refused", len(l.Refused), func(i int) { w.text(d.book.Cautions[l.Refused[i]].ID) })
	w.list("notes", len(l.Notes), func(i int) { w.text(l.Notes[i]) })
	d.sums(w, l)
	d.fires(w, l)
	d.asks(w, l.Asks())
}

// sums writes the setting as asked and as made, and the totals.
func (d *Desk) sums(w *writer, l *assembly.List) {
	d.sum(w, "asked", l, l.Build.Asked)
	d.sum(w, "made", l, l.Build.Made)
	if deeper := l.Deeper(); deeper > 0 {
		both(w, "deeper", deeper, unit.Length)
	} else if deeper < 0 {
		both(w, "shallower", -deeper, unit.Length)
	}
	totals, largest := l.Totals(), l.Largest()
	w.list("totals", len(totals), func(i int) {
		w.object(func() {
			d.total(w, l, totals[i])
			w.flag("large", totals[i] == largest)
		})
	})
}

func (d *Desk) sum(w *writer, key string, l *assembly.List, t int) {
	if l.Result.Known(t) {
		w.member(key, func() { w.object(func() { d.total(w, l, t) }) })
	}
}

func (d *Desk) total(w *writer, l *assembly.List, t int) {
	w.pair("id", d.book.Terms[t].ID)
	w.pair("name", d.book.Terms[t].Name)
	w.pair("us", l.Result.Text(t, formula.US))
	w.pair("si", l.Result.Text(t, formula.SI))
}

// fires writes the cautions that fire for what the list stands on, refusals
// first. The words of a hazard are told once, and behind them what its cases add.
func (d *Desk) fires(w *writer, l *assembly.List) {
	type line struct {
		id, text        string
		danger, refuses bool
	}
	var lines []line
	for _, i := range l.Refused {
		c := &d.book.Cautions[i]
		lines = append(lines, line{c.ID, c.Say, c.Danger, true})
	}
	for _, t := range d.book.Tell(l.Cautions()) {
		lines = append(lines, line{t.ID(), t.Words(), t.Danger(), false})
		for _, c := range t.Own() {
			lines = append(lines, line{c.ID, c.Say, c.Danger, false})
		}
	}
	w.list("cautions", len(lines), func(i int) {
		c := &lines[i]
		w.object(func() {
			w.pair("id", c.id)
			w.pair("text", c.text)
			w.flag("danger", c.danger)
			w.flag("refuses", c.refuses)
		})
	})
}

// table writes the pieces as texts for files.
func (d *Desk) table(w *writer, res *reckon.Result, main formula.System) {
	build, ok := d.book.Find(reckon.BuildTerm)
	if d.builds == nil || !ok || !res.Known(build) {
		return
	}
	if b := d.builds.Of(int(res.Values[build].Likely)); b != nil {
		l := assembly.Pieces(res, b)
		w.member("table", func() {
			w.object(func() {
				w.pair("csv", CSV(l, main))
				w.pair("tabs", tabbed(l, main))
			})
		})
	}
}

func (d *Desk) piece(w *writer, p *assembly.Piece) {
	w.object(func() {
		w.pair("part", p.Line.Part)
		w.pair("name", p.Line.Name)
		w.pair("label", p.Line.Label)
		w.pair("with", p.Line.With)
		w.number("order", p.Order)
		w.flag("unsure", !p.Sure)
		if p.Count == p.Count {
			w.number("count", int(p.Count))
		}
		both(w, "length", p.Length, unit.Length)
		both(w, "totalLength", p.TotalLength(), unit.Length)
		both(w, "mass", p.Mass, unit.Mass)
		both(w, "totalMass", p.TotalMass(), unit.Mass)
		d.ids(w, "lacks", p.Lacks)
		w.pair("wrong", p.Wrong)
	})
}

func (d *Desk) asks(w *writer, terms []int) {
	w.list("asks", len(terms), func(i int) {
		t := &d.book.Terms[terms[i]]
		w.object(func() {
			w.pair("id", t.ID)
			w.pair("name", t.Name)
			w.pair("ask", t.Ask)
		})
	})
}

// both writes a value in both systems of units; one that is not known is left out.
func both(w *writer, key string, v float64, dim unit.Dim) {
	if v != v {
		return
	}
	w.member(key, func() {
		w.object(func() {
			w.pair("us", Measure(v, dim, formula.US))
			w.pair("si", Measure(v, dim, formula.SI))
		})
	})
}

// Measure writes a length or a mass of a piece: feet and pounds, or metres and
// kilograms.
func Measure(v float64, dim unit.Dim, s formula.System) string {
	symbol := [2]string{"ft", "m"}
	if dim == unit.Mass {
		symbol = [2]string{"lb", "kg"}
	}
	u, _ := unit.Lookup(symbol[s])
	return unit.FormatWith(v, u)
}
