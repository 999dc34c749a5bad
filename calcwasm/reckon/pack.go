package reckon

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// packForm is the version of the packed form.
const packForm = "column-and-bowl book 6"

// Pack writes a loaded book as one text for the page, so that an edited book
// needs no Go. Expressions go as they were parsed and checked; worked examples
// and mistakes stay behind: a page carries them as text and as facts.
func (b *Book) Pack() []byte {
	w := &packer{}
	w.line(packForm, b.ID, b.Title, b.Money)
	for i := range b.Terms {
		w.term(&b.Terms[i])
	}
	for _, bowl := range b.Bowls {
		w.bowl(bowl)
	}
	for i := range b.Rules {
		w.rule(&b.Rules[i])
	}
	for _, h := range b.Hazards {
		w.line("hazard", h.ID, h.Name, h.Say)
	}
	for i := range b.Cautions {
		w.caution(b, &b.Cautions[i])
	}
	for i := range b.Rows {
		r := &b.Rows[i]
		w.line("row", r.Table, r.ID, r.When.Pack())
	}
	return []byte(w.b.String())
}

// caution leaves out the words that a hazard has already.
func (w *packer) caution(b *Book, c *Caution) {
	own := c.Say
	if h := b.Hazard(c.Hazard); h != nil && h.Say == own {
		own = ""
	}
	w.line("caution", c.ID, place(c.Home), c.When.Pack(), flag(c.Danger), c.Hazard, own)
}

type packer struct{ b strings.Builder }

func (w *packer) line(fields ...string) {
	for i, f := range fields {
		if i > 0 {
			w.b.WriteByte('\t')
		}
		w.b.WriteString(escape(f))
	}
	w.b.WriteByte('\n')
}

func (w *packer) term(t *Term) {
	us, si := "", ""
	if t.US != nil {
		us, si = t.US.Symbol, t.SI.Symbol
	}
	w.line("term", t.ID, t.Title, t.Name, t.Symbol, strconv.Itoa(int(t.Kind)), us, si, float(t.Low), float(t.High), float(t.Otherwise),
		strconv.Itoa(int(t.Reference)), t.Ask, places(t.Applies))
	for i, v := range t.Values {
		w.line("value", v, t.Labels[i])
	}
}

func (w *packer) rule(r *Rule) {
	left, right, leftSI, rightSI, when := "", "", "", "", ""
	if r.Relation != nil {
		left, right = r.Relation.Left.Pack(), r.Relation.Right.Pack()
	}
	if r.SI != nil {
		leftSI, rightSI = r.SI.Left.Pack(), r.SI.Right.Pack()
	}
	if r.When != nil {
		when = r.When.Pack()
	}
	verb := "rule"
	if r.Each {
		verb = "each"
	}
	w.line(verb, strconv.Itoa(int(r.Strength)), r.Name, place(r.Home), place(r.Target), float(r.Value), when, left, right, leftSI, rightSI, r.Say)
}

// bowl writes a family as ReadBowl reads it.
func (w *packer) bowl(b *Bowl) {
	fields := []string{"bowl", b.ID, "name " + b.Name, "origin " + Origins[b.Origin]}
	if b.Note != "" {
		fields = append(fields, "note "+b.Note)
	}
	for i, f := range b.values {
		if f.Known() {
			fields = append(fields, bowlFields[i].Name+" "+f.String())
		}
	}
	for _, p := range b.Points {
		text := p.Capacity.String() + ";" + p.Head.String() + ";" + p.Efficiency.String() + ";" + p.NPSHRequired.String()
		fields = append(fields, "point "+strings.TrimRight(text, ";"))
	}
	w.line(fields...)
}

