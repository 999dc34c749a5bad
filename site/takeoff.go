package site

import "html/template"

// TakeOff is the page that counts the pieces of a pump (take-off.html): a sheet
// of facts, and the list that follows from them.
type TakeOff struct {
	Frame
	Lead  template.HTML
	Sheet *Sheet  // required
	List  *Pieces // required: what the engine told for the facts of the sheet
}

// Pieces is the list of a take-off, as the engine tells it in its reply: the
// fields are those of DEVELOPERS.md, and scripts/pieces.ts writes the same list
// when the facts change.
type Pieces struct {
	Name        string // of the pump; "" while it is not known which
	Asked, Made *PieceSum
	Deeper      *PieceText // how much deeper it is made than asked
	Shallower   *PieceText
	Groups      []PieceGroup
	Runs        []PieceRun
	Totals      []PieceSum
	Cautions    []PieceCaution
	Asks        []PieceAsk
	Notes       []string
}

// PieceText is a value as text in both systems of units.
type PieceText struct{ US, SI string }

// PieceSum is a term told with the pieces.
type PieceSum struct {
	ID, Name, US, SI string
	Large            bool // the weight that is printed large
}

// PieceGroup is a stretch of the pump.
type PieceGroup struct {
	ID, Name string
	Mass     *PieceText
	Parts    []PieceLine
}

// PieceLine is a part at one place of the pump.
type PieceLine struct {
	Part, Name                           string // required
	Label, With, Wrong                   string
	Unsure                               bool
	Count                                *int
	Length, TotalLength, Mass, TotalMass *PieceText
}

// PieceRun is the sum of the lengths of one run; without Length it is not known.
type PieceRun struct {
	Name   string
	Length *PieceText
	Agrees bool
}

// PieceCaution is a caution that fires, or that makes the pump impossible.
type PieceCaution struct {
	ID, Text        string
	Danger, Refuses bool
}

// PieceAsk is a fact that is missing, with its question.
type PieceAsk struct{ ID, Name, Ask string }

// Refused says whether the combination cannot be made: then no piece is listed.
func (p *Pieces) Refused() bool { return len(p.Cautions) > 0 && p.Cautions[0].Refuses }

// Big is the weight that is printed large; nil if none is known.
func (p *Pieces) Big() *PieceSum {
	for i := range p.Totals {
		if p.Totals[i].Large {
			return &p.Totals[i]
		}
	}
	return nil
}

// Open says whether a listed line carries a question mark.
func (p *Pieces) Open() bool {
	for i := range p.Groups {
		for _, line := range p.Groups[i].Listed() {
			if line.Unsure || line.Count == nil {
				return true
			}
		}
	}
	return false
}

// Listed are the parts of a group that are ordered: those that come with
// another are left out.
func (g *PieceGroup) Listed() []PieceLine {
	var list []PieceLine
	for _, p := range g.Parts {
		if p.With == "" {
			list = append(list, p)
		}
	}
	return list
}
