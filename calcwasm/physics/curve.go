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
	{
		Name:     "affinity-factor",
		Gives:    unit.Length,
		Params:   []formula.Param{{Name: "flow", Dim: unit.Flow}, {Name: "head of one stage", Dim: unit.Length}},
		Result:   unit.None,
		OneWay:   true,
		OnPoints: affinityFactor,
	},
	{
		Name:  "operating-flow",
		Gives: unit.Length,
		Params: []formula.Param{{Name: "stages", Dim: unit.None}, {Name: "affinity factor", Dim: unit.None},
			{Name: "static head", Dim: unit.Length}, {Name: "drawdown", Dim: unit.Length}, {Name: "friction head", Dim: unit.Length},
			{Name: "flow of that drawdown and friction", Dim: unit.Flow}},
		Result:   unit.Flow,
		OneWay:   true,
		OnPoints: operatingFlow,
	},
}

func affinityFactor(line formula.Line, a []float64) (float64, string) {
	return curve.AffinityFactor(line, a[0], a[1])
}

func operatingFlow(line formula.Line, a []float64) (float64, string) {
	stages, factor, fixed, drawdown, friction, flow := a[0], a[1], a[2], a[3], a[4], a[5]
	switch {
	case !(stages > 0 && factor > 0 && flow > 0):
		return 0, "a pump is laid on its system with stages, speed and flow above zero"
	case drawdown < 0 || friction < 0:
		return 0, "drawdown and friction grow with the flow: neither is below zero"
	}
	sys := curve.System{Fixed: fixed, Linear: drawdown / flow, Square: friction / float64(flow*flow)}
	flows, invalid := curve.Operating(curve.Stage{Head: line, Speed: factor, Trim: 1}, stages, sys)
	switch {
	case invalid != "":
		return 0, invalid
	case len(flows) > 1:
		return 0, "the pump meets its system at more than one flow, so that none can be said"
	}
	return flows[0], ""
}
