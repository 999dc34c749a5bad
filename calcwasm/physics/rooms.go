package physics

import "columnbowl/calcwasm/formula"

// Each list moves into a file of its own as its room is built.
var (
	waterFunctions   []*formula.Func
	pipeFunctions    []*formula.Func
	suctionFunctions []*formula.Func
	columnFunctions  []*formula.Func
	shaftFunctions   []*formula.Func
	thrustFunctions  []*formula.Func
	motorFunctions   []*formula.Func
	curveFunctions   []*formula.Func
)
