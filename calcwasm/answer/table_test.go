package answer

import (
	"encoding/csv"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"columnbowl/calcwasm/assembly"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// openPump is the take-off of yard's pump for facts as typed.
func openPump(t testing.TB, facts ...string) (*Desk, *assembly.List) {
	t.Helper()
	d := yard(t)
	q := reckon.Question{Want: -1}
	for i := 0; i < len(facts); i += 2 {
		term, _ := d.book.Find(facts[i])
		f, err := d.book.Read(term, facts[i+1])
		if err != nil {
			t.Fatal(err)
		}
		q.Facts = append(q.Facts, f)
	}
	return d, assembly.Pieces(d.book.Reckon(q), &d.builds.Builds[0])
}

// A reader of CSV that is not ours takes the text and finds the same cells.
func TestCSVIsReadBack(t *testing.T) {
	d, l := openPump(t, "build", "open", "setting", "70 ft")
	l.Notes = append(l.Notes, `Pipe "standard", 20 ft`, "two\nlines", " begins with a space", "")
	d.builds.Builds[0].Groups[0].Lines[0].Label = "full, threaded"
	for _, system := range []formula.System{formula.US, formula.SI} {
		rows, err := csv.NewReader(strings.NewReader(CSV(l, system))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		var want [][]string
		for _, row := range Table(l, system) {
			want = append(want, row[:])
		}
		if !slices.EqualFunc(rows, want, slices.Equal) {
			t.Errorf("read back:\n%q\nwritten:\n%q", rows, want)
		}
	}
}

func TestTableOfPieces(t *testing.T) {
	_, l := openPump(t, "build", "open", "setting", "70 ft")
	us, si := CSV(l, formula.US), CSV(l, formula.SI)
	for _, line := range []string{
		"place,group,part,name,label,with,quantity,length each ft,length ft,mass each lb,mass lb\n",
		"\n0,column,pipe,Pipe,full,,3,20,60,1,3\n", "\n1,column,pipe,Pipe,,,1,10,10,,\n", "\n2,column,nut,Nut,,pipe,1,,,,\n",
		"\n,total,setting,setting,70 ft,,,,,,\n", "\n,note,,,Careful.,,,,,,\n",
	} {
		if !strings.Contains(us, line) {
			t.Errorf("the table lacks %q:\n%s", line, us)
		}
	}
	if !strings.Contains(si, "length each m,length m,mass each kg,mass kg\n") || !strings.Contains(si, "\n0,column,pipe,Pipe,full,,3,6.096,18.288,0.45359237,1.36077711\n") {
		t.Errorf("in SI:\n%s", si)
	}
	tabs := tabbed(l, formula.US)
	if strings.Count(tabs, "\n") != strings.Count(us, "\n") || !strings.Contains(tabs, "\n0\tcolumn\tpipe\tPipe\tfull\t\t3\t20\t60\t1\t3\n") {
		t.Errorf("with tabs:\n%s", tabs)
	}
}

// While something is refused there are no pieces, and what is missing is not asked for.
func TestTableRefused(t *testing.T) {
	d, l := openPump(t, "build", "open", "setting", "70 ft", "static-level", "60 ft", "drawdown", "20 ft")
	text := CSV(l, formula.US)
	if !strings.Contains(text, "\n,refused,pumping-level/bowls-showing,,") || strings.Contains(text, "column,pipe") || strings.Contains(text, ",caution,pumping-level/bowls-showing") {
		t.Errorf("refused:\n%s", text)
	}
	var told struct {
		Pieces struct {
			Cautions []struct {
				ID, Text        string
				Refuses, Danger bool
			}
		}
	}
	if err := json.Unmarshal(d.Answer([]byte("pieces\nfact\tbuild\topen\nfact\tsetting\t70 ft\nfact\tstatic-level\t60 ft\nfact\tdrawdown\t20 ft")), &told); err != nil {
		t.Fatal(err)
	}
	if c := told.Pieces.Cautions; len(c) == 0 || c[0].ID != "pumping-level/bowls-showing" || !c[0].Refuses || c[0].Text == "" {
		t.Errorf("told %+v", c)
	}
}

func TestTableInAReply(t *testing.T) {
	d, l := openPump(t, "build", "open", "setting", "70 ft")
	var told struct {
		Pieces struct {
			Asked, Made struct{ ID, Name, US, SI string }
		}
		Table struct{ CSV, Tabs string }
	}
	for request, system := range map[string]formula.System{"us": formula.US, "si": formula.SI} {
		if err := json.Unmarshal(d.Answer([]byte("pieces\ntable\t"+request+"\nfact\tbuild\topen\nfact\tsetting\t70 ft")), &told); err != nil {
			t.Fatal(err)
		}
		if told.Table.CSV != CSV(l, system) || told.Table.Tabs != tabbed(l, system) {
			t.Errorf("%s: told\n%s", request, told.Table.CSV)
		}
	}
	if m := told.Pieces.Made; m.ID != "setting" || m.US != "70\u00a0ft" || m.SI != "21.34\u00a0m" {
		t.Errorf("made is %+v", m)
	}
	if text := string(d.Answer([]byte("table\tus"))); strings.Contains(text, "csv") {
		t.Errorf("without a build: %s", text)
	}
}
