package unit

import (
	"errors"
	"testing"
)

// refused is one text that is not read: the code, the bytes it is about, and the
// whole message.
type refused struct {
	field, text string
	code        Code
	at, len     int
	message     string
}

func TestReadRefuses(t *testing.T) {
	for _, c := range refusals {
		_, err := Read(c.text, fieldNamed(t, c.field))
		var e *ReadError
		if !errors.As(err, &e) {
			t.Errorf("%s: %q is read", c.field, c.text)
			continue
		}
		if e.Code != c.code || e.At != c.at || e.Len != c.len || e.Message != c.message || e.Text != c.text {
			t.Errorf("%s: %q: %d [%d+%d]\n%s", c.field, c.text, e.Code, e.At, e.Len, e.Message)
		}
	}
}

const (
	level    = "tatic level wants a length such as 54 m or 177 ft."
	flowWord = "apacity wants a flow such as 90 m3/h or 396 gpm."
	tons     = "There are three tons: the short ton is 2000 lb, the long ton 2240 lb, the tonne 1000 kg. Write the weight in lb or kg. "
	gallons  = "Gallons here are US gallons; the imperial gallon is 1.2009 of them. Write L, L/s or m3/h, or turn it into US gallons. C"
	metricHP = "The metric horsepower is 735.5 W and is not taken, lest it be mixed up with the hp of 745.7 W. Write the power in kW, or in hp of 550 ft·lbf/s. "
	motor    = "otor power wants a power such as 45 kW or 60.3 hp."
)

