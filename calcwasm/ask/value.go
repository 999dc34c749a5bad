package ask

import (
	"math"
	"strconv"
	"strings"

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
	key := a.place*len(s.book.Terms) + term
	f, ok := s.memo[key]
	if !ok {
		f = s.newFit(a, term)
		s.memo[key] = f
	}
	return f
}

func (s *session) newFit(a *amount, term int) fit {
	t := &s.book.Terms[term]
	if t.Kind == formula.Choice {
		return fit{}
	}
	var bad string
	if a.unit != nil && a.unit.Symbol == "rev" && t.US.Symbol == "1" && strings.Contains(strings.ToLower(t.Name), "turn") { // they are counted
		if text, _ := s.reads(term, a.write("", 1)); text != "" {
			return fit{text: text}
		}
	}
	if a.unit != nil && alike(a.unit, t.US) {
		if text, why := s.reads(term, a.write(a.unitText, 1)); text != "" {
			return fit{text: text, loss: sizeLoss(a.unit, t.US)}
		} else if why != "" {
			bad = why
		}
	}
	for _, al := range a.aliases {
		if !alike(al.unit, t.US) {
			continue
		}
		if text, _ := s.reads(term, a.write(al.unit.Symbol, al.times)); text != "" {
			return fit{text: text, loss: sizeLoss(al.unit, t.US), loose: al.loose}
		}
	}
	if !a.bare() {
		return fit{why: bad}
	}
	u, other := t.US, t.SI
	if s.si && !s.us {
		u, other = other, u
	}
	if f := s.bareIn(a, term, u); f.text != "" || !small(other) || t.US.Dim != unit.Length {
		return f
	}
	f := s.bareIn(a, term, other) // DN 150 is no 150 in
	f.loose = f.loose || !s.si
	return f
}

// bareIn reads a number without a unit in one of a term.
func (s *session) bareIn(a *amount, term int, u *unit.Unit) fit {
	t := &s.book.Terms[term]
	symbol := u.Symbol
	if symbol == "1" || t.Kind == formula.Count {
		symbol = ""
	}
	if symbol == "%" && a.value > 0 && a.value <= 1 { // 0.8 % or 80 %?
		text, _ := s.reads(term, a.write(symbol, 100))
		_, why := s.reads(term, a.write("", 1))
		return fit{text: text, loose: true, why: why}
	}
	text, why := s.reads(term, a.write(symbol, 1))
	if text == "" && symbol == "" && t.Kind != formula.Count && a.value > 1 && a.value <= 100 { // a power factor of 86
		if text, _ := s.reads(term, a.write("", 0.01)); text != "" {
			return fit{text: text}
		}
	}
	return fit{text: text, why: why}
}

// alike tells whether a unit may be one of a term: of its kind, or a mass where
// a force is wanted.
func alike(typed, own *unit.Unit) bool {
	return typed.Dim == own.Dim || own.Dim == typed.Dim.Mul(unit.Acceleration)
}

// reads tells whether a field of the term takes a text; why is what it answers
// if not.
func (s *session) reads(term int, text string) (ok, why string) {
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

// systems notes in which systems of units the sentence speaks: a bare number is
// metric in a metric sentence. Inches and millimetres name sizes in either.
func (s *session) systems() {
	for i := range s.amounts {
		if u := s.amounts[i].unit; u != nil && u.Symbol != "in" && u.Symbol != "mm" {
			s.si = s.si || u.System == unit.SI
			s.us = s.us || u.System == unit.US
		}
	}
}
