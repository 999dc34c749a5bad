package bindery

import (
	"encoding/json"
	"strings"
	"testing"

	"columnbowl/calcwasm/answer"
	"columnbowl/calcwasm/picture"
	"columnbowl/site"
)

// aliveReply is what these tests read of the engine's reply to a page.
type aliveReply struct {
	Count map[site.State]int
	Terms []aliveTerm
}

type aliveTerm struct {
	ID                            string
	State                         site.State
	US, SI                        site.Number
	Work                          struct{ US, SI string }
	Relation, Note, Choice, Error string
}

// TestPrintedIsAlive asks the engine, the way a page does, for every sheet of
// the handbook: what was printed must be what the living page shows.
func TestPrintedIsAlive(t *testing.T) {
	b := loaded(t, realContent)
	w, err := prepare(b, testParts(t).Shells)
	if err != nil {
		t.Fatal(err)
	}
	desk := answer.New(b.Engine)
	for _, term := range b.Terms {
		view, err := w.termView(term)
		if err != nil {
			t.Fatal(err)
		}
		alive(t, desk, term.ID, view.(*site.Term).Sheet)
	}
	for _, ex := range w.examples {
		if ex.Home >= 0 {
			continue
		}
		e, err := w.reckoned(ex)
		if err != nil {
			t.Fatal(err)
		}
		alive(t, desk, ex.Title, w.chapterSheet(e, 1, ""))
	}
	view, err := w.chainView()
	if err != nil {
		t.Fatal(err)
	}
	alive(t, desk, "the chain", view.(*site.Chain).Sheet)
}

func alive(t *testing.T, desk *answer.Desk, page string, s *site.Sheet) {
	t.Helper()
	var ask strings.Builder
	for _, f := range s.Facts {
		ask.WriteString("fact\t" + f.Term + "\t" + joinUnit(f.Text) + "\n") // as it comes out of a link
	}
	var rows []site.Row
	for _, r := range s.Rows {
		if r.Heading == "" {
			rows = append(rows, r)
			ask.WriteString("show\t" + r.Term + "\n")
		}
	}
	var reply aliveReply
	if err := json.Unmarshal(desk.Answer([]byte(ask.String())), &reply); err != nil {
		t.Fatalf("%s: %v", page, err)
	}
	if len(reply.Terms) != len(rows) {
		t.Fatalf("%s: %d lines asked for, %d answered", page, len(rows), len(reply.Terms))
	}
	for i, r := range rows {
		sameLine(t, page, r, reply.Terms[i])
	}
	for state, n := range reply.Count {
		if s.Count[state] != n {
			t.Errorf("%s: %d %s printed, %d alive", page, s.Count[state], state, n)
		}
	}
}

func sameLine(t *testing.T, page string, r site.Row, a aliveTerm) {
	t.Helper()
	printed := [...]string{r.Term, string(r.State), r.Value.US.N, r.Value.SI.N, r.WorkUS, r.WorkSI, r.Relation, r.Note, r.Choice, ""}
	living := [...]string{a.ID, string(a.State), a.US.N, a.SI.N, a.Work.US, a.Work.SI, a.Relation, a.Note, a.Choice, a.Error}
	if r.State == site.Missing {
		printed[7] = r.Ask // the shell prints the question as a question
	}
	if !shownState(r.State) {
		printed[2], printed[3], living[2], living[3] = "", "", "", ""
	}
	if printed != living {
		t.Errorf("%s, %s:\nprinted %q\n  alive %q", page, r.Term, printed, living)
	}
}

// shownState says whether a line of this state prints a value.
func shownState(s site.State) bool {
	return s != site.Missing && s != site.Waits && s != site.NotApplicable && s != site.Several
}

// TestPicturesAreAlive draws the pictures of the chain through the engine's
// talk with a page: the living drawing is the printed one, byte for byte.
func TestPicturesAreAlive(t *testing.T) {
	w, err := prepare(loaded(t, realContent), testParts(t).Shells)
	if err != nil {
		t.Fatal(err)
	}
	desk := answer.New(w.engine)
	var ask strings.Builder
	for key, text := range w.words {
		if strings.HasPrefix(key, "picture.") {
			ask.WriteString("word\t" + key + "\t" + text + "\n")
		}
	}
	for _, f := range w.chain.facts {
		ask.WriteString("fact\t" + f.Term + "\t" + f.Text + "\n")
	}
	var printed string
	for _, k := range picture.Pictures {
		for _, form := range []string{picture.Term, picture.Wide, picture.Narrow} {
			printed += string(w.drawTwice(k, form, "p-"))
			for _, system := range []string{"us", "si"} {
				ask.WriteString("picture\t" + k.Name + "\t" + form + "\t" + system + "\tp-" + system + "-\n")
			}
		}
	}
	var reply struct{ Pictures []string }
	if err := json.Unmarshal(desk.Answer([]byte(ask.String())), &reply); err != nil {
		t.Fatal(err)
	}
	if len(reply.Pictures) != 6*len(picture.Pictures) {
		t.Fatalf("%d pictures came", len(reply.Pictures))
	}
	for i, p := range reply.Pictures {
		if !strings.Contains(printed, ">"+p+"<") || strings.Contains(p, "picture.") {
			t.Errorf("picture %d is not the printed one, or lacks a word:\n%.300s", i, p)
		}
	}
}
