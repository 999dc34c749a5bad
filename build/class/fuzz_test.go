package class

import (
	"os"
	"strings"
	"testing"
)

// inside checks that what is told of a file has a place in it.
func inside(t *testing.T, text string, faults []Fault) {
	t.Helper()
	lines := strings.Count(text, "\n") + strings.Count(text, "\r") + 1
	for _, f := range faults {
		if f.Line < 1 || f.Line > lines || f.Column < 1 || f.Message == "" {
			t.Errorf("of %d lines: %+v", lines, f)
		}
	}
}

// FuzzClass: whatever a class file holds, each learner that is taken has a sign
// of their own and a name, and every fault a place.
func FuzzClass(f *testing.F) {
	text, err := os.ReadFile("../../testdata/class/class.csv")
	if err != nil {
		f.Fatal(err)
	}
	for _, s := range []string{string(text), "\ufefflearner;name\r\n01;\"Learner; 01\"\r\n", "name,learner\n\n,\nx,a\"b\n", "learner,name\n01,\"open\n", ""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		list, faults := ReadClass("class.csv", []byte(text))
		seen := map[string]bool{}
		for _, l := range list {
			if l.ID == "" || l.Name == "" || seen[l.ID] {
				t.Errorf("a learner %+v", l)
			}
			seen[l.ID] = true
		}
		inside(t, text, faults)
	})
}

// FuzzAnswers: whatever a file of answers holds, nobody gets more points than
// there are, nobody is marked twice for one sheet, and every fault has a place.
func FuzzAnswers(f *testing.F) {
	_, set := content(f)
	class := []Learner{{"01", "Learner 01"}, {"02", "Learner 02"}}
	head := "learner,name,exercise,seed,check,answer 1,answer 2,answer 3\n"
	for _, s := range []string{
		head + "01,Learner 01,chain-of-three,7001,,199.8 ft,200,1e9\n02,,chain-of-three,7002,,,,\n",
		head + "01,x,nothing,7001,,1,2,3\n09,x,chain-of-three,-1,,1\n01,x,chain-of-three,99999999999999999999,,1\n",
		"learner;name;exercise;seed;check;units;answer 1\r\n01;x;chain-of-six;7001;;si;60,9\r\n01;x;chain-of-six;7001;;si;60,9\r\n", head, "",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		list, faults := MarkFile(set, class, "answers.csv", []byte(text), nil)
		for i := range list {
			if points, most := list[i].Points(); points < 0 || points > most {
				t.Errorf("%d points of %d", points, most)
			}
		}
		for _, fault := range faults {
			if fault.Message == "" {
				t.Errorf("%+v", fault)
			}
		}
	})
}
