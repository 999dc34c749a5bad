package class

import (
	"fmt"
	"strconv"
	"strings"

	"columnbowl/calcwasm/exercise"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// Question is one thing asked, by itself: for systems that ask and mark without
// our engine. What comes before it on a sheet is told, and what an answer counts
// is written down beforehand.
type Question struct {
	ID, Title string
	Kind      exercise.ItemKind
	Situation string   // XHTML
	Cautions  []string // what can hurt somebody in it
	Before    []Told   // numbers of the same sheet that are worked out already
	Ask, Unit string
	Options   []formula.Option // of a choice
	Names     []string         // of an ordering, as shown: A, B, C …
	Answer    string           // the letter of a choice, the letters of an ordering
	Right     float64          // of a number, in Unit
	Bands     []Band           // of a number; the first that an answer lies in judges it
}

// Told is a number that a question brings along.
type Told struct{ Name, Value string }

// Band judges the answers from Low to High, in the unit of the question.
type Band struct {
	Low, High float64
	Points    int    // of exercise.MostPoints
	Say       string // what to tell the learner
}

// MostVariants is how many variants of an exercise a bank may have.
const MostVariants = 50

// Bank makes the questions of some exercises. Each question of an exercise with
// facts has so many variants, all from sheets of their own, so that none tells
// the answer of another. What has no facts to draw is there once; an order, in
// so many selections.
func (o *Office) Bank(exercises []*exercise.Template, seed uint64, variants int, system formula.System, progress Progress) ([]Question, error) {
	var list []Question
	for n, t := range exercises {
		b := banker{o: o, t: t, seed: seed, variants: variants, system: system}
		if err := b.exercise(); err != nil {
			return nil, err
		}
		list = append(list, b.list...)
		progress.tell(n+1, len(exercises))
	}
	return list, nil
}

// banker makes the questions of one exercise.
type banker struct {
	o        *Office
	t        *exercise.Template
	seed     uint64
	variants int
	system   formula.System
	list     []Question
}

func (b *banker) exercise() error {
	first, err := b.sheet(0)
	if err != nil {
		return err
	}
	if len(b.t.Facts) == 0 {
		for k := range b.t.Choose {
			if err := b.fixed(first, k); err != nil {
				return err
			}
		}
	}
	n := len(first.Items)
	for place := range b.variants * n {
		if len(b.t.Facts) == 0 && first.Items[place%n].Kind == exercise.Choice {
			continue
		}
		s, err := b.sheet(place)
		if err == nil {
			err = b.drawn(s, place%n)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func (b *banker) sheet(place int) (*Sheet, error) {
	seed := SeedOf(b.seed, place)
	sheet, why := b.o.Set.Draw(b.t, seed)
	if sheet == nil {
		return nil, fmt.Errorf("no facts were found for the exercise %s and the seed %d (%s); take another seed", b.t.ID, seed, why)
	}
	sheet.System = b.system
	return &Sheet{Sheet: sheet}, nil
}

// begin makes a question without what is asked.
func (b *banker) begin(s *Sheet, id string) (Question, error) {
	text, err := b.o.situation(s)
	return Question{ID: b.t.ID + "-" + id, Title: b.t.Name, Situation: string(text), Cautions: s.Cautions()}, err
}

// fixed makes a question of a choice that has no facts. Its options begin at
// another one in each, so that the right one has no place of its own.
func (b *banker) fixed(s *Sheet, k int) error {
	q, err := b.begin(s, "q"+strconv.Itoa(k+1))
	c := &b.t.Choose[k]
	options := append([]formula.Option{c.Right}, c.Wrong...)
	turn := (int(b.seed%uint64(len(options))) + k) % len(options)
	q.Kind, q.Ask = exercise.Choice, c.Ask
	q.Options = append(append(q.Options, options[turn:]...), options[:turn]...)
	q.Answer = letter((len(options) - turn) % len(options))
	b.list = append(b.list, q)
	return err
}

// drawn makes a question of one item of a sheet.
func (b *banker) drawn(s *Sheet, i int) error {
	q, err := b.begin(s, strconv.FormatUint(s.Seed, 10)+"-"+strconv.Itoa(i+1))
	item := &s.Items[i]
	q.Kind, q.Ask, q.Unit, q.Options, q.Names, q.Answer = item.Kind, s.Title(i), s.Unit(i), item.Options, item.Names, item.Answer
	if item.Kind == exercise.Number {
		q.Title += ": " + q.Ask
		for k := range i {
			q.Before = append(q.Before, Told{s.Title(k), s.Amount(k, s.Items[k].Right)})
		}
		j := newJudge(b.o.Set, s, i)
		q.Right, q.Bands = j.unit.FromSI(item.Right), j.bands()
	}
	b.list = append(b.list, q)
	return err
}

// judge asks the marker what it says of numbers in place of one right answer.
type judge struct {
	set     *exercise.Set
	s       *Sheet
	item    int
	unit    *unit.Unit
	answers []string // the right ones up to the item
	list    []Band
}

func newJudge(set *exercise.Set, s *Sheet, item int) *judge {
	j := &judge{set: set, s: s, item: item}
	for k := range item + 1 {
		u := set.Book.Terms[s.Items[k].Term].In(s.System)
		j.unit = u
		text := strconv.FormatFloat(u.FromSI(s.Items[k].Right), 'g', -1, 64)
		if u.Print != "" {
			text += " " + u.Symbol
		}
		j.answers = append(j.answers, text)
	}
	return j
}

// mark is what the marker says of a bare number in the question's unit.
func (j *judge) mark(number float64) exercise.Mark {
	j.answers[j.item] = strconv.FormatFloat(number, 'g', 9, 64)
	return j.s.Mark(j.answers)[j.item]
}

// bands lists how numbers are judged: the right one, the right one in another
// unit or with its point elsewhere, what the mistakes give, and near the right
// one, in the order in which the marker looks.
func (j *judge) bands() []Band {
	right := j.s.Items[j.item].Right
	off, allowed := j.s.Off(j.item)
	j.add(right, allowed, j.unit, 1)
	for _, u := range unit.All() {
		if u.Dim == j.unit.Dim && u.Reference == j.unit.Reference {
			j.add(right, off, u, 1)
		}
	}
	for _, scale := range []float64{10, 100, 1000, 0.1, 0.01, 0.001} {
		j.add(right, off, j.unit, scale)
	}
	for _, t := range j.s.Traces(j.item) {
		j.add(t.Value, t.Off, j.unit, 1)
	}
	const near = 0.0029 // inside of the 0.3 % that the marker takes for rounding
	for _, side := range []float64{1 - near, 1 + near} {
		if m := j.mark(j.unit.FromSI(right * side)); m.Verdict == exercise.Rounded {
			low, high := j.unit.FromSI(right*(1-near)), j.unit.FromSI(right*(1+near))
			j.list = append(j.list, Band{min(low, high), max(low, high), m.Points, m.Say})
			break
		}
	}
	return j.list
}

// add puts in a band about a value, written in a unit and with its point moved,
// if the marker has anything to say of it that is not said yet.
func (j *judge) add(v, off float64, u *unit.Unit, scale float64) {
	number := u.FromSI(v) * scale
	m := j.mark(number)
	half := off / u.Factor * scale
	low, high := number-half, number+half
	for _, b := range j.list {
		if number >= b.Low && number <= b.High {
			return
		}
	}
	if say := j.say(&m); m.Points > 0 || say != "" {
		j.list = append(j.list, Band{low, high, m.Points, say})
	}
}

// say is a mark in words: what it tells, and the causes that it names or offers.
func (j *judge) say(m *exercise.Mark) string {
	text := m.Say
	if m.Points == exercise.MostPoints {
		return "" // “No unit is written”: the question asks for none
	}
	for i, c := range m.Causes {
		switch {
		case m.Verdict == exercise.Slipped:
		case i == 0:
			text += " It could be this: "
		default:
			text += " Or: "
		}
		for _, slip := range c.Slips {
			text += j.set.Slip(slip).Say
		}
	}
	return strings.TrimSpace(text)
}
