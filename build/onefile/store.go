package onefile

import (
	"html"
	"path"
	"strings"

	"columnbowl/build/bindery"
	"columnbowl/build/leaf"
)

// stored makes the form of a page that the scripts show: all of the page of the
// folder edition, its links led inside the document, its drawings taken from
// where they stand.
func (d *document) stored(l *bindery.Leaf) *leaf.Node {
	top := &leaf.Node{Kids: []*leaf.Node{clone(l.Main)}}
	top.Change(func(n *leaf.Node) []*leaf.Node { return d.storedNode(n, l.Path) })
	main := top.Kids[0]
	main.Del("id")
	if l.Place != "" {
		main.Set("data-place", l.Place)
	}
	return main
}

func (d *document) storedNode(n *leaf.Node, file string) []*leaf.Node {
	switch {
	case n.Tag == "":
		return []*leaf.Node{n}
	case n.Tag == "a":
		if to, ok := d.inside(n.Get("href"), file); ok {
			n.Set("href", to)
		}
	case n.Is("only-"+d.loose.Units) && n.Has("data-picture"):
		n.Kids = []*leaf.Node{d.figure(n.Find(leaf.Tagged("svg")))}
		return []*leaf.Node{n}
	case n.Tag == "picture":
		return []*leaf.Node{d.picture(n, file)}
	case n.Tag == "img":
		if used := d.used(n.Get("src"), n.Get("alt"), file); used != nil {
			return []*leaf.Node{used}
		}
	case n.Has("data-card") && n.Has("data-picture"):
		n.Set("data-picture", d.card(n.Get("data-picture"), file))
	}
	if carry := n.Get("data-carry"); carry != "" {
		if to, ok := d.inside(carry, file); ok {
			n.Set("data-carry", to)
		}
	}
	return []*leaf.Node{n}
}

// inside leads an address of the folder edition to its place in the document.
func (d *document) inside(href, file string) (string, bool) {
	href = html.UnescapeString(href)
	if strings.Contains(href, "://") {
		return "", false
	}
	to, fragment, _ := strings.Cut(href, "#")
	target := file
	if to != "" {
		target = path.Join(path.Dir(file), to)
	}
	if !d.known[target] {
		return "", false
	}
	out := "#" + anchor(target)
	switch {
	case strings.Contains(fragment, "="):
		out += "#" + fragment
	case fragment != "":
		out += ":" + fragment
	}
	return html.EscapeString(out), true
}

// figure shows a picture of a page, which keeps its title and description.
func (d *document) figure(svg *leaf.Node) *leaf.Node {
	out := &leaf.Node{Tag: "svg"}
	for _, a := range svg.Attr {
		if a.Key != "xmlns" && a.Key != "height" {
			out.Attr = append(out.Attr, a)
		}
	}
	for _, k := range svg.Kids {
		if k.Tag == "title" || k.Tag == "desc" {
			out.Kids = append(out.Kids, k)
		}
	}
	out.Kids = append(out.Kids, d.sprite.figure(svg).use("", "", "").Kids...)
	return out
}

// picture is a drawing of a pump. The widths that the scripts ask for stay.
func (d *document) picture(n *leaf.Node, file string) *leaf.Node {
	img := n.Find(leaf.Tagged("img"))
	used := d.used(narrow(n), img.Get("alt"), file)
	if used == nil {
		return n
	}
	out := leaf.Element("picture", "")
	for _, k := range n.Kids {
		if k.Tag == "source" {
			k.Del("srcset", "height")
			out.Kids = append(out.Kids, k)
		}
	}
	img.Del("src", "loading", "decoding", "height")
	img.Set("hidden", "")
	out.Kids = append(out.Kids, used, img)
	return out
}

// used shows the drawing behind an address of the folder edition; nil if there
// is none.
func (d *document) used(src, alt, file string) *leaf.Node {
	cut, lit := d.sprite.cut(file, src)
	if cut == nil {
		return nil
	}
	if !d.sprite.has(lit) {
		lit = ""
	}
	return cut.use(lit, alt, "fig printed")
}

// card names the drawing of a card as the scripts take it.
func (d *document) card(src, file string) string {
	cut, lit := d.sprite.cut(file, src)
	switch {
	case cut == nil:
		return ""
	case !d.sprite.has(lit):
		return cut.id
	}
	return cut.id + " " + lit
}
