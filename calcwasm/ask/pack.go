package ask

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/search"
	"columnbowl/calcwasm/unit"
)

// Form is the version of the packed form; a packed vocabulary begins so.
const Form = "column-and-bowl asking 3"

// Source is a vocabulary as the book has it. Its lists are written in order.
type Source struct {
	Names   []Said // names and other names of the terms
	Cues    []Said // ways of speaking that mean one term
	Leans   []Said // ways of speaking that mean it where nothing clearer is said
	Hints   []Said // words that help
	Values  []Said // of choices
	Signs   []Said // of choices: what follows from them is asked
	Minus   []Said // with them the number means its minus
	Units   []Alias
	Plain   []Plain
	Nothing []string
	Pairs   []Pair
	Scenes  []Scene
	Rising  [][]string // terms whose values rise in this order: what does not is asked
}

// Said is how people say a term, or a value of a term that is a choice. In a
// phrase “=word” takes no other form of the word, and “..” stands for up to
// three words.
type Said struct {
	Term, Value string
	Say         []string
}

// Alias is how people say a unit that is not its name. The number is multiplied
// by Times; 0 counts as 1. A Loose one is always asked back.
type Alias struct {
	Say   []string
	Unit  string
	Times float64
	Loose bool
}

// Plain says what an amount in one of the units is when nothing else is said:
// the one term, or a question between them. If it is Sure the first is meant,
// but for the numbers and units of Unless; one of Ask is asked even where its unit leaves
// no other term.
type Plain struct {
	Units, Terms []string
	Sure, Ask    bool
	Unless       []string
}

// Scene are phrases after which a term is read as another one, in their
// sentence, or if it is Wide in the whole text. A term that is read as itself is
// what a unit behind the phrase means, for certain if the scene is Sure.
type Scene struct {
	Say        []string
	Read       [][2]string // the term said, the term meant
	Wide, Sure bool
}

// Pair is a phrase before two amounts joined by “to” that are two facts; without
// Second the second is none, and without First neither is.
type Pair struct {
	First, Second string
	Say           []string
}

// Pack writes the vocabulary as one text for the page, the names last; Open reads it.
func (s *Source) Pack() []byte {
	var w strings.Builder
	line := func(list []string, fields ...string) {
		w.WriteString(strings.Join(append(fields, list...), "\t"))
		w.WriteByte('\n')
	}
	line(nil, Form)
	for i, list := range [][]Said{s.Cues, s.Leans, s.Hints} {
		for _, t := range list {
			line(t.Say, saidLines[i], t.Term)
		}
	}
	for _, v := range s.Values {
		line(v.Say, "value", v.Term, v.Value)
	}
	for _, v := range s.Signs {
		line(v.Say, "sign", v.Term, v.Value)
	}
	for _, t := range s.Minus {
		line(t.Say, "minus", t.Term)
	}
	for _, u := range s.Units {
		line(u.Say, "unit", u.Unit, strconv.FormatFloat(u.Times, 'g', -1, 64), mark(u.Loose, "loose"))
	}
	for _, p := range s.Plain {
		line(nil, "plain", strings.Join(p.Units, " "), strings.Join(p.Terms, " "), mark(p.Sure, "sure")+mark(p.Ask, "ask"), strings.Join(p.Unless, " "))
	}
	line(s.Nothing, "nothing")
	for _, p := range s.Pairs {
		line(p.Say, "pair", p.First, p.Second)
	}
	for _, c := range s.Scenes {
		read := ""
		for _, two := range c.Read {
			read += two[0] + " " + two[1] + " "
		}
		line(c.Say, "scene", strings.TrimSpace(read), mark(c.Wide, "wide"), mark(c.Sure, "sure"))
	}
	for _, list := range s.Rising {
		line(list, "rising")
	}
	for _, t := range s.Names {
		say := t.Say
		if len(say) > 0 && strings.EqualFold(strings.ReplaceAll(say[0], "-", " "), spelt(t.Term)) {
			say = append([]string{""}, say[1:]...) // most names are their ids
		}
		line(say, "name", t.Term)
	}
	return []byte(w.String())
}

// mark is a word, or nothing.
func mark(is bool, word string) string {
	if is {
		return word
	}
	return ""
}

// spelt is an id as words.
func spelt(id string) string { return strings.ReplaceAll(id, "-", " ") }

var saidLines = [...]string{"cue", "lean", "hint", "name"}
var saidWeights = [...]int{byCue, byLean, byHint, byName}

