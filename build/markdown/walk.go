package markdown

import (
	"bytes"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"

	"columnbowl/calcwasm/formula"
)

// linkAttribute keeps the Link of a node of the tree, for the renderer.
const linkAttribute = "columnbowl-link"

// walk collects links and headings, tells what a page must not hold, and cuts
// the page into its top-level pieces.
func (r *reading) walk() {
	last := 0 // where the last text was seen: the place of nodes that know none
	_ = ast.Walk(r.doc.root, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		if p := n.Pos(); p >= 0 {
			last = p
		}
		r.visit(n, last)
		return ast.WalkContinue, nil
	})
	for n := r.doc.root.FirstChild(); n != nil; n = n.NextSibling() {
		r.piece(n)
	}
}

func (r *reading) visit(n ast.Node, at int) {
	switch n := n.(type) {
	case *ast.Heading:
		r.heading(n, at)
	case *ast.Link:
		r.link(n, at)
	case *ast.AutoLink:
		r.fail(at, len(n.Label(r.doc.text)), "The handbook has no links out of itself: it is read without a network. Name the source in words.", "")
	case *ast.Image:
		r.fail(at, 1, "A page takes no pictures of its own: drawings are made from the model of the pump.", "")
	case *ast.HTMLBlock:
		r.html(n.Lines().Len() > 0, at, firstLine(string(r.doc.text[min(at, len(r.doc.text)):])))
	case *ast.RawHTML:
		r.html(true, at, string(n.Segments.Value(r.doc.text)))
	case *east.TableCell:
		alignByClass(n)
	}
}

func (r *reading) html(some bool, at int, what string) {
	if some {
		r.fail(at, len(what), "HTML has no place in the handbook's text: use Markdown. A < that is meant as itself is written \\<.", "")
	}
}

func alignByClass(n *east.TableCell) {
	switch n.Alignment {
	case east.AlignRight:
		n.SetAttributeString("class", []byte("right"))
	case east.AlignCenter:
		n.SetAttributeString("class", []byte("centre"))
	}
}

func (r *reading) heading(n *ast.Heading, at int) {
	h := &Heading{Level: n.Level, Text: plain(n, r.doc.text), Span: Span{at, len(firstLine(string(r.doc.text[min(at, len(r.doc.text)):])))}}
	if id, ok := n.AttributeString("id"); ok {
		if b, ok := id.([]byte); ok {
			h.ID = string(b)
		}
	}
	if n.Level == 1 {
		r.fail(h.Off, h.Len, "The page's name stands in its title block. Headings of the text begin with ##.", "#"+string(r.doc.text[h.Off:h.Off+h.Len]))
	}
	if h.Text == "" {
		r.fail(h.Off, max(h.Len, 1), "This heading has no words.", "")
	}
	r.doc.Headings = append(r.doc.Headings, h)
}

var schemes = []Scheme{ToTerm, ToPart, ToChapter, ToAsked, ToTrain, ToPair, ToGuide, ToBuild, ToTable, ToPage}

func (r *reading) link(n *ast.Link, at int) {
	goal := string(n.Destination)
	l := &Link{Text: plain(n, r.doc.text), Title: string(n.Title), Span: r.goalSpan(at, goal)}
	scheme, rest, found := strings.Cut(goal, ":")
	if strings.HasPrefix(goal, "#") {
		l.Fragment = goal[1:]
	} else {
		l.Scheme = Scheme(scheme)
		l.ID, l.Fragment, _ = strings.Cut(rest, "#")
	}
	switch {
	case l.Scheme == Here && l.Fragment != "":
	case !found || !known(l.Scheme):
		r.fail(l.Off, l.Len, "This link leads nowhere: a link goes to term:…, part:…, chapter:…, question:…, exercise:…, pair:…, build:…, table:…, guide:… or page:…, or to a heading of its page (#…).", goalNear(scheme, rest, found))
		return
	case l.ID == "":
		r.fail(l.Off, l.Len, "This link does not say which "+scheme+" it goes to.", "")
		return
	}
	if l.Text == "" {
		r.fail(l.Off, l.Len, "This link has no words.", "")
	}
	n.SetAttributeString(linkAttribute, l)
	r.doc.Links = append(r.doc.Links, l)
}

func known(s Scheme) bool { return slices.Contains(schemes, s) }

func goalNear(scheme, rest string, found bool) string {
	if !found {
		return ""
	}
	names := make([]string, len(schemes))
	for i, s := range schemes {
		names[i] = string(s)
	}
	if near := formula.Nearest(scheme, names); near != "" {
		return near + ":" + rest
	}
	return ""
}

// goalSpan finds a link's goal behind its words. A link by reference has its
// goal elsewhere: then its beginning is the place.
func (r *reading) goalSpan(at int, goal string) Span {
	src := r.doc.text[min(at, len(r.doc.text)):]
	if i := bytes.Index(src, []byte("]("+goal)); i >= 0 && goal != "" {
		return Span{at + i + 2, len(goal)}
	}
	return Span{at, 1}
}

func (r *reading) piece(n ast.Node) {
	p := Piece{Span: Span{Off: max(n.Pos(), 0), Len: 1}}
	switch n := n.(type) {
	case *ast.Paragraph:
		p.Kind = Paragraph
	case *ast.Heading:
		p.Kind = HeadingPart
		for _, h := range r.doc.Headings {
			if h.Off == p.Off {
				p.Head = h
			}
		}
	case *blockNode:
		p.Kind, p.Block, p.Span = BlockPart, n.block, n.block.Span
	}
	r.doc.Pieces = append(r.doc.Pieces, p)
}

// plain is the text of a node without its marks, line ends as spaces.
func plain(n ast.Node, src []byte) string {
	var b strings.Builder
	_ = ast.Walk(n, func(c ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch c := c.(type) {
		case *ast.Text:
			b.Write(unescaped(c.Value(src)))
			if c.SoftLineBreak() || c.HardLineBreak() {
				b.WriteByte(' ')
			}
		case *ast.String:
			b.Write(c.Value)
		}
		return ast.WalkContinue, nil
	})
	return strings.Join(strings.Fields(b.String()), " ")
}
