package reckon

import (
	"math"
	"strings"
	"testing"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/physics"
)

// chainBook is a small book of the chain, enough to try the network on. The
// relations are those of the handbook; DEVELOPERS.md says where each is from.
const chainBook = `
term build : choice water-lubricated oil-lubricated submersible
term static-level ft m -100 3000 ask
term drawdown ft m 0 1000 ask
term pumping-level ft m -100 3000 ask
term discharge-elevation ft m -50 100 ask
term lift ft m -100 3000
term discharge-pressure psi kPa 0 500 ask
term pressure-head ft m 0 1200
term discharge-velocity-head ft m 0 50
term field-head ft m 0 4000
term column-loss ft m 0 200 ask
term head-loss ft m 0 20 ask
term total-head ft m 0 4000
term capacity gpm m3/h 0 10000 ask
term specific-capacity gpm/ft m3/h/m 0 1000 ask
term specific-gravity 1 1 0.5 2 ask
term bowl-efficiency % % 1 100 ask
term bowl-power hp kW 0 5000
term shaft-loss hp kW 0 200 ask builds water-lubricated oil-lubricated otherwise 0 hp
term thrust-bearing-loss hp kW 0 50 ask
term brake-power hp kW 0 5000 ask
term delivery-pressure psi kPa 0 500 ask
term elevation-above ft m -500 2000 ask
term discharge-friction ft m 0 1000 ask
term head-above ft m -500 2500
pumping-level = static-level + drawdown
specific-capacity = capacity / drawdown
lift = pumping-level + discharge-elevation
pressure-head[ft] = 2.31 * discharge-pressure[psi] / specific-gravity
head-above[ft] = 2.31 * delivery-pressure[psi] / specific-gravity + elevation-above[ft]
pressure-head = head-above + discharge-friction
field-head = lift + pressure-head + discharge-velocity-head
total-head = field-head + column-loss + head-loss
bowl-power[hp] = capacity[gpm] * total-head[ft] * specific-gravity / (3960 * bowl-efficiency)
brake-power = bowl-power + shaft-loss + thrust-bearing-loss
assume specific-gravity = 1 say "cold, clean water"
assume discharge-velocity-head = 0 ft say "small"
caution shallow pumping-level : when pumping-level < 10 ft say "Very shallow."
caution unchecked-one total-head : when total-head > 1000 ft and bowl-efficiency < 50 % say "High and poor."
`

// makeBook builds a book from lines: “term id us si from to [ask] [builds …]
// [otherwise …]”, relations, “estimate name …”, “assume …”, “caution name home : …”.
func makeBook(t testing.TB, text string) *Book {
	t.Helper()
	src := &Source{ID: "test", Title: "Test"}
	for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
		word, rest, _ := strings.Cut(line, " ")
		switch word {
		case "term":
			src.Terms = append(src.Terms, termLine(rest))
		case "assume":
			src.Blocks = append(src.Blocks, Block{Kind: AssumeBlock, Body: rest})
		case "estimate":
			name, body, _ := strings.Cut(rest, " ")
			src.Blocks = append(src.Blocks, Block{Kind: EstimateBlock, Head: name, Body: body, Term: strings.Fields(body)[0]})
		case "caution":
			head, body, _ := strings.Cut(rest, " : ")
			f := strings.Fields(head)
			src.Blocks = append(src.Blocks, Block{Kind: CautionBlock, Head: f[0], Term: f[1], Body: body})
		default:
			head, body, conditional := strings.Cut(line, " | ")
			if !conditional {
				head, body = "", line
			}
			home, _, _ := strings.Cut(strings.Fields(body)[0], "[")
			src.Blocks = append(src.Blocks, Block{Kind: FormulaBlock, Head: head, Term: home, Body: body})
		}
	}
	b, problems := Load(src)
	for _, p := range problems {
		t.Errorf("the test's book: %+v", p)
	}
	if len(problems) > 0 {
		t.FailNow()
	}
	return b
}

