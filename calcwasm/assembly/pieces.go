package assembly

import (
	"math"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// Piece is a line of a build as a certain pump has it.
type Piece struct {
	Group, Order int // place of its group, and its own place in the whole build, from the top
	Line         *Line
	Sure         bool    // it is known to belong to this pump; false while its condition lacks facts
	Count        float64 // how many; NaN if not known
	Length, Mass float64 // of one, in m and kg; NaN if not known or not told
	Lacks        []int   // terms that are wanting to know all of this
	Wrong        string  // why a value cannot be right; empty if nothing is wrong
}

// TotalLength is that of all of them, in m.
func (p *Piece) TotalLength() float64 { return float64(p.Count * p.Length) }

// TotalMass is that of all of them, in kg.
func (p *Piece) TotalMass() float64 { return float64(p.Count * p.Mass) }

// Run is the sum of the lengths of one run, in m.
type Run struct {
	Name   string
	Length float64 // NaN while a piece is not known
	Agrees bool    // it is the made setting
}

// List is the take-off of one pump.
type List struct {
	Build     *Build
	Result    *reckon.Result
	Pieces    []Piece   // from top to bottom; pieces that the pump does not have are left out
	GroupMass []float64 // by group: of its lines, or its own, in kg; NaN if it has none that is known
	Runs      []Run     // in the order in which they begin
	Refused   []int     // cautions that fire and make the combination impossible
	Notes     []string
	Lacks     []int // terms that are wanting, those for counts first, each once
}

// Of gives the stretch of Pieces that belongs to a group: from and to as of a slice.
func (l *List) Of(group int) (from, to int) {
	for from < len(l.Pieces) && l.Pieces[from].Group < group {
		from++
	}
	for to = from; to < len(l.Pieces) && l.Pieces[to].Group == group; to++ {
	}
	return from, to
}

// same is how near two lengths must be to be the same, relative: the converted
// feet of a thousand pieces differ by far less.
const same = 1e-9

// Pieces counts the pieces of a pump from what is known about it.
func Pieces(res *reckon.Result, b *Build) *List {
	l := &List{Build: b, Result: res}
	order := 0
	for g := range b.Groups {
		group := &b.Groups[g]
		from := len(l.Pieces)
		for i := range group.Lines {
			if p := l.piece(&group.Lines[i]); p.Count != 0 {
				p.Group, p.Order = g, order
				l.Pieces = append(l.Pieces, p)
			}
			order++
		}
		l.GroupMass = append(l.GroupMass, l.groupMass(group, l.Pieces[from:]))
	}
	l.runs()
	l.lacks()
	l.notes()
	for _, c := range b.Refuse {
		if res.Cautions[c].Truth == formula.True {
			l.Refused = append(l.Refused, c)
		}
	}
	return l
}

// piece evaluates a line. One that the pump does not have has the count 0.
func (l *List) piece(line *Line) Piece {
	env := l.Result.Env()
	nan := math.NaN()
	p := Piece{Line: line, Sure: true, Count: 1, Length: nan, Mass: nan}
	if line.When != nil {
		switch line.When.Test(env) {
		case formula.False:
			p.Count = 0
			return p
		case formula.Unknown:
			p.Sure = false
			p.Lacks = add(p.Lacks, line.When.Lacking(env))
		}
	}
	if line.Count != nil {
		p.Count = l.whole(&p, line.Count)
	}
	if p.Count == 0 {
		return p
	}
	if line.Length != nil {
		p.Length = l.value(&p, line.Length)
	}
	if line.Mass != nil {
		p.Mass = l.value(&p, line.Mass)
	}
	return p
}

// value evaluates an expression of a line, and notes what it lacks.
func (l *List) value(p *Piece, e *formula.Expr) float64 {
	env := l.Result.Env()
	v := e.Eval(env)
	switch {
	case env.Invalid != "":
		p.Wrong = env.Invalid
	case v != v:
		for _, t := range e.Terms() {
			if !env.Known(t) {
				p.Lacks = add(p.Lacks, []int{t})
			}
		}
	case v < 0:
		p.Wrong = "it comes out below nothing"
		v = math.NaN()
	}
	return v
}

// whole evaluates a count: there is no half of a piece.
func (l *List) whole(p *Piece, e *formula.Expr) float64 {
	v := l.value(p, e)
	n := math.Round(v)
	if math.Abs(v-n) > same*math.Max(1, n) {
		p.Wrong = "it comes out as no whole number"
		return math.NaN()
	}
	return n
}

func (l *List) groupMass(g *Group, pieces []Piece) float64 {
	if g.Mass != nil {
		return g.Mass.Eval(l.Result.Env())
	}
	sum, some := 0.0, false
	for i := range pieces {
		if p := &pieces[i]; p.Line.Mass != nil {
			sum, some = sum+p.TotalMass(), true
		}
	}
	if !some {
		return math.NaN()
	}
	return sum
}

// runs adds up what hangs end to end, and compares it with the made setting.
func (l *List) runs() {
	for i := range l.Pieces {
		p := &l.Pieces[i]
		if p.Line.Run == "" {
			continue
		}
		r := l.run(p.Line.Run)
		r.Length += p.TotalLength()
	}
	made := l.Result.Env().Values[l.Build.Made]
	for i := range l.Runs {
		r := &l.Runs[i]
		r.Agrees = math.Abs(r.Length-made) <= same*math.Abs(made)
	}
}

func (l *List) run(name string) *Run {
	for i := range l.Runs {
		if l.Runs[i].Name == name {
			return &l.Runs[i]
		}
	}
	l.Runs = append(l.Runs, Run{Name: name})
	return &l.Runs[len(l.Runs)-1]
}

// lacks gathers what is wanting: first for what there is and how many, then for
// the rest, then for the totals.
func (l *List) lacks() {
	env := l.Result.Env()
	if !env.Known(l.Build.Made) {
		l.Lacks = append(l.Lacks, l.Build.Made)
	}
	for _, counts := range [2]bool{true, false} {
		for i := range l.Pieces {
			p := &l.Pieces[i]
			if counts == (!p.Sure || p.Count != p.Count) {
				l.Lacks = add(l.Lacks, p.Lacks)
			}
		}
	}
	for g := range l.Build.Groups {
		if m := l.Build.Groups[g].Mass; m != nil && m.Eval(env) != m.Eval(env) {
			l.wanting(m.Terms())
		}
	}
	l.wanting(l.Build.Totals)
}

// wanting adds those terms that have no value, and could have one.
func (l *List) wanting(terms []int) {
	for _, t := range terms {
		switch l.Result.Values[t].State {
		case reckon.Missing, reckon.Waits:
			l.Lacks = add(l.Lacks, []int{t})
		}
	}
}

func (l *List) notes() {
	made, b := &l.Result.Values[l.Build.Made], l.Result.Book
	if made.Low < made.High {
		l.Notes = append(l.Notes, "The "+b.Terms[l.Build.Made].Name+" is a range: the pieces are counted for "+b.Format(l.Build.Made, made.Likely, formula.US)+
			" ("+b.Format(l.Build.Made, made.Likely, formula.SI)+") within it.")
	}
	for i := range l.Build.Notes {
		if n := &l.Build.Notes[i]; n.When == nil || n.When.Test(l.Result.Env()) == formula.True {
			l.Notes = append(l.Notes, n.Say)
		}
	}
}

// add appends those terms that are not in the list.
func add(list, more []int) []int {
next:
	for _, t := range more {
		for _, have := range list {
			if have == t {
				continue next
			}
		}
		list = append(list, t)
	}
	return list
}
