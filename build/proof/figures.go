package proof

import (
	"bytes"
	"math"
	"regexp"
	"slices"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/unit"
)

// figure is a number with its unit in the running text of a chapter.
type figure struct {
	off, len int
	text     string     // as the notation writes it: "-0.8 ft", "2.66 ft/100ft"
	unit     *unit.Unit // nil for a bare number
	value    float64    // in that unit
	fraction bool       // written with a stroke: 1-11/16 in
	about    bool       // a word such as “some” stands before it
}

// ground is something that a figure may rest on: a value that the book has.
type ground struct {
	dim unit.Dim
	si  float64
	us  *unit.Unit // in which readers of US units see it
	is  *unit.Unit // and the others; nil if it is of no term
}

// unitWords are the units of figures, as running text has them.
const unitWords = `ft/s|ft/100ft|gpm/ft|lbf/ft|lbf|psia|psi|gpm|ft|in|hp|kWh|kW|kVA|kPa|rpm|gal|mg/L|°F|Hz|lb|mm|m³/h|m/s|%|A|V|m`

// A number and its unit. Only units are here that no plain word is taken for; a
// number behind which “in” and another number stand is no length.
var (
	figures = regexp.MustCompile(`([−-]?)(\d+-\d+/\d+|(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?)[  ]?(` + unitWords + spokenWords() + `)(?:$|[^\w/²³])`)
	rates   = regexp.MustCompile(`^ (?:(?:in|for|to|per) (?:each )?|each )(?:100 ft|hundred feet)`)
	lowEnd  = regexp.MustCompile(`((?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?) (?:to|or) $`)
	vague   = regexp.MustCompile(`(?i)\b(?:about|some|nearly|almost|hardly|roughly|around|over|more than|less than|above|below|under)(?: a| the| every)?[  ]$`)
)

// A decimal fraction without a unit: a trim, a power factor, a term of a sum in
// words. It may be the number of any value, in either system of units.
var decimals = regexp.MustCompile(`\d+\.\d+`)

// bareFigures are the decimal fractions of a text that no other figure holds.
func bareFigures(text []byte, at int, others []figure) []figure {
	var list []figure
	for _, m := range decimals.FindAllIndex(text, -1) {
		if m[0] > 0 && strings.ContainsRune("0123456789.,/", rune(text[m[0]-1])) || m[1] < len(text) && strings.ContainsRune("0123456789.%", rune(text[m[1]])) && bytes.ContainsAny(text[m[1]:min(len(text), m[1]+2)], "0123456789%") {
			continue
		}
		f := figure{off: at + m[0], len: m[1] - m[0], text: string(text[m[0]:m[1]])}
		held := func(o figure) bool { return f.off >= o.off && f.off < o.off+o.len }
		if !slices.ContainsFunc(others, held) {
			list = append(list, f)
		}
	}
	return list
}

// near is how far a figure behind a word such as “some” may be off.
const near = 0.05

var plainSigns = strings.NewReplacer(",", "", "°F", "degF", "m³/h", "m3/h", "−", "-", "\u00a0", " ")

// figuresOf finds the figures of a text, and gives their places counted from at.
func figuresOf(text []byte, at int) []figure {
	var list []figure
	for from := 0; ; {
		m := figures.FindSubmatchIndex(text[from:])
		if m == nil {
			return list
		}
		for i := range m {
			m[i] += from
		}
		from = m[7]
		if m[2] > 0 && (text[m[2]-1] == '/' || text[m[2]-1] == '.') {
			continue // the end of a fraction
		}
		f := figure{off: at + m[2], len: m[7] - m[2], about: vague.Match(text[max(0, m[2]-24):m[2]])}
		name := symbolOf(string(text[m[6]:m[7]]))
		if r := rates.Find(text[m[7]:]); r != nil && (name == "ft" || name == "hp") {
			name, f.len, from = name+"/100ft", f.len+len(r), from+len(r)
		}
		number := plainSigns.Replace(string(text[m[4]:m[5]]))
		f.value, _, _ = unit.NumberAt(number)
		f.fraction = strings.Contains(number, "/")
		f.text = number + " " + name
		if u, n := unit.At(name); u != nil && n > 0 {
			f.unit = u
			if low, found := lowerEnd(text, m[2], &f); found {
				low.off += at
				list = append(list, low)
			}
			list = append(list, f)
		}
	}
}

