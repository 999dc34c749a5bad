package exercise

import (
	"errors"
	"strconv"
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// packForm is the version of the packed form.
const packForm = "column-and-bowl exercises 1"

// Pack writes the templates, and the mistakes that can be made in them, as one
// text for the page. It belongs to the pack of the same book: terms are named by
// their places in it.
func (s *Set) Pack() []byte {
	w := &packer{}
	w.line(packForm, strconv.Itoa(len(s.Book.Terms)))
	place := s.packSlips(w)
	for i := range s.Templates {
		w.template(&s.Templates[i], place)
	}
	return []byte(w.b.String())
}

// packSlips writes the slips with a term that some template leads through, and
// returns their new places; -1 for those left behind.
func (s *Set) packSlips(w *packer) []int {
	used := make([]bool, len(s.Book.Terms))
	for i := range s.Templates {
		for _, p := range s.Templates[i].plans {
			for k := range p.steps {
				used[p.steps[k].term] = used[p.steps[k].term] || p.chain[k]
			}
		}
	}
	place, n := make([]int, len(s.slips)), 0
	for i := range s.slips {
		place[i] = -1
		if sl := &s.slips[i]; used[sl.Home] {
			place[i] = n
			n++
			w.line("slip", sl.ID, number(sl.Home), sl.Say, sl.wrong.Left.Pack(), sl.wrong.Right.Pack())
		}
	}
	for i := range s.slips {
		for k := i + 1; k < len(s.slips) && place[i] >= 0; k++ {
			if r := s.both[[2]int{i, k}]; r != nil {
				w.line("both", number(place[i]), number(place[k]), r.Left.Pack(), r.Right.Pack())
			}
		}
	}
	return place
}

type packer struct{ b strings.Builder }

func (w *packer) line(fields ...string) {
	for i, f := range fields {
		if i > 0 {
			w.b.WriteByte('\t')
		}
		w.b.WriteString(strings.NewReplacer("\\", "\\\\", "\t", "\\t", "\n", "\\n", "\r", "").Replace(f))
	}
	w.b.WriteByte('\n')
}

func number(n int) string { return strconv.Itoa(n) }

func float(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

func (w *packer) template(t *Template, place []int) {
	w.line("exercise", t.ID, t.Name, number(t.Level), t.Place, t.Text, number(t.Pick), strings.Join(t.Allow, " "))
	for i := range t.Facts {
		f := &t.Facts[i]
		fields := []string{"fact", number(f.Term), float(f.Step)}
		for _, e := range append([]*formula.Expr{f.From, f.To}, f.OneOf...) {
			if e == nil {
				fields = append(fields, "")
			} else {
				fields = append(fields, e.Pack())
			}
		}
		w.line(fields...)
	}
	for _, k := range t.Keep {
		w.line("keep", k.Pack())
	}
	for i, a := range t.Ask {
		w.line("ask", number(a.Term), float(a.Step), float(a.Within))
		for _, l := range t.lessons[i] {
			if as := l.as; place[l.slip] >= 0 {
				if as >= 0 {
					as = place[as]
				}
				w.line("lesson", number(place[l.slip]), number(as))
			}
		}
	}
	for i := range t.Choose {
		c := &t.Choose[i]
		w.line("choose", c.Ask, c.Right.Text, c.Right.Say)
		for _, o := range c.Wrong {
			w.line("wrong", o.Text, o.Say)
		}
	}
	for i := range t.Order {
		w.line(append([]string{"order", t.Order[i].Ask, number(t.Order[i].Take)}, t.Order[i].Items...)...)
	}
}

// unpacker reads a pack.
type unpacker struct {
	set *Set
	bad bool
}

// Unpack reads what Pack wrote, for the same book.
func Unpack(text []byte, book *reckon.Book) (*Set, error) {
	u := &unpacker{set: &Set{Book: book, both: map[[2]int]*formula.Relation{}, work: formula.NewEnv(book.Scope)}}
	for i, line := range strings.Split(strings.TrimSuffix(string(text), "\n"), "\n") {
		f := strings.Split(line, "\t")
		for j := range f {
			f[j] = unescape(f[j])
		}
		if i == 0 {
			u.bad = len(f) != 2 || f[0] != packForm || f[1] != number(len(book.Terms))
		} else {
			u.line(f)
		}
		if u.bad {
			return nil, errors.New("the exercises cannot be read: line " + number(i+1) + " does not fit this engine and this book")
		}
	}
	u.set.index()
	return u.set, nil
}

func (u *unpacker) line(f []string) {
	if u.shared(f) {
		return
	}
	if len(u.set.Templates) == 0 {
		u.bad = true
		return
	}
	t := &u.set.Templates[len(u.set.Templates)-1]
	switch {
	case f[0] == "fact" && len(f) >= 5:
		fact := formula.Drawn{Term: u.index(f[1], len(u.set.Book.Terms)), Step: u.float(f[2]), From: u.expr(f[3]), To: u.expr(f[4])}
		for _, e := range f[5:] {
			u.bad = u.bad || e == ""
			fact.OneOf = append(fact.OneOf, u.expr(e))
		}
		u.bad = u.bad || fact.From == nil && fact.OneOf == nil
		t.Facts = append(t.Facts, fact)
	case f[0] == "keep" && len(f) == 2 && f[1] != "":
		t.Keep = append(t.Keep, u.expr(f[1]))
	case f[0] == "ask" && len(f) == 4:
		t.Ask = append(t.Ask, formula.Asked{Term: u.index(f[1], len(u.set.Book.Terms)), Step: u.float(f[2]), Within: u.float(f[3])})
		t.lessons = append(t.lessons, nil)
	case f[0] == "lesson" && len(f) == 3 && len(t.Ask) > 0:
		last := len(t.lessons) - 1
		t.lessons[last] = append(t.lessons[last], lesson{u.index(f[1], len(u.set.slips)), u.place(f[2], len(u.set.slips))})
	case f[0] == "choose" && len(f) == 4:
		t.Choose = append(t.Choose, formula.Choose{Ask: f[1], Right: formula.Option{Text: f[2], Say: f[3]}})
	case f[0] == "wrong" && len(f) == 3 && len(t.Choose) > 0:
		c := &t.Choose[len(t.Choose)-1]
		c.Wrong = append(c.Wrong, formula.Option{Text: f[1], Say: f[2]})
	case f[0] == "order" && len(f) > 5:
		t.Order = append(t.Order, formula.Order{Ask: f[1], Take: u.index(f[2], len(f)-2), Items: f[3:]})
	default:
		u.bad = true
	}
}

// shared reads a line that belongs to no template, or begins one.
func (u *unpacker) shared(f []string) bool {
	switch {
	case f[0] == "slip" && len(f) == 6:
		u.set.slips = append(u.set.slips, Slip{ID: f[1], Home: u.index(f[2], len(u.set.Book.Terms)), Say: f[3], wrong: u.relation(f[4], f[5])})
	case f[0] == "both" && len(f) == 5:
		u.set.both[[2]int{u.index(f[1], len(u.set.slips)), u.index(f[2], len(u.set.slips))}] = u.relation(f[3], f[4])
	case f[0] == "exercise" && len(f) == 8:
		u.set.Templates = append(u.set.Templates, Template{ID: f[1], Name: f[2], Level: u.index(f[3], 4), Place: f[4], Text: f[5],
			Pick: u.index(f[6], 100), Allow: strings.Fields(f[7])})
	default:
		return false
	}
	return true
}

func (u *unpacker) relation(left, right string) *formula.Relation {
	r := &formula.Relation{Left: u.expr(left), Right: u.expr(right)}
	u.bad = u.bad || r.Left == nil || r.Right == nil
	return r
}

// expr reads an expression; an empty one is nil.
func (u *unpacker) expr(text string) *formula.Expr {
	if text == "" {
		return nil
	}
	e, err := formula.Unpack(text, u.set.Book.Scope)
	u.bad = u.bad || err != nil
	return e
}

// unescape undoes what the packer does to tabs and line ends.
func unescape(s string) string {
	if strings.IndexByte(s, '\\') < 0 {
		return s
	}
	out := make([]byte, 0, len(s))
	for i := 0; i < len(s); i++ {
		c := s[i]
		if c == '\\' && i+1 < len(s) {
			i++
			switch c = s[i]; c {
			case 't':
				c = '\t'
			case 'n':
				c = '\n'
			}
		}
		out = append(out, c)
	}
	return string(out)
}

// place reads a whole number below a bound; -1 is allowed.
func (u *unpacker) place(text string, below int) int {
	n, err := strconv.Atoi(text)
	if err != nil || n < -1 || n >= below {
		u.bad = true
		return 0
	}
	return n
}

// index reads a whole number from 0 on, below a bound.
func (u *unpacker) index(text string, below int) int {
	n := u.place(text, below)
	u.bad = u.bad || n < 0
	return max(n, 0)
}

func (u *unpacker) float(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	u.bad = u.bad || err != nil
	return v
}
