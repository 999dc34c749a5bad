package formula

import (
	"fmt"
	"strings"
	"testing"
)

// assigns writes assignments as “term = low … high unit 'digits'”.
func assigns(list []Assign) string {
	var parts []string
	for _, a := range list {
		term := trade.Term(a.Term)
		if term.Kind == Choice {
			parts = append(parts, term.ID+" = "+term.Values[int(a.Low)])
			continue
		}
		u := mustLookup("1")
		if a.Unit != nil {
			u = a.Unit
		}
		part := fmt.Sprintf("%s = %.6g", term.ID, u.FromSI(a.Low))
		if a.High != a.Low {
			part += fmt.Sprintf(" … %.6g", u.FromSI(a.High))
		}
		parts = append(parts, part+" "+u.Symbol+" '"+a.Number+"'")
	}
	return strings.Join(parts, "; ")
}

func TestWorkedExamples(t *testing.T) {
	for _, c := range []struct{ src, given, expect string }{
		{"given  field-head = 187 ft, column-loss = 6.4 ft, head-loss = 0.6 ft\nexpect total-head = 194 ft",
			"field-head = 187 ft '187'; column-loss = 6.4 ft '6.4'; head-loss = 0.6 ft '0.6'", "total-head = 194 ft '194'"},
		{"given build = oil-lubricated\nexpect stages = 7", "build = oil-lubricated", "stages = 7 1 '7'"},
		{"given field-head = 187 ft\ngiven setting = 57.0 m\nexpect total-head = 194.0 ft\nexpect stages = 7",
			"field-head = 187 ft '187'; setting = 57 m '57.0'", "total-head = 194 ft '194.0'; stages = 7 1 '7'"},
		{"expect total-head = 194 ft\ngiven field-head = 187 ft", "field-head = 187 ft '187'", "total-head = 194 ft '194'"},
		{"given field-head = 187 ft,\n      setting = 200 ft\n      stages = 3\nexpect total-head = 194 ft",
			"field-head = 187 ft '187'; setting = 200 ft '200'; stages = 3 1 '3'", "total-head = 194 ft '194'"},
		{"given setting = 180 to 200 ft\nexpect total-head = 1 ft", "setting = 180 … 200 ft '180'", "total-head = 1 ft '1'"},
		{"given setting = 180 ft to 200 ft\nexpect total-head = 1 ft", "setting = 180 … 200 ft '180'", "total-head = 1 ft '1'"},
		{"given bowl-efficiency = 78 to 82 %\nexpect total-head = 1 ft", "bowl-efficiency = 78 … 82 % '78'", "total-head = 1 ft '1'"},
		{"given specific-gravity = 1 to 1.2\nexpect total-head = 1 ft", "specific-gravity = 1 … 1.2 1 '1'", "total-head = 1 ft '1'"},
		{"given discharge-elevation = -12.5 ft\nexpect total-head = 1 ft", "discharge-elevation = -12.5 ft '-12.5'", "total-head = 1 ft '1'"},
		{"given discharge-elevation = -5 to -2 ft\nexpect total-head = 1 ft", "discharge-elevation = -5 … -2 ft '-5'", "total-head = 1 ft '1'"},
		{"given water-temperature = -5 degC\nexpect total-head = 1 ft", "water-temperature = -5 degC '-5'", "total-head = 1 ft '1'"},
		{"given water-temperature = -5 to 10 degC\nexpect total-head = 1 ft", "water-temperature = -5 … 10 degC '-5'", "total-head = 1 ft '1'"},
		{"given bowl-efficiency = 0.81\nexpect total-head = 1 ft", "bowl-efficiency = 0.81 1 '0.81'", "total-head = 1 ft '1'"},
	} {
		w, err := ParseWorked(c.src, trade)
		if err != nil {
			t.Errorf("%q: %v", c.src, err)
			continue
		}
		if got := assigns(w.Given); got != c.given {
			t.Errorf("%q gives\n\t%s\nshould be\n\t%s", c.src, got, c.given)
		}
		if got := assigns(w.Expect); got != c.expect {
			t.Errorf("%q expects\n\t%s\nshould be\n\t%s", c.src, got, c.expect)
		}
	}
}

func TestAssignmentsKnowTheirPlace(t *testing.T) {
	const src = "given  field-head = 187 ft, build = submersible\nexpect total-head = -5 to 194 ft"
	w, err := ParseWorked(src, trade)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{"field-head = 187 ft|187 ft", "build = submersible|submersible", "total-head = -5 to 194 ft|-5 to 194 ft"} {
		a := append(append([]Assign(nil), w.Given...), w.Expect...)[i]
		if got := src[a.Off:a.Off+a.Len] + "|" + src[a.ValueOff:a.ValueOff+a.ValueLen]; got != want {
			t.Errorf("%q, should be %q", got, want)
		}
	}
}

