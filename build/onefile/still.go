package onefile

import (
	"slices"
	"strings"

	"columnbowl/build/bindery"
	"columnbowl/build/leaf"
)

// still makes the form of a page that stands in the document for readers
// without scripts: its text, its numbers and its drawings, in the system of
// units of the book.
type still struct {
	doc   *document
	file  string
	whole bool     // for paper: nothing is left to scripts
	told  []string // titles of the worked examples of the page
}

// stills makes the plain forms of all pages. An id that no link of theirs leads
// to is left out.
func (d *document) stills() []*leaf.Node {
	var pages []*leaf.Node
	led := map[string]bool{}
	for i := range d.loose.Leaves {
		s := &still{doc: d, file: d.loose.Leaves[i].Path}
		pages = append(pages, s.page(&d.loose.Leaves[i]))
		pages[i].Walk(func(n *leaf.Node) {
			if href := n.Get("href"); strings.HasPrefix(href, "#") {
				led[href[1:]] = true
			}
		})
	}
	for _, page := range pages {
		for _, n := range page.Kids {
			n.Walk(func(k *leaf.Node) {
				if !led[k.Get("id")] {
					k.Del("id")
				}
			})
		}
	}
	return pages
}

// kept are the classes that the style sheet needs for a page without scripts.
var kept = []string{"term", "part", "chapter", "asked", "place", "index", "build", "builds", "home", "cols", "one", "partcols", "head", "beside", "prose", "long",
	"rel", "formula", "estimate", "assume", "words", "letters", "partner", "key", "also", "caution", "danger", "w", "worked", "examples", "steps", "lines", "slips", "no",
	"wrong", "plate", "short", "question", "symbol", "fig", "printed", "lit", "lits", "drawing", "full", "slim", "calc", "situation", "blank", "line", "plain",
	"compare", "group", "has", "hasnot", "away", "cutlist", "only-us", "only-si", "pumps", "pump", "pumpdraw", "chain", "now", "doors", "door", "swatch", "demo"}

// stillLeft are classes of what is left to the scripts: controls, and what
// the document says elsewhere already.
var stillLeft = []string{"acting", "sheetfoot", "sprite", "sign", "paper", "say", "n", "st", "is", "pages", "swatch", "sheetlist", "unpack", "chain", "deck"}

// page is the main element of a leaf in its still form.
func (s *still) page(l *bindery.Leaf) *leaf.Node {
	l.Main.Walk(func(n *leaf.Node) {
		if n.Is("worked") {
			s.told = append(s.told, n.Get("data-name"))
		}
	})
	top := &leaf.Node{Kids: []*leaf.Node{clone(l.Main)}}
	top.Change(s.edit)
	main := top.Kids[0]
	if l.Path == "sources.html" && !s.whole {
		main.Change(func(n *leaf.Node) []*leaf.Node {
			if n.Tag == "table" {
				return nil
			}
			return []*leaf.Node{n}
		})
	}
	main.Set("id", anchor(s.file))
	return main
}

// anchor is the address of a page inside the document.
func anchor(file string) string { return strings.TrimSuffix(file, ".html") }

func (s *still) edit(n *leaf.Node) []*leaf.Node {
	switch {
	case n.Tag == "":
		return []*leaf.Node{n}
	case n.Is("fig") && n.Tag == "svg":
		return []*leaf.Node{s.doc.sprite.figure(n).use("", titleOf(n), "fig")}
	case n.Is("blockt") && !s.whole:
		return demo(n)
	case slices.ContainsFunc(stillLeft, n.Is), n.Is("only-" + s.doc.other()), n.Tag == "cut-which", n.Tag == "practice-pick":
		return nil
	case n.Is("slipping") && !s.whole:
		// the number line is left to the scripts: its numbers stand in the list below it
		n.Kids = slices.DeleteFunc(n.Kids, func(k *leaf.Node) bool { return k.Tag == "figure" })
	case n.Tag == "fact-sheet":
		return s.sheet(n)
	case n.Tag == "picture":
		return s.cut(narrow(n), n.Find(leaf.Tagged("img")).Get("alt"))
	case n.Tag == "img":
		return s.cut(n.Get("src"), n.Get("alt"))
	case n.Tag == "a" && !s.link(n):
		return n.Kids
	case n.Tag == "span" && (n.Is("only-us") || n.Is("only-si") || n.Is("us") || n.Is("q") || n.Is("work")), strings.Contains(n.Tag, "-") && !n.Has("id"):
		inner := &leaf.Node{Kids: n.Kids}
		inner.Change(s.edit)
		return inner.Kids
	case n.Is("examples") && !s.whole:
		s.examples(n)
	case n.Is("lits"):
		s.firstFigure(n)
	case n.Tag == "details":
		if s.whole {
			n.Set("open", "")
		}
	case n.Tag == "math" && !s.whole:
		if words, ok := inWords(n); ok {
			return []*leaf.Node{leaf.Text(words)}
		}
	case n.Is("lines"):
		s.lines(n)
	case n.Is("around") && !s.whole:
		s.bare(n)
		s.around(n)
	case !s.whole && n.Is("cutlist"), n.Tag == "table" && n.Is("plain") && (!s.whole || strings.HasPrefix(s.file, "places/")):
		s.bare(n)
	case n.Tag == "span" && n.Is("si"):
		inner := &leaf.Node{Kids: n.Kids}
		inner.Change(s.edit)
		return append(append([]*leaf.Node{leaf.Text("(")}, inner.Kids...), leaf.Text(")"))
	case n.Tag == "i" && len(n.Attr) == 0:
		// the unit of a number
		return append([]*leaf.Node{leaf.Text(" ")}, n.Kids...)
	}
	s.strip(n)
	return []*leaf.Node{n}
}

