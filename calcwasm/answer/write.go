package answer

import (
	"strconv"
	"unicode/utf8"
)

// writer writes JSON (RFC 8259). encoding/json would add a third of a megabyte
// to what a reader has to load, for text that has one form only.
type writer struct {
	buf   []byte
	comma bool
}

func (w *writer) separate() {
	if w.comma {
		w.buf = append(w.buf, ',')
	}
	w.comma = true
}

func (w *writer) object(members func()) {
	w.separate()
	w.buf = append(w.buf, '{')
	w.comma = false
	members()
	w.buf = append(w.buf, '}')
	w.comma = true
}

// member writes a key and then whatever value writes.
func (w *writer) member(key string, value func()) {
	w.separate()
	w.quote(key)
	w.buf = append(w.buf, ':')
	w.comma = false
	value()
	w.comma = true
}

// pair writes a key with a text; a text that is empty is left out.
func (w *writer) pair(key, text string) {
	if text != "" {
		w.member(key, func() { w.text(text) })
	}
}

// always writes a key with a text, also an empty one.
func (w *writer) always(key, text string) {
	w.member(key, func() { w.text(text) })
}

func (w *writer) number(key string, n int) {
	w.member(key, func() { w.buf = strconv.AppendInt(w.buf, int64(n), 10) })
}

// flag writes a key that is true; one that is false is left out.
func (w *writer) flag(key string, on bool) {
	if on {
		w.member(key, func() { w.buf = append(w.buf, "true"...) })
	}
}

// list writes a key with an array; an empty one is left out.
func (w *writer) list(key string, n int, item func(i int)) {
	if n == 0 {
		return
	}
	w.member(key, func() {
		w.buf = append(w.buf, '[')
		w.comma = false
		for i := range n {
			item(i)
		}
		w.buf = append(w.buf, ']')
	})
}

// text writes a text as a value.
func (w *writer) text(s string) {
	w.separate()
	w.quote(s)
}

const hex = "0123456789abcdef"

// quote writes a text in quotes. What needs no escape is copied in one piece:
// a reply has tens of kilobytes of it.
func (w *writer) quote(s string) {
	w.buf = append(w.buf, '"')
	from := 0
	for i := 0; i < len(s); {
		c := s[i]
		if c >= 0x20 && c < utf8.RuneSelf && c != '"' && c != '\\' {
			i++
			continue
		}
		if c >= utf8.RuneSelf {
			if r, n := utf8.DecodeRuneInString(s[i:]); r != utf8.RuneError || n > 1 {
				i += n
				continue
			}
		}
		w.buf = append(w.buf, s[from:i]...)
		switch {
		case c >= utf8.RuneSelf:
			w.buf = utf8.AppendRune(w.buf, utf8.RuneError) // a byte that is no text
		case c < 0x20:
			w.buf = append(w.buf, '\\', 'u', '0', '0', hex[c>>4], hex[c&15])
		default:
			w.buf = append(w.buf, '\\', c)
		}
		i++
		from = i
	}
	w.buf = append(append(w.buf, s[from:]...), '"')
}
