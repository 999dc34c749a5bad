package reckon

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/physics"
	"columnbowl/calcwasm/unit"
)

// lapwingItems are the figures of a family, as a pack and a request write them.
var lapwingItems = []string{"name Lapwing 10", "origin invented", "speed 1770 rpm", "thrust-factor 8.4 lbf/ft",
	"point 0 gpm; 63.0 ft; 0 %; 5.9 ft", "point 400 gpm;59.3 ft;60.8 %", "point 600 gpm;53.7 ft;75.9 %;7.8 ft",
	"point 800 gpm;45.0 ft;81.0 %;9.9 ft", "point 960 gpm;35.6 ft;76.1 %;12.1 ft", "point 1040 gpm;30.1 ft;70.1 %;13.5 ft"}

// plainItems are a family with heads alone, typed as people type.
var plainItems = []string{"name Test stand 3", "origin measured", "speed 1,460", "point 0; 20 m", "point 100 m3/h; 65,5", "point 150 m3/h;16 m"}

func bowlOf(t testing.TB, id string, items []string) *Bowl {
	t.Helper()
	b, problems := ReadBowl(id, items)
	if len(problems) > 0 {
		t.Fatalf("%s: %+v", id, problems)
	}
	return b
}

func bowlSource(t testing.TB) *Source {
	t.Helper()
	quantity := func(id, us, si, to string) TermSource {
		return TermSource{ID: id, Name: id, US: us, SI: si, From: strings.Replace("0 "+us, " 1", "", 1), To: strings.Replace(to+" "+us, " 1", "", 1), Ask: "What is it?"}
	}
	each := func(term, body string) Block {
		return Block{Term: term, Kind: EstimateBlock, Head: "each bowl", Body: body + "\nsay \"From its points.\""}
	}
	return &Source{ID: "bowls", Title: "Bowls", Bowls: []*Bowl{bowlOf(t, "lapwing-10", lapwingItems)}, Terms: []TermSource{
		{ID: "bowl-family", Name: "Bowl family", Kind: "choice", Values: []string{"other-bowl", "another bowl"}, Ask: "Which?"},
		quantity("capacity", "gpm", "m3/h", "9000"), quantity("speed", "rpm", "rpm", "4000"),
		quantity("stage-head", "ft", "m", "500"), quantity("thrust-factor", "lbf/ft", "N/m", "300"),
		quantity("stages", "1", "1", "80"), quantity("total-head", "ft", "m", "3000"), quantity("trim", "1", "1", "1"),
	}, Blocks: []Block{
		each("stage-head", "stage-head = curve(capacity / affinity-ratio(speed, bowl:speed), bowl:head) * affinity-ratio(speed, bowl:speed) ^ 2"),
		each("thrust-factor", "thrust-factor = bowl:thrust-factor"),
		each("trim", "trim = affinity-factor(bowl:head, capacity, total-head / stages)"),
		{Term: "total-head", Kind: FormulaBlock, Body: "total-head = stages * stage-head"},
		{Term: "bowl-family", Kind: CautionBlock, Head: "invented", Body: "when bowl:origin = invented\nsay \"Not for order.\""},
		{Term: "trim", Kind: CautionBlock, Head: "too-deep", Body: "when trim < bowl:smallest-trim\nsay \"Too deep.\""},
	}}
}

func bowlBook(t testing.TB) *Book {
	t.Helper()
	b, problems := Load(bowlSource(t), physics.Functions()...)
	if len(problems) > 0 {
		t.Fatalf("%+v", problems)
	}
	return b
}

// asked reckons with facts such as “capacity=800 gpm”.
func asked(t testing.TB, b *Book, want string, facts ...string) *Result {
	t.Helper()
	q := Question{Want: -1}
	for _, f := range facts {
		id, text, _ := strings.Cut(f, "=")
		term, ok := b.Find(id)
		if !ok {
			t.Fatalf("no term %s", id)
		}
		fact, err := b.Read(term, text)
		if err != nil {
			t.Fatal(err)
		}
		q.Facts = append(q.Facts, fact)
	}
	if want != "" {
		q.Want, _ = b.Find(want)
	}
	return b.Reckon(q)
}

