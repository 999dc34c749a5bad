package markdown

import (
	"bytes"
	"unicode/utf8"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"columnbowl/build/report"
)

// engine is the Markdown library, set up once. It keeps no state of a page, so
// pages can be read and rendered side by side. Cells of tables are aligned by
// class: the pages forbid style attributes.
var engine = goldmark.New(
	goldmark.WithExtensions(extension.NewTable(extension.WithTableCellAlignMethod(extension.TableCellAlignNone))),
	goldmark.WithParserOptions(
		parser.WithAutoHeadingID(),
		parser.WithASTTransformers(util.Prioritized(fences{}, 100)),
	),
	goldmark.WithRendererOptions(renderer.WithNodeRenderers(util.Prioritized(pageRenderer{}, 100))),
)

// reading is what is collected while one page is read.
type reading struct {
	doc   *Doc
	found report.List
}

var readingKey = parser.NewContextKey()

// Parse reads a page. The Doc is complete as far as the page can be read, also
// when there are diagnostics.
func Parse(file string, source []byte) (*Doc, report.List) {
	r := &reading{doc: &Doc{File: file, Source: source, text: source}}
	if at := badUTF8(source); at >= 0 {
		r.fail(at, 1, "This byte is not UTF-8 text. Save the file as UTF-8.", "")
		r.doc.text = bytes.ToValidUTF8(source, nil)
		r.doc.root = ast.NewDocument()
		return r.doc, r.found
	}
	r.titleBlock()
	pc := parser.NewContext()
	pc.Set(readingKey, r)
	r.doc.root = engine.Parser().Parse(text.NewReader(r.doc.text), parser.WithContext(pc))
	r.walk()
	return r.doc, r.found
}

func (r *reading) fail(off, length int, message, suggest string, notes ...string) {
	r.found.Add(r.doc.File, off, length, message, suggest, notes...)
}

func badUTF8(src []byte) int {
	if utf8.Valid(src) {
		return -1
	}
	for i := 0; i < len(src); {
		c, n := utf8.DecodeRune(src[i:])
		if c == utf8.RuneError && n == 1 {
			return i
		}
		i += n
	}
	return -1
}

// titleBlock finds the YAML between two --- lines at the top and blanks it for
// the Markdown library, so that all offsets stay offsets of the file.
func (r *reading) titleBlock() {
	src := r.doc.Source
	start := 0
	if bytes.HasPrefix(src, []byte("\ufeff")) { // a byte order mark that some editors write
		start = len("\ufeff")
	}
	first, next := lineAt(src, start)
	if !isRule(first) {
		r.fail(start, len(bytes.TrimRight(first, "\r")), "The page does not begin with a title block: a line ---, then name: and so on, then another line ---.", "")
		return
	}
	for at := next; at < len(src); {
		line, after := lineAt(src, at)
		if isRule(line) {
			r.doc.Title = Span{next, at - next}
			r.doc.text = blank(src, after)
			return
		}
		at = after
	}
	r.fail(start, 3, "The title block that begins here has no closing line ---.", "")
	r.doc.text = blank(src, len(src))
}

func isRule(line []byte) bool { return string(bytes.TrimRight(line, " \t\r")) == "---" }

// lineAt returns the line that starts at an offset and where the next one starts.
func lineAt(src []byte, at int) (line []byte, next int) {
	if i := bytes.IndexByte(src[at:], '\n'); i >= 0 {
		return src[at : at+i], at + i + 1
	}
	return src[at:], len(src)
}

// blank copies a text with spaces in place of all but the line ends before a place.
func blank(src []byte, before int) []byte {
	out := bytes.Clone(src)
	for i := range out[:before] {
		if out[i] != '\n' {
			out[i] = ' '
		}
	}
	return out
}
