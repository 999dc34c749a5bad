package bindery

import (
	"slices"
	"strings"
	"testing"

	"columnbowl/calcwasm/answer"
	"columnbowl/site"
)

// deskOf makes the page of the desk of the real book.
func deskOf(t *testing.T) (*work, *site.Desk) {
	t.Helper()
	parts := testParts(t)
	w, err := prepare(loaded(t, realContent), parts.Shells)
	if err != nil {
		t.Fatal(err)
	}
	view, err := w.deskView()
	if err != nil {
		t.Fatal(err)
	}
	return w, view.(*site.Desk)
}

// TestDeskOpensEmpty: no line has a fact of a customer, and every question has
// its line, its question and a reason.
func TestDeskOpensEmpty(t *testing.T) {
	_, d := deskOf(t)
	if !d.Sheet.Desk || len(d.Sheet.Facts) > 0 || d.Sheet.Count[site.Given] > 0 {
		t.Errorf("the sheet does not open empty: %v", d.Sheet.Facts)
	}
	lines := map[string]site.State{}
	for _, r := range d.Sheet.Rows {
		lines[r.Term] = r.State
	}
	for _, a := range d.Ask {
		if a.Ask == "" || a.Why == "" || lines[a.Term] == "" {
			t.Errorf("%s is asked without question, reason or line: %+v", a.Term, a)
		}
	}
	if lines[d.Sheet.Want] != site.Waits {
		t.Errorf("the duty of an empty sheet is %q", lines[d.Sheet.Want])
	}
}

// TestDeskDutyNeedsNoBowl: the example gives the duty although nothing on the
// sheet says anything of a bowl.
func TestDeskDutyNeedsNoBowl(t *testing.T) {
	w, d := deskOf(t)
	request := []string{"want\t" + d.Sheet.Want, "show\t" + d.Sheet.Want}
	for _, f := range d.Example {
		if strings.Contains(f.Term, "bowl") || strings.Contains(f.Term, "stage") {
			t.Errorf("the example speaks of the bowls: %v", f)
		}
		request = append(request, "fact\t"+f.Term+"\t"+f.Text)
	}
	reply := string(answer.New(w.engine).Answer([]byte(strings.Join(request, "\n"))))
	// Job 1: 195 ft + 2 ft + 138.6 ft at the discharge, 6.384 ft and 0.61 ft lost
	if !strings.Contains(reply, `"n":"342.6"`) {
		t.Errorf("the total head of the example is not 342.6 ft: %.300s", reply)
	}
}

// TestDeskAsksInOrder holds the order of asking to that of the sheet's groups
// where it matters: levels before flows, flows before pressures.
func TestDeskAsksInOrder(t *testing.T) {
	_, d := deskOf(t)
	at := func(term string) int {
		return slices.IndexFunc(d.Ask, func(a site.DeskAsk) bool { return a.Term == term })
	}
	order := []string{"casing-inside-diameter", "static-level", "sand-content", "capacity", "delivery-pressure", "line-voltage"}
	for i := 1; i < len(order); i++ {
		if at(order[i-1]) < 0 || at(order[i]) < at(order[i-1]) {
			t.Errorf("%s (%d) is not asked before %s (%d)", order[i-1], at(order[i-1]), order[i], at(order[i]))
		}
	}
}
