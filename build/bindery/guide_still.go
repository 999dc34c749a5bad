package bindery

import (
	"html/template"
	"path"
	"regexp"
	"slices"
	"strings"

	"columnbowl/build/leaf"
)

// still makes the result of an example ready to stand inside a guide. The
// engine of the page knows nothing of the example, so nothing of it may come to
// life; its ids must not meet those of other results; its headings are none of
// the guide's; and what leads to an example, which has no page, becomes plain.
func (w *work) still(markup, prefix, root string) (template.HTML, error) {
	if strings.TrimSpace(markup) == "" {
		return "", nil
	}
	tree, err := leaf.Parse(markup)
	if err != nil {
		return "", err
	}
	own := map[string]bool{} // the ids inside; the signs of the states stand outside
	tree.Walk(func(n *leaf.Node) { own[n.Get("id")] = true })
	mark := func(id string) string {
		if own[id] {
			return prefix + id
		}
		return id
	}
	top := &leaf.Node{Kids: []*leaf.Node{tree}}
	top.Change(func(n *leaf.Node) []*leaf.Node { return w.stilled(n, mark, root) })
	return template.HTML(leaf.AppendHTML(nil, top)), nil
}

// lively are the classes of what is filled by a script.
var lively = []string{"acting", "say", "sheetfoot", "pages", "raised"}

func (w *work) stilled(n *leaf.Node, mark func(id string) string, root string) []*leaf.Node {
	if n.Tag == "" {
		return []*leaf.Node{n}
	}
	if len(n.Kids) == 0 && slices.ContainsFunc(lively, n.Is) {
		return nil
	}
	switch {
	case n.Tag == "a" && !w.leads(n.Get("href"), root):
		n.Tag = "span"
		n.Del("href", "rel", "aria-current")
	case strings.Contains(n.Tag, "-"):
		n.Tag = "div"
		n.Del("want", "facts", "choose", "build", "sheet", "follow", "apart", "stages")
	case len(n.Tag) == 2 && n.Tag[0] == 'h' && n.Tag[1] >= '1' && n.Tag[1] <= '6':
		n.Set("class", strings.TrimSpace(n.Get("class")+" like-"+n.Tag))
		n.Tag = "p"
	case n.Tag == "section" || n.Tag == "nav":
		n.Tag = "div" // no landmark of the guide
		n.Del("aria-labelledby", "aria-label")
	}
	n.Attr = slices.DeleteFunc(n.Attr, func(a leaf.Attr) bool {
		return strings.HasPrefix(a.Key, "data-") || a.Key == "aria-live" || a.Key == "role" && a.Value == "status"
	})
	for i := range n.Attr {
		n.Attr[i].Value = marked(n.Attr[i], mark)
	}
	return []*leaf.Node{n}
}

var urls = regexp.MustCompile(`url\(#([^)]*)\)`)

// marked writes an attribute with the ids in it marked.
func marked(a leaf.Attr, mark func(id string) string) string {
	switch {
	case a.Key == "id", a.Key == "for", a.Key == "aria-labelledby", a.Key == "aria-describedby":
		ids := strings.Fields(a.Value)
		for i := range ids {
			ids[i] = mark(ids[i])
		}
		return strings.Join(ids, " ")
	case a.Key == "href" && strings.HasPrefix(a.Value, "#"):
		return "#" + mark(a.Value[1:])
	}
	return urls.ReplaceAllStringFunc(a.Value, func(u string) string { return "url(#" + mark(u[len("url(#"):len(u)-1]) + ")" })
}

// leads says whether a link of a result leads to a page of this book. Facts of
// an example mean nothing to its pages.
func (w *work) leads(href, root string) bool {
	file, fragment, _ := strings.Cut(href, "#")
	if strings.Contains(fragment, "=") || file == "" {
		return false
	}
	folder, name := path.Split(strings.TrimPrefix(file, root))
	id := strings.TrimSuffix(name, ".html")
	switch strings.TrimSuffix(folder, "/") {
	case "terms":
		return w.book.TermByID[id] != nil
	case "parts":
		return w.book.PartByID[id] != nil
	case "chapters":
		return w.book.ChapterByID[id] != nil
	case "questions":
		return w.book.AskedByID[id] != nil
	case "places":
		return w.book.PlaceByID[id] != nil
	}
	return false
}
