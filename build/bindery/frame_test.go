package bindery

import (
	"html"
	"strings"
	"testing"

	"columnbowl/calcwasm/drawing"
	"columnbowl/site"
)

// TestSlimRailHasNoEntries holds what slimRail counts on: the narrow rail is
// the same whatever stands below the place in force, and the wide one is not.
func TestSlimRailHasNoEntries(t *testing.T) {
	places := func(subs ...drawing.Sub) []drawing.Place {
		return []drawing.Place{{ID: "a", Name: "A", Href: "a.html", Depth: 0.2, Lit: true, Subs: subs}, {ID: "b", Name: "B", Href: "b.html", Depth: 0.8}}
	}
	some := places(drawing.Sub{Name: "x", Href: "x.html", Here: true}, drawing.Sub{Name: "y", Href: "y.html"})
	if drawnRail(places(), drawing.RailBalloons, "s-") != drawnRail(some, drawing.RailBalloons, "s-") {
		t.Error("the narrow rail shows entries: slimRail must not share it between pages")
	}
	if drawnRail(places(), drawing.RailWords, "s-") == drawnRail(some, drawing.RailWords, "s-") {
		t.Error("the wide rail does not show entries")
	}
}

// TestFragmentIsTheSheets compares the links that the bindery writes with the
// facts that a sheet carries: one form.
func TestFragmentIsTheSheets(t *testing.T) {
	facts := []site.Fact{{Term: "static-level", Text: "140 ft"}, {Term: "column-size", Text: "6 5/8 in"}, {Term: "shaft-diameter", Text: "1 7/16"},
		{Term: "build", Text: "oil-lubricated"}, {Term: "capacity", Text: "180 to 200 m3/h"}, {Term: "temperature", Text: "-5 °C"}}
	const want = "static-level:140ft,column-size:6%205%2F8in,shaft-diameter:1%207%2F16,build:oil-lubricated,capacity:180%20to%20200m3%2Fh,temperature:-5%C2%B0C"
	if got := fragment(facts, "total-head"); got != "#facts="+want+"&want=total-head" {
		t.Errorf("the fragment is %s", got)
	}
	shells, err := site.Shells()
	if err != nil {
		t.Fatal(err)
	}
	sheet, err := shells.Piece(site.Sheet{ID: "s", Title: "t", Facts: facts})
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(html.UnescapeString(string(sheet)), `facts="`+want+`"`) {
		t.Errorf("the sheet writes its facts in another way:\n%s", sheet)
	}
}

func TestFirstSentence(t *testing.T) {
	e := bind(t, tinyContent, Options{})
	page, _ := e.File("terms/index.html")
	text := string(page)
	if !strings.Contains(text, "The pumping level is the depth of the water while the pump runs.") || strings.Contains(text, "The pump lifts from here") {
		t.Error("the list of terms does not show first sentences alone")
	}
}

func TestSpread(t *testing.T) {
	list := []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9}
	got := spread(list, 5)
	if len(got) != 5 || got[4] != 9 || got[0] != 1 {
		t.Errorf("spread gives %v", got)
	}
	if got := spread(list[:3], 5); len(got) != 3 {
		t.Errorf("spread of a short list gives %v", got)
	}
}

func TestArrangeRefusesTwins(t *testing.T) {
	e := &Edition{Files: []File{{"terms/Lift.html", nil}, {"terms/lift.html", nil}}}
	if err := e.arrange(); err == nil || !strings.Contains(err.Error(), "rename") {
		t.Errorf("two pages of one name passed: %v", err)
	}
}
