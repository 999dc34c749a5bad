// Package budget prints what was measured beside what it may be. It is for
// benchmarks: make bench collects its lines.
package budget

import (
	"fmt"
	"strings"
)

// Head begins every line, so that the lines can be found among others.
const Head = "budget"

// Line tells one figure: what was measured, the floor it stands on (what no tool
// could do without; "" where there is none), the most that it may be, all in one
// unit, and whether that holds.
func Line(what string, figure float64, unit, floor string, most float64) string {
	holds := "holds"
	if figure > most {
		holds = "MISSED"
	}
	if floor == "" {
		floor = "-"
	}
	return strings.TrimRight(fmt.Sprintf("%s  %-58s %10s   floor %-16s at most %10s   %s", Head, what, number(figure, unit), floor, number(most, unit), holds), " ")
}

func number(v float64, unit string) string {
	decimals := 0
	switch {
	case v < 10:
		decimals = 2
	case v < 100:
		decimals = 1
	}
	return strings.TrimSpace(fmt.Sprintf("%.*f %s", decimals, v, unit))
}
