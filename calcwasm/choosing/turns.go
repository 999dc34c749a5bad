package choosing

import (
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// Turn tells where inside the range of a fact another pump would be chosen.
// Everything else stands at its likely value.
type Turn struct {
	Fact   int       // the term whose value is a range
	At     []float64 // of it, in SI, rising
	Choice []Chosen  // one more than At
}

// Chosen is the family that comes first, with its motor.
type Chosen struct {
	Bowl   *reckon.Bowl // nil if none can do the duty
	Stages string
	US, SI string // the motor; "" if it is not known
}

const (
	turnPieces = 8 // pieces into which a range is cut; a pump chosen for less than one of them may be missed
	narrowings = 6 // halvings of a piece: a place is told to 1/500 of the range
	mostTurned = 4 // ranges that are looked at
)

// Turns ranks the families along each range of the facts. It costs some twenty
// rankings for each range: a page asks for it when the reader is at rest.
func Turns(book *reckon.Book, q reckon.Question) []Turn {
	plain := reckon.Question{Want: -1, Choose: q.Choose}
	var ranged []int
	for i, f := range common(book, q.Facts) {
		if f.Low < f.High && len(ranged) < mostTurned {
			ranged = append(ranged, i)
		}
		plain.Facts = append(plain.Facts, at(f, f.Likely))
	}
	var list []Turn
	for _, i := range ranged {
		if t := along(book, plain, i, common(book, q.Facts)[i]); len(t.At) > 0 {
			list = append(list, t)
		}
	}
	return list
}

// at is a fact with one value of its range.
func at(f reckon.Fact, x float64) reckon.Fact {
	f.Low, f.Likely, f.High = x, x, x
	return f
}

// along goes from the low end of a range to its high end.
func along(book *reckon.Book, q reckon.Question, i int, f reckon.Fact) Turn {
	first := func(x float64) Chosen {
		q.Facts[i] = at(f, x)
		return chosen(Rank(book, q))
	}
	defer func() { q.Facts[i] = at(f, f.Likely) }()
	x, now := f.Low, first(f.Low)
	t := Turn{Fact: f.Term, Choice: []Chosen{now}}
	for n := 1; n <= turnPieces; n++ {
		end := f.Low + (f.High-f.Low)*float64(n)/turnPieces
		if there := first(end); there != now {
			low, high := x, end
			for range narrowings {
				middle := low + (high-low)/2
				if c := first(middle); c == now {
					low = middle
				} else {
					high, there = middle, c
				}
			}
			t.At, t.Choice = append(t.At, high), append(t.Choice, there)
			now = there
		}
		x = end
	}
	return t
}

// chosen is what a ranking leads to: its first family, unless that is out.
func chosen(list []*Candidate) Chosen {
	if len(list) == 0 || list[0].Verdict() >= Out {
		return Chosen{}
	}
	c := list[0]
	return Chosen{Bowl: c.Bowl, Stages: c.Text("stages", formula.US), US: c.Text("motor-rating", formula.US), SI: c.Text("motor-rating", formula.SI)}
}

// Text says what is chosen where: “up to 840 gpm Lapwing 10 with 8 stages and a
// motor of 100 hp, above that …”.
func (t *Turn) Text(book *reckon.Book, s formula.System) string {
	words := make([]string, len(t.Choice))
	invented := ""
	for i, c := range t.Choice {
		words[i] = c.text(s)
		if c.Bowl != nil && c.Bowl.Origin == reckon.Invented {
			invented = " (" + reckon.Demonstration + ")"
		}
	}
	return reckon.Ladder(book, t.Fact, t.At, words, s) + invented
}

func (c Chosen) text(s formula.System) string {
	if c.Bowl == nil {
		return "none of the families"
	}
	text := c.Bowl.Name
	motor := c.US
	if s == formula.SI {
		motor = c.SI
	}
	var with []string
	if c.Stages != "" {
		with = append(with, c.Stages+" stages")
	}
	if motor != "" {
		with = append(with, "a motor of "+motor)
	}
	if len(with) > 0 {
		text += " with " + strings.Join(with, " and ")
	}
	return text
}
