package unit

import (
	"strconv"
	"strings"
)

// sample is one pair of numbers that say the same in SI and in US units; us is
// "" for what both write alike.
type sample struct{ siNumber, si, usNumber, us string }

// samples are what messages show. The first of a dimension is the usual one; a
// field whose unit has a sample of its own shows that.
var samples = []sample{
	{"54", "m", "177", "ft"},
	{"203", "mm", "8", "in"},
	{"90", "m3/h", "396", "gpm"},
	{"25", "L/s", "396", "gpm"},
	{"60", "mL/h", "0.38", "gpd"},
	{"414", "kPa", "60", "psi"},
	{"4.1", "bar", "59.5", "psi"},
	{"207", "MPa", "30", "ksi"},
	{"45", "kW", "60.3", "hp"},
	{"5.3", "kN", "1190", "lbf"},
	{"5300", "N", "1190", "lbf"},
	{"68", "kg", "150", "lb"},
	{"285", "N.m", "210", "lbf.ft"},
	{"1.5", "m/s", "4.92", "ft/s"},
	{"18", "degC", "64.4", "degF"},
	{"1770", "rpm", "", ""},
	{"60", "Hz", "", ""},
	{"60", "drops/min", "", ""},
	{"2000", "h", "", ""},
	{"20", "min", "", ""},
	{"460", "V", "", ""},
	{"77", "A", "", ""},
	{"0.25", "ohm", "", ""},
	{"50", "kVA", "", ""},
	{"0.12", "money/kWh", "", ""},
	{"4500", "money", "", ""},
	{"72.5", "%", "", ""},
	{"1.03", "1", "", ""},
	{"2.66", "m/100m", "2.66", "ft/100ft"},
	{"4", "m3", "1057", "gal"},
	{"19", "L", "5.02", "gal"},
	{"0.05", "m2", "77.5", "in2"},
	{"998", "kg/m3", "62.3", "lb/ft3"},
	{"40", "mg/L", "", ""},
	{"1.1", "mPa.s", "1.1", "cP"},
	{"1.1", "cSt", "", ""},
	{"9", "m3/h/m", "12.1", "gpm/ft"},
	{"76", "N/m", "5.2", "lbf/ft"},
	{"8", "kg/m", "5.38", "lb/ft"},
	{"3.5", "kW/100m", "1.43", "hp/100ft"},
	{"0.5", "kWh/m3", "1.89", "kWh/kgal"},
	{"0.4", "1/mm", "10.2", "1/in"},
	{"55.8", "Ns-SI", "2880", "Ns-US"},
	{"9.81", "m/s2", "32.2", "ft/s2"},
	{"1000", "kWh", "", ""},
}

// sampleFor is the sample of a field's unit, or nil.
func sampleFor(u *Unit) *sample {
	for i := range samples {
		if s := &samples[i]; s.si == u.Symbol || s.us == u.Symbol {
			return s
		}
	}
	for i := range samples {
		if v := bySymbol[samples[i].si]; v.Dim == u.Dim && v.apart == u.apart {
			return &samples[i]
		}
	}
	return nil
}

// examples is what the field would take: "54 m or 177 ft".
func (r *reader) examples() string {
	if r.field.Unit.isPressure() && r.field.Reference == Absolute {
		return "101.3 kPa abs or 14.7 psia"
	}
	s := sampleFor(r.field.Unit)
	if s == nil {
		return "12 " + r.field.Unit.symbolForTyping()
	}
	text := withUnit(s.siNumber, s.si)
	if s.us != "" {
		text += " or " + withUnit(s.usNumber, s.us)
	}
	return text
}

// spanExample is a range the field would take.
func (r *reader) spanExample() string {
	u := r.field.Unit
	switch {
	case r.field.Count:
		return "7 to 9"
	case u.Symbol == "%":
		return "70 to 75 %"
	case u.Dim.IsNone():
		return "1.00 to 1.03"
	}
	number := 180.0
	if s := sampleFor(u); s != nil && s.us == u.Symbol {
		number, _ = strconv.ParseFloat(s.usNumber, 64)
	} else if s != nil && s.si == u.Symbol {
		number, _ = strconv.ParseFloat(s.siNumber, 64)
	}
	low, high := strconv.FormatFloat(number, 'g', 2, 64), strconv.FormatFloat(1.1*number, 'g', 2, 64)
	return plainNumber(low) + " to " + plainNumber(high) + " " + u.symbolForTyping()
}

// plainNumber writes 1.8e+02 as 180.
func plainNumber(rounded string) string {
	x, _ := strconv.ParseFloat(rounded, 64)
	return strings.ReplaceAll(pageNumber(x), ",", "")
}

func withUnit(number, symbol string) string {
	if symbol == "1" {
		return number
	}
	return number + " " + bySymbol[symbol].symbolForTyping()
}

// symbolForTyping is the spelling a person can type and understand: the symbol,
// but °F for degF and nothing for the pure number.
func (u *Unit) symbolForTyping() string {
	switch u.Symbol {
	case "degF", "degC", "1":
		return u.Print
	case "kPag", "barg":
		return u.Symbol[:len(u.Symbol)-1] + " gauge"
	case "kPaa", "bara":
		return u.Symbol[:len(u.Symbol)-1] + " abs"
	}
	return u.Symbol
}
