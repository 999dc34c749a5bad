package physics

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/motor"
	"columnbowl/calcwasm/unit"
)

// motorFunctions read tables, so they run forward only.
var motorFunctions = []*formula.Func{
	{
		Name:   "next-motor-rating",
		Params: []formula.Param{{Name: "power", Dim: unit.Power}},
		Result: unit.Power, OneWay: true,
		Eval: func(a []float64) (float64, string) { return motor.NextRating(a[0]) },
	},
	{
		Name:   "code-motor-current",
		Params: []formula.Param{{Name: "rating", Dim: unit.Power}, {Name: "line voltage", Dim: unit.Voltage}},
		Result: unit.Current, OneWay: true,
		Eval: func(a []float64) (float64, string) { return motor.CodeCurrent(a[0], a[1]) },
	},
	nominal("energy-efficient-open-motor", motor.EnergyEfficient, motor.Open),
	nominal("energy-efficient-enclosed-motor", motor.EnergyEfficient, motor.Enclosed),
	nominal("premium-open-motor", motor.Premium, motor.Open),
	nominal("premium-enclosed-motor", motor.Premium, motor.Enclosed),
}

// nominal is the table of nominal efficiencies of one class and enclosure.
func nominal(name string, c motor.Class, e motor.Enclosure) *formula.Func {
	return &formula.Func{
		Name:   name,
		Params: []formula.Param{{Name: "rating", Dim: unit.Power}, {Name: "number of poles", Dim: unit.None}},
		Result: unit.None, OneWay: true,
		Eval: func(a []float64) (float64, string) { return motor.NominalEfficiency(c, e, a[0], a[1]) },
	}
}
