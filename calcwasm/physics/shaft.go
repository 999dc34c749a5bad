package physics

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/shaft"
	"columnbowl/calcwasm/unit"
)

// shaftFunctions are tables and choices from a list: forward only.
var shaftFunctions = []*formula.Func{
	{
		Name:   "line-shaft-friction",
		Params: []formula.Param{{Name: "shaft diameter", Dim: unit.Length}, {Name: "speed", Dim: unit.Speed}},
		Result: unit.PowerPerLength, OneWay: true,
		Eval: func(a []float64) (float64, string) { return shaft.Friction(a[0], a[1]) },
	},
	{
		Name:   "line-shaft-rated-power",
		Params: []formula.Param{{Name: "shaft diameter", Dim: unit.Length}, {Name: "speed", Dim: unit.Speed}},
		Result: unit.Power, OneWay: true,
		Eval: func(a []float64) (float64, string) { return shaft.RatedPower(a[0], a[1]) },
	},
	{
		Name:   "line-shaft-rated-thrust",
		Params: []formula.Param{{Name: "shaft diameter", Dim: unit.Length}},
		Result: unit.Force, OneWay: true,
		Eval: func(a []float64) (float64, string) { return shaft.RatedThrust(a[0]) },
	},
	{
		Name:   "line-shaft-weight",
		Params: []formula.Param{{Name: "shaft diameter", Dim: unit.Length}},
		Result: unit.ForcePerLength, OneWay: true,
		Eval: func(a []float64) (float64, string) { return shaft.Weight(a[0]) },
	},
	{
		Name: "line-shaft-size",
		Params: []formula.Param{{Name: "torque", Dim: unit.Torque}, {Name: "thrust", Dim: unit.Force}, {Name: "allowed stress", Dim: unit.Pressure},
			{Name: "depth taken off by the thread", Dim: unit.Length}},
		Result: unit.Length, OneWay: true,
		Eval: func(a []float64) (float64, string) { return shaft.Size(a[0], a[1], a[2], a[3]) },
	},
}
