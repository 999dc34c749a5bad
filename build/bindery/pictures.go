package bindery

import (
	"fmt"
	"html/template"
	"slices"

	"columnbowl/calcwasm/drawing"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
	"columnbowl/site"
)

// The terms that are marks of a picture. A term's page shows the picture that
// it is a mark of.
var (
	wellTerms = []string{"static-level", "drawdown", "pumping-level", "setting", "well-depth", "screen-top", "lowest-level",
		"discharge-elevation", "lift", "discharge-pressure", "gauge-height"}
	ladderTerms = []string{"pressure-head", "discharge-velocity-head", "field-head", "column-loss", "column-loss-rate", "head-loss",
		"total-head", "stages", "stage-head", "curve-stage-head"}
	powerTerms = []string{"input-power", "brake-power", "thrust-bearing-loss", "shaft-loss", "field-power", "bowl-power", "bowl-efficiency",
		"bowl-water-power", "water-power", "overall-efficiency", "motor-efficiency", "field-efficiency", "drive-efficiency", "cable-loss"}
)

// pen draws the pictures of the chain's facts in one system of units.
type pen struct {
	w      *work
	system formula.System
	prefix string // of the ids, unique on the page
}

// mark is a term as a mark of a picture, in the unit that the system gives it.
func (p pen) mark(id string) drawing.Mark {
	t, ok := p.w.engine.Find(id)
	if !ok {
		return drawing.Mark{}
	}
	term, r := &p.w.engine.Terms[t], p.w.chain.result
	if !r.Known(t) {
		return drawing.Unknown(term.Name)
	}
	return drawing.At(term.In(p.system).FromSI(r.Values[t].Likely), term.Name, r.Text(t, p.system))
}

// named is a mark under another name than its term's.
func (p pen) named(id, name string) drawing.Mark {
	m := p.mark(id)
	m.Name = name
	return m
}

// less is the difference of two terms as a mark, in the unit of the second:
// what is lost between them.
func (p pen) less(from, to, name string) drawing.Mark {
	a, oka := p.w.engine.Find(from)
	b, okb := p.w.engine.Find(to)
	r := p.w.chain.result
	if !oka || !okb || !r.Known(a) || !r.Known(b) {
		return drawing.Unknown(name)
	}
	u, lost := p.w.engine.Terms[b].In(p.system), r.Values[a].Likely-r.Values[b].Likely
	return drawing.At(u.FromSI(lost), name, unit.FormatWith(lost, u))
}

// text is a term's value as words, "" if it is not known.
func (p pen) text(id string) string {
	if m := p.mark(id); m.Known {
		return m.Text
	}
	return ""
}

// build is the pump of the facts.
func (p pen) build() (string, drawing.Build) {
	t, ok := p.w.engine.Find("build")
	if !ok {
		return "", drawing.WaterLubricated
	}
	word := wordOf(p.w.chain.result, t)
	return word, map[string]drawing.Build{"oil-lubricated": drawing.OilLubricated, "submersible": drawing.Submersible}[word]
}

func (p pen) well() drawing.WellSection {
	word, build := p.build()
	d := drawing.WellSection{
		Prefix: p.prefix + "well-", Title: wellTitle, Build: build,
		Static: p.mark("static-level"), Pumping: p.mark("pumping-level"), Drawdown: p.mark("drawdown"), Setting: p.mark("setting"),
		Bowls: p.mark("bowl-length"), Bottom: p.mark("well-depth"), ScreenFrom: p.mark("screen-top"), ScreenTo: p.mark("well-depth"),
		Shaft: drawing.Mark{Text: shaftWords[word]}, Gauge: p.mark("discharge-elevation"), Pressure: p.mark("pressure-head"),
	}
	if grade := p.mark("grade").Name; grade != "" {
		d.Datum = fmt.Sprintf(datumWords, grade)
	}
	if n := p.text("stages"); n != "" {
		d.Stages = drawing.Mark{Text: fmt.Sprintf(stagesWords, n)}
	}
	if psi := p.text("discharge-pressure"); psi != "" {
		d.PressureSays = append([]string{psi}, pressureSays...)
	}
	d.Desc = said(d.Static, d.Drawdown, d.Pumping, d.Setting, d.Bottom, d.Pressure)
	return d
}

