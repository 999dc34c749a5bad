package markdown

import (
	"bufio"
	"bytes"
	"html"
	"io"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"
)

// Hooks supply what a page cannot know: the HTML of its blocks, and where its
// links lead. Both are called in the order of the text, on the caller's
// goroutine. A nil hook leaves blocks out, or links as plain words.
type Hooks struct {
	// Block returns the HTML of a block; it must be well formed. Empty leaves
	// the block out.
	Block func(b *Block) (string, error)
	// Link returns the anchor for a link. An empty Href leaves plain words.
	Link func(l *Link) Anchor
}

// Anchor is what a link becomes. All fields are plain text.
type Anchor struct{ Href, Class, Title string }

// Render writes the whole page as HTML.
func (d *Doc) Render(w io.Writer, hooks Hooks) error {
	return d.RenderPieces(w, hooks, 0, len(d.Pieces))
}

// RenderPieces writes the pieces from one place in Doc.Pieces up to, and
// without, another: the definition is RenderPieces(w, hooks, 0, doc.Lead()).
func (d *Doc) RenderPieces(w io.Writer, hooks Hooks, from, to int) error {
	out := &hooked{Writer: bufio.NewWriter(w), hooks: hooks}
	i := 0
	for n := d.root.FirstChild(); n != nil && i < to; n = n.NextSibling() {
		if i >= from {
			if err := engine.Renderer().Render(out, d.text, n); err != nil {
				return err
			}
		}
		i++
	}
	return out.Flush()
}

// PlainText is the words of one piece, without marks: for first sentences.
func (d *Doc) PlainText(piece int) string {
	n := d.root.FirstChild()
	for ; n != nil && piece > 0; piece-- {
		n = n.NextSibling()
	}
	if n == nil {
		return ""
	}
	return plain(n, d.text)
}

// hooked carries the hooks of one rendering to the node renderers. The library
// hands them the very writer it was given, if that is a BufWriter; so one
// library set-up serves all pages, on any number of goroutines.
type hooked struct {
	*bufio.Writer
	hooks Hooks
}

var _ util.BufWriter = (*hooked)(nil)

// pageRenderer writes blocks and links through the hooks.
type pageRenderer struct{}

var _ renderer.NodeRenderer = pageRenderer{}

func (pageRenderer) RegisterFuncs(reg renderer.NodeRendererFuncRegisterer) {
	reg.Register(kindBlock, renderBlock)
	reg.Register(ast.KindLink, renderLink)
}

func renderBlock(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	out, ok := w.(*hooked)
	if !entering || !ok || out.hooks.Block == nil {
		return ast.WalkSkipChildren, nil
	}
	text, err := out.hooks.Block(n.(*blockNode).block)
	if err != nil {
		return ast.WalkStop, err
	}
	_, err = out.WriteString(text)
	return ast.WalkSkipChildren, err
}

func renderLink(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	out, ok := w.(*hooked)
	value, _ := n.AttributeString(linkAttribute)
	l, isLink := value.(*Link)
	if !ok || !isLink || out.hooks.Link == nil {
		return ast.WalkContinue, nil
	}
	a := out.hooks.Link(l)
	if a.Href == "" {
		return ast.WalkContinue, nil
	}
	if !entering {
		_, err := out.WriteString("</a>")
		return ast.WalkContinue, err
	}
	_, err := out.WriteString(a.open())
	return ast.WalkContinue, err
}

func (a Anchor) open() string {
	s := `<a href="` + html.EscapeString(a.Href) + `"`
	if a.Class != "" {
		s += ` class="` + html.EscapeString(a.Class) + `"`
	}
	if a.Title != "" {
		s += ` title="` + html.EscapeString(a.Title) + `"`
	}
	return s + ">"
}

// unescaped takes the backslashes off and resolves character references.
func unescaped(value []byte) []byte {
	if !bytes.ContainsAny(value, `\&`) {
		return value
	}
	return util.UnescapePunctuations(util.ResolveEntityNames(util.ResolveNumericReferences(value)))
}