var refusals = []refused{
	{"static level", "", Empty, 0, 0, "Nothing is written here. S" + level},
	{"static level", " \t ", Empty, 0, 0, "Nothing is written here. S" + level},
	{"static level", "abc", NotANumber, 0, 3, `I find no number in “abc”. S` + level},
	{"static level", "ft", NotANumber, 0, 2, `I find no number in “ft”. S` + level},
	{"static level", "-", NotANumber, 0, 1, `I find no number in “-”. S` + level},
	{"static level", "1,2,3", NotANumber, 0, 5, `The number “1,2,3” has commas that do not group thousands. Write it as 1250.5 or 1,250.5.`},
	{"static level", "1.2.3 ft", NotANumber, 0, 5, `The number “1.2.3” has more than one point. Write it as 1250.5 or 1,250.5.`},
	{"static level", "1.250,5", NotANumber, 0, 7, `The number “1.250,5” has a comma where none groups thousands. Write it as 1250.5 or 1,250.5.`},
	{"static level", "1250,500", NotANumber, 0, 8, `The number “1250,500” has a comma that may group thousands or stand before decimals. Write it as 1250.5 or 1,250.5.`},
	{"static level", "1-11/8 in", NotANumber, 0, 6, `I cannot read “1-11/8” as a number with a fraction. Write it as in 6 5/8 or 6.625.`},
	{"static level", "5/0", NotANumber, 0, 3, `I cannot read “5/0” as a number with a fraction. Write it as in 6 5/8 or 6.625.`},
	{"static level", "1e30", TooLarge, 0, 4, `The number “1e30” is too large for anything here. S` + level},
	{"static level", "180 fett", UnknownUnit, 4, 4, `I do not know the unit “fett”; did you mean ft? S` + level},
	{"static level", "180 xyzzy", UnknownUnit, 4, 5, `I do not know the unit “xyzzy”; s` + level},
	{"capacity", "400 gmp", UnknownUnit, 4, 3, `I do not know the unit “gmp”; did you mean gpm? C` + flowWord},
	{"static level", "54 m/s", WrongKind, 0, 6, "I read 54 m/s, a velocity; s" + level},
	{"static level", "64 F", WrongKind, 0, 4, "I read 64 F, a temperature; s" + level},
	{"static level", "£5", WrongKind, 0, 3, "I read £5, a sum of money; s" + level},
	{"discharge pressure", "60 pounds", WrongKind, 0, 9, "I read 60 pounds, a mass; discharge pressure wants a gauge pressure such as 414 kPa or 60 psi. For pounds per square inch write psi."},
	{"price", "12c/kWh", Ambiguous, 2, 5, "Write the price in whole money: 11 cents a kilowatt-hour are 0.11 money/kWh. Price wants a price of energy such as 0.12 money/kWh."},
	{"static level", "180 ft / 55 m", Leftover, 7, 6, `I read “180 ft”, but not “/ 55 m” behind it. S` + level},
	{"static level", "180-200-220", Leftover, 7, 4, `I read “180-200”, but not “-220” behind it. S` + level},
	{"static level", "1 000 ft", Leftover, 2, 6, `After “1” stands another number, “000 ft”. For a range write 180 to 190 ft; for thousands write 1,250 or 1250; feet and inches are 12 ft 6 in.`},
	{"static level", "180 ft to 60 psi", WrongKind, 10, 6, "I read 60 psi, a pressure; s" + level},
	{"static level", "5 gpm/hp", WrongKind, 0, 8, "I read 5 gpm/hp, which has the dimension length·time^2/mass; s" + level},
	{"capacity", "400 gal", WrongKind, 0, 7, "I read 400 gal, a volume; c" + flowWord + " A flow needs its time: write gpm, gph or gpd, L/s or m3/h."},
	{"discharge pressure", "138 ft", WrongKind, 0, 6, "I read 138 ft, a length; discharge pressure wants a gauge pressure such as 414 kPa or 60 psi."},
	{"discharge pressure", "0.5 kWh/m3", WrongKind, 0, 10, "I read 0.5 kWh/m3, an energy per volume; discharge pressure wants a gauge pressure such as 414 kPa or 60 psi."},
	{"motor power", "45 kVA", WrongKind, 0, 6, "I read 45 kVA, an apparent power; m" + motor + " kVA and kW differ by the power factor."},
	{"motor power", "45 kWh", WrongKind, 0, 6, "I read 45 kWh, an energy; m" + motor + " kWh count energy; the power is in kW."},
	{"speed", "60 Hz", WrongKind, 0, 5, "I read 60 Hz, a frequency; speed wants a rotational speed such as 1770 rpm. Hz is the frequency of the supply; a speed is in rpm."},
	{"specific capacity", "1 cSt", WrongKind, 0, 5, "I read 1 cSt, a kinematic viscosity; specific capacity wants a flow per length such as 9 m3/h/m or 12.1 gpm/ft."},
	{"efficiency", "0.72", Ambiguous, 0, 4, "0.72 %, or 72 %? Write the sign."},
	{"efficiency", "1", Ambiguous, 0, 1, "1 %, or 100 %? Write the sign."},
	{"efficiency", "0.7 to 0.8", Ambiguous, 0, 3, "0.7 %, or 70 %? Write the sign."},
	{"efficiency", "about 0,725", Ambiguous, 6, 5, "0,725 %, or 72.5 %? Write the sign."},
	{"static level", "54 M", Ambiguous, 3, 1, "M may be metres, thousands or millions. Write m for metres, or the number in full. S" + level},
	{"capacity", "5k gpm", Ambiguous, 1, 1, "k may be thousands. Write the number in full, as in 5000. C" + flowWord},
	{"thrust", "1.2 tons", Ambiguous, 4, 4, tons + "Thrust wants a force such as 5.3 kN or 1190 lbf."},
	{"thrust", "1 t", Ambiguous, 2, 1, tons + "Thrust wants a force such as 5.3 kN or 1190 lbf."},
	{"capacity", "400 igpm", Ambiguous, 4, 4, gallons + flowWord},
	{"capacity", "400 imp gal per min", Ambiguous, 4, 15, gallons + flowWord},
	{"motor power", "60 PS", Ambiguous, 3, 2, metricHP + "M" + motor},
	{"motor power", "60 metric hp", Ambiguous, 3, 9, metricHP + "M" + motor},
	{"discharge pressure", "5 mPa", Ambiguous, 2, 3, "mPa is a thousandth of a pascal. Write MPa, kPa or bar. Discharge pressure wants a gauge pressure such as 414 kPa or 60 psi."},
	{"discharge pressure", "60#", Ambiguous, 2, 1, "The sign # is not read as a unit. Write lb, or lbf for a force. Discharge pressure wants a gauge pressure such as 414 kPa or 60 psi."},
	{"price", "12 cents", Ambiguous, 3, 5, "Write the price in whole money: 11 cents a kilowatt-hour are 0.11 money/kWh. Price wants a price of energy such as 0.12 money/kWh."},
	{"static level", "12'-6", Ambiguous, 0, 5, `Is “12'-6” feet and inches, or a range? Write 12'6" for the one, and “to” for the dash of the other.`},
	{"capacity", "at least 400", Ambiguous, 0, 12, `“at least 400” gives one end only. Write the number you expect, or a range such as 400 to 440 gpm.`},
	{"capacity", "< 400 gpm", Ambiguous, 0, 9, `“< 400 gpm” gives one end only. Write the number you expect, or a range such as 400 to 440 gpm.`},
	{"discharge pressure", "60 psia", WrongReference, 0, 7, "I read 60 psia, an absolute pressure; discharge pressure wants a gauge pressure. Take off the atmosphere (14.7 psi at sea level, less higher up) and write it as psi, or write what the gauge shows, such as 414 kPa or 60 psi."},
	{"discharge pressure", "4 bar abs", WrongReference, 0, 9, "I read 4 bar abs, an absolute pressure; discharge pressure wants a gauge pressure. Take off the atmosphere (1.013 bar at sea level, less higher up) and write it as bar, or write what the gauge shows, such as 414 kPa or 60 psi."},
	{"air pressure", "0 psig", WrongReference, 0, 6, "I read 0 psig, a gauge pressure; air pressure wants an absolute pressure. Add the atmosphere (14.7 psi at sea level, less higher up) and write it as in 101.3 kPa abs or 14.7 psia."},
	{"stages", "7.5", NotWhole, 0, 3, `“7.5” cannot be counted. Stages wants a whole number such as 7.`},
	{"stages", "-1", NotWhole, 0, 2, `“-1” cannot be counted. Stages wants a whole number such as 7.`},
	{"stages", "7 ft", WrongKind, 0, 4, "I read 7 ft, a length; stages wants a whole number such as 7."},
	{"static level", "180 200 ft", Leftover, 4, 6, `After “180” stands another number, “200 ft”. For a range write 180 to 190 ft; for thousands write 1,250 or 1250; feet and inches are 12 ft 6 in.`},
	{"static level", "12 ft 14 in", Leftover, 6, 5, `After “12 ft” stands another number, “14 in”. For a range write 180 to 190 ft; for thousands write 1,250 or 1250; feet and inches are 12 ft 6 in.`},
	{"static level", "180 ft deep", Leftover, 7, 4, `I read “180 ft”, but not “deep” behind it. S` + level},
	{"static level", "180 to", Leftover, 4, 2, `After “180” the second number is missing. S` + level},
	{"static level", "200-180 ft", BadRange, 0, 10, `Is “200-180 ft” a range? Then write the smaller number first, or “to” for the dash, as in 180 to 190 ft.`},
	{"bore", "6 - 5/8", BadRange, 0, 7, `Is “6 - 5/8” a range? Then write the smaller number first, or “to” for the dash, as in 8 to 8.8 in.`},
}

// Bytes are counted in the person's own text, also behind signs of several bytes.
func TestFaultPlaces(t *testing.T) {
	text := "≈ 12½ xyzzy"
	_, err := Read(text, fieldNamed(t, "static level"))
	var e *ReadError
	if !errors.As(err, &e) || text[e.At:e.At+e.Len] != "xyzzy" {
		t.Errorf("%+v", err)
	}
}
