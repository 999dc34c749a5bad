package assembly

import (
	"math"
	"strings"
	"testing"

	"columnbowl/calcwasm/reckon"
)

// network is a small book: two builds, a length made of whole steps, a choice
// and a caution.
func network(t testing.TB) *reckon.Book {
	t.Helper()
	length := func(id, name, ask string) reckon.TermSource {
		return reckon.TermSource{ID: id, Name: name, US: "ft", SI: "m", From: "1 ft", To: "3000 ft", Ask: ask}
	}
	src := &reckon.Source{ID: "small", Title: "Small", Terms: []reckon.TermSource{
		{ID: "build", Name: "Build", Kind: "choice", Values: []string{"open", "Open shaft", "wet", "Wet motor"}, Ask: "Which one?"},
		length("asked", "Asked setting", "How deep?"), length("setting", "Setting", "How long?"),
		length("section", "Section", "How long is a pipe?"), length("spacing", "Spacing", "How far apart?"),
		{ID: "size", Name: "Size", US: "in", SI: "mm", From: "1 in", To: "40 in", Ask: "What size?"},
		{ID: "rate", Name: "Rate", US: "lb/ft", SI: "kg/m", From: "0 lb/ft", To: "99 lb/ft"},
		{ID: "hook", Name: "Hook weight", US: "lb", SI: "kg", From: "0 lb", To: "99999 lb", Ask: "What hangs there?"},
		{ID: "seal", Name: "Seal", Kind: "choice", Values: []string{"none", "none", "double", "double"}, Ask: "Is there a seal?"},
	}, Blocks: []reckon.Block{
		{Term: "setting", Kind: reckon.EstimateBlock, Head: "whole-steps", Body: "setting = 5 ft * round-up(asked / 5 ft)\nsay \"steps of 5 ft\""},
		{Term: "rate", Kind: reckon.EstimateBlock, Head: "by-size", Body: "rate[lb/ft] = 3 * size[in]\nsay \"three pounds\""},
		{Term: "hook", Kind: reckon.FormulaBlock, Body: "hook = rate * setting"},
		{Term: "section", Kind: reckon.CautionBlock, Head: "too-long", Body: "when section > spacing\nsay \"Too long.\""},
	}}
	b, problems := reckon.Load(src)
	if len(problems) > 0 {
		t.Fatalf("the test's book: %+v", problems)
	}
	return b
}

func builds() *Source {
	return &Source{Builds: []BuildSource{{ID: "open", Name: "Open pump", Asked: "asked", Made: "setting", Options: []string{"seal"}, Totals: []string{"hook"},
		Hook: []string{"hook"}, Refuse: []string{"section/too-long"}, Notes: []NoteSource{{"setting > asked", "Longer than asked."}, {"", "Careful."}},
		Groups: []GroupSource{{ID: "head", Name: "Head", Lines: []LineSource{{Part: "head", Name: "Head"}, {Part: "plate", Name: "Plate", With: "head"}}},
			{ID: "column", Name: "Column", Lines: []LineSource{
				{Part: "pipe", Name: "Pipe", Label: "full", Run: "column", Count: "round-down(setting / section)", Length: "section", Mass: "rate * section"},
				{Part: "pipe", Name: "Pipe", Label: "rest", Run: "column", Length: "remainder(setting, section)", Mass: "rate * remainder(setting, section)", When: "remainder(setting, section) > 0 ft"},
				{Part: "coupling", Name: "Coupling", Count: "round-up(setting / section) - 1"},
				{Part: "seal", Name: "Seal", When: "seal = double"}}}}}}}
}

func model(t testing.TB, book *reckon.Book) *Model {
	t.Helper()
	m, problems := Load(builds(), book)
	if len(problems) > 0 {
		t.Fatalf("%+v", problems)
	}
	return m
}

func solve(t testing.TB, book *reckon.Book, facts ...string) *reckon.Result {
	t.Helper()
	q := reckon.Question{Want: -1}
	for _, text := range facts {
		id, value, _ := strings.Cut(text, "=")
		term, ok := book.Find(id)
		f, err := book.Read(term, value)
		if err != nil || !ok {
			t.Fatalf("%s: %v", text, err)
		}
		q.Facts = append(q.Facts, f)
	}
	return book.Reckon(q)
}

// told is a list as one line: number, part, length in ft.
func told(l *List) string {
	var s []string
	for i := range l.Pieces {
		p := &l.Pieces[i]
		line := "?"
		if p.Count == p.Count {
			line = ftoa(p.Count)
		}
		if !p.Sure {
			line += "?"
		}
		line += " " + p.Line.Part
		if p.Length == p.Length {
			line += " " + ftoa(p.Length/0.3048)
		}
		s = append(s, line)
	}
	return strings.Join(s, ", ")
}

