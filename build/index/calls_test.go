package index_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"columnbowl/calcwasm/ask"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// fewActions is how many a call may take.
const fewActions = 15

// call is the work of one file of testdata/calls; its lines are described there.
type call struct {
	*examiner
	t        *testing.T
	q        reckon.Question
	readings []ask.Reading // of the last sentence
	taken    []bool
	said     string
	actions  int
	result   *reckon.Result // of all facts, once the call is over
}

// TestCalls takes ten calls from what the customer says to the sheet.
func TestCalls(t *testing.T) {
	files, err := filepath.Glob("../../testdata/calls/*.txt")
	if err != nil || len(files) != 10 {
		t.Fatalf("%d calls, %v", len(files), err)
	}
	e := newExaminer(t, handbook(t))
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			want, _ := e.book.Find("total-head")
			c := &call{examiner: e, t: t, q: reckon.Question{Want: want, Choose: map[int]string{}}}
			for line := range strings.Lines(string(text)) {
				if verb, rest, ok := strings.Cut(strings.TrimSpace(line), ":"); ok && verb[0] != '#' {
					c.line(verb, strings.TrimSpace(rest))
				}
			}
			if c.actions++; c.actions >= fewActions { // printing
				t.Errorf("%d actions", c.actions)
			}
		})
	}
}

func (c *call) line(verb, rest string) {
	switch verb {
	case "customer":
		c.actions++
	case "say":
		c.say(rest)
	case "take":
		c.take(rest)
	case "type":
		c.actions += 2
		id, value, _ := strings.Cut(rest, " = ")
		c.put(id, value)
	case "facts":
		c.facts(items(rest, ";"))
	case "expect":
		for _, x := range items(rest, ";") {
			c.expect(x)
		}
	case "fires", "quiet":
		for _, id := range items(rest, ";") {
			c.fires(id, verb == "fires")
		}
	default:
		c.t.Errorf("no such line: %q", verb)
	}
}

// say reads a sentence and puts on the sheet what is sure in it.
func (c *call) say(sentence string) {
	c.actions += 2
	c.said, c.readings = sentence, c.reader.Read(sentence)
	c.taken = make([]bool, len(c.readings))
	sure := 0
	for _, r := range c.readings {
		if r.State == ask.Sure {
			sure++
			c.put(c.book.Terms[r.Candidates[0].Term].ID, r.Candidates[0].Value)
		}
	}
	c.actions += min(sure, 1)
}

// take answers the question for a piece of the sentence.
func (c *call) take(text string) {
	c.actions++
	piece, id, _ := strings.Cut(text, " = ")
	for i, r := range c.readings {
		if r.State != ask.Asked || c.taken[i] || c.said[r.From:r.To] != piece {
			continue
		}
		c.taken[i] = true
		for k, cand := range r.Candidates {
			if c.book.Terms[cand.Term].ID == id {
				if k >= offered {
					c.t.Errorf("%s is only the %dth meaning of %q", id, k+1, piece)
				}
				c.put(id, cand.Value)
				return
			}
		}
	}
	c.t.Errorf("%q asks nothing that %s would answer: %+v", piece, id, c.readings)
}

// offered are the meanings of a piece that the desk shows.
const offered = 4

func (c *call) put(id, value string) {
	term, ok := c.book.Find(id)
	f, err := c.book.Read(term, value)
	if !ok || err != nil {
		c.t.Fatalf("%s = %s: %v", id, value, err)
	}
	c.q.Facts = append(slices.DeleteFunc(c.q.Facts, func(g reckon.Fact) bool { return g.Term == term }), f)
}

// facts compares the facts of the sheet with all that it must have.
func (c *call) facts(list []string) {
	for _, text := range list {
		if !slices.ContainsFunc(c.q.Facts, func(f reckon.Fact) bool { return c.sameFact(f, text) }) {
			c.t.Errorf("not on the sheet: %s", text)
		}
	}
	for _, f := range c.q.Facts {
		if !slices.ContainsFunc(list, func(text string) bool { return c.sameFact(f, text) }) {
			c.t.Errorf("on the sheet, and should not be: %s = %s", c.book.Terms[f.Term].ID, c.book.Format(f.Term, f.Likely, formula.US))
		}
	}
	c.result = c.book.Reckon(c.q)
	for _, clash := range c.result.Clashes {
		c.t.Errorf("clash: %s", c.result.ClashText(&clash, formula.US))
	}
}

func (c *call) sameFact(f reckon.Fact, text string) bool {
	id, value, _ := strings.Cut(text, " = ")
	term, ok := c.book.Find(id)
	g, err := c.book.Read(term, value)
	if !ok || err != nil {
		c.t.Fatalf("%s: %v", text, err)
	}
	return term == f.Term && near(f.Low, g.Low) && near(f.Likely, g.Likely) && near(f.High, g.High)
}

// expect compares a value, or both ends of a range, in the digits written.
func (c *call) expect(text string) {
	id, value, _ := strings.Cut(text, " = ")
	term, ok := c.book.Find(id)
	if !ok {
		c.t.Fatalf("no term %q", id)
	}
	number, symbol, _ := strings.Cut(value, " ")
	other := ""
	if low, rest, two := strings.Cut(value, " to "); two {
		number = low
		other, symbol, _ = strings.Cut(rest, " ")
	}
	u, ok := unit.Lookup(symbol)
	if !ok {
		c.t.Fatalf("no unit in %q", text)
	}
	v := &c.result.Values[term]
	if other == "" {
		c.agrees(text, u.FromSI(v.Likely), number)
		return
	}
	c.agrees(text, u.FromSI(v.Low), number)
	c.agrees(text, u.FromSI(v.High), other)
}

func (c *call) agrees(text string, have float64, digits string) {
	want, _, ok := unit.NumberAt(digits)
	_, places, _ := strings.Cut(digits, ".")
	half := 0.5 * math.Pow(10, -float64(len(places)))
	if !ok || !(math.Abs(have-want) <= half*1.001) {
		c.t.Errorf("%s, but the network has %g", text, have)
	}
}

func (c *call) fires(id string, want bool) {
	for _, s := range c.result.Cautions {
		if c.book.Cautions[s.Caution].ID == id || c.book.Terms[c.book.Cautions[s.Caution].Home].ID+"/"+c.book.Cautions[s.Caution].ID == id {
			if (s.Truth == formula.True) != want {
				c.t.Errorf("the caution %s: %v", id, s.Truth)
			}
			return
		}
	}
	c.t.Errorf("no caution %s", id)
}
