package class

import (
	"strings"
	"testing"

	"columnbowl/calcwasm/exercise"
)

// What several learners could have done is taken up with the class, what one
// could have done is not; one whose number proves it is enough.
func TestTeach(t *testing.T) {
	o, class, sheets := office(t)
	term := func(slip string) int {
		for i := range o.Set.Book.Mistakes {
			if o.Set.Slip(i).ID == slip {
				return i
			}
		}
		t.Fatalf("no mistake %s", slip)
		return -1
	}
	judged := func(learner int, v exercise.Verdict, slip string) Marked {
		s := sheets[2*learner] // chain-of-six
		marks := make([]exercise.Mark, len(s.Items))
		for i := range marks {
			marks[i].Verdict = exercise.Right
		}
		marks[0] = exercise.Mark{Verdict: v, Causes: []exercise.Cause{{Slips: []int{term(slip)}}}}
		return Marked{Sheet: s, Answers: make([]string, len(marks)), Marks: marks}
	}
	marked := []Marked{
		judged(0, exercise.CouldBe, "field-head/setting-used"), judged(1, exercise.CouldBe, "field-head/setting-used"), judged(2, exercise.CouldBe, "field-head/drawdown-twice"),
		judged(3, exercise.CouldBe, "lift/setting-used"), judged(4, exercise.Slipped, "pressure-head/converted-twice"), judged(0, exercise.Slipped, "pressure-head/psi-taken-as-feet"),
	}
	got := ""
	for _, l := range o.teach(marked) {
		got += l.Name + ": " + l.Who + "\n"
	}
	if want := "Pressure head: 01, 05\nField head: (01), (02), (03)\n"; !strings.HasPrefix(got, want) || strings.Contains(got, "Lift") {
		t.Errorf("taught again:\n%s", got)
	}
	if len(class) != 24 {
		t.Fatal("not the class of 24")
	}
}

// A question that one in four got wrong is one for the class.
func TestHardQuestions(t *testing.T) {
	o, class, sheets := office(t)
	text := filled(o, sheets, func(s, item int, right string) string {
		if sheets[s].Template.ID == "which-build" && strings.Contains(sheets[s].Title(item), "A nut as wide as a hand") && s%4 == 1 {
			return string("BCA"[right[0]-'A'])
		}
		return right
	})
	marked, _ := MarkFile(o.Set, class, "a.csv", text, nil)
	list := o.hard(marked)
	if len(list) != 1 || !strings.HasPrefix(list[0].Name, "A nut as wide as a hand") || list[0].N < alone || list[0].Of <= list[0].N {
		t.Errorf("%+v", list)
	}
}
