package cutaway

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"columnbowl/calcwasm/drawing"
)

// sizes of lettering in px; the style sheet sets the same (classes cn, cs, cb).
const (
	nameSize   = 16.0
	serif      = 1.08 // the text face may run wider than the face the estimate is made of
	subSize    = 12.5
	nameLine   = 18.0
	subLine    = 15.0
	labelGap   = 9.0
	balloonR   = 11.0
	balloonGap = 3.0
	tagRoom    = 1.22 // for the widest text faces: a tag has a frame
)

func digits(n int) string { return strconv.Itoa(n) }

// call is one label: a point named, and where its words stand.
type call struct {
	id, part string
	turns    bool
	x, y     float64
	side     byte // wanted side: l, r or 0
	block    int  // which drawing of the sheet it belongs to
	number   int

	col   *column
	names []string
	sub   string
	h     float64 // height with the gap
	cy    float64 // centre of the words
}

// column takes the labels of one side of one drawing.
type column struct {
	block    int
	left     bool    // words end at x; otherwise they begin there
	x, elbow float64 // edge of the words; where leaders turn level
	width    float64
}

// span of the words of a label.
func (k *call) box() drawing.Box {
	w := 0.0
	for _, n := range k.names {
		w = max(w, textWidth(n, serif*nameSize, k.turns))
	}
	w = max(w, textWidth(k.sub, subSize, false))
	b := drawing.Box{X: k.col.x, Y: k.cy - (k.h-labelGap)/2, W: w, H: k.h - labelGap}
	if k.col.left {
		b.X -= w
	}
	return b
}

// textWidth estimates a line of words from above.
func textWidth(words string, size float64, bold bool) float64 {
	class := ""
	if bold {
		class = "b"
	}
	return drawing.Text{Words: words, Class: class}.Bounds().W * size / 14
}

// keepVisible drops the labels of what lies behind a break or beyond an end.
func (c *canvas) keepVisible() {
	c.calls = slices.DeleteFunc(c.calls, func(k *call) bool {
		for _, s := range c.window {
			if k.y > s.from && k.y < s.to {
				return true
			}
		}
		return k.x < 2 || k.x > c.w-2 || k.y < 2
	})
}

// numbers counts the labels from the top, those of a lying drawing from the
// left; equal heights from the left.
func (c *canvas) numbers() []Label {
	order := slices.Clone(c.calls)
	slices.SortStableFunc(order, func(a, b *call) int {
		if c.lies {
			return cmp.Compare(a.x, b.x)
		}
		return cmp.Or(cmp.Compare(a.block, b.block), cmp.Compare(tenth(a.y), tenth(b.y)), cmp.Compare(a.x, b.x))
	})
	var out []Label
	for i, k := range order {
		k.number = i + 1
		out = append(out, Label{Number: i + 1, ID: k.id, Part: k.part, Turns: k.turns, X: k.x, Y: k.y})
	}
	return out
}

// numbered is true if names have no room or are not wanted. A lying drawing
// wants the whole width for itself sooner.
func (c *canvas) numbered() bool {
	return c.view.Labels == Numbered || c.w < 700 || c.lies && c.w < 1000
}

// columns are the usual two: left and right of one drawing.
func (c *canvas) columns() []*column {
	if c.cols != nil {
		return c.cols
	}
	return c.pair(0, 0, c.w)
}

// pair makes the columns of a drawing that has the sheet from x0 to x1.
func (c *canvas) pair(block int, x0, x1 float64) []*column {
	if c.numbered() {
		in := c.margin + balloonR + 1
		return []*column{{block, true, x0 + in, x0 + in + 15, 0}, {block, false, x1 - in, x1 - in - 15, 0}}
	}
	l, r := x0+c.margin+c.side, x1-c.margin-c.side
	return []*column{{block, true, l, l + 22, c.side}, {block, false, r, r - 22, c.side}}
}

// layout places all labels and draws them. Hidden labels are counted all the
// same, because the neutral names use the numbers.
func (c *canvas) layout() []drawing.Item {
	c.numbers()
	if c.view.Labels == Hidden {
		return c.noteItems()
	}
	if c.lies && c.numbered() {
		return c.rowItems()
	}
	var out []drawing.Item
	for _, col := range c.columns() {
		list := c.of(col)
		c.measure(list)
		top, bottom := c.fit(list)
		settle(list, top, bottom)
		for _, k := range list {
			out = append(out, c.leader(k)...)
		}
		for _, k := range list {
			out = append(out, c.lettering(k)...)
		}
	}
	return append(out, c.noteItems()...)
}

// of takes the labels of a column. One without a wanted side goes where its
// point lies.
func (c *canvas) of(col *column) []*call {
	var list []*call
	for _, k := range c.calls {
		left := k.side == 'l'
		if k.side == 0 {
			left = k.x < c.axis
		}
		if k.block == col.block && left == col.left {
			k.col = col
			list = append(list, k)
		}
	}
	return list
}

