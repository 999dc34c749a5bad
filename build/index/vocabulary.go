package index

import (
	"slices"
	"strings"

	"columnbowl/build/book"
	"columnbowl/calcwasm/ask"
)

// Vocabulary packs the words in which people say the facts of a book: names and
// other names of its terms, symbols, the words of its choices, and what stands
// in asking.yaml.
func Vocabulary(b *book.Book) []byte {
	s := ask.Source{Nothing: b.Asking.Nothing}
	for _, t := range b.Terms {
		if t.KindWord == book.ChoiceOf {
			s.Values = append(s.Values, choiceWords(b, t)...)
			continue
		}
		say := append([]string{t.Name}, t.Also...)
		if plainSymbol(t.Symbol) {
			say = append(say, t.Symbol)
		}
		s.Names = append(s.Names, ask.Said{Term: t.ID, Say: say})
	}
	said := func(list []book.Speech) (out []ask.Said) {
		for _, c := range list {
			out = append(out, ask.Said{Term: c.Term, Value: c.Value, Say: c.Say})
		}
		return out
	}
	s.Cues, s.Leans, s.Hints = said(b.Asking.Cues), said(b.Asking.Leans), said(b.Asking.Hints)
	s.Values = append(s.Values, said(b.Asking.Values)...)
	s.Signs, s.Minus = said(b.Asking.Signs), said(b.Asking.Minus)
	for _, u := range b.Asking.Units {
		s.Units = append(s.Units, ask.Alias{Say: u.Say, Unit: u.Read, Times: u.Times, Loose: u.Loose})
	}
	for _, p := range b.Asking.Plain {
		s.Plain = append(s.Plain, ask.Plain{Units: p.Units, Terms: p.Terms, Sure: p.Sure, Ask: p.Ask, Unless: p.Unless})
	}
	for _, p := range b.Asking.Pairs {
		terms := append(p.Terms[:len(p.Terms):len(p.Terms)], "", "")
		s.Pairs = append(s.Pairs, ask.Pair{First: terms[0], Second: terms[1], Say: p.Say})
	}
	for _, c := range b.Asking.Scenes {
		s.Scenes = append(s.Scenes, ask.Scene{Say: c.Say, Read: c.Read, Wide: c.Wide, Sure: c.Sure})
	}
	s.Rising = b.Asking.Rising
	return s.Pack()
}

// choiceWords are the values of a choice as they are written, where they have
// two words or more: one alone (“open”, “none”) may mean anything. The families
// of bowls are among them; what the book has as a sign is not.
func choiceWords(b *book.Book, t *book.Term) []ask.Said {
	at, ok := b.Engine.Find(t.ID)
	if !ok {
		return nil
	}
	var list []ask.Said
	for _, id := range b.Engine.Terms[at].Values {
		words := strings.ReplaceAll(id, "-", " ")
		sign := slices.ContainsFunc(b.Asking.Signs, func(s book.Speech) bool { return s.Term == t.ID && slices.Contains(s.Say, words) })
		if words != id && !sign {
			list = append(list, ask.Said{Term: t.ID, Value: id, Say: []string{words}})
		}
	}
	return list
}

// plainSymbol tells whether a symbol is a word that people say: TDH, BHP.
func plainSymbol(symbol string) bool {
	if len(symbol) < 2 {
		return false
	}
	for i := range len(symbol) {
		if symbol[i] < 'A' || symbol[i] > 'Z' {
			return false
		}
	}
	return true
}
