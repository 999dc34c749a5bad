package unit

// System tells which readers a unit is for.
type System uint8

const (
	Both System = iota // used in US and in SI work alike: rpm, kWh, %
	US                 // US customary
	SI                 // SI, and the metric units used with it
)

// Reference tells from where a pressure is counted.
type Reference uint8

const (
	NoReference Reference = iota // plain: a difference, or not said
	Gauge                        // above the atmosphere
	Absolute                     // above vacuum
)

// String is the word people use.
func (r Reference) String() string {
	switch r {
	case Gauge:
		return "gauge"
	case Absolute:
		return "absolute"
	}
	return "plain"
}

// Unit is one unit of measurement. Units are values to be read; nobody may
// change one that Lookup or All gave out.
type Unit struct {
	Symbol    string    // spelling in the notation: "m3/h", "lbf.ft", "degF"
	Print     string    // what pages show: "m³/h", "lbf·ft", "°F"; "" for the pure number
	Name      string    // "US gallons per minute"
	Also      []string  // other spellings people type
	Dim       Dim       // its dimension
	Factor    float64   // SI value = number*Factor + Offset
	Offset    float64   // degF and degC only, in kelvins
	Reference Reference // of psig, psia and the like
	System    System
	Source    string // where the factor comes from

	// apart names the kind of a unit that shares its dimension with another kind
	// and must not be taken for it: apparent power, energy per volume.
	apart string
}

// ToSI turns a number in the unit into SI.
func (u *Unit) ToSI(x float64) float64 { return float64(x*u.Factor) + u.Offset }

// FromSI turns an SI value into a number in the unit.
func (u *Unit) FromSI(x float64) float64 { return (x - u.Offset) / u.Factor }

// kind is the word for what the unit measures.
func (u *Unit) kind() string {
	if u.apart != "" {
		return u.apart
	}
	return u.Dim.String()
}

// isPressure tells whether u counts pressure, and not energy per volume.
func (u *Unit) isPressure() bool { return u.Dim == Pressure && u.apart == "" }

// bySymbol finds the units of the table.
var bySymbol = index(table)

func index(units []*Unit) map[string]*Unit {
	found := make(map[string]*Unit, len(units))
	for _, u := range units {
		found[u.Symbol] = u
	}
	return found
}

// Lookup finds a unit by its spelling in the notation: "gpm", "ft3/s",
// "hp/100ft", "1/in", "%". A spelling that is not in the table is composed from
// the table's units with "." for times, "/" for over and whole powers: "kPa/m",
// "ft2/s2". A number may stand before a unit only behind the slash: "money/1000gal".
// A composed unit is a new value each time, so compare Dim and Factor, not pointers.
func Lookup(symbol string) (*Unit, bool) {
	if u, ok := bySymbol[symbol]; ok {
		return u, true
	}
	u := compose(symbol, func(s string) *Unit { return bySymbol[s] })
	return u, u != nil
}

// All lists the units of the table, in its order.
func All() []*Unit { return append([]*Unit(nil), table...) }
