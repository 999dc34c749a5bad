package answer

import (
	"errors"
	"strings"
	"unicode/utf8"

	asking "columnbowl/calcwasm/ask"
	"columnbowl/calcwasm/search"
)

// words are what a desk needs to find pages and to read sentences. They come in
// a data file of their own, loaded when somebody first types a word.
type words struct {
	index  *search.Index
	reader *asking.Reader
}

// mostFound is how many pages a reply names.
const mostFound = 20

// Words takes the data for searching and asking: the packed vocabulary and the
// packed index of the search, one behind the other. The book is loaded before.
func (d *Desk) Words(pack []byte) error {
	text := string(pack)
	at := strings.Index(text, "\n"+search.Form+"\n")
	if at < 0 {
		return errors.New("the words of the book cannot be read: the index is missing behind the vocabulary")
	}
	index, err := search.Unpack(text[at+1:])
	if err != nil {
		return err
	}
	reader, err := asking.Open(text[:at+1], d.book)
	if err != nil {
		return err
	}
	d.words = words{index, reader}
	return nil
}

// IsWords tells whether a pack is the data for Words, and not a book.
func IsWords(pack []byte) bool { return strings.HasPrefix(string(pack), asking.Form) }

// talk answers the requests that are about words: find, and ask. ok is false for
// any other.
func (d *Desk) talk(buf []byte, request string) (reply []byte, ok bool) {
	verb, text, _ := strings.Cut(request, "\t")
	if verb != "find" && verb != "ask" {
		return nil, false
	}
	w := &writer{buf: buf}
	w.object(func() {
		switch {
		case d.words.index == nil:
			w.pair("error", "the words of the book are not loaded")
		case verb == "find":
			d.find(w, text)
		default:
			d.ask(w, text)
		}
	})
	return w.buf, true
}

func (d *Desk) find(w *writer, query string) {
	list := d.words.index.Find(query, mostFound)
	w.list("found", len(list), func(i int) {
		f := &list[i]
		w.object(func() {
			w.pair("kind", f.Kind)
			w.pair("id", f.ID)
			w.pair("name", f.Name)
			w.pair("href", d.words.index.Href(f.Page))
			w.pair("why", f.Why.String())
			w.pair("match", f.Match)
			w.pair("first", d.words.index.First(f.Page))
		})
	})
}

func (d *Desk) ask(w *writer, sentence string) {
	list := d.words.reader.Read(sentence)
	w.list("readings", len(list), func(i int) {
		r := &list[i]
		w.object(func() {
			w.number("from", units16(sentence[:r.From]))
			w.number("to", units16(sentence[:r.To]))
			w.pair("text", sentence[r.From:r.To])
			w.pair("state", r.State.String())
			w.pair("message", r.Message)
			w.list("candidates", len(r.Candidates), func(k int) { d.candidate(w, &r.Candidates[k]) })
		})
	})
}

func (d *Desk) candidate(w *writer, c *asking.Candidate) {
	w.object(func() {
		w.pair("term", d.book.Terms[c.Term].ID)
		w.pair("name", d.book.Terms[c.Term].Title)
		w.pair("value", c.Value)
		w.pair("reason", c.Reason)
	})
}

// units16 is the length of a text as a page counts it, in units of UTF-16.
func units16(text string) int {
	n := 0
	for len(text) > 0 {
		r, size := utf8.DecodeRuneInString(text)
		if n++; r > 0xffff {
			n++
		}
		text = text[size:]
	}
	return n
}
