package class

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"columnbowl/build/budget"
	"columnbowl/calcwasm/exercise"
	"columnbowl/site"
)

func faultText(faults []Fault) string {
	var lines []string
	for i := range faults {
		lines = append(lines, faults[i].String())
	}
	return strings.Join(lines, "\n")
}

func TestReadClass(t *testing.T) {
	for _, c := range []struct{ text, ids, faults string }{
		{"learner,name\n01,Learner 01\n02,Learner 02\n", "01 02", ""},
		{"\ufefflearner;name\r\n01;\"Learner; 01\"\r\n", "01", ""},
		{"name,learner\nLearner 01,a\n\n,\nLearner 02,b\n", "a b", ""},
		{"learner,name\n01,x\n01,y\n,z\n02,\n", "01 02", "c.csv:3:1: The sign “01” is taken by the learner in line 2.\nc.csv:4:1: This learner has no sign in the column “learner”."},
		{"learner,name\n01,x\n02,a\"b\n03,z\n", "01 03", "c.csv:3:5: This row is not read: a quotation mark stands where none can stand. A field that holds one is written in quotation marks, with the mark doubled."},
		{"sign,name\n01,x\n", "", "c.csv:1:1: There is no column “learner” among the headings."},
		{"", "", "c.csv:1:1: The file is empty: its first line names the columns."},
		{"PK\x03\x04\x14\x00,learner", "", "c.csv:1:1: This is a workbook of an office program, not a table as text. Open it there and save it as CSV."},
	} {
		list, faults := ReadClass("c.csv", []byte(c.text))
		var ids []string
		for _, l := range list {
			ids = append(ids, l.ID)
			if l.Name == "" {
				t.Errorf("%q: a learner without a name", c.text)
			}
		}
		if got := strings.Join(ids, " "); got != c.ids {
			t.Errorf("%q: learners %q, not %q", c.text, got, c.ids)
		}
		if got := faultText(faults); got != c.faults {
			t.Errorf("%q: faults\n%s\nnot\n%s", c.text, got, c.faults)
		}
	}
}

// office is a class of 24 with two exercises.
func office(t testing.TB) (*Office, []Learner, []Sheet) {
	t.Helper()
	b, set := content(t)
	shells, err := site.Shells()
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile("../../testdata/class/class.csv")
	if err != nil {
		t.Fatal(err)
	}
	class, faults := ReadClass("class.csv", text)
	if len(class) != 24 || len(faults) > 0 {
		t.Fatalf("%d learners, %s", len(class), faultText(faults))
	}
	sheets, err := Draw(set, []*exercise.Template{set.Find("chain-of-six"), set.Find("which-build")}, class, 7, nil)
	if err != nil {
		t.Fatal(err)
	}
	return &Office{Book: b, Set: set, Shells: shells, Paper: "letter"}, class, sheets
}

