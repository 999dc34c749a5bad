package ask

import (
	"strings"

	"columnbowl/calcwasm/search"
	"columnbowl/calcwasm/unit"
)

// How much a phrase says, beside its number.
const (
	byName = 100 // the term's name, or another name of the book
	byCue  = 80  // a way of speaking that means one term
	byLean = 50  // one that means the term where nothing clearer is said
	byHint = 30  // a word that helps and is not enough alone

	perWord = 10 // more for each further word of a name or a cue
)

// kind of a phrase.
type kind uint8

const (
	cue     kind = iota // speaks for terms, or is a value of a choice
	nothing             // the number before it is no fact: “3 phase”
	pair                // two facts follow, joined by “to”: “drops from 180 to 220”
	scene               // tells what the sentence is about: “field test”
)

// phrase is a row of words with what it speaks for.
type phrase struct {
	kind    kind
	words   []part
	senses  []sense
	setting *setting // of a scene
}

// setting says which term is meant by which one in a scene, two by two.
type setting struct {
	read       []int
	wide, sure bool
}

// part is a word of a phrase. An exact one is not taken in another form; before
// a loose one a few other words may stand.
type part struct {
	text, stem  string
	exact, wide bool
}

// sense is a term that a phrase speaks for; of a choice with the value's place,
// otherwise -1.
type sense struct {
	term, value int
	weight      int
	minus       bool // the number means its minus
}

// alias is a way in which people say a unit: “lbs” for psi, “cents” for
// hundredths of money. A loose one is never taken without a question.
type alias struct {
	say   string
	unit  *unit.Unit
	times float64
	loose bool
}

// unitWord is a word that spells a unit.
type unitWord struct {
	text string
	unit *unit.Unit
}

// group says which terms a bare unit speaks for: 400 gpm is a capacity.
type group struct {
	units  []*unit.Unit
	terms  []int
	sure   bool   // the first is meant
	ask    bool   // it is asked even if no other term can be
	unless string // numbers that are asked nevertheless
}

// vocabulary is how people speak about the terms of one book.
type vocabulary struct {
	phrases []phrase
	first   map[string][]int // by the stem of the first word
	known   map[string]bool  // every word and stem of a phrase
	words   []string         // the same words in the order in which they came, for their spelling
	aliases []alias
	groups  []group
	units   []unitWord           // words for units, for their spelling
	asks    []map[string]bool    // for each term the stems of its question
	owners  map[string][]int     // by a word the terms in whose names it stands
	marks   map[string][]int     // by a word the terms in any of whose names it stands
	scenes  map[string][]*phrase // by the stem of the first word
	rising  [][]int
	pairs   [][2]int // the terms of two numbers that are told in a row
}

// add adds a phrase, or joins its senses to the same phrase said before.
func (v *vocabulary) add(k kind, text string, senses ...sense) {
	words := parts(text)
	if len(words) == 0 {
		return
	}
	head := words[0].stem
	for _, i := range v.first[head] {
		if p := &v.phrases[i]; p.kind == k && same(p.words, words) {
			p.senses = joinSenses(p.senses, senses)
			return
		}
	}
	for _, w := range words {
		if !v.known[w.text] {
			v.words = append(v.words, w.text)
		}
		v.known[w.text], v.known[w.stem] = true, true
	}
	v.first[head] = append(v.first[head], len(v.phrases))
	v.phrases = append(v.phrases, phrase{kind: k, words: words, senses: senses})
}

// anywhere are words of names that say nothing, for every sentence has them.
const anywhere = " well water pump "

// own notes the words of a term's name. It is the first that is said for a term.
func (v *vocabulary) own(term int, name string) {
	for _, w := range parts(name) {
		key := ownKey(w.text, w.stem)
		if list := v.owners[key]; len(w.text) > 2 && !isIn(anywhere, w.text) && !isFiller(w.stem) && (len(list) == 0 || list[len(list)-1] != term) {
			v.owners[key] = append(list, term)
		}
	}
}

// ownKey is the stem of a word of a name; “pumping” is not “pump”.
func ownKey(text, stem string) string {
	if strings.HasSuffix(text, "ing") {
		return text
	}
	return stem
}

// joinSenses keeps the strongest sense of each term and value.
func joinSenses(have, more []sense) []sense {
next:
	for _, s := range more {
		for i := range have {
			if have[i].term == s.term && have[i].value == s.value && have[i].minus == s.minus {
				have[i].weight = max(have[i].weight, s.weight)
				continue next
			}
		}
		have = append(have, s)
	}
	return have
}

// parts reads a phrase as it is written in the book: a word behind “=” is meant
// exactly so, and “..” stands for up to three other words.
func parts(text string) []part {
	var list []part
	wide := false
	for _, field := range strings.Fields(text) {
		if field == ".." {
			wide = len(list) > 0
			continue
		}
		exact := strings.HasPrefix(field, "=")
		for _, w := range search.Split(field) {
			w.Text = oneSpelling(w.Text)
			list = append(list, part{w.Text, search.Stem(w.Text), exact, wide})
			wide = false
		}
	}
	return list
}

// oneSpelling is a word as it is kept, of those that are written in several ways.
func oneSpelling(word string) string {
	switch {
	case strings.HasPrefix(word, "centre"):
		return "center" + word[len("centre"):]
	case word == "gage" || word == "guage":
		return "gauge"
	case word == "sch" || word == "sched":
		return "schedule"
	}
	return word
}

// same tells whether two phrases stand for the same words.
func same(a, b []part) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].stem != b[i].stem || a[i].exact != b[i].exact || a[i].wide != b[i].wide || a[i].exact && a[i].text != b[i].text {
			return false
		}
	}
	return true
}

// unitWords collects the words of five letters and more that spell units.
func (v *vocabulary) unitWords() {
	for _, u := range unit.All() {
		for _, text := range append([]string{u.Name}, u.Also...) {
			if words := search.Split(text); len(text) >= 5 && len(words) == 1 && words[0].Text == text {
				v.units = append(v.units, unitWord{text, u})
			}
		}
	}
}
