package drawing

// Stretch shows why an impeller is raised before the start: the thrust of the
// running pump stretches the shaft, and the impeller comes down by as much.
// Left it hangs as it was set, right it runs. Heights are to scale, in one
// unit, measured from the seat of the bowl; across nothing is to scale.
type Stretch struct {
	Prefix, Title, Desc string

	Raised    Mark   // how far the impeller is lifted off its seat at rest
	Stretch   Mark   // how far the shaft stretches when it runs
	Clearance Mark   // what is left below it
	Lateral   Mark   // all the way it could be lifted; not known: no upper stop is drawn
	Rest, Run string // words below the two: "set, at rest", "running"
}

// Places of the stretch picture, in px.
const (
	stretchW     = 376.0
	stretchH     = 330.0
	stretchFloor = 276.0 // y of the seat
	stretchRoom  = 190.0 // the largest height drawn
	impellerW    = 74.0
	impellerH    = 30.0
	impellerRest = 22.0 // x of the one at rest
	impellerRun  = 116.0
)

// Layout draws the picture. What is not known is drawn dashed at a nominal
// height.
func (d Stretch) Layout() *Scene {
	s := &Scene{Prefix: d.Prefix, Class: "fig", Title: d.Title, Desc: d.Desc, Box: Box{0, 0, stretchW, stretchH}, Width: stretchW,
		Hatches: []Hatch{HatchStill, HatchTurn}}
	per := d.per()
	raised := clampHeight(60)
	if d.Raised.ok() {
		raised = clampHeight(d.Raised.Value * per)
	}
	left := clampHeight(raised - 30)
	switch {
	case d.Clearance.ok():
		left = clampHeight(d.Clearance.Value * per)
	case d.Stretch.ok():
		left = clampHeight(raised - d.Stretch.Value*per)
	}
	top := d.stop(s, per)
	seat(s, stretchFloor)
	impeller(s, impellerRest, stretchFloor-max(raised, 0), d.Raised.ok())
	impeller(s, impellerRun, stretchFloor-max(left, 0), d.Raised.ok() && d.Stretch.ok())
	s.Add(Line{X1: impellerRest + impellerW, Y1: stretchFloor - raised, X2: 224, Y2: stretchFloor - raised, Class: "dim"},
		Line{X1: impellerRun + impellerW, Y1: stretchFloor - left, X2: 224, Y2: stretchFloor - left, Class: "dim"},
		Text{X: impellerRest + impellerW/2, Y: stretchFloor + 34, Words: d.Rest, Class: "f m"},
		Text{X: impellerRun + impellerW/2, Y: stretchFloor + 34, Words: d.Run, Class: "f m"})
	line := func(m Mark, x, from, to float64) callout {
		dimension{x: x, y1: stretchFloor - to, y2: stretchFloor - from, unknown: !m.ok()}.draw(s.Add)
		return m.say(x, stretchFloor-(from+to)/2, 110, "b")
	}
	calls := []callout{line(d.Raised, 202, 0, raised), line(d.Stretch, 218, left, raised), line(d.Clearance, 218, 0, left)}
	if top > 0 {
		calls = append(calls, line(d.Lateral, 234, 0, top))
	}
	callColumn{turn: 240, stop: 258, text: 262, lo: 8, hi: stretchH - 8}.draw(s.Add, calls)
	return s
}

// per is px for each unit of height.
func (d Stretch) per() float64 {
	most := 0.0
	for _, m := range []Mark{d.Raised, d.Lateral, d.Clearance} {
		if m.ok() {
			most = max(most, m.Value)
		}
	}
	if most < tiny {
		return 1
	}
	return stretchRoom / most
}

// clampHeight keeps a height inside the picture: a little below the seat shows
// that the numbers do not fit.
func clampHeight(h float64) float64 { return min(max(h, -12), stretchRoom) }

// stop draws the underside of the bowl above, where the impeller would touch
// if it were lifted by all of its lateral; it returns that height.
func (d Stretch) stop(s *Scene, per float64) float64 {
	if !d.Lateral.ok() || d.Lateral.Value <= 0 {
		return 0
	}
	h := min(d.Lateral.Value*per, stretchRoom)
	y := stretchFloor - h - impellerH
	s.Add(Rect{X: 8, Y: y - 14, W: 196, H: 14, Class: "w-still"}, Rect{X: 8, Y: y - 14, W: 196, H: 14, Fill: string(HatchStill)},
		Line{X1: 8, Y1: y, X2: 204, Y2: y, Class: "out"})
	return h
}

func seat(s *Scene, y float64) {
	s.Add(Rect{X: 8, Y: y, W: 196, H: 14, Class: "w-still"}, Rect{X: 8, Y: y, W: 196, H: 14, Fill: string(HatchStill)},
		Line{X1: 8, Y1: y, X2: 240, Y2: y, Class: "out"})
}

// impeller is an impeller seen as a block on its shaft, standing on y.
func impeller(s *Scene, x, y float64, known bool) {
	mid := x + impellerW/2
	body := poly("w-turn", true, x, y, x+impellerW, y, x+impellerW*.86, y-impellerH, x+impellerW*.14, y-impellerH)
	s.Add(Rect{X: mid - 5, Y: 6, W: 10, H: max(y-impellerH-6, 0), Class: "w-turn"},
		Line{X1: mid - 5, Y1: 6, X2: mid - 5, Y2: y - impellerH, Class: "thin"}, Line{X1: mid + 5, Y1: 6, X2: mid + 5, Y2: y - impellerH, Class: "thin"}, body)
	if !known {
		s.Add(body.With("hid"))
		return
	}
	hatched := body.With("")
	s.Add(hatched.Hatched(string(HatchTurn)), body.With("out"))
}
