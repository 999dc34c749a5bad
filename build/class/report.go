package class

import (
	"bytes"
	"cmp"
	"slices"
	"strconv"
	"strings"

	"columnbowl/calcwasm/exercise"
	"columnbowl/site"
)

// Made is one mistake as the class made it: by whom, and how sure that is.
type Made struct {
	Slip  int
	Sure  []string // signs of the learners whose number singles it out
	Maybe []string // and of those whose number it could explain
}

// Count is how many learners made it, sure ones and others.
func (m *Made) Count() int { return len(m.Sure) + len(m.Maybe) }

// Mistakes lists the mistakes of a class, those made by most learners first.
func Mistakes(marked []Marked) []Made {
	byslip := map[int]*Made{}
	add := func(slip int, sign string, sure bool) {
		m := byslip[slip]
		if m == nil {
			m = &Made{Slip: slip}
			byslip[slip] = m
		}
		switch {
		case slices.Contains(m.Sure, sign):
		case sure:
			m.Sure = append(m.Sure, sign)
			m.Maybe = slices.DeleteFunc(m.Maybe, func(s string) bool { return s == sign })
		case !slices.Contains(m.Maybe, sign):
			m.Maybe = append(m.Maybe, sign)
		}
	}
	for i := range marked {
		for k := range marked[i].Marks {
			mark := &marked[i].Marks[k]
			for _, c := range mark.Causes {
				for _, slip := range c.Slips {
					add(slip, marked[i].ID, mark.Verdict == exercise.Slipped)
				}
			}
		}
	}
	var list []Made
	for _, m := range byslip {
		list = append(list, *m)
	}
	slices.SortFunc(list, func(a, b Made) int {
		return cmp.Or(cmp.Compare(b.Count(), a.Count()), cmp.Compare(len(b.Sure), len(a.Sure)), cmp.Compare(a.Slip, b.Slip))
	})
	return list
}

// Report makes the file on a marked class.
func (o *Office) Report(title string, class []Learner, marked []Marked, faults []Fault) ([]byte, error) {
	view := site.ClassReport{Title: title, Book: o.Book.Handbook.Title, Version: o.version(), Paper: o.Paper, Sheets: len(marked)}
	wide := len(class) <= widest
	for _, l := range class {
		if wide {
			view.Signs = append(view.Signs, l.ID)
		}
	}
	for i := range faults {
		view.Faults = append(view.Faults, faults[i].String())
	}
	for n, m := range Mistakes(marked) {
		row := site.ClassSlip{N: n + 1, Say: o.Set.Slip(m.Slip).Say, Page: o.page(m.Slip), Count: m.Count(), Bar: bar(len(m.Sure), len(m.Maybe), len(class))}
		for _, l := range class {
			if wide {
				row.Learners = append(row.Learners, sureness(&m, l.ID))
			}
		}
		if !wide {
			row.Who = m.who()
		}
		view.Slips = append(view.Slips, row)
	}
	view.Teach, view.Hard = o.teach(marked), o.hard(marked)
	view.Items = o.items(marked)
	for i := range marked {
		r := o.learner(&marked[i])
		r.First = i == 0 || marked[i].ID != marked[i-1].ID
		view.Learners = append(view.Learners, r)
	}
	return o.write(view)
}

// widest is the largest class whose learners have columns of their own in the
// picture: more of them do not fit on the paper.
const widest = 30

// who lists the signs of those who made a mistake, unsure ones in brackets.
func (m *Made) who() string {
	signs := slices.Clone(m.Sure)
	for _, s := range m.Maybe {
		signs = append(signs, "("+s+")")
	}
	return strings.Join(signs, ", ")
}

func sureness(m *Made, sign string) string {
	switch {
	case slices.Contains(m.Sure, sign):
		return "sure"
	case slices.Contains(m.Maybe, sign):
		return "maybe"
	}
	return ""
}

// items counts how each item of each exercise came out. A choice is counted by
// its question, because sheets show different ones.
func (o *Office) items(marked []Marked) []site.ClassItem {
	var list []site.ClassItem
	at := map[string]int{}
	for i := range marked {
		m := &marked[i]
		for k := range m.Marks {
			key := m.Template.ID + "\t" + m.Title(k)
			n, ok := at[key]
			if !ok {
				n = len(list)
				at[key] = n
				list = append(list, site.ClassItem{Exercise: m.Template.Name, Ask: m.Title(k)})
			}
			switch m.Marks[k].Points {
			case exercise.MostPoints:
				list[n].Right++
			case 0:
				list[n].Wrong++
			default:
				list[n].Part++
			}
		}
	}
	for i := range list {
		c := &list[i]
		c.Bar = bar(c.Right, c.Part, c.Right+c.Part+c.Wrong)
	}
	return list
}

func (o *Office) learner(m *Marked) site.Report {
	points, most := m.Points()
	r := site.Report{Learner: m.Name, Sign: m.ID, Exercise: m.Template.Name, Points: points, Of: most}
	for i := range m.Marks {
		mark := &m.Marks[i]
		j := site.Judged{N: i + 1, Ask: m.Title(i), Answer: m.Answers[i], Verdict: mark.Verdict.String(), Own: mark.Own, Say: mark.Say}
		if mark.Points < exercise.MostPoints {
			j.Right = o.right(&m.Sheet, i)
		}
		var read []string
		for _, c := range mark.Causes {
			var says []string
			for _, slip := range c.Slips {
				says = append(says, o.Set.Slip(slip).Say)
				if page := o.page(slip); !slices.Contains(read, page) {
					read = append(read, page)
				}
			}
			j.Causes = append(j.Causes, strings.Join(says, " And: "))
		}
		j.Read = strings.Join(read, ", ")
		r.Items = append(r.Items, j)
	}
	return r
}

// Gradebook makes the file of points: a row for each sheet, with the verdict and
// the sure mistake of each item.
func (o *Office) Gradebook(marked []Marked, d Dialect) []byte {
	most := 0
	for i := range marked {
		most = max(most, len(marked[i].Marks))
	}
	head := []string{"learner", "name", "exercise", "seed", "points", "of", "percent"}
	for i := range most {
		head = append(head, "item "+strconv.Itoa(i+1), "mistake "+strconv.Itoa(i+1))
	}
	var b bytes.Buffer
	w := d.table(&b)
	_ = w.Write(head) // a Buffer does not fail
	for i := range marked {
		m := &marked[i]
		points, of := m.Points()
		line := []string{m.ID, m.Name, m.Template.ID, strconv.FormatUint(m.Seed, 10), strconv.Itoa(points), strconv.Itoa(of),
			d.number(strconv.FormatFloat(100*float64(points)/float64(max(of, 1)), 'f', 1, 64))}
		for k := range m.Marks {
			slip := ""
			if m.Marks[k].Verdict == exercise.Slipped {
				slip = o.Set.Slip(m.Marks[k].Causes[0].Slips[0]).ID
			}
			line = append(line, m.Marks[k].Verdict.String(), slip)
		}
		for len(line) < len(head) {
			line = append(line, "")
		}
		_ = w.Write(line)
	}
	w.Flush()
	return b.Bytes()
}
