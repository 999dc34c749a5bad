package assembly

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// Asks names the facts that a person could supply so that nothing is wanting
// any more: for each wanting term the facts that lead to it, of several ways
// the one that adds fewest to the list. To ask for the term itself is one way
// of them. Nobody is asked what hangs on the hook: that is what the list is for.
//
// It goes by the relations of each term's own page only. The network knows more
// ways, turned round, but to search all of them for twenty terms took a second.
func (l *List) Asks() []int {
	a := &asker{List: l, book: l.Result.Book, path: make([]bool, len(l.Result.Values))}
	var list []int
	for _, t := range l.Lacks {
		if set, ok := a.way(t, list); ok {
			list = add(list, set)
		}
	}
	return list
}

type asker struct {
	*List
	book *reckon.Book
	path []bool // terms that the search is in the middle of
}

// cost orders ways: by the facts that they add to the list; then by those of
// them that the book could estimate from something better known, the speed
// rather than the bearing spacing.
type cost struct{ fresh, estimated int }

func (c cost) below(d cost) bool {
	return c.fresh < d.fresh || c.fresh == d.fresh && c.estimated < d.estimated
}

// way is the set of facts that gives a term at the least cost.
func (a *asker) way(term int, list []int) (best []int, found bool) {
	if term == a.Build.Made && a.book.Terms[a.Build.Asked].Ask != "" {
		return []int{a.Build.Asked}, true // the pieces make the setting from what is asked
	}
	if a.path[term] {
		return nil, false
	}
	a.path[term] = true
	defer func() { a.path[term] = false }()
	least := cost{fresh: len(a.path)}
	if a.book.Terms[term].Ask != "" && !among(a.Build.Hook, term) {
		best, found = []int{term}, true
		least = a.cost(best, list)
	}
	for i := range a.book.Rules {
		rule := &a.book.Rules[i]
		if rule.Target != term || rule.Relation == nil {
			continue
		}
		set, ok := a.by(rule, list, least.fresh)
		if c := a.cost(set, list); ok && (!found || c.below(least)) {
			best, found, least = set, true, c
		}
	}
	return best, found
}

// by is the set of facts that a rule wants to compute its target, given up once
// it adds more than most to the list.
func (a *asker) by(rule *reckon.Rule, list []int, most int) ([]int, bool) {
	env := a.Result.Env()
	var needs, set []int
	if rule.When != nil {
		if rule.When.Test(env) == formula.False {
			return nil, false
		}
		needs = rule.When.Lacking(env)
	}
	for _, t := range rule.Relation.Terms() {
		switch {
		case t == rule.Target || env.Known(t):
		case a.Result.Values[t].State == reckon.NotApplicable:
			return nil, false
		default:
			needs = add(needs, []int{t})
		}
	}
	for _, t := range needs {
		part, ok := a.way(t, add(list[:len(list):len(list)], set))
		if set = add(set, part); !ok || a.cost(set, list).fresh > most {
			return nil, false
		}
	}
	return set, true
}

func (a *asker) cost(set, list []int) cost {
	var c cost
	for _, t := range set {
		if among(list, t) {
			continue
		}
		c.fresh++
		for i := range a.book.Rules {
			if r := &a.book.Rules[i]; r.Strength == reckon.Estimate && r.Target == t {
				c.estimated++
				break
			}
		}
	}
	return c
}

func among(list []int, t int) bool {
	for _, have := range list {
		if have == t {
			return true
		}
	}
	return false
}
