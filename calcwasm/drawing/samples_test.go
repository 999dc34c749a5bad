package drawing

import (
	"fmt"
	"math"
)

// The drawings of the golden files: the demo world's Quillbeck Orchard (job 1)
// and Fallowmere Water District (job 3), and cases that break pictures.

var placeNames = []struct{ id, name string }{
	{"power-and-motor", "Power and motor"}, {"discharge-head", "Discharge head"}, {"levels-in-the-well", "Levels in the well"},
	{"heads-and-losses", "Heads and losses"}, {"column-and-shaft", "Column and shaft"}, {"lubrication", "Lubrication"},
	{"bowls-and-stages", "Bowls and stages"}, {"thrust-and-stretch", "Thrust and stretch"}, {"suction", "Suction"},
	{"submersible-build", "Submersible build"}, {"water-and-materials", "Water and materials"},
}

// samplePlaces lights a place (1 to 11; 0 none) with n sub-entries; now is the
// sub-entry one is on, from 1.
func samplePlaces(lit, n, now int) []Place {
	names := []string{"Pumping lift", "Field head", "Column loss", "Total head", "System curve", "Velocity head", "Pressure head",
		"Discharge elevation", "Head loss in the discharge head", "Friction factor"}
	var out []Place
	for i, p := range placeNames {
		d, ok := DepthOf(p.id)
		if !ok {
			panic("no depth for " + p.id)
		}
		q := Place{ID: p.id, Name: p.name, Href: "../places/" + p.id + ".html", Depth: d, Lit: i+1 == lit}
		q.Here = q.Lit && now == 0
		for k := range n {
			name := names[k%len(names)]
			q.Subs = append(q.Subs, Sub{Name: name, Href: fmt.Sprintf("../terms/t%d.html", k), Here: q.Lit && k+1 == now})
		}
		out = append(out, q)
	}
	return out
}

const (
	swl, pwl, gaugeAt, setting = 140.0, 195.0, 2.0, 240.0
	pressureHead, velocityHead = 138.6, 0.41
	columnLoss, headLoss       = 6.39, 0.61
	fieldHead                  = pwl + gaugeAt + pressureHead + velocityHead
	totalHead                  = fieldHead + columnLoss + headLoss
)

func ft(v float64, name string) Mark { return At(v, name, fmt.Sprintf("%.1f ft", v)) }
func hp(v float64, name string) Mark { return At(v, name, fmt.Sprintf("%.1f hp", v)) }

func sampleLadder(f LadderForm) Ladder {
	return Ladder{Prefix: "lad", Title: "Head ladder", Desc: "Lift 195.0, gauge height 2.0, pressure 138.6, losses 7.0, total 343.0 feet", Form: f,
		Lift: ft(pwl, "pumping lift"),
		Rungs: []Rung{{ft(gaugeAt, "gauge height"), RungHead}, {ft(pressureHead, "pressure head"), RungHead}, {ft(velocityHead, "velocity head"), RungHead},
			{ft(columnLoss, "column loss"), RungLoss}, {ft(headLoss, "head loss"), RungLoss}},
		Field: ft(fieldHead, "field head"), Total: ft(totalHead, "total head"), Stages: 8, StageText: "each stage makes 42.9 ft",
		Foot: "the ladder starts at the water, not at the bowls", Datum: "datum", Level: "pumping level"}
}

func sampleWell() WellSection {
	return WellSection{Prefix: "well", Title: "Well section", Desc: "To scale in depth", Build: OilLubricated,
		Static: ft(swl, "static level"), Pumping: ft(pwl, "pumping level"), Drawdown: ft(pwl-swl, "drawdown"), Setting: ft(setting, "setting"),
		Bowls: At(6.8, "", ""), Bottom: ft(310, "well depth"), ScreenFrom: ft(250, "screen"), ScreenTo: ft(300, "screen"),
		Stages: Mark{Text: "8 stages"}, Shaft: Mark{Text: "oil in tube"}, Gauge: At(gaugeAt, "", ""), Pressure: At(pressureHead, "", ""),
		PressureSays: []string{"60 psi", "would lift", "water here"}, Datum: "datum: head base"}
}

func samplePower() PowerFlow {
	return PowerFlow{Prefix: "pow", Title: "Power flow", Desc: "71.0 kW in, 67.9 hp left at the gauge", Build: OilLubricated, Depth: ft(setting, "setting"),
		Wire: At(95.2, "from the wire", "71.0 kW"), Motor: hp(5.6, "motor, as heat"), Thrust: hp(.6, "thrust bearing"), Shaft: hp(3.4, "shaft bearings"),
		Down: hp(85.5, "down the shaft"), Bowls: hp(16.3, "in the bowls"), Up: hp(69.3, "up the column"), Column: hp(1.4, "column, head"),
		Out: hp(67.9, "left at the gauge"), Share: "71.3 %"}
}

func sampleSlips(narrow bool) Slips {
	s := Slips{Prefix: "slip", Title: "Where each slip lands on the scale of feet", Right: At(343.0, "total head", "343.0 ft is right"), Narrow: narrow}
	for i, v := range []float64{336.0, 339.3, 329.0, 339.6, 341.8} {
		s.Wrong = append(s.Wrong, Slip{ft(v, "slip"), fmt.Sprint(i + 1)})
	}
	return s
}