func termLine(rest string) TermSource {
	f := strings.Fields(rest)
	name := strings.ReplaceAll(f[0], "-", " ")
	if f[1] == ":" {
		s := TermSource{ID: f[0], Name: name, Kind: f[2], Ask: "Which " + name + "?"}
		for _, v := range f[3:] {
			s.Values = append(s.Values, v, v)
		}
		return s
	}
	s := TermSource{ID: f[0], Name: name, US: f[1], SI: f[2], From: f[3] + " " + f[1], To: f[4] + " " + f[1]}
	if f[1] == "1" {
		s.From, s.To = f[3], f[4]
	}
	for i := 5; i < len(f); i++ {
		switch f[i] {
		case "ask":
			s.Ask = "What is the " + name + "?"
		case "otherwise":
			s.Otherwise = strings.Join(f[i+1:], " ")
		case "builds", "count":
			if f[i] == "count" {
				s.Kind = "count"
			}
		default:
			if strings.HasSuffix(f[i], "lubricated") || f[i] == "submersible" {
				s.Applies = append(s.Applies, f[i])
			}
		}
	}
	return s
}

// ask reckons a wanted term from facts written “term=value”.
func ask(t testing.TB, b *Book, want string, facts ...string) *Result {
	t.Helper()
	q := Question{Want: -1}
	if want != "" {
		q.Want = termOf(t, b, want)
	}
	for _, f := range facts {
		id, text, _ := strings.Cut(f, "=")
		fact, err := b.Read(termOf(t, b, id), text)
		if err != nil {
			t.Fatalf("%s: %v", f, err)
		}
		q.Facts = append(q.Facts, fact)
	}
	return b.Reckon(q)
}

func termOf(t testing.TB, b *Book, id string) int {
	t.Helper()
	i, ok := b.Find(id)
	if !ok {
		t.Fatalf("no term %s", id)
	}
	return i
}

// us is a result's value in the term's US unit.
func us(t testing.TB, r *Result, id string) float64 {
	t.Helper()
	i := termOf(t, r.Book, id)
	return r.Book.Terms[i].US.FromSI(r.Values[i].Likely)
}

func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %v, want %v within %v", what, got, want, tolerance)
	}
}

var job1 = []string{"capacity=800 gpm", "static-level=140 ft", "drawdown=55 ft", "discharge-elevation=2 ft", "discharge-pressure=60 psi",
	"discharge-velocity-head=0.41 ft", "column-loss=6.384 ft", "head-loss=0.61 ft", "bowl-efficiency=81 %", "shaft-loss=3.43 hp",
	"thrust-bearing-loss=0.64 hp", "build=oil-lubricated"}

// without drops the facts of some terms.
func without(facts []string, terms ...string) []string {
	var list []string
next:
	for _, f := range facts {
		for _, t := range terms {
			if strings.HasPrefix(f, t+"=") {
				continue next
			}
		}
		list = append(list, f)
	}
	return list
}

func TestChainForward(t *testing.T) {
	b := makeBook(t, chainBook)
	r := ask(t, b, "brake-power", job1...)
	near(t, "pumping level", us(t, r, "pumping-level"), 195, 1e-9)
	near(t, "field head", us(t, r, "field-head"), 336.01, 1e-9)
	near(t, "total head", us(t, r, "total-head"), 343.004, 1e-9)
	near(t, "bowl power", us(t, r, "bowl-power"), 800*343.004/(3960*.81), 1e-9)
	near(t, "brake power", us(t, r, "brake-power"), 800*343.004/(3960*.81)+3.43+.64, 1e-9)
	if len(r.Clashes) > 0 {
		t.Errorf("clashes: %+v", r.Clashes)
	}
	got := r.Step(termOf(t, b, "total-head"), formula.US)
	if want := "total head = 336 ft + 6.384 ft + 0.61 ft = 343 ft"; strings.ReplaceAll(got, "\u00a0", " ") != want {
		t.Errorf("step %q, want %q", got, want)
	}
}

