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

func (w *writer) quote(s string) {
	w.buf = append(w.buf, '"')
	for i := 0; i < len(s); {
		c := s[i]
		if c >= utf8.RuneSelf {
			r, n := utf8.DecodeRuneInString(s[i:])
			w.buf = utf8.AppendRune(w.buf, r) // U+FFFD for a byte that is no text
			i += n
			continue
		}
		switch {
		case c == '"' || c == '\\':
			w.buf = append(w.buf, '\\', c)
		case c < 0x20:
			w.buf = append(w.buf, '\\', 'u', '0', '0', hex[c>>4], hex[c&15])
		default:
			w.buf = append(w.buf, c)
		}
		i++
	}
	w.buf = append(w.buf, '"')
}
