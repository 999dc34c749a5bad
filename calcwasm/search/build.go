package search

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// Builder makes an Index. Pages come first in a list of equals in the order in
// which they are added.
type Builder struct {
	index Index
	words map[string][]posting
	stems map[string]string // of the words met so far
}

type posting struct {
	page   int
	fields Field
}

// NewBuilder begins an index of pages of these kinds.
func NewBuilder(kinds ...Kind) *Builder {
	return &Builder{index: Index{kinds: kinds}, words: map[string][]posting{}, stems: map[string]string{}}
}

// Add adds a page: what is in its names, what stands in its headings and its
// definition, and its running text.
func (b *Builder) Add(p Page, head, body string) {
	at := len(b.index.pages)
	b.index.pages = append(b.index.pages, entry{Page: p})
	name := Name
	if k := b.index.kind(p.Kind); k != nil && k.Loose {
		name = Head
	}
	b.text(at, name, p.Name)
	for _, a := range p.Also {
		b.text(at, Also, a)
	}
	b.text(at, Head, head)
	b.text(at, Body, body)
}

// text adds the words of a text. Words that say nothing and bare numbers are
// kept in names only.
func (b *Builder) text(page int, f Field, text string) {
	for _, w := range Split(text) {
		if f < Also && (isCommon(w.Text) || w.Text[0] >= '0' && w.Text[0] <= '9') {
			continue
		}
		stem, ok := b.stems[w.Text]
		if !ok {
			stem = Stem(w.Text)
			b.stems[w.Text] = stem
		}
		list := b.words[stem]
		if n := len(list); n > 0 && list[n-1].page == page {
			list[n-1].fields |= f
			continue
		}
		b.words[stem] = append(list, posting{page, f})
	}
}

// Pack writes the index as one text for the page; Unpack reads it. Each stem
// shares its beginning with the one before, and says how long that is.
func (b *Builder) Pack() []byte {
	var w strings.Builder
	plain := strings.NewReplacer("\t", " ", "\n", " ", "\r", " ")
	line := func(fields ...string) {
		for i, f := range fields {
			if i > 0 {
				w.WriteByte('\t')
			}
			w.WriteString(plain.Replace(f))
		}
		w.WriteByte('\n')
	}
	line(Form)
	for _, k := range b.index.kinds {
		loose := ""
		if k.Loose {
			loose = "loose"
		}
		line("kind", k.Name, k.Before, k.After, loose)
	}
	for i := range b.index.pages {
		p := &b.index.pages[i]
		line(append([]string{"page", p.Kind, p.ID, p.Anchor, p.Name, p.First}, p.Also...)...)
	}
	line("stems")
	stems := make([]string, 0, len(b.words))
	for s := range b.words {
		stems = append(stems, s)
	}
	slices.Sort(stems)
	before := ""
	for _, s := range stems {
		shared := 0
		for shared < len(s) && shared < len(before) && shared < len(digits)-1 && s[shared] == before[shared] {
			shared++
		}
		for shared > 0 && shared < len(s) && !utf8.RuneStart(s[shared]) {
			shared-- // a letter is never cut: the pack travels as UTF-8
		}
		w.WriteByte(digits[shared])
		w.WriteString(s[shared:])
		w.WriteByte(' ')
		w.Write(packPostings(b.words[s]))
		w.WriteByte('\n')
		before = s
	}
	return []byte(w.String())
}

func packPostings(list []posting) []byte {
	var out []byte
	before := 0
	for _, p := range list {
		out = appendNumber(out, (p.page-before)<<4|int(p.fields))
		before = p.page
	}
	return out
}
