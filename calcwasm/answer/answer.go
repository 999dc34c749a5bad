// Package answer is the talk between a page and the engine: a request of plain
// lines goes in, a reply in JSON comes out. Both are described in DEVELOPERS.md.
// The page never computes and never formats a number: what it shows stands in
// the reply. The native tool calls the same package, so that what is printed
// when a page is bound is what the page says when it is alive.
package answer

import (
	"strconv"
	"strings"

	"columnbowl/calcwasm/assembly"
	"columnbowl/calcwasm/exercise"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/physics"
	"columnbowl/calcwasm/picture"
	"columnbowl/calcwasm/reckon"
)

// Desk answers requests about one book, one at a time.
type Desk struct {
	book   *reckon.Book
	last   *brought        // the families of the request before this one
	solved *solved         // the question of the request before this one
	typed  *typed          // the facts of the requests before this one
	builds *assembly.Model // nil if the book has none
	cuts   *drawings       // nil while no profiles are loaded
	labels picture.Words   // of the pictures, in the language of the page
	words  words           // for searching, and for reading sentences
	set    *exercise.Set   // nil while no exercises are loaded
}

// Open takes a packed book.
func Open(pack []byte) (*Desk, error) {
	pack, builds := cutBuilds(pack)
	book, err := reckon.Unpack(pack, physics.Functions()...)
	if err != nil {
		return nil, err
	}
	if builds == nil {
		return New(book), nil
	}
	model, err := assembly.Unpack(builds, book)
	return New(book).WithBuilds(model), err
}

// New makes a desk for a book that is loaded already.
func New(book *reckon.Book) *Desk { return &Desk{book: book, labels: picture.Words{}, typed: &typed{}} }

// solved is a question with its result. A page asks for its numbers first and
// for its pictures right behind them: that is the same question.
type solved struct {
	book *reckon.Book
	told string
	res  *reckon.Result
}

// reckoned answers the question of a request, or tells again what it told last.
func (d *Desk) reckoned(book *reckon.Book, q *request) *reckon.Result {
	if d.solved == nil || d.solved.book != book || d.solved.told != q.told {
		d.solved = &solved{book: book, told: q.told, res: book.Reckon(q.question)}
	}
	return d.solved.res
}

// request is what a page asks.
type request struct {
	question reckon.Question
	told     string // the lines that the question was read from
	show     []int
	errors   map[int]string // terms whose typed text was not taken, and why
	strange  []string       // lines that were not understood
	pictures []wanted       // to be drawn again
	pieces   bool           // the parts of the pump are wanted as well
	table    bool           // they are wanted as a table for a file
	tableIn  formula.System // and in these units
	rows     string         // the table whose rows are to be decided; "" for none
	columns  *columnsAsked  // and the columns for the one that is drawn
	choice   *choice        // the families of bowls are ranked as well; nil if not
	pumps    bool           // where another pump would be chosen is told as well
	compare  []change       // what is to be otherwise, to be told beside what is
	why      int            // the term whose chain is wanted, -1 for none
	exact    bool           // values are told in full as well, for tests and for files
}

// read parses the lines of a request. What cannot be taken is told in the
// reply; the rest is worked with.
func (d *Desk) read(text string) *request {
	q := &request{question: reckon.Question{Want: -1, Choose: map[int]string{}}, errors: map[int]string{}, why: -1}
	var told []byte
	for _, line := range strings.Split(text, "\n") {
		if line == "" {
			continue
		}
		verb, rest, _ := strings.Cut(line, "\t")
		if q.other(d, verb, rest) || q.changes(d, verb, rest) {
			continue
		}
		if strings.HasPrefix(line, bowlVerb) {
			continue // taken before the others
		}
		id, value, _ := strings.Cut(rest, "\t")
		term, ok := d.book.Find(id)
		if !ok {
			q.strange = append(q.strange, "There is no term “"+id+"” in this book.")
			continue
		}
		if verb != "show" && verb != "why" {
			told = append(append(told, line...), '\n')
		}
		switch verb {
		case "want":
			q.question.Want = term
		case "why":
			q.why = term
		case "show":
			q.show = append(q.show, term)
		case "choose":
			q.question.Choose[term] = value
		case "fact":
			q.fact(d, term, value)
		default:
			q.strange = append(q.strange, "“"+verb+"” means nothing in a request.")
		}
	}
	q.told = string(told)
	return q
}

