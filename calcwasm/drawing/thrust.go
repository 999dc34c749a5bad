package drawing

// Thrust shows what hangs on the thrust bearing: weights and water pull the
// rotor down at the duty and, more, at shutoff; a line says how much the
// bearing may carry. All forces are to scale, in one unit.
type Thrust struct {
	Prefix, Title, Desc string

	Hydraulic, Weight Mark // at the duty: the water's pull, and the rotor's weight
	Total             Mark // both together
	Largest           Mark // at shutoff, weight included
	Rating            Mark // what the bearing may carry
	Duty, Shutoff     string
}

// Places of the thrust picture, in px.
const (
	thrustW     = 376.0
	thrustH     = 340.0
	thrustTop   = 44.0
	thrustRoom  = 250.0
	thrustBar   = 54.0
	thrustLoose = 40.0 // height of a force that is not known
)

// Layout draws the picture. A force that is not known is dashed.
func (d Thrust) Layout() *Scene {
	s := &Scene{Prefix: d.Prefix, Class: "fig", Title: d.Title, Desc: d.Desc, Box: Box{0, 0, thrustW, thrustH}, Width: thrustW,
		Hatches: []Hatch{HatchStill, HatchWater, HatchTurn}}
	per := d.per()
	calls := d.bars(s, per)
	if d.Rating.ok() && d.Rating.Value > 0 {
		y := thrustTop + d.Rating.Value*per
		s.Add(Line{X1: 10, Y1: y, X2: 226, Y2: y, Class: "s-turn", Stroke: 2.2})
		calls = append(calls, d.Rating.say(226, y, 120, "b"))
	} else if d.Rating.Name != "" {
		calls = append(calls, d.Rating.say(226, thrustTop+thrustRoom, 120, "b"))
	}
	bearing(s)
	callColumn{turn: 234, stop: 248, text: 252, lo: 4, hi: thrustH - 4, halo: true}.draw(s.Add, calls)
	return s
}

// bars hang from the bearing: the duty left, shutoff right.
func (d Thrust) bars(s *Scene, per float64) []callout {
	const left, right = 32.0, 138.0
	var calls []callout
	y := thrustTop
	for _, part := range []struct {
		m     Mark
		class string
		hatch Hatch
	}{{d.Hydraulic, "w-water", HatchWater}, {d.Weight, "w-turn", HatchTurn}} {
		h := thrustLoose
		if part.m.ok() {
			h = max(part.m.Value*per, 0)
			s.Add(Rect{X: left, Y: y, W: thrustBar, H: h, Class: part.class}, Rect{X: left, Y: y, W: thrustBar, H: h, Fill: string(part.hatch)},
				Rect{X: left, Y: y, W: thrustBar, H: h, Class: "out"})
		} else {
			s.Add(Rect{X: left, Y: y, W: thrustBar, H: h, Class: "hid"})
		}
		calls = append(calls, part.m.say(left+thrustBar, y+h/2, 120, ""))
		y += h
	}
	if d.Total.ok() {
		calls = append(calls, d.Total.say(left+thrustBar, y, 120, "b"))
	}
	arrowDown(s, left+thrustBar/2, y)
	h, class := 60.0, "hid"
	if d.Largest.ok() {
		h, class = max(d.Largest.Value*per, 0), "out"
		s.Add(Rect{X: right, Y: thrustTop, W: thrustBar, H: h, Class: "w-water"})
	}
	s.Add(Rect{X: right, Y: thrustTop, W: thrustBar, H: h, Class: class})
	arrowDown(s, right+thrustBar/2, thrustTop+h)
	calls = append(calls, d.Largest.say(right+thrustBar, thrustTop+h, 120, "b"))
	s.Add(Text{X: left + thrustBar/2, Y: 16, Words: d.Duty, Class: "f m"}, Text{X: right + thrustBar/2, Y: 16, Words: d.Shutoff, Class: "f m"})
	return calls
}

// per is px for each unit of force. A force that is not known takes its
// nominal height from the room.
func (d Thrust) per() float64 {
	most, room := 0.0, thrustRoom
	for _, m := range []Mark{d.Hydraulic, d.Weight} {
		if m.ok() {
			most += max(m.Value, 0)
		} else {
			room -= thrustLoose
		}
	}
	for _, m := range []Mark{d.Hydraulic, d.Weight, d.Total, d.Largest, d.Rating} {
		if m.ok() {
			most = max(most, m.Value)
		}
	}
	if most < tiny {
		return 1
	}
	return room / most
}

// bearing is the beam that everything hangs on.
func bearing(s *Scene) {
	s.Add(Rect{X: 10, Y: thrustTop - 16, W: 204, H: 16, Class: "w-still"}, Rect{X: 10, Y: thrustTop - 16, W: 204, H: 16, Fill: string(HatchStill)},
		Rect{X: 10, Y: thrustTop - 16, W: 204, H: 16, Class: "out"})
}

func arrowDown(s *Scene, x, y float64) {
	s.Add(Line{X1: x, Y1: y, X2: x, Y2: y + 16, Class: "out"}, poly("ink", true, x-6, y+14, x+6, y+14, x, y+26))
}
