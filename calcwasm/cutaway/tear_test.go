package cutaway_test

import (
	"testing"

	"columnbowl/calcwasm/cutaway"
)

// The paper of the lower tear of a column sheet covers the ends of the pipes
// whole, and nothing of the cut across below it: no piece
// begins under the paper or crosses its lower edge.
func TestTearsLeaveTheCutAcrossFree(t *testing.T) {
	seen := 0
	sheets(t, []int{3}, func(name string, _ cutaway.Pump, v cutaway.View, d cutaway.Drawing) {
		if v.Sheet != cutaway.Column {
			return
		}
		var covers, pieces [][]pt
		parse(t, d.Scene.SVG()).walk(func(e node) {
			switch {
			case e.XMLName.Local != "path":
			case e.is("cov"):
				covers = append(covers, flat(e.attr("d"))...)
			case e.is("cut"), e.is("sol"), e.is("shaft"), e.is("fl"): // bodies; their hatches go where they go
				pieces = append(pieces, flat(e.attr("d"))...)
			}
		})
		for _, c := range covers {
			from, to := box(c)
			if from.y < 0 {
				continue // the upper tear: its paper reaches off the sheet
			}
			for _, p := range pieces {
				lo, hi := box(p)
				crosses, hidden := lo.y < to.y && hi.y > to.y, lo.y > from.y+8 && lo.y < to.y
				if (crosses || hidden) && hi.x > from.x && lo.x < to.x {
					t.Errorf("%s: a piece from %.0f to %.0f px lies under paper from %.0f to %.0f px", name, lo.y, hi.y, from.y, to.y)
				}
			}
			seen++
		}
	})
	if seen == 0 {
		t.Error("no column sheet was torn")
	}
}