// filled writes the answers of a sheet into the file of answers: the right ones,
// or what change makes of them.
func filled(o *Office, sheets []Sheet, change func(sheet, item int, right string) string) []byte {
	lines := strings.Split(strings.TrimSpace(string(AnswerFile(sheets, Dialect{}))), "\n")
	for i := range sheets {
		fields := strings.Split(lines[i+1], ",")
		for k := range sheets[i].Items {
			right, _, _ := strings.Cut(o.right(&sheets[i], k), ":")
			fields[len(answerColumns)+k] = `"` + change(i, k, strings.ReplaceAll(right, "\u00a0", " ")) + `"`
		}
		lines[i+1] = strings.Join(fields, ",")
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

func TestTheRightAnswersGetAllPoints(t *testing.T) {
	o, class, sheets := office(t)
	text := filled(o, sheets, func(_, _ int, right string) string { return right })
	marked, faults := MarkFile(o.Set, class, "answers.csv", text, nil)
	if len(marked) != 48 || len(faults) > 0 {
		t.Fatalf("%d sheets, %s", len(marked), faultText(faults))
	}
	for i := range marked {
		// What the key prints drops zeros at the end, so some come as “right but
		// for the rounding”; none may be wrong.
		for k := range marked[i].Marks {
			if m := &marked[i].Marks[k]; m.Points == 0 || m.Verdict != exercise.Right && m.Verdict != exercise.Rounded {
				t.Errorf("%s, item %d, %q: %v %s", marked[i].Name, k+1, marked[i].Answers[k], m.Verdict, m.Say)
			}
		}
	}
}

// The class makes one mistake in every third sheet: the report and the gradebook
// tell which, by whom, and what to teach first.
func TestReportTellsWhatTheClassDid(t *testing.T) {
	o, class, sheets := office(t)
	slip, made := -1, map[string]bool{}
	text := filled(o, sheets, func(s, item int, right string) string {
		if sheets[s].Template.ID != "chain-of-six" || item != 0 || s%6 != 0 {
			return right
		}
		for _, trace := range sheets[s].Traces(0) {
			if o.Set.Slip(trace.Slip).ID == "pumping-level/static-level-used" {
				slip, made[sheets[s].ID] = trace.Slip, true
				right = strings.ReplaceAll(sheets[s].Amount(0, trace.Value), "\u00a0", " ")
				if !strings.Contains(right, ".") {
					right = strings.Replace(right, " ft", ".0 ft", 1)
				}
			}
		}
		return right
	})
	marked, faults := MarkFile(o.Set, class, "answers.csv", text, nil)
	if len(faults) > 0 {
		t.Fatal(faultText(faults))
	}
	list := Mistakes(marked)
	if len(list) == 0 || list[0].Slip != slip || list[0].Count() != len(made) || len(made) != 8 {
		t.Fatalf("mistakes %+v, made by %v", list, made)
	}
	page, err := o.Report("The class", class, marked, nil)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(page, []byte("<b>Pumping level</b>")) || bytes.Count(page, []byte("●</b>")) < len(list[0].Sure) {
		t.Error("the report does not tell what to teach again")
	}
	book := string(o.Gradebook(marked, Dialect{}))
	if n := strings.Count(book, "pumping-level/static-level-used"); n != len(list[0].Sure) {
		t.Errorf("the gradebook has the mistake %d times, not %d", n, len(list[0].Sure))
	}
	if n := strings.Count(book, "\n"); n != 49 {
		t.Errorf("the gradebook has %d lines", n)
	}
}

func TestBadRowsAreNamedAndTheOthersMarked(t *testing.T) {
	o, class, sheets := office(t)
	lines := strings.SplitAfter(string(AnswerFile(sheets, Dialect{})), "\n")
	head := lines[0]
	row := func(learner, exercise, seed, rest string) string {
		return learner + ",Name," + exercise + "," + seed + ",," + rest + "\n"
	}
	text := head + row("01", "chain-of-six", "7001", "1,2,3,4,5,6") + row("99", "chain-of-six", "7001", "") + row("02", "chain-of-sex", "7002", "") +
		row("03", "chain-of-six", "x", "") + row("01", "chain-of-six", "7001", "1") + "04,a\"b,c\n" + row("05", "which-build", "7005", "A,B,C,A,extra") + row("6", "which-build", "7006", "A,B,C,A") +
		"07,Name,which-build,7007,abcdef,A,B,C,A\n"
	marked, faults := MarkFile(o.Set, class, "a.csv", []byte(text), nil)
	if len(marked) != 2 || marked[1].ID != "06" {
		t.Errorf("%d sheets are marked", len(marked))
	}
	got := faultText(faults)
	for _, want := range []string{
		"a.csv:3:1: There is no learner “99” in the class.",
		"a.csv:4:9: There is no exercise “chain-of-sex”.",
		"a.csv:5:22: A seed is a whole number as it stands on the sheet, not “x”.",
		"a.csv:6:1: This sheet was answered in line 2 already; this row is not marked.",
		"a.csv:7:5: This row is not read",
		"a.csv:8:35: This sheet has 4 items, and an answer stands in “answer 5”.",
		"a.csv:10:26: The sheet that was handed out is not the one that this seed draws now",
		"a.csv:1:1: No row of Learner 02 (02) could be marked.",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("the faults lack %q:\n%s", want, got)
		}
	}
}

func TestHandoutsTellAllFactsAndNoAnswer(t *testing.T) {
	o, _, sheets := office(t)
	page, err := o.Handouts("Exercises 7", sheets)
	if err != nil {
		t.Fatal(err)
	}
	html := string(page)
	if n := strings.Count(html, `<section class="sheet">`); n != len(sheets) {
		t.Errorf("%d sheets, not %d", n, len(sheets))
	}
	first := html[:strings.Index(html, "</section>")]
	for _, f := range sheets[0].Facts() {
		if term := &o.Set.Book.Terms[f.Term]; term.US != nil && !strings.Contains(first, sheets[0].FactText(term.ID)) {
			t.Errorf("the sheet does not tell %s", term.Name)
		}
	}
	for i := 2; i < len(sheets[0].Items); i++ {
		if strings.Contains(first, sheets[0].Amount(i, sheets[0].Items[i].Right)) {
			t.Errorf("the sheet gives the answer to %s away", sheets[0].Title(i))
		}
	}
	if strings.Contains(html, "{") {
		t.Error("a fact is not filled in")
	}
	key, err := o.Keys("Key", sheets)
	if err != nil || !bytes.Contains(key, []byte(sheets[0].Amount(5, sheets[0].Items[5].Right))) {
		t.Errorf("the key lacks an answer: %v", err)
	}
	again, _ := o.Handouts("Exercises 7", sheets)
	if !bytes.Equal(page, again) {
		t.Error("the same class gives two files")
	}
}

func TestNothingIsOverwrittenUnasked(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "a", "b")
	files := []File{{"one", []byte("1")}, {"two", []byte("2")}}
	if err := Write(dir, files[:1], false); err != nil {
		t.Fatal(err)
	}
	files[0].Text = []byte("new")
	if err := Write(dir, files, false); err == nil || !strings.Contains(err.Error(), "holds one already") {
		t.Errorf("error %v", err)
	}
	if _, err := os.Stat(filepath.Join(dir, "two")); err == nil {
		t.Error("a part of the files was written")
	}
	if err := Write(dir, files, true); err != nil {
		t.Fatal(err)
	}
	if got, _ := os.ReadFile(filepath.Join(dir, "one")); string(got) != "new" {
		t.Errorf("after --replace the file holds %q", got)
	}
	if list, _ := os.ReadDir(dir); len(list) != 2 {
		t.Errorf("%d files are left", len(list))
	}
}

