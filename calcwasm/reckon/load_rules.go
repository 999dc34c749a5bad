package reckon

import (
	"strconv"
	"strings"

	"columnbowl/calcwasm/formula"
)

func (l *loader) formula(i, home int) {
	k := &l.src.Blocks[i]
	r, err := formula.ParseRelation(k.Body, l.book.Scope)
	l.fail(i, false, 0, err)
	rule := Rule{Home: home, When: l.when(i, k.Head, 0), Relation: r, Target: -1, Block: i}
	if err != nil || l.holed(i, r, rule.When) {
		return
	}
	rule.Target = r.Target()
	l.book.Rules = append(l.book.Rules, rule)
}

func (l *loader) si(i, home int) {
	k := &l.src.Blocks[i]
	r, err := formula.ParseRelation(k.Body, l.book.Scope)
	l.fail(i, false, 0, err)
	within, because := l.within(i, k.Head)
	last := len(l.book.Rules) - 1
	if i == 0 || last < 0 || l.book.Rules[last].Block != i-1 || l.src.Blocks[i-1].Kind != FormulaBlock && l.src.Blocks[i-1].Kind != EstimateBlock {
		l.wrongBlock(i, false, "An si block stands right behind the formula it is the partner of.")
		return
	}
	if err != nil || l.holed(i, r, nil) {
		return
	}
	rule := &l.book.Rules[last]
	if rule.Each {
		l.wrongBlock(i, false, "An estimate that is made for each bowl has no si form.")
		return
	}
	if r.Target() != rule.Target || rule.Target < 0 {
		l.wrongBlock(i, false, "The si form computes the same term as the formula above it.")
		return
	}
	rule.SI, rule.Within, rule.Because = r, within, because
}

// Partners is how far a formula and its si partner may differ if nothing else is said.
const Partners = 0.0005

// within reads “within 0.2 % because "…"” from the head of an si block.
func (l *loader) within(i int, head string) (float64, string) {
	head = strings.TrimSpace(head)
	if head == "" {
		return Partners, ""
	}
	rest, ok := strings.CutPrefix(head, "within ")
	text, because, found := strings.Cut(rest, "because")
	text = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), "%"))
	v, err := strconv.ParseFloat(text, 64)
	because = strings.Trim(strings.TrimSpace(because), `"`)
	if !ok || !found || err != nil || because == "" {
		l.wrongBlock(i, true, "Expected: within 0.2 % because \"reason\".")
		return Partners, ""
	}
	return v / 100, because
}

// EachBowl is the head of an estimate that is made for every family of bowls.
const EachBowl = "each bowl"

func (l *loader) estimate(i, home int) {
	k := &l.src.Blocks[i]
	name, rest, _ := strings.Cut(strings.TrimSpace(k.Head), " ")
	shift := len(name) + 1
	more, each := strings.CutPrefix(strings.TrimSpace(k.Head)+" ", EachBowl+" ")
	if each {
		name, rest, shift = EachBowl, strings.TrimSpace(more), len(EachBowl)+1
	} else {
		l.name(i, name, "estimate")
	}
	e, err := formula.ParseEstimate(k.Body, l.book.Scope)
	l.fail(i, false, 0, err)
	when := l.when(i, rest, shift)
	switch {
	case err != nil || !each && l.holed(i, e.Relation, when):
		return
	case each && l.book.bowl < 0:
		l.wrongBlock(i, true, "“each bowl” needs the choice term “"+BowlTerm+"”, and the book has none.")
		return
	case each && !e.Relation.Holed():
		l.wrongBlock(i, false, "This estimate is the same for every family: name one of their properties (bowl:…), or leave “each bowl” out.")
		return
	}
	l.book.Rules = append(l.book.Rules, Rule{Strength: Estimate, Name: name, Home: home, When: when, Relation: e.Relation,
		Target: e.Relation.Target(), Say: e.Say, Block: i, Each: each})
}

func (l *loader) assumption(i, home int) {
	k := &l.src.Blocks[i]
	a, err := formula.ParseAssumption(k.Body, l.book.Scope)
	l.fail(i, false, 0, err)
	when := l.when(i, k.Head, 0)
	if err == nil && !l.holed(i, nil, when) {
		l.book.Rules = append(l.book.Rules, Rule{Strength: Assumption, Home: home, When: when, Target: a.Term, Value: a.Low, Say: a.Say, Block: i})
	}
}

func (l *loader) mistake(i, home int) {
	k := &l.src.Blocks[i]
	id := l.name(i, k.Head, "mistake")
	m, err := formula.ParseMistake(k.Body, l.book.Scope)
	l.fail(i, false, 0, err)
	if err != nil {
		return
	}
	if home < 0 {
		l.wrongBlock(i, true, "A mistake stands on the page of the term it is made with.")
		return
	}
	first := l.book.First(home)
	if first == nil {
		l.wrongBlock(i, true, "“"+k.Term+"” has no formula that computes it: there is nothing to make a mistake with.")
		return
	}
	wrong, bad := first.Relation.Apply(l.book.Scope, m.Edits)
	if bad != nil {
		l.fail(i, false, 0, bad)
		return
	}
	if wrong.Holed() {
		l.wrongBlock(i, false, "The formula is made for each bowl: write this mistake as a whole, whole "+k.Term+" = …, without properties of the family.")
		return
	}
	if wrong.Target() != home {
		l.wrongBlock(i, false, "A mistake gives a wrong value of “"+k.Term+"”: that term stands alone on the left-hand side.")
		return
	}
	l.book.Mistakes = append(l.book.Mistakes, Mistake{ID: id, Home: home, Wrong: wrong, Mistake: *m, Block: i})
}

// holed tells of a hole where no family can fill it.
func (l *loader) holed(block int, r *formula.Relation, when *formula.Expr) bool {
	if (r == nil || !r.Holed()) && (when == nil || !when.Holed()) {
		return false
	}
	l.wrongBlock(block, false, "A property of a family of bowls (bowl:…) stands in a block “estimate each bowl”, which is made for each of them.")
	return true
}