func gives(t testing.TB, r *Result, id, us string, want float64) {
	t.Helper()
	term, _ := r.Book.Find(id)
	u, _ := unit.Lookup(us)
	if got := u.FromSI(r.Values[term].Likely); !(math.Abs(got-want) <= 1e-9*(1+math.Abs(want))) {
		t.Errorf("%s is %v %s, want %v", id, got, us, want)
	}
}

// truth is how a caution stands, and what it lacks.
func truth(r *Result, id string) (formula.Truth, int) {
	for _, c := range r.Cautions {
		if r.Book.Cautions[c.Caution].ID == id {
			return c.Truth, len(r.Lacks(c))
		}
	}
	return 99, 0
}

// One template serves the family that is chosen, in a loaded book and in one
// that has been packed; with none chosen it computes nothing and asks for one.
func TestTemplates(t *testing.T) {
	loaded := bowlBook(t)
	back, err := Unpack(loaded.Pack(), physics.Functions()...)
	if err != nil {
		t.Fatal(err)
	}
	if string(back.Pack()) != string(loaded.Pack()) {
		t.Errorf("the pack changed:\n%s\n%s", loaded.Pack(), back.Pack())
	}
	if n := strings.Count(string(loaded.Pack()), "\neach\t"); n != 3 {
		t.Errorf("%d templates are packed, not 3", n)
	}
	for _, b := range []*Book{loaded, back} {
		r := asked(t, b, "", "bowl-family=lapwing-10", "capacity=800 gpm", "speed=1770 rpm", "stages=8")
		gives(t, r, "stage-head", "ft", 45)
		gives(t, r, "total-head", "ft", 360)
		gives(t, r, "thrust-factor", "lbf/ft", 8.4)
		gives(t, r, "trim", "1", 1)
		head, _ := b.Find("stage-head")
		if rule := r.Book.Rules[r.Values[head].Rule]; rule.Say != "Demonstration bowl, not for order: Lapwing 10. From its points." || rule.Name != "lapwing-10" {
			t.Errorf("said “%s” by %s", rule.Say, rule.Name)
		}
		total, _ := b.Find("total-head")
		if f := r.RestsOn(total); f == nil || f.Name != "Lapwing 10" {
			t.Errorf("the total head rests on %v", f)
		}
		if fires, _ := truth(r, "bowl-family/invented"); fires != formula.True {
			t.Error("the caution of invented bowls does not fire")
		}
		// 1460 of 1770 rpm: the flow goes with the ratio, the head with its square.
		r = asked(t, b, "", "bowl-family=lapwing-10", "capacity="+in(800*1460.0/1770)+" gpm", "speed=1460 rpm")
		gives(t, r, "stage-head", "ft", 45*(1460.0/1770)*(1460.0/1770))

		r = asked(t, b, "stage-head", "capacity=800 gpm", "speed=1770 rpm")
		if r.Known(head) || len(r.Missing) == 0 || b.Terms[r.Missing[0][0]].ID != "bowl-family" {
			t.Errorf("with no family chosen: %v, missing %v", r.Values[head].Likely, r.Missing)
		}
		if state, lacks := truth(r, "bowl-family/invented"); state != formula.Unknown || lacks != 1 {
			t.Errorf("with no family chosen the caution is %v and lacks %d", state, lacks)
		}
	}
}

func in(x float64) string { return float(x) }

