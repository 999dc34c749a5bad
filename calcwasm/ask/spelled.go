package ask

import (
	"strings"

	"columnbowl/calcwasm/search"
)

// inWords reads the number with which a row of words begins: “two hundred and
// fifty”, “one eighty one”, “eight point four”, “two and a half”, “three
// quarters”. n is how many words it takes; large tells that it can be nothing
// but a number.
func inWords(words []search.Word) (value float64, n int, large bool) {
	total, part := 0, 0
	for ; n < len(words) && (n == 0 || words[n].From <= words[n-1].To+1); n++ {
		w := numberWord(words[n].Text)
		switch {
		case w == 100:
			part, large = max(part, 1)*100, true
		case w == 1000:
			total, part, large = total+max(part, 1)*1000, 0, true
		case w == 0 && words[n].Text == "and" && part >= 100 && numberAt(words, n+1) > 0:
		case w == 0 || part > 0 && part%10 != 0 && w < 10 || part%100 != 0 && part > 100 && w >= 10:
			value, n, more := withFraction(words, n, total+part)
			return value, n, large || more
		case part > 0 && part < 100 && w >= 10: // one eighty, fourteen fifty
			part, large = part*100+w, true
		default:
			part += w
		}
	}
	return float64(total + part), n, large
}

// withFraction reads on behind a whole number in words.
func withFraction(words []search.Word, n, whole int) (value float64, _ int, more bool) {
	value = float64(whole)
	switch text := wordAt(words, n); {
	case n == 0:
	case text == "point" && numberAt(words, n+1) > 0:
		for step := 0.1; numberAt(words, n+1) > 0 && numberAt(words, n+1) < 10; step /= 10 {
			value += step * float64(numberAt(words, n+1))
			n++
		}
		return value, n + 1, true
	case text == "and" && wordAt(words, n+1) == "a" && share(wordAt(words, n+2)) > 0:
		return value + share(wordAt(words, n+2)), n + 3, true
	case text == "and" && numberAt(words, n+1) > 0 && share(wordAt(words, n+2)) > 0:
		return value + float64(numberAt(words, n+1))*share(wordAt(words, n+2)), n + 3, true
	case share(text) > 0:
		value *= share(text)
		if wordAt(words, n+1) == "of" && wordAt(words, n+2) == "an" {
			n += 2
		}
		return value, n + 1, false
	}
	return value, n, false
}

func wordAt(words []search.Word, i int) string {
	if i < len(words) {
		return words[i].Text
	}
	return ""
}

func numberAt(words []search.Word, i int) int { return numberWord(wordAt(words, i)) }

// share is the value of a word that says a fraction, or 0.
func share(text string) float64 {
	switch strings.TrimSuffix(text, "s") {
	case "half":
		return 0.5
	case "quarter":
		return 0.25
	case "eighth":
		return 0.125
	case "sixteenth":
		return 0.0625
	}
	return 0
}

const numberWords = " one:1 two:2 three:3 four:4 five:5 six:6 seven:7 eight:8 nine:9 ten:10 eleven:11 twelve:12 thirteen:13 fourteen:14 fifteen:15 sixteen:16" +
	" seventeen:17 eighteen:18 nineteen:19 twenty:20 thirty:30 forty:40 fifty:50 sixty:60 seventy:70 eighty:80 ninety:90 hundred:100 thousand:1000 "

// numberWord is the value of a word that says a number, or 0.
func numberWord(text string) int {
	at := strings.Index(numberWords, " "+text+":")
	if at < 0 || text == "" {
		return 0
	}
	n := 0
	for i := at + len(text) + 2; numberWords[i] != ' '; i++ {
		n = 10*n + int(numberWords[i]-'0')
	}
	return n
}

// oneAnd are units of which people say one and a part, and how they are written.
var oneAnd = map[string]string{"inch": "in", "foot": "ft", "metre": "m", "meter": "m"}

// unitAnd is the length of “foot and a half”, its value and its unit, where no
// number stands before it.
func unitAnd(text string) (value float64, symbol string, length int) {
	words := search.Split(text[:min(len(text), 30)])
	if symbol = oneAnd[wordAt(words, 0)]; symbol == "" {
		return 0, "", 0
	}
	value, n, more := withFraction(words, 1, 1)
	if !more {
		return 0, "", 0
	}
	return value, symbol, words[n-1].To
}
