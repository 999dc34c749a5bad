package bindery

import (
	"html"
	"strconv"
	"strings"
	"testing"

	"columnbowl/site"
)

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

func TestRailOpensTheNearestEntries(t *testing.T) {
	ids := make([]string, 200)
	for i := range ids {
		ids[i] = strconv.Itoa(i)
	}
	link := func(id string) site.Link { return site.Link{Name: id} }
	for _, c := range []struct {
		id   string
		from int
	}{{"", 0}, {"0", 0}, {"100", 70}, {"199", 140}} {
		got := nearest(ids, c.id, link)
		if len(got) != mostSubs || got[0].Name != strconv.Itoa(c.from) {
			t.Errorf("on %q: %d entries from %s", c.id, len(got), got[0].Name)
		}
		for _, l := range got {
			if l.Here != (l.Name == c.id) {
				t.Errorf("on %q the entry %s is here: %v", c.id, l.Name, l.Here)
			}
		}
	}
	if got := nearest(ids[:mostSubs], "3", link); len(got) != mostSubs {
		t.Errorf("a list that fits is cut to %d", len(got))
	}
}