// BenchmarkHandouts makes 1,000 handouts with their keys; the goal is 2 s.
func BenchmarkHandouts(b *testing.B) {
	o, _, _ := office(b)
	var class []Learner
	for i := range mostLearners + 1 {
		class = append(class, Learner{string(rune('a' + i%26)), "Learner"})
	}
	for b.Loop() {
		sheets, err := Draw(o.Set, []*exercise.Template{o.Set.Find("chain-of-twelve")}, class, 7, nil)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := o.Handouts("Exercises", sheets); err != nil {
			b.Fatal(err)
		}
		if _, err := o.Keys("Key", sheets); err != nil {
			b.Fatal(err)
		}
	}
	fmt.Println(budget.Line("1,000 handouts with their keys", b.Elapsed().Seconds()/float64(b.N), "s", "", 2))
}

// BenchmarkMarking marks 1,000 sheets of twelve numbers on which every answer is
// wrong; the goal is 2 s.
func BenchmarkMarking(b *testing.B) {
	o, _, _ := office(b)
	t := o.Set.Find("chain-of-twelve")
	var sheets []*exercise.Sheet
	var answers [][]string
	for seed := range uint64(1000) {
		s, _ := o.Set.Draw(t, seed)
		var list []string
		for i := range s.Items {
			list = append(list, s.Amount(i, s.Items[i].Right*1.137))
		}
		sheets, answers = append(sheets, s), append(answers, list)
	}
	for b.Loop() {
		for i := range sheets {
			sheets[i].Mark(answers[i])
		}
	}
	fmt.Println(budget.Line("1,000 sheets marked", b.Elapsed().Seconds()/float64(b.N), "s", "", 2))
}

// Counts between two lengths do not make the second one forgiving: a length on the
// edge of a count moved by its rounding would move the next by a whole piece.
func TestALeftOutCountForgivesNothing(t *testing.T) {
	_, set := content(t)
	tubes := set.Find("tubes-and-bearings")
	for seed := uint64(1); seed <= 200; seed++ {
		sheet, why := set.Draw(tubes, seed)
		if sheet == nil {
			t.Fatal(why)
		}
		marks := sheet.Mark([]string{sheet.Amount(0, sheet.Items[0].Right), "", "", "13 ft"})
		if marks[0].Verdict != exercise.Right || marks[3].Points > 0 {
			t.Fatalf("sheet %d: 13 ft for a bottom special of %s is judged %v", seed, sheet.Amount(3, sheet.Items[3].Right), marks[3].Verdict)
		}
	}
}
