package reckon

import "columnbowl/calcwasm/formula"

// mostSets is how many sets of facts are named for a wanted term.
const mostSets = 5

// mostRounds ends the search however the sets of a large book displace each
// other; the longest chains of the handbook take a dozen.
const mostRounds = 64

// search looks for the smallest sets of facts that would give a wanted term.
//
// It works upwards from what can be asked: a set of a term is the term itself,
// or the union of sets for the unknown terms of a relation that gives it. As
// each set stands for a derivation from its own members, no circle can arise.
type search struct {
	r     *run
	want  int
	rules []int     // those that have to do with the wanted term
	sets  []setList // by term
	facts []int     // the terms that the bits of the sets stand for
	needs []int     // room for the unknown terms of a rule
}

// missing finds the smallest sets of facts, each of which would give the
// wanted term: at most five, fewest facts first. Only terms that a person can
// supply are named.
func (r *run) missing(want int) [][]int {
	s := &search{r: r, want: want, sets: make([]setList, len(r.values))}
	s.reach()
	for changed, rounds := true, 0; changed && rounds < mostRounds; rounds++ {
		changed = false
		for _, i := range s.rules {
			changed = s.grow(i) || changed
		}
	}
	found := &s.sets[want]
	var list [][]int
	for _, have := range found.sets[:min(found.n, mostSets)] {
		var terms []int
		for i, t := range s.facts {
			if have.has(i) {
				terms = append(terms, t)
			}
		}
		list = append(list, terms)
	}
	return list
}

// reach goes out from the wanted term through unknown terms, and collects the
// rules on the way and the terms that can be asked for, in the order of the book.
func (s *search) reach() {
	r := s.r
	seenTerm, seenRule := make([]bool, len(r.values)), make([]bool, len(r.book.Rules))
	queue := []int{s.want}
	seenTerm[s.want] = true
	for len(queue) > 0 {
		t := queue[0]
		queue = queue[1:]
		for _, i := range r.book.rulesOf[t] {
			rule := &r.book.Rules[i]
			if seenRule[i] || r.active(rule) == formula.False {
				continue
			}
			seenRule[i] = true
			for _, next := range s.unknown(rule) {
				if !seenTerm[next] {
					seenTerm[next] = true
					queue = append(queue, next)
				}
			}
		}
	}
	for i, seen := range seenRule {
		if seen {
			s.rules = append(s.rules, i)
		}
	}
	for t, seen := range seenTerm {
		if seen && t != s.want && r.open(t) && r.book.Terms[t].Ask != "" && len(s.facts) < setRoom {
			s.sets[t].add(set{}.with(len(s.facts)))
			s.facts = append(s.facts, t)
		}
	}
}

// unknown lists the unknown terms of a rule, those that decide its condition
// behind those of its relation.
func (s *search) unknown(rule *Rule) []int {
	s.needs = s.needs[:0]
	for _, t := range rule.terms {
		if !s.r.env.Known(t) {
			s.needs = append(s.needs, t)
		}
	}
	if rule.When != nil && s.r.active(rule) != formula.True {
		s.needs = append(s.needs, rule.When.Lacking(s.r.env)...)
	}
	return s.needs
}

// grow adds to the sets of a rule's terms what the rule makes of the others'.
func (s *search) grow(i int) bool {
	rule := &s.r.book.Rules[i]
	needs := s.unknown(rule)
	changed := false
	if len(needs) == 1 {
		return false // it has been tried, and gave nothing
	}
	for k, t := range needs {
		if !contains(rule.terms, t) || !s.r.open(t) || !rule.gives(t) {
			continue
		}
		all := setList{n: 1}
		for j, other := range needs {
			if j != k && all.n > 0 {
				all = all.join(&s.sets[other])
			}
		}
		for _, u := range all.sets[:all.n] {
			changed = s.sets[t].add(u) || changed
		}
	}
	return changed
}

// gives says whether a rule can compute a term from its others.
func (rule *Rule) gives(term int) bool {
	if rule.Strength == Estimate {
		return term == rule.Target
	}
	return rule.turned(term) != nil || !rule.Relation.OneWay()
}
