package ask

import (
	"math"
	"strconv"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

func (a *amount) setUnit(symbol string) {
	if a.unit == nil {
		a.unit, _ = unit.Lookup(symbol)
		a.unitText = symbol
	}
}

// bare tells whether no unit of any kind stands behind the number.
func (a *amount) bare() bool { return a.unit == nil && len(a.aliases) == 0 }

// write writes the amount with a unit, its numbers multiplied.
func (a *amount) write(unitText string, times float64) string {
	text := a.head + scaled(a.low, times)
	if a.joint != "" {
		text += a.joint + scaled(a.high, times)
	}
	if unitText == "" {
		return text
	}
	return text + " " + unitText
}

// scaled multiplies a number that is written in digits.
func scaled(number string, times float64) string {
	if times == 1 {
		return number
	}
	v, _, ok := unit.NumberAt(number)
	if !ok {
		return number
	}
	const places = 1e9 // far below the last digit that anybody says
	return strconv.FormatFloat(math.Round(v*times*places)/places, 'f', -1, 64)
}

// wrongSize is what a term loses when the amount is in inches and the term is
// counted in feet, or the other way.
const wrongSize = 60

// fit is how an amount is read as a value of a term.
type fit struct {
	text  string // "" if it cannot be
	loss  int
	loose bool
	why   string // why it cannot be
}

// fit reads an amount as a value of a term: in the unit typed, in the units that
// its words may stand for, or, if there is none, in the term's own.
func (s *session) fit(a *amount, term int) fit {
	t := &s.book.Terms[term]
	if t.Kind == formula.Choice {
		return fit{}
	}
	var bad string
	if a.unit != nil {
		if text, why := s.reads(term, a.write(a.unitText, 1), a.unit); text != "" {
			return fit{text: text, loss: sizeLoss(a.unit, t.US)}
		} else if why != "" {
			bad = why
		}
	}
	for _, al := range a.aliases {
		if text, _ := s.reads(term, a.write(al.unit.Symbol, al.times), al.unit); text != "" {
			return fit{text: text, loss: sizeLoss(al.unit, t.US), loose: al.loose}
		}
	}
	if !a.bare() {
		return fit{why: bad}
	}
	u := t.US
	if s.metric() {
		u = t.SI
	}
	symbol := u.Symbol
	if symbol == "1" || t.Kind == formula.Count {
		symbol = ""
	}
	if symbol == "%" && a.value > 0 && a.value <= 1 { // 0.8 % or 80 %?
		text, _ := s.reads(term, a.write(symbol, 100), nil)
		_, why := s.reads(term, a.write("", 1), nil)
		return fit{text: text, loose: true, why: why}
	}
	text, why := s.reads(term, a.write(symbol, 1), nil)
	return fit{text: text, why: why}
}

// reads tells whether a field of the term takes a text. u is its unit, nil for a
// bare number. why is what the field answers when the kind is right.
func (s *session) reads(term int, text string, u *unit.Unit) (ok, why string) {
	t := &s.book.Terms[term]
	if u != nil && u.Dim != t.US.Dim && t.US.Dim != u.Dim.Mul(unit.Acceleration) {
		return "", ""
	}
	f, err := s.book.Read(term, text)
	if err != nil {
		return "", err.Error()
	}
	if f.Height {
		return "", ""
	}
	return text, ""
}

// sizeLoss tells small lengths from large ones: a pipe of 8 in, and 8 ft of pipe.
func sizeLoss(typed, own *unit.Unit) int {
	if typed.Dim == unit.Length && own.Dim == unit.Length && small(typed) != small(own) {
		return wrongSize
	}
	return 0
}

func small(u *unit.Unit) bool { return u.Factor < 0.2 }

// metric tells whether the sentence speaks in metric units only.
func (s *session) metric() bool {
	si, us := false, false
	for i := range s.amounts {
		if u := s.amounts[i].unit; u != nil {
			si = si || u.System == unit.SI
			us = us || u.System == unit.US
		}
	}
	return si && !us
}

// mixed tells whether it speaks in both systems: a bare length may then be in
// either.
func (s *session) mixed() bool {
	si, us := false, false
	for i := range s.amounts {
		if u := s.amounts[i].unit; u != nil && !isIn(" in mm ", u.Symbol) {
			si = si || u.System == unit.SI
			us = us || u.System == unit.US
		}
	}
	return si && us
}
