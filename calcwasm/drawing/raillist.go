package drawing

import (
	"math"
	"strconv"
)

// railLayout holds where things stand in a rail.
type railLayout struct {
	Rail
	width, height float64
	anchor        []float64  // y of each place on the well
	y             []float64  // y of each balloon
	names         [][]string // lines of each name
	subs          [][]string // lines of each sub-entry of the place in force
	subAt         []float64  // y of the middle of each sub-entry
}

// place puts every balloon: at its depth, or as little lower as needed.
func (r Rail) place() *railLayout {
	l := &railLayout{Rail: r, width: railWide, height: r.Height}
	if !finite(l.height) || l.height <= 0 {
		l.height = railUnit
	}
	gap := l.gaps()
	need := 54.0
	for _, g := range gap {
		need += g
	}
	if n := len(r.Places); n > 0 {
		need += l.tail(n - 1)
	}
	l.height = math.Ceil(max(l.height, need, railLeast))
	want := make([]float64, len(r.Places))
	for i, p := range r.Places {
		want[i] = min(max(railWell{h: l.height}.y(p.drawn()), 10), l.height-10)
	}
	last := l.height - 27
	if n := len(r.Places); n > 0 {
		last -= l.tail(n-1) - balloonR
	}
	l.anchor = push(want, same(4, len(want)), 10, l.height-10)
	l.y = push(l.anchor, gap, 27, last)
	return l
}

// drawn is the depth of a place in px of the well the rail is designed at.
func (p Place) drawn() float64 {
	if !finite(p.Depth) {
		return 0
	}
	return min(max(p.Depth, 0), 1) * railUnit
}

// gaps are the least distances from each balloon to the next.
func (l *railLayout) gaps() []float64 {
	n := len(l.Places)
	for i, p := range l.Places {
		l.names = append(l.names, wrap(p.Name, "b", railRoom))
		if p.Lit {
			l.openSubs(i)
		}
	}
	gap := make([]float64, max(n-1, 0))
	for i := range gap {
		gap[i] = railStep
		if extra := len(l.names[i]) + len(l.names[i+1]) - 2; extra > 0 {
			gap[i] += float64(extra) * leading / 2
		}
		if l.Places[i].Lit {
			gap[i] = max(gap[i], l.tail(i)+balloonR+8)
		}
	}
	return gap
}

func (l *railLayout) openSubs(i int) {
	l.subs = nil
	for _, s := range l.Places[i].Subs {
		l.subs = append(l.subs, wrap(s.Name, "", subRoom))
	}
}

// tail is the room place i takes below its balloon's centre.
func (l *railLayout) tail(i int) float64 {
	t := max(balloonR, float64(len(l.names[i]))*leading/2)
	if !l.Places[i].Lit {
		return t
	}
	t += 4 + l.overGrade(i)
	for _, s := range l.subs {
		t += subHeight(s)
	}
	return t
}

// overGrade is the room that the list of a place above grade leaves free, so
// that its first entry stands below the hatch of the grade line.
func (l *railLayout) overGrade(i int) float64 {
	y := l.Places[i].drawn()
	if len(l.subs) == 0 || !(y < railHead) {
		return 0
	}
	return max(0, railHead+gradeDeep-y-balloonR-4)
}

func subHeight(lines []string) float64 {
	return subStep + float64(max(len(lines)-1, 0))*leading
}

// entry draws balloon, number, name and sub-entries of a place as links.
func (l *railLayout) entry(list *Group, i int) {
	p, y := l.Places[i], l.y[i]
	ring, num, name := "balloon", "no m", ""
	if p.Lit {
		ring, num, name = "balloon lit", "no m pap b", "b"
	}
	no := strconv.Itoa(i + 1)
	a := Link{Href: p.Href, Class: "place", Current: p.Here, Label: no + " " + p.Name}
	a.Items = append(a.Items, spot{Y: y - railSpot.H/2, Least: railSpot},
		Circle{0, y, 0, ring}, Text{Y: y + 4.8, Words: no, Class: num})
	first := y + 5 - float64(len(l.names[i])-1)*leading/2
	for k, line := range l.names[i] {
		a.Items = append(a.Items, Text{X: railName, Y: first + float64(k)*leading, Words: line, Class: name})
	}
	list.Add(a)
	if p.Lit {
		l.list(list, i)
		l.landing(list, i)
	}
}