// The trade's question turned round: how far may the level fall before a given
// motor is fully loaded?
func TestDrawdownThatAGivenMotorCanBear(t *testing.T) {
	b := makeBook(t, chainBook)
	r := ask(t, b, "drawdown", append(without(job1, "drawdown"), "brake-power=100 hp")...)
	near(t, "drawdown", us(t, r, "drawdown"), (100-3.43-.64)*3960*.81/800-.61-6.384-.41-138.6-2-140, 1e-9)
	back := ask(t, b, "brake-power", job1...)
	again := ask(t, b, "drawdown", append(without(job1, "drawdown"), "brake-power="+strings.ReplaceAll(exact(us(t, back, "brake-power")), ",", "")+" hp")...)
	near(t, "drawdown back again", us(t, again, "drawdown"), 55, 1e-6)
}

// With the specific capacity known the drawdown moves with the capacity, so
// that no relation has a single unknown: the circle has to be cut.
func TestCapacityFromBrakePower(t *testing.T) {
	b := makeBook(t, chainBook)
	facts := append(without(job1, "capacity", "drawdown"), "specific-capacity=14.545454545 gpm/ft", "brake-power=88.75 hp")
	r := ask(t, b, "capacity", facts...)
	q := us(t, r, "capacity")
	head := 140 + q/14.545454545 + 2 + 138.6 + .41 + 6.384 + .61
	near(t, "brake power put back", q*head/(3960*.81)+3.43+.64, 88.75, 1e-6)
	v := r.Values[termOf(t, b, "capacity")]
	if !v.Searched || len(v.Loop) < 3 {
		t.Errorf("the loop is not told: %+v", v)
	}
	if step := r.Step(termOf(t, b, "capacity"), formula.US); !strings.Contains(step, "sought between") || !strings.Contains(step, "loop") {
		t.Errorf("step %q does not tell of the search", step)
	}
}

func TestEfficiencyThatTwoCapacitiesGive(t *testing.T) {
	b := makeBook(t, `
term capacity gpm m3/h 0 1040 ask
term bowl-efficiency % % 0 100 ask
bowl-efficiency = 0.81 * (1 - (capacity[gpm] / 800 - 1) ^ 2)
`)
	r := ask(t, b, "capacity", "bowl-efficiency=78 %")
	v := r.Values[termOf(t, b, "capacity")]
	if v.State != Several || len(v.Roots) != 2 {
		t.Fatalf("state %v, values %v: want both capacities reported and none picked", v.State, v.Roots)
	}
	u := b.Terms[0].US
	d := 800 * math.Sqrt(1-78/81.0)
	near(t, "lower capacity", u.FromSI(v.Roots[0]), 800-d, 1e-6)
	near(t, "higher capacity", u.FromSI(v.Roots[1]), 800+d, 1e-6)
}

// Neither relation gives one of the two alone, and algebra cannot turn them round.
func TestTwoCuts(t *testing.T) {
	b := makeBook(t, `
term first 1 1 0 10
term second 1 1 0 10
term left 1 1 0 1e6 ask
term right 1 1 0 1e6 ask
left = first + second ^ 3 + second
right = second + first ^ 3 + first
`)
	r := ask(t, b, "first", "left=13", "right=34") // 3 and 2: 3 + 8 + 2, 2 + 27 + 3 is 32
	x, y := us(t, r, "first"), us(t, r, "second")
	near(t, "left put back", x+y*y*y+y, 13, 1e-8)
	near(t, "right put back", y+x*x*x+x, 34, 1e-8)
}

// A motor's power bears so much head that what is left for the bearing is what
// the yardstick asks for: the circle closes in an estimate, beside two
// relations that only repeat each other.
func TestEstimateClosesACircle(t *testing.T) {
	b := makeBook(t, `
term head ft m 0 3000
term water hp kW 0 5000
term bowl hp kW 0 5000
term efficiency % % 1 100 ask
term thrust lbf N 0 100000
term bearing hp kW 0 50 ask
term brake hp kW 0 5000 ask
water[hp] = 800 * head[ft] / 3960
bowl[hp] = 800 * head[ft] / (3960 * efficiency)
efficiency = water / bowl
thrust[lbf] = 8.4 * head[ft] + 1922
brake = bowl + bearing
estimate yardstick bearing = 0.13275 hp * thrust[lbf] / 1000 say "a yardstick"
`)
	r := ask(t, b, "head", "brake=95 hp", "efficiency=81 %")
	head := us(t, r, "head")
	near(t, "brake power put back", 800*head/(3960*.81)+.13275*(8.4*head+1922)/1000, 95, 1e-8)
	near(t, "bearing loss", us(t, r, "bearing"), .13275*(8.4*head+1922)/1000, 1e-9)
	if len(r.Clashes) != 0 {
		t.Errorf("clashes %v", r.Clashes)
	}
	given := ask(t, b, "head", "brake=95 hp", "efficiency=81 %", "bearing=5 hp")
	near(t, "a bearing loss that is known wins", us(t, given, "head"), (95-5)*3960*.81/800, 1e-9)
}

