package bindery

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/site"
)

const glossaryPath = "glossary.html"

func (w *work) glossaryLink(root string) site.Link {
	return site.Link{Name: w.words["glossary.title"], URL: root + glossaryPath}
}

// glossaryView fills the glossary: every term and part with its further names,
// and every further name with the words it leads to, in one alphabet.
func (w *work) glossaryView() (any, error) {
	var words []site.GlossaryWord
	see := map[string][]site.Link{} // further name -> the words it stands for
	spelled := map[string]string{}  // further name as first written
	add := func(p *book.Page, word site.GlossaryWord) {
		words = append(words, word)
		for _, a := range p.Also {
			key := strings.ToLower(a)
			if spelled[key] == "" {
				spelled[key] = a
			}
			see[key] = append(see[key], site.Link{Name: p.Name, URL: "#" + word.ID})
		}
	}
	for _, t := range w.book.Terms {
		word := site.GlossaryWord{ID: "t-" + t.ID, Link: w.termLink(t.Index, ""), Symbol: symbol(t.Symbol), First: firstSentence(t.Doc), Also: t.Also, Pairs: w.pairsOf(markdown.ToTerm, t.ID, "")}
		word.UnitUS, word.UnitSI = unitsOf(&w.engine.Terms[t.Index])
		add(&t.Page, word)
	}
	for _, p := range w.book.Parts {
		add(&p.Page, site.GlossaryWord{ID: "p-" + p.ID, Link: w.partLink(p.ID, ""), First: firstSentence(p.Doc), Also: p.Also, Pairs: w.pairsOf(markdown.ToPart, p.ID, "")})
	}
	heads := len(words)
	for key, goals := range see {
		words = append(words, site.GlossaryWord{Link: site.Link{Name: spelled[key]}, See: goals})
	}
	v := &site.Glossary{Count: heads, Others: len(words) - heads, Groups: alphabet(words)}
	if len(w.book.Pairs) > 0 {
		v.PairsURL = pairsPath
	}
	v.Frame = w.frame(stand{path: glossaryPath, title: w.words["glossary.title"], nav: "terms", block: site.TitleBlock{Scope: bookScope}})
	return v, nil
}

// alphabet puts words in order and under their first letters; names that begin
// with a figure stand first, together.
func alphabet(words []site.GlossaryWord) []site.GlossaryGroup {
	slices.SortFunc(words, func(a, b site.GlossaryWord) int {
		return cmp.Or(cmp.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)), cmp.Compare(len(a.See), len(b.See)), cmp.Compare(a.ID, b.ID))
	})
	var groups []site.GlossaryGroup
	for _, word := range words {
		first, _ := utf8.DecodeRuneInString(word.Name)
		g := site.GlossaryGroup{ID: "figures", Letter: "0–9"}
		if unicode.IsLetter(first) {
			g.Letter = strings.ToUpper(string(first))
			g.ID = g.Letter
		}
		if len(groups) == 0 || groups[len(groups)-1].ID != g.ID {
			groups = append(groups, g)
		}
		last := &groups[len(groups)-1]
		last.Words = append(last.Words, word)
	}
	return groups
}
