// Package index makes what the engine needs to find pages by words and to read
// sentences: the index of the search, and the vocabulary in which people say
// the facts of the book. Both are made when the book is bound, from the loaded
// book alone, and the same book gives the same bytes.
package index

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/search"
)

// kinds are the kinds of pages, in the order in which equals are listed, and
// where an edition has them. Sections stand on a chapter's page.
var kinds = []search.Kind{
	{Name: "term", Before: "terms/", After: ".html"},
	{Name: "part", Before: "parts/", After: ".html"},
	{Name: "chapter", Before: "chapters/", After: ".html"},
	{Name: "section", Before: "chapters/", After: ".html"},
	{Name: "question", Before: "questions/", After: ".html", Loose: true},
	{Name: "place", Before: "places/", After: ".html"},
	{Name: "pair", Before: "pairs/", After: ".html", Loose: true},
	{Name: book.ChoicesFolder, Before: book.ChoicesFolder + "/", After: ".html", Loose: true},
	{Name: book.FaultsFolder, Before: book.FaultsFolder + "/", After: ".html", Loose: true},
	{Name: "guide", Before: "guides/", After: ".html", Loose: true},
}

// longestFirst is how much of a first sentence is kept to show beside a name.
const longestFirst = 50

// mostOfPart is how many words of a part's text beside its definition are kept:
// the index is loaded whole, and the page of a part says first what matters most.
const mostOfPart = 65

// words is the beginning of a text, up to so many words.
func words(text string, most int) string {
	list := strings.Fields(text)
	return strings.Join(list[:min(most, len(list))], " ")
}

// Search packs the index of all pages of a book.
func Search(b *book.Book) []byte {
	w := search.NewBuilder(kinds...)
	for _, t := range b.Terms {
		page := search.Page{Kind: "term", ID: t.ID, Name: t.Name, Also: t.Also, First: first(t.Doc)}
		if t.Symbol != "" {
			page.Also = append(page.Also[:len(page.Also):len(page.Also)], t.Symbol)
		}
		text := textOf(t.Doc)
		for _, v := range t.Values {
			text.head += v.Name + "\n"
		}
		w.Add(page, text.head+t.Ask, "")
	}
	for _, p := range b.Parts {
		text := textOf(p.Doc)
		w.Add(search.Page{Kind: "part", ID: p.ID, Name: p.Name, Also: p.Also, First: first(p.Doc)},
			text.head, strings.Join([]string{words(text.body, mostOfPart), p.Material, p.Wear}, "\n"))
	}
	for _, c := range b.Chapters {
		text := textOf(c.Doc)
		w.Add(search.Page{Kind: "chapter", ID: c.ID, Name: c.Name, Also: c.Also, First: first(c.Doc)},
			text.head+strings.Join(c.Aims, "\n"), strings.Join(c.Takeaway, "\n")) // its sections bring the rest
	}
	for _, c := range b.Chapters {
		sections(w, c)
	}
	for _, a := range b.Asked {
		w.Add(search.Page{Kind: "question", ID: a.ID, Name: a.Name, Also: a.Also, First: cut(a.Answer)}, a.Answer, "")
	}
	for i := range b.Handbook.Places {
		p := &b.Handbook.Places[i]
		w.Add(search.Page{Kind: "place", ID: p.ID, Name: p.Name, First: cut(p.About)}, p.About, "")
	}
	further(w, b)
	return w.Pack()
}

// further adds the pages that stand beside the book's own, by their names and
// headings: pairs, tables and guides. What they say more stands on other pages too.
func further(w *search.Builder, b *book.Book) {
	for _, p := range b.Pairs {
		w.Add(search.Page{Kind: "pair", ID: p.ID, Name: p.Name, Also: p.Also, First: cut(p.Apart)}, "", "")
	}
	for _, t := range b.Tables {
		w.Add(search.Page{Kind: t.Folder, ID: t.ID, Name: t.Name, First: cut(t.About)}, t.About, "")
	}
	for _, g := range b.Guides {
		w.Add(search.Page{Kind: "guide", ID: g.ID, Name: g.Name, Also: g.Also, First: cut(g.Says)}, g.Says, "")
	}
}

// Words packs both the vocabulary and the index of the search: the data file that
// answer.Desk takes beside the book. The vocabulary ends, and the index begins,
// with the names of the terms: so near each other they pack into one.
func Words(b *book.Book) []byte { return append(Vocabulary(b), Search(b)...) }

// text is what a page says beside its names.
type text struct{ head, body string }

// textOf divides the text of a page into headings with the definition, and the
// rest. Blocks are no text: the index is loaded whole, and has to stay small.
func textOf(d *markdown.Doc) text {
	var t text
	lead := d.Lead()
	for i, p := range d.Pieces {
		switch {
		case p.Kind == markdown.BlockPart:
		case p.Kind == markdown.HeadingPart && usual[p.Head.Text]:
		case p.Kind == markdown.HeadingPart, i == 0 && lead > 0:
			t.head += d.PlainText(i) + "\n"
		default:
			t.body += d.PlainText(i) + "\n"
		}
	}
	return t
}

// usual are headings that stand on nearly every page: they tell no page from another.
var usual = map[string]bool{"Worked examples": true, "Where people slip": true, "Cautions": true, "Sources": true}

// sections adds the sections of a chapter, each with the heading it stands
// under. In the place of a first sentence the reader is told the chapter.
func sections(w *search.Builder, c *book.Chapter) {
	var head *markdown.Heading
	name, about := "", ""
	flush := func() {
		if head != nil {
			w.Add(search.Page{Kind: "section", ID: c.ID, Anchor: head.ID, Name: name}, about, "")
		}
		about = ""
	}
	for i, p := range c.Doc.Pieces {
		switch {
		case p.Kind == markdown.HeadingPart:
			flush()
			head, name = p.Head, p.Head.Text
		case p.Kind == markdown.BlockPart:
		case about == "":
			about = c.Doc.PlainText(i)
		}
	}
	flush()
}

// first is the beginning of a page's first sentence.
func first(d *markdown.Doc) string {
	if d.Lead() == 0 {
		return ""
	}
	return cut(d.PlainText(0))
}

// cut shortens a text to its first sentence, and that to a line.
func cut(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	for i := range len(text) {
		next, _ := utf8.DecodeRuneInString(strings.TrimLeft(text[i+1:], " "))
		if (text[i] == '.' || text[i] == '?') && (i+1 == len(text) || text[i+1] == ' ' && unicode.IsUpper(next)) {
			text = text[:i+1]
			break
		}
	}
	if len(text) <= longestFirst {
		return text
	}
	at := strings.LastIndexByte(text[:longestFirst], ' ')
	if at < 0 {
		at = 0
	}
	return strings.TrimRight(text[:at], " ,;:") + " …"
}
