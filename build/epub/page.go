package epub

import (
	"bytes"
	"fmt"
	"html"
	"path"
	"slices"
	"strings"

	"columnbowl/build/bindery"
	"columnbowl/build/leaf"
)

// pages makes the documents of the book.
func (b *volume) pages() ([]item, error) {
	var list []item
	for _, l := range b.leaves {
		main := &leaf.Node{Kids: []*leaf.Node{l.Main}}
		main.Change(func(n *leaf.Node) []*leaf.Node { return b.edit(n, l.Path) })
		i := item{path: pagePath(l.Path), media: xhtml, spine: true}
		var has []string
		for _, kind := range []struct{ tag, property string }{{"math", "mathml"}, {"svg", "svg"}} {
			if main.Find(leaf.Tagged(kind.tag)) != nil {
				has = append(has, kind.property)
			}
		}
		i.properties = strings.Join(has, " ")
		i.data = document(l.Path, l.Title, leaf.AppendXML(nil, main))
		list = append(list, i)
	}
	for _, file := range b.drawn {
		if !b.has(file) {
			return nil, fmt.Errorf("a page shows %s, and there is no such drawing", file)
		}
	}
	return list, nil
}

func (b *volume) has(file string) bool {
	return slices.ContainsFunc(b.loose.Files, func(f bindery.File) bool { return f.Path == file })
}

// document puts a body into a whole document.
func document(file, title string, body []byte) []byte {
	var w bytes.Buffer
	fmt.Fprintf(&w, `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE html>
<html xmlns="http://www.w3.org/1999/xhtml" xmlns:epub="http://www.idpf.org/2007/ops" lang="en" xml:lang="en">
<head>
<title>%s</title>
<link rel="stylesheet" type="text/css" href="%s"/>
</head>
<body>
%s
</body>
</html>
`, title, strings.Repeat("../", strings.Count(file, "/"))+stylePath, body)
	return w.Bytes()
}

// dead are the classes of what stands on a page for a script or for turning
// pages, which the device does itself.
var dead = []string{"pages", "acting", "sprite", "sign", "paper"}

// edit makes a node of a page into what stands in its place in the book.
func (b *volume) edit(n *leaf.Node, file string) []*leaf.Node {
	switch {
	case n.Tag == "":
		return []*leaf.Node{n}
	case slices.ContainsFunc(dead, n.Is), strings.HasPrefix(n.Tag, "cut-which"), n.Tag == "practice-pick":
		return nil
	case n.Is("only-"+b.other()) && n.Tag != "ol":
		return nil
	case n.Is("sheetfoot") && len(n.Kids) == 0, n.Is("say") && len(n.Kids) == 0, n.Is("wk") && len(n.Kids) == 0, n.Is("is"):
		return nil
	}
	switch {
	case n.Tag == "picture":
		return []*leaf.Node{b.picture(n, file)}
	case n.Tag == "img":
		b.image(n, n.Get("src"), file)
	case n.Tag == "a":
		b.link(n, file)
	case strings.Contains(n.Tag, "-"):
		n.Tag = "div"
		n.Del("want", "facts", "choose", "build", "sheet", "follow", "apart", "stages")
	}
	n.Attr = slices.DeleteFunc(n.Attr, func(a leaf.Attr) bool {
		return strings.HasPrefix(a.Key, "data-") || a.Key == "aria-live" || a.Key == "role" && n.Tag != "svg" && n.Tag != "g" && a.Value != "note"
	})
	return []*leaf.Node{n}
}

// other is the system of units that does not stand large.
func (b *volume) other() string {
	if b.loose.Units == "si" {
		return "us"
	}
	return "si"
}

// picture is a drawing in the layout for a page of middle width, the only one
// in the book.
func (b *volume) picture(n *leaf.Node, file string) *leaf.Node {
	img := n.Find(leaf.Tagged("img"))
	src := img.Get("src")
	for _, k := range n.Kids {
		if at := k.Get("srcset"); strings.Contains(at, "-768.svg") {
			src = at
		}
	}
	b.image(img, src, file)
	return img
}

// image leads a picture to its drawing; the device finds its size.
func (b *volume) image(img *leaf.Node, src, file string) {
	address, _, _ := strings.Cut(src, "#")
	full := path.Join(path.Dir(file), address)
	if !slices.Contains(b.drawn, full) {
		b.drawn = append(b.drawn, full)
	}
	img.Set("src", src)
	img.Del("width", "height", "loading", "decoding")
}

// link leads to the same page in the book; a link to a page that is not in it
// becomes plain text. Facts in a link need a script and are left out.
func (b *volume) link(n *leaf.Node, file string) {
	href := html.UnescapeString(n.Get("href"))
	if strings.Contains(href, "://") || strings.HasPrefix(href, "mailto:") {
		return
	}
	address, fragment, _ := strings.Cut(href, "#")
	if strings.ContainsAny(fragment, "=") {
		fragment = ""
	}
	if address == "" && fragment != "" {
		n.Set("href", "#"+fragment)
		return
	}
	to := file
	if address != "" {
		to = path.Join(path.Dir(file), address)
	}
	if !b.known[to] {
		n.Tag = "span"
		n.Del("href", "rel", "aria-current")
		return
	}
	back := strings.Repeat("../", strings.Count(file, "/"))
	href = back + pagePath(to)
	if fragment != "" {
		href += "#" + fragment
	}
	n.Set("href", html.EscapeString(href))
}

func escape(text string) string { return html.EscapeString(text) }
