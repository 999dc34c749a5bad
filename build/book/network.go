package book

import (
	"slices"
	"strings"

	"columnbowl/build/markdown"
	"columnbowl/build/report"
	"columnbowl/calcwasm/physics"
	"columnbowl/calcwasm/reckon"
)

// network makes the Source of the engine and loads it. Problems become
// diagnostics at the place in the file. When only blocks have problems, the
// sound ones are loaded again, so that the numbers can be checked all the same.
func (l *loading) network() {
	b := l.book
	b.Source = &reckon.Source{ID: b.Handbook.ID, Title: b.Handbook.Title, Money: b.Handbook.Money}
	for _, h := range b.Hazards.List {
		b.Source.Hazards = append(b.Source.Hazards, reckon.Hazard{ID: h.ID, Name: h.Name, Say: h.Say})
	}
	l.families()
	for _, t := range b.Terms {
		b.Source.Terms = append(b.Source.Terms, t.source())
		l.blocks(&t.Page)
	}
	for _, c := range b.Chapters {
		l.blocks(&c.Page)
	}
	for _, a := range b.Asked {
		l.blocks(&a.Page)
	}
	for _, p := range b.FurtherPages() {
		l.blocks(p)
	}
	engine, problems := reckon.Load(b.Source, physics.Functions()...)
	b.Whole = len(problems) == 0 && !slices.ContainsFunc(b.Pages(), func(p *Page) bool { return p.Doc.Torn })
	bad := l.tell(problems)
	for len(problems) > 0 {
		if slices.ContainsFunc(problems, func(p reckon.Problem) bool { return p.Block < 0 }) {
			return
		}
		b.keep(bad)
		engine, problems = reckon.Load(b.Source, physics.Functions()...)
		bad = map[int]bool{} // what fails only because of what was taken out needs no telling
		for _, p := range problems {
			bad[p.Block] = true
		}
	}
	b.Engine = engine
}

// families gives the engine the families of bowls, which become values of the
// choice between them.
func (l *loading) families() {
	b := l.book
	if len(b.Bowls) == 0 {
		return
	}
	t := b.TermByID[reckon.BowlTerm]
	if t == nil || t.KindWord != ChoiceOf {
		l.found.Add(b.Bowls[0].File, report.WholeFile, 0, "Families of bowls are chosen by the term “"+reckon.BowlTerm+"” (kind: choice), and the book has none.", "")
		return
	}
	for _, bowl := range b.Bowls {
		if slices.ContainsFunc(t.Values, func(v Choice) bool { return v.ID == bowl.ID }) {
			s := t.Where("values." + bowl.ID)
			l.found.Add(t.File, s.Off, s.Len, "“"+bowl.ID+"” is a value already through the file "+bowl.File+": leave it out here.", "")
			continue
		}
		b.Source.Bowls = append(b.Source.Bowls, bowl.Figures)
	}
}

// keep takes blocks out of the Source.
func (b *Book) keep(bad map[int]bool) {
	blocks, refs := b.Source.Blocks, b.Blocks
	b.Source.Blocks, b.Blocks = nil, nil
	for i := range blocks {
		if !bad[i] {
			b.Source.Blocks = append(b.Source.Blocks, blocks[i])
			b.Blocks = append(b.Blocks, refs[i])
		}
	}
}

func (t *Term) source() reckon.TermSource {
	s := reckon.TermSource{ID: t.ID, Name: t.Name, Running: t.Running, Symbol: t.Symbol, Kind: t.KindWord, US: t.US, SI: t.SI, From: t.From, To: t.To,
		Pressure: t.Pressure, Ask: t.Ask, Applies: t.Applies, Otherwise: t.Otherwise}
	for _, v := range t.Values {
		s.Values = append(s.Values, v.ID, v.Name)
	}
	return s
}

func (l *loading) blocks(p *Page) {
	term := ""
	if p.Kind == TermPage {
		term = p.ID
	}
	for _, k := range p.Doc.Blocks {
		if k.Unclosed || k.Kind == markdown.Question || k.Kind == markdown.Picture || k.Kind == markdown.Behind || k.Kind == markdown.Bowls || k.Kind == markdown.Example || k.Kind == markdown.Show || !slices.Contains(allowed[p.Kind], k.Kind) {
			continue
		}
		l.book.Source.Blocks = append(l.book.Source.Blocks, reckon.Block{Term: term, Kind: reckon.BlockKind(k.Kind), Head: k.Head, Body: k.Body})
		l.book.Blocks = append(l.book.Blocks, BlockRef{p, k})
	}
}

// tell turns problems into diagnostics, and returns the blocks they are in.
// A block that uses a term whose title block is broken is not judged: what is
// wrong with it may be wrong with the term only. Nor are the mistakes of a page
// whose formula is broken.
func (l *loading) tell(problems []reckon.Problem) map[int]bool {
	broken := map[string]bool{}
	for _, id := range l.brokenBowls {
		broken[id] = true
	}
	unitless := map[int]bool{} // terms whose unit is broken: their range cannot be judged
	for _, p := range problems {
		if p.Block >= 0 {
			continue
		}
		if p.Field == "values" && len(l.brokenBowls) > 0 && l.book.Terms[p.Term].ID == reckon.BowlTerm {
			continue // the values that lack are the families that could not be read
		}
		broken[l.book.Terms[p.Term].ID] = true
		if !unitless[p.Term] {
			l.tellTitle(p)
		}
		unitless[p.Term] = unitless[p.Term] || strings.HasPrefix(p.Field, "unit.")
	}
	bad, badPage := map[int]bool{}, map[*Page]bool{}
	for _, p := range problems {
		if p.Block >= 0 && l.book.Blocks[p.Block].Block.Kind != markdown.Mistake {
			badPage[l.book.Blocks[p.Block].Page] = true
		}
	}
	for _, p := range problems {
		if p.Block < 0 {
			continue
		}
		bad[p.Block] = true
		ref := l.book.Blocks[p.Block]
		if uses(ref.Block, broken) || ref.Block.Kind == markdown.Mistake && badPage[ref.Page] {
			continue
		}
		off := ref.Block.At(p.Head, p.Off)
		end := max(ref.Block.At(p.Head, p.Off+p.Len), off)
		if p.Head && ref.Block.Head == "" {
			off, end = ref.Block.Off, ref.Block.Off+ref.Block.Len
		}
		l.found.Add(ref.Page.File, off, end-off, p.Message, p.Suggest)
	}
	return bad
}

// tellTitle tells a problem of a title block, unless the reading of the title
// has said of the same value that it is missing or wrong.
func (l *loading) tellTitle(p reckon.Problem) {
	t := l.book.Terms[p.Term]
	if _, there := t.at[p.Field]; !there {
		first, _, _ := strings.Cut(p.Field, ".")
		if _, there := t.at[first]; !there && slices.ContainsFunc(l.found, func(d report.Diagnostic) bool { return d.File == t.File }) {
			return
		}
	}
	s := t.Where(p.Field)
	if slices.ContainsFunc(l.found, func(d report.Diagnostic) bool { return d.File == t.File && d.Off == s.Off }) {
		return
	}
	l.found.Add(t.File, s.Off, s.Len, p.Message, p.Suggest)
}

// uses says whether a block names one of some terms.
func uses(k *markdown.Block, terms map[string]bool) bool {
	if len(terms) == 0 {
		return false
	}
	words := strings.FieldsFunc(k.Head+" "+k.Body, func(r rune) bool {
		return r != '-' && (r < 'a' || r > 'z') && (r < '0' || r > '9')
	})
	return slices.ContainsFunc(words, func(w string) bool { return terms[w] })
}
