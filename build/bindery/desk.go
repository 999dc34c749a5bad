package bindery

import (
	"fmt"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/site"
)

// deskSheetID is the id of the enquiry sheet on its page.
const deskSheetID = "enquiry"

// hasDesk says whether the book has a page for taking enquiries.
func (w *work) hasDesk() bool { return len(w.book.Handbook.Desk) > 0 }

// deskView fills the page of the desk. Its sheet opens empty: printed as it
// stands, or without a script, it is a blank form.
func (w *work) deskView() (any, error) {
	h := &w.book.Handbook
	f := w.frame(stand{path: deskPath, title: w.words["desk.title"], say: deskLead, nav: "desk", block: site.TitleBlock{Title: w.words["desk.sheet"], Scope: deskScope}})
	// The wanted term is looked for by the script: while it cannot be had, a
	// sheet that looks for it would call most lines waiting and ask for nothing.
	empty := &example{title: w.words["desk.sheet"], want: -1, result: w.engine.Reckon(reckon.Question{Want: -1})}
	want, ok := w.engine.Find(h.DeskWant)
	if ok {
		empty.want = want
	}
	groups, onSheet, err := w.deskGroups()
	if err != nil {
		return nil, err
	}
	v := &site.Desk{Frame: f, Lead: deskLead, Sheet: w.sheet(deskSheetID, empty, groups, "")}
	v.Sheet.Desk = true
	if w.hasChain() {
		v.ChainURL, v.Sheet.Carry = chainPath, chainPath
	}
	if w.hasChoice() {
		v.BowlsURL = choicePath
	}
	if len(w.book.Asked) > 0 {
		v.AskedURL = askedPath
	}
	for _, a := range h.DeskAsk {
		v.Ask = append(v.Ask, site.DeskAsk{Term: a.Term, Ask: w.book.TermByID[a.Term].Ask, Why: a.Text})
	}
	for _, q := range h.DeskWhat {
		what := site.DeskWhat{Ask: q.Name, Show: q.Show, Change: q.Change, By: q.By, Sizes: q.Sizes}
		if q.Page != "" {
			what.Href = questionPath(q.Page)
		}
		v.What = append(v.What, what)
	}
	v.Checks = w.deskChecks()
	v.Terms = w.deskTerms()
	v.ExampleName = h.ChainTitle
	for _, fact := range w.chain.facts {
		if onSheet[fact.Term] {
			v.Example = append(v.Example, fact)
		}
	}
	return v, nil
}

// deskGroups are the lines of the enquiry sheet.
func (w *work) deskGroups() ([]group, map[string]bool, error) {
	var groups []group
	onSheet := map[string]bool{}
	for _, g := range w.book.Handbook.Desk {
		rows := group{heading: g.Name}
		for _, id := range g.Terms {
			t, ok := w.engine.Find(id)
			if !ok {
				return nil, nil, fmt.Errorf("handbook.yaml, desk: there is no term %q", id)
			}
			rows.terms = append(rows.terms, t)
			onSheet[id] = true
		}
		groups = append(groups, rows)
	}
	return groups, onSheet, nil
}

// deskChecks finds for each term the first published work that checks it.
func (w *work) deskChecks() map[string]string {
	list := map[string]string{}
	if w.evidence == nil {
		return list
	}
	for i := range w.evidence.Sources {
		for _, c := range w.evidence.Sources[i].Cases {
			if _, ok := list[c.Term]; !ok && c.Mark == "read" {
				list[c.Term] = sourcesPath + "#" + sourceID(i)
			}
		}
	}
	return list
}

// deskTerms names all terms of the book: a sentence, a link or a file may bring
// a fact that has no line on the sheet.
func (w *work) deskTerms() []site.DeskTerm {
	list := make([]site.DeskTerm, 0, len(w.engine.Terms))
	for i := range w.engine.Terms {
		t := &w.engine.Terms[i]
		d := site.DeskTerm{ID: t.ID, Name: t.Title}
		if t.Kind == formula.Choice {
			for k, v := range t.Values {
				d.Values = append(d.Values, site.Choice{ID: v, Name: t.Labels[k]})
			}
		}
		list = append(list, d)
	}
	return list
}
