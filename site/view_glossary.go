package site

import "html/template"

// Glossary is every name in the book in one alphabet (glossary.html).
type Glossary struct {
	Frame
	Count    int // terms and parts
	Others   int // further names
	Groups   []GlossaryGroup
	PairsURL string // of the list of words that are easily confused; "" without one
}

// GlossaryGroup is the words under one letter.
type GlossaryGroup struct {
	ID     string // of its heading: the letter, or "figures"
	Letter string
	Words  []GlossaryWord
}

// GlossaryWord is a term or a part with its further names, or a further name
// with the words that it stands for.
type GlossaryWord struct {
	Link                         // without URL for a further name
	ID             string        // "" for a further name
	Symbol         template.HTML // MathML
	UnitUS, UnitSI string
	First          string   // first sentence of the definition
	Also           []string // further names
	Pairs          []Link   // pages that show it beside what it is taken for
	See            []Link   // of a further name: the words, as places of this page
}

// Pair is the page of words that are easily confused (pairs/ID.html).
type Pair struct {
	Frame
	ID, Name string        // required
	Apart    template.HTML // in one sentence what tells them apart
	Whose    string        // whose pump the values are of
	Sides    []PairSide
	Figures  []Figure
	Body     template.HTML
	Sources  []template.HTML
}

// PairSide is one of the words of a pair.
type PairSide struct {
	Link
	Symbol         template.HTML // MathML
	UnitUS, UnitSI string
	Also           []string
	Says           template.HTML // its definition
	Relation       template.HTML // MathML, of a term
	Value          Both          // of a term, in the pump of the chain
	Motion         string        // of a part, as on its page; likewise:
	Builds, Wetted []string
	PerPump        string
	Lit            []Lit
}

// PairIndex lists the pairs (pairs/index.html) under the places of the pump; the
// note of each is what tells its words apart.
type PairIndex struct {
	Frame
	Count  int
	Groups []AskedGroup
}
