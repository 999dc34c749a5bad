package search

import "strings"

// Why says by what a page was found.
type Why uint8

// The reasons, from the strongest down.
const (
	ByName  Why = 1 + iota // its name
	ByAlso                 // another name
	ByHead                 // a heading, its definition, or the question for it
	ByBody                 // its text
	ByParts                // some of the words only
)

var whyWords = [...]string{"", "name", "also", "head", "text", "some"}

// String is the word for a reply: name, also, head, text or some.
func (w Why) String() string { return whyWords[w] }

// Found is a page that fits a query.
type Found struct {
	*Page
	Why   Why
	Match string // the name, the other name, or the words by which it was found

	rank  rank
	place int
}

// rank orders results; what comes first weighs most.
type rank struct {
	words  int // how many of the words that count were found
	class  int
	fit    int // how exactly they were spelt
	weight int // where they stand
	length int // words of the name: the shorter name comes first
}

// Find lists the pages that fit a query, best first, at most so many. A name
// that is the query comes first, then names that begin with it, other names,
// headings and definitions, and the running text.
func (x *Index) Find(query string, most int) []Found {
	words := x.read(query)
	typed, needed := strings.TrimSpace(query), 0
	for i := range words {
		if !words[i].optional {
			needed++
		}
	}
	table := x.table(words)
	var list []Found
	for page := range x.pages {
		row := table[page*len(words) : (page+1)*len(words)]
		if f, ok := x.judge(page, row, words); ok {
			if strings.EqualFold(f.Name, typed) { // a cable strap before the count of cable straps
				f.rank.class, f.rank.words, f.Why, f.Match = nameAsTyped, needed, ByName, f.Name
			}
			list = insert(list, f, most)
		}
	}
	for i := range list {
		if f := &list[i]; f.Match == "" {
			f.Match = x.matched(f, table[f.place*len(words):], words)
		}
	}
	return list
}

// insert puts a result into its place in a list of at most so many. Pages with
// fewer of the words stay only where none has more.
func insert(list []Found, f Found, most int) []Found {
	if len(list) > 0 && f.rank.words != list[0].rank.words {
		if f.rank.words < list[0].rank.words {
			return list
		}
		list = list[:0]
	}
	at := len(list)
	for at > 0 && compare(&f, &list[at-1]) < 0 {
		at--
	}
	if at >= most {
		return list
	}
	if len(list) < most {
		list = append(list, f)
	}
	copy(list[at+1:], list[at:])
	list[at] = f
	return list
}

func compare(a, b *Found) int {
	p, q := &a.rank, &b.rank
	for _, d := range [...]int{q.words - p.words, q.class - p.class, q.fit - p.fit, q.weight - p.weight, p.length - q.length} {
		if d != 0 {
			return d
		}
	}
	return a.place - b.place
}

// table says for each page and each word the best field and fit: field*4 + fit.
func (x *Index) table(words []wanted) []uint8 {
	table := make([]uint8, len(x.pages)*len(words))
	for w := range words {
		for _, h := range words[w].hits {
			page, packed := 0, x.posts[h.stem]
			for packed != "" {
				var f Field
				packed, page, f = next(packed, page)
				cell := &table[page*len(words)+w]
				*cell = max(*cell, topField(f)<<2|h.fit)
			}
		}
	}
	return table
}

// topField is the strongest of some fields, from 1 for the body to 4.
func topField(f Field) uint8 {
	switch {
	case f&Name != 0:
		return 4
	case f&Also != 0:
		return 3
	case f&Head != 0:
		return 2
	}
	return 1
}

// Classes of results, see Find.
const (
	inSome = 1 + iota
	inBody
	inHead
	inAlso
	inName
	alsoIs
	nameBegins
	nameIs
	nameAsTyped
)

// judge ranks a page by its row of the table.
func (x *Index) judge(page int, row []uint8, words []wanted) (Found, bool) {
	f := Found{Page: &x.pages[page].Page, place: page}
	f.rank.length = len(x.pages[page].name)
	if f.rank.length == 0 {
		f.rank.length = mostWords // its name is a sentence
	}
	needed, low := 0, uint8(4)
	for i, c := range row {
		if !words[i].optional {
			needed++
			if c == 0 {
				continue
			}
			f.rank.words++
			low = min(low, c>>2)
		}
		f.rank.fit += int(c & 3)
		f.rank.weight += int(c >> 2)
	}
	if f.rank.words == 0 {
		return f, false
	}
	f.rank.class = int(low) + inSome
	if f.rank.words < needed {
		f.rank.class = inSome
	}
	x.names(&f, &x.pages[page], words)
	f.Why = [...]Why{0, ByParts, ByBody, ByHead, ByAlso, ByName, ByAlso, ByName, ByName, ByName}[f.rank.class]
	return f, true
}

// names compares the query with the names of a page as a whole.
func (x *Index) names(f *Found, e *entry, words []wanted) {
	if begins(e.name, words) {
		f.rank.class, f.Match = nameBegins, e.Name
		if len(e.name) == len(words) && all(words, e.name) {
			f.rank.class = nameIs
		}
		return
	}
	if f.rank.class == inName {
		f.Match = e.Name
	}
	for i, a := range e.also {
		if begins(a, words) {
			if f.rank.class < alsoIs {
				f.rank.class, f.Match = alsoIs, e.Also[i]
			}
			return
		}
	}
}

// begins tells whether a name begins with all words of the query.
func begins(name []int, words []wanted) bool {
	if len(words) > len(name) {
		return false
	}
	for i := range words {
		if fitOf(&words[i], name[i]) == 0 {
			return false
		}
	}
	return true
}

func fitOf(q *wanted, stem int) uint8 {
	for _, h := range q.hits {
		if h.stem == stem {
			return h.fit
		}
	}
	return 0
}

// all tells whether the words are those of the name, none of them a beginning.
func all(words []wanted, name []int) bool {
	for i := range words {
		if fitOf(&words[i], name[i]) != exact {
			return false
		}
	}
	return true
}

// matched is the first other name that holds a word of the query, or the words
// of the query that the page has.
func (x *Index) matched(f *Found, row []uint8, words []wanted) string {
	if f.Why == ByAlso {
		e := &x.pages[f.place]
		for i, a := range e.also {
			for _, stem := range a {
				for w := range words {
					if !words[w].optional && fitOf(&words[w], stem) > 0 {
						return e.Also[i]
					}
				}
			}
		}
	}
	text := ""
	for i := range words {
		if row[i] > 0 && !words[i].optional {
			if text != "" {
				text += " "
			}
			text += x.shown(&words[i], f.place)
		}
	}
	return text
}

// shown is a word as it was typed, or, if it was spelt otherwise, the stem that
// stands on the page.
func (x *Index) shown(q *wanted, page int) string {
	if len(q.hits) == 0 || q.hits[0].fit != near {
		return q.text
	}
	for _, h := range q.hits {
		at, packed := 0, x.posts[h.stem]
		for packed != "" {
			packed, at, _ = next(packed, at)
			if at == page {
				return x.stems[h.stem]
			}
		}
	}
	return q.text
}
