package answer

import (
	"encoding/json"
	"strings"
	"testing"
)

type pairText struct{ US, SI string }

type compared struct {
	ID                  string
	Before, After, Move pairText
}

// A comparison changes those of its terms that are facts, and tells before,
// after and the difference; without such a fact it says which would do.
func TestComparison(t *testing.T) {
	d := desk(t)
	var r struct {
		Compare struct {
			Problem        string
			Needs          []string
			Changed, Lines []compared
		}
	}
	ask := func(request string) {
		r.Compare.Problem, r.Compare.Needs, r.Compare.Changed, r.Compare.Lines = "", nil, nil, nil
		if err := json.Unmarshal(d.Answer([]byte(request)), &r); err != nil {
			t.Fatal(err)
		}
	}
	ask("fact\tstatic-level\t180 ft\nfact\tdrawdown\t40 ft\nshow\tpumping-level\nshift\tstatic-level\t50 ft\nshift\tpumping-level\t50 ft")
	if c := r.Compare; len(c.Changed) != 1 || c.Changed[0].ID != "static-level" || len(c.Lines) != 1 || c.Lines[0].Before.US != "220\u00a0ft" && c.Lines[0].Before.US != "220 ft" ||
		plain(c.Lines[0].After.US) != "270 ft" || plain(c.Lines[0].Move.US) != "+50 ft" || plain(c.Lines[0].Move.SI) != "+15.24 m" {
		t.Errorf("%+v", c)
	}
	ask("fact\tdrawdown\t40 ft\nshift\tstatic-level\t50 ft")
	if len(r.Compare.Needs) != 1 || r.Compare.Needs[0] != "static-level" {
		t.Errorf("%+v", r.Compare)
	}
	ask("fact\tstatic-level\t180 ft\nshift\tstatic-level\t50 cows")
	if r.Compare.Problem == "" {
		t.Errorf("%+v", r.Compare)
	}
	ask("fact\tstatic-level\t180 ft\nshift\tstatic-level\t90000 ft")
	if r.Compare.Problem == "" {
		t.Errorf("%+v", r.Compare)
	}
}

// The chain behind a number goes from the given facts to it.
func TestWhy(t *testing.T) {
	d := desk(t)
	var r struct {
		Why []struct{ ID, State, US string }
	}
	if err := json.Unmarshal(d.Answer([]byte("fact\tstatic-level\t180 ft\nfact\tdrawdown\t40 ft\nwhy\tpumping-level")), &r); err != nil {
		t.Fatal(err)
	}
	if len(r.Why) != 3 || r.Why[0].State != "given" || r.Why[2].ID != "pumping-level" || plain(r.Why[2].US) != "pumping level = 180 ft + 40 ft = 220 ft" {
		t.Errorf("%+v", r.Why)
	}
}

func plain(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }
