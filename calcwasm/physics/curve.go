package physics

import (
	"columnbowl/calcwasm/curve"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

var curveFunctions = []*formula.Func{
	{
		Name:   "affinity-ratio",
		Params: []formula.Param{{Name: "speed", Dim: unit.Speed}, {Name: "speed of the curve", Dim: unit.Speed}},
		Result: unit.None,
		Eval:   func(a []float64) (float64, string) { return curve.SpeedRatio(a[0], a[1]) },
	},
}
