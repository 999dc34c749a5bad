// Package reckon is the network of the book: terms joined by relations. Give
// it facts, and it derives all that follows, each value with the relation and
// the values it came from; it names what is missing, shows what clashes, and
// says of every caution whether it fires.
//
// Conventions. Terms are known by their place in Book.Terms, rules by their
// place in Book.Rules. Values are in SI and carry a range: the lowest, the
// likely and the highest value; a plain number is all three. All work is
// deterministic: the same facts give the same result, byte for byte.
package reckon

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// Book is a loaded, checked Source.
type Book struct {
	ID, Title, Money string
	Terms            []Term
	Rules            []Rule
	Mistakes         []Mistake
	Cautions         []Caution
	Hazards          []Hazard
	Rows             []Row // of the tables of choices and faults
	Examples         []Example
	Bowls            []*Bowl // the families, in the order of their choice values
	Scope            *formula.Scope

	build   int     // the term that chooses the build, -1 if there is none
	rulesOf [][]int // for each term the rules it takes part in
	assumed []int   // the assumptions
	guessed []int   // the estimates
	family  *Bowl   // whose figures are in the templates, nil if they are not filled
	bowl    int     // the term that chooses the family of bowls, -1 if there is none
}

// Term is a quantity or a choice of the book.
type Term struct {
	formula.Term
	Title     string         // the name as a heading: “Total head”; Name is for running text
	Labels    []string       // of a choice: what each value is called
	Low, High float64        // the range in which a value makes sense, in SI
	Reference unit.Reference // of a pressure
	Ask       string         // the question for it; empty if no person can supply it
	Applies   []int          // builds it exists in, as places in the build's values; nil for all
	Otherwise float64        // its value in other builds; NaN if it has none there
}

// Strength says how far a rule binds.
type Strength uint8

const (
	Identity   Strength = iota // holds always; solved for any of its terms
	Estimate                   // fills its term while nothing better is known
	Assumption                 // fills its term last, and yields to anything
)

// Rule is a relation of the book, or an assumption.
type Rule struct {
	Strength Strength
	Name     string            // of an estimate
	Home     int               // the term on whose page it stands, -1 if none
	When     *formula.Expr     // nil if it holds always
	Relation *formula.Relation // nil for an assumption
	SI       *formula.Relation // the partner in SI form, if there is one
	Within   float64           // how far the SI partner may differ (relative)
	Because  string            // why it may differ more than 0.05 %
	Target   int               // what an estimate or an assumption fills; the left-hand term of an identity, or -1
	Value    float64           // of an assumption
	Say      string            // where an estimate or an assumption comes from
	Block    int               // its block in the Source
	Each     bool              // a template: written once for all families of bowls, it computes nothing before one is chosen
	Bowl     *Bowl             // of a filled template: the family whose figures it has
	terms    []int             // of the relation
	asked    []int             // the terms of its condition
	isolated []*formula.Expr   // for each of them the relation turned round, nil where algebra cannot
}

// Mistake is a wrong way with the formula of a term.
type Mistake struct {
	ID    string
	Home  int
	Wrong *formula.Relation // the home term's first formula with the edits made
	formula.Mistake
	Block int
}

// Caution warns when its condition holds.
type Caution struct {
	ID              string
	Home            int
	formula.Caution // of one that names a hazard and says no more, Say is the hazard's
	Block           int
}

// Example is a worked example.
type Example struct {
	Title string
	Home  int // -1 in a chapter
	formula.Worked
	Block int
}

// Find returns the place of a term.
func (b *Book) Find(id string) (int, bool) { return b.Scope.Find(id) }

// First returns the first formula on a term's own page that computes it, or nil.
func (b *Book) First(term int) *Rule {
	for i := range b.Rules {
		r := &b.Rules[i]
		if r.Home == term && r.Target == term && r.Relation != nil {
			return r
		}
	}
	return nil
}

// Problem is one thing wrong with a Source.
type Problem struct {
	Term    int    // the term whose title block it is in, -1 if it is in a block
	Field   string // the field of the title block: "range.from", "unit.us", …
	Block   int    // the block, -1 if it is in a title block
	Head    bool   // it is in the block's head, not in its body
	Off     int    // bytes into head or body
	Len     int
	Message string
	Suggest string
}

func (b *Book) findBuild() {
	b.build, b.bowl = -1, -1
	if i, ok := b.Find(BowlTerm); ok && b.Terms[i].Kind == formula.Choice {
		b.bowl = i
	}
	b.Scope.WithHoles(bowlHoles(b.bowl))
	if i, ok := b.Find(BuildTerm); ok && b.Terms[i].Kind == formula.Choice {
		b.build = i
	}
}

// running is a name as it stands inside a sentence: “total head”, but “NPSH
// available”.
func running(name string) string {
	if len(name) > 1 && name[0] >= 'A' && name[0] <= 'Z' && name[1] >= 'a' && name[1] <= 'z' {
		return string(name[0]+'a'-'A') + name[1:]
	}
	return name
}

// index finds for each rule its terms and what it gives for each of them.
func (b *Book) index() {
	b.rulesOf = make([][]int, len(b.Terms))
	for i := range b.Rules {
		r := &b.Rules[i]
		r.turn()
		switch r.Strength {
		case Assumption:
			b.assumed = append(b.assumed, i)
		case Estimate:
			b.guessed = append(b.guessed, i)
		}
		for _, t := range r.terms {
			b.rulesOf[t] = append(b.rulesOf[t], i)
		}
	}
}

// turn finds a rule's terms, and turns it round for those that it can give. An
// estimate gives its own term only.
func (r *Rule) turn() {
	if r.When != nil {
		r.asked = r.When.Terms()
	}
	if r.Relation == nil {
		return
	}
	r.terms = r.Relation.Terms()
	r.isolated = make([]*formula.Expr, len(r.terms))
	for i, t := range r.terms {
		if r.Strength == Estimate && t != r.Target {
			continue
		}
		if e, ok := r.Relation.Isolate(t); ok {
			r.isolated[i] = e
		}
	}
}

// turned is the relation turned round for one of its terms, nil where algebra
// cannot.
func (r *Rule) turned(term int) *formula.Expr {
	for i, t := range r.terms {
		if t == term {
			return r.isolated[i]
		}
	}
	return nil
}