// strip leaves an element what it needs without scripts: its id inside the
// document, and the classes that the style sheet looks at.
func (s *still) strip(n *leaf.Node) {
	if strings.Contains(n.Tag, "-") {
		id := n.Get("id")
		n.Tag, n.Attr = "div", []leaf.Attr{{Key: "id", Value: id}}
	}
	if id := n.Get("id"); id != "" {
		n.Set("id", anchor(s.file)+":"+id)
	}
	if class := n.Get("class"); class != "" && !s.whole {
		n.Set("class", strings.Join(slices.DeleteFunc(strings.Fields(class), func(c string) bool { return !slices.Contains(kept, c) }), " "))
		if n.Get("class") == "" {
			n.Del("class")
		}
	}
	n.Attr = slices.DeleteFunc(n.Attr, func(a leaf.Attr) bool {
		return strings.HasPrefix(a.Key, "data-") || strings.HasPrefix(a.Key, "aria-") || a.Key == "role" || a.Key == "rel" || a.Key == "scope"
	})
}

// sheet is a calculation sheet as plain lines; one that a worked example of the
// page tells step by step is left out.
func (s *still) sheet(n *leaf.Node) []*leaf.Node {
	if slices.Contains(s.told, n.Get("data-title")) {
		return demo(n)
	}
	list := leaf.Element("ol", "calc")
	n.Walk(func(row *leaf.Node) {
		if row.Tag != "li" || !row.Is("row") {
			return
		}
		line := s.textOf(row, "nm") + " <b>" + s.textOf(row, "v") + "</b>"
		if o := s.textOf(row, "o"); o != "" {
			line += " (" + o + ")"
		}
		for _, more := range []string{"ask", "clashes", "work", "note"} {
			if text := s.textOf(row, more); text != "" {
				line += joints[more] + text
			}
		}
		list.Kids = append(list.Kids, leaf.Element("li", "", leaf.Text(line)))
	})
	return append([]*leaf.Node{leaf.Element("h3", "", leaf.Text(n.Get("data-title"))), list}, demo(n)...)
}

// demo is the line that a result rests on an invented family of bowls, if it
// stands in a node: it is never left out.
func demo(n *leaf.Node) []*leaf.Node {
	if line := n.Find(func(k *leaf.Node) bool { return k.Is("demo") }); line != nil {
		return []*leaf.Node{clone(line)}
	}
	return nil
}

// joints stand before what a line of a sheet says beside its value.
var joints = map[string]string{"ask": " ", "clashes": " ", "work": " = ", "note": ". "}

// textOf is the text of the first element of a class, in the units of the book.
func (s *still) textOf(n *leaf.Node, class string) string {
	found := n.Find(func(k *leaf.Node) bool { return k.Is(class) })
	if found == nil {
		return ""
	}
	found = clone(found)
	found.Change(s.edit)
	return found.Plain()
}

// link leads to a page of the document; false if it leads to none. Facts in a
// link need a script.
func (s *still) link(n *leaf.Node) bool {
	n.Del("class", "rel", "aria-current")
	if strings.Contains(n.Get("href"), "://") {
		return true
	}
	to, ok := s.doc.inside(n.Get("href"), s.file)
	if !ok {
		return false
	}
	page, _, _ := strings.Cut(to[1:], "#")
	n.Set("href", "#"+page)
	return true
}

// cut is a drawing of a pump.
func (s *still) cut(src, alt string) []*leaf.Node {
	if used := s.doc.used(src, alt, s.file); used != nil {
		return []*leaf.Node{used}
	}
	return nil
}

// titleOf is the title of a drawing.
func titleOf(svg *leaf.Node) string {
	if t := svg.Find(leaf.Tagged("title")); t != nil {
		return t.Plain()
	}
	return ""
}

// other is the system of units that does not stand large.
func (d *document) other() string {
	if d.loose.Units == "si" {
		return "us"
	}
	return "si"
}

// narrow is the layout of a drawing for phones.
func narrow(picture *leaf.Node) string {
	for _, k := range picture.Kids {
		if strings.Contains(k.Get("srcset"), "-360.svg") {
			return k.Get("srcset")
		}
	}
	return picture.Find(leaf.Tagged("img")).Get("src")
}

// clone copies a node with all below it.
func clone(n *leaf.Node) *leaf.Node {
	out := &leaf.Node{Tag: n.Tag, Attr: slices.Clone(n.Attr), Text: n.Text}
	for _, k := range n.Kids {
		out.Kids = append(out.Kids, clone(k))
	}
	return out
}
