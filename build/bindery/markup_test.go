package bindery

import (
	"errors"
	"fmt"
	"html"
	"slices"
	"strings"
)

// tag is one tag of a page.
type tag struct {
	name  string
	close bool
	attrs map[string]string
}

// voids are elements without an end.
var voids = []string{"meta", "link", "br", "hr", "img", "input", "col", "wbr", "source"}

// parse reads a page as strictly as XML: every tag closed, every attribute
// quoted and named once. It calls visit for every opening tag.
func parse(page string, visit func(tag)) error {
	var open []string
	for {
		at := strings.IndexByte(page, '<')
		if at < 0 {
			break
		}
		if i := strings.IndexByte(page[:at], '>'); i >= 0 {
			return fmt.Errorf("a bare > near %.40q", page[max(0, i-20):])
		}
		page = page[at:]
		if strings.HasPrefix(page, "<!") {
			page = page[strings.IndexByte(page, '>')+1:]
			continue
		}
		t, rest, selfClosed, err := readTag(page)
		if err != nil {
			return err
		}
		page = rest
		switch {
		case t.close:
			if len(open) == 0 || open[len(open)-1] != t.name {
				return fmt.Errorf("</%s> closes nothing; open are %v", t.name, open)
			}
			open = open[:len(open)-1]
			continue
		case !selfClosed && !slices.Contains(voids, t.name):
			open = append(open, t.name)
		}
		visit(t)
	}
	if len(open) > 0 {
		return fmt.Errorf("never closed: %v", open)
	}
	return nil
}

// readTag reads one tag from the beginning of a text.
func readTag(s string) (t tag, rest string, selfClosed bool, err error) {
	whole := s
	s = s[1:]
	t.close = strings.HasPrefix(s, "/")
	s = strings.TrimPrefix(s, "/")
	n := strings.IndexAny(s, " \t\n/>")
	if n < 1 {
		return t, "", false, fmt.Errorf("no tag at %.40q", whole)
	}
	t.name, s, t.attrs = s[:n], s[n:], map[string]string{}
	for {
		s = strings.TrimLeft(s, " \t\n")
		switch {
		case strings.HasPrefix(s, "/>"):
			return t, s[2:], true, nil
		case strings.HasPrefix(s, ">"):
			return t, s[1:], false, nil
		}
		n := strings.IndexAny(s, "= \t\n/>")
		if n < 1 {
			return t, "", false, fmt.Errorf("no attribute at %.40q in %.80q", s, whole)
		}
		name := s[:n]
		s = s[n:]
		value := ""
		if strings.HasPrefix(s, `="`) {
			end := strings.IndexByte(s[2:], '"')
			if end < 0 {
				return t, "", false, errors.New("a quote never closed in " + whole[:60])
			}
			value, s = s[2:2+end], s[3+end:]
		} else if strings.HasPrefix(s, "=") {
			return t, "", false, fmt.Errorf("%s has a value without quotes in %.80q", name, whole)
		}
		if _, twice := t.attrs[name]; twice {
			return t, "", false, fmt.Errorf("%s stands twice in %.80q", name, whole)
		}
		t.attrs[name] = html.UnescapeString(value)
	}
}