var editNames = map[EditKind]string{Put: "put", LeaveOut: "leave out", MinusFor: "minus", PlusFor: "plus", TimesFor: "times", OverFor: "over", BareFor: "bare", FuncFor: "function", WholeFor: "whole"}

func TestMistakes(t *testing.T) {
	for _, c := range []struct{ src, edits, say, in string }{
		{"put static-level for pumping-level\nsay \"Levels move.\"", "put", "Levels move.", ""},
		{"leave out column-loss, head-loss\nsay \"The column\n itself takes head.\"", "leave out, leave out", "The column itself takes head.", ""},
		{"minus for plus field-head\nplus for minus head-loss\nsay \"x\"", "minus, plus", "x", ""},
		{"times for over setting\nover for times stages\nsay \"x\"", "times, over", "x", ""},
		{"bare discharge-pressure[psi] for pressure-head[ft]\nsay \"x\"", "bare", "x", ""},
		{"round-down for round-up\nsay \"x\"", "function", "x", ""},
		{"whole total-head = field-head\n  + column-loss\nsay \"x\"\nin \"two jobs\"", "whole", "x", "two jobs"},
		{"put 1714 for 3960 say \"x\" in \"y\"", "put", "x", "y"},
		{"put 1714 for 3960\nin \"y\"\nsay \"x\"", "put", "x", "y"},
	} {
		m, err := ParseMistake(c.src, trade)
		if err != nil {
			t.Errorf("%q: %v", c.src, err)
			continue
		}
		var kinds []string
		for _, ed := range m.Edits {
			kinds = append(kinds, editNames[ed.Kind])
		}
		if got := strings.Join(kinds, ", "); got != c.edits || m.Say != c.say || m.In != c.in {
			t.Errorf("%q reads as %s, say %q, in %q", c.src, got, m.Say, m.In)
		}
	}
}

func TestCautions(t *testing.T) {
	for _, c := range []struct {
		src, condition, say string
		danger              bool
	}{
		{"when pumping-level > setting\nsay \"The bowls show.\"", "pumping-level > setting", "The bowls show.", false},
		{"when  pumping-level >\n setting\nsay \"x\"\ndanger", "pumping-level >\n setting", "x", true},
		{"danger\nwhen stages > 30\nsay \"x\"", "stages > 30", "x", true},
		{"when build = submersible and not stages > 30\ndanger\nsay \"x\"", "build = submersible and not stages > 30", "x", true},
		{"when stages > 30 danger say \"x\"", "stages > 30", "x", true},
		{"when stages > 30\ndanger heat", "stages > 30", "", true},
		{"danger heat\nwhen stages > 30\nsay \"x\"", "stages > 30", "x", true},
	} {
		got, err := ParseCaution(c.src, trade)
		if err != nil {
			t.Errorf("%q: %v", c.src, err)
			continue
		}
		if got.Condition != c.condition || got.Say != c.say || got.Danger != c.danger || got.When == nil || (got.Hazard == "heat") != strings.Contains(c.src, "heat") {
			t.Errorf("%q reads as %q, say %q, danger %v", c.src, got.Condition, got.Say, got.Danger)
		}
	}
}

func TestAssumptionsAndEstimates(t *testing.T) {
	a, err := ParseAssumption("specific-gravity = 1 say \"cold, clean water\"", trade)
	if err != nil || assigns([]Assign{a.Assign}) != "specific-gravity = 1 1 '1'" || a.Say != "cold, clean water" {
		t.Errorf("%+v %v", a, err)
	}
	a, err = ParseAssumption("build = water-lubricated\nsay \"the usual build\"", trade)
	if err != nil || assigns([]Assign{a.Assign}) != "build = water-lubricated" {
		t.Errorf("%+v %v", a, err)
	}
	e, err := ParseEstimate("column-loss = table(capacity, 0 gpm: 0 ft, 500 gpm: 6 ft)\nsay \"a chart\"", trade)
	if err != nil || e.Relation.Target() != termOf(t, trade, "column-loss") || e.Say != "a chart" || !e.Relation.OneWay() {
		t.Errorf("%+v %v", e, err)
	}
	e, err = ParseEstimate("bowl-power[hp] = 2 * capacity[gpm]\n / 3\nsay \"a rule\"", trade)
	if err != nil || e.Relation.Target() != termOf(t, trade, "bowl-power") || e.Relation.Source != "bowl-power[hp] = 2 * capacity[gpm]\n / 3" {
		t.Errorf("%+v %v", e, err)
	}
}

// A count is a whole number from 0 on.
func TestCountsAreWhole(t *testing.T) {
	for _, value := range []string{"3.5", "-2", "3.5 to 4"} {
		if _, err := ParseWorked("given stages = "+value+"\nexpect total-head = 1 ft", trade); err == nil {
			t.Errorf("%s stages are taken", value)
		}
	}
}
