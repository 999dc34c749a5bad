package drawing

// Path is an outline made of steps with absolute coordinates. Build it with
// NewPath("out").M(0, 0).L(1, 1).
type Path struct {
	Class   string
	Fill    string  // name of a hatch; empty leaves it to the class
	Stroke  float64 // stroke-width attribute; 0 leaves it to the class
	Dash    string  // stroke-dasharray attribute; empty leaves it to the class
	Opacity float64 // 0 means opaque
	Steps   bool    // written as steps from point to point: shorter for long outlines and hatches
	steps   []step
}

// step is one path command; n numbers of p are used.
type step struct {
	op byte
	n  uint8
	p  [6]float64
}

// NewPath starts a path with the classes given.
func NewPath(class string) *Path { return &Path{Class: class} }

func (p *Path) add(op byte, v ...float64) *Path {
	s := step{op: op, n: uint8(len(v))}
	copy(s.p[:], v)
	p.steps = append(p.steps, s)
	return p
}

// M moves the pen.
func (p *Path) M(x, y float64) *Path { return p.add('M', x, y) }

// L draws a straight line.
func (p *Path) L(x, y float64) *Path { return p.add('L', x, y) }

// H draws a level line to x.
func (p *Path) H(x float64) *Path { return p.add('H', x) }

// V draws an upright line to y.
func (p *Path) V(y float64) *Path { return p.add('V', y) }

// Q draws a quadratic curve with one control point.
func (p *Path) Q(cx, cy, x, y float64) *Path { return p.add('Q', cx, cy, x, y) }

// C draws a cubic curve with two control points.
func (p *Path) C(ax, ay, bx, by, x, y float64) *Path { return p.add('C', ax, ay, bx, by, x, y) }

// Z closes the outline.
func (p *Path) Z() *Path { return p.add('Z') }

// Hatched fills the path with a hatch of the scene.
func (p *Path) Hatched(name string) *Path { p.Fill = name; return p }

// Weight sets the stroke width, for classes that leave it open.
func (p *Path) Weight(w float64) *Path { p.Stroke = w; return p }

// With gives a copy of the outline under other classes and no hatch: a wash
// below and an outline above are two shapes, because classes that set the fill
// differ in the style sheet and must not depend on its order.
func (p *Path) With(class string) *Path { return &Path{Class: class, steps: p.steps} }

// box adds a closed rectangle.
func (p *Path) box(x, y, w, h float64) *Path { return p.M(x, y).H(x + w).V(y + h).H(x).Z() }

// poly is an outline through points, closed if asked.
func poly(class string, closed bool, xy ...float64) *Path {
	p := NewPath(class)
	for i := 0; i+1 < len(xy); i += 2 {
		if i == 0 {
			p.M(xy[0], xy[1])
		} else {
			p.L(xy[i], xy[i+1])
		}
	}
	if closed {
		p.Z()
	}
	return p
}