// subJob is job 3: a shallow setting, the motor below, a level above the last.
func subWell() WellSection {
	w := sampleWell()
	w.Build, w.Shaft = Submersible, Mark{Text: "cable outside"}
	w.Stages = Mark{Text: "5 stages, motor below"}
	return w
}

func subPower() PowerFlow {
	p := samplePower()
	p.Build = Submersible
	p.Cable, p.Down.Name = "down the cable", "into the bowls"
	p.Thrust, p.Shaft = Mark{}, Mark{}
	p.Motor, p.Down, p.Bowls = hp(13.4, "motor, as heat"), hp(81.8, "into the bowls"), hp(12.5, "in the bowls")
	return p
}

// goldens are all drawings kept as files.
func goldens() map[string]*Scene {
	rail := func(lit, n, now int) *Scene {
		s, _ := Rail{Prefix: "rail", Places: samplePlaces(lit, n, now), Height: 864}.Layout()
		return s
	}
	out := map[string]*Scene{
		"rail-place": rail(4, 5, 0), "rail-term": rail(4, 9, 4), "rail-many": rail(7, 24, 20),
		"rail-last": rail(11, 6, 6), "rail-none": rail(0, 0, 0),
		"strip-left":   Strip{Prefix: "strip", Places: samplePlaces(4, 0, 0), Name: "Heads and losses", Detail: "total head"}.Layout(),
		"strip-right":  Strip{Prefix: "strip", Places: samplePlaces(9, 0, 0), Name: "Suction", Detail: "submergence of the first impeller"}.Layout(),
		"ladder-term":  sampleLadder(LadderTerm).Layout(),
		"slips-wide":   sampleSlips(false).Layout(),
		"slips-narrow": sampleSlips(true).Layout(),
	}
	for name, s := range details() {
		out[name] = s
	}
	chain(out)
	hard(out)
	return out
}

// chain is the chain page: one datum, one scale.
func chain(out map[string]*Scene) {
	w, l, p := sampleWell(), sampleLadder(LadderChain), samplePower()
	sc := ChainScale(w, l, 680)
	w.Scale, l.Scale, p.Scale = sc, sc, sc
	out["chain-well"], out["chain-ladder"], out["chain-power"] = w.Layout(), l.Layout(), p.Layout()
	w.Narrow, l.Form, p.Narrow = true, LadderNarrow, true
	sc = ChainScale(w, l, 600)
	w.Scale, l.Scale, p.Scale = sc, sc, Scale{}
	out["chain-well-narrow"], out["chain-ladder-narrow"], out["chain-power-narrow"] = w.Layout(), l.Layout(), p.Layout()
	sub, subp := subWell(), subPower()
	sub.Scale, subp.Scale = ChainScale(sub, l, 680), ChainScale(sub, l, 680)
	out["sub-well"], out["sub-power"] = sub.Layout(), subp.Layout()
}

// hard are the cases that break pictures.
func hard(out map[string]*Scene) {
	l := sampleLadder(LadderTerm)
	l.Rungs[1].Known, l.Rungs[1].Text = false, "missing"
	l.Total, l.Field = Unknown("total head"), Unknown("field head")
	out["ladder-missing"] = l.Layout()
	l = sampleLadder(LadderTerm)
	l.Lift = ft(22, "pumping lift")
	l.Rungs[0].Mark = ft(-12, "gauge height")
	l.Field, l.Total = ft(22-12+pressureHead+velocityHead, "field head"), ft(22-12+pressureHead+velocityHead+7, "total head")
	out["ladder-negative"] = l.Layout()
	w := WellSection{Prefix: "well", Setting: Unknown("setting"), Pumping: Unknown("pumping level"), Static: ft(60, "static level"), Stages: Mark{Text: "stages"}}
	out["well-missing"] = w.Layout()
	w = sampleWell()
	w.Build, w.Shaft = WaterLubricated, Mark{Text: "shaft in water"}
	w.Static, w.Pumping, w.Drawdown, w.Setting = ft(8, "static level"), ft(12, "pumping level"), ft(4, "drawdown"), ft(30, "setting")
	w.Bottom, w.ScreenFrom, w.ScreenTo = ft(44, "well depth"), ft(36, "screen"), ft(43, "screen")
	out["well-shallow"] = w.Layout()
	out["power-missing"] = PowerFlow{Prefix: "pow", Wire: Unknown("from the wire"), Motor: Unknown("motor, as heat"), Thrust: Unknown("thrust bearing"),
		Shaft: Unknown("shaft bearings"), Down: Unknown("down the shaft"), Bowls: Unknown("in the bowls"), Up: Unknown("up the column"),
		Column: Unknown("column, head"), Out: Unknown("left at the gauge")}.Layout()
	s := sampleSlips(false)
	s.Wrong = append(s.Wrong, Slip{ft(3430, "ten times"), "6"}, Slip{ft(12, "far below"), "7"}, Slip{ft(336.0, "again"), "8"}, Slip{At(math.NaN(), "", ""), "9"})
	out["slips-outliers"] = s.Layout()
}
