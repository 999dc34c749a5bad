package class

import (
	"bytes"
	"fmt"
	"hash/fnv"
	"io"
	"strconv"
	"strings"

	"columnbowl/calcwasm/exercise"
	"columnbowl/calcwasm/formula"
)

// Sheet is the sheet of one learner.
type Sheet struct {
	Learner
	*exercise.Sheet
}

// Check is six letters that stand for what the sheet tells and asks; letters,
// because an office program takes 12e345 for a number.
// A seed draws the same sheet as long as the content is the same; when somebody
// has changed the exercise or the mistakes of its terms meanwhile, the check
// tells that the sheet handed out was another.
func (s *Sheet) Check() string {
	h := fnv.New32a()
	io.WriteString(h, s.Situation())
	for i := range s.Items {
		io.WriteString(h, "\n"+s.Title(i)+strings.Join(s.Items[i].Names, ",")+s.Items[i].Answer)
	}
	check := make([]byte, 6)
	for i := range check {
		check[i] = 'a' + byte(h.Sum32()>>(4*i)&15)
	}
	return string(check)
}

// Progress is told how much of a long piece of work is done. It may be nil.
type Progress func(done, of int)

func (p Progress) tell(done, of int) {
	if p != nil {
		p(done, of)
	}
}

// Draw draws a sheet of each exercise for each learner: all of one learner's
// sheets stand together.
func Draw(set *exercise.Set, exercises []*exercise.Template, class []Learner, seed uint64, progress Progress) ([]Sheet, error) {
	var list []Sheet
	for i, l := range class {
		for _, t := range exercises {
			sheet, why := set.Draw(t, SeedOf(seed, i))
			if sheet == nil {
				return nil, fmt.Errorf("no facts were found for the exercise %s and the seed %d (%s); take another seed", t.ID, SeedOf(seed, i), why)
			}
			list = append(list, Sheet{l, sheet})
		}
		progress.tell(i+1, len(class))
	}
	return list, nil
}

// InSI tells and asks sheets in SI. Their facts stay what the seed has drawn.
func InSI(sheets []Sheet) {
	for i := range sheets {
		sheets[i].System = formula.SI
	}
}

// answerColumns are the headings of the file of answers before the answers; a
// file of sheets in SI has the column “units” behind them.
var answerColumns = []string{"learner", "name", "exercise", "seed", "check"}

const (
	unitsColumn = "units"
	inSI        = "si" // in that column; anything else stands for US units
)

// AnswerFile makes the file in which the answers are written: a row for each
// sheet, a column for each item.
func AnswerFile(sheets []Sheet, d Dialect) []byte {
	most, si := 0, false
	for i := range sheets {
		most = max(most, len(sheets[i].Items))
		si = si || sheets[i].System == formula.SI
	}
	head := append([]string{}, answerColumns...)
	if si {
		head = append(head, unitsColumn)
	}
	for i := range most {
		head = append(head, answerHeading(i))
	}
	var b bytes.Buffer
	w := d.table(&b)
	_ = w.Write(head) // a Buffer does not fail
	for i := range sheets {
		s := &sheets[i]
		line := []string{s.ID, s.Name, s.Template.ID, strconv.FormatUint(s.Seed, 10), s.Check()}
		if si {
			line = append(line, s.System.String())
		}
		_ = w.Write(append(line, make([]string, most)...))
	}
	w.Flush()
	return b.Bytes()
}

func answerHeading(i int) string { return "answer " + strconv.Itoa(i+1) }

// Marked is a sheet with what was answered and how it was judged.
type Marked struct {
	Sheet
	Answers []string
	Marks   []exercise.Mark
	line    int // of the file of answers
	columns []int
}

// Points adds up what the answers count, and what they could.
func (m *Marked) Points() (points, most int) {
	for i := range m.Marks {
		points += m.Marks[i].Points
	}
	return points, exercise.MostPoints * len(m.Marks)
}

// Unread tells the answers that cannot be read, each with its place in the file:
// some were typed wrongly, and can be put right there.
func Unread(file string, marked []Marked) []Fault {
	var list []Fault
	for i := range marked {
		m := &marked[i]
		for k := range m.Marks {
			if m.Marks[k].Verdict == exercise.Unread {
				list = append(list, Fault{file, m.line, m.columns[k], fmt.Sprintf("The answer “%s” of %s cannot be read. %s", m.Answers[k], m.Name, m.Marks[k].Say)})
			}
		}
	}
	return list
}