func ftoa(v float64) string {
	n := int(math.Round(v))
	if n == 0 {
		return "0"
	}
	digits := ""
	for ; n > 0; n /= 10 {
		digits = string(rune('0'+n%10)) + digits
	}
	return digits
}

func TestPieces(t *testing.T) {
	book := network(t)
	m := model(t, book)
	for _, c := range []struct {
		facts []string
		want  string
	}{
		{[]string{"asked=47 ft", "section=20 ft", "size=4 in", "seal=none"}, "1 head, 1 plate, 2 pipe 20, 1 pipe 10, 2 coupling"},
		{[]string{"asked=60 ft", "section=20 ft", "size=4 in", "seal=double"}, "1 head, 1 plate, 3 pipe 20, 2 coupling, 1 seal"},
		{[]string{"asked=12 ft", "section=20 ft", "size=4 in", "seal=double"}, "1 head, 1 plate, 1 pipe 15, 1 seal"},
		{[]string{"section=20 ft", "seal=none"}, "1 head, 1 plate, ? pipe 20, 1? pipe, ? coupling"},
		{[]string{"asked=60 ft", "section=20 ft"}, "1 head, 1 plate, 3 pipe 20, 2 coupling, 1? seal"},
	} {
		l := Pieces(solve(t, book, append(c.facts, "build=open")...), m.Of(0))
		if got := told(l); got != c.want {
			t.Errorf("%v:\n%s, should be\n%s", c.facts, got, c.want)
		}
	}
}

func TestSumsOfAList(t *testing.T) {
	book := network(t)
	m := model(t, book)
	l := Pieces(solve(t, book, "build=open", "asked=47 ft", "section=20 ft", "size=4 in", "seal=none"), m.Of(0))
	if len(l.Runs) != 1 || !l.Runs[0].Agrees || math.Abs(l.Runs[0].Length-50*0.3048) > 1e-9 {
		t.Errorf("the run is %+v, should be 50 ft", l.Runs)
	}
	if pound := 0.45359237; math.Abs(l.GroupMass[1]-600*pound) > 1e-6 || l.GroupMass[0] == l.GroupMass[0] {
		t.Errorf("the groups weigh %v kg, should be nothing known and 600 lb", l.GroupMass)
	}
	if strings.Join(l.Notes, " ") != "Longer than asked. Careful." || len(l.Refused) != 0 || len(l.Lacks) != 0 {
		t.Errorf("notes %q, refused %v, lacks %v", l.Notes, l.Refused, l.Lacks)
	}
	for i := range l.Pieces {
		if l.Pieces[i].Order != i {
			t.Errorf("piece %d stands at %d", i, l.Pieces[i].Order)
		}
	}
	l = Pieces(solve(t, book, "build=open", "asked=50 ft", "section=20 ft", "spacing=10 ft", "size=4 in", "seal=none"), m.Of(0))
	if len(l.Refused) != 1 || book.Cautions[l.Refused[0]].ID != "section/too-long" || strings.Join(l.Notes, " ") != "Careful." {
		t.Errorf("refused %v, notes %q", l.Refused, l.Notes)
	}
}

// Pieces are whole: of a range one setting is counted, and that is told.
func TestRangeIsTold(t *testing.T) {
	book := network(t)
	m := model(t, book)
	l := Pieces(solve(t, book, "build=open", "asked=50 to 60 ft", "section=20 ft", "size=4 in", "seal=none"), m.Of(0))
	want := "The setting is a range: the pieces are counted for 55\u00a0ft (16.76\u00a0m) within it."
	if got := told(l); got != "1 head, 1 plate, 2 pipe 20, 1 pipe 15, 2 coupling" || len(l.Notes) == 0 || l.Notes[0] != want || !l.Runs[0].Agrees {
		t.Errorf("%s, notes %q", got, l.Notes)
	}
}

// A run that does not come out, and counts that cannot be, are told.
func TestWhatCannotBe(t *testing.T) {
	book := network(t)
	src := builds()
	lines := src.Builds[0].Groups[1].Lines
	lines[0].Count, lines[1].Length, lines[2].Count = "setting / section", "setting - 100 ft", "round-down(setting / section) - 3"
	m, problems := Load(src, book)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	l := Pieces(solve(t, book, "build=open", "asked=50 ft", "section=20 ft", "size=4 in", "seal=none"), m.Of(0))
	if l.Pieces[2].Wrong != "it comes out as no whole number" || l.Pieces[3].Wrong != "it comes out below nothing" || l.Pieces[4].Wrong != "it comes out below nothing" {
		t.Errorf("wrong are %q, %q, %q", l.Pieces[2].Wrong, l.Pieces[3].Wrong, l.Pieces[4].Wrong)
	}
	lines[0].Count, lines[1].Length = "round-down(setting / section)", "1 ft"
	if m, problems = Load(src, book); len(problems) > 0 {
		t.Fatal(problems)
	}
	if l := Pieces(solve(t, book, "build=open", "asked=50 ft", "section=20 ft"), m.Of(0)); l.Runs[0].Agrees {
		t.Error("41 ft of pipe pass for 50 ft")
	}
}

