package class

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"

	"columnbowl/calcwasm/exercise"
	"columnbowl/calcwasm/formula"
)

// quantities are the facts that have digits to confuse.
func quantities(l *learner) []exercise.Fact {
	var list []exercise.Fact
	for _, f := range l.sheet.Facts() {
		if l.set.Book.Terms[f.Term].Kind == formula.Quantity && l.sheet.Items[0].Term != f.Term {
			list = append(list, f)
		}
	}
	return list
}

func swapFact(l *learner) ([]string, int) {
	facts := quantities(l)
	f := facts[l.rng.IntN(len(facts))]
	u := l.set.Book.Terms[f.Term].US
	text, ok := swapDigits(strconv.FormatFloat(u.FromSI(f.Value), 'g', 6, 64), l.rng)
	if !ok {
		return nil, 0
	}
	l.env.Values[f.Term] = u.ToSI(mustFloat(text))
	return l.firstOff(f.Term)
}

// firstOff works the sheet out and finds the first item that a wrong fact moves.
func (l *learner) firstOff(fact int) ([]string, int) {
	v := l.work()
	for i := range v {
		if t := l.sheet.Items[i].Term; math.Abs(v[i]-l.sheet.Items[i].Right) > 1e-3*math.Abs(l.sheet.Items[i].Right) && l.env.Known(t) {
			return l.answers(v), i
		}
	}
	return nil, 0
}

func swapDigits(text string, rng *rand.Rand) (string, bool) {
	b := []byte(text)
	for range 8 {
		i := rng.IntN(len(b))
		k := i + 1
		if k < len(b) && b[k] == '.' {
			k++
		}
		if k < len(b) && b[i] >= '0' && b[i] <= '9' && b[k] >= '0' && b[k] <= '9' && b[i] != b[k] {
			b[i], b[k] = b[k], b[i]
			return string(b), true
		}
	}
	return "", false
}

// wrongLine takes another fact of the same kind. Where that is a mistake of the
// book in other words, it is no slip of the pen.
func wrongLine(l *learner) ([]string, int) {
	facts := quantities(l)
	f, o := facts[l.rng.IntN(len(facts))], facts[l.rng.IntN(len(facts))]
	if f.Term == o.Term || l.set.Book.Terms[f.Term].Dim() != l.set.Book.Terms[o.Term].Dim() {
		return nil, 0
	}
	l.env.Values[f.Term] = o.Value
	answers, item := l.firstOff(f.Term)
	if answers == nil || knownAs(l, f.Term, o.Term, item) {
		return nil, 0
	}
	return answers, item
}

// knownAs says whether taking one fact for another is a mistake of the book: on
// other sheets of the exercise as well, both lead to the same number.
func knownAs(l *learner, fact, other, item int) bool {
	key := fmt.Sprint(l.sheet.Template.ID, fact, other, item)
	if known, seen := knownWays[key]; seen {
		return known
	}
	knownWays[key] = isKnown(l, fact, other, item)
	return knownWays[key]
}

var knownWays = map[string]bool{}

func isKnown(l *learner, fact, other, item int) bool {
	var others []*learner
	var taken []float64 // what each gets with one fact taken for the other
	for seed := range uint64(4) {
		sheet, _ := l.set.Draw(l.sheet.Template, 1000+seed)
		o := newLearner(l.set, sheet, l.rng)
		o.round = false
		o.start()
		o.env.Values[fact] = o.env.Values[other]
		others, taken = append(others, o), append(taken, o.work()[item])
	}
	for k := range l.set.Book.Mistakes {
		m := &l.set.Book.Mistakes[k]
		same := l.shows(m.Home) >= 0
		for i := 0; same && i < len(others); i++ {
			same = math.Abs(others[i].leads(m, item)-taken[i]) <= 1e-9*math.Abs(taken[i])
		}
		if same {
			return true
		}
	}
	return false
}

func swapAnswer(l *learner) ([]string, int) {
	answers, i := rightAnswers(l), l.rng.IntN(len(l.sheet.Items))
	text, ok := swapDigits(answers[i], l.rng)
	if !ok || l.set.Book.Terms[l.sheet.Items[i].Term].Kind == formula.Count {
		return nil, 0
	}
	answers[i] = text
	return answers, i
}

