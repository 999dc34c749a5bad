package class

import (
	"fmt"
)

// Learner is one person of a class.
type Learner struct{ ID, Name string }

// mostLearners is the largest class: seeds of learners end in three digits.
const mostLearners = 999

// ReadClass reads a class: a file with the columns “learner”, a short sign such
// as 07, and “name”.
func ReadClass(file string, text []byte) ([]Learner, []Fault) {
	t, faults := read(file, text)
	col, more := t.need("learner", "name")
	if faults = append(faults, more...); len(more) > 0 {
		return nil, faults
	}
	var list []Learner
	seen := map[string]int{}
	for i := range t.rows {
		r := &t.rows[i]
		l := Learner{r.get(col[0]), r.get(col[1])}
		switch {
		case l.ID == "":
			faults = append(faults, Fault{file, r.line, r.at(col[0]), "This learner has no sign in the column “learner”."})
			continue
		case seen[l.ID] > 0:
			faults = append(faults, Fault{file, r.line, r.at(col[0]), fmt.Sprintf("The sign “%s” is taken by the learner in line %d.", l.ID, seen[l.ID])})
			continue
		case len(list) == mostLearners:
			return list, append(faults, Fault{file, r.line, 1, fmt.Sprintf("A class has %d learners at most: make two of it.", mostLearners)})
		case l.Name == "":
			l.Name = l.ID
		}
		seen[l.ID] = r.line
		list = append(list, l)
	}
	return list, faults
}

// SeedOf is the seed of a learner's sheet: that of the class, then three digits
// for the place in the class, so that a sheet can be made again by hand.
func SeedOf(class uint64, place int) uint64 { return class*1000 + uint64(place+1) }
