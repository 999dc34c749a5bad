package search

import (
	"strings"
	"unicode/utf8"
)

// Word is a word of a text: what it says, in small letters and plain ones, and
// where it stands.
type Word struct {
	Text     string
	From, To int // bytes of the text
}

// accents are the letters with marks that stand in names and units, and the
// plain ones people type for them.
const accents = "à:a á:a â:a ã:a ä:a å:a ç:c è:e é:e ê:e ë:e ì:i í:i î:i ï:i ñ:n ò:o ó:o ô:o õ:o ö:o ø:o ù:u ú:u û:u ü:u ý:y œ:oe æ:ae ²:2 ³:3 "

// Split divides a text into its words. An apostrophe between letters is left
// out: “pump's” is pumps.
func Split(text string) []Word {
	var list []Word
	var b []byte
	from := 0
	for i := 0; i < len(text); {
		r, n := utf8.DecodeRuneInString(text[i:])
		plain := letters(r, text[i:i+n])
		inside := (r == '\'' || r == '’') && len(b) > 0
		switch {
		case plain != "":
			if len(b) == 0 {
				from = i
			}
			b = append(b, plain...)
		case !inside && len(b) > 0:
			list = append(list, Word{string(b), from, i})
			b = b[:0]
		}
		i += n
	}
	if len(b) > 0 {
		list = append(list, Word{string(b), from, len(text)})
	}
	return list
}

// letters is what a letter or digit counts as; "" for anything else.
func letters(r rune, own string) string {
	switch {
	case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
		return own
	case r >= 'A' && r <= 'Z':
		return string(r + 'a' - 'A')
	case r < 0x80 || r == utf8.RuneError:
		return ""
	}
	if at := strings.Index(accents, strings.ToLower(own)+":"); at >= 0 {
		rest := accents[at+len(own)+1:]
		return rest[:strings.IndexByte(rest, ' ')]
	}
	if r >= 0x370 && r <= 0x3ff { // Greek letters are symbols: η, μ, Δ
		return strings.ToLower(own)
	}
	return ""
}

// common are the words that say nothing about a page. They are left out of the
// running text's index, and out of a query that has other words.
const common = " a about all also an and any are as at be been but by can could did do does for from get had has have he how i if in into is it" +
	" its itself me more much my no not of off on one only or our out s so some such than that the their them then there these they this" +
	" to too up was we were what when where which while who why will with would you your "

func isCommon(word string) bool { return strings.Contains(common, " "+word+" ") }