// A relation that only repeats another one decides nothing, also where the values
// that both allow are a small part of a range.
func TestWhatOnlyRepeatsGivesNoValues(t *testing.T) {
	b := makeBook(t, `
term efficiency % % 1 100 ask
term loss hp kW 0 1e6
term water hp kW 0 20
term bowl hp kW 0 1e6 ask
water[hp] = efficiency * bowl[hp]
loss[hp] = bowl[hp] - water[hp]
efficiency = 1 - loss[hp] / bowl[hp]
`)
	r := ask(t, b, "water", "efficiency=81 %")
	for _, id := range []string{"bowl", "water", "loss"} {
		if v := r.Values[termOf(t, b, id)]; v.State == Several || len(v.Roots) > 0 || r.Known(termOf(t, b, id)) {
			t.Errorf("%s: %v %v", id, v.State, v.Roots)
		}
	}
}

// Two estimates of one loss are no equation: where the shaft they both hang on is
// not known, it is missing, and no shaft is sought for which they agree.
func TestTwoEstimatesAreNoEquation(t *testing.T) {
	b := makeBook(t, `
term shaft in mm 0.5 6 ask
term column in mm 1 36 ask
term rate ft/100ft m/100m 0 100
term loss ft m 0 200
estimate friction rate[ft/100ft] = 5 * (column[in] - shaft[in]) / column[in] say "one formula"
estimate roughness rate[ft/100ft] = 12 / (column[in] - shaft[in]) say "another one"
loss = 100 ft * rate
`)
	r := ask(t, b, "loss", "column=8 in")
	if v := r.Values[termOf(t, b, "shaft")]; v.State != Missing {
		t.Errorf("the shaft: %v, %v in", v.State, v.Likely/0.0254)
	}
	if len(r.Missing) == 0 || len(r.Missing[0]) != 1 || r.Missing[0][0] != termOf(t, b, "shaft") {
		t.Errorf("missing: %v", r.Missing)
	}
	given := ask(t, b, "loss", "column=8 in", "shaft=2 in")
	near(t, "with the shaft the first estimate is taken", us(t, given, "rate"), 5*6.0/8, 1e-9)
}

func TestPressureAtThePumpAndAtTheFarEnd(t *testing.T) {
	b := makeBook(t, chainBook)
	rest := []string{"pumping-level=195 ft", "discharge-elevation=2 ft", "specific-gravity=1"}
	atPump := ask(t, b, "field-head", append(rest, "discharge-pressure=60 psi")...)
	atEnd := ask(t, b, "field-head", append(rest, "delivery-pressure=60 psi", "elevation-above=31.5 ft", "discharge-friction=14.75 ft")...)
	difference := us(t, atEnd, "field-head") - us(t, atPump, "field-head")
	near(t, "the difference: the pipe's friction and rise", difference, 31.5+14.75, 1e-9)
}

func TestClashNamesTheFacts(t *testing.T) {
	b := makeBook(t, chainBook)
	r := ask(t, b, "total-head", append(job1, "pumping-level=190 ft")...)
	if len(r.Clashes) != 1 {
		t.Fatalf("clashes: %+v, want one", r.Clashes)
	}
	got := strings.ReplaceAll(r.ClashText(&r.Clashes[0], formula.US), "\u00a0", " ")
	if want := "pumping level was given as 190 ft, but 140 ft + 55 ft = 195 ft (difference −5 ft)."; got != want {
		t.Errorf("clash %q, want %q", got, want)
	}
	names := ""
	for _, f := range r.Clashes[0].Facts {
		names += b.Terms[f].ID + " "
	}
	if names != "static-level drawdown pumping-level " {
		t.Errorf("facts that clash: %s", names)
	}
}

