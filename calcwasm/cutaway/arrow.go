package cutaway

import (
	"math"

	"columnbowl/calcwasm/drawing"
)

// follow draws the arrows of a path, or a turn arrow.
func (c *canvas) follow(s *shape, segs [][]seg) {
	if s.cut == "turn" {
		a, b := segs[0][0].end(), segs[0][1].end()
		c.marks = append(c.marks, turnArrow(b, math.Abs(a.x-b.x))...)
		return
	}
	if s.part == "turn" { // the circle in a cut across
		c.marks = append(c.marks, arrow(flatten(segs[0])[0], "ar turn", 7)...)
		return
	}
	g := c.path(s.part)
	head := 12.0
	if s.part == "oil" || s.part == "prelube" || s.cut == "small" {
		head = 8
	}
	if c.fine < 1 {
		head = min(head, 8)
	}
	for _, o := range segs {
		g.items = append(g.items, arrow(flatten(o)[0], "ar "+s.part, head)...)
	}
}

// turnArrow is an ellipse round the shaft, open on the left behind: seen from
// above the shaft turns anticlockwise, so its front passes from left to right.
func turnArrow(at point, r float64) []drawing.Item {
	const steps = 22
	line := make([]point, steps+1)
	for i := range line {
		a := (205 + float64(i)*250/steps) * math.Pi / 180
		line[i] = point{at.x + r*math.Cos(a), at.y - .30*r*math.Sin(a)}
	}
	return arrow(line, "ar turn", min(10, max(5, r*.26)))
}

// arrow is a line with a head, on a halo of paper.
func arrow(line []point, class string, head float64) []drawing.Item {
	tip := line[len(line)-1]
	back := len(line) - 1
	for back > 0 && tip.to(line[back]) < head*.9 {
		back--
	}
	angle := math.Atan2(tip.y-line[back].y, tip.x-line[back].x)
	at := func(turn, d float64) point {
		return point{tip.x - d*math.Cos(angle+turn), tip.y - d*math.Sin(angle+turn)}
	}
	body := drawing.NewPath(class)
	for i, p := range line[:len(line)-1] {
		if i == 0 {
			body.M(tenth(p.x), tenth(p.y))
		} else if tip.to(p) > head*.8 {
			body.L(tenth(p.x), tenth(p.y))
		}
	}
	end := at(0, head*.8)
	body.L(tenth(end.x), tenth(end.y))
	l, r := at(-.42, head), at(.42, head)
	body.Steps = true
	tri := drawing.NewPath(class+" hd").M(tip.x, tip.y).L(l.x, l.y).L(r.x, r.y).Z()
	tri.Steps = true
	halo := body.With("halo")
	halo.Steps = true
	return []drawing.Item{halo, tri.With("halo hd"), body, tri}
}
