package markdown

import (
	"bytes"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"columnbowl/calcwasm/formula"
)

// blockNode stands in the tree for a fenced block of the notation.
type blockNode struct {
	ast.BaseBlock
	block *Block
}

var kindBlock = ast.NewNodeKind("NotationBlock")

func (n *blockNode) Kind() ast.NodeKind         { return kindBlock }
func (n *blockNode) IsRaw() bool                { return true }
func (n *blockNode) Dump(src []byte, level int) { ast.DumpHelper(n, src, level, nil, nil) }

var _ ast.Node = (*blockNode)(nil)

// fences turns fenced code blocks whose first word is of the notation into
// typed blocks. They are collected first and replaced after, because the tree
// must not change under a walk.
type fences struct{}

var _ parser.ASTTransformer = fences{}

func (fences) Transform(root *ast.Document, _ text.Reader, pc parser.Context) {
	r, ok := pc.Get(readingKey).(*reading)
	if !ok {
		return
	}
	var found []*ast.FencedCodeBlock
	_ = ast.Walk(root, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if f, ok := n.(*ast.FencedCodeBlock); ok && entering {
			found = append(found, f)
		}
		return ast.WalkContinue, nil
	})
	for _, f := range found {
		if b := r.fence(f); b != nil {
			n := &blockNode{block: b}
			n.SetPos(f.Pos())
			f.Parent().ReplaceChild(f.Parent(), f, n)
		}
	}
}

// fence makes the block of a fenced code block, nil if it is plain text or has
// no meaning.
func (r *reading) fence(f *ast.FencedCodeBlock) *Block {
	src := r.doc.text
	open := max(f.Pos(), 0)
	marks := fenceMarks(src, open)
	if f.Info == nil {
		r.fail(open, marks, "This fence does not say what it holds: write its kind behind it ("+kindList()+").", string(src[open:open+marks])+PlainText)
		r.doc.Torn = true
		return nil
	}
	info := f.Info.Segment
	word, rest, _ := strings.Cut(string(info.Value(src)), " ")
	if word == PlainText {
		return nil
	}
	if !slices.Contains(Kinds, Kind(word)) {
		r.fail(info.Start, len(word), "“"+word+"” is no kind of block. The kinds are "+kindList()+".", nearestKind(word))
		r.doc.Torn = true
		return nil
	}
	b := &Block{Index: len(r.doc.Blocks), Kind: Kind(word), Span: Span{info.Start, len(word)}}
	b.Head = strings.TrimSpace(rest)
	b.headOff = info.Start + len(word)
	if b.Head != "" {
		b.headOff += strings.Index(rest, b.Head) + 1
	}
	r.body(b, f)
	r.closed(b, f, open, marks)
	switch {
	case b.Unclosed:
	case b.Kind == Question:
		r.question(b)
	case b.Kind == Picture:
		r.picture(b)
	}
	r.doc.Blocks = append(r.doc.Blocks, b)
	return b
}

func (r *reading) body(b *Block, f *ast.FencedCodeBlock) {
	var body strings.Builder
	lines := f.Lines()
	for i := range lines.Len() {
		seg := lines.At(i)
		b.lines = append(b.lines, line{body: body.Len(), file: seg.Start, padding: seg.Padding})
		body.Write(seg.Value(r.doc.text))
	}
	b.Body = body.String()
}

// closed tells of a fence that is not closed: Markdown lets it run on to the
// end of the page, over everything that was meant to come after it.
func (r *reading) closed(b *Block, f *ast.FencedCodeBlock, open, marks int) {
	src := r.doc.text
	mark := string(src[open : open+marks])
	at := open
	if n := f.Lines().Len(); n > 0 {
		at = f.Lines().At(n-1).Stop - 1
	}
	_, next := lineAt(src, max(at, open))
	last, _ := lineAt(src, next)
	inside := strings.Contains("\n"+strings.ReplaceAll(b.Body, " ", ""), "\n"+mark)
	if inside || !strings.HasPrefix(string(bytes.TrimLeft(last, " \t>")), mark) {
		r.fail(open, marks, "The block that begins here has no closing line "+mark+".", "")
		b.Unclosed, r.doc.Torn = true, true
	}
}

func fenceMarks(src []byte, open int) int {
	n := open
	for n < len(src) && src[n] == src[open] {
		n++
	}
	return n - open
}

func kindList() string {
	names := make([]string, len(Kinds))
	for i, k := range Kinds {
		names[i] = string(k)
	}
	return strings.Join(names, ", ") + " and " + PlainText
}

func nearestKind(word string) string {
	names := []string{PlainText}
	for _, k := range Kinds {
		names = append(names, string(k))
	}
	return formula.Nearest(strings.ToLower(word), names)
}
