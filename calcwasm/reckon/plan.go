package reckon

import "columnbowl/calcwasm/formula"

// planner finds out what would be known if a term were, without computing
// anything: it only counts the unknown terms of each rule.
type planner struct {
	r       *run
	counts  []int  // unknown terms of each rule, -1 for a rule that cannot serve
	left    []int  // counts, while a plan is made
	touched []int  // the rules whose left differs from their counts
	known   []int  // the number of the plan in which a term was made known
	learned []int  // the terms that this plan has made known
	dead    []bool // terms of plans that led nowhere
	used    []int  // the number of the plan in which a rule was used
	number  int    // of the plan
	barred  bool   // an estimate has been left aside in this plan
	ready   [2][]int
}

// planner counts the unknown terms of all rules that hold.
func (r *run) planner() *planner {
	rules := r.book.Rules
	p := &planner{r: r, counts: make([]int, len(rules)), left: make([]int, len(rules)),
		known: make([]int, len(r.values)), dead: make([]bool, len(r.values)), used: make([]int, len(rules))}
	for i := range rules {
		p.counts[i] = -1
		if rules[i].Strength == Assumption {
			continue
		}
		if n, _ := r.unknowns(&rules[i]); n > 1 && r.active(&rules[i]) == formula.True {
			p.counts[i] = n
		}
	}
	copy(p.left, p.counts)
	return p
}

// plan follows what would be known if the term were, identities before
// estimates, until a relation has no unknown left; only steps that lead there
// are kept. If no identity is left over, an estimate of a term on the way is:
// the motor's power leaves so much for the thrust bearing, and the yardstick
// for the bearing asks for as much. The rules to skip are not taken as the one left over.
func (p *planner) plan(term int, skip []int) (loop, bool) {
	if p.dead[term] || !p.starts(term) {
		return loop{}, false
	}
	for _, i := range p.touched {
		p.left[i] = p.counts[i]
	}
	p.touched, p.learned = p.touched[:0], p.learned[:0]
	p.number++
	p.barred = false
	p.ready[0], p.ready[1] = p.ready[0][:0], p.ready[1][:0]
	l := loop{cut: term}
	if l.left = p.learn(term, skip); l.left >= 0 {
		return l, true
	}
	for {
		s, ok := p.next()
		if !ok {
			if l.left = p.estimate(skip, l.steps); l.left < 0 {
				p.bury(skip)
				return loop{}, false
			}
			return p.r.trim(l), true
		}
		p.used[s.rule] = p.number
		l.steps = append(l.steps, s)
		if l.left = p.learn(s.term, skip); l.left >= 0 {
			return p.r.trim(l), true
		}
	}
}

// bury keeps all terms of a plan that led nowhere from being planned from again.
// Every relation among them has given one of them, so that from another of them
// no relation is left over either. That holds where no estimate is barred, neither
// by its number in skip, nor by the choice of another one, nor by its like.
func (p *planner) bury(skip []int) {
	if p.barred || len(skip) > 0 || len(p.r.q.Choose) > 0 {
		return
	}
	for _, t := range p.learned {
		p.dead[t] = true
	}
}

// starts says whether a relation would have one unknown left if a term were known:
// else nothing follows from it, as with most terms.
func (p *planner) starts(term int) bool {
	for _, i := range p.r.book.rulesOf[term] {
		if p.counts[i] == 2 {
			return true
		}
	}
	return false
}

// learn makes a term known. It returns an identity that has no unknown left by
// that, or -1; rules with a single one become ready.
func (p *planner) learn(term int, skip []int) int {
	p.known[term] = p.number
	p.learned = append(p.learned, term)
	left := -1
	for _, i := range p.r.book.rulesOf[term] {
		if p.left[i] < 0 {
			continue
		}
		p.left[i]--
		p.touched = append(p.touched, i)
		strength := p.r.book.Rules[i].Strength
		switch {
		case p.left[i] == 0 && strength == Identity && p.used[i] != p.number && left < 0 && !contains(skip, i):
			left = i
		case p.left[i] == 1:
			p.ready[strength] = append(p.ready[strength], i)
		}
	}
	return left
}

// next takes a ready rule that gives a term.
func (p *planner) next() (step, bool) {
	for strength := range p.ready {
		for len(p.ready[strength]) > 0 {
			i := p.ready[strength][0]
			p.ready[strength] = p.ready[strength][1:]
			rule := &p.r.book.Rules[i]
			if p.left[i] != 1 || p.used[i] == p.number {
				continue
			}
			t := p.unknown(rule)
			if t >= 0 && rule.turned(t) != nil && p.r.open(t) && (rule.Strength == Identity || t == rule.Target) {
				return step{i, t}, true
			}
		}
	}
	return step{}, false
}

// estimate finds the estimate in force of a term that the plan has made known
// by other relations: the first that holds, or the one that was chosen.
func (p *planner) estimate(skip []int, steps []step) int {
	first := -1
	for _, i := range p.touched {
		rule := &p.r.book.Rules[i]
		if p.left[i] != 0 || rule.Strength != Estimate || p.used[i] == p.number || contains(skip, i) || p.known[rule.Target] != p.number {
			continue
		}
		if p.guesses(rule.Target, steps) {
			p.barred = true // two estimates of one term are no equation: they stand for each other
			continue
		}
		if chosen := p.r.q.Choose[rule.Target]; (chosen == "" || chosen == rule.Name) && (first < 0 || i < first) {
			first = i
		}
	}
	return first
}

// guesses says whether steps give a term by an estimate.
func (p *planner) guesses(term int, steps []step) bool {
	for _, s := range steps {
		if s.term == term && p.r.book.Rules[s.rule].Strength == Estimate {
			return true
		}
	}
	return false
}

// unknown is the one term of a rule that is not known yet.
func (p *planner) unknown(rule *Rule) int {
	for _, t := range rule.terms {
		if !p.r.env.Known(t) && p.known[t] != p.number {
			return t
		}
	}
	return -1
}
