package exercise

import (
	"math"
	"strings"

	"columnbowl/calcwasm/formula"
)

// Verdict is how an answer is judged.
type Verdict uint8

const (
	Empty    Verdict = iota // nothing was answered
	Unread                  // what stands there cannot be read
	Right                   //
	Rounded                 // right, but not to the digits asked for
	Misunit                 // right but for the unit or the decimal point
	Carried                 // rightly worked out from an earlier number that was wrong
	Slipped                 // a mistake that the number singles out
	CouldBe                 // a number that one or two mistakes lead to, without proof
	Unknown                 // not recognised
	Wrong                   // a choice or an order that is not the right one
	PartOnly                // an order that is right in part
)

var verdictNames = [...]string{"empty", "unread", "right", "rounded", "unit", "carried", "mistake", "could-be", "not-recognised", "wrong", "in-part"}

func (v Verdict) String() string { return verdictNames[v] }

// Mark is what the marker says of one answer.
type Mark struct {
	Verdict Verdict
	Points  int     // of MostPoints
	Causes  []Cause // of Slipped one, of CouldBe one or two
	Say     string  // what to tell the learner, besides what the causes say
	Own     bool    // judged from the learner's own earlier number
	Value   float64 // what was read, in SI; NaN if nothing was
}

// MostPoints is what a right answer counts.
const MostPoints = 2

// Cause is one way to a wrong number: a slip, or two slips together.
type Cause struct{ Slips []int } // places, for Set.Slip

// Mark marks the answers of a sheet, one for each item; missing ones count as
// empty.
func (sh *Sheet) Mark(answers []string) []Mark {
	marks := make([]Mark, len(sh.Items))
	own := make([]float64, len(sh.Items))
	slipped := false // some number before was not right
	for i := range sh.Items {
		text := ""
		if i < len(answers) {
			text = strings.TrimSpace(answers[i])
		}
		own[i] = math.NaN()
		marks[i].Value = math.NaN()
		item := &sh.Items[i]
		switch {
		case text == "":
		case item.Kind == Choice:
			marks[i] = item.markChoice(text)
		case item.Kind == Ordering:
			marks[i] = item.markOrder(text)
		default:
			marks[i], own[i] = sh.number(i, text, own, slipped)
			slipped = slipped || marks[i].Verdict != Right
		}
	}
	return marks
}

// number marks a number; carry is what later items are reckoned with. In “7,621”
// the comma may part thousands or decimals: it is taken as what makes the answer
// right, or else as what brings it nearer to the right number.
func (sh *Sheet) number(i int, text string, own []float64, slipped bool) (m Mark, carry float64) {
	m, carry = sh.numberAs(i, text, own, slipped)
	if m.Verdict == Right || m.Verdict == Carried {
		return m, carry
	}
	if point := decimalComma(text); point != "" {
		as, value := sh.numberAs(i, point, own, slipped)
		if right := sh.Items[i].Right; as.Verdict == Right || as.Verdict == Carried || math.Abs(as.Value-right) < math.Abs(m.Value-right) {
			return as, value
		}
	}
	return m, carry
}

// decimalComma writes a point for the only comma of a text if three digits stand
// behind it; otherwise there is no doubt how it is meant, and it is empty.
func decimalComma(text string) string {
	before, after, found := strings.Cut(text, ",")
	if !found || strings.ContainsAny(before, ".") || strings.ContainsAny(after, ".,") || len(after) < 3 {
		return ""
	}
	for k := range min(len(after), 4) {
		if digit := after[k] >= '0' && after[k] <= '9'; digit != (k < 3) {
			return ""
		}
	}
	return before + "." + after
}

// numberAs marks a number as it is read.
func (sh *Sheet) numberAs(i int, text string, own []float64, slipped bool) (m Mark, carry float64) {
	m.Value = math.NaN()
	r := sh.read(sh.Items[i].Term, text)
	if r.fault != "" {
		m.Verdict, m.Say = Unread, r.fault
		return m, math.NaN()
	}
	m.Value = r.value
	sg := sh.segment(i, own)
	right := sh.Items[i].Right
	for _, target := range []float64{right, sg.right} {
		m.Own = slipped && target != right
		if sg.asRight(&m, &r, target) {
			if m.Verdict == Misunit {
				m.Value = target // what was meant
			}
			return m, m.Value
		}
	}
	m.Own = slipped && math.Abs(sg.right-right) > sg.tol
	sg.blame(&m, &r)
	return m, m.Value
}

