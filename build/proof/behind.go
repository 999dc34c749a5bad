package proof

import (
	"regexp"
	"slices"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// because is a line of a block “behind” that names where figures come from.
var because = regexp.MustCompile(`^(.+?) because "([^"]+)"$`)

// behind checks the blocks “behind” of a chapter or a question, which say what figures of its
// text rest on and are not shown: a worked example with other facts (given,
// leave out, expect), a sum of figures (31.5 ft = 37.9 ft - 6.4 ft), or figures
// that nothing computes, with their source (5 ft/100ft because "…"). The figures
// of the sums have to rest on something themselves; they are returned beside
// what the blocks give.
func (c *checker) behind(p *book.Page, examples []*reckon.Example) ([]figure, []ground) {
	var used []figure
	var known []ground
	for _, b := range p.Doc.Blocks {
		if b.Kind != markdown.Behind || b.Unclosed {
			continue
		}
		altered, off := []byte(b.Body), 0
		other := false
		var left []string
		for line := range strings.Lines(b.Body) {
			text := strings.TrimSpace(line)
			switch word, rest, _ := strings.Cut(text, " "); {
			case text == "":
			case word == "given" || word == "expect":
				other = true
				off += len(line)
				continue
			case strings.HasPrefix(text, "leave out "):
				for _, id := range strings.Split(strings.TrimPrefix(rest, "out "), ",") {
					left = append(left, strings.TrimSpace(id))
				}
			default:
				f, k := c.behindLine(p, b, text, off+strings.Index(line, text))
				used, known = append(used, f...), append(known, k...)
			}
			for i := range len(line) {
				if altered[off+i] != '\n' {
					altered[off+i] = ' ' // no line of a worked example
				}
			}
			off += len(line)
		}
		if other || b.Head != "" {
			known = append(known, c.altered(p, b, string(altered), left, examples)...)
		}
	}
	return used, known
}

// quantity reads a number with its unit, which is that of the pure number if
// none stands there.
func quantity(text string) (v float64, u *unit.Unit, rest string, ok bool) {
	v, u, _, rest, err := unit.ReadNotation(text)
	if u == nil {
		u, _ = unit.Lookup("1")
	}
	return v, u, rest, err == nil
}

// behindLine reads a line that is a sum or names a source.
func (c *checker) behindLine(p *book.Page, b *markdown.Block, line string, off int) ([]figure, []ground) {
	wrong := func(message, suggest string) ([]figure, []ground) {
		from := b.At(false, off)
		c.at(p, markdown.Span{Off: from, Len: len(line)}, message, suggest)
		return nil, nil
	}
	if m := because.FindStringSubmatch(line); m != nil {
		var known []ground
		for _, text := range strings.Split(m[1], ", ") {
			v, u, rest, ok := quantity(text)
			if !ok || rest != "" {
				return wrong("“"+text+"” is no number, such as 5 ft/100ft or 2.31.", "")
			}
			known = append(known, ground{u.Dim, v*u.Factor + u.Offset, u, nil})
		}
		return nil, known
	}
	text, sum, found := strings.Cut(line, " = ")
	_, u, rest, ok := quantity(text)
	if !found || !ok || rest != "" {
		return wrong(`Expected “given …”, “expect …”, “leave out …”, a sum such as 31.5 ft = 37.9 ft - 6.4 ft, or figures and where they come from: 5 ft/100ft because "…".`, "")
	}
	scope := c.book.Engine.Scope
	e, err := formula.ParseExpr(sum, scope)
	if err != nil {
		return wrong("The sum cannot be read: "+err.Error(), "")
	}
	if e.Dim != u.Dim {
		return wrong("The left side is "+u.Dim.String()+", the right side is "+e.Dim.String()+".", "")
	}
	x := e.Eval(formula.NewEnv(scope))
	if x != x {
		return wrong("The sum has no value: terms have none here, write figures.", "")
	}
	if out, same := digitsOf(u.FromSI(x), text); !same {
		return wrong(text+" is expected, but "+out+" comes out.", out)
	}
	parts := figuresOf([]byte(sum), 0)
	for i := range parts {
		parts[i].off = b.At(false, off+len(line)-len(sum)+parts[i].off)
	}
	return parts, []ground{{u.Dim, x, u, nil}}
}

// altered reckons a worked example of the page again with the facts of a block
// “behind”, and gives all that follows.
func (c *checker) altered(p *book.Page, b *markdown.Block, body string, left []string, examples []*reckon.Example) []ground {
	w, err := formula.ParseWorked(body, c.book.Engine.Scope)
	if err != nil {
		c.atHead(book.BlockRef{Page: p, Block: b}, "The lines cannot be read as those of a worked example: "+err.Error(), "")
		return nil
	}
	var facts []reckon.Fact
	if b.Head != "" {
		var ok bool
		if facts, ok = c.factsOf(p, b, examples); !ok {
			return nil
		}
	}
	at := func(a *formula.Assign, message, suggest string) {
		c.at(p, markdown.Span{Off: b.At(false, a.ValueOff), Len: a.ValueLen}, message, suggest)
	}
	for i := range w.Given {
		a := &w.Given[i]
		f := reckon.Fact{Term: a.Term, Low: a.Low, Likely: (a.Low + a.High) / 2, High: a.High, Rounding: rounding(&c.book.Engine.Terms[a.Term], a), Text: body[a.ValueOff : a.ValueOff+a.ValueLen]}
		if message := c.unfit(&f); message != "" {
			at(a, message, "")
			return nil
		}
		facts = append(slices.DeleteFunc(facts, func(have reckon.Fact) bool { return have.Term == a.Term }), f)
	}
	for _, id := range left {
		n := len(facts)
		if facts = slices.DeleteFunc(facts, func(have reckon.Fact) bool { return c.id(have.Term) == id }); len(facts) == n {
			c.atHead(book.BlockRef{Page: p, Block: b}, "“"+id+"” is to be left out, and is no fact here.", "")
		}
	}
	r := c.book.Engine.Reckon(reckon.Question{Facts: facts, Want: -1})
	if len(r.Clashes) > 0 {
		c.atHead(book.BlockRef{Page: p, Block: b}, "These facts contradict each other: "+spaced(r.ClashText(&r.Clashes[0], formula.US)), "")
		return nil
	}
	for i := range w.Expect {
		a := &w.Expect[i]
		text := body[a.ValueOff : a.ValueOff+a.ValueLen]
		c.summary.Numbers++
		if !r.Known(a.Term) {
			at(a, "“"+c.id(a.Term)+"” does not follow from these facts.", "")
		} else if c.book.Engine.Terms[a.Term].Kind == formula.Choice {
			at(a, "A block “behind” expects numbers alone.", "")
		} else if out, same := rewritten(text, a, &r.Values[a.Term]); !same {
			at(a, "“"+c.id(a.Term)+"” is expected to be "+text+", but "+out+" comes out.", out)
		}
	}
	return c.groundsOf(r)
}

// factsOf are the facts of the worked example whose title stands behind the word
// “behind”.
func (c *checker) factsOf(p *book.Page, b *markdown.Block, examples []*reckon.Example) ([]reckon.Fact, bool) {
	var titles []string
	for _, ex := range examples {
		if ex.Title == b.Head {
			return c.facts(ex)
		}
		titles = append(titles, ex.Title)
	}
	c.atHead(book.BlockRef{Page: p, Block: b}, "No worked example of this "+p.Kind.String()+" is called “"+b.Head+"”.", formula.Nearest(b.Head, titles))
	return nil, false
}
