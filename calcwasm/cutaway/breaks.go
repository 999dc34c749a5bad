package cutaway

import (
	"math"
	"strings"

	"columnbowl/calcwasm/drawing"
)

// wave draws a break line from x0 to x1 at height y: one period of a sine.
func wave(p *drawing.Path, x0, x1, y, amp float64, back bool) *drawing.Path {
	const n = 16
	for i := range n + 1 {
		k := i
		if back {
			k = n - i
		}
		t := float64(k) / n
		x, v := tenth(x0+(x1-x0)*t), tenth(y+amp*math.Sin(2*math.Pi*t))
		if i == 0 && !back {
			p.M(x, v)
		} else {
			p.L(x, v)
		}
	}
	return p
}

// band is a long break: paper between two equal waves, across everything. What
// runs through (shaft, water, oil) runs unbroken up to both of its edges.
func (c *canvas) band(x0, x1, y, gap, amp float64) {
	up, low := y-gap/2, y+gap/2
	cover := wave(wave(drawing.NewPath("cov"), x0, x1, up, amp, false), x0, x1, low, amp, true).Z()
	c.top = append(c.top, cover,
		wave(drawing.NewPath("brk"), x0, x1, up, amp, false),
		wave(drawing.NewPath("brk"), x0, x1, low, amp, false))
	c.window = append(c.window, span{up - amp, low + amp})
}

// stagesBand is a break that hides stages and says how many.
func (c *canvas) stagesBand(x0, x1, y float64, hidden int) {
	c.band(x0, x1, y, 26, 4)
	c.behind = hidden
	words := c.view.Words.More
	if hidden == 1 {
		words = c.view.Words.OneMore
	}
	if words != "" {
		c.notes = append(c.notes, note{(x0 + x1) / 2, y + 4.5, strings.ReplaceAll(words, "{0}", digits(hidden))})
	}
}

// tear ends a drawing: one wave, and paper over everything beyond it.
func (c *canvas) tear(x0, x1, y, reach float64, up bool) {
	if up {
		reach = -reach
	}
	cover := wave(drawing.NewPath("cov"), x0, x1, y, 3.5, false).L(x1, y+reach).L(x0, y+reach).Z()
	c.top = append(c.top, cover, wave(drawing.NewPath("brk"), x0+.03*(x1-x0), x1-.03*(x1-x0), y, 3.5, false))
	c.window = append(c.window, span{min(y, y+reach) - 2, max(y, y+reach) + 2})
}

// centre is the centre line.
func (c *canvas) centre(x, y0, y1 float64) {
	c.marks = append(c.marks, drawing.Line{X1: tenth(x), Y1: tenth(y0), X2: tenth(x), Y2: tenth(y1), Class: "ax"})
}

// level is a level centre line.
func (c *canvas) level(x0, x1, y float64) {
	c.marks = append(c.marks, drawing.Line{X1: tenth(x0), Y1: tenth(y), X2: tenth(x1), Y2: tenth(y), Class: "ax"})
}

// tearSide ends a drawing that lies: a wave upright at x, paper beyond it as far
// as reach (to the left if it is negative).
func (c *canvas) tearSide(x, y0, y1, reach float64) {
	cover, line := drawing.NewPath("cov"), drawing.NewPath("brk")
	const n = 16
	for i := range n + 1 {
		t := float64(i) / n
		px, py := tenth(x+3*math.Sin(2*math.Pi*t)), tenth(y0+(y1-y0)*t)
		if i == 0 {
			cover.M(px, py)
			line.M(px, py)
			continue
		}
		cover.L(px, py)
		line.L(px, py)
	}
	c.top = append(c.top, cover.L(tenth(x+reach), y1).L(tenth(x+reach), y0).Z(), line)
}