func float(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

func place(i int) string { return strconv.Itoa(i) }

func places(list []int) string {
	text := ""
	for i, p := range list {
		if i > 0 {
			text += " "
		}
		text += place(p)
	}
	return text
}

func flag(on bool) string {
	if on {
		return "1"
	}
	return ""
}

// escape keeps tabs and line ends out of a field.
func escape(s string) string {
	if !strings.ContainsAny(s, "\\\t\n\r") {
		return s
	}
	s = strings.ReplaceAll(s, "\\", "\\\\")
	s = strings.ReplaceAll(s, "\t", "\\t")
	s = strings.ReplaceAll(s, "\r", "")
	return strings.ReplaceAll(s, "\n", "\\n")
}

func unescape(s string) string {
	at := strings.IndexByte(s, '\\')
	if at < 0 || at+1 == len(s) {
		return s
	}
	c := s[at+1 : at+2]
	switch c {
	case "t":
		c = "\t"
	case "n":
		c = "\n"
	}
	return s[:at] + c + unescape(s[at+2:])
}

// unpacker reads a packed book. Terms stand before what uses them.
type unpacker struct {
	book  *Book
	exprs *formula.Unpacker
	bad   bool
}

// Unpack reads what Pack wrote. funcs are the functions of the physics.
func Unpack(text []byte, funcs ...*formula.Func) (*Book, error) {
	u := &unpacker{book: &Book{}}
	var f []string // of one line, used again for the next
	for i, line := range strings.Split(strings.TrimSuffix(string(text), "\n"), "\n") {
		f = f[:0]
		for rest, more := line, true; more; {
			var field string
			field, rest, more = strings.Cut(rest, "\t")
			f = append(f, unescape(field))
		}
		if i > 0 && u.book.Scope == nil && f[0] != "term" && f[0] != "value" {
			u.scope(funcs)
		}
		if u.line(i, f); u.bad {
			return nil, errors.New("the book's data cannot be read: line " + strconv.Itoa(i+1) + " is not of the form that this engine knows")
		}
	}
	if u.book.Scope == nil {
		u.scope(funcs)
	}
	u.book.index()
	return u.book, nil
}

func (u *unpacker) line(i int, f []string) {
	switch {
	case i == 0 && len(f) == 4 && f[0] == packForm:
		u.book.ID, u.book.Title, u.book.Money = f[1], f[2], f[3]
	case i > 0 && f[0] == "term" && len(f) == 14 && u.book.Scope == nil:
		u.term(f)
	case i > 0 && f[0] == "value" && len(f) == 3 && len(u.book.Terms) > 0 && u.book.Scope == nil:
		t := &u.book.Terms[len(u.book.Terms)-1]
		t.Values, t.Labels = append(t.Values, f[1]), append(t.Labels, f[2])
	case i > 0 && f[0] == "bowl" && len(f) > 2:
		bowl, problems := ReadBowl(f[1], f[2:])
		u.book.Bowls = append(u.book.Bowls, bowl)
		u.bad = len(problems) > 0
	case i > 0 && (f[0] == "rule" || f[0] == "each") && len(f) == 12:
		u.rule(f)
	case i > 0 && f[0] == "hazard" && len(f) == 4:
		u.book.Hazards = append(u.book.Hazards, Hazard{ID: f[1], Name: f[2], Say: f[3]})
	case i > 0 && f[0] == "caution" && len(f) == 7:
		u.caution(f)
	case i > 0 && f[0] == "row" && len(f) == 4:
		u.book.Rows = append(u.book.Rows, Row{Table: f[1], ID: f[2], When: u.expr(f[3])})
	default:
		u.bad = true
	}
}

func (u *unpacker) scope(funcs []*formula.Func) {
	terms := make([]formula.Term, len(u.book.Terms))
	for i := range terms {
		terms[i] = u.book.Terms[i].Term
	}
	u.book.Scope = formula.NewScope(terms, funcs)
	u.book.findBuild()
	u.exprs = formula.NewUnpacker(u.book.Scope)
}

func (u *unpacker) term(f []string) {
	t := Term{Term: formula.Term{ID: f[1], Name: f[3], Symbol: f[4], Kind: formula.Kind(u.number(f[5]))}, Title: f[2],
		Low: u.float(f[8]), High: u.float(f[9]), Otherwise: math.NaN(), Reference: unit.Reference(u.number(f[11])), Ask: f[12]}
	if t.Kind != formula.Choice {
		var okUS, okSI bool
		t.US, okUS = unit.Lookup(f[6])
		t.SI, okSI = unit.Lookup(f[7])
		u.bad = u.bad || !okUS || !okSI
	}
	if f[10] != "NaN" {
		t.Otherwise = u.float(f[10])
	}
	for _, p := range strings.Fields(f[13]) {
		t.Applies = append(t.Applies, u.number(p))
	}
	u.book.Terms = append(u.book.Terms, t)
}

func (u *unpacker) rule(f []string) {
	r := Rule{Strength: Strength(u.number(f[1])), Name: f[2], Home: u.number(f[3]), Target: u.number(f[4]), Value: u.float(f[5]), Say: f[11], Block: -1,
		Each: f[0] == "each"}
	if f[6] != "" {
		r.When = u.expr(f[6])
	}
	if f[7] != "" {
		r.Relation = u.relation(f[7], f[8])
	}
	if f[9] != "" {
		r.SI = u.relation(f[9], f[10])
	}
	u.bad = u.bad || r.Each && (r.Relation == nil || u.book.bowl < 0)
	u.book.Rules = append(u.book.Rules, r)
}

func (u *unpacker) relation(left, right string) *formula.Relation {
	return &formula.Relation{Left: u.expr(left), Right: u.expr(right)}
}

func (u *unpacker) expr(text string) *formula.Expr {
	e, err := u.exprs.Unpack(text)
	if err != nil {
		u.bad = true
		return &formula.Expr{}
	}
	return e
}

// number reads the place of a term, or a small enumeration; -1 is allowed.
func (u *unpacker) number(text string) int {
	n, err := strconv.Atoi(text)
	if err != nil || n < -1 || n >= max(len(u.book.Terms), 64) {
		u.bad = true
		return 0
	}
	return n
}

func (u *unpacker) float(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	u.bad = u.bad || err != nil
	return v
}

func (u *unpacker) caution(f []string) {
	c := formula.Caution{When: u.expr(f[3]), Danger: f[4] != "", Hazard: f[5], Say: f[6]}
	if h := u.book.Hazard(c.Hazard); h != nil && c.Say == "" {
		c.Say = h.Say
	}
	u.book.Cautions = append(u.book.Cautions, Caution{ID: f[1], Home: u.number(f[2]), Caution: c})
}
