package physics

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/suction"
	"columnbowl/calcwasm/unit"
)

var suctionFunctions = []*formula.Func{
	{
		Name:   "bell-submergence",
		Params: []formula.Param{{Name: "flow", Dim: unit.Flow}, {Name: "bell diameter", Dim: unit.Length}},
		Result: unit.Length,
		Eval:   func(a []float64) (float64, string) { return suction.MinimumSubmergence(a[0], a[1]) },
	},
}
