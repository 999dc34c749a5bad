package exercise

import (
	"math"

	"columnbowl/calcwasm/formula"
)

// fit is a way that gives the number answered.
type fit struct {
	way
	off    float64
	lesson int
}

// blame looks for the mistakes that lead to a number.
func (sg *segment) blame(m *Mark, r *reading) {
	m.Verdict = Unknown
	a := r.value
	if a != a {
		m.Say = "Its unit does not measure " + sg.sheet.set.Book.Terms[sg.term].Name + "."
		return
	}
	singles := sg.singles()
	fits := sg.fits(a, r.rounding, singles)
	switch {
	case len(fits) == 1 && m.Say == "" && sg.sure(a, r.rounding, fits[0], singles):
		m.Verdict = Slipped
		m.Causes = sg.causes(fits)
	case len(fits) == 1 || len(fits) == 2:
		m.Verdict = CouldBe
		m.Causes = sg.causes(fits)
	case len(fits) > 2:
		m.Say = "Several mistakes lead to about this number."
	case sg.nearly(a):
		m.Verdict, m.Points = Rounded, MostPoints/2
		m.Say = "Nearly right: look at the rounding. " + sg.sheet.format(sg.term, sg.right) + " comes out."
		if m.Own {
			m.Say += " That is with your own number from before."
		}
	default:
		sg.guess(m, a, r.rounding)
	}
}

// nearly says whether an answer is off by no more than loose rounding.
func (sg *segment) nearly(a float64) bool {
	t := &sg.sheet.set.Book.Terms[sg.term]
	return t.Kind == formula.Quantity && math.Abs(a-sg.right) <= close*math.Abs(sg.right)
}

// fits finds the slips that alone give a number, one for each lesson.
func (sg *segment) fits(a, rounding float64, singles []given) []fit {
	var list []fit
	for _, g := range singles[1:] {
		off := math.Abs(g.value - a)
		if off > slack(g.tol, g.value, rounding) || g.lesson == rightLesson {
			continue
		}
		list = sg.addFit(list, fit{oneSlip(g.site), off, g.lesson})
	}
	return list
}

// slack is how far an answer may be from what a slip gives: rounding on the way
// and of the answer itself, which may have fewer digits than were asked for.
func slack(tol, v, rounding float64) float64 {
	return math.Max(tol, math.Min(rounding, 0.005*math.Abs(v)))
}

// addFit adds a way to a list, unless it is one that is there in other words;
// of one lesson the nearest stays.
func (sg *segment) addFit(list []fit, f fit) []fit {
	for i := range list {
		if list[i].lesson == f.lesson && f.lesson >= 0 || sg.same(list[i].way, f.way) {
			if f.off < list[i].off {
				list[i] = f
			}
			return list
		}
	}
	return append(list, f)
}

// unlucky is the largest share of numbers out of the blue that may be taken for
// a mistake: goals of the book are under one in 200.
const unlucky = 0.004

// sure says whether a number singles a slip out.
func (sg *segment) sure(a, rounding float64, f fit, singles []given) bool {
	if !sg.hits(a, rounding, f) {
		return false
	}
	last := len(sg.steps) - 1
	all, here := 0.0, 0.0
	seen := map[int]bool{}
	for _, g := range singles[1:] {
		ratio := g.value / sg.right
		if seen[g.lesson] || ratio < 0.25 || ratio > 4 || g.lesson == rightLesson {
			continue
		}
		seen[g.lesson] = true
		share := 2 * slack(g.tol, g.value, rounding) / math.Abs(g.value) / lnSpan
		all += share
		if g.at == last {
			here += share
		}
	}
	if all > unlucky && (f.first != last || here > unlucky) {
		return false
	}
	return !sg.rival(a, 2*slack(sg.tolerance(f.way, a), a, rounding), f.way)
}

// hits says whether a number is what a slip gives to the last digit, give or take
// what rounding on the way commonly does. What it can do at most is enough for
// “could be”; to be sure of a slip, a number that is one off in its fourth digit
// is too far from what was only copied.
func (sg *segment) hits(a, rounding float64, f fit) bool {
	v := sg.try(f.way)
	return f.off <= slack((sg.written(v)+sg.spread(f.way, v)/2)*(1+1e-9), v, rounding)
}

// lnSpan is ln 16: a number out of the blue lies anywhere between a quarter of
// the right one and four times it, each ratio as likely as another.
const lnSpan = 2.772588722239781

// mostSites is how many slips may lie on the way to a number for pairs of them
// to be looked at: with more, several pairs lead to nearly every number.
const mostSites = 32

// guess looks for two mistakes made together. It never tells them as certain.
func (sg *segment) guess(m *Mark, a, rounding float64) {
	var list []fit
	if len(sg.sites) > mostSites {
		m.Say = sg.hint(a, rounding)
		return
	}
	for i, x := range sg.sites {
		for _, y := range sg.sites[i+1:] {
			w := twoSlips(x, y)
			if w.first == w.second && sg.sheet.set.both[[2]int{w.firstSlip, w.secondSlip}] == nil {
				continue
			}
			v := sg.try(w)
			off := math.Abs(v - a)
			if off <= close*math.Abs(v) && off <= slack(sg.tolerance(w, v), v, rounding) {
				list = sg.addFit(list, fit{w, off, -2})
			}
		}
	}
	switch {
	case len(list) == 0:
		m.Say = sg.hint(a, rounding)
	case len(list) <= 2:
		m.Verdict, m.Causes = CouldBe, sg.causes(list)
	default:
		m.Say = "Many pairs of mistakes lead to about this number."
	}
}

// hint names a slip of the pen, which is no mistake of understanding.
func (sg *segment) hint(a, rounding float64) string {
	for _, v := range swapped(sg.right, sg.sheet.unit(sg.term).Factor) {
		if math.Abs(v-a) <= slack(sg.tol, v, rounding) {
			return "Two digits of the right number may have changed places."
		}
	}
	return ""
}

func (sg *segment) causes(list []fit) []Cause {
	var out []Cause
	for _, f := range list {
		c := Cause{[]int{f.firstSlip}}
		if f.secondSlip >= 0 {
			c.Slips = append(c.Slips, f.secondSlip)
		}
		out = append(out, c)
	}
	return out
}
