package class

import (
	"encoding/xml"
	"io"
	"strings"
)

const xmlHead = `<?xml version="1.0" encoding="UTF-8"?>`

// el is an element of XML, written as it is built: attributes are pairs of name
// and value, kids are *el, raw or text.
type el struct {
	name  string
	attrs []string
	kids  []any
}

// raw is XML that is written as it stands.
type raw string

func tag(name string, attrs []string, kids ...any) *el { return &el{name, attrs, kids} }

func at(pairs ...string) []string { return pairs }

func (e *el) write(b *strings.Builder, depth int) {
	indent := "\n" + strings.Repeat("  ", depth)
	b.WriteString(indent + "<" + e.name)
	for i := 0; i+1 < len(e.attrs); i += 2 {
		b.WriteString(" " + e.attrs[i] + `="` + escaped(e.attrs[i+1]) + `"`)
	}
	if len(e.kids) == 0 {
		b.WriteString("/>")
		return
	}
	b.WriteString(">")
	closing := ""
	for _, k := range e.kids {
		switch k := k.(type) {
		case *el:
			k.write(b, depth+1)
			closing = indent
		case raw:
			b.WriteString(string(k))
		case string:
			b.WriteString(escaped(k))
		}
	}
	b.WriteString(closing + "</" + e.name + ">")
}

func escaped(text string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(text)) // a Builder does not fail
	return b.String()
}

// kept are the elements of a situation that an item may hold as they are; of
// others, such as links into the book, the text stays.
var kept = map[string]bool{"p": true, "ul": true, "ol": true, "li": true, "em": true, "strong": true, "sub": true, "sup": true,
	"table": true, "thead": true, "tbody": true, "tr": true, "th": true, "td": true, "br": true}

// asXML writes HTML that is well formed again, with the elements that are kept
// and without their attributes.
func asXML(text string) (string, error) {
	var b strings.Builder
	d := xml.NewDecoder(strings.NewReader("<div>" + text + "</div>"))
	d.Entity = xml.HTMLEntity
	for {
		token, err := d.Token()
		if err == io.EOF {
			return b.String(), nil
		}
		if err != nil {
			return "", err
		}
		switch t := token.(type) {
		case xml.StartElement:
			if kept[t.Name.Local] {
				b.WriteString("<" + t.Name.Local + ">")
			}
		case xml.EndElement:
			if kept[t.Name.Local] {
				b.WriteString("</" + t.Name.Local + ">")
			}
		case xml.CharData:
			b.WriteString(escaped(string(t)))
		}
	}
}
