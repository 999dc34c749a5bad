package index_test

import (
	"encoding/csv"
	"os"
	"slices"
	"strings"
	"testing"

	"columnbowl/build/book"
	"columnbowl/build/index"
	"columnbowl/calcwasm/ask"
	"columnbowl/calcwasm/reckon"
)

// sentence is one row of a file of testdata/ask.
type sentence struct {
	text  string
	facts []string   // "static-level=180 ft"
	asked [][]string // for each question the terms, or term=value, that it must be between
	note  string
}

// sentences reads a file: the columns are the sentence, the facts that it must
// give, joined by ";", what it must ask, and a note. One question has its terms
// joined by ";"; or each question is written “piece: term | term”, several divided
// by ";".
func sentences(t testing.TB, name string) []sentence {
	t.Helper()
	f, err := os.Open("../../testdata/ask/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment, r.LazyQuotes, r.FieldsPerRecord = '#', true, -1
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list []sentence
	for _, row := range rows[1:] {
		row = append(row, "", "", "")
		s := sentence{text: row[0], note: row[3], facts: items(row[1], ";")}
		if strings.Contains(row[2], ": ") {
			for _, q := range items(row[2], ";") {
				_, terms, _ := strings.Cut(q, ": ")
				s.asked = append(s.asked, items(terms, "|"))
			}
		} else if one := items(row[2], ";"); len(one) > 0 {
			s.asked = [][]string{one}
		}
		list = append(list, s)
	}
	return list
}

func items(text, by string) []string {
	var list []string
	for _, s := range strings.Split(text, by) {
		if s = strings.TrimSpace(s); s != "" {
			list = append(list, s)
		}
	}
	return list
}

// verdict on a sentence.
type verdict int

const (
	right  verdict = iota // every fact sure, every question asked, nothing else
	asked                 // nothing wrong, but something was asked that was said
	missed                // nothing wrong, but something was not understood
	wrong                 // something was taken for sure that was not said
)

// examiner holds readings against what they must be.
type examiner struct {
	t      testing.TB
	book   *reckon.Book
	reader *ask.Reader

	facts [3]int // how many were told apart by ask.State: not understood, asked, sure
	first int    // facts that are asked, and stand first in their question
	wrong int    // readings taken for sure that were not said
}

func newExaminer(t testing.TB, b *book.Book) *examiner {
	t.Helper()
	r, err := ask.Open(string(index.Vocabulary(b)), b.Engine)
	if err != nil {
		t.Fatal(err)
	}
	return &examiner{t: t, book: b.Engine, reader: r}
}

// same tells whether a candidate is a fact "term=value": the numbers must be the
// same in SI.
func (e *examiner) same(c ask.Candidate, fact string) bool {
	id, value, _ := strings.Cut(fact, "=")
	if e.book.Terms[c.Term].ID != strings.TrimSpace(id) {
		return false
	}
	if value == "" {
		return true
	}
	want, err := e.book.Read(c.Term, strings.TrimSpace(value))
	if err != nil {
		e.t.Errorf("the file says %q: %v", fact, err)
		return false
	}
	have, err := e.book.Read(c.Term, c.Value)
	if err != nil {
		e.t.Errorf("the reading %s=%q is not taken: %v", id, c.Value, err)
		return false
	}
	if strings.HasPrefix(c.Value, "about ") && want.Low == want.High {
		return near(have.Likely, want.Likely) // the files write the number alone
	}
	return near(have.Low, want.Low) && near(have.Likely, want.Likely) && near(have.High, want.High)
}

func near(a, b float64) bool {
	d, size := a-b, max(a, -a, b, -b)
	return max(d, -d) <= 1e-9*size
}

// examine reads a sentence and judges it; why tells what is not right.
func (e *examiner) examine(s sentence) (v verdict, why []string) {
	note := func(worse verdict, text string) {
		v = max(v, worse)
		why = append(why, text)
	}
	readings := e.reader.Read(s.text)
	for _, r := range readings {
		if r.State != ask.Sure {
			continue
		}
		c := r.Candidates[0]
		if !slices.ContainsFunc(s.facts, func(f string) bool { return e.same(c, f) }) {
			e.wrong++
			note(wrong, "“"+s.text[r.From:r.To]+"” taken for "+e.book.Terms[c.Term].ID+"="+c.Value)
		}
	}
	for _, f := range s.facts {
		state := e.found(readings, f)
		e.facts[state]++
		if state == ask.Asked && e.stands(readings, f) {
			e.first++
		}
		switch state {
		case ask.Asked:
			note(asked, "asked: "+f)
		case ask.Unknown:
			note(missed, "not understood: "+f)
		}
	}
	for _, q := range s.asked {
		if !e.asks(readings, q) {
			note(missed, "not asked: "+strings.Join(q, ", "))
		}
	}
	for _, r := range readings {
		if r.State == ask.Asked && !e.wanted(r, s) {
			note(asked, "needless: "+r.Message)
		}
	}
	return v, why
}

// stands tells whether a fact is the first candidate of a question.
func (e *examiner) stands(readings []ask.Reading, fact string) bool {
	return slices.ContainsFunc(readings, func(r ask.Reading) bool { return r.State == ask.Asked && e.same(r.Candidates[0], fact) })
}

// found is the best state in which a fact was read.
func (e *examiner) found(readings []ask.Reading, fact string) ask.State {
	best := ask.Unknown
	for _, r := range readings {
		for i, c := range r.Candidates {
			if (r.State == ask.Asked || i == 0) && e.same(c, fact) {
				best = max(best, r.State)
			}
		}
	}
	return best
}

// asks tells whether one reading asks between all of these.
func (e *examiner) asks(readings []ask.Reading, group []string) bool {
	for _, r := range readings {
		if r.State != ask.Asked {
			continue
		}
		all := true
		for _, term := range group {
			all = all && slices.ContainsFunc(r.Candidates, func(c ask.Candidate) bool { return e.same(c, term) })
		}
		if all {
			return true
		}
	}
	return false
}

// wanted tells whether a question belongs to what a sentence must ask, or is
// counted already as one about a fact.
func (e *examiner) wanted(r ask.Reading, s sentence) bool {
	for _, c := range r.Candidates {
		for _, q := range append(s.asked, s.facts) {
			if slices.ContainsFunc(q, func(term string) bool { return e.same(c, term) }) {
				return true
			}
		}
	}
	return false
}

// report examines a file and tells the rates; it lists what is not right.
func report(t *testing.T, name string) (e *examiner, counts [4]int, all int) {
	t.Helper()
	e = newExaminer(t, handbook(t))
	words := [...]string{"right", "asked", "missed", "WRONG"}
	for _, s := range sentences(t, name) {
		v, why := e.examine(s)
		counts[v]++
		all++
		if v != right {
			t.Logf("%s: %q\n      %s", words[v], s.text, strings.Join(why, "\n      "))
		}
	}
	t.Logf("%s: %d sentences, %d right, %d with a question too many, %d not all understood, %d wrong",
		name, all, counts[right], counts[asked], counts[missed], counts[wrong])
	e.tell(t, name)
	return e, counts, all
}

// tell tells how many facts were told apart.
func (e *examiner) tell(t *testing.T, name string) {
	t.Logf("%s: of %d facts %d are read, %d asked (%d of them first), %d not understood; %d readings are wrong", name,
		e.facts[0]+e.facts[1]+e.facts[2], e.facts[ask.Sure], e.facts[ask.Asked], e.first, e.facts[ask.Unknown], e.wrong)
}

// reached is what a set must not fall behind: so many sentences may be read
// wrong, so many facts are sure, and so many are sure or asked with the right
// one first.
type reached struct {
	sentences, wrong int
	sure, right      int
}

// hold compares a set with what was reached.
func (e *examiner) hold(t *testing.T, name string, counts [4]int, all int, r reached) {
	t.Helper()
	if all < r.sentences {
		t.Errorf("%s: only %d sentences of %d", name, all, r.sentences)
	}
	if counts[wrong] > r.wrong {
		t.Errorf("%s: %d sentences are read wrong, more than %d", name, counts[wrong], r.wrong)
	}
	if sure, right := e.facts[ask.Sure], e.facts[ask.Sure]+e.first; sure < r.sure || right < r.right {
		t.Errorf("%s: %d facts are read and %d with those asked first, less than %d and %d", name, sure, right, r.sure, r.right)
	}
}

// Each set as README.md of testdata/ask tells of it.
func TestSentences(t *testing.T) {
	for _, set := range []struct {
		name string
		reached
	}{
		{"sentences.csv", reached{393, 0, 349, 466}},
		{"blind.csv", reached{80, 0, 112, 171}},
		{"third.csv", reached{75, 0, 67, 121}},
		{"practice.csv", reached{90, 0, 147, 235}},
		{"fourth.csv", reached{75, 0, 99, 172}},
		{"fifth.csv", reached{75, 1, 87, 163}},
		{"relatives.csv", reached{110, 0, 84, 178}},
	} {
		e, counts, all := report(t, set.name)
		e.hold(t, set.name, counts, all, set.reached)
	}
}

// The second blind half, which nobody reads: of it the test tells counts alone.
func TestUnreadSentences(t *testing.T) {
	e := newExaminer(t, handbook(t))
	var counts [4]int
	all := sentences(t, "unread.csv")
	for _, s := range all {
		v, _ := e.examine(s)
		counts[v]++
	}
	t.Logf("unread.csv: %d sentences, %d right, %d with a question too many, %d not all understood, %d wrong",
		len(all), counts[right], counts[asked], counts[missed], counts[wrong])
	e.tell(t, "unread.csv")
	e.hold(t, "unread.csv", counts, len(all), reached{80, 1, 71, 136})
}
