// Package physics is the registry through which the notation knows the physics:
// each room's functions, with the names, dimensions and limits under which an
// author can call them in a formula. The rooms themselves know nothing of the
// notation.
package physics

import (
	"slices"

	"columnbowl/calcwasm/formula"
)

// Functions are all functions of the physics rooms, in the order of their names.
func Functions() []*formula.Func {
	all := slices.Concat(waterFunctions, pipeFunctions, suctionFunctions, columnFunctions, shaftFunctions, thrustFunctions, motorFunctions, curveFunctions)
	slices.SortFunc(all, func(a, b *formula.Func) int {
		if a.Name < b.Name {
			return -1
		}
		return 1
	})
	return all
}
