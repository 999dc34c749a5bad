package cutaway_test

import "strings"

// pathReader reads path data, absolute and in steps, and flattens curves. The
// tests have a reader of their own, so that they do not believe the engine's.
type pathReader struct {
	d   string
	i   int
	all [][]pt
	cur []pt
	at  pt
}

func flat(d string) [][]pt {
	r := &pathReader{d: d}
	for r.i < len(r.d) {
		op := r.d[r.i]
		r.i++
		r.step(op)
	}
	if r.cur != nil {
		r.all = append(r.all, r.cur)
	}
	return r.all
}

func (r *pathReader) num() float64 {
	for r.i < len(r.d) && strings.IndexByte(" ,", r.d[r.i]) >= 0 {
		r.i++
	}
	from, dot := r.i, false
	for r.i < len(r.d) {
		c := r.d[r.i]
		if c == '-' && r.i > from || c == '.' && dot || strings.IndexByte("-.0123456789", c) < 0 {
			break
		}
		dot = dot || c == '.'
		r.i++
	}
	return number(r.d[from:r.i])
}

func (r *pathReader) point(rel bool) pt {
	x := r.num()
	y := r.num()
	if rel {
		return pt{r.at.x + x, r.at.y + y}
	}
	return pt{x, y}
}

func (r *pathReader) to(p pt) { r.at = p; r.cur = append(r.cur, p) }

func (r *pathReader) step(op byte) {
	rel := op >= 'a'
	base := pt{}
	if rel {
		base = r.at
	}
	switch op &^ 0x20 {
	case 'M':
		p := r.point(rel)
		if r.cur != nil {
			r.all = append(r.all, r.cur)
		}
		r.cur = nil
		r.to(p)
	case 'L':
		r.to(r.point(rel))
	case 'H':
		r.to(pt{base.x + r.num(), r.at.y})
	case 'V':
		r.to(pt{r.at.x, base.y + r.num()})
	case 'C':
		a, b, c, e := r.at, r.point(rel), r.point(rel), r.point(rel)
		for i := 1.0; i <= 8; i++ {
			t := i / 8
			u := 1 - t
			r.cur = append(r.cur, pt{u*u*u*a.x + 3*u*u*t*b.x + 3*u*t*t*c.x + t*t*t*e.x, u*u*u*a.y + 3*u*u*t*b.y + 3*u*t*t*c.y + t*t*t*e.y})
		}
		r.at = e
	case 'Z':
		r.at = r.cur[0]
	}
}
