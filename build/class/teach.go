package class

import (
	"cmp"
	"slices"
	"strings"

	"columnbowl/calcwasm/exercise"
	"columnbowl/site"
)

// mostTaught is how many pages, and how many questions, a class is told to take
// up again.
const mostTaught = 3

// alone is how many learners it takes before something is taken up with the
// whole class where none of their numbers proves it.
const alone = 2

// page is a page on which learners slipped.
type page struct {
	home        int
	sure, maybe []string // signs of learners
}

// teach lists the pages on which most learners slipped. A number that singles a
// mistake out counts twice; numbers that another mistake could give as well say
// something only when several learners have them.
func (o *Office) teach(marked []Marked) []site.Teach {
	var list []site.Teach
	for _, p := range o.pages(marked) {
		if len(list) < mostTaught && (len(p.sure) > 0 || len(p.maybe) >= alone) {
			made := Made{Sure: p.sure, Maybe: p.maybe}
			list = append(list, site.Teach{Name: o.Set.Book.Terms[p.home].Title, N: made.Count(), Who: made.who()})
		}
	}
	return list
}

func (o *Office) pages(marked []Marked) []*page {
	byHome := map[int]*page{}
	var list []*page
	for _, m := range Mistakes(marked) {
		home := o.Set.Slip(m.Slip).Home
		if byHome[home] == nil {
			byHome[home] = &page{home: home}
			list = append(list, byHome[home])
		}
		p := byHome[home]
		p.sure, p.maybe = append(p.sure, m.Sure...), append(p.maybe, m.Maybe...)
	}
	for _, p := range list {
		p.sure, p.maybe = distinct(p.sure), distinct(p.maybe)
		p.maybe = slices.DeleteFunc(p.maybe, func(s string) bool { return slices.Contains(p.sure, s) })
	}
	weight := func(p *page) int { return 2*len(p.sure) + len(p.maybe) }
	slices.SortFunc(list, func(a, b *page) int { return cmp.Or(cmp.Compare(weight(b), weight(a)), cmp.Compare(a.home, b.home)) })
	return list
}

func distinct(signs []string) []string {
	slices.Sort(signs)
	return slices.Compact(signs)
}

// doubtful is the least share of wrong answers that makes a question one for the
// whole class: one learner in four.
const doubtful = 0.25

// hard lists the questions to choose from and the orders that most of those who
// had them got wrong.
func (o *Office) hard(marked []Marked) []site.Teach {
	type question struct {
		name string
		had  int
		who  []string
	}
	byName := map[string]*question{}
	var list []*question
	for i := range marked {
		m := &marked[i]
		for k := range m.Marks {
			if m.Items[k].Kind == exercise.Number {
				continue
			}
			q := byName[m.Title(k)]
			if q == nil {
				q = &question{name: m.Title(k)}
				byName[q.name], list = q, append(list, q)
			}
			q.had++
			if v := m.Marks[k].Verdict; v == exercise.Wrong || v == exercise.PartOnly {
				q.who = append(q.who, m.ID)
			}
		}
	}
	list = slices.DeleteFunc(list, func(q *question) bool {
		return len(q.who) < alone || float64(len(q.who)) < doubtful*float64(q.had)
	})
	slices.SortStableFunc(list, func(a, b *question) int { return cmp.Compare(len(b.who)*a.had, len(a.who)*b.had) })
	var out []site.Teach
	for _, q := range list[:min(len(list), mostTaught)] {
		out = append(out, site.Teach{Name: q.name, N: len(q.who), Of: q.had, Who: strings.Join(distinct(q.who), ", ")})
	}
	return out
}
