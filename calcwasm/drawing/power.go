package drawing

// PowerFlow is the way of power as a U: down as turning, up as water; width is
// power, and each loss leaves at the depth where it happens. All values are in
// one unit of power; the words say what the page shows.
type PowerFlow struct {
	Prefix, Title, Desc string
	Scale               Scale   // zero: its own
	Height              float64 // of the scene when Scale is zero; 0 means 480
	Narrow              bool    // 328 px, else 400 px
	Build               Build
	Cable               string // words in the cable of the submersible build: "down the cable"
	Depth               Mark   // where the bowls hang: the setting

	Wire          Mark   // from the wire
	Motor         Mark   // lost in the motor, as heat
	Thrust, Shaft Mark   // lost in the thrust bearing and the shaft bearings
	Down          Mark   // what reaches the bowls
	Bowls         Mark   // lost in the bowls
	Up            Mark   // what the bowls put into the water
	Column        Mark   // lost in column and head
	Out           Mark   // left at the gauge
	Share         string // "71.3 %", Out of Wire
}

// flow is the power at each station, all in the same unit, none negative.
type flow struct {
	wire, brake, thrust, bowl, up, out float64
	known                              bool // at least one station is known
}

// less takes a loss off if it is known; a loss never eats more than there is.
func less(p float64, loss Mark) float64 {
	if !loss.ok() || loss.Value <= 0 {
		return p
	}
	return max(p-loss.Value, 0)
}

// more puts a loss back on.
func more(p float64, loss Mark) float64 {
	if !loss.ok() || loss.Value <= 0 {
		return p
	}
	return p + loss.Value
}

// flow works the stations out from what is known: from the wire down if the
// wire is known, else back from the first station that is. A station that is
// known overrules what the losses say. What is not known changes nothing on
// the way, and is drawn as no step.
func (p PowerFlow) flow() flow {
	pos := func(m Mark) bool { return m.ok() && m.Value > tiny }
	var f flow
	switch {
	case pos(p.Wire):
		f.wire = p.Wire.Value
	case pos(p.Down):
		f.wire = more(more(more(p.Down.Value, p.Shaft), p.Thrust), p.Motor)
	case pos(p.Up):
		f.wire = more(more(more(more(p.Up.Value, p.Bowls), p.Shaft), p.Thrust), p.Motor)
	case pos(p.Out):
		f.wire = more(more(more(more(more(p.Out.Value, p.Column), p.Bowls), p.Shaft), p.Thrust), p.Motor)
	default:
		return flow{1, 1, 1, 1, 1, 1, false}
	}
	f.known = true
	f.brake = less(f.wire, p.Motor)
	f.thrust = less(f.brake, p.Thrust)
	f.bowl = less(f.thrust, p.Shaft)
	if pos(p.Down) {
		f.bowl = min(p.Down.Value, f.thrust)
	}
	f.up = less(f.bowl, p.Bowls)
	if pos(p.Up) {
		f.up = min(p.Up.Value, f.bowl)
	}
	f.out = less(f.up, p.Column)
	if pos(p.Out) {
		f.out = min(p.Out.Value, f.up)
	}
	return f
}

// powerLayout is a power flow with its places worked out. The right edge of
// the band that goes down is fixed and its left edge moves in: losses leave at
// the left. The left edge of the band that goes up is fixed.
type powerLayout struct {
	PowerFlow
	flow
	s          *Scene
	w          float64 // width of the scene
	k          float64 // px per unit of power
	datum      float64
	xl         float64 // left edge of the band at its widest
	xr, xa     float64 // right edge of the band down, left edge of the band up
	ym, yt, yb float64 // upper and lower edge of the wire; the bowls
	top        float64 // lower edge of the outlet
	line       string  // class of outlines: dashed while nothing is known
}

// Breadth of the power from the wire, in px.
const (
	bandWide   = 82.0
	bandNarrow = 72.0
)

func (p PowerFlow) band() float64 {
	if p.Narrow {
		return bandNarrow
	}
	return bandWide
}

// Layout draws the power flow.
func (p PowerFlow) Layout() *Scene {
	l := &powerLayout{PowerFlow: p, flow: p.flow(), w: 400, xl: 96}
	if p.Narrow {
		l.w, l.xl = 328, 84
	}
	l.k = l.band() / l.wire
	height := l.levels()
	l.xr = l.xl + l.brake*l.k
	if p.Build == Submersible { // here the cable is the widest
		l.xr = l.xl + l.wire*l.k
	}
	l.xa = l.xr + 44
	if p.Narrow {
		l.xa = l.xr + 30
	}
	l.s = &Scene{Prefix: p.Prefix, Class: "fig", Title: p.Title, Desc: p.Desc, Box: Box{0, 0, l.w, height}, Width: l.w,
		Hatches: []Hatch{HatchPower, HatchTurn}}
	l.s.Add(Line{X1: 0, Y1: l.datum, X2: l.w, Y2: l.datum, Class: "chainl"})
	l.down()
	l.turn()
	l.rise()
	l.leftLabels()
	l.rightLabels()
	return l.s
}

// levels places datum, wire and bowls, and returns the height of the scene.
func (l *powerLayout) levels() float64 {
	sc := l.Scale
	if !sc.set() {
		h := l.Height
		if !finite(h) || h < 380 {
			h = 480
		}
		depth := 1.0
		if l.Depth.ok() && l.Depth.Value > tiny {
			depth = l.Depth.Value
		}
		sc = Scale{Datum: 142, Per: (h - 142 - roomFoot) / depth, Height: h}
	}
	l.datum = sc.Datum
	l.ym, l.yt = sc.Datum-92, sc.Datum-92+l.band()
	l.yb = sc.Height - roomFoot
	if l.Depth.ok() {
		l.yb = min(sc.Y(l.Depth.Value), l.yb)
	}
	l.yb = max(l.yb, sc.Datum+190) // room for the labels of all losses
	l.top = sc.Datum - 22
	return max(sc.Height, l.yb+roomFoot)
}
