package unit

import "sync"

// refusedSpellings are units people type that could mean two things, or that
// this book does not take, with what to write instead. Keys as spellingKey
// makes them; letter case counts only where a second spelling is listed.
var refusedSpellings = map[string]string{
	"M":   "M may be metres, thousands or millions. Write m for metres, or the number in full.",
	"k":   "k may be thousands. Write the number in full, as in 5000.",
	"mPa": "mPa is a thousandth of a pascal. Write MPa, kPa or bar.",
	"mW":  "mW is a thousandth of a watt. Write kW or MW.",
	"cps": "cps may be cycles per second or centipoises. Write Hz or cP.",
	"#":   "The sign # is not read as a unit. Write lb, or lbf for a force.",
	"°":   "The sign ° alone does not tell the scale. Write °F or °C.",
}

// foldedRefusals are refused in any letter case.
var foldedRefusals = sync.OnceValue(func() map[string]string { return refusedGroups(refusedNames) })

var refusedNames = []refusedGroup{
	{"There are three tons: the short ton is 2000 lb, the long ton 2240 lb, the tonne 1000 kg. Write the weight in lb or kg.",
		[]string{"t", "ton", "tons", "tonne", "tonnes", "short ton", "short tons", "long ton", "long tons", "metric ton", "metric tons"}},
	{"The metric horsepower is 735.5 W and is not taken, lest it be mixed up with the hp of 745.7 W. Write the power in kW, or in hp of 550 ft·lbf/s.",
		[]string{"ps", "cv", "ch", "pk", "metric hp", "hp metric", "hp(m)", "hp (m)", "hp (metric)", "metric horsepower"}},
	{"Gallons here are US gallons; the imperial gallon is 1.2009 of them. Write L, L/s or m3/h, or turn it into US gallons.",
		[]string{"imp gal", "imp. gal", "imperial gal", "imperial gallon", "imperial gallons", "uk gal", "uk gallons", "igal",
			"igpm", "imp gpm", "imp. gpm", "imp gal/min", "imperial gallons/minute", "imperial gallons/min", "uk gpm"}},
	{"Write the price in whole money: 11 cents a kilowatt-hour are 0.11 money/kWh.",
		[]string{"cent", "cents", "ct", "cts", "c/kwh", "¢", "cents/kwh", "ct/kwh", "¢/kwh", "cent/kwh", "pence", "p/kwh"}},
}

type refusedGroup struct {
	message string
	keys    []string
}

func refusedGroups(groups []refusedGroup) map[string]string {
	all := map[string]string{}
	for _, g := range groups {
		for _, key := range g.keys {
			all[fold(spellingKey(key))] = g.message
		}
	}
	return all
}

// refusal is why a spelling is not taken, or "".
func refusal(key string) string {
	if message := refusedSpellings[key]; message != "" {
		return message
	}
	return foldedRefusals()[fold(key)]
}
