package onefile

import (
	"bytes"
	"cmp"
	"encoding/base64"
	"fmt"
	"html"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"columnbowl/build/bindery"
	"columnbowl/build/leaf"
)

// offPaper are pages that paper has no use for: lists that the contents and the
// index replace, and what lives by scripts alone.
var offPaper = []string{"index.html", "desk.html", "terms/index.html", "parts/index.html", "questions/index.html", "pairs/index.html", "glossary.html", "practice/index.html", "practice/cards.html", "practice/progress.html"}

// letters of the kinds of sheets: sheet T 14 is the fourteenth term.
var letters = map[string]string{"chapters": "", "builds": "B ", "places": "W ", "terms": "T ", "parts": "P ", "questions": "Q ", "practice": "E ",
	"choices": "C ", "faults": "F ", "pairs": "D ", "guides": "G ", "": "S "}

// sheet is a page on paper with its number. No browser can print the number of
// the page that something stands on, so contents and index lead to the numbers of
// the sheets, which run on in their order.
type sheet struct {
	leaf   *bindery.Leaf
	number string
	of     int // how many there are of its kind
}

// Paper makes the print edition: one document, to be printed or made a PDF of by
// a browser, with a title sheet, contents, every page as a sheet with its title
// block, and an index.
func Paper(l *bindery.Loose, p Parts) ([]byte, error) {
	d := &document{loose: l, known: map[string]bool{}, examples: 1 << 30}
	var err error
	if d.sprite, err = newSprite(l.Files); err != nil {
		return nil, err
	}
	sheets := d.sheets()
	var body []byte
	for i := range sheets {
		s := &still{doc: d, file: sheets[i].leaf.Path, whole: true}
		main := s.page(sheets[i].leaf)
		d.title(main, &sheets[i])
		body = append(leaf.AppendHTML(body, main), '\n')
	}
	style := bytes.ReplaceAll(p.Style, []byte("url(columnbowl-math.woff2)"), []byte("url(data:font/woff2;base64,"+base64.StdEncoding.EncodeToString(p.Font)+")"))
	var b bytes.Buffer
	fmt.Fprintf(&b, `<!doctype html>
<html lang="en" data-units="%s" data-theme="light">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src '%s'; font-src data:; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>%s</title>
<style>%s</style>
</head>
<body class="bare">
`, html.EscapeString(l.Units), sum(style), html.EscapeString(l.Title), style)
	cover := d.sprite.drawn("oil-lubricated-whole")
	b.Write(d.sprite.write(nil))
	d.titleSheet(&b, cover)
	d.contents(&b, sheets)
	b.Write(body)
	d.index(&b, sheets)
	fmt.Fprintf(&b, "<!--\n%s\n-->\n</body>\n</html>\n", strings.ReplaceAll(string(p.FontLicence), "--", "- -"))
	return b.Bytes(), nil
}

// sheets numbers the pages that go on paper, in the order of reading.
func (d *document) sheets() []sheet {
	var list []sheet
	count := map[string]int{}
	for i := range d.loose.Leaves {
		l := &d.loose.Leaves[i]
		if slices.Contains(offPaper, l.Path) {
			continue
		}
		d.known[l.Path] = true
		count[l.Kind()]++
		list = append(list, sheet{leaf: l, number: fmt.Sprintf("%s%d", letters[l.Kind()], count[l.Kind()])})
	}
	for i := range list {
		list[i].of = count[list[i].leaf.Kind()]
	}
	return list
}

// title puts the title block at the foot of a sheet, and its number at the head.
func (d *document) title(main *leaf.Node, s *sheet) {
	words := d.loose.Words
	head := leaf.Element("p", "paperno", leaf.Text(html.EscapeString(s.number)))
	main.Kids = append([]*leaf.Node{head}, main.Kids...)
	entry := func(key, value, class string) string {
		if value == "" {
			return ""
		}
		return fmt.Sprintf(`<div%s><dt>%s</dt><dd>%s</dd></div>`, class, html.EscapeString(words[key]), value)
	}
	text := entry("block.title", s.leaf.Title, ` class="wide"`) + entry("block.scope", html.EscapeString(d.loose.PlaceName(s.leaf.Place)), "") +
		entry("block.version", html.EscapeString(d.loose.Version), "") + entry("block.sheet", html.EscapeString(fmt.Sprintf("%s of %d", s.number, s.of)), "")
	caution := "<p>" + html.EscapeString(words["block.caution"]) + "</p>"
	foot := main.Find(func(n *leaf.Node) bool { return n.Tag == "footer" && n.Is("blockt") })
	if foot == nil {
		foot = leaf.Element("footer", "blockt")
		main.Kids = append(main.Kids, foot)
	}
	foot.Kids = append(append([]*leaf.Node{leaf.Text("<dl>" + text + "</dl>")}, foot.Kids...), leaf.Text(caution))
}

