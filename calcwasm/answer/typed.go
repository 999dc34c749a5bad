package answer

import "columnbowl/calcwasm/reckon"

// typed keeps what has been read of the lines that a page sends: with each
// keystroke it sends all of them again, and one has changed.
type typed struct {
	book  *reckon.Book
	lines map[line]taken
}

// line is a text typed for a term.
type line struct {
	term int
	text string
}

// taken is how it was read: a fact, or why there is none.
type taken struct {
	fact    reckon.Fact
	trouble string
}

// mostTyped is how many lines are kept; a page shows some sixty.
const mostTyped = 256

func (y *typed) read(book *reckon.Book, term int, text string) (reckon.Fact, string) {
	if y.book != book || len(y.lines) >= mostTyped {
		y.book, y.lines = book, map[line]taken{}
	}
	l := line{term, text}
	t, ok := y.lines[l]
	if !ok {
		var err error
		if t.fact, err = book.Read(term, text); err != nil {
			t.trouble = err.Error()
		}
		y.lines[l] = t
	}
	return t.fact, t.trouble
}