// What was typed with few digits may differ by its rounding.
func TestRoundingIsNoClash(t *testing.T) {
	b := makeBook(t, chainBook)
	for _, c := range []struct {
		pumping string
		clash   bool
	}{{"195 ft", false}, {"195.1 ft", false}, {"196 ft", false}, {"197 ft", true}, {"196.0 ft", false}, {"196.9 ft", true}} {
		r := ask(t, b, "", "static-level=140 ft", "drawdown=55 ft", "pumping-level="+c.pumping)
		if got := len(r.Clashes) > 0; got != c.clash {
			t.Errorf("140 ft + 55 ft against %s: clash %v, want %v", c.pumping, got, c.clash)
		}
	}
}

func TestMissingNamesTheSmallestSets(t *testing.T) {
	b := makeBook(t, chainBook)
	r := ask(t, b, "field-head", "static-level=140 ft", "discharge-elevation=2 ft", "capacity=800 gpm")
	var sets []string
	for _, set := range r.Missing {
		s := ""
		for _, i := range set {
			s += b.Terms[i].ID + " "
		}
		sets = append(sets, s)
	}
	want := []string{"drawdown discharge-pressure ", "pumping-level discharge-pressure ", "discharge-pressure specific-capacity "}
	for _, w := range want {
		found := false
		for _, s := range sets {
			found = found || s == w
		}
		if !found {
			t.Errorf("the set %q is not among %q", w, sets)
		}
	}
	if len(sets) > 5 || len(sets) == 0 || strings.Count(sets[0], " ") != 2 {
		t.Errorf("sets %q: want at most five, fewest facts first", sets)
	}
}

// Every set that is named must really do: give its members values and the
// wanted term follows.
func TestMissingSetsAreEnough(t *testing.T) {
	b, wide := makeBook(t, chainBook), makeBook(t, chainBook)
	for i := range wide.Terms { // what the values are does not matter here
		wide.Terms[i].Low, wide.Terms[i].High = -1e9, 1e9
	}
	for _, want := range []string{"field-head", "brake-power", "total-head", "drawdown", "bowl-power"} {
		r := ask(t, b, want, "static-level=140 ft")
		if len(r.Missing) == 0 {
			t.Errorf("%s: nothing is named", want)
		}
		for _, set := range r.Missing {
			q := r.Question
			for _, i := range set {
				term := &b.Terms[i]
				x := term.Low + (term.High-term.Low)*0.3
				q.Facts = append(q.Facts, Fact{Term: i, Low: x, Likely: x, High: x})
			}
			if again := wide.Reckon(q); !again.Known(q.Want) {
				t.Errorf("%s does not follow from %v", want, set)
			}
		}
	}
}

func TestAssumptionYields(t *testing.T) {
	b := makeBook(t, chainBook)
	sg := termOf(t, b, "specific-gravity")
	if r := ask(t, b, "pressure-head", "discharge-pressure=60 psi"); r.Values[sg].State != Assumed {
		t.Errorf("specific gravity is %v, want assumed", r.Values[sg].State)
	}
	r := ask(t, b, "", "discharge-pressure=60 psi", "pressure-head=134.6 ft")
	if r.Values[sg].State != Follows {
		t.Errorf("specific gravity is %v, want it to follow", r.Values[sg].State)
	}
	near(t, "specific gravity", us(t, r, "specific-gravity"), 60*2.31/134.6, 1e-9)
}

func TestNotApplicable(t *testing.T) {
	b := makeBook(t, chainBook)
	r := ask(t, b, "brake-power", append(without(job1, "shaft-loss", "build"), "build=submersible")...)
	shaft := r.Values[termOf(t, b, "shaft-loss")]
	if shaft.State != NotApplicable || shaft.Likely != 0 {
		t.Errorf("shaft loss of a submersible: %v %v", shaft.State, shaft.Likely)
	}
	near(t, "brake power", us(t, r, "brake-power"), 800*343.004/(3960*.81)+.64, 1e-9)

	// The reader has typed a shaft loss and changes the build: it is set aside.
	r = ask(t, b, "brake-power", append(without(job1, "build"), "build=submersible")...)
	shaft = r.Values[termOf(t, b, "shaft-loss")]
	if shaft.State != NotApplicable || !strings.Contains(shaft.Reason, "not used") || len(r.Clashes) > 0 {
		t.Errorf("a shaft loss typed for a submersible: %v, %q, clashes %v", shaft.State, shaft.Reason, r.Clashes)
	}
}

