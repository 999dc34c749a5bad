package assembly

// Asks names the facts that a person could supply so that nothing is wanting
// any more: for each wanting term the facts that lead to it, of several ways
// the one that adds fewest to the list. A term that only a person can supply
// is asked for itself.
func (l *List) Asks() []int {
	var list []int
	for _, t := range l.Lacks {
		if t == l.Build.Made && l.Result.Book.Terms[l.Build.Asked].Ask != "" {
			list = add(list, []int{l.Build.Asked})
			continue
		}
		list = add(list, l.way(t, list))
	}
	return list
}

// way is the set of facts that gives a term and adds fewest to a list.
func (l *List) way(term int, list []int) []int {
	q := l.Result.Question
	q.Want = term
	var best []int
	found := false
	for _, set := range l.Result.Book.Reckon(q).Missing {
		set = l.wish(set)
		if fresh := len(add(list[:len(list):len(list)], set)); !found || fresh < len(add(list[:len(list):len(list)], best)) {
			best, found = set, true
		}
	}
	if !found && l.Result.Book.Terms[term].Ask != "" {
		return []int{term}
	}
	return best
}

// wish puts the asked setting in the place of the made one: the pieces make
// that from what is asked.
func (l *List) wish(set []int) []int {
	out := make([]int, len(set))
	for i, t := range set {
		if t == l.Build.Made {
			t = l.Build.Asked
		}
		out[i] = t
	}
	return out
}
