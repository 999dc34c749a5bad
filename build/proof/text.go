package proof

import (
	"bytes"
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/build/report"
)

// longest is how many words a sentence may have. It is no rule of style: a
// sentence that goes on so far has lost its reader (common practice in plain
// writing asks for 15 to 20 on the average).
const longest = 45

// plainWord is the length from which a name of one word is taken for the term.
const plainWord = 8

// prose is the running text of a page: its source, with all that is no prose
// blanked, so that offsets stay. Words of links are kept.
type prose struct {
	text  []byte
	links []stretch
}

// stretch is the words of a link and its goal.
type stretch struct {
	from, to int
	scheme   markdown.Scheme
	id       string
}

var (
	fence    = regexp.MustCompile("(?ms)^[ >]*```.*?^[ >]*```[ \t]*$")
	code     = regexp.MustCompile("`[^`\n]*`")
	anyLink  = regexp.MustCompile(`\[([^\]\n]+)\]\(([a-z]*):?([^)\n]*)\)`)
	inPlain  = regexp.MustCompile(`\[[^\]\n]+\]\((?:term|part|chapter|question):[^)\n]*\)`)
	oneWord  = regexp.MustCompile(`[A-Za-z]+(?:['’][a-z]+)?`)
	stopMark = regexp.MustCompile(`[.!?](?:["”)*_]*)(?:\s|$)|:\s*\n|\n\s*\n|\n\s*(?:[-*|#>]|\d+\.)`)
)

// proseOf blanks what is no running text.
func proseOf(d *markdown.Doc) *prose {
	p := &prose{text: bytes.Clone(d.Source)}
	p.blank(0, firstOf(d).Off) // the title block with its lines
	for _, re := range []*regexp.Regexp{fence, code} {
		for _, m := range re.FindAllIndex(p.text, -1) {
			p.blank(m[0], m[1])
		}
	}
	for _, m := range anyLink.FindAllSubmatchIndex(p.text, -1) {
		id, _, _ := strings.Cut(string(p.text[m[6]:m[7]]), "#")
		p.links = append(p.links, stretch{m[2], m[3], markdown.Scheme(p.text[m[4]:m[5]]), id})
		p.blank(m[0], m[2])
		p.blank(m[3], m[1])
	}
	return p
}

func (p *prose) blank(from, to int) {
	for i := from; i < to && i < len(p.text); i++ {
		if p.text[i] != '\n' {
			p.text[i] = ' '
		}
	}
}

// texts checks the running text of all pages.
func (c *checker) texts() {
	spelling := newSpelling(c.book)
	for _, p := range c.book.Pages() {
		if p.Doc.Torn {
			continue // what is text and what a block is not known
		}
		t := proseOf(p.Doc)
		c.plainFields(p)
		c.sentences(p, t)
		c.spelled(p, t, spelling)
		if p.Kind == book.ChapterPage {
			c.firstUses(p, t)
		}
	}
}

// plainFields tells of links where only plain text is shown.
func (c *checker) plainFields(p *book.Page) {
	tell := func(off, length int) {
		c.at(p, markdown.Span{Off: off, Len: length}, "A link stands in plain text, and readers would see its brackets. Write the words alone; put the link into the running text.", "")
	}
	title := p.Doc.Source[p.Doc.Title.Off : p.Doc.Title.Off+p.Doc.Title.Len]
	for _, m := range inPlain.FindAllIndex(title, -1) {
		tell(p.Doc.Title.Off+m[0], m[1]-m[0])
	}
	for _, b := range p.Doc.Blocks {
		for _, m := range inPlain.FindAllStringIndex(b.Body, -1) {
			tell(b.At(false, m[0]), m[1]-m[0])
		}
	}
}

