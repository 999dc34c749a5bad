package drawing

import "math"

// Annulus is the column cut across: the ring in which the water rises, to
// scale. Diameters are in one unit. Which parts stand in the middle the build
// says: the shaft in water, the shaft in oil in its tube, or nothing but water
// in the pipe of a submersible.
type Annulus struct {
	Prefix, Title, Desc string
	Build               Build

	Column, Tube, Shaft Mark // inside of the column or drop pipe, outside of the tube, shaft
	Velocity            Mark // of the water in the ring
}

// Places of the picture, in px.
const (
	annulusW  = 376.0
	annulusH  = 276.0
	annulusX  = 124.0
	annulusY  = 138.0
	annulusR  = 108.0 // inside of the column
	annulusIn = 10.0  // wall of the column, not to scale
)

// Layout draws the picture. Without the column's diameter the ring is nominal
// and dashed.
func (d Annulus) Layout() *Scene {
	s := &Scene{Prefix: d.Prefix, Class: "fig", Title: d.Title, Desc: d.Desc, Box: Box{0, 0, annulusW, annulusH}, Width: annulusW,
		Hatches: []Hatch{HatchStill, HatchStillBack, HatchWater, HatchTurn}}
	known := d.Column.ok() && d.Column.Value > tiny
	r := func(m Mark, nominal float64) float64 {
		if !known || !m.ok() || m.Value <= 0 {
			return nominal
		}
		return min(m.Value/d.Column.Value*annulusR, annulusR)
	}
	tube, shaft := 0.0, 0.0
	if d.Build != Submersible {
		shaft = r(d.Shaft, 24)
	}
	if d.Build == OilLubricated {
		tube = r(d.Tube, 38)
		shaft = min(shaft, tube*.86)
	}
	disc(s, annulusR+annulusIn, "w-still", HatchStill, known)
	disc(s, annulusR, "w-water", HatchWater, known)
	if tube > 0 {
		disc(s, tube, "w-still", HatchStillBack, d.Tube.ok())
		disc(s, min(tube*.86, tube-3), "pap", "", d.Tube.ok())
	}
	if shaft > 0 {
		disc(s, shaft, "w-turn", HatchTurn, d.Shaft.ok())
	}
	d.words(s, tube, shaft)
	return s
}

// disc is a filled circle with its outline; each smaller one covers what is
// within.
func disc(s *Scene, r float64, class string, hatch Hatch, known bool) {
	s.Add(Circle{annulusX, annulusY, r, "pap"}, Circle{annulusX, annulusY, r, class})
	if hatch != "" {
		s.Add(round(r, "").Hatched(string(hatch)))
	}
	line := "out"
	if !known {
		line = "hid"
	}
	s.Add(Circle{annulusX, annulusY, r, line})
}

// round is a circle as a path, which can carry a hatch.
func round(r float64, class string) *Path {
	const k = .5522847498 // cubic handle of a quarter circle
	x, y := annulusX, annulusY
	return NewPath(class).M(x+r, y).C(x+r, y+k*r, x+k*r, y+r, x, y+r).C(x-k*r, y+r, x-r, y+k*r, x-r, y).
		C(x-r, y-k*r, x-k*r, y-r, x, y-r).C(x+k*r, y-r, x+r, y-k*r, x+r, y).Z()
}

// words points at each circle on its right side, top to bottom.
func (d Annulus) words(s *Scene, tube, shaft float64) {
	at := func(r, turn float64) (float64, float64) {
		return annulusX + r*math.Cos(turn), annulusY + r*math.Sin(turn)
	}
	var calls []callout
	add := func(m Mark, r, turn float64, class string) {
		if m.Name == "" {
			return
		}
		x, y := at(r, turn)
		calls = append(calls, m.say(x, y, 116, class))
	}
	add(d.Column, annulusR, -.9, "b")
	add(d.Velocity, (annulusR+max(tube, shaft))/2, -.3, "b")
	if tube > 0 {
		add(d.Tube, tube, .25, "b")
	}
	if shaft > 0 {
		add(d.Shaft, shaft*.5, .9, "b")
	}
	callColumn{turn: 244, stop: 254, text: 258, lo: 4, hi: annulusH - 4}.draw(s.Add, calls)
}