func (p pen) ladder(form drawing.LadderForm) drawing.Ladder {
	rung := func(id string, kind drawing.RungKind) drawing.Rung { return drawing.Rung{Mark: p.mark(id), Kind: kind} }
	d := drawing.Ladder{
		Prefix: p.prefix + "ladder-", Title: ladderTitle, Form: form, Foot: ladderFoot,
		Lift: p.mark("pumping-level"), Field: p.mark("field-head"), Total: p.mark("total-head"),
		Rungs: []drawing.Rung{rung("discharge-elevation", drawing.RungHead), rung("pressure-head", drawing.RungHead),
			rung("discharge-velocity-head", drawing.RungHead), rung("column-loss", drawing.RungLoss), rung("head-loss", drawing.RungLoss)},
	}
	if m := p.mark("stages"); m.Known && form != drawing.LadderTerm {
		d.Stages = int(m.Value + 0.5)
		if each := p.text("stage-head"); each != "" {
			d.StageText = fmt.Sprintf(stageWords, each)
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

func (p pen) power() drawing.PowerFlow {
	_, build := p.build()
	down := downShaft
	if build == drawing.Submersible {
		down = downCable
	}
	d := drawing.PowerFlow{
		Prefix: p.prefix + "power-", Title: powerTitle, Build: build, Depth: p.mark("setting"), Wire: p.wire(),
		Motor: p.less("input-power", "brake-power", motorHeat), Thrust: p.mark("thrust-bearing-loss"), Shaft: p.mark("shaft-loss"),
		Down: p.named("bowl-power", down), Bowls: p.less("bowl-power", "bowl-water-power", inBowls), Up: p.named("bowl-water-power", upColumn),
		Column: p.less("bowl-water-power", "water-power", columnHead), Out: p.named("water-power", leftAtGauge), Share: p.text("overall-efficiency"),
	}
	d.Desc = said(d.Wire, d.Motor, d.Thrust, d.Shaft, d.Down, d.Bowls, d.Up, d.Column, d.Out)
	return d
}

// wire is the power that is paid for: in kW on the meter, drawn in the unit of
// the other powers.
func (p pen) wire() drawing.Mark {
	m := p.named("input-power", fromWire)
	t, ok := p.w.engine.Find("input-power")
	brake, ok2 := p.w.engine.Find("brake-power")
	if ok && ok2 && m.Known {
		m.Value = p.w.engine.Terms[brake].In(p.system).FromSI(p.w.chain.result.Values[t].Likely)
	}
	return m
}

// said lists marks as words, for those who do not see the picture.
func said(marks ...drawing.Mark) string {
	text := ""
	for _, m := range marks {
		if !m.Known || m.Text == "" {
			continue
		}
		if text != "" {
			text += ", "
		}
		text += m.Name + " " + m.Text
	}
	return text
}

// drawTwice draws a picture once in each system of units.
func (w *work) drawTwice(prefix string, draw func(p pen) *drawing.Scene) template.HTML {
	return twin(svg(draw(pen{w, formula.US, prefix + "us-"})), svg(draw(pen{w, formula.SI, prefix + "si-"})))
}

// termFigures is the picture that a term is a mark of, with the facts of the
// chain. Without such facts there is nothing to draw.
func (w *work) termFigures(id string) []site.Figure {
	if len(w.chain.facts) == 0 {
		return nil
	}
	whose := w.chain.title
	switch {
	case slices.Contains(wellTerms, id):
		return []site.Figure{{Caption: paragraph(fmt.Sprintf(wellOf, whose)),
			SVG: w.drawTwice("fig-", func(p pen) *drawing.Scene { return p.well().Layout() })}}
	case slices.Contains(ladderTerms, id):
		return []site.Figure{{Caption: paragraph(fmt.Sprintf(ladderOf, whose)),
			SVG: w.drawTwice("fig-", func(p pen) *drawing.Scene { return p.ladder(drawing.LadderTerm).Layout() })}}
	case slices.Contains(powerTerms, id):
		return []site.Figure{{Caption: paragraph(fmt.Sprintf(powerOf, whose)),
			SVG: w.drawTwice("fig-", func(p pen) *drawing.Scene { return p.power().Layout() })}}
	}
	return nil
}

// chainPictures are the three pictures of the chain, on one datum and one scale
// of depth; narrow ones for phones beside them.
func (w *work) chainPictures() []site.Figure {
	if len(w.chain.facts) == 0 {
		return nil
	}
	const tall, short = 680, 600 // px
	scale := func(p pen, form drawing.LadderForm, height float64) drawing.Scale {
		return drawing.ChainScale(p.well(), p.ladder(form), height)
	}
	well := func(narrow bool, form drawing.LadderForm, height float64) func(p pen) *drawing.Scene {
		return func(p pen) *drawing.Scene {
			d := p.well()
			d.Narrow, d.Scale = narrow, scale(p, form, height)
			return d.Layout()
		}
	}
	ladder := func(form drawing.LadderForm, height float64) func(p pen) *drawing.Scene {
		return func(p pen) *drawing.Scene {
			d := p.ladder(form)
			d.Scale = scale(p, form, height)
			return d.Layout()
		}
	}
	power := func(p pen) *drawing.Scene {
		d := p.power()
		d.Scale = scale(p, drawing.LadderChain, tall)
		return d.Layout()
	}
	powerNarrow := func(p pen) *drawing.Scene {
		d := p.power()
		d.Narrow = true
		return d.Layout()
	}
	figure := func(title, says string, wide, narrow func(p pen) *drawing.Scene) site.Figure {
		return site.Figure{Title: title, Caption: paragraph(says), SVG: w.drawTwice("", wide), Narrow: w.drawTwice("n-", narrow)}
	}
	return []site.Figure{
		figure(wellTitle, wellSays, well(false, drawing.LadderChain, tall), well(true, drawing.LadderNarrow, short)),
		figure(ladderTitle, ladderSays, ladder(drawing.LadderChain, tall), ladder(drawing.LadderNarrow, short)),
		figure(powerTitle, powerSays, power, powerNarrow),
	}
}
