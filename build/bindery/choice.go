package bindery

import (
	"encoding/json"
	"fmt"
	"html/template"
	"strings"

	"columnbowl/build/book"
	"columnbowl/calcwasm/answer"
	"columnbowl/site"
)

const choicePath = "bowls.html"

// hasChoice says whether the book has a page on which bowls are chosen.
func (w *work) hasChoice() bool {
	return len(w.book.Handbook.Choice.Groups) > 0 && len(w.engine.Bowls) > 0
}

// choiceView fills the page on which bowls are chosen.
func (w *work) choiceView() (any, error) {
	o := &w.book.Handbook.Choice
	e, err := w.opened("bowls", o)
	if err != nil {
		return nil, err
	}
	groups, err := w.sheetGroups("choice", o.Groups)
	if err != nil {
		return nil, err
	}
	v := &site.Choosing{Lead: paragraph(choiceLead), Sheet: w.sheet(sheetID, e, groups, "")}
	if v.Choice, err = w.ranking(e.facts); err != nil {
		return nil, err
	}
	v.SVG = template.HTML(v.Choice.SVG)
	v.Frame = w.frame(stand{path: choicePath, title: w.words["bowls.title"], say: choiceLead, nav: "desk",
		block: site.TitleBlock{Scope: choiceScope, Facts: o.Title, Demo: v.Choice.Families[0].Demo != ""}})
	if w.hasDesk() {
		v.DeskURL = deskPath
	}
	if w.hasChain() {
		v.Sheet.Carry = chainPath
	}
	return v, nil
}

// ranking asks the engine as the page does, so that what is printed is what the
// living page shows.
func (w *work) ranking(facts []site.Fact) (*site.Ranking, error) {
	var ask strings.Builder
	for key, text := range w.words {
		if strings.HasPrefix(key, "picture.") {
			ask.WriteString("word\t" + key + "\t" + text + "\n")
		}
	}
	units := w.units
	if units == "" {
		units = "us"
	}
	ask.WriteString("choice\t\t" + units + "\twide\ncolumns\t\t\n")
	for _, f := range facts {
		ask.WriteString("fact\t" + f.Term + "\t" + f.Text + "\n")
	}
	var reply struct{ Choice *site.Ranking }
	if err := json.Unmarshal(answer.New(w.engine).Answer([]byte(ask.String())), &reply); err != nil {
		return nil, fmt.Errorf("the reply with the families cannot be read: %w", err)
	}
	if reply.Choice == nil {
		return nil, fmt.Errorf("%s, choice: the book has no choice of families, so none can be ranked", book.HandbookFile)
	}
	return reply.Choice, nil
}
