package book

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"

	"columnbowl/build/markdown"
	"columnbowl/build/report"
	"columnbowl/calcwasm/formula"
)

// yamlReader reads YAML strictly into a structure: what is not asked for is an
// error, not an extra. It is the only part of the project that knows the YAML
// library.
type yamlReader struct {
	file  string
	src   []byte        // the whole file
	yaml  markdown.Span // the YAML in it
	found *report.List
	at    map[string]markdown.Span
	lines []int // where each line of the YAML begins in it
}

// reader takes the value that stands at a path.
type reader func(y *yamlReader, path string, n *yaml.Node)

// field is one key that a mapping may have.
type field struct {
	key      string
	required bool
	read     reader
}

// readYAML reads a file's YAML as one mapping; what names it in messages.
func readYAML(file string, src []byte, where markdown.Span, what string, fields []field, found *report.List) titled {
	y := &yamlReader{file: file, src: src, yaml: where, found: found, at: map[string]markdown.Span{}, lines: linesOf(src[where.Off : where.Off+where.Len])}
	y.at[""] = markdown.Span{Off: where.Off, Len: lineLength(src, where.Off)}
	if where == (markdown.Span{}) { // there is no title block, which has been told
		return titled{y.at}
	}
	var doc yaml.Node
	if err := yaml.Unmarshal(src[where.Off:where.Off+where.Len], &doc); err != nil {
		y.broken(err)
		return titled{y.at}
	}
	if len(doc.Content) == 0 {
		y.require("", what, fields, nil)
		return titled{y.at}
	}
	y.mapping("", what, doc.Content[0], fields)
	return titled{y.at}
}

