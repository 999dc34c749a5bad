package exercise

import (
	"math"

	"columnbowl/calcwasm/formula"
)

// MostTries is how often the facts of a sheet are drawn anew until they can be kept.
const MostTries = 200

// Sheet is an exercise with its facts drawn.
type Sheet struct {
	Template *Template
	Seed     uint64
	Tries    int // how many draws it took
	Items    []Item
	System   formula.System // in which it is told, answered and explained; the facts are the same

	set    *Set
	plan   *plan
	values []float64 // of all terms, NaN where not known
}

// ItemKind says what a learner does.
type ItemKind uint8

const (
	Number   ItemKind = iota // work out a term
	Choice                   // take one of some answers
	Ordering                 // put things in order
)

// Item is one thing asked on a sheet.
type Item struct {
	Kind     ItemKind
	Term     int     // of a Number
	Right    float64 // of a Number, in SI
	Ask      string  // of a Choice or an Ordering
	Options  []formula.Option
	Names    []string // of an Ordering, as shown: A, B, C …
	Answer   string   // the letter of a Choice, the letters of an Ordering
	question int      // the place of the choice or the order in the template
}

// Draw makes the sheet of a seed. It fails, with the reason of the last try, if
// no draw could be kept.
func (s *Set) Draw(t *Template, seed uint64) (*Sheet, string) {
	rng := newPCG(seed, streamOf(t.ID))
	why := ""
	for try := 1; try <= MostTries; try++ {
		sheet, reason := s.try(t, rng)
		if sheet != nil {
			reason = sheet.apart()
		}
		if sheet != nil && reason == "" {
			sheet.Seed, sheet.Tries = seed, try
			sheet.questions(rng)
			return sheet, ""
		}
		why = reason
	}
	return nil, why
}

// try draws once, without looking whether the mistakes stand apart.
func (s *Set) try(t *Template, rng *pcg) (*Sheet, string) {
	env := s.work
	env.Clear()
	for i := range t.Facts {
		f := &t.Facts[i]
		v, why := drawn(f, env, rng)
		if why == "" {
			why = s.fits(f.Term, v)
		}
		if why != "" {
			return nil, "“" + s.Book.Terms[f.Term].ID + "”: " + why
		}
		env.Values[f.Term] = v
	}
	p, why := s.planFor(t, env)
	if why != "" {
		return nil, why
	}
	sheet := &Sheet{Template: t, set: s, plan: p, values: append([]float64(nil), env.Values...)}
	if why := s.kept(t, p, env); why != "" {
		return nil, why
	}
	for _, a := range t.Ask {
		sheet.Items = append(sheet.Items, Item{Kind: Number, Term: a.Term, Right: env.Values[a.Term]})
	}
	return sheet, ""
}

// room is how far a bound may miss a multiple of the step by its last bits.
const room = 1e-6

// drawn draws one fact. A range with a plain lower bound is counted from there,
// any other in multiples of its step, so that the facts stay tidy.
func drawn(f *formula.Drawn, env *formula.Env, rng *pcg) (float64, string) {
	if f.OneOf != nil {
		return f.OneOf[rng.below(len(f.OneOf))].Eval(env), ""
	}
	from := f.From.Eval(env)
	if f.To == nil {
		return from, ""
	}
	to := f.To.Eval(env)
	base, first := from, 0.0
	if f.From.Op != formula.Number {
		base, first = 0, math.Ceil(from/f.Step-room)
	}
	n := math.Floor((to-base)/f.Step+room) - first
	if !(n >= 0) {
		return 0, "no multiple of the step lies in the range"
	}
	k := first + float64(rng.below(int(math.Min(n, 1e9))+1))
	return base + float64(k*f.Step), ""
}

// fits says why a value is no value of a term.
func (s *Set) fits(term int, v float64) string {
	t := &s.Book.Terms[term]
	slack := 1e-9 * (t.High - t.Low)
	if v != v {
		return "it stands on something that is not known yet"
	}
	if v < t.Low-slack || v > t.High+slack {
		return s.Book.Format(term, v, formula.US) + " is outside what makes sense: " + s.Book.Format(term, t.Low, formula.US) + " to " + s.Book.Format(term, t.High, formula.US)
	}
	return ""
}

// kept says why a draw is thrown away before its mistakes are looked at.
func (s *Set) kept(t *Template, p *plan, env *formula.Env) string {
	for i := range p.steps {
		if term := p.steps[i].term; p.chain[i] {
			if why := s.fits(term, env.Values[term]); why != "" {
				return "“" + s.Book.Terms[term].ID + "”: " + why
			}
		}
	}
	for i, k := range t.Keep {
		if k.Test(env) != formula.True {
			return keepWords[min(i, len(keepWords)-1)] + " “keep when” does not hold"
		}
	}
next:
	for _, c := range p.checks {
		if s.Book.Cautions[c].When.Test(env) != formula.True {
			continue
		}
		for _, allowed := range t.Allow {
			if allowed == s.Book.Cautions[c].ID {
				continue next
			}
		}
		return "the caution “" + s.Book.Cautions[c].ID + "” fires"
	}
	return ""
}

var keepWords = []string{"the first", "the second", "the third", "a later"}

// questions draws the choices and the orders of a sheet.
func (sh *Sheet) questions(rng *pcg) {
	t := sh.Template
	picked := rng.shuffled(len(t.Choose))
	if t.Pick > 0 && t.Pick < len(picked) {
		picked = picked[:t.Pick]
	}
	for _, q := range picked {
		c := &t.Choose[q]
		item := Item{Kind: Choice, Ask: c.Ask, question: q}
		for place, o := range rng.shuffled(len(c.Wrong) + 1) {
			if o == 0 {
				item.Options = append(item.Options, c.Right)
				item.Answer = letter(place)
			} else {
				item.Options = append(item.Options, c.Wrong[o-1])
			}
		}
		sh.Items = append(sh.Items, item)
	}
	for q := range t.Order {
		sh.Items = append(sh.Items, ordering(&t.Order[q], q, rng))
	}
}

// ordering takes some of the things to order and mixes them.
func ordering(o *formula.Order, q int, rng *pcg) Item {
	take := o.Take
	if take == 0 {
		take = len(o.Items)
	}
	in := make([]bool, len(o.Items))
	for _, i := range rng.shuffled(len(o.Items))[:take] {
		in[i] = true
	}
	var names []string
	for i, name := range o.Items {
		if in[i] {
			names = append(names, name)
		}
	}
	item := Item{Kind: Ordering, Ask: o.Ask, question: q, Names: make([]string, take)}
	for i, shown := range rng.shuffled(take) { // the i-th in the right order is shown at that place
		item.Names[shown] = names[i]
		item.Answer += letter(shown)
	}
	return item
}

func letter(i int) string { return string(rune('A' + i)) }
