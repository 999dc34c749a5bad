package proof

import (
	"bytes"
	"math"
	"regexp"
	"slices"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
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
	figures = regexp.MustCompile(`([−-]?)(\d+-\d+/\d+|(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?)[  ]?(` + unitWords + `)(?:$|[^\w/²³])`)
	rates   = regexp.MustCompile(`^ (?:(?:in|for|to|per) (?:each )?|each )(?:100 ft|hundred feet)`)
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
		name := string(text[m[6]:m[7]])
		if r := rates.Find(text[m[7]:]); r != nil && (name == "ft" || name == "hp") {
			name, f.len, from = name+"/100ft", f.len+len(r), from+len(r)
		}
		number := plainSigns.Replace(string(text[m[4]:m[5]]))
		f.value, _, _ = unit.NumberAt(number)
		f.fraction = strings.Contains(number, "/")
		f.text = number + " " + plainSigns.Replace(name)
		if u, n := unit.At(plainSigns.Replace(name)); u != nil && n > 0 {
			f.unit = u
			list = append(list, f)
		}
	}
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

// textFigures are the figures that a reader of a chapter meets: in its running
// text, its aims, its questions and below its pictures.
func textFigures(p *book.Page) []figure {
	text := proseOf(p.Doc).text
	list := append(figuresOf(text, 0), tableFigures(text)...)
	list = append(list, bareFigures(text, 0, list)...)
	for _, b := range p.Doc.Blocks {
		if b.Kind == markdown.Question || b.Kind == markdown.Picture {
			inside := figuresOf([]byte(b.Body), 0)
			for _, f := range append(inside, bareFigures([]byte(b.Body), 0, inside)...) {
				f.off = b.At(false, f.off)
				list = append(list, f)
			}
		}
	}
	title, at := p.Doc.Source[p.Doc.Title.Off:p.Doc.Title.Off+p.Doc.Title.Len], p.Doc.Title.Off
	for line := range strings.Lines(string(title)) {
		if strings.HasPrefix(line, "  - ") {
			list = append(list, figuresOf([]byte(line), at)...)
		}
		at += len(line)
	}
	return list
}

// prose sees that each figure of a chapter's text is one that the book computes:
// given or following in a worked example of the page or of a page that it links
// to, on the sheet of a family of bowls in them, or told by a block “behind”.
func (c *checker) prose() {
	byPage := map[*book.Page][]*reckon.Example{}
	for i := range c.book.Engine.Examples {
		ex := &c.book.Engine.Examples[i]
		page := c.book.Blocks[ex.Block].Page
		byPage[page] = append(byPage[page], ex)
	}
	cache := map[*book.Page][]ground{}
	of := func(p *book.Page) []ground {
		list, found := cache[p]
		if !found {
			for _, ex := range byPage[p] {
				if facts, ok := c.facts(ex); ok {
					list = append(list, c.grounds(facts)...)
				}
			}
			cache[p] = list
		}
		return list
	}
	for _, ch := range c.book.Chapters {
		p := &ch.Page
		if p.Doc.Torn || c.left(p.File) {
			continue
		}
		own := of(p)
		behind, known := c.behind(p, byPage[p])
		grounds := slices.Concat(own, known)
		linked := c.linkedPages(p)
		stands := func(f *figure) bool {
			return slices.ContainsFunc(grounds, func(g ground) bool { return f.restsOn(&g) }) ||
				slices.ContainsFunc(linked, func(q *book.Page) bool {
					return slices.ContainsFunc(of(q), func(g ground) bool { return f.restsOn(&g) })
				})
		}
		c.figuresStand(p, textFigures(p), stands)
		c.figuresStand(p, behind, stands)
	}
}

func (c *checker) figuresStand(p *book.Page, list []figure, stands func(*figure) bool) {
	for i := range list {
		f := &list[i]
		c.summary.Figures++
		if !stands(f) {
			c.at(p, markdown.Span{Off: f.off, Len: f.len}, "No worked example of this chapter, or of a page that it links to, gives "+f.text+". Put the number right, link to the page that has it, or tell in a block “behind” what it rests on.", "")
		}
	}
}

// linkedPages are the pages to which a page links in its text.
func (c *checker) linkedPages(p *book.Page) []*book.Page {
	var list []*book.Page
	for _, l := range p.Doc.Links {
		var q *book.Page
		switch l.Scheme {
		case markdown.ToTerm:
			if t := c.book.TermByID[l.ID]; t != nil {
				q = &t.Page
			}
		case markdown.ToChapter:
			if t := c.book.ChapterByID[l.ID]; t != nil {
				q = &t.Page
			}
		case markdown.ToAsked:
			if t := c.book.AskedByID[l.ID]; t != nil {
				q = &t.Page
			}
		}
		if q != nil && q != p && !slices.Contains(list, q) {
			list = append(list, q)
		}
	}
	return list
}

// grounds are all values that are given or follow from facts, and the figures of
// the family of bowls among them.
func (c *checker) grounds(facts []reckon.Fact) []ground {
	return c.groundsOf(c.book.Engine.Reckon(reckon.Question{Facts: facts, Want: -1, Plain: true}))
}

func (c *checker) groundsOf(r *reckon.Result) []ground {
	var list []ground
	for i := range r.Values {
		t := &c.book.Engine.Terms[i]
		switch {
		case !r.Known(i):
		case t.Kind == formula.Quantity:
			list = append(list, ground{t.Dim(), r.Values[i].Likely, t.US, t.SI})
		case t.ID == reckon.BowlTerm:
			list = append(list, c.familyGrounds(t.Values[int(r.Values[i].Likely)])...)
		}
	}
	return list
}

func (c *checker) familyGrounds(id string) []ground {
	var list []ground
	add := func(f reckon.Figure) {
		if f.Known() && f.Unit != nil {
			list = append(list, ground{f.Unit.Dim, f.SI, f.Unit, nil})
		}
	}
	for _, b := range c.book.Source.Bowls {
		if b.ID != id {
			continue
		}
		for _, field := range reckon.BowlFields() {
			add(b.Value(field.Name))
		}
		for _, p := range b.Points {
			add(p.Capacity)
			add(p.Head)
			add(p.Efficiency)
			add(p.NPSHRequired)
		}
	}
	return list
}
