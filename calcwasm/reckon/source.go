package reckon

import (
	"errors"
	"strconv"
	"strings"
)

// Source is the book as its authors wrote it, cut into terms and blocks of the
// notation. It is what the bindery hands to the page, so that an edited book
// needs no Go: engine and compiler load the same Source with the same code.
type Source struct {
	ID    string // of the book
	Title string
	Money string // the sign that prices are printed with
	Terms []TermSource
	// Blocks stand in the order of the terms' files and of the text in them.
	Blocks []Block
}

// TermSource is the title block of a term's page, as text.
type TermSource struct {
	ID, Name, Symbol string
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

// packForm is the version of the packed form.
const packForm = "column-and-bowl book 1"

// Pack writes a Source as one text for the page. Worked examples stay behind:
// the page carries them as text and as facts.
func (s *Source) Pack() []byte {
	var b strings.Builder
	put := func(fields ...string) {
		for i, f := range fields {
			if i > 0 {
				b.WriteByte('\t')
			}
			b.WriteString(packEscape.Replace(f))
		}
		b.WriteByte('\n')
	}
	put(packForm, s.ID, s.Title, s.Money)
	for _, t := range s.Terms {
		put("term", t.ID, t.Name, t.Symbol, t.Kind, t.US, t.SI, t.From, t.To, t.Pressure, t.Ask, t.Otherwise,
			strings.Join(t.Applies, " "), strconv.Itoa(len(t.Values)))
		for _, v := range t.Values {
			put("value", v)
		}
	}
	for _, k := range s.Blocks {
		if k.Kind != WorkedBlock {
			put("block", k.Term, string(k.Kind), k.Head, k.Body)
		}
	}
	return []byte(b.String())
}

var (
	packEscape   = strings.NewReplacer("\\", "\\\\", "\t", "\\t", "\n", "\\n", "\r", "")
	packUnescape = strings.NewReplacer("\\\\", "\\", "\\t", "\t", "\\n", "\n")
)

// Unpack reads what Pack wrote.
func Unpack(text []byte) (*Source, error) {
	s := &Source{}
	for i, line := range strings.Split(strings.TrimSuffix(string(text), "\n"), "\n") {
		f := strings.Split(line, "\t")
		for j := range f {
			f[j] = packUnescape.Replace(f[j])
		}
		if err := s.unpackLine(i, f); err != nil {
			return nil, err
		}
	}
	return s, nil
}

func (s *Source) unpackLine(i int, f []string) error {
	switch {
	case i == 0 && len(f) == 4 && f[0] == packForm:
		s.ID, s.Title, s.Money = f[1], f[2], f[3]
	case i > 0 && f[0] == "term" && len(f) == 14:
		s.Terms = append(s.Terms, TermSource{ID: f[1], Name: f[2], Symbol: f[3], Kind: f[4], US: f[5], SI: f[6], From: f[7], To: f[8],
			Pressure: f[9], Ask: f[10], Otherwise: f[11], Applies: strings.Fields(f[12])})
	case i > 0 && f[0] == "value" && len(f) == 2 && len(s.Terms) > 0:
		t := &s.Terms[len(s.Terms)-1]
		t.Values = append(t.Values, f[1])
	case i > 0 && f[0] == "block" && len(f) == 5:
		s.Blocks = append(s.Blocks, Block{Term: f[1], Kind: BlockKind(f[2]), Head: f[3], Body: f[4]})
	default:
		return errors.New("the book's data cannot be read: line " + strconv.Itoa(i+1) + " is not of the form that this engine knows")
	}
	return nil
}
