// Package formula is the notation of the handbook: it scans, parses and checks
// what authors write in fenced blocks, evaluates it, turns it round for another
// of its terms, and writes it as MathML and as a line with the numbers put in.
//
// Conventions. Values are held in SI: a term with the unit gpm is a float64 in
// m3/s, a percentage is a fraction, a speed is in rad/s, a choice is the place
// of its word in the term's list of values. NaN means that a value is not
// known. Offsets are bytes into the text that was parsed, so that a caller who
// knows where the text stands in a file can name line and column.
//
// The package knows the physics only through the functions that a Scope is
// given, and it knows nothing of Markdown or of pages.
package formula

import (
	"cmp"
	"slices"
	"strings"

	"columnbowl/calcwasm/unit"
)

// Kind tells what the value of a term is.
type Kind uint8

const (
	Quantity Kind = iota // a number with a unit
	Count                // a whole number, 0 or more
	Choice               // one of a list of words
)

// Term is what the notation has to know of a term of the book.
type Term struct {
	ID     string
	Name   string     // as it stands in running text: "total head"
	Symbol string     // "H", "H_b" for a subscript; may be empty
	Kind   Kind       //
	US, SI *unit.Unit // nil for a choice
	Values []string   // the words of a choice
}

// Dim is the dimension of the term's values.
func (t *Term) Dim() unit.Dim {
	if t.US == nil {
		return unit.Dim{}
	}
	return t.US.Dim
}

// In is the unit of the term in a system of units.
func (t *Term) In(s System) *unit.Unit {
	if s == SI {
		return t.SI
	}
	return t.US
}

// System says in which units numbers are written.
type System uint8

// String is the word of the system in links and requests.
func (s System) String() string {
	if s == SI {
		return "si"
	}
	return "us"
}

const (
	US System = iota
	SI
)

// Scope is what names in an expression can mean: terms by their place in a
// list, and functions by name.
type Scope struct {
	terms []Term
	index map[string]int
	funcs map[string]*Func
	holes Holes
}

// NewScope makes a scope of terms (kept in their order) and of functions; the
// functions of the notation itself (min, round-up, …) are always there.
func NewScope(terms []Term, funcs []*Func) *Scope {
	s := &Scope{terms: terms, index: make(map[string]int, len(terms)), funcs: map[string]*Func{}, holes: Holes{Term: -1}}
	for i := range terms {
		s.index[terms[i].ID] = i
	}
	for _, f := range ownFuncs {
		s.funcs[f.Name] = f
	}
	for _, f := range funcs {
		s.funcs[f.Name] = f
	}
	return s
}

// WithValues is the scope with other values for a choice term; s stays as it is.
func (s *Scope) WithValues(term int, values []string) *Scope {
	out := *s
	out.terms = append([]Term(nil), s.terms...)
	out.terms[term].Values = values
	return &out
}

// Len is the number of terms: the length an Env's values must have.
func (s *Scope) Len() int { return len(s.terms) }

// Term returns the term at a place in the list.
func (s *Scope) Term(i int) *Term { return &s.terms[i] }

// Find returns the place of a term in the list.
func (s *Scope) Find(id string) (int, bool) {
	i, ok := s.index[id]
	return i, ok
}

// Near returns the known term or function whose name is most like a
// misspelt one, or "".
func (s *Scope) Near(name string) string {
	names := make([]string, 0, len(s.terms)+len(s.funcs))
	for i := range s.terms {
		names = append(names, s.terms[i].ID)
	}
	for f := range s.funcs {
		names = append(names, f)
	}
	slices.Sort(names)
	if near := Nearest(name, names); near != name {
		return near
	}
	return "" // a function without its parentheses
}

// Nearest returns the one of names that is closest to a misspelt word, or "" if
// none is close: the edit distance may be a third of the word's length. A name
// that has the word among its hyphenated parts counts as close as well.
func Nearest(word string, names []string) string {
	best, bestDist := "", len(word)/3+1
	for _, n := range names {
		if d := distance(word, n, bestDist); d < bestDist {
			best, bestDist = n, d
		}
	}
	if best != "" || len(word) < 4 {
		return best
	}
	for _, n := range names {
		if strings.Contains("-"+n+"-", "-"+word+"-") {
			return n
		}
	}
	return ""
}

// distance is the number of single-letter edits and swaps of neighbours
// between two words, given up once it cannot stay below limit.
func distance(a, b string, limit int) int {
	if d := len(a) - len(b); d >= limit || -d >= limit {
		return limit
	}
	prev2 := make([]int, len(b)+1)
	prev := make([]int, len(b)+1)
	row := make([]int, len(b)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(row[j-1]+1, prev[j]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], prev2[j-2]+1)
			}
		}
		prev2, prev, row = prev, row, prev2
	}
	return prev[len(b)]
}

// Error is one thing wrong with a text in the notation.
type Error struct {
	Off, Len int    // where, in bytes of the text
	Message  string // what is wrong, complete
	Suggest  string // what to write in its place, if that is known
}

func (e *Error) Error() string {
	if e.Suggest != "" {
		return e.Message + " Did you mean " + e.Suggest + "?"
	}
	return e.Message
}

// Errors are all that is wrong with one text, in its order.
type Errors []*Error

func (l Errors) Error() string {
	parts := make([]string, len(l))
	for i, e := range l {
		parts[i] = e.Error()
	}
	return strings.Join(parts, "\n")
}

// sorted returns the list in the order of the text as an error, nil if empty.
func (l Errors) sorted() error {
	if len(l) == 0 {
		return nil
	}
	slices.SortStableFunc(l, func(a, b *Error) int { return cmp.Compare(a.Off, b.Off) })
	return l
}
