package unit

import "strings"

// fault makes an error about a stretch of the cleaned text.
func (r *reader) fault(code Code, from, to int, message string) *ReadError {
	at := r.at[from]
	return &ReadError{Code: code, Text: r.source, At: at, Len: r.at[to] - at, Message: message}
}

// subject is what the field is called in a sentence.
func (r *reader) subject() string {
	if r.field.Name == "" {
		return "this field"
	}
	return r.field.Name
}

// wants is the sentence that says what the field takes.
func (r *reader) wants() string {
	text := r.demand()
	if b := text[0]; b >= 'a' && b <= 'z' {
		return string(b-'a'+'A') + text[1:] + "."
	}
	return text + "."
}

// demand is wants as a clause.
func (r *reader) demand() string {
	f := r.field
	if f.Count {
		return r.subject() + " wants a whole number such as 7"
	}
	kind := f.Unit.kind()
	switch {
	case f.Unit.Symbol == "%":
		kind = "percentage"
	case f.Unit.isPressure() && f.Reference != NoReference:
		kind = f.Reference.String() + " pressure"
	}
	return r.subject() + " wants " + article(kind) + " such as " + r.examples()
}

// wrongKind is the error for a unit of another kind.
func (r *reader) wrongKind(a *amount, t Typed) *ReadError {
	read := r.typed(a.start, a.end)
	if !a.said {
		read = strings.TrimSpace(read + " " + a.unit.symbolForTyping())
	}
	what := article(a.unit.kind())
	if _, known := dimWords[a.unit.Dim]; !known {
		what = "which has the dimension " + a.unit.Dim.String()
	}
	message := "I read " + read + ", " + what + "; " + r.demand() + "."
	if way := wayOut(a.unit, r.field.Unit); way != "" {
		message += " " + way
	}
	err := r.fault(WrongKind, a.start, a.end, message)
	err.Dim, err.Typed = a.unit.Dim, t
	return err
}

// wayOut is a further sentence for mix-ups the trade knows.
func wayOut(typed, field *Unit) string {
	switch {
	case typed.Dim == Mass && field.isPressure():
		return "For pounds per square inch write psi."
	case typed.Dim == Volume && field.Dim == Flow:
		return "A flow needs its time: write gpm, gph or gpd, L/s or m3/h."
	case typed.Dim == Energy && field.Dim == Power:
		return "kWh count energy; the power is in kW."
	case typed.Dim == Power && field.Dim == Energy:
		return "kW tell the power; energy is power times hours, in kWh."
	case typed.Dim == Power && field.Dim == Power:
		return "kVA and kW differ by the power factor."
	case typed.Dim == Frequency && field.Dim == Speed:
		return "Hz is the frequency of the supply; a speed is in rpm."
	case typed.Dim == Speed && field.Dim == Frequency:
		return "rpm is a speed; the frequency of the supply is in Hz."
	case typed.Dim == Energy && field.Dim == Torque:
		return "Write a torque as lbf.ft or N.m."
	}
	return ""
}

// fitsReference tells gauge and absolute pressures apart.
func (r *reader) fitsReference(a *amount) *ReadError {
	u, want := a.unit, r.field.Reference
	if u.Reference == NoReference || want == NoReference || u.Reference == want {
		return nil
	}
	plain := bySymbol[strings.TrimSuffix(strings.TrimSuffix(u.Symbol, "g"), "a")]
	air := "the atmosphere (" + plainMinus(plain.FromSI(atmosphere)) + " " + plain.Symbol + " at sea level, less higher up)"
	message := "I read " + r.typed(a.start, a.end) + ", "
	if want == Gauge {
		message += "an absolute pressure; " + r.subject() + " wants a gauge pressure. Take off " + air +
			" and write it as " + plain.Symbol + ", or write what the gauge shows, such as " + r.examples() + "."
	} else {
		message += "a gauge pressure; " + r.subject() + " wants an absolute pressure. Add " + air +
			" and write it as in " + r.examples() + "."
	}
	return r.fault(WrongReference, a.start, a.end, message)
}

// strange is the error for a word that is no unit.
func (r *reader) strange(start int, word string) *ReadError {
	ends := unitEnds(r.rest(), false)
	for i := len(ends) - 1; i >= 0; i-- {
		if why := refusal(spellingKey(r.rest()[:ends[i]])); why != "" {
			return r.fault(Ambiguous, start, start+ends[i], why+" "+r.wants())
		}
	}
	end := start + len(word)
	message := "I do not know the unit " + quote(r.typed(start, end))
	if near := Suggest(word); near != "" && near != word {
		message += "; did you mean " + bySymbol[near].symbolForTyping() + "? " + r.wants()
	} else {
		message += "; " + r.demand() + "."
	}
	return r.fault(UnknownUnit, start, end, message)
}

// spellingNotes says how an unusual spelling was taken.
func spellingNotes(text string, u *Unit) []string {
	key := spellingKey(text)
	switch {
	case strings.EqualFold(key, "ppm"):
		return []string{"ppm read as mg/L"}
	case key == "°":
		return []string{"° read as " + u.Print}
	case key == "$" || key == "€" || key == "£":
		return []string{key + " read as the book's money"}
	}
	return nil
}

// unitNotes says how the number and unit were taken in this field.
func (r *reader) unitNotes(a *amount) []string {
	var notes []string
	f := r.field
	if a.unit.isPressure() && a.said {
		switch {
		case a.unit.Reference == NoReference && f.Reference == Absolute:
			notes = append(notes, a.unit.Symbol+" read as absolute")
		case a.unit.Reference == Absolute && f.Reference == NoReference:
			notes = append(notes, a.unit.Symbol+" read without its reference")
		}
	}
	if a.unit.Symbol == "hp" && a.said && f.Unit.System == SI {
		notes = append(notes, "hp read as 745.7 W (550 ft·lbf/s), not as the metric horsepower of 735.5 W")
	}
	if a.comma != "" && a.unit.System == SI {
		notes = append(notes, a.comma+" read as "+strings.ReplaceAll(a.comma, ",", ""))
	}
	return notes
}
