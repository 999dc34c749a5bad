package class

import (
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"columnbowl/build/book"
	"columnbowl/build/report"
	"columnbowl/calcwasm/exercise"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// The simulated class. Its learners work a sheet out by themselves: with the
// network's formulas, not with the marker's code, rounding on the way as people
// do. Some make mistakes of the book, one or two; some write nonsense; some slip
// in ways the book knows nothing of.

func content(t testing.TB) (*book.Book, *exercise.Set) {
	t.Helper()
	c := loaded()
	if len(c.faults) > 0 {
		t.Fatalf("the content has errors; run make proof: %v", c.faults[0].Message)
	}
	return c.book, c.set
}

// loaded is the content, read once for all tests of the package.
var loaded = sync.OnceValue(func() (c struct {
	book   *book.Book
	set    *exercise.Set
	faults report.List
}) {
	b, found := book.Load(os.DirFS("../../content"))
	set, more := b.Practice()
	c.book, c.set, c.faults = b, set, append(found, more...)
	return c
})

// learner works out one sheet.
type learner struct {
	set   *exercise.Set
	sheet *exercise.Sheet
	res   *reckon.Result // how the network gets from the facts to the terms
	env   *formula.Env   // the learner's own numbers
	round bool           // rounds every number on the way to four digits
	rng   *rand.Rand
	slips map[int]*reckon.Mistake // by the term it is made with
}

func newLearner(set *exercise.Set, sheet *exercise.Sheet, rng *rand.Rand) *learner {
	l := &learner{set: set, sheet: sheet, rng: rng, round: rng.IntN(2) == 0, slips: map[int]*reckon.Mistake{}}
	l.res = l.wayOf()
	l.start()
	return l
}

// start takes the facts as they stand on the sheet.
func (l *learner) start() {
	l.env = formula.NewEnv(l.set.Book.Scope)
	for _, f := range l.sheet.Facts() {
		l.env.Values[f.Term] = l.read(f)
	}
	assumed(l.res, l.env)
}

// read is a fact as its sheet tells it: in SI with the digits that stand there.
func (l *learner) read(f exercise.Fact) float64 {
	t := &l.set.Book.Terms[f.Term]
	if l.sheet.System == formula.US || t.Kind == formula.Choice || t.US.Symbol == t.SI.Symbol {
		return f.Value
	}
	text := l.sheet.FactText(t.ID)
	number, _, _ := strings.Cut(text, "\u00a0")
	return t.SI.ToSI(mustFloat(strings.ReplaceAll(strings.ReplaceAll(number, "−", "-"), ",", "")))
}

// unit is the unit that the learner works and writes in.
func (l *learner) unit(term int) *unit.Unit { return l.set.Book.Terms[term].In(l.sheet.System) }

// work works out all numbers asked, in their order.
func (l *learner) work() []float64 {
	var out []float64
	for i := range l.sheet.Items {
		term := l.sheet.Items[i].Term
		for _, t := range l.res.Chain(term) {
			if l.env.Known(t) {
				continue
			}
			v := l.res.Values[t].Expr.Eval(l.env)
			if m := l.slips[t]; m != nil {
				v = wrongValue(m, l.env)
			}
			if l.round && l.set.Book.Terms[t].Kind == formula.Quantity {
				v = l.four(t, v)
			}
			l.env.Values[t] = v
		}
		out = append(out, l.env.Values[term])
	}
	return out
}

func wrongValue(m *reckon.Mistake, env *formula.Env) float64 {
	v := m.Wrong.Right.Eval(env)
	if m.Wrong.Left.Op == formula.Bare {
		v = m.Wrong.Left.Unit.ToSI(v)
	}
	return v
}

// four rounds a value to four significant digits of its unit.
func (l *learner) four(term int, v float64) float64 {
	u := l.unit(term)
	n, _ := strconv.ParseFloat(strconv.FormatFloat(u.FromSI(v), 'g', 4, 64), 64)
	return u.ToSI(n)
}

// written is a value as a learner writes it: four digits, mostly with the unit.
func (l *learner) written(term int, v float64) string {
	t, u := &l.set.Book.Terms[term], l.unit(term)
	text := strconv.FormatFloat(u.FromSI(v), 'g', 4, 64)
	if n := u.FromSI(v); math.Abs(n) >= 1e-3 && math.Abs(n) < 1e7 { // write zeros at the end, as asked: 195.0
		digits := 3 - int(math.Floor(math.Log10(math.Abs(mustFloat(text)))))
		text = strconv.FormatFloat(mustFloat(text), 'f', max(digits, 0), 64)
	}
	if t.Kind == formula.Count {
		text = strconv.FormatFloat(math.Round(v), 'f', 0, 64)
	}
	if u.Print != "" && (l.rng.IntN(4) > 0 || u.Symbol == "%") {
		text += " " + u.Symbol
	}
	return text
}

func mustFloat(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(err)
	}
	return v
}

