package book

import "columnbowl/build/report"

// Builds are the three pumps of the book.
var Builds = []string{"water-lubricated", "oil-lubricated", "submersible"}

// Kinds of terms.
const (
	Quantity = "quantity"
	Count    = "count"
	ChoiceOf = "choice"
)

func newTerm(p Page, found *report.List) *Term {
	t := &Term{Page: p}
	fields := []field{
		{"name", true, text(&t.Name)},
		{"running", false, text(&t.Running)},
		{"symbol", false, text(&t.Symbol)},
		{"also", false, texts(&t.Also)},
		{"unit", false, group("the unit of a term", func() []field {
			return []field{{"us", true, text(&t.US)}, {"si", true, text(&t.SI)}}
		})},
		{"range", false, group("the range of a term", func() []field {
			return []field{{"from", true, text(&t.From)}, {"to", true, text(&t.To)}}
		})},
		{"place", true, text(&t.Place)},
		{"ask", false, text(&t.Ask)},
		{"kind", false, oneOf(&t.KindWord, Quantity, Count, ChoiceOf)},
		{"values", false, pairs("a list of words with what each is called, such as oil-lubricated: \"oil-lubricated, enclosed line shaft\"", func(id, name string) {
			t.Values = append(t.Values, Choice{id, name})
		})},
		{"applies", false, words(&t.Applies, Builds...)},
		{"otherwise", false, text(&t.Otherwise)},
		{"pressure", false, oneOf(&t.Pressure, "gauge", "absolute")},
		{"confused", false, texts(&t.Confused)},
		{"hazards", false, texts(&t.Hazards)},
		{"source", false, text(&t.Source)},
	}
	t.titled = readYAML(t.File, t.Doc.Source, t.Doc.Title, "the title block of a term", fields, found)
	if t.KindWord == "" {
		t.KindWord = Quantity
	}
	t.complete(found)
	return t
}

// complete tells what a title block lacks for its kind of term.
func (t *Term) complete(found *report.List) {
	lacks := func(key, why string) {
		s := t.Where("")
		found.Add(t.File, s.Off, s.Len, "The title block lacks “"+key+"”: "+why, "")
	}
	has := func(key string) bool { _, ok := t.at[key]; return ok }
	switch {
	case len(t.at) <= 1: // nothing could be read: that has been told
	case t.KindWord == ChoiceOf:
		if !has("values") {
			lacks("values", "a choice names the words it can be.")
		}
		for _, key := range []string{"unit", "range", "otherwise", "pressure"} {
			if s, ok := t.at[key]; ok {
				found.Add(t.File, s.Off, s.Len, "A choice is a word: it has no “"+key+"”.", "")
			}
		}
	default:
		if !has("unit") && t.KindWord == Count {
			t.US, t.SI = "1", "1"
		} else if !has("unit") {
			lacks("unit", "a quantity has a US unit and an SI unit, such as {us: ft, si: m}; a pure number has {us: \"1\", si: \"1\"}.")
		}
		if !has("range") {
			lacks("range", "the values that make sense, such as {from: 0 ft, to: 3000 ft}.")
		}
		if s, ok := t.at["values"]; ok {
			found.Add(t.File, s.Off, s.Len, "Only a choice has “values”: add kind: choice, or leave them out.", "")
		}
	}
}

func newPart(page Page, found *report.List) *Part {
	p := &Part{Page: page}
	n := &p.Neighbours
	fields := []field{
		{"name", true, text(&p.Name)},
		{"also", false, texts(&p.Also)},
		{"builds", true, words(&p.Builds, Builds...)},
		{"place", true, text(&p.Place)},
		{"motion", true, oneOf(&p.Motion, "turns", "stands", "both")},
		{"wetted", true, oneOrMore(&p.Wetted, "water", "oil", "leakage", "grease", "filling", "dry")},
		{"pressure", true, oneOf(&p.Pressure, "yes", "no")},
		{"number", false, text(&p.Number)},
		{"material", false, text(&p.Material)},
		{"size", false, text(&p.Size)},
		{"wear", false, text(&p.Wear)},
		{"neighbours", false, group("the neighbours of a part", func() []field {
			return []field{{"above", false, texts(&n.Above)}, {"below", false, texts(&n.Below)},
				{"inside", false, texts(&n.Inside)}, {"outside", false, texts(&n.Outside)}}
		})},
		{"confused", false, texts(&p.Confused)},
		{"hazards", false, texts(&p.Hazards)},
		{"source", false, text(&p.Source)},
	}
	p.titled = readYAML(p.File, p.Doc.Source, p.Doc.Title, "the title block of a part", fields, found)
	return p
}

func newChapter(p Page, found *report.List) *Chapter {
	c := &Chapter{Page: p}
	fields := []field{
		{"name", true, text(&c.Name)},
		{"also", false, texts(&c.Also)},
		{"place", true, text(&c.Place)},
		{"aims", true, texts(&c.Aims)},
		{"takeaway", false, texts(&c.Takeaway)},
		{"hazards", false, texts(&c.Hazards)},
		{"source", false, text(&c.Source)},
	}
	c.titled = readYAML(c.File, c.Doc.Source, c.Doc.Title, "the title block of a chapter", fields, found)
	return c
}

func newAsked(p Page, found *report.List) *Asked {
	a := &Asked{Page: p}
	fields := []field{
		{"name", true, text(&a.Name)},
		{"also", false, texts(&a.Also)},
		{"place", true, text(&a.Place)},
		{"answer", true, text(&a.Answer)},
		{"hazards", false, texts(&a.Hazards)},
		{"source", false, text(&a.Source)},
	}
	a.titled = readYAML(a.File, a.Doc.Source, a.Doc.Title, "the title block of a question", fields, found)
	return a
}