func otherUnit(l *learner) ([]string, int) {
	answers, i := rightAnswers(l), l.rng.IntN(len(l.sheet.Items))
	t := &l.set.Book.Terms[l.sheet.Items[i].Term]
	if t.US.Symbol == t.SI.Symbol {
		return nil, 0
	}
	answers[i] = strconv.FormatFloat(t.SI.FromSI(l.sheet.Items[i].Right), 'g', 4, 64)
	return answers, i
}

// misread takes another digit for one digit of a fact that is drawn; nobody
// misreads the specific gravity of 1 that stands on every sheet.
func misread(l *learner) ([]string, int) {
	facts := quantities(l)
	f := facts[l.rng.IntN(len(facts))]
	for _, d := range l.sheet.Template.Facts {
		if d.Term == f.Term && d.To == nil && d.OneOf == nil {
			return nil, 0
		}
	}
	u := l.set.Book.Terms[f.Term].US
	b := []byte(strconv.FormatFloat(u.FromSI(f.Value), 'f', -1, 64))
	i := l.rng.IntN(min(len(b), 5))
	if b[i] < '0' || b[i] > '9' {
		return nil, 0
	}
	b[i] = byte('0' + (int(b[i]-'0')+1+l.rng.IntN(9))%10)
	l.env.Values[f.Term] = u.ToSI(mustFloat(string(b)))
	return l.firstOff(f.Term)
}

// lostCarry puts an answer off by a power of ten.
func lostCarry(l *learner) ([]string, int) {
	i := l.rng.IntN(len(l.sheet.Items))
	term := l.sheet.Items[i].Term
	u := l.set.Book.Terms[term].US
	n := u.FromSI(l.sheet.Items[i].Right)
	size := math.Pow10(int(math.Floor(math.Log10(math.Abs(n)))) - l.rng.IntN(3))
	if l.rng.IntN(2) == 0 {
		size = -size
	}
	answers := rightAnswers(l)
	answers[i] = l.written(term, u.ToSI(n+size))
	if n+size == 0 {
		return nil, 0
	}
	return answers, i
}

// usedTwice adds a fact of the same kind to an answer once more, where that is
// no mistake of the book.
func usedTwice(l *learner) ([]string, int) {
	i := l.rng.IntN(len(l.sheet.Items))
	term, facts := l.sheet.Items[i].Term, quantities(l)
	f := facts[l.rng.IntN(len(facts))]
	if l.set.Book.Terms[f.Term].Dim() != l.set.Book.Terms[term].Dim() || f.Value == 0 {
		return nil, 0
	}
	v := l.sheet.Items[i].Right + f.Value
	for k := range l.set.Book.Mistakes {
		if m := &l.set.Book.Mistakes[k]; l.shows(m.Home) >= 0 {
			if alone := l.leads(m, i); math.Abs(alone-v) <= 1e-9*math.Abs(v) {
				return nil, 0
			}
		}
	}
	l.start()
	answers := rightAnswers(l)
	answers[i] = l.written(term, v)
	return answers, i
}

// dropDigit leaves a digit of a fact out.
func dropDigit(l *learner) ([]string, int) {
	facts := quantities(l)
	f := facts[l.rng.IntN(len(facts))]
	u := l.set.Book.Terms[f.Term].US
	text := strconv.FormatFloat(u.FromSI(f.Value), 'g', 6, 64)
	i := l.rng.IntN(len(text))
	if text[i] < '0' || text[i] > '9' || len(text) < 3 {
		return nil, 0
	}
	v, err := strconv.ParseFloat(text[:i]+text[i+1:], 64)
	if err != nil || v == u.FromSI(f.Value) {
		return nil, 0
	}
	l.env.Values[f.Term] = u.ToSI(v)
	return l.firstOff(f.Term)
}

// twoDigits rounds a fact to two digits.
func twoDigits(l *learner) ([]string, int) {
	facts := quantities(l)
	f := facts[l.rng.IntN(len(facts))]
	u := l.set.Book.Terms[f.Term].US
	v := mustFloat(strconv.FormatFloat(u.FromSI(f.Value), 'g', 2, 64))
	l.env.Values[f.Term] = u.ToSI(v)
	return l.firstOff(f.Term)
}
