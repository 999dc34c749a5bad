package search

// Slack is how many letters of a word may be wrong: none up to three letters,
// one up to seven, two above.
func Slack(letters int) int {
	switch {
	case letters < 4:
		return 0
	case letters < 8:
		return 1
	}
	return 2
}

// Distance counts the letters to put in, take out, change or swap with their
// neighbour to make b of a (the optimal string alignment of Damerau and
// Levenshtein). Beyond most it stops and returns most+1.
func Distance(a, b string, most int) int {
	const longest = 40
	if len(a)-len(b) > most || len(b)-len(a) > most || len(a) > longest || len(b) > longest {
		return most + 1
	}
	var rows [3][longest + 1]int
	before, above, row := &rows[0], &rows[1], &rows[2]
	for j := range len(b) + 1 {
		above[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		least := i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			d := min(above[j]+1, row[j-1]+1, above[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, before[j-2]+1)
			}
			row[j] = d
			least = min(least, d)
		}
		if least > most {
			return most + 1
		}
		before, above, row = above, row, before
	}
	return min(above[len(b)], most+1)
}
