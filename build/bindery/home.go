package bindery

import (
	"cmp"
	"slices"
	"strings"
	"unicode/utf8"

	"columnbowl/build/book"
	"columnbowl/site"
)

// few is how many terms and parts the home page shows to begin with.
const few = 5

// homeView fills index.html: the doors to learn, to look up and to work out.
func (w *work) homeView() (any, error) {
	h := &w.book.Handbook
	_, long := w.title()
	v := &site.Home{
		Frame: w.frame(stand{path: homePath, say: h.About, block: site.TitleBlock{Title: h.Title, Scope: bookScope}}),
		Lead:  capital(long), About: paragraph(h.About),
		TermCount: len(w.book.Terms), PartCount: len(w.book.Parts), TermsURL: termsPath, PartsURL: partsPath, Parts: w.commonParts(),
	}
	if v.QuestionCount = len(w.book.Asked); v.QuestionCount > 0 {
		v.QuestionsURL = askedPath
	}
	if w.cuts != nil {
		v.PumpsURL = buildsPath
	}
	v.GlossaryURL = glossaryPath
	if len(w.book.Pairs) > 0 {
		v.PairsURL = pairsPath
	}
	if v.PracticeCount = len(w.book.Exercises); v.PracticeCount > 0 {
		v.PracticeURL, v.CardsURL, v.ProgressURL = practicePath, cardsPath, progressPath
		for _, e := range spread(w.practice.order, few) {
			v.Exercises = append(v.Exercises, site.Link{Name: e.Name, URL: exercisePath(e.ID)})
		}
	}
	if w.hasTakeOff() {
		v.TakeOffURL = takeoffPath
	}
	if w.hasDesk() {
		v.DeskURL = deskPath
	}
	if w.hasChoice() {
		v.ChoiceURL = choicePath
	}
	v.Tables = w.tableLinks("")
	for _, c := range w.book.Chapters {
		v.Chapters = append(v.Chapters, site.Link{Name: c.Name, URL: chapterPath(c.ID)})
	}
	for _, t := range spread(w.spine, few) {
		v.Terms = append(v.Terms, w.termLink(t, ""))
	}
	if w.hasChain() {
		v.ChainURL = chainPath
		for _, g := range h.Chain {
			v.ChainCount += len(g.Terms)
		}
		v.ChainTerms = w.chainResults()
	}
	return v, nil
}

// chainResults are a few results of the chain, each a link that looks for it
// with the facts of the chain.
func (w *work) chainResults() []site.Link {
	var derived []int
	for _, t := range w.spine {
		if w.chain.result.Values[t].Rule >= 0 {
			derived = append(derived, t)
		}
	}
	var list []site.Link
	for _, t := range spread(derived, few) {
		// "./" tells the template that the colons of the facts begin no scheme.
		l := site.Link{Name: w.book.Terms[t].Name, URL: "./" + chainPath + fragment(w.chain.facts, w.engine.Terms[t].ID)}
		list = append(list, l)
	}
	return list
}

// commonParts are the parts that most terms speak of.
func (w *work) commonParts() []site.Link {
	parts := slices.Clone(w.book.Parts)
	slices.SortStableFunc(parts, func(a, b *book.Part) int { return cmp.Compare(len(w.about[b.ID]), len(w.about[a.ID])) })
	var list []site.Link
	for _, p := range parts[:min(few, len(parts))] {
		list = append(list, w.partLink(p.ID, ""))
	}
	return list
}

// spread picks n of a list at even distances, the last one among them.
func spread[T any](list []T, n int) []T {
	if len(list) <= n {
		return list
	}
	var out []T
	for i := range n {
		out = append(out, list[(i+1)*len(list)/n-1])
	}
	return out
}

func capital(text string) string {
	_, n := utf8.DecodeRuneInString(text)
	return strings.ToUpper(text[:n]) + text[n:]
}
