package search

// Field says where on a page a word stands.
type Field uint8

// The fields, as bits: a word can stand in several.
const (
	Body Field = 1 << iota // the running text
	Head                   // a heading, the definition, the question for a value
	Also                   // another name
	Name                   // the name
)

// Page is something that can be found.
type Page struct {
	Kind   string // "term", "part", "chapter", "section", "question", "place"
	ID     string
	Anchor string // the heading on its page, without #; mostly empty
	Name   string
	Also   []string // other names
	First  string   // its first sentence, to show beside the name
}

// Kind says where the pages of a kind stand in an edition: Before + ID + After.
// The name of a loose one is a whole sentence: its words count as a heading's.
type Kind struct {
	Name, Before, After string
	Loose               bool
}

// Index is a searchable index. It is never changed once it is made.
type Index struct {
	kinds []Kind
	pages []entry
	stems []string // sorted
	posts []string // for each stem the pages it stands on, packed
	words []named  // the words of all names, for comparing their spelling
}

// named is a word of a name as it is written, and its stem's place.
type named struct {
	text string
	stem int
}

// entry is a page with its names as places in the list of stems.
type entry struct {
	Page
	name []int
	also [][]int
}

// Len is the number of pages that can be found.
func (x *Index) Len() int { return len(x.pages) }

// Href is where a page stands, from the folder of the edition.
func (x *Index) Href(p *Page) string {
	k := x.kind(p.Kind)
	if k == nil {
		return ""
	}
	href := k.Before + p.ID + k.After
	if p.Anchor != "" {
		href += "#" + p.Anchor
	}
	return href
}

// First is what is shown beside the name of a page: the beginning of its first
// sentence, and of a section the chapter that it stands in.
func (x *Index) First(p *Page) string {
	if p.Anchor == "" || p.First != "" {
		return p.First
	}
	for i := range x.pages {
		if whole := &x.pages[i].Page; whole.ID == p.ID && whole.Anchor == "" && x.kind(whole.Kind).Before == x.kind(p.Kind).Before {
			return whole.Name
		}
	}
	return ""
}

func (x *Index) kind(name string) *Kind {
	for i := range x.kinds {
		if x.kinds[i].Name == name {
			return &x.kinds[i]
		}
	}
	return nil
}

// find is the place of a stem, or -1.
func (x *Index) find(stem string) int {
	at := x.from(stem)
	if at < len(x.stems) && x.stems[at] == stem {
		return at
	}
	return -1
}

// from is the place of the first stem that is not before a text.
func (x *Index) from(text string) int {
	low, high := 0, len(x.stems)
	for low < high {
		middle := int(uint(low+high) >> 1)
		if x.stems[middle] < text {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return low
}

// stemsOf gives the words of a name as places in the list of stems. known are
// the words met so far: names share most of theirs.
func (x *Index) stemsOf(text string, known map[string]int) []int {
	words := Split(text)
	list := make([]int, len(words))
	for i, w := range words {
		at, ok := known[w.Text]
		if !ok {
			at = x.find(Stem(w.Text))
			known[w.Text] = at
			if at >= 0 {
				x.words = append(x.words, named{w.Text, at})
			}
		}
		list[i] = at
	}
	return list
}

// The postings of a stem are a row of numbers, page*16 + fields, each as its
// distance in pages from the one before. A number is written in digits of five
// bits, the lowest first; a digit that is not the last one has the sixth bit.
const digits = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz-_"

func appendNumber(b []byte, n int) []byte {
	for n >= 32 {
		b = append(b, digits[n&31|32])
		n >>= 5
	}
	return append(b, digits[n])
}

// digit is the value of a digit, -1 for another byte.
func digit(c byte) int {
	switch {
	case c >= '0' && c <= '9':
		return int(c - '0')
	case c >= 'A' && c <= 'Z':
		return int(c-'A') + 10
	case c >= 'a' && c <= 'z':
		return int(c-'a') + 36
	case c == '-':
		return 62
	case c == '_':
		return 63
	}
	return -1
}

// next reads a page and its fields from packed postings. page is the one before.
func next(packed string, page int) (rest string, now int, fields Field) {
	n, shift := 0, 0
	for i := 0; i < len(packed); i++ {
		d := digit(packed[i])
		n |= (d & 31) << shift
		shift += 5
		if d < 32 {
			return packed[i+1:], page + n>>4, Field(n & 15)
		}
	}
	return "", page, 0
}