func (q *request) fact(d *Desk, term int, text string) {
	f, trouble := d.typed.read(d.book, term, text)
	if trouble != "" {
		q.errors[term] = trouble
		return
	}
	for i := range q.question.Facts {
		if q.question.Facts[i].Term == term {
			q.question.Facts[i] = f
			return
		}
	}
	q.question.Facts = append(q.question.Facts, f)
}

// Answer works a request out and writes the reply.
func (d *Desk) Answer(text []byte) []byte { return d.Append(nil, text) }

// Append works a request out and appends the reply to a buffer, which a page
// uses again and again: a reply of the whole chain has 45 kB.
func (d *Desk) Append(buf, text []byte) []byte {
	if reply, ok := d.talk(buf, string(text)); ok {
		return reply
	}
	w := &writer{buf: buf}
	if d.cut(w, string(text)) || d.practice(w, string(text)) {
		return w.buf
	}
	with := d.bowls(string(text))
	desk, here := d, *d
	d = &here
	d.book = with.book
	q := d.read(string(text))
	if onlyWords(string(text)) {
		return append(buf, "{}"...)
	}
	res := desk.reckoned(d.book, q)
	d.book = res.Book // with the figures of the family that was chosen
	w.object(func() {
		if q.question.Want >= 0 {
			w.pair("want", d.book.Terms[q.question.Want].ID)
		}
		d.counts(w, res, q)
		w.list("terms", len(q.show), func(i int) { d.term(w, res, q, q.show[i]) })
		w.list("clashes", len(res.Clashes), func(i int) { d.clash(w, res, &res.Clashes[i]) })
		d.cautions(w, res, q)
		w.list("missing", len(res.Missing), func(i int) { d.missing(w, res.Missing[i]) })
		d.steps(w, res, q)
		w.list("hangs", len(res.Hangs), func(i int) { d.hang(w, res, &res.Hangs[i]) })
		d.turns(w, res, q)
		d.pictures(w, res, q)
		d.why(w, res, q)
		if q.compare != nil {
			d.comparison(w, res, q)
		}
		if q.pieces {
			d.pieces(w, res)
		}
		if q.table {
			d.table(w, res, q.tableIn)
		}
		d.rows(w, res, q.rows)
		if q.choice != nil {
			here.book = with.book
			d.choice(w, q)
		}
		if q.pumps {
			here.book = with.book
			d.pumps(w, q)
		}
		with.tell(w)
		w.list("strange", len(q.strange), func(i int) { w.text(q.strange[i]) })
	})
	return w.buf
}

var states = []reckon.State{reckon.Given, reckon.Follows, reckon.Estimated, reckon.Assumed, reckon.Missing, reckon.Waits,
	reckon.Clashes, reckon.NotApplicable, reckon.Outside, reckon.Several}

func (d *Desk) counts(w *writer, res *reckon.Result, q *request) {
	w.member("count", func() {
		w.object(func() {
			for _, s := range states {
				n := 0
				for _, t := range q.show {
					if res.Values[t].State == s {
						n++
					}
				}
				w.number(s.String(), n)
			}
		})
	})
}

func (d *Desk) term(w *writer, res *reckon.Result, q *request, t int) {
	v, term := &res.Values[t], &d.book.Terms[t]
	w.object(func() {
		w.pair("id", term.ID)
		w.pair("state", v.State.String())
		if term.Kind == formula.Choice {
			w.pair("choice", res.Word(t))
		} else {
			d.value(w, res, t, "us", formula.US)
			d.value(w, res, t, "si", formula.SI)
		}
		w.member("work", func() {
			w.object(func() {
				w.always("us", res.Work(t, formula.US))
				w.always("si", res.Work(t, formula.SI))
			})
		})
		if q.exact && v.Likely == v.Likely {
			w.pair("exact", strconv.FormatFloat(v.Likely, 'g', -1, 64))
		}
		w.pair("relation", d.relation(v))
		w.pair("note", Note(res, t))
		w.pair("error", q.errors[t])
		if v.State == reckon.Waits {
			d.ids(w, "waits", res.WaitsFor(t))
		}
		w.list("alternatives", len(v.Alternatives), func(i int) { d.alternative(w, t, &v.Alternatives[i]) })
	})
}

func (d *Desk) value(w *writer, res *reckon.Result, t int, key string, s formula.System) {
	n := ""
	if v := &res.Values[t]; v.Likely == v.Likely {
		n = res.Number(t, s)
	}
	w.member(key, func() {
		w.object(func() {
			w.always("n", n)
			w.always("u", d.book.Terms[t].In(s).Print)
		})
	})
}

