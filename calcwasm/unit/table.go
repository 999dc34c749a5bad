package unit

import "slices"

// table is every unit known by name, one list per group of quantities.
var table = slices.Concat(
	numberUnits, lengthUnits, volumeUnits, flowUnits, pressureUnits,
	massUnits, powerUnits, motionUnits, waterUnits, tradeUnits,
)

// Sources that many rows share.
const (
	exactInch    = "exact: 1 in = 25.4 mm (NIST SP 811 B.8)"
	exactGallon  = "exact: 1 US gal = 231 in³, 1 in = 25.4 mm (NIST SP 811 B.8)"
	exactPound   = "exact: 1 lb = 0.45359237 kg (NIST SP 811 B.8)"
	exactForce   = "exact: 1 lbf = 1 lb × 9.80665 m/s² (NIST SP 811 B.8)"
	exactPower   = "exact: 1 hp = 550 ft·lbf/s (NIST SP 811 B.8)"
	exactAcre    = "exact: 1 acre = 43,560 ft² on the international foot"
	exactSI      = "exact: SI prefix or SI definition"
	exactTime    = "exact: 1 min = 60 s, 1 h = 60 min, 1 d = 24 h"
	exactTurn    = "exact: 1 turn = 2π rad"
	exactDegrees = "exact: 0 °C = 273.15 K, 1 °F = 5/9 K, 32 °F = 0 °C (NIST SP 811 B.9)"
	bookMoney    = "the book's own money, factor 1"
	pureNumber   = "exact: a ratio"
)

var numberUnits = []*Unit{
	{Symbol: "1", Print: "", Name: "pure number", Dim: None, Factor: 1, Source: pureNumber},
	{Symbol: "%", Print: "%", Name: "per cent", Also: []string{"percent", "per cent", "pct", "pct."},
		Dim: None, Factor: 0.01, Source: pureNumber},
	{Symbol: "drops", Print: "drops", Name: "drops", Also: []string{"drop"}, Dim: None, Factor: 1, Source: pureNumber},
	{Symbol: "ft/100ft", Print: "ft/100\u00a0ft", Name: "feet per hundred feet",
		Also: []string{"ft/100'", "ft per hundred feet", "feet per hundred feet"},
		Dim:  None, Factor: 0.01, System: US, Source: pureNumber},
	{Symbol: "m/100m", Print: "m/100\u00a0m", Name: "metres per hundred metres",
		Also: []string{"m per hundred metres", "metres per hundred metres"},
		Dim:  None, Factor: 0.01, System: SI, Source: pureNumber},
	{Symbol: "money", Print: currency, Name: "money", Also: []string{"¤", "$", "€", "£", "in your currency", "your currency"},
		Dim: Money, Factor: 1, Source: bookMoney},
}

var lengthUnits = []*Unit{
	{Symbol: "ft", Print: "ft", Name: "feet",
		Also: []string{"foot", "feet", "'", "’", "′", "‘", "ft of water", "feet of water", "foot of water", "ft water",
			"feet water", "ft head", "feet head", "feet of head", "ft of head", "ftH2O", "ft H2O", "ft wc", "lf", "linear ft", "linear feet"},
		Dim: Length, Factor: foot, System: US, Source: exactInch},
	{Symbol: "in", Print: "in", Name: "inches",
		Also: []string{"inch", "inches", "ins", "\"", "”", "″", "“", "''", "’’", "′′"},
		Dim:  Length, Factor: inch, System: US, Source: exactInch},
	{Symbol: "yd", Print: "yd", Name: "yards", Also: []string{"yard", "yards", "yds"},
		Dim: Length, Factor: yard, System: US, Source: exactInch},
	{Symbol: "mi", Print: "mi", Name: "miles", Also: []string{"mile", "miles"},
		Dim: Length, Factor: mile, System: US, Source: exactInch},
	{Symbol: "m", Print: "m", Name: "metres",
		Also: []string{"metre", "metres", "meter", "meters", "mtr", "mtrs", "m of water", "metres of water", "meters of water",
			"m water", "m head", "m of head", "metres head", "metres of head", "meters of head", "mH2O", "m H2O", "mwc", "mWC", "m wc"},
		Dim: Length, Factor: 1, System: SI, Source: exactSI},
	{Symbol: "cm", Print: "cm", Name: "centimetres", Also: []string{"centimetre", "centimetres", "centimeter", "centimeters"},
		Dim: Length, Factor: 0.01, System: SI, Source: exactSI},
	{Symbol: "mm", Print: "mm", Name: "millimetres",
		Also: []string{"millimetre", "millimetres", "millimeter", "millimeters", "MM"},
		Dim:  Length, Factor: 0.001, System: SI, Source: exactSI},
	{Symbol: "km", Print: "km", Name: "kilometres", Also: []string{"kilometre", "kilometres", "kilometer", "kilometers"},
		Dim: Length, Factor: 1000, System: SI, Source: exactSI},
	{Symbol: "in2", Print: "in²", Name: "square inches", Also: []string{"sq in", "sq. in.", "square inch", "square inches"},
		Dim: Area, Factor: inch * inch, System: US, Source: exactInch},
	{Symbol: "ft2", Print: "ft²", Name: "square feet", Also: []string{"sq ft", "sq. ft.", "square foot", "square feet"},
		Dim: Area, Factor: foot * foot, System: US, Source: exactInch},
	{Symbol: "acre", Print: "acre", Name: "acres", Also: []string{"acres", "ac"},
		Dim: Area, Factor: acre, System: US, Source: exactAcre},
	{Symbol: "mm2", Print: "mm²", Name: "square millimetres", Also: []string{"sq mm"},
		Dim: Area, Factor: 1e-6, System: SI, Source: exactSI},
	{Symbol: "cm2", Print: "cm²", Name: "square centimetres", Also: []string{"sq cm"},
		Dim: Area, Factor: 1e-4, System: SI, Source: exactSI},
	{Symbol: "m2", Print: "m²", Name: "square metres", Also: []string{"sq m", "square metre", "square metres", "square meters"},
		Dim: Area, Factor: 1, System: SI, Source: exactSI},
	{Symbol: "ha", Print: "ha", Name: "hectares", Also: []string{"hectare", "hectares"},
		Dim: Area, Factor: 1e4, System: SI, Source: exactSI},
	{Symbol: "1/in", Print: "1/in", Name: "per inch", Also: []string{"per in", "per inch", "tpi"},
		Dim: PerLength, Factor: 1 / inch, System: US, Source: exactInch},
	{Symbol: "1/mm", Print: "1/mm", Name: "per millimetre", Also: []string{"per mm", "per millimetre"},
		Dim: PerLength, Factor: 1000, System: SI, Source: exactSI},
}

