package assembly

import "columnbowl/calcwasm/reckon"

// Asks names the facts that a person could supply so that nothing is wanting
// any more: for each wanting term the facts that lead to it, of several ways
// the one that adds fewest to the list. To ask for the term itself is one way
// of them. Nobody is asked what hangs on the hook: that is what the list is for.
func (l *List) Asks() []int {
	var list []int
	for _, t := range l.Lacks {
		if !among(l.Build.Hook, t) {
			list = add(list, l.way(t, list))
		}
	}
	return list
}

// way is the set of facts that gives a term at the least cost.
func (l *List) way(term int, list []int) []int {
	book := l.Result.Book
	q := l.Result.Question
	q.Want = term
	var best []int
	least := [3]int{len(book.Terms) + 1}
	try := func(set []int) {
		if c := l.cost(term, set, list); before(c, least) {
			best, least = l.wish(set), c
		}
	}
	for _, set := range book.Reckon(q).Missing {
		try(set)
	}
	if book.Terms[term].Ask != "" {
		try([]int{term})
	}
	return best
}

// cost orders ways: by the facts that they add to the list; then by those of
// them that the book could estimate from something better known, the speed
// rather than the bearing spacing; then by those that stand further away than
// in an estimate of the term itself.
func (l *List) cost(term int, set, list []int) (c [3]int) {
	book := l.Result.Book
	for _, t := range set {
		if among(l.Build.Hook, t) {
			return [3]int{len(book.Terms) + 1}
		}
		near := false
		for i := range book.Rules {
			r := &book.Rules[i]
			if r.Strength == reckon.Estimate && r.Target == t && t != l.Build.Made {
				c[1]++
				break
			}
		}
		for i := range book.Rules {
			r := &book.Rules[i]
			near = near || r.Target == term && r.Relation != nil && among(r.Relation.Terms(), t)
		}
		if !near {
			c[2]++
		}
	}
	c[0] = len(add(list[:len(list):len(list)], l.wish(set))) - len(list)
	return c
}

func before(a, b [3]int) bool {
	for i := range a {
		if a[i] != b[i] {
			return a[i] < b[i]
		}
	}
	return false
}

// wish puts the asked setting in the place of the made one: the pieces make
// that from what is asked.
func (l *List) wish(set []int) []int {
	out := make([]int, len(set))
	for i, t := range set {
		if t == l.Build.Made && l.Result.Book.Terms[l.Build.Asked].Ask != "" {
			t = l.Build.Asked
		}
		out[i] = t
	}
	return out
}

func among(list []int, t int) bool {
	for _, have := range list {
		if have == t {
			return true
		}
	}
	return false
}
