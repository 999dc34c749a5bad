package search

import (
	"strings"

	"columnbowl/calcwasm/unit"
)

// longestQuery is the longest text that is looked at; a query has few words.
const (
	longestQuery = 200
	mostWords    = 12
)

// wanted is a word of a query with the stems of the index that it may mean.
type wanted struct {
	text     string
	optional bool // a number, a unit, a word that says nothing: helps, but need not be found
	hits     []hit
}

// hit is a stem of the index, and how well it fits: exact, prefix, near.
type hit struct {
	stem int
	fit  uint8
}

// How well a stem fits a word.
const (
	near   uint8 = 1 + iota // spelt nearly so
	prefix                  // begins so
	exact
)

// read divides a query into words and looks each of them up. A word that is
// still being typed, the last one, may be a beginning.
func (x *Index) read(query string) []wanted {
	if len(query) > longestQuery {
		query = query[:longestQuery]
	}
	words := Split(query)
	if len(words) > mostWords {
		words = words[:mostWords]
	}
	typing := len(words) > 0 && words[len(words)-1].To == len(query)
	list := make([]wanted, 0, len(words))
	unitEnd := 0
	for i, w := range words {
		q := wanted{text: w.Text, optional: isCommon(w.Text) || w.From < unitEnd}
		if w.Text[0] >= '0' && w.Text[0] <= '9' {
			q.optional = true
			if _, n := unit.At(query[w.To:]); n > 0 {
				unitEnd = w.To + n
			}
		}
		x.lookUp(&q, typing && i == len(words)-1)
		list = append(list, q)
	}
	x.joined(list, words)
	return sharpened(x.parted(list))
}

// sharpened makes words required again when all are optional: a query of common
// words alone is meant as it stands. Words that are nowhere in the book are
// taken out of the way of those that are.
func sharpened(list []wanted) []wanted {
	some := false
	for i := range list {
		some = some || !list[i].optional && len(list[i].hits) > 0
	}
	for i := range list {
		q := &list[i]
		if len(q.hits) == 0 {
			q.optional = true
		} else if !some {
			q.optional = false
		}
	}
	return list
}

// lookUp finds the stems that a word may mean: itself; what it begins, while it
// is typed; and if there is none, what is spelt nearly so.
func (x *Index) lookUp(q *wanted, typing bool) {
	stem := Stem(q.text)
	if at := x.find(stem); at >= 0 {
		q.hits = append(q.hits, hit{at, exact})
	}
	if typing {
		x.beginnings(q, stem)
	}
	if len(q.hits) == 0 && !q.optional {
		x.spelling(q, stem, typing)
	}
}

// endings are what may follow a stem in a word.
const endings = " ing ingly ed edly ly ment ness able ably ance ency ency ence ation ational ity ive ical ially ful al er ers es ies iency ion ions ous "

// beginnings adds the stems that begin with what is typed, and those that it
// has outgrown: “efficienc” is on its way to a word with the stem “effici”.
func (x *Index) beginnings(q *wanted, stem string) {
	for at := x.from(q.text); at < len(x.stems) && strings.HasPrefix(x.stems[at], q.text); at++ {
		if x.stems[at] != stem {
			q.hits = append(q.hits, hit{at, prefix})
		}
	}
	for n := len(q.text) - 1; n >= 4 && n >= len(q.text)-4; n-- {
		if at := x.find(q.text[:n]); at >= 0 && x.stems[at] != stem && strings.Contains(endings, " "+q.text[n:]) {
			q.hits = append(q.hits, hit{at, prefix})
			return
		}
	}
}

// spelling adds what differs by one letter, or by two in a long word: words of
// names as they are written, and stems.
func (x *Index) spelling(q *wanted, stem string, typing bool) {
	for d := 1; d <= Slack(len(q.text)) && len(q.hits) == 0; d++ {
		for i := range x.words {
			if w := &x.words[i]; Distance(q.text, w.text, d) == d {
				q.hits = append(q.hits, hit{w.stem, near})
			}
		}
		for at, s := range x.stems {
			if Distance(stem, s, d) == d || typing && len(s) > len(q.text) && Distance(q.text, s[:len(q.text)], d) == d {
				q.hits = append(q.hits, hit{at, near})
			}
		}
	}
}

// parted divides words that people write in one, and the book in two:
// “headshaft”. Both halves are then wanted.
func (x *Index) parted(list []wanted) []wanted {
	for i := range list {
		q := &list[i]
		if q.optional || len(q.hits) > 0 {
			continue
		}
		for n := 3; n <= len(q.text)-3; n++ {
			a, b := x.find(Stem(q.text[:n])), x.find(Stem(q.text[n:]))
			if a < 0 || b < 0 {
				continue
			}
			second := wanted{text: q.text[n:], hits: []hit{{b, exact}}}
			q.text, q.hits = q.text[:n], []hit{{a, exact}}
			return append(append(list[:i+1:i+1], second), list[i+1:]...)
		}
	}
	return list
}

// joined lets two words stand for one that the book writes in one: “draw down”.
func (x *Index) joined(list []wanted, words []Word) {
	for i := 0; i+1 < len(list); i++ {
		if len(words[i].Text)+len(words[i+1].Text) < 5 {
			continue
		}
		if at := x.find(Stem(words[i].Text + words[i+1].Text)); at >= 0 {
			for k := i; k <= i+1; k++ {
				list[k].optional = false
				list[k].hits = append(list[k].hits, hit{at, prefix})
			}
		}
	}
}
