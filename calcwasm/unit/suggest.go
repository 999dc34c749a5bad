package unit

import "strings"

// longestSpelling bounds the spellings compared.
const longestSpelling = 40

// Suggest is the symbol of the unit whose spelling is nearest to symbol, or ""
// when none is near: one letter wrong in a short spelling, two in a long one.
// Case counts as half a letter. A spelling people type gives its unit at once.
func Suggest(symbol string) string {
	_, foldedSpellings := allSpellings()
	if u := foldedSpellings[fold(spellingKey(symbol))]; u != nil {
		return u.Symbol
	}
	best, nearest := "", 2*len(symbol)
	if len(symbol) > longestSpelling {
		return ""
	}
	limit := 2
	if len(symbol) >= 5 {
		limit = 4
	}
	if len(symbol) < 2 {
		limit = 1
	}
	for _, u := range table {
		if d := distance(symbol, u.Symbol, limit); d < nearest {
			best, nearest = u.Symbol, d
		}
		for _, also := range u.Also {
			if d := distance(symbol, also, limit); d < nearest {
				best, nearest = u.Symbol, d
			}
		}
	}
	if nearest > limit {
		return ""
	}
	return best
}

// distance is the edit distance of two spellings in half letters: 2 for each
// letter put in, left out, changed or swapped with its neighbour, 1 for a letter
// in the other case. Where the lengths alone put it above limit, any number above
// limit is given.
func distance(a, b string, limit int) int {
	if 2*(len(a)-len(b)) > limit || 2*(len(b)-len(a)) > limit || len(b) > longestSpelling {
		return limit + 1
	}
	var rows [3][longestSpelling + 1]int
	before, last, now := &rows[0], &rows[1], &rows[2]
	for j := range len(b) + 1 {
		last[j] = 2 * j
	}
	for i := 1; i <= len(a); i++ {
		now[0] = 2 * i
		for j := 1; j <= len(b); j++ {
			now[j] = min(last[j]+2, now[j-1]+2, last[j-1]+change(a[i-1], b[j-1]))
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				now[j] = min(now[j], before[j-2]+2)
			}
		}
		before, last, now = last, now, before
	}
	return last[len(b)]
}

// change is the cost of one letter standing for another.
func change(a, b byte) int {
	switch {
	case a == b:
		return 0
	case strings.EqualFold(string(a), string(b)) && a < 0x80 && b < 0x80:
		return 1
	}
	return 2
}
