package onefile

import (
	"fmt"
	"path"
	"regexp"
	"strings"

	"columnbowl/build/bindery"
	"columnbowl/build/leaf"
)

// sprite holds every drawing of the document once; pages use them by name.
type sprite struct {
	files   map[string]*leaf.Node // drawings of the folder edition that are files, by path
	cuts    map[string]*drawing   // by build and sheet
	figures map[string]*drawing   // pictures of the pages, by what they look like
	all     []*drawing
	ids     map[string]bool
	parts   map[string]string // ids of parts by what they look like
}

// drawing is one drawing of the document.
type drawing struct {
	id  string // of its element
	svg *leaf.Node
	box string // its viewBox
}

func newSprite(files []bindery.File) (*sprite, error) {
	s := &sprite{files: map[string]*leaf.Node{}, cuts: map[string]*drawing{}, figures: map[string]*drawing{}, ids: map[string]bool{}, parts: map[string]string{}}
	for _, f := range files {
		if !strings.HasSuffix(f.Path, "-360.svg") || strings.Contains(f.Path, "/lit-") {
			continue
		}
		n, err := leaf.Parse(strings.TrimSpace(string(f.Data)))
		if err != nil {
			return nil, fmt.Errorf("%s: %w", f.Path, err)
		}
		s.files[f.Path] = n
	}
	return s, nil
}

// cutFile finds which sheet of which pump a file of a drawing shows, and which
// parts are lit in it.
var cutFile = regexp.MustCompile(`^drawings/(lit-|plain-)?((?:water-lubricated|oil-lubricated|submersible)(?:-[a-z-]+?)?)(-\d+)?\.svg$`)

// cut is the drawing behind an address of the folder edition, and the id of the
// part that is lit in it, "" for none; nil if there is no such drawing.
func (s *sprite) cut(file, src string) (d *drawing, lit string) {
	address, fragment, _ := strings.Cut(src, "#")
	full := path.Join(path.Dir(file), address)
	m := cutFile.FindStringSubmatch(full)
	if m == nil {
		return nil, ""
	}
	name := m[2]
	if m[1] == "plain-" {
		name += "-whole"
	}
	if m[1] == "lit-" {
		name = s.longest(name)
	}
	d = s.drawn(name)
	if d != nil && fragment != "" {
		lit = d.id + strings.TrimPrefix(fragment, "c")
	}
	return d, lit
}

// longest is the sheet that a name of a drawing with lit parts begins with.
func (s *sprite) longest(name string) string {
	best := ""
	for file := range s.files {
		sheet := strings.TrimSuffix(strings.TrimPrefix(file, "drawings/"), "-360.svg")
		if strings.HasPrefix(name, sheet+"-") && len(sheet) > len(best) {
			best = sheet
		}
	}
	return best
}

// drawn takes a sheet into the document, the first time it is asked for. Two
// sheets that look alike stand there once.
func (s *sprite) drawn(name string) *drawing {
	if d := s.cuts[name]; d != nil {
		return d
	}
	n := s.files["drawings/"+name+"-360.svg"]
	if n == nil {
		return nil
	}
	n = clone(n)
	n.Change(func(k *leaf.Node) []*leaf.Node {
		if k.Tag == "style" || k.Tag == "title" || k.Tag == "desc" {
			return nil
		}
		k.Del("role", "aria-labelledby", "aria-describedby", "aria-hidden", "data-number", "data-theme")
		if k.Is("part") {
			k.Set("class", "cutaway "+k.Get("class"))
		}
		if d := k.Get("d"); d != "" {
			k.Set("d", bindery.ShortPath(d))
		}
		return []*leaf.Node{k}
	})
	key := string(short(nil, n, end, true))
	for _, d := range s.all {
		if s.figures[key] == d {
			s.cuts[name] = d
			return d
		}
	}
	d := s.add(n, "c", key)
	s.cuts[name] = d
	s.share(d)
	return d
}

// share leaves out of a drawing the parts that look the same in another one,
// and lies in the same place there: they are used from it.
func (s *sprite) share(d *drawing) {
	d.svg.Walk(func(k *leaf.Node) {
		if k.Tag != "g" || !k.Is("part") || k.Get("id") == "" {
			return
		}
		look := string(shortAll(nil, k.Kids, true))
		if len(look) < 120 || strings.Contains(look, ` id="`) {
			return
		}
		look = k.Get("class") + look
		if id, seen := s.parts[look]; seen {
			use := leaf.Element("use", "")
			use.Set("href", "#"+id)
			k.Kids = []*leaf.Node{use}
			return
		}
		s.parts[look] = k.Get("id")
	})
}

// figure takes a picture of a page into the document, or finds the one that
// looks like it.
func (s *sprite) figure(svg *leaf.Node) *drawing {
	n := clone(svg)
	prefix := ""
	if t := n.Find(leaf.Tagged("title")); t != nil {
		prefix = strings.TrimSuffix(t.Get("id"), "-title")
	}
	n.Change(func(k *leaf.Node) []*leaf.Node {
		if k.Tag == "title" || k.Tag == "desc" {
			return nil
		}
		return []*leaf.Node{k}
	})
	n.Del("role", "aria-labelledby", "aria-describedby", "aria-label")
	renamed(n, prefix, "c")
	key := string(short(nil, n, end, true))
	if d := s.figures[key]; d != nil {
		return d
	}
	return s.add(n, "c", key)
}

// add gives a drawing its name in the document; every id in it begins with it.
func (s *sprite) add(n *leaf.Node, prefix, key string) *drawing {
	d := &drawing{id: fmt.Sprintf("k%d", len(s.all)), svg: n, box: n.Get("viewBox")}
	renamed(n, prefix, d.id)
	n.Set("id", d.id)
	n.Del("xmlns", "width", "height")
	n.Walk(func(k *leaf.Node) {
		if id := k.Get("id"); id != "" {
			s.ids[id] = true
		}
	})
	s.all = append(s.all, d)
	s.figures[key] = d
	return d
}

// renamed gives all ids of a drawing another beginning.
func renamed(n *leaf.Node, from, to string) {
	if from == "" {
		return
	}
	n.Walk(func(k *leaf.Node) {
		for i := range k.Attr {
			a := &k.Attr[i]
			switch {
			case a.Key == "id" && strings.HasPrefix(a.Value, from+"-"):
				a.Value = to + a.Value[len(from):]
			case strings.Contains(a.Value, "#"+from+"-"):
				a.Value = strings.ReplaceAll(a.Value, "#"+from+"-", "#"+to+"-")
			}
		}
	})
}

// use is a drawing shown where a page wants it.
func (d *drawing) use(lit, alt, class string) *leaf.Node {
	svg := leaf.Element("svg", class)
	svg.Set("viewBox", d.box)
	if alt != "" {
		svg.Set("role", "img")
		svg.Set("aria-label", alt)
	}
	refer := func(id, class string) {
		u := leaf.Element("use", class)
		u.Set("href", "#"+id)
		svg.Kids = append(svg.Kids, u)
	}
	refer(d.id, "")
	if lit != "" {
		refer(lit, "lit")
	}
	return svg
}

// has says whether an element of the drawings has this id.
func (s *sprite) has(id string) bool { return s.ids[id] }

// write writes the drawings, unseen, as what pages use.
func (s *sprite) write(b []byte) []byte {
	b = append(b, `<svg class="sprite" width="0" height="0" aria-hidden="true"><defs>`...)
	for _, d := range s.all {
		b = short(b, d.svg, end, true)
	}
	return append(b, "</defs></svg>\n"...)
}
