package physics

import (
	"columnbowl/calcwasm/column"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

var columnFunctions = []*formula.Func{
	{
		Name: "annulus-friction",
		Params: []formula.Param{{Name: "flow", Dim: unit.Flow}, {Name: "outer diameter", Dim: unit.Length}, {Name: "inner diameter", Dim: unit.Length},
			{Name: "density", Dim: unit.Density}, {Name: "viscosity", Dim: unit.Viscosity}, {Name: "roughness", Dim: unit.Length}},
		Result: unit.None,
		Eval: func(a []float64) (float64, string) {
			return column.Friction(a[0], a[1], a[2], a[3], a[4], a[5])
		},
	},
	{
		Name: "annulus-c-factor-slope",
		Params: []formula.Param{{Name: "flow", Dim: unit.Flow}, {Name: "outer diameter", Dim: unit.Length}, {Name: "inner diameter", Dim: unit.Length},
			{Name: "coefficient", Dim: unit.None}},
		Result: unit.None,
		Eval: func(a []float64) (float64, string) {
			return column.CFactor(a[0], a[1], a[2], a[3])
		},
	},
}
