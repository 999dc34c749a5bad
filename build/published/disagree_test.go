package published_test

import (
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"columnbowl/build/published"
	"columnbowl/calcwasm/answer"
)

const refusal = "The book does not compute this."

// A row that disagrees holds as long as the value lies apart, and says what is
// wrong otherwise. A refusal counts where the note tells of it; a fact too few
// or a contradiction never does.
func TestDisagreement(t *testing.T) {
	for row, want := range map[string]string{
		"a,lift = 100 ft; drop = 40 ft,fall,70 ft,1 ft,disagrees,a misprint":                    "",
		"a,lift = 100 ft; drop = 40 ft,fall,61.001 ft,1 ft,disagrees,a misprint":                "",
		"a,lift = 100 ft; drop = 40 ft,fall,61 ft,1 ft,disagrees,a misprint":                    "comes out as published: mark it read",
		"a,lift = 100 ft; drop = 40 ft,fall,60 ft,1 ft,disagrees,a misprint":                    "comes out as published: mark it read",
		"a,lift = 100 ft; drop = 200 ft,fall,-100 ft,1 ft,disagrees," + refusal:                 "",
		"a,lift = 100 ft; drop = 200 ft,fall,-100 ft,1 ft,disagrees,a misprint":                 "the note has to tell this with the words “The book does not compute”",
		"a,lift = 2000 ft; drop = 40 ft,fall,1960 ft,1 ft,disagrees," + refusal:                 "",
		"a,lift = 2000 ft; drop = 40 ft,fall,1960 ft,1 ft,disagrees,a misprint":                 "the note has to tell this",
		"a,lift = 100 ft; drop = 40 ft,fall,70 ft,1 ft,disagrees," + refusal:                    "says that the book does not compute it, and a value comes out",
		"a,lift = 100 ft,fall,60 ft,1 ft,disagrees," + refusal:                                  "nothing comes out: waits",
		"a,lift = 100 ft; drop = 40 ft; fall = 70 ft,share,10 %,1 %,disagrees," + refusal:       "the facts contradict each other",
		"a,lift = 100 ft; drop = 40 ft; fall = 70 ft,share,10 %,1 %,disagrees,another equation": "the facts contradict each other",
	} {
		o := run(t, row+"\n")[0]
		if o.Holds() != (want == "") || !strings.Contains(o.Problem, want) {
			t.Errorf("%s: told %q, want %q", row, o.Problem, want)
		}
	}
}

// What refuses is kept, for the reader of the page of sources.
func TestRefusalIsTold(t *testing.T) {
	for row, want := range map[string]string{
		"a,lift = 100 ft; drop = 200 ft,fall,-100 ft,1 ft,disagrees," + refusal: "outside what makes sense for it: 0 ft to 1000 ft",
		"a,lift = 2000 ft; drop = 40 ft,fall,1960 ft,1 ft,disagrees," + refusal: "“2000 ft” is outside what makes sense for lift",
		"a,lift = 100 ft; drop = 40 ft,fall,70 ft,1 ft,disagrees,a misprint":    "",
	} {
		o := run(t, row+"\n")[0]
		if (o.Refused == "") != (want == "") || !strings.Contains(o.Refused, want) || math.IsNaN(o.Value) != (want != "") {
			t.Errorf("%s: refused %q with value %v, want %q", row, o.Refused, o.Value, want)
		}
	}
}

// A row that disagrees has a reason, its file says where it was read, and only
// it may hold a fact outside the range of its term.
func TestDisagreementIsStrict(t *testing.T) {
	unread := strings.Replace(top, "# read in: a library\n", "", 1)
	for rows, want := range map[string]string{
		top + "a,lift = 100 ft; drop = 40 ft,fall,70 ft,1 ft,disagrees,\n":              "01_test.csv:5: A row that disagrees says why in its note.",
		top + "a,lift = 2000 ft; drop = 40 ft,fall,1960 ft,1 ft,read,\n":                "outside what makes sense for lift",
		top + "a,lift = 2000 psi; drop = 40 ft,fall,1960 ft,1 ft,disagrees,x\n":         "01_test.csv:5: lift: ",
		unread + "a,lift = 100 ft; drop = 40 ft,fall,70 ft,1 ft,disagrees,a misprint\n": "no line “# read in: …” says where",
		unread + "a,lift = 100 ft; drop = 40 ft,fall,60 ft,1 ft,table,\n":               "no line “# read in: …” says where",
	} {
		_, err := published.Load(fstest.MapFS{"01_test.csv": {Data: []byte(rows)}}, small(t))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: told %v, want %s", rows, err, want)
		}
	}
}

// Disagreements and cells of tables are counted apart, are no outside check, and
// a disagreement does not enter the largest deviation.
func TestCountedApart(t *testing.T) {
	set, err := load(t, top+"apart,lift = 100 ft; drop = 40 ft,fall,70 ft,1 ft,disagrees,a misprint\n"+
		"near,lift = 100 ft; drop = 40 ft,fall,60.5 ft,1 ft,derived,\n"+
		"cell,lift = 100 ft; drop = 40 ft,share,40 %,exact,table,\n")
	if err != nil {
		t.Fatal(err)
	}
	byTerm, all := set.Gather(set.Run(answer.New(small(t)).Answer))
	want := "published checks: 0 read in a source, 1 arithmetic, 0 from memory, 0 common practice; 1 table cells; 1 disagree, explained; from 1 files; " +
		"largest deviation 0.50 of the source's rounding (01_test.csv:6, near)"
	if all.String() != want {
		t.Errorf("told %q", all.String())
	}
	if e := byTerm["fall"]; e.Disagrees != 1 || e.Derived != 1 || e.Failed != 0 || e.Cases() != 2 || math.Abs(e.Largest-0.5) > 1e-9 {
		t.Errorf("fall: %+v", e)
	}
	computed, _ := set.Unchecked(byTerm)
	if got := strings.Join(computed, " "); got != "fall share warmth ratio" {
		t.Errorf("without an outside check: %s", got)
	}
}
