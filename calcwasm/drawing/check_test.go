package drawing

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
)

// wellFormed reads a drawing as XML and checks what holds for every drawing:
// ids are unique and begin with the prefix, every hatch and label pointed to is
// there, no style attribute or style element, no number that is no number.
func wellFormed(s *Scene) error {
	out := s.SVG()
	ids, refs := map[string]bool{}, []string{}
	d := xml.NewDecoder(strings.NewReader(out))
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return err
		}
		el, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		if el.Name.Local == "style" || el.Name.Local == "script" {
			return fmt.Errorf("element %s", el.Name.Local)
		}
		for _, a := range el.Attr {
			if a.Name.Local == "id" {
				if ids[a.Value] || !strings.HasPrefix(a.Value, s.Prefix+"-") {
					return fmt.Errorf("id %q comes twice or lacks its prefix", a.Value)
				}
				ids[a.Value] = true
			}
			ref, err := attribute(el.Name.Local, a)
			if err != nil {
				return err
			}
			if ref != "" {
				refs = append(refs, ref)
			}
		}
	}
	for _, r := range refs {
		if !ids[r] {
			return fmt.Errorf("#%s is pointed to and not there", r)
		}
	}
	return nil
}

// attribute checks one attribute and returns the id it points to, if any.
func attribute(element string, a xml.Attr) (ref string, err error) {
	name := a.Name.Local
	switch {
	case name == "style" || strings.HasPrefix(name, "on"):
		return "", fmt.Errorf("attribute %s on %s", name, element)
	case name == "aria-labelledby" || name == "aria-describedby":
		return a.Value, nil
	case strings.HasPrefix(a.Value, "url(#"):
		return strings.TrimSuffix(strings.TrimPrefix(a.Value, "url(#"), ")"), nil
	case name != "href" && name != "aria-label" && strings.Contains(a.Value, "NaN"):
		return "", fmt.Errorf("NaN in %s of %s", name, element)
	}
	return "", nil
}

// inside checks that nothing stands outside the viewBox by more than slack px.
func inside(s *Scene, slack float64) error {
	b, v := s.Bounds(), s.Box
	if len(s.Items) == 0 {
		return nil
	}
	if b.X < v.X-slack || b.Y < v.Y-slack || b.X+b.W > v.X+v.W+slack || b.Y+b.H > v.Y+v.H+slack {
		return fmt.Errorf("bounds %.1f outside viewBox %.1f", b, v)
	}
	return nil
}

// apart checks that no two lines of words overlap by more than slack px.
func apart(s *Scene, slack float64) error {
	w := s.Words()
	for i, a := range w {
		for j, b := range w[:i] {
			x := min(a.X+a.W, b.X+b.W) - max(a.X, b.X)
			y := min(a.Y+a.H, b.Y+b.H) - max(a.Y, b.Y)
			if x > slack && y > slack {
				return fmt.Errorf("words %d and %d overlap: %.1f %.1f", j, i, a, b)
			}
		}
	}
	return nil
}

// point and polyline serve the checks that leaders do not cross.
type point struct{ x, y float64 }

func polyline(p *Path) []point {
	var out []point
	var at point
	for _, s := range p.steps {
		switch s.op {
		case 'M', 'L':
			at = point{s.p[0], s.p[1]}
		case 'H':
			at.x = s.p[0]
		case 'V':
			at.y = s.p[0]
		}
		out = append(out, at)
	}
	return out
}

// crossing finds two segments, one of each line, that cross inside both.
func crossing(a, b []point) bool {
	side := func(p, q, r point) float64 { return (q.x-p.x)*(r.y-p.y) - (q.y-p.y)*(r.x-p.x) }
	for i := 1; i < len(a); i++ {
		for j := 1; j < len(b); j++ {
			p, q, r, s := a[i-1], a[i], b[j-1], b[j]
			if side(p, q, r)*side(p, q, s) < -1e-6 && side(r, s, p)*side(r, s, q) < -1e-6 {
				return true
			}
		}
	}
	return false
}

func anyCrossing(paths []*Path) error {
	for i, a := range paths {
		for j, b := range paths[:i] {
			if crossing(polyline(a), polyline(b)) {
				return fmt.Errorf("leaders %d and %d cross", j+1, i+1)
			}
		}
	}
	return nil
}

// calls collects the leaders of callouts: paths of the classes dim and hid with
// four steps, as callColumn draws them.
func calls(items []Item) []*Path {
	var out []*Path
	for _, it := range items {
		if p, ok := it.(*Path); ok && len(p.steps) == 4 && (p.Class == "dim" || p.Class == "hid") && p.steps[1].op == 'H' && p.steps[2].op == 'L' {
			out = append(out, p)
		}
	}
	return out
}
