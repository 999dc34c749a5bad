// Package choosing weighs the families of bowls of a book against one duty. The
// network reckons each family once, with the facts of the sheet; this room only
// compares what comes out, and says in words what speaks for a family and what
// against it. It has no formula of its own.
//
// Conventions. Facts that belong to one family (its curve, its stages) are left
// out, so that every family is asked the same. A limit that is used here stands
// beside its source: the pages of the terms say the same.
package choosing

import (
	"slices"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// Columns are the terms that the ranking tells of each family, in this order.
var Columns = []string{"stages", "trim-ratio", "speed", "operating-capacity", "bowl-efficiency", "brake-power", "largest-power",
	"motor-rating", "shaft-diameter", "largest-thrust", "npsh-margin", "casing-clearance"}

// ofOneFamily are terms that belong to one pump, beside those that a family
// fills by itself.
var ofOneFamily = []string{reckon.BowlTerm, "stages", "stage-head", "bowl-power", "bowl-length", "shaft-loss", "shaft-loss-rate",
	"field-power", "thrust-bearing-loss", "brake-power", "hydraulic-thrust", "shaft-weight", "total-thrust", "largest-thrust", "impeller-adjustment"}

// Candidate is one family against the duty.
type Candidate struct {
	Bowl    *reckon.Bowl
	Result  *reckon.Result
	Reasons []Reason // what decides first, then against, for, not checked
	Shaft   bool     // the line shaft was not given: it is the bowl shaft or what strength needs
}

// Verdict says how a family stands.
type Verdict uint8

const (
	Fits     Verdict = iota // nothing is against it
	Doubtful                // something is against it
	Out                     // something decides against it
	Unknown                 // the duty is not known well enough to say
)

// String is the word of a reply.
func (v Verdict) String() string { return [...]string{"fits", "doubtful", "out", "unknown"}[v] }

// Verdict of a family, from its reasons.
func (c *Candidate) Verdict() Verdict {
	switch {
	case c.count(Decides) > 0:
		return Out
	case !c.known("stages"):
		return Unknown
	case c.count(Against) > 0:
		return Doubtful
	}
	return Fits
}

// Rank reckons all families of the book with the facts of a question and puts
// them in order: what fits before what is doubtful, that before what is out;
// among these, fewer reasons against; then less power at the duty.
func Rank(book *reckon.Book, q reckon.Question) []*Candidate {
	family, ok := book.Find(reckon.BowlTerm)
	if !ok {
		return nil
	}
	q.Want, q.Plain, q.Facts = -1, true, common(book, q.Facts)
	var list []*Candidate
	for _, bowl := range book.Bowls {
		list = append(list, weigh(book, q, family, bowl))
	}
	compare(list)
	slices.SortStableFunc(list, func(a, b *Candidate) int { return a.order(b) })
	return list
}

func (c *Candidate) order(b *Candidate) int {
	if x, y := c.Verdict(), b.Verdict(); x != y {
		return int(x) - int(y)
	}
	if x, y := c.count(Decides)*100+c.count(Against), b.count(Decides)*100+b.count(Against); x != y {
		return x - y
	}
	switch x, y := c.power(), b.power(); {
	case x < y || x == x && y != y:
		return -1
	case y < x || y == y && x != x:
		return 1
	}
	return 0
}

// power at the duty, in W; without the losses of the shaft while these are not known.
func (c *Candidate) power() float64 {
	if c.known("brake-power") {
		return c.value("brake-power")
	}
	return c.value("bowl-power")
}

// common are the facts that hold for every family.
func common(book *reckon.Book, facts []reckon.Fact) []reckon.Fact {
	own := map[int]bool{}
	for i := range book.Rules {
		if book.Rules[i].Each {
			own[book.Rules[i].Target] = true
		}
	}
	for _, id := range ofOneFamily {
		if t, ok := book.Find(id); ok {
			own[t] = true
		}
	}
	var out []reckon.Fact
	for _, f := range facts {
		if !own[f.Term] {
			out = append(out, f)
		}
	}
	return out
}

// weigh reckons one family. Where no speed is given it runs at the speed of its
// curve, and where no line shaft is given it has one like its bowl shaft, or the
// size that strength needs if that is thicker.
func weigh(book *reckon.Book, q reckon.Question, family int, bowl *reckon.Bowl) *Candidate {
	c := &Candidate{Bowl: bowl}
	q.Facts = slices.Clone(q.Facts)
	c.give(book, &q, reckon.BowlTerm, bowl.ID)
	c.give(book, &q, "speed", bowl.Value("speed").String())
	shaft := bowl.Value("shaft-diameter")
	c.Shaft = c.give(book, &q, "shaft-diameter", shaft.String())
	c.Result = book.Reckon(q)
	if needed, ok := book.Find("needed-shaft-diameter"); ok && c.Shaft && c.Result.Known(needed) && c.Result.Values[needed].Likely > shaft.SI {
		q.Facts = q.Facts[:len(q.Facts)-1]
		c.give(book, &q, "shaft-diameter", c.Result.Text(needed, formula.US))
		c.Result = book.Reckon(q)
	}
	c.judge()
	return c
}

// give adds a fact unless the term has one; it says whether it did.
func (c *Candidate) give(book *reckon.Book, q *reckon.Question, id, text string) bool {
	t, ok := book.Find(id)
	if !ok || text == "" || slices.ContainsFunc(q.Facts, func(f reckon.Fact) bool { return f.Term == t }) {
		return false
	}
	f, err := book.Read(t, text)
	if err == nil {
		q.Facts = append(q.Facts, f)
	}
	return err == nil
}

func (c *Candidate) known(id string) bool {
	t, ok := c.Result.Book.Find(id)
	return ok && c.Result.Known(t)
}

// value of a term in SI; NaN if it is not known.
func (c *Candidate) value(id string) float64 {
	if t, ok := c.Result.Book.Find(id); ok && c.Result.Known(t) {
		return c.Result.Values[t].Likely
	}
	return nan
}

// Text of a term with its unit, "" if it is not known.
func (c *Candidate) Text(id string, s formula.System) string {
	if t, ok := c.Result.Book.Find(id); ok && c.Result.Known(t) {
		return c.Result.Text(t, s)
	}
	return ""
}

// Cell is Text for a table, where a sum of money stands as a bare number.
func (c *Candidate) Cell(id string, s formula.System) string {
	t, ok := c.Result.Book.Find(id)
	if !ok || !c.Result.Known(t) || c.Result.Book.Terms[t].Kind == formula.Choice || c.Result.Book.Terms[t].In(s).Dim != unit.Money {
		return c.Text(id, s)
	}
	return c.Result.Number(t, s)
}

// Heading names a term at the head of a table: over sums, in whose money they are.
func Heading(book *reckon.Book, t int) string {
	term := &book.Terms[t]
	if term.Kind == formula.Choice || term.US.Dim != unit.Money {
		return term.Title
	}
	return term.Title + " " + term.US.Print
}
