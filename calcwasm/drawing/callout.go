package drawing

import (
	"cmp"
	"slices"
)

// callout is a label tied to a point: words in one or more lines beside a
// leader that ends in a dot on what it names.
type callout struct {
	x, y  float64 // the point named
	lines []Text  // words and classes; X and Y are set by the column
	value string  // set at the column's edge, on the first line
	faint bool    // what is named is not known: no dot
}

// callColumn is a column of callouts: leaders run level from the dots to turn,
// slant to stop and end at text. All slants lie between the same two x, and the
// labels keep the order of the points, so leaders never cross.
type callColumn struct {
	turn, stop, text float64
	edge             float64 // right end of the values, if they have a column
	lo, hi           float64 // labels stay between these y
	halo             bool    // paper behind the words: a line passes there
}

// say is a callout for a mark: name above, value below in bold.
func (m Mark) say(x, y, width float64, valueClass string) callout {
	c := callout{x: x, y: y, faint: !m.ok()}
	for _, s := range wrap(m.Name, "f", width) {
		c.lines = append(c.lines, Text{Words: s, Class: "f"})
	}
	for _, s := range wrap(m.Text, valueClass, width) {
		c.lines = append(c.lines, Text{Words: s, Class: valueClass})
	}
	return c
}

func (c callout) height() float64 { return float64(len(c.lines))*leading + 3 }

// draw puts the callouts from top to bottom, whatever their order, and returns
// where the last one ends.
func (k callColumn) draw(add func(...Item), calls []callout) (bottom float64) {
	var shown []callout
	for _, c := range calls {
		if len(c.lines) > 0 {
			shown = append(shown, c)
		}
	}
	if len(shown) == 0 {
		return k.lo
	}
	slices.SortStableFunc(shown, func(a, b callout) int { return cmp.Compare(a.y, b.y) })
	want, gap := make([]float64, len(shown)), make([]float64, len(shown)-1)
	for i, c := range shown {
		want[i] = c.y
		if i > 0 {
			gap[i-1] = (shown[i-1].height() + c.height()) / 2
		}
	}
	lo := k.lo + shown[0].height()/2
	hi := k.hi - shown[len(shown)-1].height()/2
	for i, y := range spread(want, gap, lo, hi) {
		k.one(add, shown[i], y)
		bottom = y + shown[i].height()/2
	}
	return bottom
}

func (k callColumn) one(add func(...Item), c callout, y float64) {
	end := k.text - 4
	if k.text < k.turn {
		end = k.text + 4
	}
	class := "dim"
	if c.faint {
		class = "hid"
	}
	add(NewPath(class).M(c.x, c.y).H(k.turn).L(k.stop, y).H(end))
	if !c.faint {
		add(Circle{c.x, c.y, 2.2, "ink"})
	}
	first := y - float64(len(c.lines)-1)*leading/2 + 5
	for i, t := range c.lines {
		t.X, t.Y = k.text, first+float64(i)*leading
		if k.halo {
			t.Class = join(t.Class, "ha")
		}
		if k.text < k.turn {
			t.Class += " e"
		}
		add(t)
	}
	if c.value != "" {
		add(Text{X: k.edge, Y: first, Words: c.value, Class: "e ha"})
	}
}

// dimension draws an upright dimension line from y1 to y2 with oblique
// strokes, its words turned beside it on the left. Words longer than the line
// go on below it, or above it, inside lo to hi. One that is not known is dashed.
type dimension struct {
	x, y1, y2 float64
	words     string
	class     string // of the words
	heavy     bool
	unknown   bool
	lo, hi    float64
}

func (d dimension) draw(add func(...Item)) {
	line, tick := "dim", "thin"
	switch {
	case d.unknown:
		line = "hid"
	case d.heavy:
		line, tick = "out", "out"
	}
	add(Line{X1: d.x, Y1: d.y1, X2: d.x, Y2: d.y2, Class: line})
	for _, y := range []float64{d.y1, d.y2} {
		add(Line{X1: d.x - 4, Y1: y + 4, X2: d.x + 4, Y2: y - 4, Class: tick})
	}
	if d.words == "" {
		return
	}
	add(Text{X: d.x - 6, Y: d.middle(), Words: d.words, Class: join(d.class, "m ha"), Turned: true})
}

// middle is where the words are centred.
func (d dimension) middle() float64 {
	w := classWidth(d.words, d.class)
	a, b := min(d.y1, d.y2), max(d.y1, d.y2)
	switch {
	case w+8 <= b-a:
		return (a + b) / 2
	case b+8+w <= d.hi:
		return b + 8 + w/2
	case a-8-w >= d.lo:
		return a - 8 - w/2
	}
	return min(max((a+b)/2, d.lo+w/2), max(d.hi-w/2, d.lo+w/2))
}

func join(a, b string) string {
	if a == "" {
		return b
	}
	return a + " " + b
}
