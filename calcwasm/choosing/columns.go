package choosing

import (
	"slices"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/pipe"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// ColumnColumns are the terms that are told of each column, in this order.
var ColumnColumns = []string{"column-velocity", "column-loss-rate", "column-loss", "shaft-loss", "brake-power", "input-power", "energy-cost", "shaft-stress", "column-weight"}

// The sizes that are tried. Columns are those of standard-weight steel pipe with
// a bore on the page of the column size; shafts are the published line shafts (page
// of the needed shaft diameter); tubes the usual sizes of enclosing tube.
var (
	columnSizes = []string{"4 in", "5 in", "6 in", "8 in", "10 in", "12 in", "14 in"}
	shaftSizes  = []string{"1 in", "1.25 in", "1.5 in", "1.6875 in", "1.9375 in", "2.1875 in", "2.4375 in", "2.6875 in", "2.9375 in"}
	tubeSizes   = []string{"1.5 in", "2 in", "2.5 in", "3 in", "3.5 in", "4 in", "5 in"}
)

// ofOneColumn are terms that belong to one column.
var ofOneColumn = []string{"total-head", "column-size", "column-inside-diameter", "column-velocity", "column-loss-rate", "column-loss", "column-unit-weight",
	"column-weight", "tube-size", "tube-outside-diameter", "shaft-diameter", "input-power", "energy-cost", "overall-efficiency", "field-efficiency"}

// Option is one column with its shaft.
type Option struct {
	Candidate
	Column, Tube, Shaft string  // sizes as a fact is typed; Tube and Shaft are empty where the build has none
	Price               float64 // of the pipe, in money; NaN if no price is given
	Total               float64 // of the pipe and the energy of the years; NaN if one is missing
}

// ColumnsOf reckons the pump of a candidate with every column and with the three
// thinnest line shafts that are strong enough. The field head is the same for
// all; what the column loses comes on top. price is money for each kg of pipe,
// NaN if it is not known. The cheapest over the years comes first; while costs are
// not known, the one that takes least power. What cannot be used (no room for the
// water, no room in the casing, a loss beyond the range of the formula, a shaft over
// its stress) is left out. Nothing is returned while field head or setting is missing.
func ColumnsOf(book *reckon.Book, q reckon.Question, c *Candidate, price, years float64) []*Option {
	if !c.known("field-head") || !c.known("setting") || !c.known("capacity") {
		return nil
	}
	field := reckon.Fact{Term: c.at("field-head")}
	field.Low, field.Likely, field.High = c.value("field-head"), c.value("field-head"), c.value("field-head")
	var facts []reckon.Fact
	for _, f := range common(book, q.Facts) {
		if !slices.Contains(ofOneColumn, book.Terms[f.Term].ID) && f.Term != field.Term {
			facts = append(facts, f)
		}
	}
	base := reckon.Question{Want: -1, Plain: true, Choose: q.Choose, Facts: append(facts, field)}
	c.give(book, &base, reckon.BowlTerm, c.Bowl.ID)
	c.give(book, &base, "speed", c.Bowl.Value("speed").String())
	var list []*Option
	for _, column := range columnSizes {
		list = append(list, shafts(book, base, c, column)...)
	}
	list = slices.DeleteFunc(list, func(o *Option) bool { return !o.goesIn() || o.count(Decides) > 0 || o.power() != o.power() })
	for _, o := range list {
		o.Price = o.value("column-weight") * price
		o.Total = o.Price + o.value("energy-cost")*years
	}
	slices.SortStableFunc(list, (*Option).order)
	return list
}

// couplings is how much wider than its pipe a column is at its couplings: half an
// inch on each side (common practice, page of the column size).
const couplings = 1 * inch

// goesIn says whether the column with its couplings is narrower than the casing,
// as far as that is known.
func (o *Option) goesIn() bool {
	outside, _ := pipe.OutsideDiameter(o.value("column-size"))
	return !(outside+couplings > o.value("casing-inside-diameter"))
}

// shafts are the options of one column.
func shafts(book *reckon.Book, base reckon.Question, c *Candidate, column string) []*Option {
	build := c.Result.Word(c.at("build"))
	if build == "submersible" {
		return []*Option{try(book, base, c, column, "", "")}
	}
	var list []*Option
	for _, shaft := range shaftSizes {
		if thinner(book, shaft, c.Bowl) {
			continue
		}
		tube := ""
		if build == "oil-lubricated" {
			tube = tubeFor(book, shaft)
		}
		o := try(book, base, c, column, shaft, tube)
		if !o.goesIn() || !o.known("column-velocity") {
			break // and a thicker shaft leaves no more room
		}
		// a size that is known to be too weak is no choice
		if o.value("needed-shaft-diameter") > o.value("shaft-diameter") {
			continue
		}
		if list = append(list, o); len(list) == 3 {
			break
		}
	}
	return list
}

// thinner says whether a line shaft is thinner than the bowl shaft of a family.
func thinner(book *reckon.Book, shaft string, bowl *reckon.Bowl) bool {
	t, ok := book.Find("shaft-diameter")
	if !ok {
		return false
	}
	f, err := book.Read(t, shaft)
	return err == nil && f.Likely < bowl.Value("shaft-diameter").SI*(1-1e-9)
}

// tubeFor is the smallest tube that leaves 3/4 in more than the shaft, for its
// couplings and bearings (teaching rule of this book; the builder's list rules).
func tubeFor(book *reckon.Book, shaft string) string {
	t, ok := book.Find("tube-size")
	if !ok {
		return ""
	}
	s, err := book.Read(t, shaft)
	for _, tube := range tubeSizes {
		if f, wrong := book.Read(t, tube); err == nil && wrong == nil && f.Likely >= s.Likely+0.75*inch*(1-1e-9) {
			return tube
		}
	}
	return ""
}

func try(book *reckon.Book, base reckon.Question, c *Candidate, column, shaft, tube string) *Option {
	o := &Option{Candidate: Candidate{Bowl: c.Bowl}, Column: column, Shaft: shaft, Tube: tube}
	base.Facts = slices.Clone(base.Facts)
	o.give(book, &base, "column-size", column)
	o.give(book, &base, "shaft-diameter", shaft)
	o.give(book, &base, "tube-size", tube)
	o.Result = book.Reckon(base)
	o.warn()
	return o
}

// warnings are the terms whose cautions speak of a column or its shaft.
var warnings = []string{"column-size", "column-velocity", "column-loss-rate", "shaft-diameter", "shaft-stress", "tube-size"}

// warn takes the cautions of the book that fire: those of danger decide.
func (o *Option) warn() {
	for _, s := range o.Result.Cautions {
		w := &o.Result.Book.Cautions[s.Caution]
		home := o.Result.Book.Terms[w.Home].ID
		if s.Truth != formula.True || !slices.Contains(warnings, home) {
			continue
		}
		kind := Against
		if w.Danger {
			kind = Decides
		}
		o.Reasons = append(o.Reasons, Reason{Kind: kind, Term: home, US: w.Say, SI: w.Say})
	}
	o.sort()
}

// order: by the cost over the years, or else by the power at the duty.
func (o *Option) order(b *Option) int {
	p, q := o.Total, b.Total
	if p != p || q != q {
		p, q = o.power(), b.power()
	}
	switch {
	case p < q || p == p && q != q:
		return -1
	case p > q || p != p && q == q:
		return 1
	}
	return 0
}

// Sum writes an amount of money as a bare number, "" if it is not known: the
// heading of its column says that it is in the reader's currency.
func (o *Option) Sum(v float64) string {
	t, ok := o.Result.Book.Find("energy-cost")
	if v != v || !ok {
		return ""
	}
	return unit.Format(v, o.Result.Book.Terms[t].US)
}

// ReadPrice reads a price of pipe as a person types it, $ for each lb unless
// another unit is written, and gives money for each kg. An empty text is NaN.
func ReadPrice(text string) (price float64, wrong string) {
	return readPlain(text, "money/lb", "price of the column", 0, 1000)
}

// ReadYears reads how many years are counted.
func ReadYears(text string) (years float64, wrong string) {
	if text == "" {
		text = "10"
	}
	return readPlain(text, "1", "number of years", 0, 60)
}

func readPlain(text, symbol, name string, low, high float64) (float64, string) {
	if text == "" {
		return nan, ""
	}
	u, ok := unit.Lookup(symbol)
	if !ok {
		return nan, "there is no unit " + symbol
	}
	typed, err := unit.Read(text, unit.Field{Unit: u, Name: name})
	if err != nil {
		return nan, err.Error()
	}
	if n := u.FromSI(typed.Likely); n < low || n > high {
		return nan, "“" + text + "” is outside what makes sense for the " + name + ": from " + unit.FormatWith(u.ToSI(low), u) + " to " + unit.FormatWith(u.ToSI(high), u) + "."
	}
	return typed.Likely, ""
}