// linesOf finds where the lines of a text begin. Long files have thousands of
// values, and each has its place: they are not counted from the top each time.
func linesOf(text []byte) []int {
	starts := []int{0}
	for i, c := range text {
		if c == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}

// offset is where a line and column of the YAML, counted from 1, stand in the file.
func (y *yamlReader) offset(line, column int) int {
	body := y.src[y.yaml.Off : y.yaml.Off+y.yaml.Len]
	if line > len(y.lines) {
		return y.yaml.Off + len(body)
	}
	start := y.lines[max(line, 1)-1]
	return y.yaml.Off + start + report.Offset(body[start:], 1, column)
}

func lineLength(src []byte, off int) int {
	n := 0
	for off+n < len(src) && src[off+n] != '\n' && src[off+n] != '\r' {
		n++
	}
	return n
}

var yamlLine = regexp.MustCompile(`^yaml: (?:line (\d+)(?:, column \d+)?: )?(.*)$`)

// broken tells of YAML that cannot be read at all.
func (y *yamlReader) broken(err error) {
	text, line := err.Error(), 1
	if m := yamlLine.FindStringSubmatch(text); m != nil {
		text = m[2]
		if n, err := strconv.Atoi(m[1]); err == nil {
			line = n
		}
	}
	off := y.offset(line, 1)
	y.found.Add(y.file, off, lineLength(y.src, off), "This is not YAML as the title block needs it: "+text+".", "",
		"A text that holds a colon, a comma in a list, a # or that begins with a sign such as % stands in double quotes.")
}

func (y *yamlReader) fail(s markdown.Span, message, suggest string) {
	y.found.Add(y.file, s.Off, s.Len, message, suggest)
}

func (y *yamlReader) mapping(path, what string, n *yaml.Node, fields []field) {
	if n.Kind != yaml.MappingNode {
		y.fail(y.span(n), capital(what)+" is a list of keys with values, such as “"+fields[0].key+": …”.", "")
		return
	}
	seen := map[string]bool{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		at := slices.IndexFunc(fields, func(f field) bool { return f.key == key.Value })
		switch {
		case seen[key.Value]:
			y.fail(y.span(key), "“"+key.Value+"” stands here twice.", "")
		case at < 0:
			y.fail(y.span(key), "“"+key.Value+"” is no key of "+what+". Its keys are "+keyList(fields)+".", nearestKey(key.Value, fields))
		case value.Kind == yaml.AliasNode:
			y.fail(y.span(value), "References (*…) have no place here: write the value itself.", "")
		default:
			y.at[join(path, key.Value)] = y.span(value)
			fields[at].read(y, join(path, key.Value), value)
		}
		seen[key.Value] = true
	}
	y.require(path, what, fields, seen)
}

func (y *yamlReader) require(path, what string, fields []field, seen map[string]bool) {
	for _, f := range fields {
		if f.required && !seen[f.key] {
			y.fail(y.where(path), capital(what)+" lacks “"+f.key+"”.", "")
		}
	}
}

// where is the place of a mapping: its own, or the beginning of the YAML.
func (y *yamlReader) where(path string) markdown.Span {
	if s, ok := y.at[path]; ok {
		return s
	}
	return y.at[""]
}

// span finds where a node stands in the file.
func (y *yamlReader) span(n *yaml.Node) markdown.Span {
	off := y.offset(n.Line, n.Column)
	rest := y.src[off : off+lineLength(y.src, off)]
	length := len(rest)
	switch {
	case n.Kind != yaml.ScalarNode:
	case n.Style == yaml.DoubleQuotedStyle:
		length = quotedLength(rest, '"', '\\')
	case n.Style == yaml.SingleQuotedStyle:
		length = quotedLength(rest, '\'', 0)
	case strings.HasPrefix(string(rest), n.Value):
		length = len(n.Value)
	}
	return markdown.Span{Off: off, Len: length}
}

// quotedLength is the length of a quoted text with its quotes, or of the whole
// line when the text runs on.
func quotedLength(line []byte, quote, escape byte) int {
	for i := 1; i < len(line); i++ {
		switch {
		case escape != 0 && line[i] == escape:
			i++
		case line[i] != quote:
		case escape == 0 && i+1 < len(line) && line[i+1] == quote:
			i++
		default:
			return i + 1
		}
	}
	return len(line)
}

// text takes a scalar as the text it was written as.
func text(to *string) reader {
	return func(y *yamlReader, path string, n *yaml.Node) {
		switch {
		case n.Kind != yaml.ScalarNode:
			y.fail(y.span(n), "“"+last(path)+"” is one text, and a list or a group of keys stands here.", "")
		case strings.TrimSpace(n.Value) == "" || n.Tag == "!!null":
			y.fail(y.span(n), "“"+last(path)+"” has no value. Write one, or leave the key out.", "")
		default:
			*to = strings.TrimSpace(n.Value)
		}
	}
}

// oneOf takes a word of a list.
func oneOf(to *string, words ...string) reader {
	return func(y *yamlReader, path string, n *yaml.Node) {
		text(to)(y, path, n)
		if *to != "" && !slices.Contains(words, *to) {
			y.fail(y.span(n), "“"+last(path)+"” is "+orList(words)+", not “"+*to+"”.", formula.Nearest(*to, words))
		}
	}
}

// texts takes a list of texts.
func texts(to *[]string) reader {
	return items(func(y *yamlReader, path string, n *yaml.Node) {
		var s string
		if text(&s)(y, path, n); s != "" {
			y.at[path] = y.span(n)
			*to = append(*to, s)
		} else {
			*to = append(*to, "")
		}
	})
}

// words takes a list in which each text is one of some words.
func words(to *[]string, allowed ...string) reader {
	return func(y *yamlReader, path string, n *yaml.Node) {
		texts(to)(y, path, n)
		for i, w := range *to {
			if w != "" && !slices.Contains(allowed, w) {
				s := y.at[path+"."+strconv.Itoa(i)]
				y.fail(s, "“"+w+"” is not one of "+orList(allowed)+".", formula.Nearest(w, allowed))
			}
		}
	}
}

// oneOrMore takes one of some words, or a list of them.
func oneOrMore(to *[]string, allowed ...string) reader {
	return func(y *yamlReader, path string, n *yaml.Node) {
		if n.Kind == yaml.SequenceNode {
			words(to, allowed...)(y, path, n)
			return
		}
		var word string
		if oneOf(&word, allowed...)(y, path, n); word != "" {
			*to = []string{word}
		}
	}
}

// items reads the items of a list, each with its own path.
func items(each reader) reader {
	return func(y *yamlReader, path string, n *yaml.Node) {
		if n.Kind != yaml.SequenceNode {
			suggest := ""
			if n.Kind == yaml.ScalarNode && n.Value != "" {
				suggest = "[" + n.Value + "]"
			}
			y.fail(y.span(n), "“"+last(path)+"” is a list: its items stand in brackets.", suggest)
			return
		}
		for i, item := range n.Content {
			at := join(path, strconv.Itoa(i))
			y.at[at] = y.span(item)
			each(y, at, item)
		}
	}
}

// group reads a mapping inside another one.
func group(what string, fields func() []field) reader {
	return func(y *yamlReader, path string, n *yaml.Node) { y.mapping(path, what, n, fields()) }
}

// pairs reads a mapping with free keys and texts, in its order.
func pairs(what string, each func(key, value string)) reader {
	return func(y *yamlReader, path string, n *yaml.Node) {
		keyed(y, path, what, n, func(key, at string, value *yaml.Node) {
			var s string
			text(&s)(y, at, value)
			each(key, s)
		})
	}
}

// keyed reads a mapping with free keys whose values are read by each.
func keyed(y *yamlReader, path, what string, n *yaml.Node, each func(key, at string, value *yaml.Node)) {
	if n.Kind != yaml.MappingNode {
		y.fail(y.span(n), "“"+last(path)+"” is "+what+".", "")
		return
	}
	seen := map[string]bool{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		if seen[key.Value] {
			y.fail(y.span(key), "“"+key.Value+"” stands here twice.", "")
			continue
		}
		seen[key.Value] = true
		at := join(path, key.Value)
		y.at[at] = y.span(value)
		y.at[at+"#key"] = y.span(key)
		each(key.Value, at, value)
	}
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func last(path string) string { return path[strings.LastIndexByte(path, '.')+1:] }

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

func keyList(fields []field) string {
	names := make([]string, len(fields))
	for i, f := range fields {
		names[i] = f.key
	}
	return strings.Join(names, ", ")
}

func nearestKey(key string, fields []field) string {
	return formula.Nearest(strings.ToLower(key), strings.Split(keyList(fields), ", "))
}

func orList(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}
