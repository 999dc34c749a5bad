package published_test

import (
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"columnbowl/build/published"
	"columnbowl/calcwasm/answer"
	"columnbowl/calcwasm/reckon"
)

// small is a book of seven terms.
func small(t testing.TB) *reckon.Book {
	t.Helper()
	quantity := func(id, us, si, from, to string) reckon.TermSource {
		return reckon.TermSource{ID: id, Name: id, US: us, SI: si, From: from, To: to, Ask: "How much?"}
	}
	b, problems := reckon.Load(&reckon.Source{ID: "small", Title: "small", Terms: []reckon.TermSource{
		quantity("lift", "ft", "m", "0 ft", "1000 ft"),
		quantity("drop", "ft", "m", "0 ft", "1000 ft"),
		quantity("fall", "ft", "m", "0 ft", "1000 ft"),
		quantity("share", "%", "%", "0 %", "100 %"),
		quantity("warmth", "degF", "degC", "32 degF", "212 degF"),
		quantity("ratio", "1", "1", "0", "10"),
		{ID: "kind", Name: "kind", Kind: "choice", Values: []string{"old", "old", "new", "new"}},
	}, Blocks: []reckon.Block{
		{Term: "fall", Kind: reckon.FormulaBlock, Body: "fall = lift - drop"},
		{Term: "share", Kind: reckon.FormulaBlock, Body: "share = drop / lift"},
		{Term: "ratio", Kind: reckon.FormulaBlock, Body: "ratio = lift / fall"},
		{Term: "warmth", Kind: reckon.EstimateBlock, Head: "near", Body: "warmth = 300 K + 0 K * ratio\nsay \"a test\""},
		{Term: "warmth", Kind: reckon.EstimateBlock, Head: "far", Body: "warmth = 310 K + 0 K * ratio\nsay \"a test\""},
	}})
	if len(problems) > 0 {
		t.Fatalf("%+v", problems)
	}
	return b
}

const top = "# source: A book, Table 1, p. 2\n# read in: a library\n# note: a note\ncase,given,term,expect,tolerance,mark,note\n"

func load(t *testing.T, rows string) (*published.Set, error) {
	t.Helper()
	return published.Load(fstest.MapFS{"01_test.csv": {Data: []byte(rows)}}, small(t))
}

func run(t *testing.T, rows string) []published.Outcome {
	t.Helper()
	set, err := load(t, top+rows)
	if err != nil {
		t.Fatal(err)
	}
	return set.Run(answer.New(small(t)).Answer)
}

// Deviations are counted in units of the tolerance, up to and with 1 a case holds.
func TestDeviation(t *testing.T) {
	for _, c := range []struct {
		row  string
		want float64
	}{
		{"a,lift = 100 ft; drop = 40 ft,fall,60 ft,0.5 ft,read,", 0},
		{"a,lift = 100 ft; drop = 40 ft,fall,60.5 ft,0.5 ft,read,", 1},
		{"a,lift = 100 ft; drop = 40 ft,fall,61 ft,0.5 ft,read,", 2},
		{"a,lift = 100 ft; drop = 40 ft,fall,61 ft,2 ft,derived,", 0.5},
		{"a,lift = 100 ft; drop = 40 ft,fall,50 ft,20 %,read,", 1},
		{"a,lift = 100 ft; drop = 40 ft,fall,18.288 m,exact,read,", 0},
		{"a,lift = 100 ft; drop = 40 ft,fall,18.289 m,exact,read,", math.Inf(1)},
		{"a,lift = 100 ft; drop = 40 ft,share,41 %,1 %,read,", 1},            // points, not a share of 41
		{"a,lift = 100 ft; drop = 0 ft,warmth,27.85 degC,0.5 degC,read,", 2}, // the estimate gives 300 K = 26.85 °C
		{"a,lift = 100 ft; drop = 0 ft; choose warmth = far,warmth,36.85 degC,0.5 degC,read,", 0},
		{"a,lift = 100 ft; drop = 50 ft,ratio,2.5,0.5,read,", 1},
	} {
		o := run(t, c.row+"\n")[0]
		if !(math.Abs(o.Deviation-c.want) < 1e-6) && o.Deviation != c.want {
			t.Errorf("%s: deviation %v, want %v (%s)", c.row, o.Deviation, c.want, o.Problem)
		}
		if o.Holds() != (c.want <= 1) {
			t.Errorf("%s: holds %v: %s", c.row, o.Holds(), o.Problem)
		}
	}
}

// A case that cannot be computed, or whose facts contradict, fails and says why.
func TestNothingComesOut(t *testing.T) {
	for row, want := range map[string]string{
		"a,lift = 100 ft,fall,60 ft,0.5 ft,read,":                          "nothing comes out: waits (waits for drop); it would with drop, or with share",
		"a,lift = 100 ft; drop = 200 ft,fall,60 ft,0.5 ft,read,":           "nothing comes out: outside",
		"a,lift = 100 ft; drop = 40 ft; fall = 70 ft,share,40 %,1 %,read,": "the facts contradict each other",
		"a,lift = 100 ft; drop = 40 ft,fall,61 ft,0.5 ft,read,":            "60 ft comes out, published is 61 ft within 0.5 ft (2 times the tolerance)",
	} {
		if o := run(t, row+"\n")[0]; o.Holds() || !strings.Contains(o.Problem, want) {
			t.Errorf("%s: told %q, want %q", row, o.Problem, want)
		}
	}
	set, err := load(t, top+"a,lift = 100 ft; drop = 40 ft,fall,61 ft,0.5 ft,read,\n")
	if err != nil {
		t.Fatal(err)
	}
	if o := set.Run(func([]byte) []byte { return []byte("no JSON") })[0]; o.Holds() {
		t.Error("a reply that cannot be read passes")
	}
}

