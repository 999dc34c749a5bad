package unit

import (
	"strconv"
	"strings"
)

// baseWords are the names of the base dimensions, in the order of Dim.
var baseWords = [7]string{"length", "mass", "time", "temperature", "angle", "money", "current"}

// dimWords are what people call the dimensions of the trade. Flow per length
// has the same exponents as kinematic viscosity; the trade's word comes first.
var dimWords = map[Dim]string{
	None:             "pure number",
	Length:           "length",
	Mass:             "mass",
	Time:             "time",
	Temperature:      "temperature",
	Angle:            "angle",
	Money:            "sum of money",
	Current:          "current",
	Area:             "area",
	Volume:           "volume",
	Flow:             "flow",
	Velocity:         "velocity",
	Acceleration:     "acceleration",
	Frequency:        "frequency",
	Speed:            "rotational speed",
	Force:            "force",
	Pressure:         "pressure",
	Energy:           "energy",
	Power:            "power",
	Torque:           "torque",
	Density:          "density",
	Viscosity:        "viscosity",
	SpecificCapacity: "flow per length",
	MassPerLength:    "mass per length",
	ForcePerLength:   "force per length",
	PowerPerLength:   "power per length",
	PerLength:        "number per length",
	Voltage:          "voltage",
	Resistance:       "resistance",
	Price:            "price of energy",
	SpecificSpeed:    "specific speed",
}

// String is a word for people: "pressure" for the dimensions of the trade, and
// otherwise the base dimensions, as in "mass·length/time^3".
func (d Dim) String() string {
	if word, ok := dimWords[d]; ok {
		return word
	}
	var over, under []string
	for i, steps := range d {
		switch {
		case steps > 0:
			over = append(over, power(baseWords[i], int(steps)))
		case steps < 0:
			under = append(under, power(baseWords[i], -int(steps)))
		}
	}
	if len(over) == 0 {
		over = []string{"1"}
	}
	text := strings.Join(over, "·")
	for _, word := range under {
		text += "/" + word
	}
	return text
}

// power writes word^(steps/12) in its lowest terms.
func power(word string, steps int) string {
	num, den := steps, scale
	for _, p := range []int{2, 2, 3} {
		if num%p == 0 && den%p == 0 {
			num, den = num/p, den/p
		}
	}
	switch {
	case num == 1 && den == 1:
		return word
	case den == 1:
		return word + "^" + strconv.Itoa(num)
	}
	return word + "^(" + strconv.Itoa(num) + "/" + strconv.Itoa(den) + ")"
}

// article puts "a" or "an" before a word.
func article(word string) string {
	if word != "" && strings.IndexByte("aeiou", word[0]) >= 0 {
		return "an " + word
	}
	return "a " + word
}
