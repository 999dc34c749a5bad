package exercise

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// in writes a value of an item in a unit with four digits.
func in(sh *Sheet, item int, v float64, symbol string) string {
	t := &sh.set.Book.Terms[sh.Items[item].Term]
	u := t.US
	if symbol == t.SI.Symbol {
		u = t.SI
	}
	n := u.FromSI(v)
	digits := 3 - int(math.Floor(math.Log10(math.Abs(n))))
	return strconv.FormatFloat(n, 'f', max(digits, 0), 64) + " " + symbol
}

func TestAnswersAsPeopleWriteThem(t *testing.T) {
	s := loaded(t, chain("one", "field-head"))
	sh := drawnSheet(t, s, "one", 2)
	ft := in(sh, 0, sh.Items[0].Right, "ft") // such as "330.9 ft"
	bare := strings.TrimSuffix(ft, " ft")
	for _, c := range []struct {
		text string
		want Verdict
	}{
		{ft, Right}, {bare, Right}, {strings.Replace(bare, ".", ",", 1), Right}, {bare + "'", Right}, {bare + " feet", Right},
		{in(sh, 0, sh.Items[0].Right, "m"), Right},
		{strings.TrimSuffix(in(sh, 0, sh.Items[0].Right, "m"), " m"), Misunit},
		{bare + " psi", Misunit}, {bare + " m", Misunit},
		{strings.Replace(bare, ".", "", 1), Misunit},
		{strconv.Itoa(int(math.Round(mustNumber(bare)))), Rounded},
		{strconv.FormatFloat(mustNumber(bare)*1.002, 'f', 1, 64), Rounded},
		{"", Empty}, {"about right", Unread}, {"12 34", Unread}, {"300 hp", Unknown}, {"-12.34 ft", Unknown},
	} {
		m := sh.Mark([]string{c.text})[0]
		if m.Verdict != c.want {
			t.Errorf("%q is judged %v (%s), not %v; right is %s", c.text, m.Verdict, m.Say, c.want, ft)
		}
		if points := map[Verdict]int{Right: 2, Misunit: 1, Rounded: 1}[c.want]; m.Points != points {
			t.Errorf("%q gets %d points", c.text, m.Points)
		}
	}
}

func TestDecimalComma(t *testing.T) {
	for text, want := range map[string]string{
		"7,621": "7.621", "7,621 hp": "7.621 hp", "-7,621hp": "-7.621hp", "0,621": "0.621",
		"7.621": "", "193,4": "", "7,6214": "", "1,234.5": "", "1,234,567": "", "7,62 hp": "", "": "",
	} {
		if got := decimalComma(text); got != want {
			t.Errorf("%q becomes %q, not %q", text, got, want)
		}
	}
}

func mustNumber(text string) float64 {
	v, err := strconv.ParseFloat(strings.Fields(text)[0], 64)
	if err != nil {
		panic(err)
	}
	return v
}

// A mistake is named, the step after it is credited, and a second mistake on the
// learner's own number is named as well.
func TestMistakeAndWhatFollows(t *testing.T) {
	s := loaded(t, chain("steps", "pumping-level\npressure-head\nfield-head\nbowl-power"))
	sh := drawnSheet(t, s, "steps", 4)
	v := func(id string) float64 { term, _ := s.Book.Find(id); return sh.values[term] }
	static, psi := v("static-level"), v("pressure-head")
	field := static + psi // from the level that was taken wrongly
	power := sh.Items[3].Right * field / sh.Items[2].Right
	eta := v("bowl-efficiency")
	marks := sh.Mark([]string{in(sh, 0, static, "ft"), in(sh, 1, psi, "ft"), in(sh, 2, field, "ft"), in(sh, 3, power*eta*eta, "hp")})
	for i, want := range []Verdict{Slipped, Right, Carried, Slipped} {
		if marks[i].Verdict != want {
			t.Errorf("item %d is judged %v (%s), not %v", i, marks[i].Verdict, marks[i].Say, want)
		}
	}
	if marks[2].Points != MostPoints || marks[0].Points != 0 {
		t.Errorf("points %d and %d", marks[0].Points, marks[2].Points)
	}
	for i, id := range map[int]string{0: "pumping-level/static-level-used", 3: "bowl-power/multiplied"} {
		if len(marks[i].Causes) != 1 || s.Slip(marks[i].Causes[0].Slips[0]).ID != id {
			t.Errorf("item %d: causes %v, not %s", i, marks[i].Causes, id)
		}
	}
	if !marks[3].Own {
		t.Error("the last item was not judged from the learner's own number")
	}
}

