package cutaway

import (
	"slices"

	"columnbowl/calcwasm/drawing"
)

// A drawing that lies has its balloons in a row above it. The placing is that of
// a column with x and y exchanged.

// rowItems places and draws the balloons of a lying drawing.
func (c *canvas) rowItems() []drawing.Item {
	row := &column{x: c.margin + balloonR, elbow: c.margin + 2*balloonR + 6}
	for _, k := range c.calls {
		k.col, k.h = row, 2*balloonR+balloonGap
		k.x, k.y = k.y, k.x
	}
	settle(c.calls, c.margin, c.w-c.margin)
	var leaders, balloons, tags []drawing.Item
	for _, k := range c.calls {
		k.x, k.y = k.y, k.x
		p := drawing.NewPath("ldh").M(tenth(k.x), tenth(k.y)).L(tenth(k.cy), tenth(row.elbow)).V(tenth(row.x))
		leaders = append(leaders, p, p.With("ld"), drawing.Circle{X: tenth(k.x), Y: tenth(k.y), R: 3.1, Class: "dot"})
		balloons = append(balloons, balloon(k, k.cy, row.x)...)
		if k.id == c.latest() {
			tags = c.tag(k, k.cy, row.x+balloonR+3)
		}
	}
	return slices.Concat(leaders, balloons, tags)
}