// A reader's own curve makes a new book and leaves the old one as it was. What
// the family lacks is not computed.
func TestWithBowl(t *testing.T) {
	b := bowlBook(t)
	before := string(b.Pack())
	facts := []string{"bowl-family=other-bowl", "capacity=100 m3/h", "speed=1460 rpm"}
	head, _ := b.Find("stage-head")
	if r := asked(t, b, "", facts...); r.Known(head) {
		t.Error("a family without figures gives a head")
	} else if state, _ := truth(r, "bowl-family/invented"); state != formula.False {
		t.Errorf("without figures the caution is %v", state)
	}
	with := b.WithBowl(bowlOf(t, "other-bowl", plainItems))
	r := asked(t, with, "", facts...)
	gives(t, r, "stage-head", "ft", 65.5)
	if say := r.Book.Rules[r.Values[head].Rule].Say; say != "Test stand 3, measured. From its points." {
		t.Errorf("said “%s”", say)
	}
	if state, _ := truth(r, "bowl-family/invented"); state != formula.False {
		t.Errorf("of a measured family the caution is %v", state)
	}
	if factor, _ := b.Find("thrust-factor"); r.Known(factor) {
		t.Error("a thrust factor that the family does not name")
	}
	// The other family is still there, and a second change takes the place of the first.
	gives(t, asked(t, with, "", "bowl-family=lapwing-10", "capacity=800 gpm", "speed=1770 rpm"), "stage-head", "ft", 45)
	again := with.WithBowl(bowlOf(t, "other-bowl", append(append([]string{}, plainItems[:5]...), "point 150 m3/h; 15 m")))
	gives(t, asked(t, again, "", "bowl-family=other-bowl", "capacity=150 m3/h", "speed=1460 rpm"), "stage-head", "m", 15)
	gives(t, asked(t, with, "", "bowl-family=other-bowl", "capacity=150 m3/h", "speed=1460 rpm"), "stage-head", "m", 16)
	if string(b.Pack()) != before {
		t.Error("the old book changed")
	}
	// One more family: a value that the book did not have, also after another pack.
	more := again.WithBowl(bowlOf(t, "gull-7", lapwingItems))
	packed, err := Unpack(more.Pack(), physics.Functions()...)
	if err != nil {
		t.Fatal(err)
	}
	for _, book := range []*Book{more, packed} {
		gives(t, asked(t, book, "", "bowl-family=gull-7", "capacity=800 gpm", "speed=1770 rpm"), "stage-head", "ft", 45)
		gives(t, asked(t, book, "", "bowl-family=other-bowl", "capacity=150 m3/h", "speed=1460 rpm"), "stage-head", "m", 15)
	}
	if plain := makeBook(t, chainBook); plain.WithBowl(more.Bowls[0]) != plain {
		t.Error("a book without families takes one")
	}
}

// A trimmed or slowed stage that is found by the affinity laws makes the head
// that was asked for.
func TestTrimOfTheFamily(t *testing.T) {
	b := bowlBook(t)
	r := asked(t, b, "", "bowl-family=lapwing-10", "capacity=800 gpm", "total-head=343 ft", "stages=8", "speed=1770 rpm", "stage-head=42.875 ft")
	trim, _ := b.Find("trim")
	k := r.Values[trim].Likely
	if math.Abs(k-0.9836) > 0.0001 { // the formulas behind the family give 0.9837
		t.Fatalf("the trim is %v", k)
	}
	if state, _ := truth(r, "trim/too-deep"); state != formula.False {
		t.Errorf("the caution of a deep trim is %v", state)
	}
	whole := asked(t, b, "", "bowl-family=lapwing-10", "capacity="+in(800/k)+" gpm", "speed=1770 rpm")
	gives(t, whole, "stage-head", "ft", 42.875/(k*k))
	r = asked(t, b, "", "bowl-family=lapwing-10", "capacity=700 gpm", "total-head=250 ft", "stages=8", "speed=1770 rpm", "stage-head=31.25 ft")
	if state, _ := truth(r, "trim/too-deep"); state != formula.True { // below the usual 0.85
		t.Errorf("with a trim of %v the caution is %v", r.Values[trim].Likely, state)
	}
}

