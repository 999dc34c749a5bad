// Package onefile makes the handbook into one HTML document that opens from a
// phone's file manager or a mail: all pages, drawings and scripts in it.
//
// A page stands in it twice. A plain form of it, without what needs a script,
// stands in the document itself, inside noscript: without scripts the style sheet
// shows the one that the address names. Whole, as in the folder edition, it
// stands in a packed block, from which the scripts take it. Each drawing stands
// once, for both. The same book gives the same bytes.
package onefile

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"html"
	"strings"

	"columnbowl/build/bindery"
	"columnbowl/build/leaf"
)

// Parts are what the document is made of beside the pages.
type Parts struct {
	Script, Style []byte // bundled
	Font          []byte // of the formulas, woff2
	FontLicence   []byte
	Wasm          []byte // the engine
}

// Share is how much of the document something takes, in bytes.
type Share struct {
	Name  string
	Bytes int
}

// Budget is what the document may weigh: it has to go through a mail. It was 6 MB while the book and the
// engine were smaller; in 6 MB the plain pages could tell no worked example.
const Budget = 7_000_000

// document is what is being made.
type document struct {
	loose  *bindery.Loose
	known  map[string]bool
	sprite *sprite

	examples int // how many worked examples the plain form of a page tells
}

// Make makes the document, and says what takes how much of it. The plain form
// of a page tells as many of its worked examples as the budget has room for.
func Make(l *bindery.Loose, p Parts) (data []byte, shares []Share, examples int, err error) {
	for examples = 2; ; examples-- {
		d := &document{loose: l, known: map[string]bool{}, examples: examples}
		if data, shares, err = d.make(p); err != nil || len(data) <= Budget || examples == 0 {
			return data, shares, examples, err
		}
	}
}

func (d *document) make(p Parts) ([]byte, []Share, error) {
	l := d.loose
	for _, page := range l.Leaves {
		d.known[page.Path] = true
	}
	var err error
	if d.sprite, err = newSprite(l.Files); err != nil {
		return nil, nil, err
	}
	frame, err := d.frame()
	if err != nil {
		return nil, nil, err
	}
	var store, stills []byte
	for i := range l.Leaves {
		page := &l.Leaves[i]
		if i > 0 {
			store = append(store, 1)
		}
		store = append(append(store, anchor(page.Path)...), 2)
		store = leaf.AppendHTML(store, d.stored(page))
	}
	forms := d.stills()
	var plain []byte // what the scripts read in the noscript elements, one after the other
	for i := range l.Leaves {
		page := short([]byte("<div class=still>"), forms[i], open, false)
		page = append(page, "</div>"...)
		stills = append(append(append(stills, "<noscript>"...), page...), "</noscript>\n"...)
		plain = append(plain, page...)
	}
	if bytes.Contains(plain, []byte("</noscript")) {
		return nil, nil, fmt.Errorf("a page of the document would end too early: it holds the end of a noscript element")
	}
	blocks, shares, err := d.blocks(echo(plain, store), p.Wasm)
	if err != nil {
		return nil, nil, err
	}
	style := bytes.ReplaceAll(p.Style, []byte("url(columnbowl-math.woff2)"), []byte("url(data:font/woff2;base64,"+base64.StdEncoding.EncodeToString(p.Font)+")"))
	drawings := d.sprite.write(nil)
	var b bytes.Buffer
	d.head(&b, style, p.Script)
	b.WriteString(frame)
	b.WriteString("<div class=\"pagestart\" hidden></div>\n")
	b.Write(drawings)
	b.Write(stills)
	b.Write(blocks)
	fmt.Fprintf(&b, "<!--\n%s\n-->\n</body>\n</html>\n", strings.ReplaceAll(string(p.FontLicence), "--", "- -"))
	shares = append([]Share{{"text", len(stills)}, {"drawings", len(drawings)}, {"style, font", len(style)}, {"script", len(p.Script)}}, shares...)
	return b.Bytes(), shares, nil
}

// head writes the beginning of the document. Its policy lets in the one script
// and the one style sheet that stand in it, known by their sums, and nothing
// from anywhere else.
func (d *document) head(b *bytes.Buffer, style, script []byte) {
	policy := fmt.Sprintf("default-src 'none'; script-src '%s' 'wasm-unsafe-eval'; style-src '%s'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'", sum(script), sum(style))
	l := d.loose
	fmt.Fprintf(b, `<!doctype html>
<html lang="en" data-root="#" data-book="%s" data-units="%s" data-theme="auto" data-page="index">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="%s">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>%s</title>
<style>%s</style>
<script>%s</script>
</head>
<body>
`, html.EscapeString(l.BookID), html.EscapeString(l.Units), html.EscapeString(policy), html.EscapeString(l.Title), style, script)
}

func sum(data []byte) string {
	s := sha256.Sum256(data)
	return "sha256-" + base64.StdEncoding.EncodeToString(s[:])
}

// frame is the masthead and the rail, which all pages share.
func (d *document) frame() (string, error) {
	top, err := leaf.Parse(strings.TrimSpace(d.loose.Frame))
	if err != nil {
		return "", fmt.Errorf("the frame of the document: %w", err)
	}
	top.Change(func(n *leaf.Node) []*leaf.Node {
		if n.Tag == "a" {
			if n.Is("skip") {
				return []*leaf.Node{n}
			}
			if to, ok := d.inside(n.Get("href"), "index.html"); ok {
				n.Set("href", to)
			}
			n.Del("aria-current")
		}
		return []*leaf.Node{n}
	})
	return string(leaf.AppendHTML(nil, top)), nil
}

// blocks are the packed parts of the document, and what each takes.
func (d *document) blocks(store, wasm []byte) ([]byte, []Share, error) {
	files := append([]bindery.File{{Path: "pages", Data: store}, {Path: "engine", Data: wasm}}, d.loose.Packs...)
	var b []byte
	var shares []Share
	for _, f := range files {
		if len(f.Data) == 0 {
			return nil, nil, fmt.Errorf("the part “%s” of the document would be empty", f.Path)
		}
		zipped, err := zip(f.Data)
		if err != nil {
			return nil, nil, err
		}
		before := len(b)
		b = fmt.Appendf(b, `<script type="text/plain" id="packed:%s">`, f.Path)
		b = append(dense(b, zipped), "</script>\n"...)
		shares = append(shares, Share{f.Path, len(b) - before})
	}
	return b, shares, nil
}

// zip packs with an empty header: same content, same bytes.
func zip(data []byte) ([]byte, error) {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(data); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// unfit are values of seven bits that cannot stand for themselves in a document:
// no text may hold the first, a parser makes the second another, and the third
// may begin a tag. They are written as the letters from U+00A1 on.
var unfit = []byte{0, '\r', '<'}

// dense writes bytes as text: their number, a space, then seven bits in each
// sign. That is a twelfth less than four signs for three bytes.
func dense(b, data []byte) []byte {
	b = fmt.Appendf(b, "%d ", len(data))
	bits, have := 0, 0
	put := func(v byte) {
		if at := bytes.IndexByte(unfit, v); at >= 0 {
			b = append(b, 0xC2, 0xA1+byte(at))
			return
		}
		b = append(b, v)
	}
	for _, c := range data {
		bits, have = bits<<8|int(c), have+8
		for have >= 7 {
			have -= 7
			put(byte(bits >> have & 127))
		}
		bits &= 1<<have - 1
	}
	if have > 0 {
		put(byte(bits << (7 - have) & 127))
	}
	return b
}
