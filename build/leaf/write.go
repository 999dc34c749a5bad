package leaf

import "strings"

// Namespaces of what stands inside XHTML.
const (
	mathSpace = "http://www.w3.org/1998/Math/MathML"
	svgSpace  = "http://www.w3.org/2000/svg"
)

// entities of HTML that the shells and the texts use, as XML knows them.
var entities = strings.NewReplacer("&nbsp;", "\u00a0", "&ndash;", "–", "&mdash;", "—", "&hellip;", "…")

// AppendXML writes a node as XML, formulas and drawings with their namespaces.
func AppendXML(b []byte, n *Node) []byte {
	if n.Tag == "" {
		b = append(b, entities.Replace(n.Text)...)
		for _, k := range n.Kids {
			b = AppendXML(b, k)
		}
		return b
	}
	b = append(append(b, '<'), n.Tag...)
	switch {
	case n.Tag == "math" && !n.Has("xmlns"):
		b = append(b, ` xmlns="`+mathSpace+`"`...)
	case n.Tag == "svg" && !n.Has("xmlns"):
		b = append(b, ` xmlns="`+svgSpace+`"`...)
	}
	for _, a := range n.Attr {
		b = append(b, ' ')
		b = append(append(b, a.Key...), `="`...)
		b = append(append(b, entities.Replace(a.Value)...), '"')
	}
	if len(n.Kids) == 0 && (Void(n.Tag) || drawn(n.Tag)) {
		return append(b, "/>"...)
	}
	b = append(b, '>')
	for _, k := range n.Kids {
		b = AppendXML(b, k)
	}
	return append(append(append(b, "</"...), n.Tag...), '>')
}

// drawn are the elements of drawings that mostly stand empty.
func drawn(tag string) bool {
	switch tag {
	case "path", "line", "rect", "circle", "use", "ellipse", "polygon", "polyline", "stop":
		return true
	}
	return false
}

// AppendHTML writes a node as HTML.
func AppendHTML(b []byte, n *Node) []byte {
	if n.Tag == "" {
		b = append(b, n.Text...)
		for _, k := range n.Kids {
			b = AppendHTML(b, k)
		}
		return b
	}
	b = append(append(b, '<'), n.Tag...)
	for _, a := range n.Attr {
		b = append(append(b, ' '), a.Key...)
		if a.Value != "" || a.Key == "alt" || strings.HasPrefix(a.Key, "data-") {
			b = append(append(append(b, `="`...), a.Value...), '"')
		}
	}
	if len(n.Kids) == 0 && drawn(n.Tag) {
		return append(b, "/>"...)
	}
	b = append(b, '>')
	if Void(n.Tag) {
		return b
	}
	for _, k := range n.Kids {
		b = AppendHTML(b, k)
	}
	return append(append(append(b, "</"...), n.Tag...), '>')
}
