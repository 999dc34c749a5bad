package answer

import (
	"encoding/json"
	"strings"
	"testing"

	"columnbowl/calcwasm/physics"
	"columnbowl/calcwasm/reckon"
)

// bowlDesk is a book with one family of bowls and the head of a stage and of a pump.
func bowlDesk(t testing.TB) *Desk {
	t.Helper()
	bowl, problems := reckon.ReadBowl("lapwing-10", []string{"name Lapwing 10", "origin invented", "speed 1770 rpm",
		"point 0 gpm;63 ft", "point 400 gpm;59.3 ft", "point 800 gpm;45 ft"})
	if len(problems) > 0 {
		t.Fatalf("%+v", problems)
	}
	quantity := func(id, us, si, to string) reckon.TermSource {
		return reckon.TermSource{ID: id, Name: id, US: us, SI: si, From: "0 " + us, To: to + " " + us, Ask: "?"}
	}
	src := &reckon.Source{ID: "bowls", Title: "Bowls", Bowls: []*reckon.Bowl{bowl}, Terms: []reckon.TermSource{
		{ID: "bowl-family", Name: "Bowl family", Kind: "choice", Values: []string{"other-bowl", "another bowl"}},
		quantity("capacity", "gpm", "m3/h", "9000"), quantity("stage-head", "ft", "m", "500"), quantity("pump-head", "ft", "m", "5000"),
	}, Blocks: []reckon.Block{
		{Term: "stage-head", Kind: reckon.EstimateBlock, Head: "each bowl", Body: "stage-head = curve(capacity, bowl:head)\nsay \"Read.\""},
		{Term: "pump-head", Kind: reckon.FormulaBlock, Body: "pump-head = 8 * stage-head"},
	}}
	b, wrong := reckon.Load(src, physics.Functions()...)
	if len(wrong) > 0 {
		t.Fatalf("%+v", wrong)
	}
	d, err := Open(b.Pack())
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// toldBowls is the reply of families as a page reads it.
type toldBowls struct {
	told
	Bowls []struct {
		ID       string
		Problems []struct {
			Item, Column int
			Text         string
		}
	}
}

func askBowls(t testing.TB, d *Desk, lines ...string) toldBowls {
	t.Helper()
	var out toldBowls
	text := d.Answer([]byte(strings.Join(append(lines, "show\tstage-head", "show\tpump-head"), "\n")))
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatalf("%v in %s", err, text)
	}
	return out
}

const own = "bowl\tother-bowl\tname My curve\torigin builder's sheet\tspeed 1770\tpoint 0;70 ft\tpoint 500;60\tpoint 900 gpm; 40"

// A page brings its reader's curve along with every request; the desk's own book
// stays as it is.
func TestOwnBowl(t *testing.T) {
	d := bowlDesk(t)
	for range 2 { // the second time the lines are known
		r := askBowls(t, d, own, "fact\tbowl-family\tother-bowl", "fact\tcapacity\t500 gpm")
		if r.Terms[0].US.N != "60" || r.Terms[0].Note != "My curve, from the builder's sheet. Read." || r.Terms[1].US.N != "480" || r.Terms[1].Note != "" {
			t.Errorf("told %+v", r.Terms)
		}
		if len(r.Bowls) != 1 || r.Bowls[0].ID != "other-bowl" || len(r.Bowls[0].Problems) > 0 || len(r.Strange) > 0 {
			t.Errorf("told %+v, %v", r.Bowls, r.Strange)
		}
	}
	changed := askBowls(t, d, strings.Replace(own, "500;60", "500;61", 1), "fact\tbowl-family\tother-bowl", "fact\tcapacity\t500 gpm")
	if changed.Terms[0].US.N != "61" {
		t.Errorf("after a change: %+v", changed.Terms[0])
	}
	without := askBowls(t, d, "fact\tbowl-family\tother-bowl", "fact\tcapacity\t500 gpm")
	if without.Terms[0].US.N != "" || without.Bowls != nil {
		t.Errorf("without the curve: %+v", without.Terms[0])
	}
}

// What rests on an invented family says so, also where it is not read from it.
func TestDemonstration(t *testing.T) {
	r := askBowls(t, bowlDesk(t), "fact\tbowl-family\tlapwing-10", "fact\tcapacity\t800 gpm")
	if r.Terms[0].Note != "Demonstration bowl, not for order: Lapwing 10. Read." || r.Terms[1].Note != "rests on Lapwing 10: demonstration bowl, not for order" {
		t.Errorf("told “%s” and “%s”", r.Terms[0].Note, r.Terms[1].Note)
	}
	r = askBowls(t, bowlDesk(t), "fact\tbowl-family\tlapwing-10", "fact\tcapacity\t800 gpm", "fact\tstage-head\t44 ft")
	if !strings.Contains(r.Terms[0].Note, "the estimate “Demonstration bowl, not for order: Lapwing 10” would give 45") || r.Terms[1].Note != "" {
		t.Errorf("told “%s” and “%s”", r.Terms[0].Note, r.Terms[1].Note)
	}
}

// A curve with a mistake is told where it is wrong, and not used.
func TestBadBowl(t *testing.T) {
	for line, want := range map[string]struct{ item, column int }{
		strings.Replace(own, "500;60", "500;80", 1):      {4, 1},
		strings.Replace(own, "500;60", "500;", 1):        {4, 1},
		strings.Replace(own, "500;60", "abc;60", 1):      {4, 0},
		strings.Replace(own, "speed 1770", "speed 5", 1): {2, -1},
		"bowl\tother-bowl":                               {-1, -1},
	} {
		r := askBowls(t, bowlDesk(t), line, "fact\tbowl-family\tother-bowl", "fact\tcapacity\t500 gpm")
		if len(r.Bowls) != 1 || len(r.Bowls[0].Problems) == 0 || r.Terms[0].US.N != "" {
			t.Errorf("%q: told %+v", line, r.Bowls)
			continue
		}
		if p := r.Bowls[0].Problems[0]; p.Item != want.item || p.Column != want.column || p.Text == "" {
			t.Errorf("%q: told %+v, want it at %v", line, p, want)
		}
	}
}