func TestAsks(t *testing.T) {
	book := network(t)
	m := model(t, book)
	for facts, want := range map[string]string{
		"":                         "asked section size seal",
		"asked=50 ft":              "section size seal",
		"section=20 ft seal=none":  "asked size",
		"asked=50 ft section=20ft": "seal size",
	} {
		list := []string{"build=open"}
		for _, f := range strings.Fields(strings.ReplaceAll(facts, " ft", "ft")) {
			list = append(list, f)
		}
		var ids []string
		for _, term := range Pieces(solve(t, book, list...), m.Of(0)).Asks() {
			ids = append(ids, book.Terms[term].ID)
		}
		if got := strings.Join(ids, " "); got != want {
			t.Errorf("with “%s” it asks for %s, should for %s", facts, got, want)
		}
	}
}

func TestPack(t *testing.T) {
	book := network(t)
	m := model(t, book)
	packed := m.Pack()
	back, err := Unpack(packed, book)
	if err != nil || string(back.Pack()) != string(packed) {
		t.Fatalf("%v\n%s", err, packed)
	}
	res := solve(t, book, "build=open", "asked=47 ft", "section=20 ft", "size=4 in", "seal=double")
	if a, b := told(Pieces(res, m.Of(0))), told(Pieces(res, back.Of(0))); a != b {
		t.Errorf("before %s, after %s", a, b)
	}
	if m.Of(1) != nil {
		t.Error("a build without a file has parts")
	}
	lines := strings.SplitAfter(string(packed), "\n")
	for i := range lines {
		for _, bad := range []string{"", "part\tx\n", "build\tx\n", "group\n", "note\t@99\tx\n"} {
			damaged := strings.Join(lines[:i], "") + bad
			if bad == "" && i > 0 {
				continue
			}
			if _, err := Unpack([]byte(damaged), book); err == nil {
				t.Errorf("%q is taken", damaged)
			}
		}
	}
}

func TestProblems(t *testing.T) {
	book := network(t)
	for _, c := range []struct {
		spoil func(b *BuildSource)
		field string
		says  string
	}{
		{func(b *BuildSource) { b.ID = "opem" }, "", "“opem” is not one of the builds: open, wet."},
		{func(b *BuildSource) { b.Made = "setting-made" }, "made", "There is no term “setting-made”."},
		{func(b *BuildSource) { b.Asked = "seal" }, "asked", "“seal” is no length"},
		{func(b *BuildSource) { b.Totals[0] = "hok" }, "totals.0", "There is no term “hok”."},
		{func(b *BuildSource) { b.Hook[0] = "seal" }, "hook.0", "“seal” is a choice"},
		{func(b *BuildSource) { b.Refuse[0] = "section/to-long" }, "refuse.0", "There is no caution “section/to-long”."},
		{func(b *BuildSource) { b.Notes[0].When = "setting" }, "notes.0.when", "a comparison"},
		{func(b *BuildSource) { b.Groups[1].Mass = "section" }, "groups.1.mass", "wanted is a mass"},
		{func(b *BuildSource) { b.Groups[1].Lines[0].Count = "section" }, "groups.1.parts.0.count", "wanted is a bare number"},
		{func(b *BuildSource) { b.Groups[1].Lines[0].Length = "2 *" }, "groups.1.parts.0.length", ""},
		{func(b *BuildSource) { b.Groups[1].Lines[0].Length = "sectoin" }, "groups.1.parts.0.length", "There is no term “sectoin”."},
		{func(b *BuildSource) { b.Groups[1].Lines[0].Length = "" }, "groups.1.parts.0.run", "A piece of a run has a length"},
		{func(b *BuildSource) { b.Groups[1].Lines[3].When = "seal = tripel" }, "groups.1.parts.3.when", "tripel"},
	} {
		src := builds()
		c.spoil(&src.Builds[0])
		_, problems := Load(src, book)
		if len(problems) != 1 || problems[0].Field != c.field || !strings.Contains(problems[0].Message, c.says) {
			t.Errorf("%s: %+v, should say %q", c.field, problems, c.says)
		}
	}
}
