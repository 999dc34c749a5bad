package bindery

import (
	"html/template"
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
	"columnbowl/site"
)

// usual is how closely an SI partner agrees if its author says nothing.
const usual = 0.0005

var strengths = map[reckon.Strength]string{reckon.Identity: "formula", reckon.Estimate: "estimate", reckon.Assumption: "assume"}

// relations are the relations that stand on a term's page, in their order.
func (w *work) relations(term int) []site.Relation {
	var list []site.Relation
	for i := range w.engine.Rules {
		if rule := &w.engine.Rules[i]; rule.Home == term {
			list = append(list, w.relation(rule))
		}
	}
	return list
}

func (w *work) relation(rule *reckon.Rule) site.Relation {
	b := w.engine
	rel := site.Relation{
		Strength:  strengths[rule.Strength],
		Condition: conditionWords(b, rule.When),
		Name:      strings.ReplaceAll(rule.Name, "-", " "),
		Say:       paragraph(rule.Say),
	}
	if rule.Relation == nil {
		rel.Words = assumed(b, rule)
		return rel
	}
	rel.Words = template.HTML(strings.Join(rule.Relation.MathParts(b.Scope, formula.InWords), " "))
	style := formula.InWords
	if rule.Relation.Lettered(b.Scope) {
		style = formula.InLetters
		rel.Letters = template.HTML(strings.Join(rule.Relation.MathParts(b.Scope, style), " "))
	}
	if rule.SI != nil {
		rel.SI = template.HTML(strings.Join(rule.SI.MathParts(b.Scope, style), " "))
		if rule.Within > 0 && rule.Within != usual {
			rel.Rounded = percent(rule.Within)
			if rule.Because != "" {
				rel.Rounded += ": " + rule.Because
			}
		}
	}
	return rel
}

// assumed writes an assumption as a line of MathML.
func assumed(b *reckon.Book, rule *reckon.Rule) template.HTML {
	t := &b.Terms[rule.Target]
	return template.HTML(`<math display="block"><mrow><mtext>` + escape(t.Name) + `</mtext><mo>=</mo><mtext>` +
		escape(b.Format(rule.Target, rule.Value, formula.US)) + `</mtext></mrow></math>`)
}

// symbol writes a term's symbol as MathML, with a subscript behind "_".
func symbol(text string) template.HTML {
	if text == "" {
		return ""
	}
	base, sub, has := strings.Cut(text, "_")
	letter := "<mi>" + escape(base) + "</mi>"
	if has {
		letter = "<msub>" + letter + "<mi>" + escape(sub) + "</mi></msub>"
	}
	return template.HTML("<math>" + letter + "</math>")
}

func percent(fraction float64) string {
	u, ok := unit.Lookup("%")
	if !ok {
		panic("bindery: the table of units lacks %")
	}
	return unit.FormatWith(fraction, u)
}

func escape(text string) string { return template.HTMLEscapeString(text) }

// paragraph makes HTML of plain words.
func paragraph(text string) template.HTML {
	if text == "" {
		return ""
	}
	return template.HTML("<p>" + escape(text) + "</p>")
}
