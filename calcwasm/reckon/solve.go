package reckon

import (
	"math"

	"columnbowl/calcwasm/formula"
)

// run is one propagation of plain values through the network.
type run struct {
	book     *Book
	q        *Question
	env      *formula.Env // what is known, by term
	values   []Value
	order    []int
	clash    []Clash
	failed   failures
	ready    ready
	searches int    // for two terms at once
	vain     []bool // terms of circles that have been searched in vain
	corner   bool   // the run is for a corner of the ranges
}

// Reckon derives all that follows from a question's facts.
func (b *Book) Reckon(q Question) *Result {
	b = b.forFamily(q.Facts)
	b.turnHeights(&q)
	r := b.run(&q, nil)
	res := &Result{Book: b, Question: q, Values: r.values, Order: r.order, Clashes: r.clash, env: r.env, base: r}
	res.Cautions = r.cautions()
	res.spread(r)
	res.Hangs = res.rank(r)
	r.markUnknown()
	if q.Want >= 0 && !res.Known(q.Want) {
		res.Missing = r.missing(q.Want)
		r.markWaits(res.Missing)
	}
	return res
}

// run propagates with the facts' likely values, or with the values of at.
func (b *Book) run(q *Question, at []float64) *run {
	r := &run{book: b, q: q, env: formula.NewEnv(b.Scope), values: make([]Value, len(b.Terms)), ready: b.readyAtFirst(),
		failed: failures{rules: make([]bool, len(b.Rules))}, vain: make([]bool, len(b.Terms)), corner: at != nil}
	for i := range r.values {
		nan := math.NaN()
		r.values[i] = Value{Low: nan, Likely: nan, High: nan, Rule: -1, Fact: -1}
	}
	r.take(at)
	for r.identities() || r.estimate() || r.assume() || !r.q.Plain && (r.cut() || r.cutTwo()) {
	}
	r.alternatives()
	return r
}

// take puts the facts in.
func (r *run) take(at []float64) {
	for i := range r.q.Facts {
		f := &r.q.Facts[i]
		v := f.Likely
		if at != nil {
			v = at[i]
		}
		r.values[f.Term] = Value{State: Given, Low: v, Likely: v, High: v, Rounding: f.Rounding, Rule: -1, Fact: i}
		r.env.Values[f.Term] = v
	}
	r.settleBuild()
	for t := range r.values {
		if r.env.Known(t) {
			r.ready.learn(r.book, t)
		}
	}
}

// settleBuild gives terms that do not exist in the build their other value. A
// fact given for one of them is set aside: the reader has changed the build.
func (r *run) settleBuild() {
	b := r.book
	if b.build < 0 || !r.env.Known(b.build) {
		return
	}
	build := int(r.env.Values[b.build])
	for i := range b.Terms {
		t := &b.Terms[i]
		if t.Applies == nil || contains(t.Applies, build) {
			continue
		}
		v := t.Otherwise
		reason := ""
		if r.values[i].State == Given {
			reason = "it was given as " + r.book.Format(i, r.values[i].Likely, formula.US) + ", but it does not exist in this build: the fact is not used"
		}
		r.values[i] = Value{State: NotApplicable, Low: v, Likely: v, High: v, Rule: -1, Fact: -1, Reason: reason}
		r.env.Values[i] = v
	}
}

func contains(list []int, x int) bool {
	for _, v := range list {
		if v == x {
			return true
		}
	}
	return false
}

// open says whether a value for the term is still looked for.
func (r *run) open(term int) bool {
	s := r.values[term].State
	return !r.env.Known(term) && s != NotApplicable && s != Outside
}

// active says whether a rule holds here: its condition is true, and it has no
// term that does not exist in this build.
func (r *run) active(rule *Rule) formula.Truth {
	for _, t := range rule.terms {
		if r.values[t].State == NotApplicable && !r.env.Known(t) {
			return formula.False
		}
	}
	if rule.Each {
		if r.env.Known(r.book.bowl) {
			return formula.False // the family lacks a figure for it
		}
		return formula.Unknown
	}
	if rule.When == nil {
		return formula.True
	}
	return rule.When.Test(r.env)
}

// unknowns counts the unknown terms of a rule and names one of them.
func (r *run) unknowns(rule *Rule) (n, term int) {
	for _, t := range rule.terms {
		if !r.env.Known(t) {
			n, term = n+1, t
		}
	}
	return n, term
}

