package exercise

import (
	"math"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// plan is how the network derives what follows from a template's facts: found
// once by the network, then run through for each draw. It serves a draw if its
// choices are the same and its conditional rules hold.
type plan struct {
	choices []fixed // facts that are choices
	absent  []fixed // terms that do not exist in this build, with their other value
	steps   []step
	place   []int // for each term its step, -1 if it has none
	chain   []bool
	checks  []int // cautions that no draw may raise
	stands  []int // cautions that belong to the thing itself and are told on the sheet
}

// fixed is a term with its value.
type fixed struct {
	term  int
	value float64
}

// step derives one term.
type step struct {
	term, rule int
	expr       *formula.Expr // nil for an assumption
	value      float64       // of an assumption
	from       []int
}

// planFor finds the plan of a draw, or why there is none. Facts stand in env.
func (s *Set) planFor(t *Template, env *formula.Env) (*plan, string) {
	for _, p := range t.plans {
		if p.serves(s.Book, env) {
			return p, ""
		}
	}
	p, why := s.newPlan(t, env)
	if why == "" {
		t.plans = append(t.plans, p)
	}
	return p, why
}

// serves runs a plan on the facts in env and says whether it holds for them.
func (p *plan) serves(b *reckon.Book, env *formula.Env) bool {
	for _, c := range p.choices {
		if env.Values[c.term] != c.value {
			return false
		}
	}
	for _, a := range p.absent {
		env.Values[a.term] = a.value
	}
	for i := range p.steps {
		st := &p.steps[i]
		if when := b.Rules[st.rule].When; when != nil && when.Test(env) != formula.True {
			p.forget(env)
			return false
		}
		env.Values[st.term] = st.run(env)
	}
	return true
}

func (st *step) run(env *formula.Env) float64 {
	if st.expr == nil {
		return st.value
	}
	return st.expr.Eval(env)
}

// forget takes what was derived out of env again.
func (p *plan) forget(env *formula.Env) {
	for _, a := range p.absent {
		env.Values[a.term] = math.NaN()
	}
	for i := range p.steps {
		env.Values[p.steps[i].term] = math.NaN()
	}
}

// newPlan asks the network what follows from the facts in env.
func (s *Set) newPlan(t *Template, env *formula.Env) (*plan, string) {
	b := s.Book
	q := reckon.Question{Want: -1}
	p := &plan{}
	for _, f := range t.Facts {
		v := env.Values[f.Term]
		q.Facts = append(q.Facts, reckon.Fact{Term: f.Term, Low: v, Likely: v, High: v})
		if b.Terms[f.Term].Kind == formula.Choice {
			p.choices = append(p.choices, fixed{f.Term, v})
		}
	}
	res := b.Reckon(q)
	if len(res.Clashes) > 0 {
		return nil, "The facts contradict each other: " + res.ClashText(&res.Clashes[0], formula.US)
	}
	for term := range res.Values {
		if v := &res.Values[term]; v.State == reckon.NotApplicable && v.Likely == v.Likely {
			p.absent = append(p.absent, fixed{term, v.Likely})
		}
	}
	for _, term := range res.Order {
		v := &res.Values[term]
		if v.Searched { // found by trial: nobody works that out on a sheet
			continue
		}
		st := step{term: term, rule: v.Rule, expr: v.Expr, value: v.Likely, from: v.From}
		if st.expr != nil && !knownBefore(st.from, env) {
			continue
		}
		env.Values[term] = v.Likely
		p.steps = append(p.steps, st)
	}
	p.index(t, len(b.Terms))
	s.findCautions(p, env)
	for _, a := range t.Ask {
		if !env.Known(a.Term) {
			return nil, s.unknown(res, a.Term)
		}
	}
	return p, ""
}

// findCautions sorts the cautions that the sheet can raise.
func (s *Set) findCautions(p *plan, env *formula.Env) {
	for i := range s.Book.Cautions {
		switch c := &s.Book.Cautions[i]; {
		case c.When.Test(env) == formula.Unknown || s.onlyChoices(c.When):
		case c.Danger && alone(c.When):
			p.stands = append(p.stands, i)
		default:
			p.checks = append(p.checks, i)
		}
	}
}

// onlyChoices says whether a condition looks at nothing but choices: such a
// caution tells of the build that the author has chosen, not of a draw.
func (s *Set) onlyChoices(e *formula.Expr) bool {
	for _, t := range e.Terms() {
		if s.Book.Terms[t].Kind != formula.Choice {
			return false
		}
	}
	return true
}

// alone says whether a condition compares one term with a plain number: the
// caution then warns of the thing (pressure in a pipe, a shaft that turns), and
// every sensible draw raises it.
func alone(e *formula.Expr) bool {
	return e.X != nil && e.Y != nil && e.X.Op == formula.Ref && e.Y.Op == formula.Number
}

func knownBefore(terms []int, env *formula.Env) bool {
	for _, t := range terms {
		if !env.Known(t) {
			return false
		}
	}
	return true
}

// unknown says why an asked term does not follow.
func (s *Set) unknown(res *reckon.Result, term int) string {
	v := &res.Values[term]
	text := "“" + s.Book.Terms[term].ID + "” does not follow from the facts by plain steps"
	switch {
	case v.Reason != "":
		return text + ": " + v.Reason + "."
	case res.Known(term):
		return text + ": it can only be found by trial. Give one more fact."
	}
	q := res.Question
	q.Want = term
	for _, set := range s.Book.Reckon(q).Missing {
		text += "; it would with"
		for i, m := range set {
			if i > 0 {
				text += " and"
			}
			text += " “" + s.Book.Terms[m].ID + "”"
		}
	}
	return text + "."
}

// index finds the step of each term and the steps that the asked terms stand on.
func (p *plan) index(t *Template, terms int) {
	p.place = make([]int, terms)
	for i := range p.place {
		p.place[i] = -1
	}
	for i := range p.steps {
		p.place[p.steps[i].term] = i
	}
	p.chain = make([]bool, len(p.steps))
	for _, a := range t.Ask {
		p.mark(p.chain, a.Term, nil)
	}
}

// mark marks the steps that a term stands on; it does not go behind a term that
// is cut.
func (p *plan) mark(on []bool, term int, cut []bool) {
	i := p.place[term]
	if i < 0 || on[i] || cut != nil && cut[term] {
		return
	}
	on[i] = true
	for _, f := range p.steps[i].from {
		p.mark(on, f, cut)
	}
}

// about says whether a term is on the sheet: a fact, or on the way to what is asked.
func (p *plan) about(term int) bool {
	return p.place[term] < 0 || p.chain[p.place[term]]
}