// Everything that is not understood is told with its file and line.
func TestStrict(t *testing.T) {
	good := "a,lift = 100 ft; drop = 40 ft,fall,60 ft,0.5 ft,read,\n"
	for rows, want := range map[string]string{
		"case,given\n": "01_test.csv:1: The first row is case,given,term,expect,tolerance,mark,note.",
		"":             "01_test.csv: The file has no rows.",
		strings.Replace(top, "# source: A book, Table 1, p. 2\n", "", 1) + good: "01_test.csv: The file names no source",
		strings.Replace(top, "# read in: a library\n", "", 1) + good:            "01_test.csv: Rows are marked read, disagrees or table, and no line",
		"# publisher: X\n" + top + good:                                         "01_test.csv:1: “publisher” is no key",
		"# note:\n" + top + good:                                                "01_test.csv:1: A comment line says",
		top + good + good:                                                       "01_test.csv:6: The case “a” stands in this file twice.",
		top + "a,lift = 100 ft,fall,60 ft,read,\n":                              "01_test.csv:5: This row has 6 fields and not 7",
		top + "\"a,lift\n":                                                      "01_test.csv:5: This is no row of a CSV file",
		top + "a,lift = 100 ft,fal,60 ft,1 ft,read,\n":                          "01_test.csv:5: There is no term “fal”. Did you mean fall?",
		top + "a,lft = 100 ft,fall,60 ft,1 ft,read,\n":                          "01_test.csv:5: There is no term “lft”. Did you mean lift?",
		top + "a,lift 100 ft,fall,60 ft,1 ft,read,\n":                           "01_test.csv:5: “lift 100 ft” is no fact",
		top + "a,lift = 100 psi,fall,60 ft,1 ft,read,\n":                        "01_test.csv:5: lift: ",
		top + "a,lift = 9000 ft,fall,60 ft,1 ft,read,\n":                        "outside what makes sense",
		top + "a,lift = 100 ft; lift = 90 ft,fall,60 ft,1 ft,read,\n":           "01_test.csv:5: “lift” is given twice.",
		top + "a,fall = 100 ft,fall,60 ft,1 ft,read,\n":                         "01_test.csv:5: “fall” is given, so it cannot be expected.",
		top + "a,lift = 100 ft,fall,60 psi,1 ft,read,\n":                        "01_test.csv:5: The expected value “60 psi” is a pressure, and fall is a length.",
		top + "a,lift = 100 ft,fall,sixty,1 ft,read,\n":                         "01_test.csv:5: The expected value “sixty” cannot be read",
		top + "a,lift = 100 ft,fall,60 ft,1 psi,read,\n":                        "01_test.csv:5: The tolerance “1 psi” is a pressure",
		top + "a,lift = 100 ft,fall,60 ft,0 ft,read,\n":                         "01_test.csv:5: The tolerance “0 ft” leaves no room",
		top + "a,lift = 100 ft,fall,60 ft,much %,read,\n":                       "01_test.csv:5: The tolerance “much %” cannot be read as a share.",
		top + "a,lift = 100 ft,fall,60 ft,1 ft,seen,\n":                         "01_test.csv:5: “seen” is no mark",
		top + ",lift = 100 ft,fall,60 ft,1 ft,read,\n":                          "01_test.csv:5: The case has no name.",
		top + "a,lift = 100 ft,kind,60 ft,1 ft,read,\n":                         "01_test.csv:5: “kind” is a word: only numbers can be compared.",
		top + "a,choose warmth = hot,warmth,60 degF,1 degF,read,\n":             "01_test.csv:5: “warmth” has no estimate “hot”; it has: near, far.",
	} {
		if _, err := load(t, rows); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q:\ntold %v\nwant %s", rows, err, want)
		}
	}
}

// The evidence of a term counts its rows by their mark.
func TestEvidence(t *testing.T) {
	set, err := load(t, top+"a,lift = 100 ft; drop = 40 ft,fall,60.25 ft,0.5 ft,read,\n"+
		"b,lift = 100 ft; drop = 30 ft,fall,70 ft,0.5 ft,derived,\n"+
		"c,lift = 100 ft; drop = 30 ft,share,30 %,0.5 %,from memory,\n"+
		"d,lift = 100 ft; drop = 30 ft,share,40 %,0.5 %,common practice,\n")
	if err != nil {
		t.Fatal(err)
	}
	byTerm, all := set.Gather(set.Run(answer.New(small(t)).Answer))
	if e := byTerm["fall"]; e.Read != 1 || e.Derived != 1 || e.Cases() != 2 || math.Abs(e.Largest-0.5) > 1e-9 || len(e.Files) != 1 || e.Failed != 0 {
		t.Errorf("fall: %+v", e)
	}
	if e := byTerm["share"]; e.Memory != 1 || e.Practice != 1 || e.Failed != 1 {
		t.Errorf("share: %+v", e)
	}
	want := "published checks: 1 read in a source, 1 arithmetic, 1 from memory, 1 common practice; 0 table cells; 0 disagree, explained; from 1 files; " +
		"largest deviation 20.00 of the source's rounding (01_test.csv:8, d); 1 do not hold"
	if all.String() != want {
		t.Errorf("told %q", all.String())
	}
	computed, facts := set.Unchecked(byTerm)
	if got := strings.Join(computed, " "); got != "share warmth ratio" {
		t.Errorf("computed and without an outside check: %s", got)
	}
	if got := strings.Join(facts, " "); got != "lift drop" {
		t.Errorf("facts without an outside check: %s", got)
	}
}