// identities derives all that identities give, forward steps first, so that a
// value is explained by the relation of its own page where there is one. It
// reports whether it found anything.
func (r *run) identities() bool {
	found := false
	for r.sweep(true) || r.sweep(false) {
		found = true
	}
	return found
}

// sweep goes once through the identities. Forward it derives every left-hand
// term it can; backward it stops at the first term it derives.
func (r *run) sweep(forward bool) bool {
	found := false
	rules := r.ready.identities
	for i := rules.next(0); i >= 0; i = rules.next(i + 1) {
		rule := &r.book.Rules[i]
		term := r.lacking(rule)
		if term >= 0 && ((term == rule.Target) != forward || !r.open(term) || r.failed.has(i, term)) || !r.holds(i, rules) {
			continue
		}
		if term < 0 {
			r.compare(i)
			rules.drop(i)
			continue
		}
		if !r.derive(i, term, Follows) {
			continue
		}
		found = true
		if !forward {
			return true
		}
	}
	return found
}

// derive computes a term by a rule whose other terms are known. It reports
// whether the term has a value now that others can use.
func (r *run) derive(rule, term int, state State) bool {
	ru := &r.book.Rules[rule]
	r.failed.add(rule, term) // not to be tried again
	val := &r.values[term]
	if e := ru.turned(term); e != nil {
		v := e.Eval(r.env)
		if v != v {
			if reason := r.env.Invalid; !r.silent(ru, term) {
				val.Reason = reason
			}
			return false
		}
		return r.settle(term, Value{State: state, Likely: v, Rule: rule, Expr: e, From: e.Terms()})
	}
	if ru.Relation.OneWay() {
		return false
	}
	t := &r.book.Terms[term]
	roots := ru.Relation.Solve(term, r.env, t.Low, t.High)
	switch len(roots) {
	case 0:
		val.Reason = "no value between " + r.book.Format(term, t.Low, formula.US) + " and " + r.book.Format(term, t.High, formula.US) + " satisfies " + ru.Words(r.book)
		return false
	case 1:
		return r.settle(term, Value{State: state, Likely: roots[0], Rule: rule, Searched: true, From: others(ru.terms, term)})
	}
	val.Roots, val.Rule = roots, rule
	return false
}

// silent says whether a relation that cannot be turned round for a term says
// nothing about it: it holds at both ends of the term's range. A submersible has
// no shaft loss and no shaft loss rate, and 0 = 0 × setting bars no setting.
func (r *run) silent(ru *Rule, term int) bool {
	if term == ru.Target {
		return false
	}
	t := &r.book.Terms[term]
	holds := func(x float64) bool {
		r.env.Values[term] = x
		left, right := ru.Relation.Left.Eval(r.env), ru.Relation.Right.Eval(r.env)
		return math.Abs(left-right) <= edge*math.Max(math.Abs(left), math.Abs(right))
	}
	both := holds(t.Low) && holds(t.High)
	r.env.Values[term] = math.NaN()
	return both
}

func others(terms []int, term int) []int {
	var list []int
	for _, t := range terms {
		if t != term {
			list = append(list, t)
		}
	}
	return list
}

// edge is how far a value may lie outside its range before it counts: room for
// the last bits of a computation that ends exactly on the edge.
const edge = 1e-9

// settle stores a computed value, unless it lies outside the term's range.
func (r *run) settle(term int, v Value) bool {
	t := &r.book.Terms[term]
	v.Low, v.High, v.Fact = v.Likely, v.Likely, -1
	slack := edge * math.Max(math.Abs(t.Low), math.Abs(t.High))
	if v.Likely < t.Low-slack || v.Likely > t.High+slack {
		v.State = Outside
		v.Reason = "outside what makes sense for it: " + r.book.Format(term, t.Low, formula.US) + " to " + r.book.Format(term, t.High, formula.US)
		r.values[term] = v
		return false
	}
	v.Rounding = r.rounding(term, &v)
	r.values[term] = v
	r.env.Values[term] = v.Likely
	r.ready.learn(r.book, term)
	r.order = append(r.order, term)
	return true
}

// rounding finds how far the rounding of what was typed may have moved a
// derived value: the sum of its changes as each input moves by its own.
func (r *run) rounding(term int, v *Value) float64 {
	sum := 0.0
	if v.Expr == nil {
		for _, f := range v.From {
			if x := math.Abs(r.values[f].Likely); x > 0 {
				sum += math.Abs(v.Likely) * r.values[f].Rounding / x
			}
		}
		return sum
	}
	for _, f := range v.From {
		d := r.values[f].Rounding
		if d == 0 {
			continue
		}
		x := r.env.Values[f]
		r.env.Values[f] = x + d
		if moved := v.Expr.Eval(r.env); moved == moved {
			sum += math.Abs(moved - v.Likely)
		}
		r.env.Values[f] = x
	}
	return sum
}