// close is how near a number must be to the right one to pass as reckoned
// rightly with more rounding than was asked for: common practice in marking
// heads and powers.
const close = 0.003

// asRight judges an answer against a right number; it says whether it has.
func (sg *segment) asRight(m *Mark, r *reading, target float64) bool {
	off := math.Abs(r.value - target)
	within := sg.sheet.Template.Ask[sg.item].Within * math.Abs(target)
	fewer := math.Min(r.rounding, 0.02*math.Abs(target)) // of an answer with fewer digits
	switch {
	case off <= math.Max(sg.tol, within) || r.unit != nil && off <= math.Min(r.rounding, 2*sg.tol):
		m.Verdict, m.Points = Right, MostPoints
		if m.Own {
			m.Verdict = Carried
		}
		if u := sg.sheet.unit(sg.term); r.unit == nil && u.Print != "" && !u.Dim.HasMoney() {
			m.Say = "No unit is written; it was read as " + u.Print + "."
		}
	case off <= fewer*(1+1e-9) && sg.sheet.set.Book.Terms[sg.term].Kind == formula.Quantity:
		m.Verdict, m.Points = Rounded, MostPoints/2
		m.Say = "Right as far as it goes: four significant digits are asked for, " + sg.sheet.format(sg.term, target) + "."
	default:
		words := sg.otherUnits(r, target)
		if words == "" {
			return false
		}
		if sg.blamed(r) {
			m.Say = words // and a mistake leads to the same number: neither is sure
			return false
		}
		m.Verdict, m.Points, m.Say = Misunit, MostPoints/2, words
	}
	return true
}

// blamed says whether a single mistake gives the number.
func (sg *segment) blamed(r *reading) bool {
	for _, g := range sg.singles()[1:] {
		if math.Abs(g.value-r.value) <= g.tol {
			return true
		}
	}
	return false
}

func (item *Item) markChoice(text string) Mark {
	m := Mark{Verdict: Unread, Value: math.NaN(), Say: "Answer with one letter, A to " + letter(len(item.Options)-1) + "."}
	for i, o := range item.Options {
		if !strings.EqualFold(text, letter(i)) && !strings.EqualFold(text, o.Text) {
			continue
		}
		m.Verdict, m.Say = Wrong, o.Say
		if letter(i) == item.Answer {
			m.Verdict, m.Points, m.Say = Right, MostPoints, ""
		}
	}
	return m
}

// markOrder counts the longest run of things that stand in the right order,
// others between them or not: one thing out of place costs one.
func (item *Item) markOrder(text string) Mark {
	m := Mark{Verdict: Unread, Value: math.NaN(), Say: "Answer with the letters in their order, such as " + item.sample() + "."}
	given := letters(text)
	if len(given) != len(item.Answer) {
		return m
	}
	places := make([]int, 0, len(given))
	for i := range given {
		at := strings.IndexByte(item.Answer, given[i])
		if at < 0 || strings.IndexByte(given[i+1:], given[i]) >= 0 {
			return m
		}
		places = append(places, at)
	}
	run := longestRun(places)
	switch {
	case run == len(places):
		m.Verdict, m.Points, m.Say = Right, MostPoints, ""
	case run >= len(places)-1:
		m.Verdict, m.Points, m.Say = PartOnly, MostPoints/2, "One thing is out of place."
	default:
		m.Verdict, m.Say = Wrong, "Several things are out of place."
	}
	return m
}

// letters takes the letters out of a text, as capitals.
func letters(text string) string {
	var out []byte
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case c >= 'a' && c <= 'z':
			out = append(out, c-'a'+'A')
		case c != ' ' && c != ',' && c != '-' && c != '.' && c != ';':
			out = append(out, c)
		}
	}
	return string(out)
}

func (item *Item) sample() string {
	text := ""
	for i := len(item.Names) - 1; i >= 0; i-- {
		text += letter(i)
	}
	return text
}

// longestRun is the length of the longest rising subsequence.
func longestRun(list []int) int {
	best := make([]int, len(list))
	most := 0
	for i := range list {
		best[i] = 1
		for k := range i {
			if list[k] < list[i] {
				best[i] = max(best[i], best[k]+1)
			}
		}
		most = max(most, best[i])
	}
	return most
}
