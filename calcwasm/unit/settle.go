package unit

import (
	"math"
	"slices"
	"strings"
)

// settle gives the amounts their units, checks them against the field and turns
// them into SI.
func (r *reader) settle(s statement) (Typed, *ReadError) {
	r.shareUnits(&s)
	if err := r.bareFraction(&s); err != nil {
		return Typed{}, err
	}
	if s.first.unit == nil {
		s.first.unit = r.field.Unit
	}
	relative := s.shape == width && s.second.unit != nil && s.second.unit.Symbol == "%" && s.first.unit.Symbol != "%"
	if s.second.unit == nil {
		s.second.unit = s.first.unit
	}
	amounts := []*amount{&s.first}
	if s.shape != single && !relative {
		amounts = append(amounts, &s.second)
	}
	for _, a := range amounts {
		r.weigh(a)
	}
	t := values(s, relative)
	for _, a := range amounts {
		if err := r.fits(a, s, t); err != nil {
			return Typed{}, err
		}
	}
	if err := r.order(s, t); err != nil {
		return Typed{}, err
	}
	sorted(&t)
	r.collectNotes(amounts, &t)
	if !finite(t.Low) || !finite(t.High) || math.Abs(t.Low) > 1e30 || math.Abs(t.High) > 1e30 {
		return Typed{}, r.fault(TooLarge, 0, len(r.text), quote(strings.TrimSpace(r.source))+" is too large for anything here. "+r.wants())
	}
	return t, r.counted(t)
}

// shareUnits gives a bare amount the unit typed at the other one: "180 to 200
// ft". A width in per cent keeps it to itself.
func (r *reader) shareUnits(s *statement) {
	first, second := &s.first, &s.second
	switch {
	case s.shape == single:
	case first.unit == nil && second.unit != nil:
		if s.shape == width && second.unit.Symbol == "%" && r.field.Unit.Symbol != "%" {
			return
		}
		first.unit = second.unit
	case second.unit == nil:
		second.unit = first.unit
	}
}

// bareFraction asks back a bare number above 0 and up to 1 in a percent field.
func (r *reader) bareFraction(s *statement) *ReadError {
	if r.field.Unit.Symbol != "%" {
		return nil
	}
	amounts := []amount{s.first}
	if s.shape == span {
		amounts = append(amounts, s.second)
	}
	for _, a := range amounts {
		if a.unit != nil || !(math.Abs(a.value) > 0 && math.Abs(a.value) <= 1) {
			continue
		}
		return r.fault(Ambiguous, a.start, a.end, r.typed(a.start, a.end)+" %, or "+plainMinus(100*a.value)+" %? Write the sign.")
	}
	return nil
}

func plainMinus(x float64) string { return strings.Replace(pageNumber(x), trueMinus, "-", 1) }

// weigh marks a mass, or a mass per length, in a field of force as the force its
// weight is: people say pounds and kilograms for both.
func (r *reader) weigh(a *amount) {
	u, f := a.unit, r.field.Unit
	a.weight = 1
	if f.Dim == u.Dim.Mul(Acceleration) && u.Dim[1] == scale && u.Offset == 0 {
		a.weight = gravity
		print := u.symbolForTyping()
		a.notes = append(a.notes, print+" read as "+strings.Replace(strings.Replace(print, "lb", "lbf", 1), "kg", "kgf", 1))
	}
}

// values turns the amounts into SI without regard to the field.
func values(s statement, relative bool) Typed {
	a, b := s.first, s.second
	t := Typed{Unit: a.unit, Approximate: s.about, Likely: a.si(), Rounding: a.step(a.half)}
	t.Low, t.High = t.Likely, t.Likely
	switch {
	case s.shape == span:
		t.Unit, t.High = b.unit, b.si()
		t.Rounding = max(t.Rounding, b.step(b.half))
	case s.shape == width:
		wide := math.Abs(b.step(b.value))
		if relative {
			wide = math.Abs(a.step(a.value)) * math.Abs(b.value) / 100
		}
		t.Low, t.High = t.Likely-wide, t.Likely+wide
	}
	return t
}

// si is the amount in SI.
func (a *amount) si() float64 { return float64(a.unit.ToSI(a.value) * a.weight) }

// step is a difference in SI, without the offset of a temperature: ± 2 °F is
// ± 10/9 K.
func (a *amount) step(x float64) float64 { return float64(x * a.unit.Factor * a.weight) }

// order refuses a range with a dash that goes downwards: "200-180" may as well
// be a subtraction.
func (r *reader) order(s statement, t Typed) *ReadError {
	if s.shape == span && s.dash && t.High < t.Low {
		return r.fault(BadRange, s.first.start, s.second.end, "Is "+quote(r.typed(s.first.start, s.second.end))+
			" a range? Then write the smaller number first, or “to” for the dash, as in "+r.spanExample()+".")
	}
	return nil
}

// fits checks one amount against the field.
func (r *reader) fits(a *amount, s statement, t Typed) *ReadError {
	u, f := a.unit, r.field.Unit
	if (u.Dim == f.Dim && u.apart == f.apart) || a.weight != 1 {
		return r.fitsReference(a)
	}
	if s.shape == span && s.first.unit.Dim != s.second.unit.Dim {
		t.Low, t.Likely, t.High, t.Unit = a.si(), a.si(), a.si(), u
	}
	sorted(&t)
	return r.wrongKind(a, t)
}

// sorted puts Low below High and Likely between them.
func sorted(t *Typed) {
	if t.High < t.Low {
		t.Low, t.High = t.High, t.Low
	}
	if t.Low != t.High && (t.Likely <= t.Low || t.Likely >= t.High) {
		t.Likely = t.Low + float64((t.High-t.Low)/2)
	}
}

// collectNotes gathers the notes of the amounts, each once.
func (r *reader) collectNotes(amounts []*amount, t *Typed) {
	for _, a := range amounts {
		for _, note := range append(a.notes, r.unitNotes(a)...) {
			if !slices.Contains(t.Notes, note) {
				t.Notes = append(t.Notes, note)
			}
		}
	}
}

// counted checks that a count is whole and not below zero.
func (r *reader) counted(t Typed) *ReadError {
	if !r.field.Count {
		return nil
	}
	for _, x := range []float64{t.Low, t.High} {
		if x < 0 || x != math.Floor(x) {
			return r.fault(NotWhole, 0, len(r.text), quote(strings.TrimSpace(r.source))+" cannot be counted. "+r.wants())
		}
	}
	return nil
}