func (c *canvas) measure(list []*call) {
	for _, k := range list {
		if c.numbered() {
			k.h = 2*balloonR + balloonGap
			continue
		}
		k.names = wrap(c.name(k.id), k.col.width, k.turns)
		k.h = float64(len(k.names))*nameLine + labelGap
		if k.sub = c.view.Words.Of[k.id].Sub; k.sub != "" && textWidth(k.sub, subSize, false) <= k.col.width {
			k.h += subLine
		} else {
			k.sub = ""
		}
	}
}

// fit makes room: first the sublines go, then the sheet grows.
func (c *canvas) fit(list []*call) (top, bottom float64) {
	top, bottom = c.margin, c.h-c.margin
	if total(list) > bottom-top {
		for _, k := range list {
			if k.sub != "" {
				k.sub, k.h = "", k.h-subLine
			}
		}
	}
	if need := total(list); need > bottom-top {
		bottom = top + need
		c.h = bottom + c.margin
	}
	return top, bottom
}

func total(list []*call) float64 {
	sum := 0.0
	for _, k := range list {
		sum += k.h
	}
	return sum
}

// wrap breaks a name into lines of at most width; a single word may be longer.
func wrap(name string, width float64, bold bool) []string {
	var lines []string
	line := ""
	for _, w := range strings.Fields(name) {
		next := strings.TrimSpace(line + " " + w)
		if line != "" && textWidth(next, serif*nameSize, bold) > width {
			lines = append(lines, line)
			next = w
		}
		line = next
	}
	return append(lines, line)
}

// leader runs from a dot on the part to the elbow and level to the words.
func (c *canvas) leader(k *call) []drawing.Item {
	end := k.col.x - 6
	if k.col.left {
		end = k.col.x + 6
	}
	if c.numbered() {
		end = k.col.x
	}
	p := drawing.NewPath("ldh").M(tenth(k.x), tenth(k.y)).L(tenth(k.col.elbow), tenth(k.cy)).H(tenth(end))
	return []drawing.Item{p, p.With("ld"), drawing.Circle{X: tenth(k.x), Y: tenth(k.y), R: 3.1, Class: "dot"}}
}

func (c *canvas) lettering(k *call) []drawing.Item {
	if c.numbered() {
		out := balloon(k, k.col.x, k.cy)
		if k.id == c.latest() {
			out = append(out, c.tag(k, k.col.x, k.cy-11)...)
		}
		return out
	}
	if c.secret(k.id) { // the room of the name is kept, so that nothing moves when it is told
		x := k.col.x + balloonR
		if k.col.left {
			x = k.col.x - balloonR
		}
		return balloon(k, x, k.cy)
	}
	var out []drawing.Item
	end := ""
	if k.col.left {
		end = " e"
	}
	y := k.cy - (k.h-labelGap)/2
	for _, n := range k.names {
		out = append(out, drawing.Text{X: k.col.x, Y: tenth(y + nameLine*.74), Words: n, Class: turned("cn", k.turns) + end})
		y += nameLine
	}
	if k.sub != "" {
		out = append(out, drawing.Text{X: k.col.x, Y: tenth(y + subLine*.74), Words: k.sub, Class: "cs" + end})
	}
	return out
}

// balloon is the number of a label in its circle.
func balloon(k *call, x, y float64) []drawing.Item {
	return []drawing.Item{
		drawing.Circle{X: tenth(x), Y: tenth(y), R: balloonR, Class: turned("bal", k.turns)},
		drawing.Text{X: tenth(x), Y: tenth(y + 4.5), Words: digits(k.number), Class: turned("cb", k.turns)},
	}
}

// tag is a name over the drawing, beside its number, where names have no room:
// from x inwards, y its upper edge.
func (c *canvas) tag(k *call, x, y float64) []drawing.Item {
	words := c.name(k.id)
	w := textWidth(words, tagRoom*nameSize, k.turns) + 12
	at, left, end := x+balloonR+9, x+balloonR+3, ""
	if x > c.w/2 {
		at, left, end = x-balloonR-9, x-balloonR-3-w, " e"
	}
	return []drawing.Item{
		drawing.Rect{X: tenth(left), Y: tenth(y), W: tenth(w), H: 22, Class: "tag"},
		drawing.Text{X: tenth(at), Y: tenth(y + 16), Words: words, Class: turned("cn", k.turns) + end},
	}
}

func turned(class string, turns bool) string {
	if turns {
		return class + " t"
	}
	return class
}

// noteItems are the words in break bands.
func (c *canvas) noteItems() []drawing.Item {
	var out []drawing.Item
	for _, n := range c.notes {
		w := textWidth(n.words, subSize, false) + 8
		out = append(out, drawing.Rect{X: tenth(n.x - w/2), Y: tenth(n.y - 11), W: tenth(w), H: 14, Class: "cov"},
			drawing.Text{X: n.x, Y: n.y, Words: n.words, Class: "cs m"})
	}
	return out
}