var volumeUnits = []*Unit{
	{Symbol: "gal", Print: "gal", Name: "US gallons", Also: []string{"gallon", "gallons", "gals", "US gal", "US gallons", "U.S. gal"},
		Dim: Volume, Factor: gallon, System: US, Source: exactGallon},
	{Symbol: "kgal", Print: "kgal", Name: "thousand US gallons",
		Also: []string{"1000 gal", "1000gal", "1000 gallons", "thousand gallons", "thousand gal"},
		Dim:  Volume, Factor: 1000 * gallon, System: US, Source: exactGallon},
	{Symbol: "Mgal", Print: "Mgal", Name: "million US gallons", Also: []string{"million gallons", "million gal"},
		Dim: Volume, Factor: 1e6 * gallon, System: US, Source: exactGallon},
	{Symbol: "in3", Print: "in³", Name: "cubic inches", Also: []string{"cu in", "cu. in.", "cubic inch", "cubic inches"},
		Dim: Volume, Factor: inch * inch * inch, System: US, Source: exactInch},
	{Symbol: "ft3", Print: "ft³", Name: "cubic feet", Also: []string{"cu ft", "cu. ft.", "cubic foot", "cubic feet"},
		Dim: Volume, Factor: cubicFoot, System: US, Source: exactInch},
	{Symbol: "acre.in", Print: "acre·in", Name: "acre-inches", Also: []string{"acre-in", "acre-inch", "acre-inches", "acre inch", "acre inches", "ac-in"},
		Dim: Volume, Factor: acre * inch, System: US, Source: exactAcre},
	{Symbol: "acre.ft", Print: "acre·ft", Name: "acre-feet", Also: []string{"acre-ft", "acre-foot", "acre-feet", "acre ft", "acre foot", "acre feet", "ac-ft"},
		Dim: Volume, Factor: acre * foot, System: US, Source: exactAcre},
	{Symbol: "mL", Print: "mL", Name: "millilitres", Also: []string{"ml", "cc", "cm3", "cm³", "millilitre", "millilitres", "milliliter", "milliliters"},
		Dim: Volume, Factor: 1e-6, System: SI, Source: exactSI},
	{Symbol: "L", Print: "L", Name: "litres", Also: []string{"l", "litre", "litres", "liter", "liters", "ltr", "dm3"},
		Dim: Volume, Factor: litre, System: SI, Source: exactSI},
	{Symbol: "m3", Print: "m³", Name: "cubic metres", Also: []string{"cu m", "cum", "M3", "cubic metre", "cubic metres", "cubic meter", "cubic meters"},
		Dim: Volume, Factor: 1, System: SI, Source: exactSI},
	{Symbol: "ML", Print: "ML", Name: "megalitres", Also: []string{"megalitre", "megalitres", "megaliter", "megaliters"},
		Dim: Volume, Factor: 1000, System: SI, Source: exactSI},
}