func (d *Desk) relation(v *reckon.Value) string {
	if v.Rule < 0 {
		return ""
	}
	return d.book.Rules[v.Rule].Words(d.book)
}

func (d *Desk) alternative(w *writer, t int, a *reckon.Alternative) {
	rule := &d.book.Rules[a.Rule]
	w.object(func() {
		w.pair("name", rule.Name)
		if a.Value == a.Value {
			w.pair("us", d.book.Format(t, a.Value, formula.US))
			w.pair("si", d.book.Format(t, a.Value, formula.SI))
		}
		w.pair("say", rule.Say)
		w.pair("reason", a.Reason)
		w.flag("chosen", a.Chosen)
	})
}

func (d *Desk) ids(w *writer, key string, terms []int) {
	w.list(key, len(terms), func(i int) { w.text(d.book.Terms[terms[i]].ID) })
}

func (d *Desk) clash(w *writer, res *reckon.Result, c *reckon.Clash) {
	w.object(func() {
		w.pair("term", d.book.Terms[c.Term].ID)
		w.pair("text", res.ClashText(c, formula.US))
		w.pair("textSi", res.ClashText(c, formula.SI))
		d.ids(w, "facts", c.Facts)
	})
}

// cautions tells of the cautions of the terms that are shown, and of those that
// fire at a fact which is not shown: a link brings more facts than a sheet has lines.
func (d *Desk) cautions(w *writer, res *reckon.Result, q *request) {
	shown, given := make([]bool, len(d.book.Terms)), make([]bool, len(d.book.Terms))
	for _, t := range q.show {
		shown[t] = true
	}
	for i := range q.question.Facts {
		given[q.question.Facts[i].Term] = len(q.show) > 0
	}
	var list []reckon.CautionState
	for _, c := range res.Cautions {
		if home := d.book.Cautions[c.Caution].Home; shown[home] || given[home] && c.Truth == formula.True {
			list = append(list, c)
		}
	}
	w.list("cautions", len(list), func(i int) {
		c := &d.book.Cautions[list[i].Caution]
		w.object(func() {
			w.pair("id", c.ID)
			w.pair("term", d.book.Terms[c.Home].ID)
			w.pair("state", TruthWord(list[i].Truth))
			w.flag("danger", c.Danger)
			w.hazard(d.book, c)
			w.pair("text", c.Say)
			lacks := res.Lacks(list[i])
			w.list("lacks", len(lacks), func(k int) { w.text(d.book.Terms[lacks[k]].Name) })
		})
	})
}

// hazard writes of which kind a danger is: its id, its name and its words.
func (w *writer) hazard(b *reckon.Book, c *reckon.Caution) {
	h := b.Hazard(c.Hazard)
	if h == nil {
		return
	}
	w.pair("hazard", h.ID)
	w.pair("kind", h.Name)
	w.pair("stop", h.Say)
}

// rows tells of the rows of a table which hold, and what the others lack.
func (d *Desk) rows(w *writer, res *reckon.Result, table string) {
	list := res.Rows(table)
	w.list("rows", len(list), func(i int) {
		s := &list[i]
		w.object(func() {
			w.pair("id", d.book.Rows[s.Row].ID)
			w.pair("state", RowWord(s.Truth))
			w.list("lacks", len(s.Lacks), func(k int) { w.text(d.book.Terms[s.Lacks[k]].Name) })
		})
	})
}

// RowWord is how the state of a row is called.
func RowWord(t formula.Truth) string {
	switch t {
	case formula.True:
		return "holds"
	case formula.False:
		return "not"
	}
	return "unchecked"
}

// TruthWord is how the state of a caution is called.
func TruthWord(t formula.Truth) string {
	switch t {
	case formula.True:
		return "fires"
	case formula.False:
		return "clear"
	}
	return "unchecked"
}

func (d *Desk) missing(w *writer, set []int) {
	w.object(func() {
		w.list("terms", len(set), func(i int) {
			t := &d.book.Terms[set[i]]
			w.object(func() {
				w.pair("id", t.ID)
				w.pair("name", t.Name)
				w.pair("ask", t.Ask)
			})
		})
	})
}

func (d *Desk) steps(w *writer, res *reckon.Result, q *request) {
	if q.question.Want < 0 {
		return
	}
	chain := res.Chain(q.question.Want)
	w.list("steps", len(chain), func(i int) { w.text(res.Step(chain[i], formula.US)) })
	w.list("stepsSi", len(chain), func(i int) { w.text(res.Step(chain[i], formula.SI)) })
}
