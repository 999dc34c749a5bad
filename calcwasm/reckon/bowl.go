package reckon

import (
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// BowlTerm is the choice that says which family of bowls the pump has.
const BowlTerm = "bowl-family"

// Origin says where the figures of a family come from.
type Origin uint8

const (
	NoOrigin     Origin = iota
	Invented            // for the book; nobody makes such a pump
	Measured            // on a test stand
	BuilderSheet        // read from the builder's curve sheet
)

// Origins are the words for them, as a file or a request writes them.
var Origins = [...]string{"", "invented", "measured", "builder's sheet"}

// originWords are the same as words of a condition: bowl:origin = invented.
var originWords = []string{"unknown", "invented", "measured", "builders-sheet"}

// Demonstration is what stands with every value that rests on an invented family.
const Demonstration = "Demonstration bowl, not for order"

// Bowl is one family of bowls: what one full-diameter stage does at one speed.
// ReadBowl makes it, and holds every figure against the range in which it makes
// sense. Heads do not rise with the capacity and the efficiency has one best
// point, so that a pump meets its system once.
type Bowl struct {
	ID     string
	Name   string // "Lapwing 10"
	Origin Origin
	Note   string
	Points []BowlPoint // 3 to 12, rising in capacity
	values []Figure    // of bowlFields, in their order
}

// BowlPoint is one point of the curves. Efficiency and NPSHRequired may be
// absent.
type BowlPoint struct{ Capacity, Head, Efficiency, NPSHRequired Figure }

// figure is the figure of a point in the column of pointFields.
func (p *BowlPoint) figure(column int) *Figure {
	switch column {
	case 0:
		return &p.Capacity
	case 1:
		return &p.Head
	case 2:
		return &p.Efficiency
	}
	return &p.NPSHRequired
}

// Figure is one number of a family, as written and in SI. It is absent if it
// has no Text.
type Figure struct {
	Text string // the digits: "63.0"
	Unit *unit.Unit
	SI   float64
}

// Known says whether the figure is there.
func (f Figure) Known() bool { return f.Text != "" }

// String is the figure with its unit: "63.0 ft".
func (f Figure) String() string {
	if !f.Known() || f.Unit == nil || f.Unit.Print == "" {
		return f.Text
	}
	return f.Text + " " + f.Unit.Symbol
}

// BowlField is a property of a family that is one number: its name, its unit and
// the range in which it makes sense, in that unit.
type BowlField struct {
	Name, Unit string
	Low, High  float64
	Needed     bool   // a family must have it
	Usual      string // what it is if nothing is said; empty for unknown
}

// bowlFields are all of them, in the order in which they are written. The ranges
// hold what deep-well bowls can be, widely taken (common practice).
var bowlFields = [...]BowlField{
	{Name: "speed", Unit: "rpm", Low: 300, High: 4000, Needed: true},
	{Name: "nominal-size", Unit: "in", Low: 3, High: 48},
	{Name: "outside-diameter", Unit: "in", Low: 2, High: 60},
	{Name: "impeller-diameter", Unit: "in", Low: 1, High: 48},
	{Name: "ring-diameter", Unit: "in", Low: 0.5, High: 40},
	{Name: "shaft-diameter", Unit: "in", Low: 0.25, High: 6},
	{Name: "thrust-factor", Unit: "lbf/ft", Low: 0.1, High: 300},
	{Name: "impeller-weight", Unit: "lbf", Low: 0.1, High: 2000},
	{Name: "lateral", Unit: "in", Low: 0.02, High: 10},
	{Name: "pressure-limit", Unit: "psi", Low: 20, High: 2000},
	{Name: "first-stage-length", Unit: "in", Low: 4, High: 200},
	{Name: "added-stage-length", Unit: "in", Low: 1, High: 80},
	{Name: "eye-height", Unit: "in", Low: 0.5, High: 120},
	{Name: "smallest-trim", Unit: "1", Low: 0.7, High: 1, Usual: "0.85"},
}

// pointFields are the columns of a point.
var pointFields = [...]BowlField{
	{Name: "capacity", Unit: "gpm", Low: 0, High: 60000, Needed: true},
	{Name: "head", Unit: "ft", Low: 0.1, High: 1000, Needed: true},
	{Name: "efficiency", Unit: "%", Low: 0, High: 95},
	{Name: "npsh-required", Unit: "ft", Low: 0, High: 200},
}

// BowlFields are the properties of a family that are one number.
func BowlFields() []BowlField { return bowlFields[:] }

// PointFields are the columns of a point, in their order.
func PointFields() []BowlField { return pointFields[:] }

// Value is a property by its name. It is absent if the family has none.
func (b *Bowl) Value(name string) Figure {
	for i := range bowlFields {
		if bowlFields[i].Name == name {
			return b.values[i]
		}
	}
	return Figure{}
}

// Label is how the family is called in a list of choices.
func (b *Bowl) Label() string { return b.Name + ", " + b.Value("speed").String() }

// Stand is what is said of every value that the family gives.
func (b *Bowl) Stand() string {
	switch b.Origin {
	case Invented:
		return Demonstration + ": " + b.Name
	case Measured:
		return b.Name + ", measured"
	}
	return b.Name + ", from the builder's sheet"
}

// Best is the point of the highest efficiency, nil if no point has one. Between
// two points the curve stays between their values, so no other flow has a higher
// one.
func (b *Bowl) Best() *BowlPoint {
	var best *BowlPoint
	for i := range b.Points {
		if p := &b.Points[i]; p.Efficiency.Known() && (best == nil || p.Efficiency.SI > best.Efficiency.SI) {
			best = p
		}
	}
	return best
}

// LargestPower is the largest power of one stage among the points, in water of
// the trade's density and in horsepower. It is absent without efficiencies.
func (b *Bowl) LargestPower() Figure {
	most := 0.0
	for i := range b.Points {
		if p := &b.Points[i]; p.Efficiency.SI > 0 {
			most = max(most, float64(DensityOfTrade*gravity*p.Capacity.SI)*p.Head.SI/p.Efficiency.SI)
		}
	}
	if most == 0 {
		return Figure{}
	}
	hp, _ := unit.Lookup("hp")
	return Figure{Text: unit.FormatPlain(most, hp), Unit: hp, SI: most}
}

// fromPoints are the curves of a family, what follows from them, and its origin.
var fromPoints = []formula.Field{
	{Name: "head", Dim: unit.Length, Points: true},
	{Name: "efficiency", Points: true},
	{Name: "npsh-required", Dim: unit.Length, Points: true},
	{Name: "best-capacity", Dim: unit.Flow},
	{Name: "best-stage-head", Dim: unit.Length},
	{Name: "best-efficiency"},
	{Name: "shutoff-stage-head", Dim: unit.Length},
	{Name: "largest-power", Dim: unit.Power},
	{Name: "origin", Words: originWords},
}

// bowlHoles are what a template can name: the numbers, the curves and what
// follows from them.
func bowlHoles(term int) formula.Holes {
	h := formula.Holes{Term: term}
	for _, f := range bowlFields {
		u, _ := unit.Lookup(f.Unit)
		h.Fields = append(h.Fields, formula.Field{Name: f.Name, Dim: u.Dim})
	}
	h.Fields = append(h.Fields, fromPoints...)
	return h
}

// property is what a hole of that name is filled with, nil if the family lacks it.
func (b *Bowl) property(name string) *formula.Expr {
	for column := 1; column < len(pointFields); column++ {
		if pointFields[column].Name == name {
			return b.line(column)
		}
	}
	if name == "origin" {
		return formula.NewWord(originWords[b.Origin], int(b.Origin))
	}
	f := b.derived(name)
	if !f.Known() {
		return nil
	}
	return formula.NewNumber(f.Text, f.Unit, f.SI)
}

// derived is a number that the family has, or that follows from its points.
func (b *Bowl) derived(name string) Figure {
	best := b.Best()
	if best == nil {
		best = &BowlPoint{}
	}
	switch name {
	case "best-capacity":
		return best.Capacity
	case "best-stage-head":
		return best.Head
	case "best-efficiency":
		return best.Efficiency
	case "largest-power":
		return b.LargestPower()
	case "shutoff-stage-head":
		if b.Points[0].Capacity.SI > 0 {
			return Figure{}
		}
		return b.Points[0].Head
	}
	return b.Value(name)
}

// line is one of the curves over the capacity, nil if it has fewer than two points.
func (b *Bowl) line(column int) *formula.Expr {
	var points []formula.Point
	for i := range b.Points {
		p := &b.Points[i]
		if y := p.figure(column); y.Known() {
			points = append(points, formula.Point{X: p.Capacity.SI, Y: y.SI})
		}
	}
	if len(points) < 2 {
		return nil
	}
	return formula.NewPoints(points, b.Points[0].Capacity.Unit)
}