// differs is the relative difference below which two values never clash.
const differs = 0.001

// compare looks whether an identity holds whose terms are all known.
func (r *run) compare(rule int) {
	ru := &r.book.Rules[rule]
	for _, t := range ru.terms {
		if r.values[t].Rule == rule || r.values[t].State == Given && r.book.Terms[t].Kind == formula.Choice {
			return
		}
	}
	term := r.shown(ru)
	e := ru.turned(term)
	if e == nil {
		return
	}
	want := e.Eval(r.env)
	have := r.env.Values[term]
	if want != want {
		return
	}
	v := Value{Likely: want, Expr: e, From: e.Terms()}
	slack := math.Max(differs*math.Max(math.Abs(have), math.Abs(want)), r.values[term].Rounding+r.rounding(term, &v))
	if math.Abs(have-want) <= slack*(1+edge) {
		return
	}
	r.clash = append(r.clash, Clash{Term: term, Rule: rule, Have: have, Want: want, Facts: r.roots(ru.terms)})
	r.values[term].State = Clashes
}

// shown is the term of a failing identity on which the clash is shown: its
// left-hand term if it was given, else the first given one that algebra can
// solve for, else the left-hand one.
func (r *run) shown(ru *Rule) int {
	best := ru.Target
	if best >= 0 && r.values[best].Fact >= 0 && ru.turned(best) != nil {
		return best
	}
	for _, t := range ru.terms {
		if r.values[t].Fact >= 0 && ru.turned(t) != nil {
			return t
		}
	}
	if best < 0 {
		best = ru.terms[0]
	}
	return best
}

// roots lists the given terms that some terms stand on, in the order of the book.
func (r *run) roots(terms []int) []int {
	seen := make([]bool, len(r.values))
	var visit func(t int)
	visit = func(t int) {
		if seen[t] {
			return
		}
		seen[t] = true
		for _, f := range r.values[t].From {
			visit(f)
		}
	}
	for _, t := range terms {
		visit(t)
	}
	var list []int
	for t := range seen {
		if seen[t] && r.values[t].Fact >= 0 {
			list = append(list, t)
		}
	}
	return list
}

// estimate fills one term by an estimate. Where the question chooses one of
// several, the chosen one goes before the others.
func (r *run) estimate() bool {
	rules := r.ready.estimates
	for pass := range 2 {
		for i := rules.next(0); i >= 0; i = rules.next(i + 1) {
			rule := &r.book.Rules[i]
			if r.env.Known(rule.Target) {
				rules.drop(i)
				continue
			}
			if !r.open(rule.Target) || r.failed.has(i, rule.Target) || pass == 0 && r.q.Choose[rule.Target] != rule.Name {
				continue
			}
			if r.lacking(rule) == rule.Target && r.holds(i, rules) && r.derive(i, rule.Target, Estimated) {
				return true
			}
		}
	}
	return false
}

// assume fills one term by an assumption.
func (r *run) assume() bool {
	for _, i := range r.book.assumed {
		rule := &r.book.Rules[i]
		if !r.open(rule.Target) || rule.When != nil && rule.When.Test(r.env) != formula.True {
			continue
		}
		if r.settle(rule.Target, Value{State: Assumed, Likely: rule.Value, Rule: i}) {
			return true
		}
	}
	return false
}

// alternatives evaluates every estimate of every term that is known, so that
// they can stand side by side with the value in force.
func (r *run) alternatives() {
	for _, i := range r.book.guessed {
		rule := &r.book.Rules[i]
		if !r.env.Known(rule.Target) && r.values[rule.Target].Reason == "" || r.active(rule) != formula.True {
			continue
		}
		have := r.env.Values[rule.Target]
		r.env.Values[rule.Target] = math.NaN()
		v := rule.turned(rule.Target).Eval(r.env)
		reason := r.env.Invalid
		r.env.Values[rule.Target] = have
		if v != v && reason == "" {
			continue // its inputs are not known
		}
		val := &r.values[rule.Target]
		val.Alternatives = append(val.Alternatives, Alternative{Rule: i, Value: v, Reason: reason, Chosen: val.Rule == i})
	}
}
