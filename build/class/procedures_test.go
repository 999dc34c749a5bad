package class

import (
	"bufio"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"columnbowl/calcwasm/exercise"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// procedures reads the wrong ways that were written without the content's
// mistakes: testdata/class/procedures.txt.
func procedures(t *testing.T, set *exercise.Set) []*reckon.Mistake {
	t.Helper()
	file, err := os.Open("../../testdata/class/procedures.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var list []*reckon.Mistake
	for lines := bufio.NewScanner(file); lines.Scan(); {
		way, _, found := strings.Cut(lines.Text(), ";")
		if way = strings.TrimSpace(way); !found || strings.HasPrefix(way, "#") {
			continue
		}
		wrong, err := formula.ParseRelation(way, set.Book.Scope)
		if err != nil {
			t.Fatalf("%s: %v", way, err)
		}
		list = append(list, &reckon.Mistake{ID: way, Home: wrong.Target(), Wrong: wrong})
	}
	return list
}

// TestWrongProcedures: learners who reckon in ways that the book does not know.
// They may be told that they are wrong, that the number is not recognised, or
// that it could be something; under 1 in 200 may be accused of a mistake that
// they did not make. A way that is a mistake of the book in other words is no
// such way, and is told.
func TestWrongProcedures(t *testing.T) {
	_, set := content(t)
	rng := rand.New(rand.NewPCG(15, 16))
	list := procedures(t, set)
	var total tally
	ways, known := 0, 0
	for _, tm := range numeric(set) {
		probe := draw(t, set, tm, rng)
		for _, p := range list {
			item := probe.shows(p.Home)
			if item < 0 {
				continue
			}
			c, slips := gone(t, set, tm, item, p, rng)
			if c.all == 0 {
				continue
			}
			ways++
			if c.accused > 0 && !slices.ContainsFunc(slips, func(s int) bool { return !sameWay(t, set, tm, item, &set.Book.Mistakes[s], p) }) {
				t.Logf("%s: %s is to four digits %s, and is named so %d times of %d", tm.ID, p.ID, set.Slip(slips[0]).ID, c.accused, c.all)
				known++
				continue
			}
			for _, s := range slips {
				t.Logf("%s: %s is taken for %s", tm.ID, p.ID, set.Slip(s).ID)
			}
			total.all, total.accused = total.all+c.all, total.accused+c.accused
		}
	}
	t.Logf("wrong procedures: %d ways in their exercises, %d of them mistakes of the book in other words; of the others %d answers, %.2f %% accused", ways, known, total.all, total.share(total.accused))
	if total.all < 2000 || total.share(total.accused) >= 0.5 {
		t.Error("the marker accuses 1 in 200 or more of those who reckon in ways of their own, or too few were tried")
	}
}

// gone has learners of one exercise go a wrong way, and tells of which mistakes
// they are accused.
func gone(t *testing.T, set *exercise.Set, tm *exercise.Template, item int, p *reckon.Mistake, rng *rand.Rand) (c tally, slips []int) {
	for range 16 {
		l := draw(t, set, tm, rng)
		if !l.canUse(p, item) {
			continue
		}
		l.slips[p.Home] = p
		m := &l.sheet.Mark(l.answers(l.work()))[item]
		if m.Verdict == exercise.Right {
			continue
		}
		if m.Verdict == exercise.Slipped {
			known := &set.Book.Mistakes[m.Causes[0].Slips[0]]
			if a, b := l.leads(known, item), l.leads(p, item); math.Abs(a-b) <= 1e-9*math.Abs(b) {
				continue // the larger of two facts is one of them: on this sheet it is the very mistake
			}
			slips = append(slips, m.Causes[0].Slips[0])
		}
		c.add(m, false)
	}
	return c, slips
}

// sameWay says whether a way is a mistake of the book in other words. Chance makes
// two ways meet on one sheet in hundreds; where the same four digits are written
// on every fourth, they are one reckoning to that many digits (a small loss added
// as the sides of a triangle are is left out), and no number can tell them apart.
func sameWay(t *testing.T, set *exercise.Set, tm *exercise.Template, item int, known, p *reckon.Mistake) bool {
	const sheets = 24
	rng := rand.New(rand.NewPCG(17, 18))
	same := 0
	for range sheets {
		l := draw(t, set, tm, rng)
		term := l.sheet.Items[item].Term
		if l.four(term, l.leads(known, item)) == l.four(term, l.leads(p, item)) {
			same++
		}
	}
	return same >= sheets/4
}

// canUse says whether a learner can reckon so on this sheet: all it takes is
// known by then, and another number comes out.
func (l *learner) canUse(p *reckon.Mistake, item int) bool {
	defer l.start()
	for _, t := range l.res.Chain(l.sheet.Items[item].Term) {
		if l.env.Known(t) {
			continue
		}
		right := l.res.Values[t].Expr.Eval(l.env)
		if t == p.Home {
			v := wrongValue(p, l.env)
			return v == v && l.four(t, v) != l.four(t, right)
		}
		l.env.Values[t] = right
	}
	return false
}