// can lists the mistakes that this learner can make and that change a number:
// those of the terms that have to be worked out, with formulas in which all is
// known at that point.
func (l *learner) can() []*reckon.Mistake {
	var list []*reckon.Mistake
	b := l.set.Book
	for i := range l.sheet.Items {
		for _, t := range l.res.Chain(l.sheet.Items[i].Term) {
			if l.env.Known(t) {
				continue
			}
			right := l.res.Values[t].Expr.Eval(l.env)
			if first := b.First(t); first != nil && (first.When == nil || first.When.Test(l.env) == formula.True) {
				list = append(list, l.wrongWays(t, right)...)
			}
			l.env.Values[t] = right
		}
	}
	l.start()
	return list
}

// wrongWays lists the mistakes with a term that change its number now.
func (l *learner) wrongWays(term int, right float64) []*reckon.Mistake {
	var list []*reckon.Mistake
	for k := range l.set.Book.Mistakes {
		m := &l.set.Book.Mistakes[k]
		if m.Home != term {
			continue
		}
		if v := wrongValue(m, l.env); v == v && l.four(term, v) != l.four(term, right) {
			list = append(list, m)
		}
	}
	return list
}

// answers writes all numbers of a sheet.
func (l *learner) answers(values []float64) []string {
	var out []string
	for i, v := range values {
		out = append(out, l.written(l.sheet.Items[i].Term, v))
	}
	return out
}

// shows is the item on which a mistake with a term shows: the first asked one
// that stands on it.
func (l *learner) shows(term int) int {
	for i := range l.sheet.Items {
		if slices.Contains(l.res.Chain(l.sheet.Items[i].Term), term) {
			return i
		}
	}
	return -1
}

// names says whether a mark names a mistake: it, or one that gives the very same
// number on this sheet.
func (l *learner) names(mark *exercise.Mark, item int, made ...*reckon.Mistake) bool {
	for _, c := range mark.Causes {
		if len(c.Slips) != len(made) {
			continue
		}
		left := slices.Clone(c.Slips)
		for _, m := range made {
			if at := slices.IndexFunc(left, func(s int) bool { return l.alike(s, m, item) }); at >= 0 {
				left = slices.Delete(left, at, at+1)
			}
		}
		if len(left) == 0 {
			return true
		}
	}
	return false
}

// alike says whether the slip named is the mistake made, or the same in other
// words: alone it leads to the same number.
func (l *learner) alike(slip int, m *reckon.Mistake, item int) bool {
	if l.set.Slip(slip).ID == m.ID {
		return true
	}
	other := &l.set.Book.Mistakes[slip]
	a, b := l.leads(other, item), l.leads(m, item)
	return math.Abs(a-b) <= 3e-4*math.Abs(b)
}

// leads is what one mistake alone gives in an item.
func (l *learner) leads(m *reckon.Mistake, item int) float64 {
	o := *l
	o.round, o.slips = false, map[int]*reckon.Mistake{m.Home: m}
	o.start()
	return o.work()[item]
}
