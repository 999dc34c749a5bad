package reckon

// Source is the book as its authors wrote it, cut into terms and blocks of the
// notation.
type Source struct {
	ID    string // of the book
	Title string
	Money string // the sign that prices are printed with
	Terms []TermSource
	Bowls []*Bowl // families of bowls; each becomes a value of the term bowl-family
	// Hazards are the kinds of danger that cautions may name.
	Hazards []Hazard
	// Blocks stand in the order of the terms' files and of the text in them.
	Blocks []Block
}

// TermSource is the title block of a term's page, as text.
type TermSource struct {
	ID, Name, Symbol string
	Running          string   // the name inside a sentence; "" for the name in small letters
	Kind             string   // "", quantity, count, choice
	US, SI           string   // unit symbols
	From, To         string   // the range: "0 ft", "3000 ft"
	Pressure         string   // "", gauge, absolute
	Ask              string   // the question to a person who can supply it
	Values           []string // of a choice: word, then what it is called, in turn
	Applies          []string // builds it exists in; empty for all
	Otherwise        string   // its value in the other builds
}

// BlockKind is the first word of a fenced block.
type BlockKind string

const (
	FormulaBlock  BlockKind = "formula"
	SIBlock       BlockKind = "si"
	EstimateBlock BlockKind = "estimate"
	AssumeBlock   BlockKind = "assume"
	WorkedBlock   BlockKind = "worked"
	MistakeBlock  BlockKind = "mistake"
	CautionBlock  BlockKind = "caution"
)

// Block is one fenced block of the notation.
type Block struct {
	Term string // id of the term on whose page it stands; "" elsewhere
	Kind BlockKind
	Head string // what follows the first word on the fence's line
	Body string
}
