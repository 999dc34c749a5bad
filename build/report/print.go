package report

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// frameWidth is how many characters of a long line are shown around a place.
const frameWidth = 100

// tabWidth is how far a tab reaches in a printed line.
const tabWidth = 4

// Print writes a placed list in its order, as plain text without colours:
//
//	terms/lift.md:14:8: The example expects …
//	    expect lift = 194 ft
//	                  ^^^^^^
//	  write: 195 ft
func (l List) Print(w io.Writer) error {
	b := bufio.NewWriter(w)
	for i := range l {
		l[i].print(b)
	}
	return b.Flush()
}

func (d *Diagnostic) print(b *bufio.Writer) {
	severity := ""
	if d.Severity != Error {
		severity = d.Severity.String() + ": "
	}
	switch {
	case d.File == "":
		fmt.Fprintf(b, "%s%s\n", severity, d.Message)
	case d.Line == 0:
		fmt.Fprintf(b, "%s: %s%s\n", d.File, severity, d.Message)
	default:
		fmt.Fprintf(b, "%s:%d:%d: %s%s\n", d.File, d.Line, d.Column, severity, d.Message)
		if d.Frame.Line != "" {
			fmt.Fprintf(b, "    %s\n    %s\n", d.Frame.Line, d.Frame.Mark)
		}
	}
	if d.Suggest != "" {
		fmt.Fprintf(b, "  write: %s\n", d.Suggest)
	}
	for _, n := range d.Notes {
		fmt.Fprintf(b, "  %s\n", n)
	}
}

// frame returns the line around a place and a line with the marker under it.
// The marker ends with the line; a long line is cut on both sides.
func frame(src []byte, off, length int) Frame {
	start := bytes.LastIndexByte(src[:off], '\n') + 1
	end := len(src)
	if i := bytes.IndexByte(src[off:], '\n'); i >= 0 {
		end = off + i
	}
	stop := min(off+length, end)
	before := widen(src[start:off], 0)
	marked := widen(src[off:stop], width(before))
	after := strings.TrimRight(widen(src[stop:end], width(before)+width(marked)), " \r")
	if strings.TrimSpace(before+marked+after) == "" {
		return Frame{}
	}
	return cut(before, strings.TrimRight(marked, "\r"), after)
}

// widen puts spaces for tabs, in a piece of a line that begins at a column.
func widen(piece []byte, column int) string {
	var b strings.Builder
	for _, r := range string(piece) {
		n := 1
		if r == '\t' {
			n = tabWidth - column%tabWidth
			b.WriteString(strings.Repeat(" ", n))
		} else {
			b.WriteRune(r)
		}
		column += n
	}
	return b.String()
}

func width(s string) int { return utf8.RuneCountInString(s) }

// cut trims a line to frameWidth around its marked part.
func cut(before, marked, after string) Frame {
	b, m, a := []rune(before), []rune(marked), []rune(after)
	left, right := "", ""
	if len(b)+len(m)+len(a) > frameWidth {
		if len(m) > frameWidth*2/3 {
			m, a, right = m[:frameWidth*2/3], nil, "…"
		}
		room := frameWidth - len(m)
		if keep := max(room/2, room-len(a)); len(b) > keep {
			b, left = b[len(b)-keep:], "…"
		}
		if keep := room - len(b); len(a) > keep {
			a, right = a[:keep], "…"
		}
	}
	return Frame{
		Line: left + string(b) + string(m) + string(a) + right,
		Mark: strings.Repeat(" ", len(b)+width(left)) + strings.Repeat("^", max(len(m), 1)),
	}
}