func TestOutsideItsRange(t *testing.T) {
	b := makeBook(t, chainBook)
	r := ask(t, b, "drawdown", "static-level=140 ft", "pumping-level=120 ft")
	v := r.Values[termOf(t, b, "drawdown")]
	if v.State != Outside || !strings.Contains(v.Reason, "outside what makes sense") {
		t.Errorf("a negative drawdown: %v, %q", v.State, v.Reason)
	}
	near(t, "the value is told", us(t, r, "drawdown"), -20, 1e-9)
}

func TestHeightTypedForAPressure(t *testing.T) {
	b := makeBook(t, chainBook)
	r := ask(t, b, "pressure-head", "discharge-pressure=138.6 ft", "specific-gravity=1")
	near(t, "pressure", us(t, r, "discharge-pressure"), 60, 1e-3)
	fact := r.Question.Facts[0]
	if len(fact.Notes) == 0 || !strings.Contains(fact.Notes[0], "138.6") {
		t.Errorf("the step of the conversion is not shown: %q", fact.Notes)
	}
}

func TestRangesGoThrough(t *testing.T) {
	b := makeBook(t, chainBook)
	r := ask(t, b, "lift", "static-level=130 to 150 ft", "drawdown=50 to 60 ft", "discharge-elevation=2 ft")
	v := r.Values[termOf(t, b, "lift")]
	u := b.Terms[0:][termOf(t, b, "lift")].US
	near(t, "lowest lift", u.FromSI(v.Low), 182, 1e-9)
	near(t, "highest lift", u.FromSI(v.High), 212, 1e-9)
	near(t, "likely lift", u.FromSI(v.Likely), 197, 1e-9)
	if got := strings.ReplaceAll(r.Text(termOf(t, b, "lift"), formula.US), "\u00a0", " "); got != "182 to 212 ft" {
		t.Errorf("printed as %q", got)
	}
}

func TestCautionsHaveThreeStates(t *testing.T) {
	b := makeBook(t, chainBook)
	state := func(facts ...string) string {
		s := ""
		for _, c := range ask(t, b, "", facts...).Cautions {
			s += map[formula.Truth]string{formula.True: "fires ", formula.False: "clear ", formula.Unknown: "unchecked "}[c.Truth]
		}
		return s
	}
	for facts, want := range map[string]string{
		"pumping-level=5 ft":                        "fires unchecked ",
		"pumping-level=50 ft":                       "clear unchecked ",
		"total-head=900 ft":                         "unchecked clear ",
		"total-head=1100 ft|bowl-efficiency=40 %":   "unchecked fires ",
		"pumping-level=5 to 50 ft":                  "fires unchecked ",
		"pumping-level=20 to 50 ft|total-head=5 ft": "clear clear ",
	} {
		if got := state(strings.Split(facts, "|")...); got != want {
			t.Errorf("%s: cautions %s, want %s", facts, got, want)
		}
	}
}

const estimates = `
term capacity gpm m3/h 0 2000 ask
term bowl-efficiency % % 0 100 ask
term bowl-power hp kW 0 5000
estimate from-curve bowl-efficiency = curve(capacity, 0 gpm: 0 %, 400 gpm: 60.8 %, 800 gpm: 81 %, 1040 gpm: 70.1 %) say "curve"
estimate rule-of-thumb bowl-efficiency = 75 % say "thumb"
bowl-power[hp] = capacity[gpm] * 100 / (3960 * bowl-efficiency)
`

