package class

import (
	"strings"

	"columnbowl/calcwasm/exercise"
	"columnbowl/site"
)

// glances sets the right answers of a class in one table for each exercise, in
// the order in which the exercises come.
func (o *Office) glances(sheets []Sheet) []site.Glance {
	var list []site.Glance
	at := map[*exercise.Template]int{}
	for i := range sheets {
		s := &sheets[i]
		place, seen := at[s.Template]
		if !seen {
			place = len(list)
			at[s.Template] = place
			list = append(list, glance(s))
		}
		row := site.GlanceRow{Sign: s.ID, Learner: s.Name}
		for k := range s.Items {
			row.Answers = append(row.Answers, glanced(s, k))
		}
		list[place].Rows = append(list[place].Rows, row)
	}
	return list
}

func glance(s *Sheet) site.Glance {
	g := site.Glance{Exercise: s.Template.Name}
	for k := range s.Items {
		item := site.GlanceItem{N: k + 1}
		if s.Items[k].Kind == exercise.Number {
			item.Name, item.Unit = s.Title(k), s.Unit(k)
		}
		g.Items = append(g.Items, item)
	}
	return g
}

// glanced is a right answer in short: letters, or a number without the unit that
// stands over its column.
func glanced(s *Sheet, i int) string {
	item := &s.Items[i]
	if item.Kind != exercise.Number {
		return item.Answer
	}
	return strings.TrimSuffix(s.Amount(i, item.Right), "\u00a0"+s.Unit(i))
}