// lowerEnd is the figure before “to” or “or” that has its unit from the one behind
// it, which begins at a place of the text: the 5 of 5 to 20 mg/L.
func lowerEnd(text []byte, begin int, f *figure) (figure, bool) {
	m := lowEnd.FindSubmatchIndex(text[:begin])
	if m == nil || m[2] > 0 && strings.ContainsRune("/.,-", rune(text[m[2]-1])) {
		return figure{}, false
	}
	low := figure{off: m[2], len: m[3] - m[2], unit: f.unit, about: vague.Match(text[max(0, m[2]-24):m[2]])}
	number := plainSigns.Replace(string(text[m[2]:m[3]]))
	low.value, _, _ = unit.NumberAt(number)
	low.text = number + f.text[strings.Index(f.text, " "):]
	return low, true
}

// restsOn says whether a figure is a value, rounded to the digits written. Its
// sign is not looked at: 1.5 ft below is −1.5 ft above. A value for each foot
// may be told with the foot in words: 14.55 gpm for each foot.
func (f *figure) restsOn(g *ground) bool {
	if f.unit == nil {
		return unit.Same(math.Abs(g.us.FromSI(g.si)), f.text) || g.is != nil && unit.Same(math.Abs(g.is.FromSI(g.si)), f.text)
	}
	in := g.si
	switch {
	case g.dim == f.unit.Dim:
		in = f.unit.FromSI(g.si)
	case strings.HasPrefix(g.us.Symbol, f.unit.Symbol+"/"):
		in = g.us.FromSI(g.si)
	default:
		return false
	}
	in = math.Abs(in)
	switch off := math.Abs(in - f.value); {
	case off <= alike*in, f.about && off <= near*in:
		return true
	}
	return !f.fraction && unit.Same(in, f.text)
}

// textFigures are the figures that a reader of a chapter or a question meets: in
// its running text, its title block, its check questions and below its pictures.
func textFigures(p *book.Page) []figure {
	text := proseOf(p.Doc).text
	list := append(figuresOf(text, 0), tableFigures(text)...)
	list = append(list, bareFigures(text, 0, list)...)
	for _, b := range p.Doc.Blocks {
		if b.Kind == markdown.Question || b.Kind == markdown.Picture {
			for _, f := range allFigures([]byte(b.Body), 0) {
				f.off = b.At(false, f.off)
				list = append(list, f)
			}
		}
	}
	return append(list, titleFigures(p)...)
}

// allFigures are the figures of a text without tables, bare ones among them.
func allFigures(text []byte, at int) []figure {
	list := figuresOf(text, at)
	return append(list, bareFigures(text, at, list)...)
}

// titleFigures are the figures of the title block that stand on the page: in the
// aims of a chapter; in a question as it is asked and in its short answer.
func titleFigures(p *book.Page) []figure {
	var list []figure
	within := func(s markdown.Span) { list = append(list, allFigures(p.Doc.Source[s.Off:s.Off+s.Len], s.Off)...) }
	if p.Kind == book.AskedPage {
		for _, field := range []string{"name", "also", "answer"} {
			within(p.Where(field))
		}
		return list
	}
	at := p.Doc.Title.Off
	for line := range bytes.Lines(p.Doc.Source[at : at+p.Doc.Title.Len]) {
		if bytes.HasPrefix(line, []byte("  - ")) {
			within(markdown.Span{Off: at, Len: len(line)})
		}
		at += len(line)
	}
	return list
}