func TestEstimatesYieldAndStandSideBySide(t *testing.T) {
	b := makeBook(t, estimates)
	e := termOf(t, b, "bowl-efficiency")
	r := ask(t, b, "bowl-power", "capacity=800 gpm")
	if v := r.Values[e]; v.State != Estimated || len(v.Alternatives) != 2 || !v.Alternatives[0].Chosen {
		t.Errorf("efficiency: %+v", v)
	}
	near(t, "by the curve", us(t, r, "bowl-efficiency"), 81, 1e-9)
	q := r.Question
	q.Choose = map[int]string{e: "rule-of-thumb"}
	near(t, "by the reader's choice", us(t, b.Reckon(q), "bowl-efficiency"), 75, 1e-9)
	r = ask(t, b, "bowl-power", "capacity=800 gpm", "bowl-efficiency=78 %")
	if v := r.Values[e]; v.State != Given || len(v.Alternatives) != 2 || len(r.Clashes) > 0 {
		t.Errorf("a given value wins and the estimates stand beside it: %+v", v)
	}
	r = ask(t, b, "bowl-power", "capacity=1200 gpm")
	near(t, "beyond the curve the next estimate fills in", us(t, r, "bowl-efficiency"), 75, 1e-9)
	if a := r.Values[e].Alternatives[0]; !strings.Contains(a.Reason, "outside") {
		t.Errorf("why the curve gives nothing: %q", a.Reason)
	}
}

func TestConditions(t *testing.T) {
	b := makeBook(t, `
term build : choice water-lubricated oil-lubricated submersible
term shaft-loss hp kW 0 100 ask
term brake-power hp kW 0 1000
term bowl-power hp kW 0 1000 ask
when build = submersible | brake-power = bowl-power
when build != submersible | brake-power = bowl-power + shaft-loss
`)
	near(t, "submersible", us(t, ask(t, b, "brake-power", "build=submersible", "bowl-power=50 hp"), "brake-power"), 50, 1e-9)
	near(t, "line shaft", us(t, ask(t, b, "brake-power", "build=oil-lubricated", "bowl-power=50 hp", "shaft-loss=3 hp"), "brake-power"), 53, 1e-9)
	r := ask(t, b, "brake-power", "bowl-power=50 hp")
	if len(r.Missing) == 0 || b.Terms[r.Missing[0][0]].ID != "build" {
		t.Errorf("the build is what is missing: %v", r.Missing)
	}
}

func TestPackKeepsTheBook(t *testing.T) {
	for _, text := range []string{chainBook, estimates} {
		b := makeBook(t, text)
		back, err := Unpack(b.Pack())
		if err != nil {
			t.Fatal(err)
		}
		if string(back.Pack()) != string(b.Pack()) {
			t.Errorf("the pack changed:\n%s\n%s", b.Pack(), back.Pack())
		}
		for want := range b.Terms {
			q := Question{Want: want, Facts: []Fact{{Term: 1, Low: 0.5, Likely: 0.5, High: 0.5}, {Term: 0, Low: 0.05, Likely: 0.05, High: 0.05}}}
			x, y := b.Reckon(q), back.Reckon(q)
			for i := range x.Values {
				if x.Values[i].State != y.Values[i].State || x.Step(i, formula.SI) != y.Step(i, formula.SI) || x.Step(i, formula.US) != y.Step(i, formula.US) {
					t.Errorf("%s: %s and %s", b.Terms[i].ID, x.Step(i, formula.US), y.Step(i, formula.US))
				}
			}
		}
	}
}

// A damaged pack is refused with a clear error, never taken in part.
func FuzzUnpack(f *testing.F) {
	f.Add(makeBook(f, chainBook).Pack())
	f.Add(makeBook(f, estimates).Pack())
	f.Add(bowlBook(f).Pack())
	f.Add([]byte("something else\n"))
	f.Fuzz(func(t *testing.T, pack []byte) {
		b, err := Unpack(pack, physics.Functions()...)
		if err != nil {
			return
		}
		b.Reckon(Question{Want: len(b.Terms) - 1})
		if b.bowl >= 0 { // with the templates filled
			b.Reckon(Question{Want: len(b.Terms) - 1, Facts: []Fact{{Term: b.bowl}}})
		}
	})
}

func exact(v float64) string { return strings.TrimRight(strings.TrimRight(ftoa(v), "0"), ".") }