// list draws the sub-entries of the place in force; the page one is on stands
// in reversed ink, a tab that joins the sheet's edge. It is not bold as well:
// its lines are broken for the lighter letter, and the longest would be cut.
func (l *railLayout) list(list *Group, i int) {
	if len(l.subs) == 0 {
		return
	}
	top := l.y[i] + l.tail(i)
	for _, lines := range l.subs {
		top -= subHeight(lines)
	}
	subs := Group{Class: "subs", X: railName}
	for k, lines := range l.subs {
		sub := l.Places[i].Subs[k]
		h := subHeight(lines)
		a := Link{Href: sub.Href, Current: sub.Here}
		class := "f"
		a.Items = append(a.Items, spot{Y: top, H: h, Least: subSpot})
		if sub.Here {
			class = "pap"
			a.Items = append(a.Items, spot{Y: top + 2, H: h - 4, Class: "ink", Least: subSpot})
		}
		for j, line := range lines {
			a.Items = append(a.Items, Text{Y: top + subStep/2 + 5 + float64(j)*leading, Words: line, Class: class})
		}
		l.subAt = append(l.subAt, top+h/2)
		subs.Add(a)
		top += h
	}
	list.Add(subs)
}

// What takes the pointer on a place and on a sub-entry, counted from where
// their words are. rail.css gives it these measures.
var (
	railSpot = Box{X: -14, W: railWide - railX + 6, H: 32}
	subSpot  = Box{X: -6, W: railWide - railX - railName + 6, H: subStep}
)

// spot is the rectangle of an entry: without ink it takes the pointer, with the
// class ink it is the tab of the page one is on. Its measures, and the radius of
// the balloons, are the same on all of the thousands of entries of a book, so
// the style sheet has them; only one that is not of the least height tells it.
// Where there is no style sheet the words alone are left, and can be read.
type spot struct {
	Y, H  float64
	Class string
	Least Box
}

func (s spot) sound() bool { return finite(s.Y, s.H) }

func (s spot) span(c *collector) {
	c.box(Box{s.Least.X, s.Y, s.Least.W, max(s.H, s.Least.H)})
}

func (s spot) write(w *writer) {
	if !w.keep(s) {
		return
	}
	w.open("rect", s.Class, "")
	w.numAttr("y", s.Y)
	if s.H > s.Least.H || s.Class != "" {
		w.numAttr("height", s.H)
	}
	w.raw("/>\n")
}

// landing ties the place in force to the edge of the sheet, unless one of its
// entries already reaches it.
func (l *railLayout) landing(list *Group, i int) {
	for _, sub := range l.Places[i].Subs {
		if sub.Here {
			return
		}
	}
	w := 0.0
	for _, line := range l.names[i] {
		w = max(w, classWidth(line, "b"))
	}
	// a name in a wide letter leaves no room for the line: the dot alone stands on the edge
	dot := Circle{l.width - railX - 3.5, l.y[i], 3.5, "ink"}
	g := Group{Hidden: true, Items: []Item{dot}}
	if x := railName + w + 6; x < dot.X-4 {
		g.Add(Line{X1: x, Y1: l.y[i], X2: dot.X, Y2: l.y[i], Class: "out"})
	}
	list.Add(g)
}

// same is n-1 equal gaps.
func same(g float64, n int) []float64 {
	out := make([]float64, max(n-1, 0))
	for i := range out {
		out[i] = g
	}
	return out
}
