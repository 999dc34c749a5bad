package reckon

import (
	"slices"

	"columnbowl/calcwasm/formula"
)

// fill is what becomes of the book's templates with the figures of one family.
type fill struct {
	value    int // of the term that chooses the family
	rules    []filledRule
	cautions []filledCaution
}

// filledRule is a rule and its place in the book.
type filledRule struct {
	at   int
	rule Rule
}

// filledCaution is the condition of a caution and its place in the book.
type filledCaution struct {
	at   int
	when *formula.Expr
}

// fill puts a family's figures into the templates, in place of an earlier
// filling for the same choice.
func (b *Book) fill(bowl *Bowl) {
	f := fill{value: b.bowlValue(bowl.ID)}
	if f.value < 0 {
		return
	}
	for i := range b.Rules {
		if rule := b.Rules[i]; rule.Each && rule.fill(bowl) {
			f.rules = append(f.rules, filledRule{i, rule})
		}
	}
	for i := range b.Cautions {
		if when := b.Cautions[i].When; when.Holed() {
			if when, ok := when.Fill(bowl.property); ok {
				f.cautions = append(f.cautions, filledCaution{i, when})
			}
		}
	}
	for i := range b.filled {
		if b.filled[i].value == f.value {
			b.filled[i] = f
			return
		}
	}
	b.filled = append(b.filled, f)
}

// fill makes the rule of one family from a template. A family that lacks one of
// the figures leaves it a template, which computes nothing.
func (r *Rule) fill(bowl *Bowl) bool {
	right, ok := r.Relation.Right.Fill(bowl.property)
	when := r.When
	if ok && when != nil {
		when, ok = when.Fill(bowl.property)
	}
	if !ok {
		return false
	}
	relation := *r.Relation
	relation.Right = right
	r.When = when
	r.Each, r.Bowl, r.Name, r.Relation = false, bowl, bowl.ID, &relation
	r.Say = bowl.Stand() + ". " + r.Say
	r.turn()
	return true
}

// bowlValue is the place of a family among the values of the choice, -1 if it is
// none of them.
func (b *Book) bowlValue(id string) int {
	if b.bowl < 0 {
		return -1
	}
	return slices.Index(b.Terms[b.bowl].Values, id)
}

// forFamily is the book with the templates filled for the family that the facts
// choose: the book itself if they choose none, or one without figures.
func (b *Book) forFamily(facts []Fact) *Book {
	for i := range facts {
		if facts[i].Term != b.bowl {
			continue
		}
		for k := range b.filled {
			if f := &b.filled[k]; f.value == int(facts[i].Likely) {
				return b.with(f)
			}
		}
	}
	return b
}

// with is the book with one filling in the place of its templates.
func (b *Book) with(f *fill) *Book {
	view := *b
	view.Rules = slices.Clone(b.Rules)
	for i := range f.rules {
		view.Rules[f.rules[i].at] = f.rules[i].rule
	}
	view.Cautions = slices.Clone(b.Cautions)
	for _, c := range f.cautions {
		view.Cautions[c.at].When = c.when
	}
	return &view
}

// WithBowl is the book with one more family, or with another one in the place of
// the family of the same id; the book itself stays as it is. The choice
// “other-bowl” of the handbook takes a reader's own curve in this way. A book
// that has no choice of families comes back unchanged.
func (b *Book) WithBowl(bowl *Bowl) *Book {
	if b.bowl < 0 {
		return b
	}
	out := *b
	out.Terms, out.Bowls, out.filled = slices.Clone(b.Terms), slices.Clone(b.Bowls), slices.Clone(b.filled)
	t := &out.Terms[b.bowl]
	t.Values, t.Labels = slices.Clone(t.Values), slices.Clone(t.Labels)
	value := b.bowlValue(bowl.ID)
	if value < 0 {
		value = len(t.Values)
		t.Values, t.Labels, t.High = append(t.Values, bowl.ID), append(t.Labels, ""), float64(value)
		out.Scope = b.Scope.WithValues(b.bowl, t.Values)
	}
	t.Labels[value] = bowl.Label()
	at := slices.IndexFunc(out.Bowls, func(have *Bowl) bool { return have.ID == bowl.ID })
	if at < 0 {
		at, out.Bowls = len(out.Bowls), append(out.Bowls, nil)
	}
	out.Bowls[at] = bowl
	out.fill(bowl)
	return &out
}

// Bowl is the family that a result's facts choose, nil if they choose none or
// one without figures.
func (r *Result) Bowl() *Bowl {
	b := r.Book
	for i := range r.Question.Facts {
		f := &r.Question.Facts[i]
		if f.Term != b.bowl {
			continue
		}
		for _, bowl := range b.Bowls {
			if b.bowlValue(bowl.ID) == int(f.Likely) {
				return bowl
			}
		}
	}
	return nil
}

// RestsOn is the family whose figures a term's value rests on, nil if it rests
// on none.
func (r *Result) RestsOn(term int) *Bowl {
	bowl := r.Bowl()
	if bowl == nil {
		return nil
	}
	for _, t := range r.Chain(term) {
		if r.Book.Rules[r.Values[t].Rule].Bowl != nil {
			return bowl
		}
	}
	return nil
}
