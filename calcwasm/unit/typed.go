package unit

// Field is what an input line of a page, or a value of the notation, is for.
type Field struct {
	Unit      *Unit     // unit of a bare number; nil means a pure number
	Reference Reference // of a pressure term
	Count     bool      // whole numbers from 0 only
	Name      string    // for messages: "static level"
}

// Typed is what was read. Low, Likely and High are in SI and equal for a plain
// number; of a range, Likely is the middle.
type Typed struct {
	Low, Likely, High float64
	Unit              *Unit    // as read; of a range the unit of its upper end
	Rounding          float64  // half of the last typed digit, in SI; of a fraction in eighths a sixteenth
	Approximate       bool     // "about 400 gpm"
	Notes             []string // words for the reader: "lb read as lbf"
}

// Code tells what is wrong with a text.
type Code uint8

// The codes of ReadError.
const (
	_              Code = iota
	Empty               // nothing typed
	NotANumber          // no number where one should stand
	UnknownUnit         // a unit nobody here knows
	WrongKind           // a unit of another dimension: Typed holds what was read
	Ambiguous           // two meanings: 0.72 of a percent field, "M", "ton"
	WrongReference      // absolute in a gauge field, or the other way
	NotWhole            // a count that is not whole, or below zero
	TooLarge            // beyond what anything here could be
	Leftover            // something stands behind what was read
	BadRange            // a range from the larger to the smaller with a dash
)

// ReadError is why a text was not taken. At and Len mark the bytes of Text the
// message is about. Message is complete and for the person who typed.
type ReadError struct {
	Code    Code
	Text    string
	At, Len int
	Message string
	Dim     Dim   // of what was read, for WrongKind
	Typed   Typed // what was read, in SI, for WrongKind
}

// Error is the message.
func (e *ReadError) Error() string { return e.Message }

var _ error = (*ReadError)(nil)

// tooLarge is the largest number taken, in the unit it was typed in.
const tooLarge = 1e18

// quote puts a person's text in quotes, shortened when long.
func quote(text string) string {
	const most = 40
	count := 0
	for i := range text {
		if count == most {
			return "“" + text[:i] + "…”"
		}
		count++
	}
	return "“" + text + "”"
}
