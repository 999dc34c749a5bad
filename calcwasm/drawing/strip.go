package drawing

import (
	"strconv"
	"strings"
)

// Strip is the rail lying down, for phones: grade at the left, bottom of the
// well at the right, the place in force on a leader with its name. The page
// makes the whole of it one button.
type Strip struct {
	Prefix string
	Places []Place
	Name   string // words at the leader: the place in force
	Detail string // the page itself, if it is not the place: "total head"
	Title  string // text alternative; empty hides the drawing (the button has the words)
}

// stripX puts a depth of the rail on the strip.
func stripX(depth float64) float64 { return 26 + (depth*railUnit-38)*(300/720.0) }

// Layout draws the strip, 360 by 82.
func (r Strip) Layout() *Scene {
	s := &Scene{Prefix: r.Prefix, Class: "strip-well", Box: Box{0, 0, 360, 82}, Title: r.Title, Hatches: []Hatch{HatchEarth, HatchWater}}
	stripWell(s)
	for i, p := range r.Places {
		if x := r.at(p); !p.Lit {
			s.Add(Circle{x, 29, 2.2, "fnt"})
		} else {
			r.here(s, i, x)
		}
	}
	s.Add(NewPath("out").M(338, 63).L(344, 69).L(350, 63))
	return s
}

func (r Strip) at(p Place) float64 {
	if !finite(p.Depth) {
		return 8
	}
	return min(max(stripX(p.Depth), 8), 352)
}

// here draws the place in force on its leader, the words on the side that has
// more room; a detail that does not fit beside the name goes below it.
func (r Strip) here(s *Scene, i int, x float64) {
	right := x < 165
	bx := x + 22
	room := 330 - bx - 17
	if !right {
		bx = min(x-22, 310)
		room = bx - 17 - 6
	}
	s.Add(NewPath("out").M(x, 29).V(64).H(bx), Circle{x, 29, 4.5, "ink"}, Circle{bx, 64, 11, "balloon lit"},
		Text{X: bx, Y: 68.8, Words: strconv.Itoa(i + 1), Class: "m pap b"})
	tx, class := bx+17, ""
	if !right {
		tx, class = bx-17, " e"
	}
	lines := r.lines(room)
	y := 69.0
	if len(lines) > 1 {
		y = 61
	}
	for k, line := range lines {
		c := "b"
		if k > 0 {
			c = "f"
		}
		s.Add(Text{X: tx, Y: y + float64(k)*16, Words: line, Class: c + class})
	}
}

// lines is name and detail in one line, or in two.
func (r Strip) lines(room float64) []string {
	if r.Detail == "" {
		return []string{r.Name}
	}
	if one := r.Name + ": " + r.Detail; classWidth(one, "b") <= room {
		return []string{one}
	}
	return []string{r.Name, fitted(r.Detail, room)}
}

// fitted is a line of words, cut with an ellipsis if it is longer than the
// room; the button that holds the strip has all the words as its name.
func fitted(s string, room float64) string {
	if classWidth(s, "f") <= room {
		return s
	}
	for {
		cut := strings.LastIndexByte(s, ' ')
		if cut < 0 {
			return s
		}
		s = strings.TrimRight(s[:cut], ",;:")
		if classWidth(s+" …", "f") <= room {
			return s + " …"
		}
	}
}

// stripWell draws the well lying down.
func stripWell(s *Scene) {
	head, bowls, end := 43.0, stripX(540/railUnit), stripX(640/railUnit)
	static, pumping := stripX(182/railUnit), stripX(262/railUnit)
	for _, y := range []float64{11, 43} {
		s.Add(Rect{X: 48, Y: y, W: 312, H: 5, Fill: string(HatchEarth)})
	}
	s.Add(Line{48, 16, 360, 16, "thin", 0}, Line{48, 43, 360, 43, "thin", 0},
		Rect{X: pumping, Y: 16.5, W: 360 - pumping, H: 26, Class: "w-water"},
		Line{pumping, 16, pumping, 43, "s-water", 1.3}, Line{static, 16, static, 43, "hid", 0})
	for _, b := range []Box{{8, 20, 20, 18}, {28, 23, 14, 12}} {
		boxed(s.add(), b, "w-still")
	}
	s.Add(Rect{X: head, Y: 12, W: 4, H: 35, Class: "ink"})
	boxed(s.add(), Box{head + 4, 24, bowls - head - 4, 10}, "pap")
	s.Add(Line{28, 29, end, 29, "s-turn", 2})
	stages := NewPath("w-still")
	for i := range 6 {
		stages.box(bowls+float64(i)*7, 21, 6, 16)
	}
	s.Add(stages, stages.With("out"))
	boxed(s.add(), Box{bowls + 42, 25, 18, 8}, "pap")
	boxed(s.add(), Box{bowls + 60, 23.5, 7, 11}, "pap")
}

// add hands the scene's Add on, so that helpers serve scenes and groups alike.
func (s *Scene) add() func(...Item) { return s.Add }

// boxed is a washed rectangle with an outline.
func boxed(add func(...Item), b Box, wash string) {
	add(Rect{X: b.X, Y: b.Y, W: b.W, H: b.H, Class: wash}, Rect{X: b.X, Y: b.Y, W: b.W, H: b.H, Class: "out"})
}
