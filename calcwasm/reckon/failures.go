package reckon

import "slices"

// failures remembers what a run has tried in vain: a rule for a term, or two
// terms at once. Most rules never fail, and each is asked about many times in a
// run: a list of them answers for most without a look at the pairs.
type failures struct {
	rules []bool
	pairs [][2]int
	both  map[[2]int]bool // thousands, in the few runs that search for two terms
}

func (f *failures) has(rule, term int) bool {
	return f.rules[rule] && slices.Contains(f.pairs, [2]int{rule, term})
}

func (f *failures) add(rule, term int) {
	f.rules[rule] = true
	f.pairs = append(f.pairs, [2]int{rule, term})
}

func (f *failures) hasBoth(a, b int) bool { return f.both[[2]int{a, b}] }

func (f *failures) addBoth(a, b int) {
	if f.both == nil {
		f.both = map[[2]int]bool{}
	}
	f.both[[2]int{a, b}] = true
}