func (d *document) titleSheet(b *bytes.Buffer, cover *drawing) {
	l := d.loose
	fmt.Fprintf(b, `<section class="titlesheet"><div><h1>%s</h1><p class="long">%s</p><p>%s %s</p><p>%s</p><p>%s</p></div>`,
		html.EscapeString(l.Title), html.EscapeString(l.Long), html.EscapeString(l.Words["block.version"]), html.EscapeString(l.Version),
		html.EscapeString(l.Words["block.caution"]), html.EscapeString(l.Words["bound.demo"]))
	if cover != nil {
		b.Write(leaf.AppendHTML(nil, cover.use("", l.Title, "fig printed")))
	}
	b.WriteString("</section>\n")
}

// contents lists the sheets by kind.
func (d *document) contents(b *bytes.Buffer, sheets []sheet) {
	words := d.loose.Words
	names := map[string]string{"chapters": words["bound.chapters"], "builds": words["builds.title"], "places": words["rail"], "": words["bound.work"],
		"terms": words["nav.terms"], "parts": words["nav.parts"], "questions": words["nav.questions"], "practice": words["nav.practice"],
		"choices": words["bound.choices"], "faults": words["bound.faults"], "pairs": words["pairs.title"], "guides": words["bound.guides"]}
	fmt.Fprintf(b, `<nav class="paperlist" aria-label="%s"><h1>%s</h1>`+"\n", html.EscapeString(words["bound.contents"]), html.EscapeString(words["bound.contents"]))
	kind := "?"
	for _, s := range sheets {
		if k := s.leaf.Kind(); k != kind {
			if kind != "?" {
				b.WriteString("</ul>\n")
			}
			kind = k
			fmt.Fprintf(b, "<h2>%s</h2>\n<ul>\n", html.EscapeString(names[k]))
		}
		fmt.Fprintf(b, `<li><a href="#%s">%s</a> <b>%s</b></li>`+"\n", anchor(s.leaf.Path), s.leaf.Title, s.number)
	}
	b.WriteString("</ul></nav>\n")
}

// index lists what a reader may look for: the names of terms and parts, and the
// other names that people use.
func (d *document) index(b *bytes.Buffer, sheets []sheet) {
	type entry struct {
		name, see, href, number string
	}
	var list []entry
	for _, s := range sheets {
		if k := s.leaf.Kind(); k != "terms" && k != "parts" {
			continue
		}
		href := anchor(s.leaf.Path)
		list = append(list, entry{name: s.leaf.Title, href: href, number: s.number})
		also := s.leaf.Main.Find(func(n *leaf.Node) bool { return n.Is("also") })
		if also == nil {
			continue
		}
		for _, k := range also.Kids {
			if k.Tag == "b" {
				list = append(list, entry{name: k.Plain(), see: s.leaf.Title, href: href, number: s.number})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b entry) int {
		return cmp.Or(cmp.Compare(strings.ToLower(a.name), strings.ToLower(b.name)), cmp.Compare(a.number, b.number))
	})
	words := d.loose.Words
	fmt.Fprintf(b, `<nav class="paperlist" aria-label="%s"><h1>%s</h1>`+"\n<ul>\n", html.EscapeString(words["bound.index"]), html.EscapeString(words["bound.index"]))
	initial := rune(0)
	for _, e := range list {
		first, _ := utf8.DecodeRuneInString(e.name)
		if first = unicode.ToUpper(first); first != initial && unicode.IsLetter(first) {
			initial = first
			fmt.Fprintf(b, `<li class="initial">%c</li>`+"\n", first)
		}
		if e.see == "" {
			fmt.Fprintf(b, `<li><a href="#%s">%s</a> <b>%s</b></li>`+"\n", e.href, e.name, e.number)
		} else {
			fmt.Fprintf(b, `<li>%s: <a href="#%s">%s</a> <b>%s</b></li>`+"\n", e.name, e.href, e.see, e.number)
		}
	}
	b.WriteString("</ul></nav>\n")
}
