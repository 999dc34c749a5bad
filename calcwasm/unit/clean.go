package unit

import "strings"

// cleaned is a typed text with its many spaces, dashes, quotes and fraction
// signs turned into the plain ones, and the way back to the typed bytes.
type cleaned struct {
	text string
	at   []int // at[i] is the byte of the typed text that text[i] came from
}

// plainRunes are the signs a person or a word processor may put for a plain one.
var plainRunes = map[rune]string{
	'\t': " ", '\n': " ", '\r': " ", '\u2000': " ", '\u2001': " ", '\u2002': " ", '\u2003': " ",
	'\u2004': " ", '\u2005': " ", '\u2006': " ", '\u2007': " ", '\u2008': " ", '\u200a': " ", '\u3000': " ",
	'\u200b': "", '\u2060': "", '\ufeff': "", '\u00ad': "", '\u200e': "", '\u200f': "",
	'\u2212': "-", '\u2010': "-", '\u2011': "-", '\u2012': "-", '–': "-", '—': "-", '―': "-", '﹣': "-", '-': "-",
	'’': "'", '‘': "'", '′': "'", '´': "'", '`': "'", '”': "\"", '“': "\"", '″': "\"", '„': "\"",
	'⁄': "/", '∕': "/", 'º': "°", '˚': "°", '⋅': "·", '∼': "~", '∙': "·",
}

// fractionRunes are the fractions that have a sign of their own.
var fractionRunes = map[rune]string{
	'½': "1/2", '¼': "1/4", '¾': "3/4", '⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8",
	'⅓': "1/3", '⅔': "2/3", '⅕': "1/5", '⅖': "2/5", '⅗': "3/5", '⅘': "4/5", '⅙': "1/6", '⅚': "5/6",
}

// clean makes a typed text plain.
func clean(typed string) cleaned {
	var c cleaner
	for i, r := range typed {
		c.from = i
		switch {
		case r == '\u00a0' || r == '\u202f' || r == '\u2009':
			if !c.groups(typed[i+len(string(r)):]) {
				c.put(" ")
			}
		case fractionRunes[r] != "":
			if last := c.last(); isDigit(last) {
				c.put(" ")
			}
			c.put(fractionRunes[r])
		case r == '\'' || plainRunes[r] == "'":
			c.putQuote()
		default:
			plain, known := plainRunes[r]
			if !known {
				plain = string(r)
			}
			c.put(plain)
		}
	}
	return cleaned{text: c.text.String(), at: append(c.at, len(typed))}
}

// cleaner collects the plain text.
type cleaner struct {
	text strings.Builder
	at   []int
	from int
}

func (c *cleaner) put(s string) {
	c.text.WriteString(s)
	for range len(s) {
		c.at = append(c.at, c.from)
	}
}

func (c *cleaner) last() byte {
	if text := c.text.String(); text != "" {
		return text[len(text)-1]
	}
	return 0
}

// putQuote puts ', or makes an inch mark of two of them in a row.
func (c *cleaner) putQuote() {
	text := c.text.String()
	if c.last() != '\'' {
		c.put("'")
		return
	}
	c.text.Reset()
	c.text.WriteString(text[:len(text)-1] + "\"")
}

// groups tells whether a no-break or thin space stands between thousands: a
// digit before it, and exactly three behind. Such a space is dropped; an ordinary
// space never groups, for "6 500 ft" may be two numbers.
func (c *cleaner) groups(behind string) bool {
	digits := leadingDigits(behind)
	return isDigit(c.last()) && len(digits) == 3 && !strings.HasPrefix(behind[3:], "/") && !strings.HasPrefix(behind[3:], "⁄")
}
