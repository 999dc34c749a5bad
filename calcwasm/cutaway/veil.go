package cutaway

import (
	"slices"
	"strings"
)

// secret says whether the name of a label or part is put away.
func (c *canvas) secret(id string) bool {
	return (c.view.Veiled || c.view.Labels == Hidden) && !slices.Contains(c.view.Known, id)
}

// latest is the label that was told last of those that are put away one by one.
func (c *canvas) latest() string {
	if n := len(c.view.Known); c.view.Veiled && n > 0 {
		return c.view.Known[n-1]
	}
	return ""
}

// neutral is a name that gives nothing away: the number, whether it turns, and
// the numbers above and below; at an end its own. A part without a number stands
// between those that lie next to it.
func (c *canvas) neutral(id string, turns bool, labels []Label) string {
	w := c.view.Words
	i := slices.IndexFunc(labels, func(l Label) bool { return l.ID == id })
	if i >= 0 {
		words := pick(turns, w.Turns, w.Stands)
		return filled(words, labels[i].Number, labels[max(i-1, 0)].Number, labels[min(i+1, len(labels)-1)].Number)
	}
	words := pick(turns, w.FreeTurns, w.FreeStands)
	g := slices.IndexFunc(c.groups, func(g *group) bool { return g.part == id })
	if g < 0 || len(labels) == 0 {
		return ""
	}
	above, below := c.around(c.groups[g].at, labels)
	return filled(words, above, below)
}

// around are the numbers of the labels next to a point on either side, along the
// drawing; at an end twice the same.
func (c *canvas) around(at point, labels []Label) (above, below int) {
	along := func(l Label) float64 {
		if c.lies {
			return l.X - at.x
		}
		return l.Y - at.y
	}
	var up, down *Label
	for i := range labels {
		l := &labels[i]
		switch {
		case along(*l) <= 0 && (up == nil || along(*l) > along(*up)):
			up = l
		case along(*l) > 0 && (down == nil || along(*l) < along(*down)):
			down = l
		}
	}
	if up == nil {
		up = down
	}
	if down == nil {
		down = up
	}
	return up.Number, down.Number
}

func pick(turns bool, one, other string) string {
	if turns {
		return one
	}
	return other
}

// filled puts numbers into the places {0}, {1} … of words.
func filled(words string, numbers ...int) string {
	for k, n := range numbers {
		words = strings.ReplaceAll(words, "{"+digits(k)+"}", digits(n))
	}
	return words
}
