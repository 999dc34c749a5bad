package reckon

import (
	"math"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// DensityOfTrade is the density of the water that the trade's constants 2.31
// and 3960 stand for, in kg/m3; specific gravities are counted from it.
const DensityOfTrade = 998.55

// gravity is the standard acceleration of free fall, exact by definition.
const gravity = 9.80665

// ReadError tells a person why a typed value was not taken.
type ReadError struct{ Message string }

func (e *ReadError) Error() string { return e.Message }

// Read reads the value of a term as a person types it. A height typed in the
// field of a pressure is taken and marked: it is turned into a pressure once
// the specific gravity is known.
func (b *Book) Read(term int, text string) (Fact, error) {
	t := &b.Terms[term]
	if t.Kind == formula.Choice {
		return b.readChoice(term, text)
	}
	typed, err := unit.Read(text, b.Field(term))
	if err == nil {
		f := Fact{Term: term, Low: typed.Low, Likely: typed.Likely, High: typed.High, Rounding: typed.Rounding, Text: text, Unit: typed.Unit, Notes: typed.Notes}
		if err := b.sane(&f); err != nil {
			return f, err
		}
		if typed.Approximate {
			b.loosen(&f)
		}
		return f, nil
	}
	bad, ok := err.(*unit.ReadError)
	if ok && bad.Code == unit.WrongKind && bad.Dim == unit.Length && t.US.Dim == unit.Pressure {
		y := bad.Typed
		return Fact{Term: term, Low: y.Low, Likely: y.Likely, High: y.High, Rounding: y.Rounding, Text: text, Height: true}, nil
	}
	return Fact{}, &ReadError{Message: err.Error()}
}

// About is how far a value said with “about” may be off, relative to it: common
// practice at a counter, as good as most flow meters and better than a guess.
const About = 0.05

// loosen makes a range of a value said with “about”, inside what makes sense.
func (b *Book) loosen(f *Fact) {
	t := &b.Terms[f.Term]
	if t.Kind != formula.Quantity || f.Low != f.High || f.Unit == nil {
		return
	}
	d := About * math.Abs(f.Likely-f.Unit.ToSI(0)) // 5 % of the degrees, not of the kelvins
	f.Low, f.High = math.Max(t.Low, f.Likely-d), math.Min(t.High, f.Likely+d)
	f.Notes = append(f.Notes[:len(f.Notes):len(f.Notes)], "“about” is taken as 5 % either way (common practice)")
}

// Field is what a line for the term's value accepts.
func (b *Book) Field(term int) unit.Field {
	t := &b.Terms[term]
	return unit.Field{Unit: t.US, Reference: t.Reference, Count: t.Kind == formula.Count, Name: t.Name}
}

func (b *Book) readChoice(term int, text string) (Fact, error) {
	t := &b.Terms[term]
	for i, v := range t.Values {
		if v == text || t.Labels[i] == text {
			x := float64(i)
			return Fact{Term: term, Low: x, Likely: x, High: x, Text: text}, nil
		}
	}
	message := "“" + text + "” is not a " + t.Name + ": "
	for i, v := range t.Values {
		if i > 0 {
			message += ", "
		}
		message += v
	}
	return Fact{}, &ReadError{Message: message + "."}
}

// sane refuses a value outside the range in which the term makes sense.
func (b *Book) sane(f *Fact) error {
	t := &b.Terms[f.Term]
	slack := edge * (t.High - t.Low)
	if f.Low >= t.Low-slack && f.High <= t.High+slack {
		return nil
	}
	return &ReadError{Message: "“" + f.Text + "” is outside what makes sense for " + t.Name + ": from " +
		b.Format(f.Term, t.Low, formula.US) + " to " + b.Format(f.Term, t.High, formula.US) + "."}
}

// turnHeights turns heights typed for pressures into pressures, and says how.
func (b *Book) turnHeights(q *Question) {
	facts := make([]Fact, len(q.Facts))
	copy(facts, q.Facts)
	for i := range facts {
		f := &facts[i]
		if !f.Height {
			continue
		}
		sg, word := b.gravityOf(q)
		height := f.Likely
		k := DensityOfTrade * gravity * sg
		f.Low, f.Likely, f.High, f.Rounding, f.Height = f.Low*k, f.Likely*k, f.High*k, f.Rounding*k, false
		ft, _ := unit.Lookup("ft")
		f.Notes = append(f.Notes[:len(f.Notes):len(f.Notes)], "a height, read as pressure: "+unit.FormatWith(height, ft)+" × "+word+" / 2.31 = "+b.Format(f.Term, f.Likely, formula.US))
	}
	q.Facts = facts
}

// gravityOf is the specific gravity that is given, or assumed, and how it is written.
func (b *Book) gravityOf(q *Question) (float64, string) {
	one, _ := unit.Lookup("1")
	term, ok := b.Find("specific-gravity")
	if !ok {
		return 1, "1"
	}
	for _, f := range q.Facts {
		if f.Term == term {
			return f.Likely, unit.Format(f.Likely, one)
		}
	}
	for _, r := range b.Rules {
		if r.Strength == Assumption && r.Target == term {
			return r.Value, unit.Format(r.Value, one) + " (assumed specific gravity)"
		}
	}
	return 1, "1"
}
