package physics

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/pipe"
	"columnbowl/calcwasm/unit"
)

var pipeFunctions = []*formula.Func{
	{
		Name:   "darcy-friction-factor",
		Params: []formula.Param{{Name: "Reynolds number", Dim: unit.None}, {Name: "relative roughness", Dim: unit.None}},
		Result: unit.None,
		Eval:   func(a []float64) (float64, string) { return pipe.FrictionFactor(a[0], a[1]) },
	},
	{
		Name:   "hazen-williams-slope",
		Params: []formula.Param{{Name: "flow", Dim: unit.Flow}, {Name: "inside diameter", Dim: unit.Length}, {Name: "coefficient", Dim: unit.None}},
		Result: unit.None,
		Eval:   func(a []float64) (float64, string) { return pipe.HazenWilliams(a[0], a[1], a[2]) },
	},
	{
		Name:   "steel-pipe-outside-diameter",
		Params: []formula.Param{{Name: "nominal size", Dim: unit.Length}},
		Result: unit.Length, OneWay: true,
		Eval: func(a []float64) (float64, string) { return pipe.OutsideDiameter(a[0]) },
	},
	bore("steel-schedule-20-bore", pipe.Steel20),
	bore("steel-schedule-30-bore", pipe.Steel30),
	bore("steel-schedule-40-bore", pipe.Steel40),
	bore("steel-schedule-80-bore", pipe.Steel80),
	bore("steel-standard-bore", pipe.SteelStandard),
	bore("pvc-schedule-40-bore", pipe.PVC40),
	bore("pvc-schedule-80-bore", pipe.PVC80),
}

// bore is the table of inside diameters of one schedule.
func bore(name string, s pipe.Schedule) *formula.Func {
	return &formula.Func{
		Name:   name,
		Params: []formula.Param{{Name: "nominal size", Dim: unit.Length}},
		Result: unit.Length, OneWay: true,
		Eval: func(a []float64) (float64, string) { return pipe.Bore(s, a[0]) },
	}
}
