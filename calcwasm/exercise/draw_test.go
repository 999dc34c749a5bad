package exercise

import (
	"math"
	"strings"
	"testing"
)

// The first numbers of the generator's own demonstration program, pcg32-demo of
// the PCG library 0.94 (seed 42, sequence 54).
func TestPCGAgreesWithItsReference(t *testing.T) {
	p := newPCG(42, 54)
	for i, want := range []uint32{0xa15c02b7, 0x7b47f409, 0xba1d3330, 0x83d2f293, 0xbfa4784b, 0xcbed606e} {
		if got := p.next(); got != want {
			t.Errorf("number %d is %#x, not %#x", i, got, want)
		}
	}
}

// FNV-1a, 64 bits: test values of draft-eastlake-fnv, appendix C.
func TestStreamIsFNV(t *testing.T) {
	for text, want := range map[string]uint64{"": 0xcbf29ce484222325, "a": 0xaf63dc4c8601ec8c, "foobar": 0x85944171f73967e8} {
		if got := streamOf(text); got != want {
			t.Errorf("%q: %#x, not %#x", text, got, want)
		}
	}
}

func TestBelowIsEven(t *testing.T) {
	p := newPCG(1, 1)
	counts := make([]int, 7)
	for range 70000 {
		counts[p.below(7)]++
	}
	for v, n := range counts {
		if n < 9500 || n > 10500 { // five standard deviations
			t.Errorf("%d came %d times out of 70000", v, n)
		}
	}
	seen := make([]bool, 9)
	for _, i := range p.shuffled(9) {
		seen[i] = true
	}
	for i, ok := range seen {
		if !ok {
			t.Errorf("%d is missing from a shuffled list", i)
		}
	}
}

func TestFactsAreTidyAndInRange(t *testing.T) {
	s := loaded(t, chain("six", "pumping-level\npressure-head\nfield-head\nbowl-power"))
	differ := false
	for seed := range uint64(300) {
		sh := drawnSheet(t, s, "six", seed)
		again := drawnSheet(t, s, "six", seed)
		if sh.Situation() != again.Situation() {
			t.Fatalf("seed %d gives two sheets", seed)
		}
		differ = differ || sh.Situation() != drawnSheet(t, s, "six", seed+1).Situation()
		v := func(id string) float64 {
			term, _ := s.Book.Find(id)
			return s.Book.Terms[term].US.FromSI(sh.values[term])
		}
		level, down, setting := v("static-level"), v("drawdown"), v("setting")
		if level < 80-1e-9 || level > 180+1e-9 || math.Abs(level*10-math.Round(level*10)) > 1e-6 {
			t.Errorf("seed %d: static level %v", seed, level)
		}
		if math.Abs(setting/5-math.Round(setting/5)) > 1e-6 || setting < level+down+20-1e-6 || setting > level+down+70+1e-6 {
			t.Errorf("seed %d: setting %v for %v + %v", seed, setting, level, down)
		}
		if down >= 0.6*level {
			t.Errorf("seed %d: kept against its condition", seed)
		}
	}
	if !differ {
		t.Error("all seeds give the same sheet")
	}
}

// Every sheet's mistakes stand apart, except those of one lesson.
func TestMistakesStandApart(t *testing.T) {
	s := loaded(t, chain("one", "field-head"))
	for seed := range uint64(200) {
		sg := drawnSheet(t, s, "one", seed).segment(0, nil)
		list := sg.singles()
		if len(list) < 6 {
			t.Fatalf("only %d ways are looked at", len(list))
		}
		for i := range list {
			for k := range i {
				a, b := &list[i], &list[k]
				if a.lesson != b.lesson && math.Abs(a.value-b.value) < 2*math.Max(a.tol, b.tol) {
					t.Errorf("seed %d: %v and %v", seed, a.value, b.value)
				}
			}
		}
	}
}

func TestOneLesson(t *testing.T) {
	s := loaded(t, chain("one", "pressure-head"))
	tm := s.Find("one")
	var over, divided int
	for i := range s.slips {
		switch s.slips[i].ID {
		case "pressure-head/factor-over":
			over = i
		case "pressure-head/divided":
			divided = i
		}
	}
	if tm.lesson(0, divided) != tm.lesson(0, over) {
		t.Error("× 0.433 and / 2.31 are not of one lesson")
	}
	if tm.lesson(0, over) != over {
		t.Error("the first of a lesson does not stand for it")
	}
}

func TestCautionsAreToldOrRefused(t *testing.T) {
	s := loaded(t, chain("one", "field-head"))
	sh := drawnSheet(t, s, "one", 3)
	if got := strings.Join(sh.Cautions(), "|"); got != "Stored pressure." {
		t.Errorf("cautions %q", got)
	}
	bad := chain("deep", "field-head")
	bad.Blocks[0].Body = strings.Replace(chainDraw, "+ drawdown + 20 ft to static-level + drawdown + 70 ft", "- 30 ft to static-level - 10 ft", 1)
	problems := s.Load(bad)
	if len(problems) != 1 || !strings.Contains(problems[0].Message, "the caution “pumping-level/below-the-bowls” fires") {
		t.Errorf("problems: %v", problems)
	}
	bad.Allow = []string{"pumping-level/below-the-bowls"}
	if problems := s.Load(bad); len(problems) > 0 {
		t.Errorf("an allowed caution is refused: %s", problems[0].Message)
	}
}

func TestPlanAgreesWithTheSteps(t *testing.T) {
	s := loaded(t, chain("two", "field-head\nbowl-power"))
	sh := drawnSheet(t, s, "two", 5)
	steps := sh.Steps(0)
	if len(steps) != 3 || !strings.HasPrefix(steps[2], "field head = ") || !strings.HasSuffix(steps[2], sh.Amount(0, sh.Items[0].Right)) {
		t.Errorf("steps: %q", steps)
	}
	if again := sh.Steps(1); len(again) != 1 {
		t.Errorf("the second item starts again from the facts: %q", again)
	}
}

func TestChoicesAndOrders(t *testing.T) {
	s := loaded(t, &Source{ID: "words", Name: "Words", Text: "Say.", Pick: 1, Blocks: []Block{
		{ChooseBlock, "ask \"A?\" right \"yes\" say \"because\" wrong \"no\" say \"why not\" wrong \"maybe\" say \"be sure\""},
		{ChooseBlock, "ask \"B?\" right \"yes\" wrong \"no\" say \"x\" wrong \"maybe\" say \"y\""},
		{OrderBlock, "ask \"Order.\" take 4 items \"1\", \"2\", \"3\", \"4\", \"5\", \"6\""},
	}})
	asked := map[string]int{}
	for seed := range uint64(200) {
		sh := drawnSheet(t, s, "words", seed)
		if len(sh.Items) != 2 {
			t.Fatalf("%d items", len(sh.Items))
		}
		choice, order := &sh.Items[0], &sh.Items[1]
		asked[choice.Ask+choice.Answer]++
		if choice.Options[choice.Answer[0]-'A'].Text != "yes" {
			t.Errorf("seed %d: the answer is not the right one", seed)
		}
		last := ""
		for _, c := range order.Answer {
			if name := order.Names[c-'A']; name <= last {
				t.Errorf("seed %d: %s after %s", seed, name, last)
			} else {
				last = name
			}
		}
	}
	if len(asked) != 6 {
		t.Errorf("not every question stands in every place: %v", asked)
	}
}