// sentences measures the sentences of a page, notes how long they are in
// chapters, and tells of very long ones.
func (c *checker) sentences(p *book.Page, t *prose) {
	count, words, most := 0, 0, 0
	from := 0
	for _, m := range append(stopMark.FindAllIndex(t.text, -1), []int{len(t.text), len(t.text)}) {
		at := from
		n := len(oneWord.FindAll(t.text[from:m[0]], -1))
		from = m[1]
		if n == 0 || bytes.ContainsRune(t.text[at:m[0]], '|') { // a row of a table is no sentence
			continue
		}
		count, words, most = count+1, words+n, max(most, n)
		if n > longest {
			for at < m[0] && unicode.IsSpace(rune(t.text[at])) {
				at++
			}
			c.at(p, markdown.Span{Off: at, Len: max(bytes.IndexByte(append(t.text[at:m[0]:m[0]], '\n'), '\n'), 1)},
				fmt.Sprintf("This sentence has %d words; more than %d lose the reader. Make two of it.", n, longest), "")
		}
	}
	if p.Kind == book.ChapterPage && count > 0 {
		s := p.Where("name")
		c.summary.Notes = append(c.summary.Notes, report.Diagnostic{Severity: report.Info, File: p.File, Off: s.Off, Len: s.Len,
			Message: fmt.Sprintf("%d sentences, %.1f words in one on the average, %d in the longest.", count, float64(words)/float64(count), most)})
	}
}

// firstUses sees that a chapter links each term where it first names it, so that
// no reader meets a term without a way to it. Short names of one word are left out:
// speed, lift and setting are also plain words.
func (c *checker) firstUses(p *book.Page, t *prose) {
	low := lower(t.text)
	for i, name := range c.runningNames() {
		term := c.book.Terms[i]
		if !strings.Contains(name, " ") && len(name) < plainWord || !bytes.Contains(low, []byte(name)) {
			continue
		}
		at := firstOfName(low, name, c.longer(name))
		if at < 0 || c.linkedBefore(t, term.ID, at+len(name)) || inHeading(low, at) {
			continue
		}
		c.at(p, markdown.Span{Off: at, Len: len(name)}, "The chapter names the term “"+term.ID+"” here for the first time: link it.",
			"["+string(p.Doc.Source[at:at+len(name)])+"](term:"+term.ID+")")
	}
}

// runningNames are the names of all terms as running text has them, in small
// letters; every chapter is searched for each of them.
func (c *checker) runningNames() []string {
	if c.running == nil {
		for _, t := range c.book.Terms {
			c.running = append(c.running, strings.ToLower(cmp.Or(t.Running, t.Name)))
		}
	}
	return c.running
}

// longer are the names of other terms in which a name stands: “specific
// capacity” in “change of specific capacity”.
func (c *checker) longer(name string) []string {
	if list, ok := c.longerNames[name]; ok {
		return list
	}
	if c.lowNames == nil {
		for _, t := range c.book.Terms {
			c.lowNames = append(c.lowNames, strings.ToLower(t.Name))
		}
		c.longerNames = map[string][]string{}
	}
	var list []string
	for _, n := range c.lowNames {
		if n != name && strings.Contains(n, name) {
			list = append(list, n)
		}
	}
	c.longerNames[name] = list
	return list
}

// firstOfName finds a name as whole words, outside the longer names; -1 for none.
func firstOfName(low []byte, name string, longer []string) int {
	for from := 0; ; {
		i := bytes.Index(low[from:], []byte(name))
		if i < 0 {
			return -1
		}
		at := from + i
		from = at + len(name)
		inside := slices.ContainsFunc(longer, func(l string) bool {
			k := strings.Index(l, name)
			return at >= k && bytes.HasPrefix(low[at-k:], []byte(l))
		})
		if !inside && standsAlone(low, at, from) && !bytes.HasPrefix(low[from:], []byte("-")) && !bytes.HasPrefix(low[from:], []byte("'")) {
			return at
		}
	}
}

// linkedBefore says whether a link to a term begins before a place, or the place
// lies in the words of any link.
func (c *checker) linkedBefore(t *prose, id string, end int) bool {
	return slices.ContainsFunc(t.links, func(l stretch) bool {
		return l.scheme == markdown.ToTerm && l.id == id && l.from < end || l.from < end && end <= l.to
	})
}

func inHeading(text []byte, at int) bool {
	line := text[bytes.LastIndexByte(text[:at], '\n')+1:]
	return len(line) > 0 && line[0] == '#'
}

// spelled tells of words that are used once in the whole book and are one slip
// away from a word that is used often.
func (c *checker) spelled(p *book.Page, t *prose, s *spelling) {
	for _, m := range oneWord.FindAllIndex(t.text, -1) {
		word := string(t.text[m[0]:m[1]])
		if near := s.meant(word); near != "" {
			c.at(p, markdown.Span{Off: m[0], Len: m[1] - m[0]}, "“"+word+"” stands here alone in the whole book, and “"+near+"” often. If it is right, add it to build/proof/accepted.txt.", near)
		}
	}
}
