package physics

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
	"columnbowl/calcwasm/water"
)

// waterFunctions are looked up forward only: each is a table in the form of an
// equation, and density has two temperatures for one value near 4 °C.
var waterFunctions = []*formula.Func{
	{
		Name:   "water-density",
		Params: []formula.Param{{Name: "temperature", Dim: unit.Temperature}},
		Result: unit.Density, OneWay: true,
		Eval: func(a []float64) (float64, string) { return water.Density(a[0]) },
	},
	{
		Name:   "water-viscosity",
		Params: []formula.Param{{Name: "temperature", Dim: unit.Temperature}},
		Result: unit.Viscosity, OneWay: true,
		Eval: func(a []float64) (float64, string) { return water.Viscosity(a[0]) },
	},
	{
		Name:   "boiling-pressure",
		Params: []formula.Param{{Name: "temperature", Dim: unit.Temperature}},
		Result: unit.Pressure, OneWay: true,
		Eval: func(a []float64) (float64, string) { return water.VapourPressure(a[0]) },
	},
	{
		Name:   "standard-atmosphere",
		Params: []formula.Param{{Name: "altitude", Dim: unit.Length}},
		Result: unit.Pressure, OneWay: true,
		Eval: func(a []float64) (float64, string) { return water.Atmosphere(a[0]) },
	},
}
