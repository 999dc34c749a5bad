// Package ask reads a sentence and finds the facts in it: “well 180 ft static,
// draws down 40 at 400 gpm” says a static level, a drawdown and a capacity.
//
// How it reads. The sentence is cut into words and amounts (a number or range
// with its unit). Phrases of the vocabulary are looked for among the words; each
// phrase speaks for some terms. A phrase is given to the nearest amount that its
// term can take, and an amount goes to the term for which most is said. It is
// sure only where the phrase stands beside it, nothing near turns its meaning or
// names another term (firm.go), and no word of the sentence marks a near relative
// of the term (near.go); all else is a question with the likeliest term first,
// and an amount that fits nothing is told as not understood.
//
// The vocabulary comes with the book: names, other names and units from its
// terms, ways of speaking from content/asking.yaml. No trade word stands here.
//
// Conventions. Scores are whole numbers; a clear cue beside its number has 80
// to 110. From and To are bytes of the sentence. The same sentence gives the
// same readings.
package ask

import (
	"strings"
	"unicode/utf8"

	"columnbowl/calcwasm/reckon"
)

// State says how far a reading goes.
type State uint8

// The states of a reading.
const (
	Unknown State = iota // an amount that fits no term of the book
	Asked                // several terms are as likely: a person has to say
	Sure                 // the first candidate is meant
)

var stateWords = [...]string{"unknown", "ask", "sure"}

// String is the word for a reply: unknown, ask or sure.
func (s State) String() string { return stateWords[s] }

// Reading is one piece of a sentence and what it may say.
type Reading struct {
	From, To   int // bytes of the sentence
	State      State
	Candidates []Candidate // the likeliest first; for correcting a sure one as well
	Message    string      // of Asked the question, of Unknown the reason
}

// Candidate is a fact that a piece may be: Value is a text that reckon.Read
// takes for the term.
type Candidate struct {
	Term   int
	Value  string
	Reason string // why it may be meant, for a person

	score int
}

// How much of a text is read at one go: bytes, and amounts. A longer text is read
// in pieces, as the time for one grows with its square.
const (
	longestPiece = 1000
	mostAmounts  = 40
)

// mostCandidates are shown for one piece.
const mostCandidates = 6

// Reader reads sentences about one book.
type Reader struct {
	book *reckon.Book
	vocabulary
}

// Read finds the facts of a text, in the order in which they stand there.
func (r *Reader) Read(text string) []Reading {
	var list []Reading
	for from := 0; from < len(text); {
		n := pieceEnd(text[from:])
		for _, reading := range r.piece(text[from : from+n]) {
			reading.From, reading.To = reading.From+from, reading.To+from
			list = append(list, reading)
		}
		from += n
	}
	return list
}

// pieceEnd is where the first piece of a text ends: behind the last sentence that
// fits, or else behind the last word.
func pieceEnd(text string) int {
	if len(text) <= longestPiece {
		return len(text)
	}
	for _, end := range []string{"\n", ". ", "? ", "! ", "; ", " "} {
		if at := strings.LastIndex(text[:longestPiece], end); at > longestPiece/2 {
			return at + len(end)
		}
	}
	end := longestPiece
	for end > 0 && !utf8.RuneStart(text[end]) {
		end--
	}
	return end
}

// piece finds the facts of a piece of a text.
func (r *Reader) piece(text string) []Reading {
	s := &session{Reader: r, text: text}
	s.tokenise()
	s.match()
	s.ranges()
	s.attach()
	readings := make([]Reading, 0, len(s.amounts))
	for i := range s.amounts {
		if !s.amounts[i].word {
			readings = append(readings, s.judge(i))
		}
	}
	s.settle(readings)
	readings = append(readings, s.choices()...)
	inOrder(readings)
	return readings
}

// session is the reading of one sentence.
type session struct {
	*Reader
	text    string
	tokens  []token
	amounts []amount
	said    []saying

	evidence [][]evidence // for each amount
	memo     map[int]fit  // by amount and term, once ranges are joined
	si, us   bool         // the systems of the units in it
}

// inOrder sorts readings by their places; there are few.
func inOrder(list []Reading) {
	for i := 1; i < len(list); i++ {
		for j := i; j > 0 && list[j].From < list[j-1].From; j-- {
			list[j], list[j-1] = list[j-1], list[j]
		}
	}
}