func TestReadBowlTells(t *testing.T) {
	for want, items := range map[string][]string{
		"has no “sped”":                       {"name A", "origin measured", "sped 1 rpm", "speed 1460 rpm"},
		"said twice":                          {"name A", "name B", "origin measured", "speed 1460 rpm"},
		"no origin of a curve":                {"name A", "origin guessed", "speed 1460 rpm"},
		"does not say where its figures":      {"name A", "speed 1460 rpm"},
		"has no name":                         {"origin measured", "speed 1460 rpm"},
		"does not say its speed":              {"name A", "origin measured"},
		"3 to 12 points; this family has 0":   {"name A", "origin measured", "speed 1460 rpm"},
		"wants a":                             {"name A", "origin measured", "speed 1460 gpm"},
		"is a range":                          {"name A", "origin measured", "speed 1400 to 1500 rpm"},
		"outside what makes sense":            {"name A", "origin measured", "speed 14600 rpm"},
		"This point lacks its head":           {"name A", "origin measured", "speed 1460 rpm", "point 0 gpm"},
		"four figures at most":                {"name A", "origin measured", "speed 1460 rpm", "point 0;1;0;1;5"},
		"head rises from 60 ft to 61 ft":      {"name A", "origin measured", "speed 1460 rpm", "point 0 gpm;60 ft", "point 9 gpm;61 ft", "point 10 gpm;1 ft"},
		"does not lie beyond 9 gpm":           {"name A", "origin measured", "speed 1460 rpm", "point 9 gpm;60 ft", "point 9 gpm;50 ft", "point 10 gpm;1 ft"},
		"has too few points, 1":               {"name A", "origin measured", "speed 1460 rpm", "point 1 gpm;60 ft;50 %", "point 9 gpm;50 ft", "point 10 gpm;1 ft"},
		"one best point":                      {"name A", "origin measured", "speed 1460 rpm", "point 1 gpm;60 ft;50 %", "point 9 gpm;50 ft;40 %", "point 10 gpm;1 ft;45 %"},
		"Where no water flows the efficiency": {"name A", "origin measured", "speed 1460 rpm", "point 0 gpm;60 ft;50 %", "point 9 gpm;50 ft;60 %", "point 10 gpm;1 ft;45 %"},
	} {
		_, problems := ReadBowl("a", items)
		found := false
		for _, p := range problems {
			found = found || strings.Contains(p.Message, want)
		}
		if !found {
			t.Errorf("%q: not told “%s” but %+v", items, want, problems)
		}
	}
	if _, problems := ReadBowl("a b", lapwingItems); len(problems) != 1 {
		t.Errorf("an id of two words: %+v", problems)
	}
}

// The largest power of one stage and its best point come from the points: 960 ×
// 35.6 / (3960 × 0.761) = 11.34 hp by hand.
func TestFromThePoints(t *testing.T) {
	b := bowlOf(t, "lapwing-10", lapwingItems)
	if p := b.LargestPower(); p.Text != "11.34" || p.Unit.Symbol != "hp" {
		t.Errorf("the largest power is %+v", p)
	}
	if best := b.Best(); best.Capacity.Text != "800" || best.Head.String() != "45.0 ft" || best.Efficiency.String() != "81.0 %" {
		t.Errorf("the best point is %+v", best)
	}
	if b.Label() != "Lapwing 10, 1770 rpm" || b.Value("smallest-trim").Text != "0.85" || b.Value("lateral").Known() {
		t.Errorf("read as %+v", b)
	}
	plain := bowlOf(t, "other-bowl", plainItems)
	if plain.Best() != nil || plain.LargestPower().Known() || plain.Value("speed").String() != "1460 rpm" {
		t.Errorf("read as %+v", plain)
	}
}

// Whatever is typed as a family, it is read without a crash; what is taken can
// be packed and comes back the same.
func TestAnyBowl(t *testing.T) {
	b := bowlBook(t)
	words := rapid.SampledFrom([]string{"name A", "origin measured", "origin builder's sheet", "speed 1770", "speed 29 Hz", "lateral 3/4 in", "note a\\b",
		"point 0; 60", "point 50 m3/h;57;40 %", "point 400;55 ft;60", "point 800;44;80;3 m", "point 1000;30;70", "point ;;", "point 1e9;1", "x", ""})
	rapid.Check(t, func(t *rapid.T) {
		bowl, problems := ReadBowl("other-bowl", rapid.SliceOfN(words, 0, 16).Draw(t, "items"))
		if len(problems) > 0 {
			return
		}
		pack := b.WithBowl(bowl).Pack()
		back, err := Unpack(pack, physics.Functions()...)
		if err != nil || string(back.Pack()) != string(pack) {
			t.Fatalf("%v: %s", err, pack)
		}
	})
}
