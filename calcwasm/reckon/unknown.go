package reckon

import (
	"slices"

	"columnbowl/calcwasm/formula"
)

// markUnknown sorts the terms without a value into those that a person could
// supply, those that wait for others, those with several values and those
// whose computation is not valid.
func (r *run) markUnknown() {
	for i := range r.values {
		v := &r.values[i]
		if r.env.Known(i) || v.State == NotApplicable || v.State == Outside {
			continue
		}
		switch {
		case len(v.Roots) > 1:
			v.State = Several
		case v.Reason != "":
			v.State = Outside
		case r.book.Terms[i].Ask != "":
			v.State = Missing
		default:
			v.State = Waits
			v.WaitsFor = r.waitsFor(i)
		}
	}
}

// waitsFor names the unknown terms of the relation that lacks the fewest.
func (r *run) waitsFor(term int) []int {
	var best []int
	for _, i := range r.book.rulesOf[term] {
		rule := &r.book.Rules[i]
		if r.active(rule) == formula.False || rule.Strength == Estimate && rule.Target != term || rule.Target != term && rule.Relation.OneWay() {
			continue
		}
		var lacks []int
		for _, t := range rule.terms {
			if t != term && !r.env.Known(t) {
				lacks = append(lacks, t)
			}
		}
		if rule.When != nil {
			lacks = append(lacks, rule.When.Lacking(r.env)...)
		}
		if len(lacks) > 0 && (best == nil || len(lacks) < len(best)) {
			best = lacks
		}
	}
	return best
}

// markWaits turns missing terms that the wanted one does not need into waiting
// ones: only what is in the smallest sets is asked for.
func (r *run) markWaits(sets [][]int) {
	if len(sets) == 0 {
		return
	}
	asked := make([]bool, len(r.values))
	for _, t := range sets[0] {
		asked[t] = true
	}
	for i := range r.values {
		if r.values[i].State == Missing && !asked[i] {
			r.values[i].State = Waits
			r.values[i].WaitsFor = r.waitsFor(i)
		}
	}
}

const (
	mostSets   = 5  // sets named for a wanted term
	keptSets   = 12 // sets kept for each term on the way
	largestSet = 16 // facts in a set
)

// missing finds the smallest sets of facts, each of which would give the
// wanted term: at most five, fewest facts first. Only terms that a person can
// supply are named.
//
// It works upwards from what can be asked: a set of a term is the term itself,
// or the union of sets for the unknown terms of a relation that gives it. As
// each set stands for a derivation from its own members, no circle can arise.
func (r *run) missing(want int) [][]int {
	sets := make([][][]int, len(r.values))
	for t := range r.values {
		switch {
		case !r.open(t) && t != want:
		case t != want && r.book.Terms[t].Ask != "":
			sets[t] = [][]int{{t}}
		}
	}
	for changed, rounds := true, 0; changed && rounds < 40; rounds++ {
		changed = false
		for i := range r.book.Rules {
			if r.grow(sets, i, want) {
				changed = true
			}
		}
	}
	found := sets[want]
	if len(found) > mostSets {
		found = found[:mostSets]
	}
	return found
}

// grow adds to the sets of a rule's terms what the rule makes of the others' sets.
func (r *run) grow(sets [][][]int, i, want int) bool {
	rule := &r.book.Rules[i]
	if rule.Relation == nil || r.active(rule) == formula.False {
		return false
	}
	var unknown []int
	for _, t := range rule.terms {
		if !r.env.Known(t) {
			unknown = append(unknown, t)
		}
	}
	var extra []int // what decides the condition
	if rule.When != nil && r.active(rule) != formula.True {
		extra = rule.When.Lacking(r.env)
	}
	changed := false
	for _, t := range unknown {
		if !r.open(t) && t != want || !rule.gives(t) {
			continue
		}
		needs := append(others(unknown, t), extra...)
		for _, set := range r.unions(sets, needs, want) {
			changed = addSet(&sets[t], set) || changed
		}
	}
	return changed
}

// gives says whether a rule can compute a term from its others.
func (rule *Rule) gives(term int) bool {
	if rule.Strength == Estimate {
		return term == rule.Target
	}
	return rule.isolated[term] != nil || !rule.Relation.OneWay()
}

// unions combines one set of each needed term in all ways, smallest kept.
func (r *run) unions(sets [][][]int, needs []int, want int) [][]int {
	all := [][]int{nil}
	for _, t := range needs {
		var next [][]int
		for _, have := range all {
			for _, more := range sets[t] {
				u := union(have, more)
				if len(u) <= largestSet && !contains(u, want) {
					addSet(&next, u)
				}
			}
		}
		all = next
	}
	if len(needs) == 0 {
		return nil
	}
	return all
}

func union(a, b []int) []int {
	u := append(slices.Clone(a), b...)
	slices.Sort(u)
	return slices.Compact(u)
}

// addSet adds a set to a list kept in order of size, unless one of its subsets
// is there already; supersets of it are dropped. It reports whether it was added.
func addSet(list *[][]int, set []int) bool {
	for _, have := range *list {
		if subset(have, set) {
			return false
		}
	}
	kept := (*list)[:0:0]
	for _, have := range *list {
		if !subset(set, have) {
			kept = append(kept, have)
		}
	}
	at, _ := slices.BinarySearchFunc(kept, set, compareSets)
	kept = slices.Insert(kept, at, set)
	added := true
	if len(kept) > keptSets {
		added = at < keptSets
		kept = kept[:keptSets]
	}
	*list = kept
	return added
}

func compareSets(a, b []int) int {
	if len(a) != len(b) {
		return len(a) - len(b)
	}
	return slices.Compare(a, b)
}

// subset says whether all of a is in b; both are in order.
func subset(a, b []int) bool {
	i := 0
	for _, x := range b {
		if i < len(a) && a[i] == x {
			i++
		}
	}
	return i == len(a)
}
