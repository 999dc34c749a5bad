package physics

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/thrust"
	"columnbowl/calcwasm/unit"
)

// thrustFunctions: the other relations of the room are identities, which the
// content writes as formulas; their Go forms are what tests compare them with.
var thrustFunctions = []*formula.Func{
	{
		Name:   "eye-momentum",
		Params: []formula.Param{{Name: "density", Dim: unit.Density}, {Name: "flow", Dim: unit.Flow}, {Name: "velocity in the eye", Dim: unit.Velocity}},
		Result: unit.Force,
		Eval:   func(a []float64) (float64, string) { return thrust.EyeMomentum(a[0], a[1], a[2]) },
	},
}
