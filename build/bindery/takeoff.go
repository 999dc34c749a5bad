package bindery

import (
	"encoding/json"
	"fmt"
	"strings"

	"columnbowl/build/book"
	"columnbowl/calcwasm/answer"
	"columnbowl/calcwasm/reckon"
	"columnbowl/site"
)

const takeoffPath = "take-off.html"

// hasTakeOff says whether the book has a page that counts pieces: a sheet for
// it, and builds to count.
func (w *work) hasTakeOff() bool {
	return len(w.book.Handbook.TakeOff.Groups) > 0 && w.book.Assembly != nil && len(w.book.Assembly.Builds) > 0
}

// takeoffView fills the page that counts the pieces of a pump.
func (w *work) takeoffView() (any, error) {
	o := &w.book.Handbook.TakeOff
	e, err := w.opened("takeoff", o)
	if err != nil {
		return nil, err
	}
	groups, err := w.sheetGroups("takeoff", o.Groups)
	if err != nil {
		return nil, err
	}
	list, err := w.takeoffList(e.facts)
	if err != nil {
		return nil, err
	}
	block := site.TitleBlock{Scope: takeoffScope, Facts: o.Title}
	v := &site.TakeOff{Lead: paragraph(takeoffLead), Sheet: w.sheet(sheetID, e, groups, ""), List: list}
	v.Frame = w.frame(stand{path: takeoffPath, title: w.words["takeoff.title"], say: takeoffLead, nav: "takeoff", block: block})
	v.Sheet.Pieces = true
	if w.hasChain() {
		v.Sheet.Carry = chainPath
	}
	return v, nil
}

// takeoffList asks the engine as the page does, so that what is printed is what
// the living page shows.
func (w *work) takeoffList(facts []site.Fact) (*site.Pieces, error) {
	var ask strings.Builder
	ask.WriteString("pieces\n")
	for _, f := range facts {
		ask.WriteString("fact\t" + f.Term + "\t" + f.Text + "\n")
	}
	var reply struct{ Pieces *site.Pieces }
	desk := answer.New(w.engine).WithBuilds(w.book.Assembly)
	if err := json.Unmarshal(desk.Answer([]byte(ask.String())), &reply); err != nil {
		return nil, fmt.Errorf("the reply with the pieces cannot be read: %w", err)
	}
	if reply.Pieces == nil {
		return nil, fmt.Errorf("%s, takeoff-facts: the book has no parts for this build", book.HandbookFile)
	}
	return reply.Pieces, nil
}

// opened works out the facts that a sheet of handbook.yaml opens with.
func (w *work) opened(key string, o *book.Opening) (*example, error) {
	e := &example{title: o.Title, want: -1}
	if e.title == "" {
		e.title = w.words[key+".title"]
	}
	if i, ok := w.engine.Find(o.Want); ok {
		e.want, e.expect = i, []int{i}
	}
	q := reckon.Question{Want: -1}
	for _, f := range o.Facts {
		t, ok := w.engine.Find(f.Term)
		if !ok {
			return nil, fmt.Errorf("%s, %s-facts: there is no term %q", book.HandbookFile, key, f.Term)
		}
		fact, err := w.fact(t, f.Text)
		if err != nil {
			return nil, fmt.Errorf("%s, %s-facts: %w", book.HandbookFile, key, err)
		}
		q.Facts = append(q.Facts, fact)
		e.facts = append(e.facts, site.Fact{Term: f.Term, Text: f.Text})
	}
	e.result = w.engine.Reckon(q)
	return e, nil
}

// sheetGroups finds the terms of the groups of a sheet of handbook.yaml.
func (w *work) sheetGroups(key string, list []book.Group) ([]group, error) {
	var groups []group
	for i, g := range list {
		rows := group{heading: g.Name, anchor: groupAnchor(i)}
		for _, id := range g.Terms {
			t, ok := w.engine.Find(id)
			if !ok {
				return nil, fmt.Errorf("%s, %s: there is no term %q", book.HandbookFile, key, id)
			}
			rows.terms = append(rows.terms, t)
		}
		groups = append(groups, rows)
	}
	return groups, nil
}
