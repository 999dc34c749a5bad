package drawing

import (
	"errors"
	"math"
	"strconv"
	"unicode/utf8"
)

// AppendSVG writes the scene to dst and returns the longer slice. It is the
// only writer of SVG.
//
// Numbers have at most two decimals. A shape with a coordinate that is NaN or
// infinite is left out, and the drawing then carries the struck equals sign of
// a clash in its corner and the count in data-left-out: a fault shows instead
// of breaking the page. Scene.Check reports the same in words.
func AppendSVG(dst []byte, s *Scene) []byte {
	w := &writer{b: dst, prefix: s.Prefix}
	w.root(s)
	w.defs(s.Hatches)
	for _, it := range s.Items {
		it.write(w)
	}
	if w.left > 0 {
		w.leftOut(s.Box)
	}
	w.raw("</svg>\n")
	return w.b
}

// SVG is AppendSVG into a new string.
func (s *Scene) SVG() string { return string(AppendSVG(nil, s)) }

// Check reports the first shape that cannot be drawn, or a viewBox that cannot
// hold anything.
func (s *Scene) Check() error {
	if !finite(s.Box.X, s.Box.Y, s.Box.W, s.Box.H) || s.Box.W <= 0 || s.Box.H <= 0 {
		return errors.New("drawing " + s.Prefix + ": its viewBox has no area; give it a width and a height")
	}
	for i, it := range s.Items {
		if !it.sound() {
			return errors.New("drawing " + s.Prefix + ": shape " + strconv.Itoa(i+1) + " has a coordinate that is no number; leave out what is not known")
		}
	}
	return nil
}

func finite(v ...float64) bool {
	for _, x := range v {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// writer collects the bytes of one drawing.
type writer struct {
	b      []byte
	prefix string
	left   int // shapes left out
}

func (w *writer) raw(s string) { w.b = append(w.b, s...) }

func (w *writer) root(s *Scene) {
	w.raw(`<svg xmlns="http://www.w3.org/2000/svg"`)
	w.attr("class", s.Class)
	w.raw(` viewBox="`)
	for i, v := range [4]float64{s.Box.X, s.Box.Y, s.Box.W, s.Box.H} {
		if i > 0 {
			w.raw(" ")
		}
		w.num(v)
	}
	w.raw(`"`)
	w.numAttr("width", s.Width)
	w.numAttr("height", s.Height)
	switch {
	case s.Title != "":
		role := s.Role
		if role == "" {
			role = "img"
		}
		w.attr("role", role)
		w.attr("aria-labelledby", w.id("title"))
		if s.Desc != "" {
			w.attr("aria-describedby", w.id("desc"))
		}
	case !hasLink(s.Items):
		w.raw(` aria-hidden="true"`)
	}
	w.raw(">\n")
	w.words("title", s.Title, w.id("title"))
	if s.Title != "" {
		w.words("desc", s.Desc, w.id("desc"))
	}
}

func (w *writer) id(name string) string { return w.prefix + "-" + name }

// words writes a title or desc element if there are words.
func (w *writer) words(element, text, id string) {
	if text == "" {
		return
	}
	w.raw("<" + element)
	w.attr("id", id)
	w.raw(">")
	w.text(text)
	w.raw("</" + element + ">\n")
}

// leftOut draws the sign of a clash in the corner: two strokes, struck.
func (w *writer) leftOut(b Box) {
	w.raw(`<g data-left-out="`)
	w.b = strconv.AppendInt(w.b, int64(w.left), 10)
	w.raw("\">\n")
	NewPath("out").
		M(b.X+2, b.Y+6.5).H(b.X+16).M(b.X+2, b.Y+11.5).H(b.X+16).
		M(b.X+13, b.Y+2).L(b.X+5, b.Y+16).write(w)
	w.raw("</g>\n")
}

// num writes a number: two decimals at most, no trailing zeros, never -0. What
// is not finite becomes 0; callers have left such shapes out before.
func (w *writer) num(v float64) { w.b = appendNumber(w.b, v) }

func appendNumber(b []byte, v float64) []byte {
	if !finite(v) {
		return append(b, '0')
	}
	r := math.Round(v * 100)
	if r > 1e15 || r < -1e15 { // such a number has no decimals anyway
		return strconv.AppendFloat(b, v, 'f', -1, 64)
	}
	return appendHundredths(b, int64(r))
}

// appendHundredths writes a number of hundredths: 1250 as 12.5. Drawings are
// mostly numbers, and this is many times quicker than to look for the shortest
// decimals of any float.
func appendHundredths(b []byte, n int64) []byte {
	if n < 0 {
		b = append(b, '-')
		n = -n
	}
	b = strconv.AppendInt(b, n/100, 10)
	switch part := n % 100; {
	case part == 0:
	case part%10 == 0:
		b = append(b, '.', byte('0'+part/10))
	default:
		b = append(b, '.', byte('0'+part/10), byte('0'+part%10))
	}
	return b
}

// numAttr writes a number attribute unless it is 0, the unset value.
func (w *writer) numAttr(name string, v float64) {
	if v != 0 {
		w.raw(" ")
		w.place(name, v)
	}
}

// place writes name="v" even if v is 0.
func (w *writer) place(name string, v float64) {
	w.raw(name + `="`)
	w.num(v)
	w.raw(`"`)
}

// attr writes an attribute unless it is empty.
func (w *writer) attr(name, v string) {
	if v == "" {
		return
	}
	w.raw(" " + name + `="`)
	w.text(v)
	w.raw(`"`)
}

// text escapes for both element content and double-quoted attributes. What XML
// 1.0 cannot hold (control characters, broken UTF-8) becomes U+FFFD.
func (w *writer) text(s string) {
	for _, r := range s {
		switch {
		case r == '&':
			w.raw("&amp;")
		case r == '<':
			w.raw("&lt;")
		case r == '>':
			w.raw("&gt;")
		case r == '"':
			w.raw("&quot;")
		case r < 0x20 && r != '\t' && r != '\n' && r != '\r', r == 0xFFFE, r == 0xFFFF:
			w.b = utf8.AppendRune(w.b, utf8.RuneError)
		default:
			w.b = utf8.AppendRune(w.b, r)
		}
	}
}
