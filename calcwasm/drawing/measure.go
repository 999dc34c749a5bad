package drawing

import "strings"

// Mark is a number of a picture with its words. The zero value is "not known".
type Mark struct {
	Value float64 // in the unit of the picture (one for all its depths or powers)
	Known bool
	Name  string // "pumping level"
	Text  string // "195 ft", as the page prints it
}

// At makes a known mark.
func At(value float64, name, text string) Mark {
	return Mark{Value: value, Known: true, Name: name, Text: text}
}

// Unknown makes a mark that has a name and no value.
func Unknown(name string) Mark { return Mark{Name: name} }

// ok is true if the number can be drawn. 1e9 bounds what a picture can hold:
// beyond it differences of coordinates lose their decimals.
func (m Mark) ok() bool { return m.Known && finite(m.Value) && m.Value > -1e9 && m.Value < 1e9 }

// tiny is the least reach or power a scale is made for; less counts as none, so
// that no scale grows without bound.
const tiny = 1e-6

// words is "name text", or the name alone.
func (m Mark) words() string { return strings.TrimSpace(m.Name + " " + m.Text) }

// widths of printable ASCII in thousandths of the type size, for a grotesque
// of Helvetica's proportions (its published metrics, from memory). The
// lettering of the site is condensed, so this errs on the safe side.
var widths = [95]uint16{
	278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
	1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
	333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
	556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
}

// sizes of type in drawings, in px; the style sheet sets the same.
const (
	sizeText = 14.0 // words in drawings
	sizeMid  = 16.0 // results (class mid)
	sizeBig  = 22.0 // the one number of a drawing (class big)
	leading  = 17.0 // from line to line
)

// textWidth estimates the length of a line of words, in px, from above: the
// face in force is not known when the drawing is made.
func textWidth(s string, size float64) float64 {
	sum := 0.0
	for _, r := range s {
		switch {
		case r >= 0x20 && r < 0x7f:
			sum += float64(widths[r-0x20])
		case r >= 0x2E80: // wide scripts
			sum += 1000
		case r == 0xA0 || r == 0x202F:
			sum += 278
		default:
			sum += 600
		}
	}
	return sum * size / 1000
}

// classWidth is textWidth at the size the classes of a text stand for; bold
// type is about 7 % wider.
func classWidth(s, class string) float64 {
	size, bold := sizeText, 1.0
	for _, c := range strings.Fields(class) {
		switch c {
		case "mid":
			size = sizeMid
		case "big":
			size = sizeBig
		case "b":
			bold = 1.07
		}
	}
	return textWidth(s, size) * bold
}

// Wrap breaks words into lines for a drawing: class tells how large and heavy
// they are, width how long a line may be, in px. See wrap.
func Wrap(s, class string, width float64) []string { return wrap(s, class, width) }

// wrap breaks words into lines no longer than width, a word that is longer at
// its hyphens; a piece without any may be longer, nothing is ever cut.
func wrap(s, class string, width float64) []string {
	var lines []string
	line, join := "", ""
	for _, word := range strings.Fields(s) {
		for _, piece := range hyphened(word, class, width) {
			if next := line + join + piece; line == "" || classWidth(next, class) <= width {
				line = next
			} else {
				lines = append(lines, line)
				line = piece
			}
			join = ""
		}
		join = " "
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// hyphened is a word, or its pieces if it is longer than width.
func hyphened(word, class string, width float64) []string {
	if classWidth(word, class) <= width {
		return []string{word}
	}
	return strings.SplitAfter(word, "-")
}
