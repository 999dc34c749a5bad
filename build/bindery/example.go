package bindery

import (
	"fmt"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/site"
)

// example is a set of facts and all that follows from it.
type example struct {
	title  string
	facts  []site.Fact             // as written, for links
	want   int                     // -1 for everything
	expect []int                   // the terms looked for
	given  map[int]*formula.Assign // as the author wrote them, by term
	hoped  map[int]*formula.Assign // likewise what is expected
	result *reckon.Result
}

// reckoned works out an example of the book. Its facts go in as text, the way
// a person would type them on the page, so that page and print agree.
func (w *work) reckoned(ex *reckon.Example) (*example, error) {
	out := &example{title: ex.Title, want: -1, given: map[int]*formula.Assign{}, hoped: map[int]*formula.Assign{}}
	body := w.source.Blocks[ex.Block].Body
	// What is missing for the wanted term is told by the living page only, and
	// is dear to find out: nothing is asked for.
	q := reckon.Question{Want: -1}
	for i := range ex.Given {
		a := &ex.Given[i]
		fact, err := w.fact(a.Term, body[a.ValueOff:a.ValueOff+a.ValueLen])
		if err != nil {
			return nil, fmt.Errorf("the worked example %q: %w", ex.Title, err)
		}
		out.given[a.Term] = a
		q.Facts = append(q.Facts, fact)
		out.facts = append(out.facts, site.Fact{Term: w.engine.Terms[a.Term].ID, Text: fact.Text})
	}
	for i := range ex.Expect {
		out.expect = append(out.expect, ex.Expect[i].Term)
		out.hoped[ex.Expect[i].Term] = &ex.Expect[i]
	}
	out.want = out.expect[0]
	for _, t := range out.expect {
		if t == ex.Home {
			out.want = t
		}
	}
	out.result = w.engine.Reckon(q)
	return out, nil
}

func (w *work) fact(term int, text string) (reckon.Fact, error) {
	fact, err := w.engine.Read(term, text)
	if err != nil {
		return fact, fmt.Errorf("%s: %w", w.engine.Terms[term].ID, err)
	}
	return fact, nil
}

// chain lists the derived terms that lead to the expected ones, in the order in
// which they are worked out.
func (e *example) chain() []int {
	needed := map[int]bool{}
	for _, t := range e.expect {
		for _, c := range e.result.Chain(t) {
			needed[c] = true
		}
	}
	var list []int
	for _, t := range e.result.Order {
		if needed[t] {
			list = append(list, t)
			delete(needed, t)
		}
	}
	return list
}

// unknown is a sheet with no facts, for a term that has no example.
func (w *work) unknown(title string, want int) *example {
	return &example{title: title, want: want, expect: []int{want}, result: w.engine.Reckon(reckon.Question{Want: -1})}
}
