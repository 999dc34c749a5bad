package picture

import "columnbowl/calcwasm/drawing"

// Heights of the pictures of the chain, in px.
const (
	tall  = 680 // side by side
	short = 600 // on a phone
)

// scale is the common scale of the three pictures of the chain.
func (p Pen) scale(form string) drawing.Scale {
	switch form {
	case Wide:
		return drawing.ChainScale(p.well(), p.ladder(drawing.LadderChain), tall)
	case Narrow:
		return drawing.ChainScale(p.well(), p.ladder(drawing.LadderNarrow), short)
	}
	return drawing.Scale{}
}

func (p Pen) drawWell(form string) *drawing.Scene {
	d := p.well()
	d.Narrow, d.Scale = form == Narrow, p.scale(form)
	return d.Layout()
}

func (p Pen) drawLadder(form string) *drawing.Scene {
	of := map[string]drawing.LadderForm{Term: drawing.LadderTerm, Wide: drawing.LadderChain, Narrow: drawing.LadderNarrow}
	d := p.ladder(of[form])
	d.Scale = p.scale(form)
	return d.Layout()
}

func (p Pen) drawPower(form string) *drawing.Scene {
	d := p.power()
	if form == Narrow {
		d.Narrow = true
	} else {
		d.Scale = p.scale(form)
	}
	return d.Layout()
}

func (p Pen) well() drawing.WellSection {
	word, build := p.build()
	d := drawing.WellSection{
		Prefix: p.Prefix + "well-", Title: p.say("picture.well"), Build: build,
		Static: p.mark("static-level"), Pumping: p.mark("pumping-level"), Drawdown: p.mark("drawdown"), Setting: p.mark("setting"),
		Bowls: p.mark("bowl-length"), Bottom: p.mark("well-depth"), ScreenFrom: p.mark("screen-top"), ScreenTo: p.mark("well-depth"),
		Gauge: p.mark("discharge-elevation"), Pressure: p.mark("pressure-head"),
	}
	if word != "" {
		d.Shaft = drawing.Mark{Text: p.say("picture.shaft." + word)}
	}
	if grade := p.mark("grade").Name; grade != "" {
		d.Datum = p.Words.fill("picture.datum", grade)
	}
	if n := p.text("stages"); n != "" {
		d.Stages = drawing.Mark{Text: p.Words.fill("picture.stages", n)}
	}
	if psi := p.text("discharge-pressure"); psi != "" {
		d.PressureSays = []string{psi, p.say("picture.would-lift"), p.say("picture.water-here")}
	}
	d.Desc = said(d.Static, d.Drawdown, d.Pumping, d.Setting, d.Bottom, d.Pressure)
	return d
}

func (p Pen) ladder(form drawing.LadderForm) drawing.Ladder {
	rung := func(id string, kind drawing.RungKind) drawing.Rung { return drawing.Rung{Mark: p.mark(id), Kind: kind} }
	d := drawing.Ladder{
		Prefix: p.Prefix + "ladder-", Title: p.say("picture.ladder"), Form: form, Foot: p.say("picture.ladder.foot"),
		Lift: p.mark("pumping-level"), Field: p.mark("field-head"), Total: p.mark("total-head"),
		Rungs: []drawing.Rung{rung("discharge-elevation", drawing.RungHead), rung("pressure-head", drawing.RungHead),
			rung("discharge-velocity-head", drawing.RungHead), rung("column-loss", drawing.RungLoss), rung("head-loss", drawing.RungLoss)},
	}
	if m := p.mark("stages"); m.Known && form != drawing.LadderTerm {
		d.Stages = int(m.Value + 0.5)
		if each := p.text("stage-head"); each != "" {
			d.StageText = p.Words.fill("picture.stage", each)
		}
	}
	if form == drawing.LadderTerm {
		d.Datum, d.Level = p.mark("grade").Name, d.Lift.Name
	}
	marks := []drawing.Mark{d.Lift}
	for _, r := range d.Rungs {
		marks = append(marks, r.Mark)
	}
	d.Desc = said(append(marks, d.Field, d.Total)...)
	return d
}

func (p Pen) power() drawing.PowerFlow {
	_, build := p.build()
	down := "picture.down-shaft"
	if build == drawing.Submersible {
		down = "picture.down-cable"
	}
	d := drawing.PowerFlow{
		Prefix: p.Prefix + "power-", Title: p.say("picture.power"), Build: build, Depth: p.mark("setting"),
		Wire:   p.named(p.as("input-power", "brake-power"), "picture.wire"),
		Motor:  p.less("input-power", "brake-power", "picture.motor-heat"),
		Thrust: p.mark("thrust-bearing-loss"), Shaft: p.mark("shaft-loss"),
		Down:  p.named(p.mark("bowl-power"), down),
		Bowls: p.less("bowl-power", "bowl-water-power", "picture.in-bowls"), Up: p.named(p.mark("bowl-water-power"), "picture.up-column"),
		Column: p.less("bowl-water-power", "water-power", "picture.column-head"), Out: p.named(p.mark("water-power"), "picture.left"),
		Share: p.text("overall-efficiency"),
	}
	d.Desc = said(d.Wire, d.Motor, d.Thrust, d.Shaft, d.Down, d.Bowls, d.Up, d.Column, d.Out)
	return d
}
