package markdown_test

import (
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"columnbowl/build/markdown"
)

const title = "---\nname: Lift\n---\n"

func parsed(t *testing.T, body string) *markdown.Doc {
	t.Helper()
	doc, found := markdown.Parse("a.md", []byte(title+body))
	for _, d := range found {
		t.Errorf("%s (at %d)", d.Message, d.Off)
	}
	return doc
}

// hooks show what they are called with.
var hooks = markdown.Hooks{
	Block: func(b *markdown.Block) (string, error) { return "{" + string(b.Kind) + " " + b.Head + "}\n", nil },
	Link: func(l *markdown.Link) markdown.Anchor {
		return markdown.Anchor{Href: "../" + string(l.Scheme) + "s/" + l.ID + ".html", Class: string(l.Scheme), Title: l.Text + " <\">"}
	},
}

func html(t *testing.T, doc *markdown.Doc, from, to int) string {
	t.Helper()
	var b strings.Builder
	if err := doc.RenderPieces(&b, hooks, from, to); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func expect(t *testing.T, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestRender(t *testing.T) {
	doc := parsed(t, "The *lift* [is](term:lift).\n\nMore.\n\n```formula when a = b\nlift = x\n```\n\n## In use\n\n- one\n\n  ```caution deep\n  when lift > 1 ft\n  ```\n\n```text\n<as it is>\n```\n")
	expect(t, html(t, doc, 0, doc.Lead()), "<p>The <em>lift</em> <a href=\"../terms/lift.html\" class=\"term\" title=\"is &lt;&#34;&gt;\">is</a>.</p>\n<p>More.</p>\n")
	expect(t, html(t, doc, doc.Lead(), len(doc.Pieces)), "{formula when a = b}\n<h2 id=\"in-use\">In use</h2>\n<ul>\n<li>\n<p>one</p>\n{caution deep}\n</li>\n</ul>\n<pre><code class=\"language-text\">&lt;as it is&gt;\n</code></pre>\n")
	if len(doc.Blocks) != 2 || doc.Blocks[1].Body != "when lift > 1 ft\n" {
		t.Errorf("the blocks are %+v", doc.Blocks)
	}
	expect(t, doc.PlainText(0), "The lift is.")
	expect(t, doc.Headings[0].Text, "In use")
}

// The pages forbid style attributes: cells are aligned by class.
func TestTable(t *testing.T) {
	doc := parsed(t, "| a | b | c |\n|---|--:|:-:|\n| 1 | 2 | [x](part:y) |\n")
	out := html(t, doc, 0, 1)
	if strings.Contains(out, "style") || !strings.Contains(out, `<td class="right">2</td>`) || !strings.Contains(out, `<th class="centre">c</th>`) {
		t.Error(out)
	}
	if len(doc.Links) != 1 || doc.Links[0].ID != "y" {
		t.Errorf("links: %+v", doc.Links)
	}
}

func TestLinkWithoutHook(t *testing.T) {
	doc := parsed(t, "[lift](term:lift) and [there](#here)\n\n## Here\n")
	var b strings.Builder
	if err := doc.RenderPieces(&b, markdown.Hooks{}, 0, 1); err != nil {
		t.Fatal(err)
	}
	expect(t, b.String(), "<p>lift and there</p>\n")
}

// Every kind of place that a block can stand in keeps its offsets.
func TestOffsets(t *testing.T) {
	for _, src := range []string{
		"```worked One  two\ngiven a\n  expect b\n```\n",
		"> ```worked x\n> given a\n>   expect b\n> ```\n",
		"- item\n\n  ```worked x\n  given a\n\n    expect b\n  ```\n",
		"1. > - ```worked x\n   >   given a\n   >   ```\n",
		"  ```worked x\n  given a\n expect b\n  ```\n",
		"```worked x\r\ngiven a\r\nexpect b\r\n```\r\n",
		"- a\n\n\t```worked x\n\tgiven a\n\t\texpect b\n\t```\n",
		"~~~worked “é”\ngiven “é”\n~~~\n",
	} {
		doc := parsed(t, src)
		if len(doc.Blocks) != 1 {
			t.Errorf("%q has %d blocks", src, len(doc.Blocks))
			continue
		}
		sameBytes(t, doc)
	}
}

// sameBytes sees that each byte of heads and bodies is the byte of the file that
// At names, but for line ends and for spaces that stand for a part of a tab.
func sameBytes(t *testing.T, doc *markdown.Doc) {
	t.Helper()
	for _, b := range doc.Blocks {
		for i := range len(b.Head) {
			if at := b.At(true, i); doc.Source[at] != b.Head[i] {
				t.Errorf("%q: head byte %d is %q, and %q in the file", doc.Source, i, b.Head[i], doc.Source[at])
			}
		}
		for i := range len(strings.TrimRight(b.Body, "\r\n")) {
			at := b.At(false, i)
			if c := b.Body[i]; doc.Source[at] != c && c != '\n' && c != ' ' && c != '\t' {
				t.Errorf("%q: body byte %d is %q, and %q in the file", doc.Source, i, c, doc.Source[at])
			}
		}
	}
	for _, l := range doc.Links {
		if l.Off < 0 || l.Off+l.Len > len(doc.Source) {
			t.Errorf("%q: the link to %s stands at %d", doc.Source, l.ID, l.Off)
		}
	}
}

func TestNotUTF8(t *testing.T) {
	_, found := markdown.Parse("a.md", []byte(title+"Caf\xe9.\n"))
	if len(found) != 1 || found[0].Off != len(title)+3 {
		t.Errorf("%+v", found)
	}
}

func TestByteOrderMark(t *testing.T) {
	doc, found := markdown.Parse("a.md", []byte("\ufeff"+title+"Text.\n"))
	if len(found) != 0 || string(doc.Source[doc.Title.Off:doc.Title.Off+doc.Title.Len]) != "name: Lift\n" {
		t.Errorf("%+v %+v", doc.Title, found)
	}
}

// Pages are rendered side by side: each must see its own hooks only.
func TestSideBySide(t *testing.T) {
	doc := parsed(t, strings.Repeat("See [x](term:lift).\n\n```caution a\nwhen\n```\n\n", 20))
	want := html(t, doc, 0, len(doc.Pieces))
	var wg sync.WaitGroup
	for range 8 {
		wg.Add(1)
		go func() {
			defer wg.Done()
			var b strings.Builder
			if err := doc.Render(&b, hooks); err != nil || b.String() != want {
				t.Errorf("another text came out (%v)", err)
			}
		}()
	}
	wg.Wait()
}

// FuzzParse: whatever an author types, a page is read without a crash, places
// stay inside the file, and it can be rendered.
func FuzzParse(f *testing.F) {
	names, err := filepath.Glob("../../testdata/proof/*.txtar")
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range names {
		src, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		for _, page := range strings.Split(string(src), "\n-- ") {
			_, page, _ = strings.Cut(page, "\n")
			f.Add(page)
		}
	}
	f.Fuzz(func(t *testing.T, src string) {
		doc, found := markdown.Parse("a.md", []byte(src))
		for _, d := range found {
			if d.Off < 0 || d.Off > len(src) {
				t.Errorf("“%s” at %d of %d", d.Message, d.Off, len(src))
			}
		}
		sameBytes(t, doc)
		var b strings.Builder
		if err := doc.Render(&b, hooks); err != nil {
			t.Error(err)
		}
	})
}
