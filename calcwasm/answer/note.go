package answer

import (
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// Note is what stands beside a value in words: how it was read, why it was
// assumed, what it waits for, why it is not valid.
func Note(res *reckon.Result, t int) string {
	v, b := &res.Values[t], res.Book
	switch v.State {
	case reckon.Given:
		return givenNote(res, v)
	case reckon.Follows, reckon.Clashes:
		return demonstration(res, t)
	case reckon.Estimated, reckon.Assumed:
		say := b.Rules[v.Rule].Say
		if rests := demonstration(res, t); rests != "" {
			say += " (" + rests + ")"
		}
		return say
	case reckon.Missing:
		return b.Terms[t].Ask
	case reckon.Waits:
		return waitsNote(b, res.WaitsFor(t))
	case reckon.Outside, reckon.NotApplicable:
		return v.Reason
	case reckon.Several:
		return severalNote(b, t, v)
	}
	return ""
}

func givenNote(res *reckon.Result, v *reckon.Value) string {
	notes := append([]string(nil), res.Question.Facts[v.Fact].Notes...)
	t := res.Question.Facts[v.Fact].Term
	for _, a := range v.Alternatives {
		if a.Value == a.Value {
			notes = append(notes, "the estimate “"+estimateName(&res.Book.Rules[a.Rule])+"” would give "+res.Book.Format(t, a.Value, formula.US)+
				" ("+res.Book.Format(t, a.Value, formula.SI)+")")
		}
	}
	return strings.Join(notes, "; ")
}

// estimateName is how a note calls an estimate: a family by its name and by what
// must stand with it.
func estimateName(rule *reckon.Rule) string {
	if rule.Bowl != nil {
		return rule.Bowl.Stand()
	}
	return rule.Name
}

func waitsNote(b *reckon.Book, waits []int) string {
	if len(waits) == 0 {
		return ""
	}
	names := make([]string, len(waits))
	for i, t := range waits {
		names[i] = b.Terms[t].Name
	}
	if n := len(names); n > 1 {
		return "waits for " + strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return "waits for " + names[0]
}

func severalNote(b *reckon.Book, t int, v *reckon.Value) string {
	texts := make([]string, len(v.Roots))
	for i, x := range v.Roots {
		texts[i] = b.Format(t, x, formula.US)
	}
	return "these values all fit: " + strings.Join(texts, ", ")
}

// demonstration is what stands with a value that rests on an invented family but
// is not read from it.
func demonstration(res *reckon.Result, t int) string {
	v := &res.Values[t]
	if v.Rule < 0 || res.Book.Rules[v.Rule].Bowl != nil {
		return ""
	}
	bowl := res.RestsOn(t)
	if bowl == nil || bowl.Origin != reckon.Invented {
		return ""
	}
	return "rests on " + bowl.Name + ": " + strings.ToLower(reckon.Demonstration[:1]) + reckon.Demonstration[1:]
}
