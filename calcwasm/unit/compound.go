package unit

import (
	"strconv"
	"strings"
)

// superscripts turns printed powers and dots into the spelling of the notation.
var superscripts = strings.NewReplacer("²", "2", "³", "3", "·", ".", "⋅", ".")

// mostFactors bounds the length of a composed unit.
const mostFactors = 6

// compose builds a unit from parts that find knows. It is nil when a part is
// unknown, when a part cannot be combined (degF, psig, %, a specific speed), or
// when the spelling is ambiguous: a dot behind a slash, as in "lb/ft.s", may
// stand below or beside the line.
func compose(symbol string, find func(string) *Unit) *Unit {
	sides := strings.Split(superscripts.Replace(symbol), "/")
	if len(sides) > mostFactors {
		return nil
	}
	c := &Unit{Symbol: symbol, Factor: 1}
	for i, side := range sides {
		factors := strings.Split(side, ".")
		if i > 0 && find(side) != nil {
			factors = []string{side} // 1/N.m, money/kW.h
		}
		if len(factors) > mostFactors || (i > 0 && len(factors) > 1) {
			return nil
		}
		if side == "1" && i == 0 && len(sides) > 1 {
			c.Print = "1"
			continue
		}
		for j, factor := range factors {
			p := readFactor(factor, i > 0, find)
			if p == nil {
				return nil
			}
			c.take(p, i > 0, j > 0)
		}
	}
	return c.finish(len(sides) > 1 || strings.Contains(sides[0], "."))
}

// part is one factor of a composed unit: times × unit^power.
type part struct {
	unit  *Unit
	times int
	power int
}

// readFactor reads "ft", "ft3", "ft^3" or, below the line, "100ft" with a
// power of ten up to 10,000.
func readFactor(text string, below bool, find func(string) *Unit) *part {
	p := &part{times: 1, power: 1}
	if digits := leadingDigits(text); digits != "" {
		times := map[string]int{"10": 10, "100": 100, "1000": 1000, "10000": 10_000}[digits]
		if !below || times == 0 {
			return nil // "180 ft / 55 m" is no unit
		}
		p.times, text = times, text[len(digits):]
	}
	p.unit = find(text)
	if last := len(text) - 1; p.unit == nil && last > 0 && text[last] >= '2' && text[last] <= '9' {
		p.power = int(text[last] - '0')
		p.unit = find(strings.TrimSuffix(text[:last], "^"))
	}
	if p.unit == nil || !p.unit.combines() {
		return nil
	}
	if _, ok := p.unit.Dim.Pow(p.power, 1); !ok {
		return nil
	}
	return p
}

// combines tells whether a unit may be part of another.
func (u *Unit) combines() bool {
	return u.Offset == 0 && u.Reference == NoReference && u.Symbol != "1" && u.Symbol != "%" && u.Dim != SpecificSpeed
}

// take multiplies c by the part, or divides by it.
func (c *Unit) take(p *part, below, dotted bool) {
	factor, printed := float64(p.times), p.unit.Print
	if p.times > 1 {
		printed = strconv.Itoa(p.times) + "\u00a0" + printed
	}
	for range p.power {
		factor *= p.unit.Factor
	}
	dim, _ := p.unit.Dim.Pow(p.power, 1)
	if p.power > 1 {
		printed += superscript(p.power)
	}
	name := p.unit.Name
	if p.power > 1 || p.times > 1 {
		name = printed
	}
	switch {
	case below && c.Print == currency: // a price is read as “0.12 per kWh”
		c.Dim, c.Factor = c.Dim.Div(dim), c.Factor/factor
		c.Print, c.Name = perPrint+printed, c.Name+" per "+name
	case below:
		c.Dim, c.Factor = c.Dim.Div(dim), c.Factor/factor
		c.Print, c.Name = c.Print+"/"+printed, c.Name+" per "+name
	case dotted:
		c.Dim, c.Factor = c.Dim.Mul(dim), c.Factor*factor
		c.Print, c.Name = c.Print+"·"+printed, c.Name+" times "+name
	default:
		c.Dim, c.Factor, c.Print, c.Name = dim, factor, printed, name
	}
	c.join(p.unit)
}

// join carries system and kind over from a part.
func (c *Unit) join(u *Unit) {
	switch {
	case c.Source == "":
		c.System, c.Source = u.System, "composed of its parts"
	case c.System == Both:
		c.System = u.System
	case u.System != Both && u.System != c.System:
		c.System = Both // ft/100m: neither reader's own
	}
	if u.Dim == Energy || c.apart == energyPerVolume {
		c.apart = energyPerVolume
	}
}

// finish refuses what is no unit after all and settles the kind.
func (c *Unit) finish(compound bool) *Unit {
	if c.Source == "" || !(c.Factor > 0) || c.Factor > 1e300 || c.Factor < 1e-300 {
		return nil
	}
	if c.Dim != Pressure || !compound {
		c.apart = ""
	}
	c.Name = strings.TrimSpace(c.Name)
	return c
}

// superscript prints a power of 2 to 9.
func superscript(power int) string {
	return []string{"²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹"}[power-2]
}

// leadingDigits is the run of ASCII digits text begins with.
func leadingDigits(text string) string {
	i := 0
	for i < len(text) && isDigit(text[i]) {
		i++
	}
	return text[:i]
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }

func isLetter(b byte) bool { return b|0x20 >= 'a' && b|0x20 <= 'z' }
