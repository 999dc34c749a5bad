package search

import (
	"errors"
	"strconv"
	"strings"
)

// Form is the version of the packed form; a packed index begins with it.
const Form = "column-and-bowl search 1"

// Unpack reads what Builder.Pack wrote. The error names the line that is not of
// the form this engine knows.
func Unpack(pack string) (*Index, error) {
	x := &Index{}
	rest, inStems, before := strings.TrimSuffix(pack, "\n"), false, ""
	for n := 1; rest != ""; n++ {
		var line string
		line, rest, _ = strings.Cut(rest, "\n")
		ok := true
		switch {
		case n == 1:
			ok = line == Form
		case inStems:
			before, ok = x.stem(line, before)
		case line == "stems":
			inStems = true
		default:
			ok = x.line(strings.Split(line, "\t"))
		}
		if !ok {
			return nil, errors.New("the index of the search cannot be read: line " + strconv.Itoa(n) + " is not of the form that this engine knows")
		}
	}
	if !inStems {
		return nil, errors.New("the index of the search cannot be read: it ends before its words")
	}
	known := map[string]int{}
	for i := range x.pages {
		p := &x.pages[i]
		if k := x.kind(p.Kind); k == nil || k.Loose {
			continue
		}
		p.name = x.stemsOf(p.Name, known)
		for _, a := range p.Also {
			p.also = append(p.also, x.stemsOf(a, known))
		}
	}
	return x, nil
}

func (x *Index) line(f []string) bool {
	switch {
	case f[0] == "kind" && len(f) == 5:
		x.kinds = append(x.kinds, Kind{f[1], f[2], f[3], f[4] != ""})
	case f[0] == "page" && len(f) >= 6:
		x.pages = append(x.pages, entry{Page: Page{Kind: f[1], ID: f[2], Anchor: f[3], Name: f[4], First: f[5], Also: f[6:]}})
	default:
		return false
	}
	return true
}

// stem reads a line of the list of stems. before is the stem of the line above.
func (x *Index) stem(line, before string) (stem string, ok bool) {
	head, packed, found := strings.Cut(line, " ")
	if !found || head == "" || packed == "" {
		return "", false
	}
	shared := digit(head[0])
	if shared < 0 || shared > len(before) {
		return "", false
	}
	stem = before[:shared] + head[1:]
	if stem <= before || !x.sound(packed) {
		return "", false
	}
	x.stems, x.posts = append(x.stems, stem), append(x.posts, packed)
	return stem, true
}

// sound tells whether packed postings can be read and name pages that exist.
func (x *Index) sound(packed string) bool {
	for i := range len(packed) {
		if digit(packed[i]) < 0 {
			return false
		}
	}
	if len(packed) > 0 && digit(packed[len(packed)-1]) >= 32 {
		return false
	}
	for page := 0; packed != ""; {
		var f Field
		packed, page, f = next(packed, page)
		if page < 0 || page >= len(x.pages) || f == 0 {
			return false
		}
	}
	return true
}
