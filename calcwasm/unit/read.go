package unit

import "strings"

// longestText is the longest text read; a field is for one number or range.
const longestText = 200

// Read reads what a person typed into a field: a number, a range, or a number
// with a width, with or without units. See the package example for what is
// taken. The error is a *ReadError.
//
//   - "1,250.5" groups thousands; "1250,5" has a decimal comma. A comma before
//     exactly three digits groups, unless the number begins with 0.
//   - "6 5/8 in", "1-11/16 in", "5/8\"", "12'6\"", "12 ft 6 in".
//   - "180 to 200 ft", "180-200 ft", "180 ft to 60 m", "between 180 and 200 ft".
//   - "400 +- 20 gpm", "400 gpm ± 5 %", "about 400 gpm", "~400".
//   - A bare number has the field's unit. In a percent field a bare number above
//     0 and up to 1 is asked back.
//   - lb and kg in a field of force are read as force, with a note.
func Read(text string, f Field) (Typed, error) {
	if f.Unit == nil {
		f.Unit = bySymbol["1"]
	}
	if f.Reference == NoReference {
		f.Reference = f.Unit.Reference
	}
	r := &reader{source: text, cleaned: clean(text), field: f}
	if len(text) > longestText {
		return Typed{}, r.fault(NotANumber, 0, len(r.text), "This text is too long for one value. "+r.wants())
	}
	said, err := r.statement()
	if err != nil {
		return Typed{}, err
	}
	typed, err := r.settle(said)
	if err != nil {
		return Typed{}, err
	}
	return typed, nil
}

// reader goes through the cleaned text of one field.
type reader struct {
	source string
	cleaned
	pos   int
	field Field
}

// amount is a number with the unit typed behind it.
type amount struct {
	numeral
	unit       *Unit   // nil when none was typed
	start, end int     // in the cleaned text
	tail       *Unit   // the last unit of "12 ft 6 in", where a smaller one may follow
	said       bool    // the unit was typed with it
	weight     float64 // 1, or standard gravity for a mass read as a force
	marks      bool    // its first unit was the foot mark
	notes      []string
}

// shape is how the amounts of a statement stand to each other.
type shape uint8

const (
	single shape = iota
	span         // from first to second
	width        // first give or take second
)

// statement is what a whole text says.
type statement struct {
	shape         shape
	first, second amount
	about         bool
	dash          bool // a range written with a dash
}

func (r *reader) rest() string { return r.text[r.pos:] }

func (r *reader) skip() {
	for r.pos < len(r.text) && r.text[r.pos] == ' ' {
		r.pos++
	}
}

// typed is the person's own text between two places of the cleaned one.
func (r *reader) typed(from, to int) string {
	return strings.TrimSpace(r.source[r.at[from]:r.at[to]])
}

// word reads one of the words, when it stands at the reader's place as a whole
// word, in any letter case. Signs need not end at a word boundary.
func (r *reader) word(words ...string) string {
	rest := r.rest()
	for _, w := range words {
		if len(rest) < len(w) || !strings.EqualFold(rest[:len(w)], w) {
			continue
		}
		if isLetter(w[len(w)-1]) && letterAt(rest, len(w)) {
			continue
		}
		r.pos += len(w)
		r.skip()
		return w
	}
	return ""
}

var (
	aboutWords = []string{"about", "approximately", "approx.", "approx", "around", "roughly", "circa", "ca.", "ca", "c.", "some", "say", "~", "≈"}
	afterWords = []string{"or so", "approximately", "approx.", "approx", "roughly", "about"}
	widthWords = []string{"+-", "+/-", "± ", "±", "-+", "plus or minus", "plus minus", "give or take"}
	spanWords  = []string{"through", "to", "till", "until", "...", "..", "…", "-"}
	boundWords = []string{"less than", "more than", "not more than", "no more than", "not less than", "no less than", "at least", "at most",
		"minimum", "maximum", "max.", "max", "min.", "under", "over", "above", "below", "up to", "<=", ">=", "<", ">", "≤", "≥"}
)

// statement reads the whole text.
func (r *reader) statement() (s statement, err *ReadError) {
	r.skip()
	if strings.TrimSpace(r.text) == "" {
		return s, r.fault(Empty, 0, 0, "Nothing is written here. "+r.wants())
	}
	for r.word(aboutWords...) != "" {
		s.about = true
	}
	if bound := r.word(boundWords...); bound != "" {
		return s, r.fault(Ambiguous, 0, len(r.text), quote(strings.TrimSpace(r.source))+
			" gives one end only. Write the number you expect, or a range such as "+r.spanExample()+".")
	}
	between := r.word("between", "from")
	if s.first, err = r.amount(); err != nil {
		return s, err
	}
	r.skip()
	if err := r.second(&s, between == "between"); err != nil {
		return s, err
	}
	r.skip()
	for r.word(afterWords...) != "" {
		s.about = true
	}
	return s, r.end(s)
}

// second reads what joins a second amount to the first, and that amount.
func (r *reader) second(s *statement, between bool) (err *ReadError) {
	back := r.pos
	switch joint := r.word(widthWords...); {
	case joint != "":
		s.shape = width
	default:
		spans := spanWords
		if between {
			spans = append([]string{"and"}, spans...)
		}
		joint = r.word(spans...)
		if joint == "" {
			return nil
		}
		s.shape, s.dash = span, joint == "-"
	}
	if r.word(aboutWords...) != "" {
		s.about = true
	}
	if r.pos == len(r.text) {
		return r.fault(Leftover, back, len(r.text), "After "+quote(r.typed(s.first.start, s.first.end))+
			" the second number is missing. "+r.wants())
	}
	s.second, err = r.amount()
	return err
}

// end refuses what stands behind the statement.
func (r *reader) end(s statement) *ReadError {
	last := s.first.end
	if s.shape != single {
		last = s.second.end
	}
	left := strings.TrimRight(r.rest(), " .,;!")
	if left == "" {
		return nil
	}
	seen := quote(r.typed(s.first.start, last))
	if isDigit(left[0]) {
		return r.fault(Leftover, r.pos, r.pos+len(left), "After "+seen+" stands another number, "+quote(r.typed(r.pos, r.pos+len(left)))+
			". For a range write "+r.spanExample()+"; for thousands write 1,250 or 1250; feet and inches are 12 ft 6 in.")
	}
	return r.fault(Leftover, r.pos, r.pos+len(left), "I read "+seen+", but not "+quote(r.typed(r.pos, r.pos+len(left)))+" behind it. "+r.wants())
}
