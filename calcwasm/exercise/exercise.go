// Package exercise makes exercises out of templates and marks what learners
// answer. A template is a situation with facts that are drawn from ranges; the
// same seed draws the same sheet on every machine. The key and what every
// mistake of the book would give are reckoned from the sheet's own facts, so
// that a wrong number can be traced to the way that leads to it.
//
// Conventions. Values are in SI. Terms, rules and cautions are known by their
// places in the book. A sheet has items: first the terms asked, in their order,
// then choices, then things to put in order. All work is deterministic.
//
// The marker names a cause only where the number singles it out. “Sure” means:
// one cause alone gives the number to four digits, no slip of another kind does
// (digits swapped or misread, one fact read in place of another), and fewer than
// one number in 250 out of the blue would be taken for one of the causes looked
// at.
//
// A Set keeps one place to reckon in: use it from one goroutine.
package exercise

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// Set is the templates of a book with the mistakes they can recognise.
type Set struct {
	Book      *reckon.Book
	Templates []Template
	slips     []Slip
	slipsOf   [][]int                      // for each term the slips on its page
	both      map[[2]int]*formula.Relation // two slips in one formula, the lower place first
	work      *formula.Env
}

// Slip is a mistake of the book.
type Slip struct {
	ID    string // term/name
	Home  int    // the term on whose page it stands: what to read again
	Say   string // what to tell the learner
	wrong *formula.Relation
}

// Template is one exercise before its facts are drawn.
type Template struct {
	ID, Name string
	Level    int    // 1 to 3
	Place    string // id of the place on the rail
	Text     string // the situation; {term} stands for a fact
	Pick     int    // how many of the choices a sheet shows; 0 for all
	Allow    []string
	Facts    []formula.Drawn
	Keep     []*formula.Expr
	Ask      []formula.Asked
	Choose   []formula.Choose
	Order    []formula.Order

	plans   []*plan
	lessons [][]lesson // for each term asked: which slips are of one lesson
}

// lesson says that a slip tells the same as another one that comes before it:
// in every draw both give nearly the same number.
type lesson struct{ slip, as int }

// Find returns a template by its id, nil if there is none.
func (s *Set) Find(id string) *Template {
	for i := range s.Templates {
		if s.Templates[i].ID == id {
			return &s.Templates[i]
		}
	}
	return nil
}

// Slip is one of the mistakes, by its place.
func (s *Set) Slip(i int) *Slip { return &s.slips[i] }

// New makes a set without templates for a loaded book.
func New(book *reckon.Book) *Set {
	s := &Set{Book: book, both: map[[2]int]*formula.Relation{}, work: formula.NewEnv(book.Scope)}
	for i := range book.Mistakes {
		m := &book.Mistakes[i]
		s.slips = append(s.slips, Slip{ID: m.ID, Home: m.Home, Say: m.Say, wrong: m.Wrong})
	}
	s.index()
	for i := range book.Mistakes {
		for k := i + 1; k < len(book.Mistakes); k++ {
			s.combine(i, k)
		}
	}
	return s
}

// combine makes the formula that two mistakes on one term together turn the
// right one into, where they can be combined.
func (s *Set) combine(i, k int) {
	a, b := &s.Book.Mistakes[i], &s.Book.Mistakes[k]
	if a.Home != b.Home {
		return
	}
	edits := append(append([]*formula.Edit{}, a.Edits...), b.Edits...)
	for _, e := range edits {
		if e.Kind == formula.WholeFor {
			return
		}
	}
	first := s.Book.First(a.Home)
	if first == nil {
		return
	}
	if wrong, bad := first.Relation.Apply(s.Book.Scope, edits); bad == nil {
		s.both[[2]int{i, k}] = wrong
	}
}

// value computes a wrong relation with what an Env knows, in SI; NaN if it lacks
// something.
func value(r *formula.Relation, env *formula.Env) float64 {
	v := r.Right.Eval(env)
	if r.Left.Op == formula.Bare {
		v = r.Left.Unit.ToSI(v)
	}
	return v
}

func (s *Set) index() {
	s.slipsOf = make([][]int, len(s.Book.Terms))
	for i := range s.slips {
		s.slipsOf[s.slips[i].Home] = append(s.slipsOf[s.slips[i].Home], i)
	}
}
