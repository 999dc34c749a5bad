package drawing_test

import (
	"fmt"
	"strings"

	"columnbowl/calcwasm/drawing"
)

// The head ladder of a page, from facts and the words that go with them.
func ExampleLadder() {
	ladder := drawing.Ladder{
		Prefix: "lad", Title: "Head ladder",
		Lift:  drawing.At(195, "pumping lift", "195 ft"),
		Rungs: []drawing.Rung{{Mark: drawing.At(138.6, "pressure head", "138.6 ft")}, {Mark: drawing.Unknown("column loss"), Kind: drawing.RungLoss}},
	}
	svg := ladder.Layout().SVG()
	fmt.Println(strings.Contains(svg, "column loss"), strings.Count(svg, `class="hid"`) > 0)
	// Output: true true
}
