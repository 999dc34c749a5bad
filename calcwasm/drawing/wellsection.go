package drawing

// Build is one of the three pumps.
type Build uint8

// Builds of the book.
const (
	WaterLubricated Build = iota
	OilLubricated
	Submersible
)

// WellSection is the well with its levels to scale in depth. Across, nothing
// is to scale; motor and head are signs. Depths are marks below the datum.
type WellSection struct {
	Prefix, Title, Desc string
	Scale               Scale   // zero: its own
	Height              float64 // of the scene when Scale is zero; 0 means 560
	Narrow              bool    // 156 px, else 330 px
	Build               Build

	Static, Pumping, Drawdown Mark
	Setting                   Mark // to the top of the bowls
	Bowls                     Mark // length of the bowl assembly; not known: a nominal length
	Bottom                    Mark // depth of the well
	ScreenFrom, ScreenTo      Mark
	Stages                    Mark     // Text only: "8 stages"
	Shaft                     Mark     // Text only: "oil in tube"; of the submersible the cable. Not in the narrow form
	Gauge                     Mark     // height of the gauge above the datum
	Pressure                  Mark     // pressure at the gauge as head, in the unit of depth
	PressureSays              []string // words at the standpipe: "60 psi", "would lift", "water here"
	Datum                     string   // "datum: head base"
}

// above and below are the reach of the section from the datum.
func (w WellSection) above() float64 {
	up := 0.0
	if w.Pressure.ok() {
		up = w.Pressure.Value
		if w.Gauge.ok() {
			up += w.Gauge.Value
		}
	}
	for _, m := range []Mark{w.Static, w.Pumping} {
		if m.ok() {
			up = max(up, -m.Value)
		}
	}
	return up
}

// below leaves out the depth of the well and its screen: a well may be far
// deeper than its pump, and is then broken off.
func (w WellSection) below() float64 {
	down := 0.0
	for _, m := range []Mark{w.Static, w.Pumping, w.Setting} {
		if m.ok() {
			down = max(down, m.Value)
		}
	}
	if w.Setting.ok() && w.Bowls.ok() {
		down = max(down, w.Setting.Value+w.Bowls.Value)
	}
	return down
}

// wellPlan is the geometry across of a form of the section.
type wellPlan struct {
	w, cx         float64
	wall, inner   float64 // outer and inner half breadth of the casing
	pipe, tube    float64 // half breadth of column pipe and tube
	bowl          float64
	setting       float64 // x of the dimension lines
	pumping       float64
	static        float64
	stand, standW float64 // standpipe: centre and breadth
	head          float64 // sizes of motor and head against the wide form
}

var (
	wellWide   = wellPlan{w: 330, cx: 196, wall: 34, inner: 26, pipe: 12, tube: 5, bowl: 17, setting: 24, pumping: 58, static: 92, stand: 252, standW: 14, head: 1}
	wellNarrow = wellPlan{w: 156, cx: 98, wall: 26, inner: 20, pipe: 8, tube: 3.4, bowl: 12, setting: 18, pumping: 39, static: 60, stand: 141, standW: 10, head: .8}
)

// wellLayout is a section with its places worked out.
type wellLayout struct {
	WellSection
	p           wellPlan
	s           *Scene
	top         float64 // y of the top of the bowls
	bowls, tail float64 // heights of the bowl assembly and of suction pipe and strainer
	bottom      float64 // y at which the picture, or the well, ends
	open        bool    // the well goes on below the picture
	known       bool    // the setting is known
}

// Layout draws the section.
func (w WellSection) Layout() *Scene {
	p := wellWide
	if w.Narrow {
		p = wellNarrow
	}
	if !w.Scale.set() {
		h := w.Height
		if !finite(h) || h < 360 {
			h = 560
		}
		w.Scale = fitScale(w.above(), w.below(), h)
	}
	l := &wellLayout{WellSection: w, p: p}
	l.s = &Scene{Prefix: w.Prefix, Class: "fig", Title: w.Title, Desc: w.Desc, Box: Box{0, 0, p.w, w.Scale.Height}, Width: p.w,
		Hatches: []Hatch{HatchStill, HatchStillBack, HatchWater, HatchEarth}}
	l.settle()
	l.ground()
	l.water()
	l.casing()
	l.pump()
	l.foot()
	l.surface()
	l.dimensions()
	l.labels()
	return l.s
}

// settle finds the vertical places that depend on more than one mark.
func (l *wellLayout) settle() {
	y := l.Scale.Y
	l.known = l.Setting.ok() && l.Setting.Value > 0 // a pump above the datum is a slip of the pen
	if l.known {
		l.top = max(y(l.Setting.Value), l.Scale.Datum+14)
	} else {
		l.top = l.Scale.Datum + 60
		for _, m := range []Mark{l.Static, l.Pumping} {
			if m.ok() {
				l.top = max(l.top, y(m.Value)+40)
			}
		}
	}
	l.bowls = 14
	if l.Bowls.ok() && l.known {
		l.bowls = max(l.bowls, l.Bowls.Value*l.Scale.Per)
	}
	l.bowls = min(l.bowls, max(l.Scale.Height-l.Scale.Datum-90, 14))
	l.top = min(l.top, l.Scale.Height-34-l.bowls-30)
	l.tail = 22
	if l.Build == Submersible {
		l.tail = 44
	}
	l.bottom, l.open = l.Scale.Height-22, true
	if l.Bottom.ok() {
		if b := max(y(l.Bottom.Value), l.top+l.bowls+l.tail+6); b <= l.bottom {
			l.bottom, l.open = b, false
		}
	}
}
