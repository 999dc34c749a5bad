package proof

import (
	"fmt"
	"math"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/build/report"
	"columnbowl/calcwasm/exercise"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// seeds is how many sheets of each exercise are drawn.
const seeds = 1000

// leastKept is the smallest share of draws that may be kept: below it the facts
// of the exercise do not fit together.
const leastKept = 1.0 / 50

// reckonedAgain is how many sheets of each exercise are reckoned again by the network.
const reckonedAgain = 12

// exercises draws every exercise for many seeds.
func (c *checker) exercises() {
	set, found := c.book.Practice()
	c.found = append(c.found, found...)
	for _, e := range c.book.Exercises {
		if c.left(e.File) {
			continue
		}
		c.text(e)
		if set == nil {
			continue
		}
		if t := set.Find(e.ID); t != nil {
			c.summary.Exercises++
			c.exercise(set, t, e)
		}
	}
}

// text checks what an exercise says.
func (c *checker) text(e *book.Exercise) {
	for _, l := range e.Doc.Links {
		c.link(&e.Page, l)
	}
}

func (c *checker) exercise(set *exercise.Set, t *exercise.Template, e *book.Exercise) {
	tries := 0
	for seed := uint64(1); seed <= seeds; seed++ {
		sheet, why := set.Draw(t, seed)
		if sheet == nil {
			c.atDraw(e, fmt.Sprintf("Of seed %d no sheet comes: %d draws were thrown away. The last one because of this: %s.", seed, exercise.MostTries, strings.TrimSuffix(spaced(why), ".")))
			return
		}
		tries += sheet.Tries
		if seed <= reckonedAgain && !c.sameAsNetwork(set, sheet, e) {
			return
		}
	}
	share := float64(seeds) / float64(tries)
	if share < leastKept {
		c.atDraw(e, fmt.Sprintf("Only %.1f %% of the draws can be kept, and at least %.0f %% should be: narrow the ranges, so that the facts fit together and the mistakes stand apart.", 100*share, 100*leastKept))
		return
	}
	c.summary.Notes = append(c.summary.Notes, report.Diagnostic{Severity: report.Info, File: e.File, Off: report.WholeFile,
		Message: fmt.Sprintf("%d sheets were drawn; %.0f %% of the draws could be kept.", seeds, 100*share)})
}

// atDraw tells an error at the block that draws the facts.
func (c *checker) atDraw(e *book.Exercise, message string) {
	for _, k := range e.Doc.Blocks {
		if k.Kind == markdown.Draw {
			c.at(&e.Page, k.Span, message, "")
			return
		}
	}
	c.at(&e.Page, e.Where("name"), message, "")
}

// sameAsNetwork reckons a sheet again from its facts, by the network itself.
func (c *checker) sameAsNetwork(set *exercise.Set, sheet *exercise.Sheet, e *book.Exercise) bool {
	q := reckon.Question{Want: -1}
	for _, f := range sheet.Facts() {
		q.Facts = append(q.Facts, reckon.Fact{Term: f.Term, Low: f.Value, Likely: f.Value, High: f.Value})
	}
	res := set.Book.Reckon(q)
	for i := range sheet.Items {
		item := &sheet.Items[i]
		if item.Kind != exercise.Number {
			continue
		}
		have := res.Values[item.Term].Likely
		if !(math.Abs(have-item.Right) <= alike*math.Abs(item.Right)) {
			c.atDraw(e, fmt.Sprintf("Of seed %d the sheet has %s = %s, and the network finds %s.", sheet.Seed, c.id(item.Term),
				spaced(set.Book.Format(item.Term, item.Right, formula.US)), spaced(set.Book.Format(item.Term, have, formula.US))))
			return false
		}
	}
	return true
}
