package unit

// Dim is a physical dimension: the exponents of length, mass, time,
// temperature, angle, money and current, each times 12, so that halves, thirds
// and quarters are whole numbers. The largest exponent kept is ±10; a product
// beyond it stays at the limit.
type Dim [7]int8

// scale is how many steps one whole exponent has.
const scale = 12

// exponentLimit is the largest step an exponent may have: 10 whole ones.
const exponentLimit = 10 * scale

// The dimensions the trade uses.
var (
	None        = Dim{}
	Length      = Dim{scale, 0, 0, 0, 0, 0, 0}
	Mass        = Dim{0, scale, 0, 0, 0, 0, 0}
	Time        = Dim{0, 0, scale, 0, 0, 0, 0}
	Temperature = Dim{0, 0, 0, scale, 0, 0, 0}
	Angle       = Dim{0, 0, 0, 0, scale, 0, 0}
	Money       = Dim{0, 0, 0, 0, 0, scale, 0}
	Current     = Dim{0, 0, 0, 0, 0, 0, scale}

	Area               = whole(2, 0, 0)
	Volume             = whole(3, 0, 0)
	Flow               = whole(3, 0, -1)
	Velocity           = whole(1, 0, -1)
	Acceleration       = whole(1, 0, -2)
	Frequency          = whole(0, 0, -1)
	Speed              = Angle.Div(Time) // rotational speed
	Force              = whole(1, 1, -2)
	Pressure           = whole(-1, 1, -2)
	Energy             = whole(2, 1, -2)
	Power              = whole(2, 1, -3)
	Torque             = Energy.Div(Angle)
	Density            = whole(-3, 1, 0)
	Viscosity          = whole(-1, 1, -1)
	KinematicViscosity = whole(2, 0, -1)
	MassPerLength      = whole(-1, 1, 0)
	ForcePerLength     = whole(0, 1, -2)
	PowerPerLength     = whole(1, 1, -3)
	SpecificCapacity   = whole(2, 0, -1) // flow per length; the same exponents as KinematicViscosity
	PerLength          = whole(-1, 0, 0)
	Voltage            = Power.Div(Current)
	Resistance         = Voltage.Div(Current)
	Price              = Money.Div(Energy) // money per energy
	// SpecificSpeed is speed × flow^(1/2) / length^(3/4), as the index is built.
	SpecificSpeed = Dim{9, 0, -18, 0, 12, 0, 0}
)

// whole builds a dimension from whole exponents of length, mass and time.
func whole(length, mass, time int8) Dim {
	return Dim{length * scale, mass * scale, time * scale, 0, 0, 0, 0}
}

// Mul is the dimension of a product.
func (d Dim) Mul(e Dim) Dim {
	for i := range d {
		d[i] = clamp(int(d[i]) + int(e[i]))
	}
	return d
}

// Div is the dimension of a quotient.
func (d Dim) Div(e Dim) Dim {
	for i := range d {
		d[i] = clamp(int(d[i]) - int(e[i]))
	}
	return d
}

// Pow is the dimension of a power with the exponent num/den. It reports false
// when the result has no place: den is 0, an exponent is not a twelfth, or it is
// beyond ±10.
func (d Dim) Pow(num, den int) (Dim, bool) {
	const most = 1 << 20 // beyond it no exponent fits, and the product below could overflow
	if den == 0 || num > most || num < -most {
		return Dim{}, false
	}
	for i, steps := range d {
		product := int(steps) * num
		if product%den != 0 {
			return Dim{}, false
		}
		steps := product / den
		if steps > exponentLimit || steps < -exponentLimit {
			return Dim{}, false
		}
		d[i] = int8(steps)
	}
	return d, true
}

// IsNone tells whether d is the dimension of a pure number.
func (d Dim) IsNone() bool { return d == None }

func clamp(steps int) int8 {
	return int8(min(max(steps, -exponentLimit), exponentLimit))
}
