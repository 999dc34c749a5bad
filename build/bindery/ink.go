package bindery

import (
	"regexp"
	"slices"
	"strings"
)

// inks is a style sheet cut into its rules, so that a drawing that is a file of
// its own carries only those that it needs. A file has no switch of themes: its
// rules are those of the paper that follows the reader's system, “auto”.
type inks []inkRule

// inkRule is one rule.
type inkRule struct {
	media     string   // the condition of the @media around it; "" for none
	selectors []string // with the theme taken out
	needs     []need   // what each selector asks of a drawing
	set       []string // its declarations
}

// theme finds what a selector asks of the switch of themes.
var (
	theme     = regexp.MustCompile(`\[data-theme(?:=["']?([a-z]+)["']?)?\]`)
	className = regexp.MustCompile(`\.([A-Za-z_][\w-]*)`)
	element   = regexp.MustCompile(`(?:^|[\s>+~(])([a-z][a-z0-9]*)`)
	rooted    = regexp.MustCompile(`^(?::root|#[a-z]+:target)$`)
	variable  = regexp.MustCompile(`var\((--[\w-]+)`)
)

// readInks reads a style sheet as the bundler writes it: without comments, with
// one level of @media at most.
func readInks(css string) inks {
	var list inks
	list.read(css, "")
	return list
}

// papers are the papers that the address of a picture can ask for, in the order
// of the groups that stand for them: see wells.
var papers = []string{"light", "dark", "contrast"}

// readPapers reads the same, for a drawing whose groups stand for the papers.
func readPapers(css string) inks {
	for _, paper := range papers {
		css = regexp.MustCompile(`(?::root)?\[data-theme=["']?`+paper+`["']?\]`).ReplaceAllString(css, "#"+paper+":target")
	}
	const any = `:root,#light:target,#dark:target,#contrast:target`
	css = strings.ReplaceAll(css, ":root[data-theme]", any)
	list := readInks(css)
	for i := range list {
		// what holds on light paper holds on it when the address asks for it
		if r := &list[i]; r.media == "" && slices.Equal(r.selectors, []string{":root"}) {
			r.selectors = []string{":root", "#light:target"}
			r.settle()
		}
	}
	return list
}

func (list *inks) read(css, media string) {
	for {
		head, rest, found := strings.Cut(css, "{")
		if !found {
			return
		}
		body, after := block(rest)
		head = strings.TrimSpace(head)
		switch {
		case strings.HasPrefix(head, "@media"):
			list.read(body, head)
		case !strings.HasPrefix(head, "@"):
			list.add(head, body, media)
		}
		css = after
	}
}

// block is the text up to the brace that closes it, and what follows.
func block(css string) (body, after string) {
	depth := 1
	for i, c := range css {
		switch c {
		case '{':
			depth++
		case '}':
			if depth--; depth == 0 {
				return css[:i], css[i+1:]
			}
		}
	}
	return css, ""
}

func (list *inks) add(head, body, media string) {
	r := inkRule{media: media}
	for _, s := range outside(head, ',') {
		s = strings.TrimSpace(s)
		if m := theme.FindStringSubmatch(s); m != nil {
			if m[1] != "" && m[1] != "auto" {
				continue // of a theme that a file is never in
			}
			s = theme.ReplaceAllString(s, "")
		}
		r.selectors = append(r.selectors, s)
	}
	r.settle()
	for _, d := range outside(body, ';') {
		if d = strings.TrimSpace(d); d != "" {
			r.set = append(r.set, d)
		}
	}
	if len(r.selectors) > 0 && len(r.set) > 0 {
		*list = append(*list, r)
	}
}

// need is what a selector asks of a drawing.
type need struct {
	classes, elements []string
	root              bool // it is about the drawing as a whole
}