// Two mistakes behind one number are offered, never as certain.
func TestPairIsOffered(t *testing.T) {
	s := loaded(t, chain("one", "field-head"))
	for seed := range uint64(40) {
		sh := drawnSheet(t, s, "one", seed)
		v := func(id string) float64 { term, _ := s.Book.Find(id); return sh.values[term] }
		both := v("static-level") + v("pressure-head")/2.31
		m := sh.Mark([]string{in(sh, 0, both, "ft")})[0]
		if m.Verdict == Slipped {
			t.Errorf("seed %d: a pair is taken for %s", seed, s.Slip(m.Causes[0].Slips[0]).ID)
		}
		found := false
		for _, c := range m.Causes {
			found = found || len(c.Slips) == 2
		}
		if m.Verdict != CouldBe || len(m.Causes) > 2 || !found {
			t.Errorf("seed %d: %v with %v", seed, m.Verdict, m.Causes)
		}
	}
}

// A count has so few values that no number singles a mistake out.
func TestCountIsNeverSure(t *testing.T) {
	src := chain("count", "field-head\nstages")
	src.Blocks[0].Body += "stage-head = 31 ft to 49 ft step 0.5 ft\n"
	src.Text += " One stage {stage-head}."
	s := loaded(t, src)
	for seed := range uint64(60) {
		sh := drawnSheet(t, s, "count", seed)
		right := int(math.Round(sh.Items[1].Right))
		if m := sh.Mark([]string{"", strconv.Itoa(right) + " stages"})[1]; m.Verdict != Right {
			t.Errorf("seed %d: the right count is judged %v %s", seed, m.Verdict, m.Say)
		}
		for _, n := range []int{right - 1, right + 1, right + 2} {
			if m := sh.Mark([]string{"", strconv.Itoa(n)})[1]; m.Verdict == Slipped || m.Points > 0 {
				t.Errorf("seed %d: %d in place of %d is judged %v, %d points", seed, n, right, m.Verdict, m.Points)
			}
		}
	}
}

func TestPercentAsFraction(t *testing.T) {
	s := loaded(t, chain("share", "water-share"))
	sh := drawnSheet(t, s, "share", 1)
	text := strconv.FormatFloat(sh.Items[0].Right, 'f', 4, 64)
	if m := sh.Mark([]string{text})[0]; m.Verdict != Misunit {
		t.Errorf("%s for a percentage is judged %v (%s)", text, m.Verdict, m.Say)
	}
	if m := sh.Mark([]string{in(sh, 0, sh.Items[0].Right, "%")})[0]; m.Verdict != Right {
		t.Errorf("judged %v (%s)", m.Verdict, m.Say)
	}
}

func TestOrderIsMarkedByItsRun(t *testing.T) {
	item := Item{Kind: Ordering, Answer: "CABED", Names: make([]string, 5)}
	for text, want := range map[string]Verdict{"CABED": Right, "c a b, e-d": Right, "ACBED": PartOnly, "CABDE": PartOnly, "DEBAC": Wrong, "CAB": Unread, "CABEE": Unread, "CABEX": Unread} {
		if got := item.markOrder(text).Verdict; got != want {
			t.Errorf("%s is judged %v, not %v", text, got, want)
		}
	}
}

func TestSwappedDigits(t *testing.T) {
	got := swapped(193.4, 1)
	want := []float64{194.3, 139.4, 913.4}
	for i := range want {
		if math.Abs(got[i]-want[i]) > 1e-9 {
			t.Errorf("%v, not %v", got, want)
		}
	}
}

func TestHalfOfTheFourthDigit(t *testing.T) {
	for v, want := range map[float64]float64{193.4: 0.05, 1934: 0.5, 1: 0.0005, 0.9999: 0.00005, 10: 0.005, -56.2: 0.005, 0: 0} {
		if got := half(v, 1); math.Abs(got-want) > 1e-12 {
			t.Errorf("half(%v) is %v, not %v", v, got, want)
		}
	}
}
