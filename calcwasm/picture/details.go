package picture

import "columnbowl/calcwasm/drawing"

func (p Pen) drawAnnulus(string) *drawing.Scene {
	_, build := p.build()
	d := drawing.Annulus{
		Prefix: p.Prefix + "annulus-", Title: p.say("picture.annulus"), Build: build,
		Column: p.mark("column-inside-diameter"), Tube: p.as("tube-outside-diameter", "column-inside-diameter"),
		Shaft: p.as("shaft-diameter", "column-inside-diameter"), Velocity: p.mark("column-velocity"),
	}
	d.Desc = said(d.Column, d.Tube, d.Shaft, d.Velocity)
	return d.Layout()
}

func (p Pen) drawThrust(string) *drawing.Scene {
	d := drawing.Thrust{
		Prefix: p.Prefix + "thrust-", Title: p.say("picture.thrust"), Duty: p.say("picture.at-duty"), Shutoff: p.say("picture.at-shutoff"),
		Hydraulic: p.mark("hydraulic-thrust"), Weight: p.as("shaft-weight", "hydraulic-thrust"), Total: p.mark("total-thrust"),
		Largest: p.mark("largest-thrust"), Rating: p.mark("bearing-rating"),
	}
	d.Desc = said(d.Hydraulic, d.Weight, d.Total, d.Largest, d.Rating)
	return d.Layout()
}

func (p Pen) drawStretch(string) *drawing.Scene {
	d := drawing.Stretch{
		Prefix: p.Prefix + "stretch-", Title: p.say("picture.stretch"), Rest: p.say("picture.at-rest"), Run: p.say("picture.running"),
		Raised: p.mark("impeller-adjustment"), Stretch: p.mark("shaft-stretch"), Clearance: p.mark("running-clearance"), Lateral: p.mark("lateral"),
	}
	d.Desc = said(d.Raised, d.Stretch, d.Clearance, d.Lateral)
	return d.Layout()
}
