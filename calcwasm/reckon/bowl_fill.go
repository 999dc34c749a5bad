package reckon

import "slices"

// forFamily is the book with the templates filled for the family that the facts
// choose: the book itself if they choose none, or one without figures. It is made
// for each question: a book of many families would be large with all of them
// filled, and filling one takes a small part of the time of an answer.
func (b *Book) forFamily(facts []Fact) *Book {
	bowl := b.chosen(facts)
	if bowl == nil {
		return b
	}
	view := *b
	view.family, view.Rules, view.Cautions = bowl, slices.Clone(b.Rules), slices.Clone(b.Cautions)
	for i := range view.Rules {
		if view.Rules[i].Each {
			view.Rules[i].fill(bowl)
		}
	}
	for i := range view.Cautions {
		if when, ok := view.Cautions[i].When.Fill(bowl.property); ok {
			view.Cautions[i].When = when
		}
	}
	return &view
}

// fill makes the rule of one family from a template. A family that lacks one of
// the figures leaves it a template, which computes nothing.
func (r *Rule) fill(bowl *Bowl) {
	right, ok := r.Relation.Right.Fill(bowl.property)
	when := r.When
	if ok && when != nil {
		when, ok = when.Fill(bowl.property)
	}
	if !ok {
		return
	}
	relation := *r.Relation
	relation.Right = right
	r.Each, r.Bowl, r.Name, r.When, r.Relation = false, bowl, bowl.ID, when, &relation
	r.Say = bowl.Stand() + ". " + r.Say
	r.turn()
}

// chosen is the family that facts choose, nil if they choose none or one without
// figures.
func (b *Book) chosen(facts []Fact) *Bowl {
	for i := range facts {
		if facts[i].Term != b.bowl {
			continue
		}
		for _, bowl := range b.Bowls {
			if b.bowlValue(bowl.ID) == int(facts[i].Likely) {
				return bowl
			}
		}
	}
	return nil
}

// bowlValue is the place of a family among the values of the choice, -1 if it is
// none of them.
func (b *Book) bowlValue(id string) int {
	if b.bowl < 0 {
		return -1
	}
	return slices.Index(b.Terms[b.bowl].Values, id)
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
	out.Terms, out.Bowls = slices.Clone(b.Terms), slices.Clone(b.Bowls)
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
	return &out
}

// RestsOn is the family whose figures a term's value rests on, nil if it rests
// on none.
func (r *Result) RestsOn(term int) *Bowl {
	if r.Book.family == nil {
		return nil
	}
	for _, t := range r.Chain(term) {
		if bowl := r.Book.Rules[r.Values[t].Rule].Bowl; bowl != nil {
			return bowl
		}
	}
	return nil
}
