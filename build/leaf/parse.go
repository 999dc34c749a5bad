package leaf

import (
	"fmt"
	"strings"
)

// Parse reads the markup of one element, or of several that stand side by side;
// these come as the children of a node without a name.
func Parse(markup string) (*Node, error) {
	top := &Node{}
	r := reader{rest: markup, open: []*Node{top}}
	for r.rest != "" {
		if err := r.step(); err != nil {
			return nil, fmt.Errorf("%w, at “%s”", err, cutShort(r.rest))
		}
	}
	if n := len(r.open); n > 1 {
		return nil, fmt.Errorf("<%s> is not closed", r.open[n-1].Tag)
	}
	if len(top.Kids) == 1 {
		return top.Kids[0], nil
	}
	return top, nil
}

type reader struct {
	rest string
	open []*Node
}

func (r *reader) top() *Node { return r.open[len(r.open)-1] }

func (r *reader) add(n *Node) { r.top().Kids = append(r.top().Kids, n) }

// step reads a text, a start tag or an end tag.
func (r *reader) step() error {
	at := strings.IndexByte(r.rest, '<')
	switch {
	case at < 0:
		r.add(Text(r.rest))
		r.rest = ""
		return nil
	case at > 0:
		r.add(Text(r.rest[:at]))
		r.rest = r.rest[at:]
		return nil
	case strings.HasPrefix(r.rest, "</"):
		return r.end()
	}
	return r.start()
}

func (r *reader) end() error {
	name, rest, ok := strings.Cut(r.rest[2:], ">")
	if !ok || name != r.top().Tag || len(r.open) == 1 {
		return fmt.Errorf("</%s> closes <%s>", name, r.top().Tag)
	}
	r.open, r.rest = r.open[:len(r.open)-1], rest
	return nil
}

func (r *reader) start() error {
	n := &Node{Tag: r.name(1)}
	if n.Tag == "" {
		return fmt.Errorf("a “<” that begins no element")
	}
	rest := r.rest[1+len(n.Tag):]
	for {
		rest = strings.TrimLeft(rest, " \n\t")
		if after, ok := strings.CutPrefix(rest, "/>"); ok {
			r.add(n)
			r.rest = after
			return nil
		}
		if after, ok := strings.CutPrefix(rest, ">"); ok {
			r.add(n)
			r.rest = after
			if !Void(n.Tag) {
				r.open = append(r.open, n)
			}
			return nil
		}
		a, after, err := attribute(rest)
		if err != nil {
			return err
		}
		n.Attr = append(n.Attr, a)
		rest = after
	}
}

// name is the run of letters, digits and hyphens from a place on.
func (r *reader) name(at int) string {
	end := at
	for end < len(r.rest) && (r.rest[end] >= 'a' && r.rest[end] <= 'z' || r.rest[end] >= 'A' && r.rest[end] <= 'Z' || end > at && (r.rest[end] == '-' || r.rest[end] >= '0' && r.rest[end] <= '9')) {
		end++
	}
	return r.rest[at:end]
}

// attribute reads key="value", or a key alone, whose value is "".
func attribute(text string) (Attr, string, error) {
	at := strings.IndexAny(text, "=> /\n")
	if at <= 0 {
		return Attr{}, "", fmt.Errorf("a tag that does not end")
	}
	key, rest := text[:at], text[at:]
	if rest[0] != '=' {
		return Attr{Key: key}, rest, nil
	}
	rest, ok := strings.CutPrefix(rest[1:], `"`)
	value, after, closed := strings.Cut(rest, `"`)
	if !ok || !closed {
		return Attr{}, "", fmt.Errorf("the value of %s does not stand in double quotes", key)
	}
	return Attr{key, value}, after, nil
}

func cutShort(text string) string {
	if r := []rune(text); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return text
}
