package proof

import (
	_ "embed"
	"sort"
	"strings"

	"columnbowl/build/book"
	"columnbowl/calcwasm/search"
)

// spelling knows the words of the book. A general list of words would be large
// and would not know the trade; and it would pass “casing” for “easing”. So the
// book is its own list: a word that is used once, and differs by one slip from
// a word that is used often, is likely that word.
type spelling struct {
	count    map[string]int
	stems    map[string]int
	byShape  map[string][]string // common words, by the word with one letter left out
	accepted map[string]bool
}

// acceptedWords are rare words that are right, one a line.
//
//go:embed accepted.txt
var acceptedWords string

// common is how often a word is used that a rare one may be a slip for.
const common = 5

// shortest is the length of the words that are looked at: short ones are too
// near to each other.
const shortest = 6

func newSpelling(b *book.Book) *spelling {
	s := &spelling{count: map[string]int{}, stems: map[string]int{}, byShape: map[string][]string{}, accepted: map[string]bool{}}
	for _, src := range b.Files {
		for _, w := range oneWord.FindAll(src, -1) {
			s.count[strings.ToLower(string(w))]++
		}
	}
	for w, n := range s.count {
		s.stems[search.Stem(w)] += n
	}
	for _, w := range keys(s.count) {
		if s.count[w] >= common && len(w) >= shortest-1 {
			for _, shape := range shapes(w) {
				s.byShape[shape] = append(s.byShape[shape], w)
			}
		}
	}
	for _, w := range strings.Fields(acceptedWords) {
		s.accepted[w] = true
	}
	return s
}

// shapes are a word itself and the word with one letter left out, at each place.
func shapes(w string) []string {
	list := []string{w}
	for i := range w {
		list = append(list, w[:i]+w[i+1:])
	}
	return list
}

// meant is the common word that a rare one is likely a slip for, "" for none. One
// slip is a letter too many, too few or another one, or two that changed places.
func (s *spelling) meant(word string) string {
	low := strings.ToLower(word)
	if s.count[low] != 1 || len(low) < shortest || s.accepted[low] || s.stems[search.Stem(low)] > 1 {
		return ""
	}
	var near []string
	for _, shape := range shapes(low) {
		for _, w := range s.byShape[shape] {
			if oneSlip(low, w) && search.Stem(w) != search.Stem(low) {
				near = append(near, w)
			}
		}
	}
	if len(near) == 0 {
		return ""
	}
	sort.Slice(near, func(i, j int) bool {
		a, b := s.count[near[i]], s.count[near[j]]
		return a > b || a == b && near[i] < near[j]
	})
	return near[0]
}

// oneSlip says whether two words are one slip apart.
func oneSlip(a, b string) bool {
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	ra, rb := a[i:], b[i:]
	switch {
	case len(ra) == len(rb)+1:
		return ra[1:] == rb
	case len(rb) == len(ra)+1:
		return rb[1:] == ra
	case len(ra) != len(rb) || len(ra) == 0:
		return false
	}
	return ra[1:] == rb[1:] || len(ra) > 1 && ra[0] == rb[1] && ra[1] == rb[0] && ra[2:] == rb[2:]
}
