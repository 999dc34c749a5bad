// Package leaf is one page of the handbook as a tree, cut out of its frame, so
// that other editions than the folder can take it up: links led elsewhere,
// controls left out, written as XML or as short HTML.
//
// It reads what the shells of this project write and nothing else: every
// element is closed (void ones and those of a drawing by themselves), values
// stand in double quotes. Whatever departs from that is an error: it would be
// one on the page as well. Texts and values stay escaped as they were written.
package leaf

import (
	"slices"
	"strings"
)

// Node is an element or, with an empty Tag, a text.
type Node struct {
	Tag  string
	Attr []Attr
	Kids []*Node
	Text string // escaped
}

// Attr is an attribute; its value is escaped.
type Attr struct{ Key, Value string }

// voids are elements of HTML that have no end tag.
var voids = []string{"area", "base", "br", "col", "hr", "img", "input", "link", "meta", "source", "wbr"}

// Void says whether an element of HTML has no content and no end tag.
func Void(tag string) bool { return slices.Contains(voids, tag) }

// Get is the value of an attribute, "" if there is none.
func (n *Node) Get(key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Value
		}
	}
	return ""
}

// Has says whether an attribute is there.
func (n *Node) Has(key string) bool {
	return slices.ContainsFunc(n.Attr, func(a Attr) bool { return a.Key == key })
}

// Set gives an attribute a value.
func (n *Node) Set(key, value string) {
	for i := range n.Attr {
		if n.Attr[i].Key == key {
			n.Attr[i].Value = value
			return
		}
	}
	n.Attr = append(n.Attr, Attr{key, value})
}

// Del takes attributes away.
func (n *Node) Del(keys ...string) {
	n.Attr = slices.DeleteFunc(n.Attr, func(a Attr) bool { return slices.Contains(keys, a.Key) })
}

// Is says whether a class is among those of an element.
func (n *Node) Is(class string) bool {
	for c := range strings.FieldsSeq(n.Get("class")) {
		if c == class {
			return true
		}
	}
	return false
}

// Find is the first node below n, n itself among them, that a test holds for;
// nil if there is none.
func (n *Node) Find(test func(*Node) bool) *Node {
	if test(n) {
		return n
	}
	for _, k := range n.Kids {
		if found := k.Find(test); found != nil {
			return found
		}
	}
	return nil
}

// Tagged tests for an element's name.
func Tagged(tag string) func(*Node) bool { return func(n *Node) bool { return n.Tag == tag } }

// Change hands every node to edit, parents before their children, and puts what
// it returns in the node's place: nothing, the node itself, or others. What is
// returned is gone through in its turn only where it is the node itself.
func (n *Node) Change(edit func(*Node) []*Node) {
	var kids []*Node
	for _, k := range n.Kids {
		out := edit(k)
		kids = append(kids, out...)
		if slices.Contains(out, k) {
			k.Change(edit)
		}
	}
	n.Kids = kids
}

// Walk hands every node below n, and n itself, to see.
func (n *Node) Walk(see func(*Node)) {
	see(n)
	for _, k := range n.Kids {
		k.Walk(see)
	}
}

// Plain is the text of a node without its marks, escaped as it stands.
func (n *Node) Plain() string {
	var b strings.Builder
	n.Walk(func(k *Node) {
		if k.Tag == "" {
			b.WriteString(k.Text)
		}
	})
	return strings.Join(strings.Fields(b.String()), " ")
}

// Text makes a node of an escaped text.
func Text(escaped string) *Node { return &Node{Text: escaped} }

// Element makes an element with a class, "" for none.
func Element(tag, class string, kids ...*Node) *Node {
	n := &Node{Tag: tag, Kids: kids}
	if class != "" {
		n.Set("class", class)
	}
	return n
}
