package exercise

import (
	"reflect"
	"strings"
	"testing"
)

func packed(t testing.TB) (*Set, []byte) {
	s := loaded(t, chain("steps", "pumping-level\nfield-head to 0.1 ft\nbowl-power"), chain("one", "field-head"),
		&Source{ID: "words", Name: "Words", Level: 2, Text: "A\tb\\n\nc.", Blocks: []Block{
			{ChooseBlock, "ask \"A?\" right \"yes\" say \"because\" wrong \"no\" say \"why not\" wrong \"maybe\" say \"be sure\""},
			{OrderBlock, "ask \"Order.\" take 3 items \"1\", \"2\", \"3\", \"4\""},
		}})
	return s, s.Pack()
}

// What the page draws and marks from the pack is what the book does.
func TestPackDrawsTheSame(t *testing.T) {
	s, pack := packed(t)
	page, err := Unpack(pack, s.Book)
	if err != nil {
		t.Fatal(err)
	}
	for i := range s.Templates {
		id := s.Templates[i].ID
		for seed := range uint64(60) {
			a, b := drawnSheet(t, s, id, seed), drawnSheet(t, page, id, seed)
			if a.Situation() != b.Situation() || a.Tries != b.Tries || !reflect.DeepEqual(a.Items, b.Items) {
				t.Fatalf("%s, seed %d: the pack draws another sheet", id, seed)
			}
			answers := make([]string, len(a.Items))
			for k := range a.Items {
				if a.Items[k].Kind == Number {
					if traces := a.Traces(k); len(traces) > 0 {
						answers[k] = in(a, k, traces[int(seed)%len(traces)].Value, s.Book.Terms[a.Items[k].Term].US.Symbol)
					}
				}
			}
			x, y := a.Mark(answers), b.Mark(answers)
			for k := range x {
				if x[k].Verdict != y[k].Verdict || names(s, &x[k]) != names(page, &y[k]) {
					t.Errorf("%s, seed %d, item %d: %v %s and %v %s", id, seed, k, x[k].Verdict, names(s, &x[k]), y[k].Verdict, names(page, &y[k]))
				}
			}
		}
	}
}

func names(s *Set, m *Mark) string {
	text := ""
	for _, c := range m.Causes {
		for _, slip := range c.Slips {
			text += s.Slip(slip).ID + " "
		}
	}
	return text
}

// A damaged pack is refused, or read as something else; it never panics.
func TestDamagedPack(t *testing.T) {
	s, pack := packed(t)
	lines := strings.SplitAfter(string(pack), "\n")
	for i := range lines {
		for _, damaged := range []string{"", "x" + lines[i], strings.Replace(lines[i], "\t", "", 1), strings.ReplaceAll(lines[i], "1", "999")} {
			text := strings.Join(lines[:i], "") + damaged + strings.Join(lines[i+1:], "")
			set, err := Unpack([]byte(text), s.Book)
			if err == nil && strings.HasPrefix(damaged, "x") {
				t.Errorf("line %d is taken as %q", i+1, damaged)
			}
			if err == nil {
				for k := range set.Templates {
					set.Draw(&set.Templates[k], 1)
				}
			}
		}
	}
	if _, err := Unpack(nil, s.Book); err == nil {
		t.Error("an empty pack is taken")
	}
}

func FuzzUnpack(f *testing.F) {
	s, pack := packed(f)
	f.Add(pack)
	f.Fuzz(func(t *testing.T, data []byte) {
		set, err := Unpack(data, s.Book)
		if err != nil {
			return
		}
		for k := range set.Templates {
			if sh, _ := set.Draw(&set.Templates[k], 1); sh != nil {
				sh.Mark([]string{"1", "2", "3"})
			}
		}
	})
}

func FuzzMark(f *testing.F) {
	s := loaded(f, chain("steps", "pumping-level\nfield-head\nbowl-power"))
	f.Add("193,4", "59 m", "1/0")
	f.Fuzz(func(t *testing.T, a, b, c string) {
		sh := drawnSheet(t, s, "steps", 1)
		for i, m := range sh.Mark([]string{a, b, c}) {
			if m.Points < 0 || m.Points > MostPoints || len(m.Causes) > 2 {
				t.Errorf("item %d: %+v", i, m)
			}
		}
	})
}

func BenchmarkDraw(b *testing.B) {
	s := loaded(b, chain("steps", "pumping-level\npressure-head\nfield-head\nbowl-power"))
	seed := uint64(0)
	for b.Loop() {
		seed++
		s.Draw(s.Find("steps"), seed)
	}
}