// settle notes what the selectors need.
func (r *inkRule) settle() {
	r.needs = nil
	for _, s := range r.selectors {
		n := need{root: rooted.MatchString(s)}
		for _, m := range className.FindAllStringSubmatch(s, -1) {
			n.classes = append(n.classes, m[1])
		}
		for _, m := range element.FindAllStringSubmatch(s, -1) {
			n.elements = append(n.elements, m[1])
		}
		r.needs = append(r.needs, n)
	}
}

// met says whether a drawing has what a selector needs.
func (n *need) met(classes, elements map[string]bool) bool {
	lacks := func(has map[string]bool) func(string) bool { return func(s string) bool { return !has[s] } }
	return (n.root || len(n.classes)+len(n.elements) > 0) &&
		!slices.ContainsFunc(n.classes, lacks(classes)) && !slices.ContainsFunc(n.elements, lacks(elements))
}

// outside splits a text at a sign that does not stand in brackets.
func outside(text string, at byte) []string {
	var list []string
	depth, from := 0, 0
	for i := range len(text) {
		switch c := text[i]; {
		case c == '(' || c == '[':
			depth++
		case c == ')' || c == ']':
			depth--
		case c == at && depth == 0:
			list = append(list, text[from:i])
			from = i + 1
		}
	}
	return append(list, text[from:])
}

// of writes the rules that a drawing needs: those whose classes and elements it
// has, and of the variables those that are asked for.
func (list inks) of(svg string) string {
	has, elements := classesOf(svg), elementsOf(svg)
	var kept inks
	for _, r := range list {
		all := r.selectors
		r.selectors = nil
		for i := range all {
			if r.needs[i].met(has, elements) {
				r.selectors = append(r.selectors, all[i])
			}
		}
		if len(r.selectors) > 0 {
			kept = append(kept, r)
		}
	}
	return kept.asked().write()
}

// classesOf are the classes in a drawing.
func classesOf(svg string) map[string]bool {
	found := map[string]bool{}
	last := ""
	for {
		var list string
		_, rest, more := strings.Cut(svg, ` class="`)
		if !more {
			return found
		}
		list, svg, _ = strings.Cut(rest, `"`)
		if list == last {
			continue // shapes of one kind stand together
		}
		last = list
		for _, c := range strings.Fields(list) {
			found[c] = true
		}
	}
}

// elementsOf are the kinds of elements in a drawing.
func elementsOf(svg string) map[string]bool {
	found := map[string]bool{}
	for {
		_, rest, more := strings.Cut(svg, "<")
		if !more {
			return found
		}
		if end := strings.IndexAny(rest, " />"); end > 0 {
			found[rest[:end]] = true
		}
		svg = rest
	}
}

// asked leaves out variables that nothing asks for, and those that only such
// variables ask for.
func (list inks) asked() inks {
	for {
		wanted := map[string]bool{}
		for _, r := range list {
			for _, d := range r.set {
				for _, m := range variable.FindAllStringSubmatch(d, -1) {
					wanted[m[1]] = true
				}
			}
		}
		var kept inks
		left := false
		for _, r := range list {
			all := len(r.set)
			r.set = slices.DeleteFunc(slices.Clone(r.set), func(d string) bool {
				name, _, _ := strings.Cut(d, ":")
				return strings.HasPrefix(name, "--") && !wanted[name]
			})
			left = left || len(r.set) < all
			if len(r.set) > 0 {
				kept = append(kept, r)
			}
		}
		list = kept
		if !left {
			return list
		}
	}
}

func (list inks) write() string {
	var b strings.Builder
	media := ""
	for _, r := range list {
		if r.media != media {
			if media != "" {
				b.WriteByte('}')
			}
			if r.media != "" {
				b.WriteString(r.media + "{")
			}
			media = r.media
		}
		b.WriteString(strings.Join(r.selectors, ",") + "{" + strings.Join(r.set, ";") + "}")
	}
	if media != "" {
		b.WriteByte('}')
	}
	return b.String()
}
