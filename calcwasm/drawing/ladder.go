package drawing

// RungKind says what a rung of the head ladder is made of.
type RungKind uint8

// Kinds of rungs.
const (
	RungHead RungKind = iota // head that is there afterwards: pressure, height, velocity
	RungLoss                 // head spent on the way: column, discharge head; hatched
)

// Rung is one piece of the ladder above the lift, from the datum up.
type Rung struct {
	Mark
	Kind RungKind
}

// LadderForm is the room a ladder is drawn for.
type LadderForm uint8

// Forms of the ladder and their widths in px.
const (
	LadderTerm   LadderForm = iota // 376: a term page; names and values in two columns
	LadderChain                    // 340: the chain page, with the stages as rungs beside it
	LadderNarrow                   // 172: beside the narrow well section on a phone
)

// Ladder is the head ladder: what the bowls must lift, piece by piece. It
// starts at the water, so its foot is the pumping level.
type Ladder struct {
	Prefix, Title, Desc string
	Scale               Scale // zero: its own
	Form                LadderForm
	Height              float64 // of the scene when Scale is zero; 0 means 440

	Lift      Mark   // depth of the pumping level below the datum
	Rungs     []Rung // from the datum up
	Field     Mark   // head left at the gauge, from the pumping level
	Total     Mark   // total head, from the pumping level
	Stages    int    // 0: not known or not shown
	StageText string // "each stage makes 42.9 ft"
	Foot      string // words below: "the ladder starts at the water, not at the bowls"
	Datum     string // name of the datum line; empty: none
	Level     string // name of the pumping level line; empty: none
}

// above and below are the reach of the ladder from the datum, in its unit.
func (l Ladder) above() float64 {
	up, top := 0.0, 0.0
	if l.Lift.ok() && l.Lift.Value < 0 {
		top = -l.Lift.Value
	}
	for _, r := range l.Rungs {
		if r.ok() {
			up += r.Value
			top = max(top, up)
		}
	}
	return max(top, l.ends(1))
}

func (l Ladder) below() float64 {
	down, deep := 0.0, 0.0
	if l.Lift.ok() {
		deep = max(0, l.Lift.Value)
	}
	for _, r := range l.Rungs {
		if r.ok() {
			down -= r.Value
			deep = max(deep, down)
		}
	}
	return max(deep, l.ends(-1))
}

// ends is how far the two dimension lines reach up (1) or down (-1): a total
// that disagrees with its rungs is drawn as given.
func (l Ladder) ends(way float64) float64 {
	far := 0.0
	for _, m := range []Mark{l.Field, l.Total} {
		if l.Lift.ok() && m.ok() {
			far = max(far, way*(m.Value-l.Lift.Value))
		}
	}
	return far
}

// ladderPlan is the geometry of a form.
type ladderPlan struct {
	w, x, bar        float64 // width, left edge and breadth of the bar
	total, field     float64 // dimension lines
	turn, stop, text float64 // label column
	room             float64 // breadth of labels
	stage            float64 // x of the stage rungs; 0 none
	valueClass       string
	foot             float64 // room below the ladder's foot
}

var ladderPlans = [...]ladderPlan{
	LadderTerm:   {w: 376, x: 128, bar: 50, total: 62, field: 100, turn: 186, stop: 200, text: 212, room: 164, foot: 26},
	LadderChain:  {w: 340, x: 104, bar: 54, total: 30, field: 72, turn: 196, stop: 212, text: 222, room: 108, stage: 172, valueClass: "mid b", foot: 46},
	LadderNarrow: {w: 172, x: 52, bar: 30, total: 18, field: 40, turn: 92, stop: 98, text: 104, room: 68, stage: 88, valueClass: "b", foot: 62},
}

// ladderLayout is a ladder with its places worked out.
type ladderLayout struct {
	Ladder
	p        ladderPlan
	s        *Scene
	base     float64 // y of the foot: the water
	top      float64 // y of the head of the stack
	pieces   []piece
	labelled float64 // y at which the labels end
	complete bool    // every rung is known: the stack is to scale
}

// piece is one drawn rung.
type piece struct {
	Mark
	kind   RungKind
	y0, y1 float64 // lower and upper end; y1 > y0 if the head is negative
	under  bool    // below the datum: water standing in the well
}

// nominal is the height of a rung that is not known: it shows that there is
// one, and is dashed because it is not to scale.
const nominal = 30.0

// Layout draws the ladder.
func (l Ladder) Layout() *Scene {
	if int(l.Form) >= len(ladderPlans) {
		l.Form = LadderTerm
	}
	p := ladderPlans[l.Form]
	if !l.Scale.set() {
		h := l.Height
		if !finite(h) || h < 240 {
			h = 440
		}
		l.Scale = ladderScale(l, h, p.foot)
	}
	lay := &ladderLayout{Ladder: l, p: p, complete: true}
	lay.s = &Scene{Prefix: l.Prefix, Class: "fig", Title: l.Title, Desc: l.Desc, Box: Box{0, 0, p.w, l.Scale.Height}, Width: p.w,
		Hatches: []Hatch{HatchWater, HatchLoss, HatchEarth}}
	lay.stack()
	lay.ground()
	lay.bars()
	lay.dimensions()
	lay.rungs()
	lay.labels()
	lay.feet()
	return lay.s
}

// ladderScale fills the height with the ladder alone: no motor stands above it.
func ladderScale(l Ladder, h, foot float64) Scale {
	up, down := l.above(), l.below()
	loose := 0.0 // px that rungs not known take
	for _, r := range l.Rungs {
		if !r.ok() {
			loose += nominal
		}
	}
	deep := 0.0
	if !l.Lift.ok() {
		deep = nominal
	}
	each := 58.0 // px a label takes: three lines, or one
	if l.Form == LadderTerm {
		each = 22
	}
	h = max(h, each*float64(len(l.Rungs)+2)+foot)
	if up+down < tiny {
		return Scale{Datum: 24 + loose, Per: 1, Height: max(h, 24+loose+deep+foot+nominal)}
	}
	per := max(h-24-foot-loose-deep, 40) / (up + down)
	return Scale{Datum: 24 + loose + up*per, Per: per, Height: max(h, 24+loose+deep+foot+(up+down)*per)}
}