// Open reads a packed vocabulary for a book. The error names the line that does
// not fit the book or this engine.
func Open(pack string, book *reckon.Book) (*Reader, error) {
	r := &Reader{book: book, vocabulary: vocabulary{first: map[string][]int{}, known: map[string]bool{}, owners: map[string][]int{}, marks: map[string][]int{}, scenes: map[string][]*phrase{}}}
	for i, text := range strings.Split(strings.TrimSuffix(pack, "\n"), "\n") {
		ok := i > 0 && r.line(strings.Split(text, "\t")) || i == 0 && text == Form
		if !ok {
			return nil, errors.New("the vocabulary of the book cannot be read: line " + strconv.Itoa(i+1) + " is not of the form that this engine knows")
		}
	}
	r.unitWords()
	for i := range book.Terms {
		words := map[string]bool{}
		for _, w := range search.Split(book.Terms[i].Ask) {
			words[search.Stem(w.Text)] = true
		}
		r.asks = append(r.asks, words)
	}
	return r, nil
}

func (r *Reader) line(f []string) bool {
	for i, word := range saidLines {
		if f[0] == word && len(f) > 1 {
			return r.said(f[1], "", f[2:], sense{weight: saidWeights[i]})
		}
	}
	switch {
	case f[0] == "value" && len(f) > 2:
		return r.said(f[1], f[2], f[3:], sense{weight: byName})
	case f[0] == "sign" && len(f) > 2:
		return r.said(f[1], f[2], f[3:], sense{weight: byLean})
	case f[0] == "minus" && len(f) > 1:
		return r.said(f[1], "", f[2:], sense{weight: byCue, minus: true})
	case f[0] == "unit" && len(f) > 3:
		return r.unit(f[1], f[2], f[3] != "", f[4:])
	case f[0] == "plain" && len(f) == 5:
		return r.plain(strings.Fields(f[1]), strings.Fields(f[2]), f[3], f[4])
	case f[0] == "scene" && len(f) > 3:
		return r.scene(strings.Fields(f[1]), f[2] != "", f[3] != "", f[4:])
	case f[0] == "rising":
		list, ok := r.terms(f[1:])
		r.rising = append(r.rising, list)
		return ok
	case f[0] == "nothing":
		for _, text := range f[1:] {
			r.add(nothing, text)
		}
		return true
	case f[0] == "pair" && len(f) > 2:
		a, okA := r.book.Find(f[1])
		b, okB := r.book.Find(f[2])
		var senses []sense
		if okA {
			senses = append(senses, sense{term: a, value: -1, weight: byName})
		}
		if okB {
			senses = append(senses, sense{term: b, value: -1, weight: byName})
		}
		for _, text := range f[3:] {
			r.add(pair, text, senses...)
		}
		if okA && okB {
			r.pairs = append(r.pairs, [2]int{a, b})
		}
		return (okA || f[1] == "" && f[2] == "") && (okB || f[2] == "")
	}
	return false
}

func (r *Reader) said(id, value string, say []string, as sense) bool {
	t, ok := r.book.Find(id)
	if !ok {
		return false
	}
	as.term, as.value = t, -1
	if r.book.Terms[t].Kind == formula.Choice {
		for i, v := range r.book.Terms[t].Values {
			if v == value {
				as.value = i
			}
		}
		if as.value < 0 {
			return value == "" // its name is no value
		}
	}
	if as.weight == byName && as.value < 0 && len(say) > 0 {
		if say[0] == "" {
			say[0] = spelt(id)
		}
		r.own(t, say[0])
		r.mark(t, say)
	}
	for _, text := range say {
		r.add(cue, text, as)
	}
	return true
}

func (r *Reader) unit(symbol, times string, loose bool, say []string) bool {
	u, ok := unit.Lookup(symbol)
	x, err := strconv.ParseFloat(times, 64)
	if !ok || err != nil || !(x >= 0) || math.IsInf(x, 0) {
		return false
	}
	if x == 0 {
		x = 1
	}
	for _, text := range say {
		r.aliases = append(r.aliases, alias{strings.ToLower(text), u, x, loose})
	}
	return true
}

func (r *Reader) plain(units, terms []string, how, unless string) bool {
	g := group{sure: how == "sure", ask: how == "ask", unless: " " + unless + " "}
	for _, symbol := range units {
		u, ok := unit.Lookup(symbol)
		if !ok {
			return false
		}
		g.units = append(g.units, u)
	}
	var ok bool
	g.terms, ok = r.terms(terms)
	r.groups = append(r.groups, g)
	return ok
}

// scene adds phrases that turn terms; read has them two by two.
func (r *Reader) scene(read []string, wide, sure bool, say []string) bool {
	list, ok := r.terms(read)
	if !ok || len(list)%2 != 0 {
		return false
	}
	c := &setting{read: list, wide: wide, sure: sure}
	for _, text := range say {
		words := parts(text)
		if len(words) == 0 {
			return false
		}
		for _, w := range words {
			r.known[w.text], r.known[w.stem] = true, true
		}
		r.scenes[words[0].stem] = append(r.scenes[words[0].stem], &phrase{kind: scene, words: words, setting: c})
	}
	return true
}

// terms finds the terms of a book by their ids.
func (r *Reader) terms(ids []string) (list []int, ok bool) {
	for _, id := range ids {
		t, ok := r.book.Find(id)
		if !ok {
			return nil, false
		}
		list = append(list, t)
	}
	return list, true
}
