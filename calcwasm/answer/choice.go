package answer

import (
	"math"
	"strconv"
	"strings"

	"columnbowl/calcwasm/choosing"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// choice is what a page of bowls asks beside its sheet.
type choice struct {
	family string // to be drawn; empty for the first of the list
	system formula.System
	narrow bool
	share  float64 // place of the axis that the point is moved to; NaN if it is not moved
}

// readChoice takes the line “choice” with the family, the system of units,
// “narrow” or “wide”, and the place of the axis in thousandths or nothing.
func readChoice(rest string) *choice {
	f := append(strings.Split(rest, "\t"), "", "", "")
	c := &choice{family: f[0], narrow: f[2] == "narrow", share: math.NaN()}
	if f[1] == formula.SI.String() {
		c.system = formula.SI
	}
	if n, err := strconv.ParseFloat(f[3], 64); err == nil {
		c.share = n / 1000
	}
	return c
}

// choice ranks the families and draws one of them.
func (d *Desk) choice(w *writer, q *request) {
	list := choosing.Rank(d.book, q.question)
	if len(list) == 0 {
		return
	}
	drawn := list[0]
	for _, c := range list {
		if c.Bowl.ID == q.choice.family {
			drawn = c
		}
	}
	w.member("choice", func() {
		w.object(func() {
			w.pair("drawn", drawn.Bowl.ID)
			if at := drawn.At(); at >= 0 && at <= 1 {
				w.number("at", int(at*1000+0.5))
			}
			w.pair("capacity", drawn.Text("capacity", q.choice.system))
			w.pair("moved", drawn.Move(q.choice.share, q.choice.system))
			p := choosing.Say(func(key string) string { return d.labels[key] })
			p.System, p.Narrow, p.Prefix = q.choice.system, q.choice.narrow, "curves-"
			w.pair("svg", drawn.Draw(p).SVG())
			w.list("columns", len(choosing.Columns), func(i int) { d.column(w, choosing.Columns[i]) })
			if q.columns != nil {
				d.columns(w, q, drawn)
			}
			w.list("families", len(list), func(i int) { family(w, list[i]) })
		})
	})
}

func (d *Desk) column(w *writer, id string) {
	w.object(func() {
		w.pair("id", id)
		if t, ok := d.book.Find(id); ok {
			w.pair("name", choosing.Heading(d.book, t))
		}
	})
}

func family(w *writer, c *choosing.Candidate) {
	w.object(func() {
		w.pair("id", c.Bowl.ID)
		w.pair("name", c.Bowl.Name)
		w.pair("speed", c.Bowl.Value("speed").String())
		if c.Bowl.Origin == reckon.Invented {
			w.pair("demo", reckon.Demonstration)
		}
		w.pair("verdict", c.Verdict().String())
		w.pair("stages", c.Text("stages", formula.US))
		w.flag("shaft", c.Shaft)
		values(w, choosing.Columns, c)
	})
}

// columnsAsked is the price of the pipe and the years of a line “columns”, as typed.
type columnsAsked struct{ price, years string }

// columns tells what every column and shaft costs for the family that is drawn.
func (d *Desk) columns(w *writer, q *request, drawn *choosing.Candidate) {
	price, wrong := choosing.ReadPrice(q.columns.price)
	years, wrongYears := choosing.ReadYears(q.columns.years)
	list := choosing.ColumnsOf(d.book, q.question, drawn, price, years)
	w.member("column", func() {
		w.object(func() {
			w.pair("priceWrong", wrong)
			w.pair("yearsWrong", wrongYears)
			w.list("columns", len(choosing.ColumnColumns), func(i int) { d.column(w, choosing.ColumnColumns[i]) })
			w.list("options", len(list), func(i int) { option(w, list[i]) })
		})
	})
}

func option(w *writer, o *choosing.Option) {
	w.object(func() {
		w.pair("column", o.Column)
		w.pair("tube", o.Tube)
		w.pair("shaft", o.Shaft)
		w.pair("price", o.Sum(o.Price))
		w.pair("total", o.Sum(o.Total))
		values(w, choosing.ColumnColumns, &o.Candidate)
	})
}

// values writes the values of a candidate, and its reasons.
func values(w *writer, terms []string, c *choosing.Candidate) {
	w.list("cells", len(terms), func(i int) {
		w.object(func() {
			w.always("us", c.Cell(terms[i], formula.US))
			w.always("si", c.Cell(terms[i], formula.SI))
		})
	})
	w.list("reasons", len(c.Reasons), func(i int) {
		r := &c.Reasons[i]
		w.object(func() {
			w.pair("kind", r.Kind.String())
			w.pair("term", r.Term)
			w.pair("us", r.US)
			w.pair("si", r.SI)
		})
	})
}
