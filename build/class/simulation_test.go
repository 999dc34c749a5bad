package class

import (
	"math"
	"math/rand/v2"
	"testing"

	"columnbowl/calcwasm/exercise"
	"columnbowl/calcwasm/formula"
)

// tally counts answers of one kind.
type tally struct{ all, sure, named, accused, right int }

func (c *tally) share(n int) float64 { return 100 * float64(n) / float64(max(c.all, 1)) }

// numeric are the templates that ask for numbers.
func numeric(set *exercise.Set) []*exercise.Template {
	var list []*exercise.Template
	for i := range set.Templates {
		if len(set.Templates[i].Ask) > 0 {
			list = append(list, &set.Templates[i])
		}
	}
	return list
}

func draw(t *testing.T, set *exercise.Set, tm *exercise.Template, rng *rand.Rand) *learner {
	t.Helper()
	sheet, why := set.Draw(tm, rng.Uint64())
	if sheet == nil {
		t.Fatalf("%s: %s", tm.ID, why)
	}
	return newLearner(set, sheet, rng)
}

// TestSingleMistakes: a learner makes one mistake and goes on with the number.
// At least 97 of 100 must be named, and what follows must be judged from the
// learner's own number.
func TestSingleMistakes(t *testing.T) {
	_, set := content(t)
	rng := rand.New(rand.NewPCG(1, 2))
	var single, after tally
	for single.all+after.all < 20000 {
		for _, tm := range numeric(set) {
			l := draw(t, set, tm, rng)
			can := l.can()
			if len(can) == 0 {
				continue
			}
			m := can[rng.IntN(len(can))]
			l.slips[m.Home] = m
			item := l.shows(m.Home)
			marks := l.sheet.Mark(l.answers(l.work()))
			for i := range marks {
				switch mark := &marks[i]; {
				case i == item && mark.Verdict != exercise.Right:
					single.add(mark, l.names(mark, i, m))
					if !l.names(mark, i, m) && testing.Verbose() && single.all%10 == 0 {
						t.Logf("%s: %s as %v %q", tm.ID, m.ID, mark.Verdict, mark.Say)
					}
				case i > item:
					after.add(mark, false)
				}
			}
		}
	}
	t.Logf("single mistakes: %d answers, %.2f %% named, %.2f %% named as sure, %.2f %% accused of another", single.all, single.share(single.named), single.share(single.sure), single.share(single.accused))
	t.Logf("steps after a mistake: %d answers, %.2f %% right or right on the earlier slip, %.2f %% accused", after.all, after.share(after.right), after.share(after.accused))
	if single.share(single.named) < 97 || single.share(single.accused) > 0.5 || after.share(after.right) < 97 || after.share(after.accused) > 0.5 {
		t.Error("the marker misses its goals: 97 % of single mistakes named, 97 % of what follows credited, under 0.5 % accused falsely")
	}
}

// add counts a mark; named says whether it names what was done.
func (c *tally) add(m *exercise.Mark, named bool) {
	c.all++
	switch {
	case named && m.Verdict == exercise.Slipped:
		c.sure++
		c.named++
	case named:
		c.named++
	case m.Verdict == exercise.Slipped:
		c.accused++
	case m.Verdict == exercise.Right || m.Verdict == exercise.Carried:
		c.right++
	}
}

// TestPairs: two mistakes on the way to one number. In 90 of 100 cases the two
// must be among the causes that are offered, two at most, and never as sure.
func TestPairs(t *testing.T) {
	_, set := content(t)
	rng := rand.New(rand.NewPCG(3, 4))
	var pairs tally
	for pairs.all < 2000 {
		for _, tm := range numeric(set) {
			if len(tm.Ask) != 1 {
				continue
			}
			l := draw(t, set, tm, rng)
			can := l.can()
			if len(can) < 2 {
				continue
			}
			a, b := can[rng.IntN(len(can))], can[rng.IntN(len(can))]
			if a.Home == b.Home {
				continue
			}
			l.slips[a.Home], l.slips[b.Home] = a, b
			v := l.work()
			if hidden(l, v[0], a.Home, b.Home) {
				continue
			}
			mark := &l.sheet.Mark(l.answers(v))[0]
			if mark.Verdict == exercise.Right || mark.Verdict == exercise.Rounded {
				continue
			}
			pairs.add(mark, l.names(mark, 0, a, b))
			if len(mark.Causes) > 2 {
				t.Errorf("%s: %d causes offered", tm.ID, len(mark.Causes))
			}
		}
	}
	t.Logf("pairs of mistakes in one number: %d answers, %.2f %% among the causes offered, %.2f %% accused of one mistake as sure", pairs.all, pairs.share(pairs.named), pairs.share(pairs.accused))
	if pairs.share(pairs.named) < 90 || pairs.sure > 0 {
		t.Error("the marker misses its goal: 90 % of pairs among the causes offered, none as sure")
	}
}

// hidden says whether one of two mistakes covers the other up: the number is
// then that of one mistake alone.
func hidden(l *learner, v float64, homes ...int) bool {
	for _, h := range homes {
		if alone := l.leads(l.slips[h], 0); math.Abs(alone-v) <= 1e-3*math.Abs(v) {
			return true
		}
	}
	return false
}

