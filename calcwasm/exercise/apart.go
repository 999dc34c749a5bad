package exercise

import (
	"cmp"
	"math"
	"slices"

	"columnbowl/calcwasm/formula"
)

// given is the number that a slip gives on a sheet.
type given struct {
	site
	value  float64
	tol    float64 // how far an answer may be off by rounding
	lesson int     // the slip that stands for its lesson; rightLesson for the right way
}

// rightLesson marks the right number, and slips that never differ from it.
const rightLesson = -1

// singles lists what each slip on the way gives, the right number first.
func (sg *segment) singles() []given {
	list := []given{{site{-1, -1}, sg.right, sg.tolerance(rightWay, sg.right), rightLesson}}
	for _, s := range sg.sites {
		w := oneSlip(s)
		if v := sg.try(w); v == v {
			list = append(list, given{s, v, sg.tolerance(w, v), sg.sheet.Template.lesson(sg.item, s.slip)})
		}
	}
	return list
}

// lesson is the slip that stands for a slip's lesson in an item.
func (t *Template) lesson(item, slip int) int {
	if item < len(t.lessons) {
		for _, l := range t.lessons[item] {
			if l.slip == slip {
				return l.as
			}
		}
	}
	return slip
}

// apart says whether the mistakes of a sheet can be told from each other and
// from the right number; if not, which two cannot.
func (sh *Sheet) apart() string {
	for i := range sh.Items {
		sg := sh.segment(i, nil)
		list := sg.singles()
		sortGiven(list)
		for k := 1; k < len(list); k++ {
			a, b := &list[k-1], &list[k]
			if a.lesson != b.lesson && b.value-a.value < 2*max(a.tol, b.tol) {
				return "in “" + sh.set.Book.Terms[sg.term].ID + "” " + sh.nameOf(a) + " and " + sh.nameOf(b) + " give nearly the same: " +
					sh.set.Book.Format(sg.term, b.value, formula.US)
			}
		}
	}
	return ""
}

// sortGiven sorts a short list by value. The generic sort would be one more copy
// of itself in what a reader loads.
func sortGiven(list []given) {
	for i := 1; i < len(list); i++ {
		for k := i; k > 0 && list[k].value < list[k-1].value; k-- {
			list[k], list[k-1] = list[k-1], list[k]
		}
	}
}

func (sh *Sheet) nameOf(g *given) string {
	if g.slip < 0 {
		return "the right way"
	}
	return "“" + sh.set.slips[g.slip].ID + "”"
}

// trials is how many draws tell which mistakes are of one lesson.
const trials = 24

// learn finds the mistakes of one lesson: those that give nearly the same number
// in every draw, such as × 0.433 and / 2.31. They need not stand apart. It
// returns why the template cannot be drawn at all, if that is so.
func (s *Set) learn(t *Template) string {
	t.lessons = make([][]lesson, len(t.Ask))
	near := make([]map[[2]int]bool, len(t.Ask))
	rng := newPCG(1, streamOf(t.ID))
	why, found := "", 0
	for try := 0; try < 40*trials && found < trials; try++ {
		sheet, reason := s.try(t, rng)
		if sheet == nil {
			why = reason
			continue
		}
		found++
		for i := range t.Ask {
			near[i] = sheet.near(i, near[i])
		}
	}
	if found == 0 {
		return why
	}
	for i := range t.Ask {
		t.lessons[i] = lessons(near[i])
	}
	return ""
}

// near narrows the pairs that have been near each other in all draws so far.
func (sh *Sheet) near(item int, before map[[2]int]bool) map[[2]int]bool {
	sg := sh.segment(item, nil)
	list := sg.singles()
	now := map[[2]int]bool{}
	for i := range list {
		for k := i + 1; k < len(list); k++ {
			pair := [2]int{list[i].slip, list[k].slip}
			if math.Abs(list[i].value-list[k].value) < 2*max(list[i].tol, list[k].tol) && (before == nil || before[pair]) {
				now[pair] = true
			}
		}
	}
	return now
}

// lessons joins the slips that are near to each other, also by way of a third,
// and gives each the lowest of its group; the right way is lower than all.
func lessons(near map[[2]int]bool) []lesson {
	as := map[int]int{}
	for changed := true; changed; {
		changed = false
		for p := range near {
			low := min(p[0], p[1], lowest(as, p[0]), lowest(as, p[1]))
			for _, slip := range p {
				if lowest(as, slip) != low {
					as[slip], changed = low, true
				}
			}
		}
	}
	var list []lesson
	for slip, low := range as {
		if slip != low {
			list = append(list, lesson{slip, low})
		}
	}
	slices.SortFunc(list, func(a, b lesson) int { return cmp.Compare(a.slip, b.slip) })
	return list
}

func lowest(as map[int]int, slip int) int {
	if low, ok := as[slip]; ok {
		return low
	}
	return slip
}
