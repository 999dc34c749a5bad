package book

import (
	"errors"
	"io/fs"
	"slices"
	"strconv"

	"go.yaml.in/yaml/v3"

	"columnbowl/build/markdown"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// AskingFile is the name of the file that says how people speak about the terms.
const AskingFile = "asking.yaml"

// Asking is how people say the facts of the book in a sentence, beside the names
// and other names of the terms. It is empty for a book without such a file.
type Asking struct {
	Cues, Leans []Speech         // words for a term; words for it where nothing clearer is said
	Hints       []Speech         // words that help and are not enough
	Values      []Speech         // words for the values of choices
	Signs       []Speech         // words from which a value follows in all likelihood: it is asked
	Minus       []Speech         // words with which the number means its minus: “12 ft below the well”
	Units       []SpokenUnit     // other words for units
	Plain       []PlainUnit      // what an amount is by its unit alone
	Nothing     []string         // words beside a number that is no fact
	Pairs       []SpokenPair     // words before two facts joined by “to”
	Scenes      []SpokenScene    // words that tell what a sentence is about
	Rising      [][]string       // terms whose values rise in this order
	titled                       // where the values stand
	check       []func(*loading) // names that are followed when all pages are read
}

// Speech is how a term, or the value of a choice, is said.
type Speech struct {
	Term, Value string
	Say         []string
}

// SpokenUnit is another word for a unit; the number is multiplied by Times.
type SpokenUnit struct {
	Say   []string
	Read  string
	Times float64
	Loose bool
}

// PlainUnit says which terms an amount in some units is when nothing else is
// said. A Sure one is the first of them, but for the numbers and units of Unless; one of
// Ask is asked, whatever else its unit leaves.
type PlainUnit struct {
	Units, Terms []string
	Sure, Ask    bool
	Unless       []string
}

// SpokenScene are words after which a term means another one: in a field test a
// capacity is the tested capacity. A Wide one holds for the whole text, a Sure
// one makes sure what the unit says alone.
type SpokenScene struct {
	Say        []string
	Read       [][2]string // the term said and the term meant
	Wide, Sure bool
}

// SpokenPair is said before two facts joined by “to”.
type SpokenPair struct{ Say, Terms []string }

// asking reads the file, if the book has one.
func (l *loading) asking() {
	src, err := fs.ReadFile(l.fsys, AskingFile)
	if errors.Is(err, fs.ErrNotExist) {
		return
	}
	if err != nil {
		l.found.Add(AskingFile, 0, 0, "This file cannot be read: "+reason(err)+".", "")
		return
	}
	l.book.Files[AskingFile] = src
	a := &l.book.Asking
	fields := []field{
		{"cues", false, a.speeches(&a.Cues)},
		{"leans", false, a.speeches(&a.Leans)},
		{"hints", false, a.speeches(&a.Hints)},
		{"values", false, a.values(&a.Values)},
		{"signs", false, a.values(&a.Signs)},
		{"minus", false, a.speeches(&a.Minus)},
		{"units", false, items(a.unit)},
		{"plain", false, items(a.plain)},
		{"nothing", false, texts(&a.Nothing)},
		{"pairs", false, items(a.pair)},
		{"scenes", false, items(a.scene)},
		{"rising", false, items(a.rising)},
	}
	all := markdown.Span{Len: len(src)}
	a.titled = readYAML(AskingFile, src, all, "the file "+AskingFile, fields, &l.found)
	for _, check := range a.check {
		check(l)
	}
}

// speeches reads lists of phrases under the ids of terms.
func (a *Asking) speeches(to *[]Speech) reader {
	return func(y *yamlReader, path string, n *yaml.Node) {
		keyed(y, path, "a list of terms, each with the words for it, such as drawdown: [draws down]", n, func(id, at string, value *yaml.Node) {
			s := Speech{Term: id}
			texts(&s.Say)(y, at, value)
			*to = append(*to, s)
			a.term(id, at+"#key")
		})
	}
}

// values reads lists of phrases under the values of choices.
func (a *Asking) values(to *[]Speech) reader {
	return func(y *yamlReader, path string, n *yaml.Node) {
		keyed(y, path, "a list of choices", n, func(id, at string, choice *yaml.Node) {
			a.term(id, at+"#key")
			keyed(y, at, "a list of the choice's words, each with how people say it", choice, func(value, at string, say *yaml.Node) {
				s := Speech{Term: id, Value: value}
				texts(&s.Say)(y, at, say)
				*to = append(*to, s)
				a.check = append(a.check, func(l *loading) {
					t := l.book.TermByID[id]
					if t == nil {
						return
					}
					var words []string
					for _, v := range t.Values {
						words = append(words, v.ID)
					}
					if id == reckon.BowlTerm { // its values are the families, each a file
						for _, bowl := range l.book.Bowls {
							words = append(words, bowl.ID)
						}
					}
					if !slices.Contains(words, value) {
						l.inAsking(at+"#key", "“"+value+"” is not a value of “"+id+"”.", formula.Nearest(value, words))
					}
				})
			})
		})
	}
}

func (a *Asking) unit(y *yamlReader, path string, n *yaml.Node) {
	var u SpokenUnit
	var times, loose string
	y.mapping(path, "another word for a unit", n, []field{{"say", true, texts(&u.Say)}, {"read", true, text(&u.Read)},
		{"times", false, text(&times)}, {"loose", false, oneOf(&loose, "yes")}})
	u.Loose = loose == "yes"
	a.Units = append(a.Units, u)
	at := len(a.Units) - 1
	a.known(path+".read", u.Read)
	a.check = append(a.check, func(l *loading) {
		if times == "" {
			return
		}
		x, err := strconv.ParseFloat(times, 64)
		if err != nil || !(x > 0) || x > 1e6 {
			l.inAsking(path+".times", "“times” is a number above 0: how much of the unit read is one of the unit said.", "")
		}
		a.Units[at].Times = x
	})
}

func (a *Asking) plain(y *yamlReader, path string, n *yaml.Node) {
	var p PlainUnit
	var sure string
	y.mapping(path, "what a unit says alone", n, []field{{"units", true, texts(&p.Units)}, {"terms", true, texts(&p.Terms)},
		{"sure", false, oneOf(&sure, "yes", "no")}, {"unless", false, texts(&p.Unless)}})
	p.Sure, p.Ask = sure == "yes", sure == "no"
	for i, number := range p.Unless {
		_, known := unit.Lookup(number)
		if _, err := strconv.ParseFloat(number, 64); err != nil && !known {
			y.fail(y.where(item(path+".unless", i)), "“unless” has numbers and units: those that are asked back.", "")
		}
	}
	a.Plain = append(a.Plain, p)
	for i, u := range p.Units {
		a.known(item(path+".units", i), u)
	}
	for i, id := range p.Terms {
		a.term(id, item(path+".terms", i))
	}
}

func (a *Asking) pair(y *yamlReader, path string, n *yaml.Node) {
	var p SpokenPair
	y.mapping(path, "words before two facts", n, []field{{"say", true, texts(&p.Say)}, {"terms", true, texts(&p.Terms)}})
	if len(p.Terms) > 2 {
		y.fail(y.where(path), "A pair names the term of the first number and the one of the second; one term alone, or none, if the others are no facts.", "")
		return
	}
	a.Pairs = append(a.Pairs, p)
	for i, id := range p.Terms {
		a.term(id, item(path+".terms", i))
	}
}

func (a *Asking) scene(y *yamlReader, path string, n *yaml.Node) {
	var s SpokenScene
	var wide, sure string
	y.mapping(path, "what a sentence is about", n, []field{{"say", true, texts(&s.Say)}, {"wide", false, oneOf(&wide, "yes")}, {"sure", false, oneOf(&sure, "yes")},
		{"read", true, func(y *yamlReader, path string, n *yaml.Node) {
			keyed(y, path, "a list of terms, each with the one that is meant, such as capacity: tested-capacity", n, func(id, at string, value *yaml.Node) {
				var meant string
				text(&meant)(y, at, value)
				s.Read = append(s.Read, [2]string{id, meant})
				a.term(id, at+"#key")
				a.term(meant, at)
			})
		}}})
	s.Wide, s.Sure = wide == "yes", sure == "yes"
	a.Scenes = append(a.Scenes, s)
}

func (a *Asking) rising(y *yamlReader, path string, n *yaml.Node) {
	var list []string
	texts(&list)(y, path, n)
	a.Rising = append(a.Rising, list)
	for i, id := range list {
		a.term(id, item(path, i))
	}
}

// term checks later that a term exists.
func (a *Asking) term(id, at string) {
	a.check = append(a.check, func(l *loading) {
		if id == "" || l.book.TermByID[id] != nil {
			return
		}
		ids := make([]string, len(l.book.Terms))
		for i, t := range l.book.Terms {
			ids[i] = t.ID
		}
		l.inAsking(at, "There is no term “"+id+"”.", formula.Nearest(id, ids))
	})
}

// known checks later that a unit exists.
func (a *Asking) known(at, symbol string) {
	a.check = append(a.check, func(l *loading) {
		if _, ok := unit.Lookup(symbol); !ok && symbol != "" {
			l.inAsking(at, "“"+symbol+"” is no unit that the book knows.", "")
		}
	})
}

func (l *loading) inAsking(field, message, suggest string) {
	s := l.book.Asking.Where(field)
	l.found.Add(AskingFile, s.Off, s.Len, message, suggest)
}