// MarkFile marks a file of answers. Rows that cannot be used become faults.
// Learners of the class without a row are told as well.
func MarkFile(set *exercise.Set, class []Learner, file string, text []byte, progress Progress) ([]Marked, []Fault) {
	t, faults := read(file, text)
	col, more := t.need(answerColumns...)
	if faults = append(faults, more...); len(more) > 0 {
		return nil, faults
	}
	m := marker{set: set, file: file, col: col, units: t.column(unitsColumn), byID: map[string]Learner{}, seen: map[string]int{}}
	for _, l := range class {
		m.byID[l.ID] = l
	}
	for i := 0; t.column(answerHeading(i)) >= 0; i++ {
		m.answers = append(m.answers, t.column(answerHeading(i)))
	}
	var list []Marked
	for i := range t.rows {
		if one, fault := m.row(&t.rows[i]); fault != nil {
			faults = append(faults, *fault)
		} else {
			list = append(list, one)
		}
		progress.tell(i+1, len(t.rows))
	}
	if len(list) == 0 { // then the reason is told already, and it is one for all
		return nil, faults
	}
	return list, append(faults, m.absent(class)...)
}

// marker reads and marks rows.
type marker struct {
	set     *exercise.Set
	file    string
	col     []int // learner, name, exercise, seed, check
	units   int   // -1 if the file has no such column
	answers []int
	byID    map[string]Learner
	seen    map[string]int // by learner, exercise and seed: the line
}

func (m *marker) row(r *row) (Marked, *Fault) {
	bad := func(field int, format string, args ...any) (Marked, *Fault) {
		return Marked{}, &Fault{m.file, r.line, r.at(field), fmt.Sprintf(format, args...)}
	}
	l, known := m.learner(r.get(m.col[0]))
	if !known {
		return bad(m.col[0], "There is no learner “%s” in the class.", r.get(m.col[0]))
	}
	t := m.set.Find(r.get(m.col[2]))
	if t == nil {
		return bad(m.col[2], "There is no exercise “%s”.", r.get(m.col[2]))
	}
	seed, err := strconv.ParseUint(r.get(m.col[3]), 10, 64)
	if err != nil {
		return bad(m.col[3], "A seed is a whole number as it stands on the sheet, not “%s”.", r.get(m.col[3]))
	}
	key := l.ID + "\t" + t.ID + "\t" + strconv.FormatUint(seed, 10)
	if line := m.seen[key]; line > 0 {
		return bad(m.col[0], "This sheet was answered in line %d already; this row is not marked.", line)
	}
	sheet, why := m.set.Draw(t, seed)
	if sheet == nil {
		return bad(m.col[3], "From the seed %d no sheet of this exercise comes: %s.", seed, why)
	}
	if strings.EqualFold(r.get(m.units), inSI) {
		sheet.System = formula.SI
	}
	out := Marked{Sheet: Sheet{l, sheet}, line: r.line}
	if check := r.get(m.col[4]); check != "" && check != out.Check() {
		return bad(m.col[4], "The sheet that was handed out is not the one that this seed draws now: the content has changed since. Mark it with the content of that day (--content).")
	}
	m.seen[key] = r.line
	for i := range sheet.Items {
		text, column := "", 1
		if i < len(m.answers) {
			text, column = r.get(m.answers[i]), r.at(m.answers[i])
		}
		out.Answers = append(out.Answers, text)
		out.columns = append(out.columns, column)
	}
	for i := len(sheet.Items); i < len(m.answers); i++ {
		if r.get(m.answers[i]) != "" {
			return bad(m.answers[i], "This sheet has %d items, and an answer stands in “%s”.", len(sheet.Items), answerHeading(i))
		}
	}
	out.Marks = sheet.Mark(out.Answers)
	return out, nil
}

// learner finds a learner by the sign, also where an office program has taken 01
// for a number and written 1.
func (m *marker) learner(sign string) (Learner, bool) {
	if l, ok := m.byID[sign]; ok {
		return l, true
	}
	found, n := Learner{}, 0
	for id, l := range m.byID {
		if sign != "" && strings.TrimLeft(id, "0") == sign {
			found, n = l, n+1
		}
	}
	return found, n == 1
}

// absent names the learners of the class that have no row.
func (m *marker) absent(class []Learner) []Fault {
	var faults []Fault
	for _, l := range class {
		found := false
		for key := range m.seen {
			found = found || len(key) > len(l.ID) && key[:len(l.ID)+1] == l.ID+"\t"
		}
		if !found {
			faults = append(faults, Fault{m.file, 1, 1, "No row of " + l.Name + " (" + l.ID + ") could be marked."})
		}
	}
	return faults
}
