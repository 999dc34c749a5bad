package proof

import (
	"bytes"
	"unicode"
	"unicode/utf8"
)

// unfinished are words that mark text nobody has finished. They are put
// together here, so that a search for them finds real ones only.
var unfinished = []string{
	"to" + "do", "fix" + "me", "x" + "xx", "t" + "bd", "t" + "ba", "lo" + "rem", "ip" + "sum", "place" + "holder",
	"coming" + " soon", "to be" + " written", "to be" + " continued", "under" + " construction", "fill" + " me in",
}

// words looks for marks of unfinished text in all files. It searches plainly
// for each word: one pattern for all of them took half of the whole check.
func (c *checker) words() {
	for _, file := range keys(c.book.Files) {
		src := c.book.Files[file]
		low := lower(src)
		for _, word := range unfinished {
			for from := 0; ; {
				i := bytes.Index(low[from:], []byte(word))
				if i < 0 {
					break
				}
				at := from + i
				from = at + len(word)
				if standsAlone(src, at, from) {
					c.found.Add(file, at, len(word), "“"+string(src[at:from])+"” marks unfinished text: finish it, or take it out.", "")
				}
			}
		}
	}
}

// lower copies a text with small letters for the capitals of ASCII: offsets stay.
func lower(src []byte) []byte {
	out := bytes.Clone(src)
	for i, b := range out {
		if 'A' <= b && b <= 'Z' {
			out[i] = b + 'a' - 'A'
		}
	}
	return out
}

// standsAlone says whether no letter or digit goes on before or behind. Nothing
// (the beginning or the end of the file) decodes as RuneError, which is neither.
func standsAlone(src []byte, from, to int) bool {
	before, _ := utf8.DecodeLastRune(src[:from])
	after, _ := utf8.DecodeRune(src[to:])
	inWord := func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }
	return !inWord(before) && !inWord(after)
}