// TestNonsense: numbers out of the blue. Under 1 in 200 may be taken for a
// mistake. They are spread in three ways: by ratio, near the right number, and
// as the right numbers of somebody else's sheet.
func TestNonsense(t *testing.T) {
	_, set := content(t)
	rng := rand.New(rand.NewPCG(5, 6))
	var kinds [3]tally
	for kinds[0].all < 8000 {
		for _, tm := range numeric(set) {
			l, other := draw(t, set, tm, rng), draw(t, set, tm, rng)
			for kind := range kinds {
				var v []float64
				for i := range l.sheet.Items {
					right := l.sheet.Items[i].Right
					switch kind {
					case 0:
						right *= math.Exp((rng.Float64()*2 - 1) * math.Log(4))
					case 1:
						right *= 0.6 + 0.8*rng.Float64()
					case 2:
						right = other.sheet.Items[i].Right
					}
					v = append(v, right)
				}
				answers := l.answers(v)
				for i := range answers { // each by itself, the others right
					own := rightAnswers(l)
					own[i] = answers[i]
					marks := l.sheet.Mark(own)
					kinds[kind].add(&marks[i], false)
				}
			}
		}
	}
	for kind, name := range []string{"spread by ratio", "near the right number", "from another sheet"} {
		c := &kinds[kind]
		t.Logf("numbers out of the blue, %s: %d answers, %.2f %% accused", name, c.all, c.share(c.accused))
		if c.share(c.accused) >= 0.5 {
			t.Error("the marker accuses 1 in 200 or more")
		}
	}
}

func rightAnswers(l *learner) []string {
	var v []float64
	for i := range l.sheet.Items {
		v = append(v, l.sheet.Items[i].Right)
	}
	return l.answers(v)
}

// TestSlipsOfThePen: wrong ways that the book's mistakes know nothing of. None
// may be taken for a mistake as sure.
func TestSlipsOfThePen(t *testing.T) {
	_, set := content(t)
	rng := rand.New(rand.NewPCG(7, 8))
	kinds := []struct {
		name string
		make func(l *learner) (answers []string, item int)
		most float64 // per cent that may be accused
		tally
	}{
		{name: "digits of a fact swapped", make: swapFact},
		{name: "one fact read for another", make: wrongLine},
		{name: "digits of the answer swapped", make: swapAnswer},
		{name: "in the other system's unit, unit not written", make: otherUnit},
		{name: "one digit of a drawn fact misread", make: misread, most: 0.1},
		{name: "ten, a hundred or a thousandth lost in adding up", make: lostCarry, most: 0.1},
		// The marker knows nothing of the next three: by chance they may meet a
		// mistake, as numbers out of the blue do.
		{name: "a digit of a fact dropped", make: dropDigit, most: 0.5},
		{name: "two digits on the way only", make: twoDigits, most: 0.5},
		{name: "a number on the way used twice", make: usedTwice, most: 0.5},
	}
	for kinds[0].all < 3000 {
		for _, tm := range numeric(set) {
			for k := range kinds {
				l := draw(t, set, tm, rng)
				answers, item := kinds[k].make(l)
				if answers == nil {
					continue
				}
				marks := l.sheet.Mark(answers)
				kinds[k].add(&marks[item], false)
				if marks[item].Verdict == exercise.Slipped {
					t.Logf("%s, %s: %s taken for %s", kinds[k].name, tm.ID, answers[item], set.Slip(marks[item].Causes[0].Slips[0]).ID)
				}
			}
		}
	}
	for k := range kinds {
		c := &kinds[k].tally
		t.Logf("%s: %d answers, %d accused", kinds[k].name, c.all, c.accused)
		if c.share(c.accused) > kinds[k].most {
			t.Errorf("%s: a slip of the pen is taken for a mistake", kinds[k].name)
		}
	}
}

// TestInSI: learners who work in SI, with the facts as the sheet tells them
// there. The right way is right to the last line; of mistakes no more are
// accused falsely than in US units.
func TestInSI(t *testing.T) {
	_, set := content(t)
	rng := rand.New(rand.NewPCG(9, 10))
	var right, single tally
	for right.all < 4000 {
		for _, tm := range numeric(set) {
			l := draw(t, set, tm, rng)
			l.sheet.System = formula.SI
			l.start()
			answers := l.answers(l.work())
			for i, mark := range l.sheet.Mark(answers) {
				right.add(&mark, false)
				if mark.Verdict != exercise.Right {
					t.Logf("%s of seed %d: %s is judged %v %s; right is %s", tm.ID, l.sheet.Seed, answers[i], mark.Verdict, mark.Say, l.sheet.Amount(i, l.sheet.Items[i].Right))
				}
			}
			l.start()
			if can := l.can(); len(can) > 0 {
				m := can[rng.IntN(len(can))]
				l.slips[m.Home] = m
				item := l.shows(m.Home)
				marks := l.sheet.Mark(l.answers(l.work()))
				if marks[item].Verdict != exercise.Right {
					single.add(&marks[item], l.names(&marks[item], item, m))
				}
			}
		}
	}
	t.Logf("in SI: %d right answers, %.2f %% taken as right; %d single mistakes, %.2f %% named, %.2f %% accused of another",
		right.all, right.share(right.right), single.all, single.share(single.named), single.share(single.accused))
	if right.share(right.right) < 99.5 || single.share(single.named) < 97 || single.share(single.accused) > 0.5 {
		t.Error("the marker misses its goals in SI")
	}
}
