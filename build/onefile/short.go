package onefile

import (
	"slices"
	"strings"

	"columnbowl/build/leaf"
)

// optional are elements whose end tag HTML lets one leave out before another of
// the group, or at the end of what they stand in.
var optional = map[string][]string{
	"li": {"li"}, "dt": {"dt", "dd"}, "dd": {"dt", "dd"}, "td": {"td", "th"}, "th": {"td", "th"}, "tr": {"tr"},
	"thead": {"tbody"}, "tbody": {"tbody"},
	"p": {"p", "ul", "ol", "dl", "div", "table", "section", "article", "figure", "footer", "header", "nav", "h1", "h2", "h3", "details", "blockquote", "pre"},
}

// inline are elements next to which a line break is a space.
var inline = []string{"a", "abbr", "b", "br", "code", "em", "i", "img", "math", "picture", "small", "span", "strong", "sub", "summary", "sup", "svg", ""}

// plainSigns are signs that need no escape in a text.
var plainSigns = strings.NewReplacer("&#43;", "+", "&#39;", "'", "&#34;", `"`, "&quot;", `"`)

// short writes a node in few bytes: no quotes and end tags that HTML can do
// without, no line breaks between blocks. Drawings and formulas keep their end
// tags; nothing that is seen changes.
func short(b []byte, n *leaf.Node, next *leaf.Node, drawn bool) []byte {
	if n.Tag == "" {
		b = append(b, plainSigns.Replace(n.Text)...)
		return shortAll(b, n.Kids, drawn)
	}
	b = append(append(b, '<'), n.Tag...)
	for _, a := range n.Attr {
		b = append(append(b, ' '), a.Key...)
		switch {
		case a.Value == "" && a.Key != "alt" && !drawn:
		case !drawn && bare(a.Value):
			b = append(append(b, '='), a.Value...)
		default:
			b = append(append(append(b, `="`...), a.Value...), '"')
		}
	}
	drawn = drawn || n.Tag == "svg" || n.Tag == "math"
	if drawn && len(n.Kids) == 0 && n.Tag != "svg" {
		return append(b, "/>"...)
	}
	b = append(b, '>')
	if leaf.Void(n.Tag) {
		return b
	}
	b = shortAll(b, n.Kids, drawn)
	if !drawn && slices.Contains(optional[n.Tag], tagOf(next)) || next == end && optional[n.Tag] != nil {
		return b
	}
	return append(append(append(b, "</"...), n.Tag...), '>')
}

// end stands for the end of what an element stands in; open for an element that
// does not close its last child.
var end, open = &leaf.Node{Tag: "/"}, &leaf.Node{Tag: "/a"}

func tagOf(n *leaf.Node) string {
	if n == nil {
		return ""
	}
	return n.Tag
}

// shortAll writes the children of a node.
func shortAll(b []byte, kids []*leaf.Node, drawn bool) []byte {
	var kept []*leaf.Node
	for i, k := range kids {
		if k.Tag == "" && len(k.Kids) == 0 && strings.TrimSpace(k.Text) == "" {
			if drawn || (i == 0 || i == len(kids)-1 || !slices.Contains(inline, kids[i-1].Tag) || !slices.Contains(inline, kids[i+1].Tag)) && strings.Contains(k.Text, "\n") {
				continue
			}
		}
		kept = append(kept, k)
	}
	for i, k := range kept {
		next := end
		if i+1 < len(kept) {
			next = kept[i+1]
		}
		b = short(b, k, next, drawn)
	}
	return b
}

// bare says whether a value needs no quotes.
func bare(value string) bool {
	return value != "" && !strings.ContainsAny(value, " \t\n\"'=<>`") && !strings.HasSuffix(value, "/")
}
