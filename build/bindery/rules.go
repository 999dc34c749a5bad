package bindery

import (
	"fmt"
	"strings"

	"columnbowl/build/book"
	"columnbowl/calcwasm/answer"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/site"
)

func tablePath(t *book.Table) string { return t.Folder + "/" + t.ID + ".html" }

// tableLinks are the ways to all tables.
func (w *work) tableLinks(root string) []site.Link {
	var list []site.Link
	for _, t := range w.book.Tables {
		list = append(list, site.Link{Name: t.Name, URL: root + tablePath(t)})
	}
	return list
}

// tableView fills the page of a table of choices or faults. Its rows are decided
// by the engine for the facts of the sheet, so the page reads whole without a
// script.
func (w *work) tableView(t *book.Table) (any, error) {
	path := tablePath(t)
	e, err := w.opened("rules", &book.Opening{Title: t.Title, Facts: t.Facts})
	if err != nil {
		return nil, fmt.Errorf("%s: %w", t.File, err)
	}
	states := e.result.Rows(t.ID)
	if len(states) != len(t.Rows) {
		return nil, fmt.Errorf("%s: %d of %d rows are known to the engine", t.File, len(states), len(t.Rows))
	}
	v := &site.Rules{ID: t.ID, Name: t.Name, About: paragraph(t.About), Sheet: w.sheet(sheetID, e, w.tableGroups(e, states), rootOf(path))}
	v.Sheet.Rules = t.ID
	if w.hasChain() {
		v.Sheet.Carry = rootOf(path) + chainPath
	}
	for i := range t.Rows {
		rule := w.rule(t, &t.Rows[i], &states[i])
		v.Rows = append(v.Rows, rule)
		switch states[i].Truth {
		case formula.True:
			v.Holds++
		case formula.Unknown:
			v.Open++
		}
	}
	v.Frame = w.frame(stand{path: path, title: t.Name, say: t.About, place: t.Place, hazards: t.Hazards, block: site.TitleBlock{Scope: w.placeName(t.Place), Facts: t.Title}})
	return v, nil
}

// tableGroups are the lines of a table's sheet: the facts it opens with and what
// else its conditions ask people, then what is worked out from them.
func (w *work) tableGroups(e *example, states []reckon.RowState) []group {
	facts, follows := group{heading: w.words["rules.facts"]}, group{heading: w.words["rules.worked"]}
	seen := map[int]bool{}
	for _, f := range e.result.Question.Facts {
		seen[f.Term] = true
		facts.terms = append(facts.terms, f.Term)
	}
	for _, s := range states {
		for _, t := range w.engine.Rows[s.Row].When.Terms() {
			if seen[t] {
				continue
			}
			seen[t] = true
			if w.engine.Terms[t].Ask == "" {
				follows.terms = append(follows.terms, t)
			} else {
				facts.terms = append(facts.terms, t)
			}
		}
	}
	if len(follows.terms) == 0 {
		return []group{facts}
	}
	return []group{facts, follows}
}

func (w *work) rule(t *book.Table, r *book.Row, s *reckon.RowState) site.Rule {
	var lacks []string
	for _, term := range s.Lacks {
		lacks = append(lacks, w.engine.Terms[term].Name)
	}
	return site.Rule{ID: r.ID, Say: r.Say, When: conditionWords(w.engine, w.engine.Rows[s.Row].When), State: answer.RowWord(s.Truth), Lacks: strings.Join(lacks, ", "),
		For: w.shortWords(t.Choice, r.For), Against: w.shortWords(t.Choice, r.Against), Decides: r.Decides,
		Then: r.Then, Prove: r.Prove, Reason: r.Reason, Mark: r.Mark, Source: r.Source}
}

// shortWords are the names of a choice's words up to the first comma.
func (w *work) shortWords(choice string, ids []string) []string {
	var names []string
	for _, id := range ids {
		for _, v := range w.book.TermByID[choice].Values {
			if v.ID == id {
				name, _, _ := strings.Cut(v.Name, ",")
				names = append(names, name)
			}
		}
	}
	return names
}
