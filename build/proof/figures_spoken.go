package proof

import (
	"regexp"
	"strings"
)

// spokenUnit is a unit as running text says it, and its symbol; without one, the
// words are no unit of figures and their number stands alone.
type spokenUnit struct {
	said   string
	symbol string
	whole  *regexp.Regexp
}

// spokenUnits have the longer words before those that they begin with.
var spokenUnits = spoken(
	`gallons (?:a|each|per) minute`, "gpm", `gallons (?:an|each|per) hour`, "gph", `gallons?`, "gal",
	`per cent`, "%", `milligrams (?:in|per) (?:the|a|each) litre`, "mg/L",
	`kilowatt-hours?`, "kWh", `kilowatts?`, "kW", `horsepower-hours?`, "", `horsepower`, "hp",
	`feet (?:a|each|per) second`, "ft/s", `feet|foot`, "ft", `inch(?:es)?`, "in",
	`minutes?`, "min", `seconds?`, "s", `cubic feet`, "ft3", `acre-feet`, "acre.ft", `acre-inch(?:es)?`, "acre.in", `days?`, "d",
	`volts?`, "V", `amperes?|amps?`, "A", `hours?`, "h", `dollars?`, "money",
)

func spoken(pairs ...string) []spokenUnit {
	var list []spokenUnit
	for i := 0; i < len(pairs); i += 2 {
		list = append(list, spokenUnit{pairs[i], pairs[i+1], regexp.MustCompile(`^(?:` + pairs[i] + `)$`)})
	}
	return list
}

// spokenWords are the spoken units as alternatives of a pattern, behind others.
func spokenWords() string {
	var b strings.Builder
	for _, s := range spokenUnits {
		b.WriteString("|" + s.said)
	}
	return b.String()
}

// symbolOf is the symbol of a unit that stands in a text, as a symbol or in words.
func symbolOf(name string) string {
	for i := range spokenUnits {
		if spokenUnits[i].whole.MatchString(name) {
			return spokenUnits[i].symbol
		}
	}
	return plainSigns.Replace(name)
}
