package answer

import (
	"encoding/json"
	"strings"
	"testing"

	"columnbowl/calcwasm/reckon"
)

// desk is a book of three levels, a choice and a caution.
func desk(t testing.TB) *Desk {
	t.Helper()
	level := func(id, name, ask string) reckon.TermSource {
		return reckon.TermSource{ID: id, Name: name, US: "ft", SI: "m", From: "0 ft", To: "3000 ft", Ask: ask}
	}
	src := &reckon.Source{ID: "small", Title: "Small", Terms: []reckon.TermSource{
		level("static-level", "Static level", "How deep is the water at rest?"),
		level("drawdown", "Drawdown", "How far does it fall?"),
		level("pumping-level", "Pumping level", ""),
		level("setting", "Setting", "How deep do the bowls hang?"),
		{ID: "build", Name: "Build", Kind: "choice", Values: []string{"open", "Open \"line\" shaft", "enclosed", "Enclosed"}},
	}, Blocks: []reckon.Block{
		{Term: "pumping-level", Kind: reckon.FormulaBlock, Body: "pumping-level = static-level + drawdown"},
		{Term: "pumping-level", Kind: reckon.CautionBlock, Head: "bowls-showing", Body: "danger\nwhen pumping-level > setting\nsay \"The bowls show.\""},
	}}
	b, problems := reckon.Load(src)
	if len(problems) > 0 {
		t.Fatalf("the test's book: %+v", problems)
	}
	d, err := Open(b.Pack())
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// told is the reply as a page reads it.
type told struct {
	Want  string
	Count map[string]int
	Terms []struct {
		ID, State, Relation, Note, Error, Choice, Exact string
		US, SI                                          struct{ N, U string }
		Work                                            struct{ US, SI string }
		Waits                                           []string
	}
	Clashes []struct {
		Term, Text, TextSi string
		Facts              []string
	}
	Cautions []struct {
		ID, Term, State, Text string
		Danger                bool
		Lacks                 []string
	}
	Missing []struct {
		Terms []struct{ ID, Name, Ask string }
	}
	Steps, StepsSi, Strange []string
}

func ask(t testing.TB, lines ...string) told {
	t.Helper()
	reply := desk(t).Answer([]byte(strings.ReplaceAll(strings.Join(lines, "\n"), " | ", "\t")))
	var r told
	if err := json.Unmarshal(reply, &r); err != nil {
		t.Fatalf("the reply is no JSON: %v\n%s", err, reply)
	}
	return r
}

func plainSpaces(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

func TestReplyTellsRowsStepsAndCautions(t *testing.T) {
	r := ask(t, "want | pumping-level", "fact | static-level | 140 ft", "fact | drawdown | 55", "fact | setting | 150 ft",
		"show | static-level", "show | drawdown", "show | pumping-level")
	if r.Want != "pumping-level" || r.Count["given"] != 2 || r.Count["follows"] != 1 {
		t.Errorf("want %q, count %v", r.Want, r.Count)
	}
	p := r.Terms[2]
	if p.State != "follows" || p.US.N != "195" || p.US.U != "ft" || p.SI.N != "59.44" || plainSpaces(p.Work.US) != "140 ft + 55 ft" ||
		p.Relation != "pumping level = static level + drawdown" {
		t.Errorf("the row of the pumping level: %+v", p)
	}
	if len(r.Steps) != 1 || plainSpaces(r.Steps[0]) != "pumping level = 140 ft + 55 ft = 195 ft" ||
		plainSpaces(r.StepsSi[0]) != "pumping level = 42.67 m + 16.76 m = 59.44 m (rounded)" {
		t.Errorf("steps %q %q", r.Steps, r.StepsSi)
	}
	if len(r.Cautions) != 1 || r.Cautions[0].State != "fires" || !r.Cautions[0].Danger {
		t.Errorf("cautions %+v", r.Cautions)
	}
}

func TestNonsenseIsToldBesideTheFieldAndNothingElseIsLost(t *testing.T) {
	r := ask(t, "want | pumping-level", "fact | static-level | 140 ft", "fact | drawdown | abc", "fact | build | strange",
		"show | static-level", "show | drawdown", "show | pumping-level", "show | build")
	if r.Terms[0].State != "given" || r.Terms[0].US.N != "140" {
		t.Errorf("the good fact is lost: %+v", r.Terms[0])
	}
	if r.Terms[1].Error == "" || r.Terms[1].State != "missing" || r.Terms[1].Note != "How far does it fall?" {
		t.Errorf("the bad fact: %+v", r.Terms[1])
	}
	if r.Terms[2].State != "waits" || r.Terms[2].Note != "waits for drawdown" {
		t.Errorf("the wanted term: %+v", r.Terms[2])
	}
	if len(r.Terms[2].Waits) != 1 || r.Terms[2].Waits[0] != "drawdown" {
		t.Errorf("what the wanted term waits for: %+v", r.Terms[2].Waits)
	}
	if !strings.Contains(r.Terms[3].Error, "is not a build") {
		t.Errorf("the choice: %+v", r.Terms[3])
	}
	if len(r.Missing) == 0 || r.Missing[0].Terms[0].ID != "drawdown" || r.Missing[0].Terms[0].Ask != "How far does it fall?" {
		t.Errorf("missing: %+v", r.Missing)
	}
	if r.Cautions[0].State != "unchecked" || len(r.Cautions[0].Lacks) != 2 {
		t.Errorf("cautions: %+v", r.Cautions)
	}
}

// TestCautionsOfFactsWithoutALine: a fact that a link brought to a sheet without a
// line for it is warned of, and one that nobody gave is not.
func TestCautionsOfFactsWithoutALine(t *testing.T) {
	given := ask(t, "fact | pumping-level | 200 ft", "fact | setting | 100 ft", "show | setting")
	if len(given.Cautions) != 1 || given.Cautions[0].ID != "pumping-level/bowls-showing" || given.Cautions[0].State != "fires" {
		t.Errorf("of a pumping level that was given: %+v", given.Cautions)
	}
	follows := ask(t, "fact | static-level | 150 ft", "fact | drawdown | 50 ft", "fact | setting | 100 ft", "show | setting")
	if len(follows.Cautions) != 0 {
		t.Errorf("of a pumping level that follows: %+v", follows.Cautions)
	}
}

// TestPicturesBehindTheNumbers: a question asked again for its pictures is told
// as if it had been asked at once; another question in between takes nothing over.
func TestPicturesBehindTheNumbers(t *testing.T) {
	const facts, picture = "fact\tstatic-level\t120 ft\nfact\tdrawdown\t35 ft\nwant\tpumping-level\n", "picture\tladder\twide\tus\tx-\n"
	const other = "fact\tstatic-level\t130 ft\nfact\tdrawdown\t35 ft\nwant\tpumping-level\n"
	fresh := func(lines string) string { return string(desk(t).Answer([]byte(lines))) }
	d := desk(t)
	for _, lines := range []string{facts + "show\tpumping-level\n", facts + picture, other + picture, facts + "show\tpumping-level\n" + picture} {
		if got := string(d.Answer([]byte(lines))); got != fresh(lines) {
			t.Errorf("%q is told as\n%s\nand by a fresh desk as\n%s", lines, got, fresh(lines))
		}
	}
}

func TestClashIsTold(t *testing.T) {
	r := ask(t, "fact | static-level | 140 ft", "fact | drawdown | 55 ft", "fact | pumping-level | 200 ft", "show | pumping-level")
	if r.Terms[0].State != "clash" || len(r.Clashes) != 1 || len(r.Clashes[0].Facts) != 3 {
		t.Errorf("%+v %+v", r.Terms, r.Clashes)
	}
}

func TestStrangeLinesAreTold(t *testing.T) {
	r := ask(t, "fact | no-such-term | 5 ft", "sing | setting", "exact", "fact | setting | 5 ft", "show | setting")
	if len(r.Strange) != 2 || r.Terms[0].Exact != "1.524" {
		t.Errorf("%q, %+v", r.Strange, r.Terms)
	}
}

// Whatever comes in, JSON goes out.
func FuzzAnswer(f *testing.F) {
	f.Add("want\tpumping-level\nfact\tstatic-level\t140 ft\nshow\tdrawdown")
	f.Add("want\tpumping-level\nfact\tstatic-level\t140 to 160 ft\nfact\tdrawdown\tabout 40 ft\nshow\tpumping-level\npumps\nwhy\tpumping-level")
	f.Add("bowl\tother-bowl\tname A\torigin builder's sheet\tspeed 1770\tpoint 0; 60\tpoint 400; 52; 78\tpoint 600; 38\nchoice\t\tus\twide\t500\npumps")
	f.Add("fact\tbuild\topen\nshow\tbuild\nfact\tsetting\t\"\\\x01\xff")
	d := desk(f)
	f.Fuzz(func(t *testing.T, request string) {
		if reply := d.Answer([]byte(request)); !json.Valid(reply) {
			t.Errorf("no JSON: %q", reply)
		}
	})
}

// A damaged or strange pack is refused with the line that cannot be read.
func TestDamagedBookIsRefused(t *testing.T) {
	if _, err := Open([]byte("some other text")); err == nil || !strings.Contains(err.Error(), "line 1") {
		t.Errorf("error %v", err)
	}
}
