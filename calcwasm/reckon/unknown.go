package reckon

import "columnbowl/calcwasm/formula"

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
		}
	}
}

// WaitsFor names, for a term that waits, the unknown terms of the relation that
// lacks the fewest.
func (res *Result) WaitsFor(term int) []int {
	if res.Values[term].State != Waits {
		return nil
	}
	r := res.base
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
// ones: only what is in one of the smallest sets is asked for.
func (r *run) markWaits(sets [][]int) {
	if len(sets) == 0 {
		return
	}
	asked := make([]bool, len(r.values))
	for _, set := range sets {
		for _, t := range set {
			asked[t] = asked[t] || len(set) == len(sets[0])
		}
	}
	for i := range r.values {
		if r.values[i].State == Missing && !asked[i] {
			r.values[i].State = Waits
		}
	}
}
