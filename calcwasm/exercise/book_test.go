package exercise

import (
	"testing"

	"columnbowl/calcwasm/reckon"
)

// smallBook is enough of the chain to draw and mark with. Its relations and
// mistakes are those of the handbook.
func smallBook(t testing.TB) *reckon.Book {
	t.Helper()
	ft := func(id, name string) reckon.TermSource {
		return reckon.TermSource{ID: id, Name: name, US: "ft", SI: "m", From: "-100 ft", To: "3000 ft"}
	}
	src := &reckon.Source{ID: "small", Title: "Small", Terms: []reckon.TermSource{
		ft("static-level", "Static level"), ft("drawdown", "Drawdown"), ft("pumping-level", "Pumping level"),
		{ID: "discharge-pressure", Name: "Discharge pressure", US: "psi", SI: "kPa", From: "0 psi", To: "500 psi", Pressure: "gauge"},
		ft("pressure-head", "Pressure head"), ft("field-head", "Field head"), ft("setting", "Setting"),
		{ID: "capacity", Name: "Capacity", US: "gpm", SI: "m3/h", From: "0 gpm", To: "9000 gpm"},
		{ID: "bowl-efficiency", Name: "Bowl efficiency", US: "%", SI: "%", From: "1 %", To: "100 %"},
		{ID: "bowl-power", Name: "Bowl power", US: "hp", SI: "kW", From: "0 hp", To: "5000 hp"},
		{ID: "water-share", Name: "Water share", US: "%", SI: "%", From: "0 %", To: "1000 %"},
		{ID: "stages", Name: "Stages", Kind: "count", US: "1", SI: "1", From: "1", To: "60"},
		ft("stage-head", "Stage head"),
	}}
	block := func(term string, kind reckon.BlockKind, head, body string) {
		src.Blocks = append(src.Blocks, reckon.Block{Term: term, Kind: kind, Head: head, Body: body})
	}
	block("pumping-level", reckon.FormulaBlock, "", "pumping-level = static-level + drawdown")
	block("pressure-head", reckon.FormulaBlock, "", "pressure-head[ft] = 2.31 * discharge-pressure[psi]")
	block("field-head", reckon.FormulaBlock, "", "field-head = pumping-level + pressure-head")
	block("bowl-power", reckon.FormulaBlock, "", "bowl-power[hp] = capacity[gpm] * field-head[ft] / (3960 * bowl-efficiency)")
	block("water-share", reckon.FormulaBlock, "", "water-share = drawdown / pumping-level")
	block("stages", reckon.FormulaBlock, "", "stages = round-up(field-head / stage-head)")
	block("pumping-level", reckon.MistakeBlock, "static-level-used", "leave out drawdown\nsay \"static\"")
	block("pumping-level", reckon.MistakeBlock, "drawdown-upward", "minus for plus drawdown\nsay \"upward\"")
	block("pressure-head", reckon.MistakeBlock, "psi-as-feet", "put 1 for 2.31\nsay \"psi\"")
	block("pressure-head", reckon.MistakeBlock, "factor-over", "put 0.433 for 2.31\nsay \"0.433\"")
	block("pressure-head", reckon.MistakeBlock, "divided", "whole pressure-head[ft] = discharge-pressure[psi] / 2.31\nsay \"divided\"")
	block("field-head", reckon.MistakeBlock, "setting-used", "put setting for pumping-level\nsay \"setting\"")
	block("bowl-power", reckon.MistakeBlock, "multiplied", "times for over bowl-efficiency\nsay \"multiplied\"")
	block("bowl-power", reckon.MistakeBlock, "psi-constant", "put 1714 for 3960\nsay \"1714\"")
	block("stages", reckon.MistakeBlock, "rounded-down", "round-down for round-up\nsay \"down\"")
	block("pumping-level", reckon.CautionBlock, "below-the-bowls", "when pumping-level > setting\nsay \"Below the bowls.\"")
	block("discharge-pressure", reckon.CautionBlock, "stored", "danger when discharge-pressure > 0 psi\nsay \"Stored pressure.\"")
	b, problems := reckon.Load(src)
	for _, p := range problems {
		t.Fatalf("block %d: %s", p.Block, p.Message)
	}
	return b
}

const chainDraw = `
static-level = 80 ft to 180 ft step 0.1 ft
drawdown = 20 ft to 70 ft step 0.1 ft
discharge-pressure = 40 psi to 90 psi step 0.5 psi
setting = static-level + drawdown + 20 ft to static-level + drawdown + 70 ft step 5 ft
capacity = one of 600 gpm, 700 gpm, 800 gpm
bowl-efficiency = 75 % to 83 % step 0.1 %
keep when drawdown < 0.6 * static-level
`

const chainText = "Rest {static-level}, drawdown {drawdown}, gauge {discharge-pressure}, setting {setting}, flow {capacity}, bowls {bowl-efficiency}."

// chain is a template with the steps that ask names.
func chain(id, ask string) *Source {
	return &Source{ID: id, Name: id, Level: 1, Text: chainText, Blocks: []Block{{DrawBlock, chainDraw}, {AskBlock, ask}}}
}

func loaded(t testing.TB, sources ...*Source) *Set {
	t.Helper()
	s := New(smallBook(t))
	for _, src := range sources {
		for _, p := range s.Load(src) {
			t.Fatalf("%s: %s %s", src.ID, p.Message, p.Suggest)
		}
	}
	return s
}

func drawnSheet(t testing.TB, s *Set, id string, seed uint64) *Sheet {
	t.Helper()
	sh, why := s.Draw(s.Find(id), seed)
	if sh == nil {
		t.Fatal(why)
	}
	return sh
}
