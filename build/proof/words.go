package proof

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// unfinished are words that mark text nobody has finished. They are put
// together here, so that a search for them finds real ones only.
var unfinished = []string{
	"to" + "do", "fix" + "me", "x" + "xx", "t" + "bd", "t" + "ba", "lo" + "rem", "ip" + "sum", "place" + "holder",
	"coming" + " soon", "to be" + " written", "to be" + " continued", "under" + " construction", "fill" + " me in",
}

var unfinishedWord = regexp.MustCompile(`(?i)` + strings.Join(unfinished, "|"))

// words looks for marks of unfinished text in all files.
func (c *checker) words() {
	for _, file := range keys(c.book.Files) {
		src := c.book.Files[file]
		for _, at := range unfinishedWord.FindAllIndex(src, -1) {
			before, _ := utf8.DecodeLastRune(src[:at[0]])
			after, _ := utf8.DecodeRune(src[at[1]:])
			if inWord(before) || inWord(after) {
				continue
			}
			c.found.Add(file, at[0], at[1]-at[0], "“"+string(src[at[0]:at[1]])+"” marks unfinished text: finish it, or take it out.", "")
		}
	}
}

// inWord says whether a character goes on with a word. Nothing (the beginning
// or the end of the file) decodes as RuneError, which does not.
func inWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }
