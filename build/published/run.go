package published

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"

	"columnbowl/calcwasm/unit"
)

// Outcome is what the engine made of one case.
type Outcome struct {
	Case *Case
	// Value is what was computed, in SI; NaN if nothing was.
	Value float64
	// Deviation is the distance from the published value in units of the
	// tolerance, that is, of the source's rounding: up to 1 the case holds. It is 0
	// for an exact case that holds, and infinite where nothing was computed.
	Deviation float64
	// Refused is why the book gives no value although it was asked well; empty
	// if it gives one, or if the question itself was wanting.
	Refused string
	// Problem says what went wrong; it is empty if the case holds.
	Problem string
}

// lastBits is the relative difference that an exact case may have, and the room
// that a deviation of exactly the tolerance gets.
const lastBits = 1e-9

// Run asks for every case, one request each, in the form of the talk between
// page and engine, and compares the replies.
func (s *Set) Run(answer func(request []byte) []byte) []Outcome {
	cases := s.Cases()
	list := make([]Outcome, len(cases))
	for i, c := range cases {
		list[i] = s.compare(c, answer([]byte(s.request(c))))
		if c.Mark == Disagrees {
			list[i].turn()
		}
	}
	return list
}

// turn makes a row that is marked as disagreeing hold as long as it does: with
// another value, or with a refusal if its note tells of one. Whatever else went
// wrong (a fact too few, a contradiction) stays a problem.
func (o *Outcome) turn() {
	told := strings.Contains(o.Case.Note, notComputed)
	switch computed := !math.IsNaN(o.Value); {
	case o.Problem == "":
		o.Problem = "it is marked as disagreeing, and comes out as published: mark it read"
	case computed && told:
		o.Problem = "its note says that the book does not compute it, and a value comes out: " + o.Problem
	case computed || o.Refused != "" && told:
		o.Problem = ""
	case o.Refused != "":
		o.Problem += "; the note has to tell this with the words “" + notComputed + "”"
	}
}

// request writes a case as a page would ask it.
func (s *Set) request(c *Case) string {
	var b strings.Builder
	id := func(term int) string { return s.book.Terms[term].ID }
	fmt.Fprintf(&b, "exact\nwant\t%s\nshow\t%s\n", id(c.Term), id(c.Term))
	for _, f := range c.Facts {
		fmt.Fprintf(&b, "fact\t%s\t%s\nshow\t%s\n", id(f.Term), f.Text, id(f.Term))
	}
	for _, f := range c.Choose {
		fmt.Fprintf(&b, "choose\t%s\t%s\n", id(f.Term), f.Text)
	}
	return b.String()
}

// reply is what is read of the engine's JSON.
type reply struct {
	Terms []struct {
		ID, State, Exact, Note, Error string
		Alternatives                  []struct {
			Name   string
			Chosen bool
		}
	}
	Clashes []struct{ Text string }
	Missing []struct{ Terms []struct{ ID string } }
}

func (s *Set) compare(c *Case, text []byte) Outcome {
	o := Outcome{Case: c, Value: math.NaN(), Deviation: math.Inf(1)}
	var r reply
	if err := json.Unmarshal(text, &r); err != nil || len(r.Terms) == 0 {
		o.Problem = fmt.Sprintf("the engine's reply cannot be read (%v)", err)
		return o
	}
	for _, t := range r.Terms {
		if t.Error != "" { // all facts were read when the file was: only their range can be wrong
			o.Refused = plain(t.Error)
			o.Problem = t.ID + ": " + o.Refused
			return o
		}
	}
	if len(r.Clashes) > 0 {
		o.Problem = "the facts contradict each other: " + plain(r.Clashes[0].Text)
		return o
	}
	v, err := strconv.ParseFloat(r.Terms[0].Exact, 64)
	switch state := r.Terms[0].State; {
	case err != nil || state != "follows" && state != "estimated" && state != "assumed" && state != "not-applicable":
		o.Problem = "nothing comes out: " + state + lacks(&r)
		if state == "outside" {
			o.Refused = plain(r.Terms[0].Note)
		}
	case !chosen(&r, c):
		o.Problem = "the estimate that was chosen is not the one that was used"
	default:
		s.measure(&o, v)
	}
	return o
}

// chosen says whether the wanted term came from the estimate chosen for it.
func chosen(r *reply, c *Case) bool {
	for _, want := range c.Choose {
		if want.Term != c.Term {
			continue
		}
		for _, a := range r.Terms[0].Alternatives {
			if a.Chosen && a.Name != want.Text {
				return false
			}
		}
	}
	return true
}

// lacks says why nothing came out.
func lacks(r *reply) string {
	text := ""
	if note := r.Terms[0].Note; note != "" {
		text = " (" + plain(note) + ")"
	}
	for i, set := range r.Missing {
		var ids []string
		for _, t := range set.Terms {
			ids = append(ids, t.ID)
		}
		text += []string{"; it would with ", ", or with "}[min(i, 1)] + strings.Join(ids, " and ")
	}
	return text
}

func (s *Set) measure(o *Outcome, v float64) {
	c := o.Case
	o.Value = v
	off := math.Abs(v - c.Expect)
	switch exact := off <= lastBits*math.Abs(c.Expect); {
	case c.Tolerance > 0:
		o.Deviation = off / c.Tolerance
	case exact:
		o.Deviation = 0
	}
	if o.Deviation > 1+lastBits {
		t := &s.book.Terms[c.Term]
		o.Problem = fmt.Sprintf("%s comes out, published is %s within %s (%.3g times the tolerance)",
			plain(unit.FormatWith(v, t.US)), c.ExpectText, c.ToleranceText, o.Deviation)
	}
}

// plain puts plain spaces for no-break ones.
func plain(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

// Holds says whether the case came out as published.
func (o *Outcome) Holds() bool { return o.Problem == "" }

func (o *Outcome) String() string {
	at := fmt.Sprintf("%s:%d: %s", o.Case.File.Name, o.Case.Line, o.Case.Name)
	if o.Holds() {
		return fmt.Sprintf("%s holds, off by %.2g of the tolerance", at, o.Deviation)
	}
	return at + ": " + o.Problem
}
