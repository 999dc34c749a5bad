package bindery

import (
	"strings"
	"testing"

	"columnbowl/build/markdown"
	"columnbowl/calcwasm/reckon"
)

func bowlsOf(t *testing.T, items ...[]string) *work {
	t.Helper()
	w := &work{engine: &reckon.Book{}}
	for _, list := range items {
		b, problems := reckon.ReadBowl("a-bowl", list)
		if len(problems) > 0 {
			t.Fatalf("%+v", problems)
		}
		w.engine.Bowls = append(w.engine.Bowls, b)
	}
	return w
}

// A column in one unit has it in its heading; where units differ each cell has
// its own. What a family lacks is left empty.
func TestBowlTables(t *testing.T) {
	us := []string{"name A < B", "origin invented", "speed 1770 rpm", "point 0 gpm;63.0 ft;0 %", "point 400 gpm;59.3 ft;60.8 %", "point 800 gpm;45.0 ft;81.0 %"}
	si := []string{"name C", "origin measured", "speed 1460 rpm", "point 10 m3/h;20 m", "point 20 m3/h;18 m", "point 30 m3/h;15 m"}
	w := bowlsOf(t, us)
	for head, want := range map[string]string{
		markdown.BowlSummary: "family|speed, rpm|best flow, gpm|head of one stage there, ft|efficiency there, %|outside diameter|origin||A &lt; B|1770|800|45.0|81.0||invented",
		markdown.BowlPoints:  "family|capacity, gpm|head, ft|efficiency, %|NPSH required||A &lt; B|0|63.0|0|||A &lt; B|400|59.3|60.8|||A &lt; B|800|45.0|81.0|",
	} {
		if got := cells(t, w, head); got != want {
			t.Errorf("%s is\n%s, want\n%s", head, got, want)
		}
	}
	if got := cells(t, bowlsOf(t, us, si), markdown.BowlPoints); !strings.HasPrefix(got, "family|capacity|head|efficiency, %|NPSH required||A &lt; B|0\u00a0gpm|63.0\u00a0ft|0|||") ||
		!strings.HasSuffix(got, "||C|30\u00a0m³/h|15\u00a0m||") {
		t.Errorf("of two systems of units: %s", got)
	}
	if _, err := w.bowlTable(&markdown.Block{Kind: markdown.Bowls, Head: "all"}); err == nil {
		t.Error("an unknown table is made")
	}
	if text, err := w.bowlTable(&markdown.Block{Kind: markdown.Worked}); text != "" || err != nil {
		t.Errorf("a worked example becomes %q, %v", text, err)
	}
}

// cells are the cells of a table, rows set off by an empty one.
func cells(t *testing.T, w *work, head string) string {
	t.Helper()
	text, err := w.bowlTable(&markdown.Block{Kind: markdown.Bowls, Head: head})
	if err != nil {
		t.Fatal(err)
	}
	var rows []string
	for _, row := range strings.Split(text, "<tr>")[1:] {
		var list []string
		for _, tag := range []string{"th", "td"} {
			for _, c := range strings.Split(row, "<"+tag+">")[1:] {
				c, _, _ = strings.Cut(c, "</"+tag+">")
				list = append(list, c)
			}
		}
		rows = append(rows, strings.Join(list, "|"))
	}
	return strings.Join(rows, "||")
}

// The handbook's page of the families shows every point that the network has.
func TestFamiliesPage(t *testing.T) {
	b := loaded(t, realContent)
	w, err := prepare(b, testParts(t).Shells)
	if err != nil {
		t.Fatal(err)
	}
	body, err := w.pieces(b.TermByID["bowl-family"].Doc, "", 0, len(b.TermByID["bowl-family"].Doc.Pieces))
	if err != nil {
		t.Fatal(err)
	}
	points := 0
	for _, bowl := range b.Engine.Bowls {
		for _, p := range bowl.Points {
			row := "<td>" + bowl.Name + "</td>\n<td>" + p.Capacity.Text + "</td>\n<td>" + p.Head.Text + "</td>\n"
			if !strings.Contains(string(body), row) {
				t.Errorf("%s lacks the point at %s", bowl.Name, p.Capacity)
			}
			points++
		}
	}
	if points < 36 {
		t.Errorf("only %d points", points)
	}
}
