package proof

import (
	"bytes"
	"regexp"

	"columnbowl/calcwasm/unit"
)

var (
	unitAtEnd = regexp.MustCompile(`(?:^|, *)(` + unitWords + `)$`)
	bareCell  = regexp.MustCompile(`^[−-]?(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?$`)
)

// cell is what stands between two strokes of a table, without spaces around it.
type cell struct {
	off  int
	text []byte
}

// cellsOf cuts a line of a table; nil if it is none. at is where it begins.
func cellsOf(line []byte, at int) []cell {
	trimmed := bytes.TrimRight(line, " \n")
	if !bytes.HasPrefix(trimmed, []byte("|")) {
		return nil
	}
	var list []cell
	from := 1
	for from < len(trimmed) {
		n := bytes.IndexByte(trimmed[from:], '|')
		if n < 0 {
			n = len(trimmed) - from
		}
		raw := trimmed[from : from+n]
		text := bytes.TrimSpace(raw)
		list = append(list, cell{at + from + len(raw) - len(bytes.TrimLeft(raw, " ")), text})
		from += n + 1
	}
	return list
}

// unitOf is the unit with which the head of a column or a row ends: “head, ft”.
func unitOf(c cell) *unit.Unit {
	m := unitAtEnd.FindSubmatch(c.text)
	if m == nil {
		return nil
	}
	u, _ := unit.At(plainSigns.Replace(string(m[1])))
	return u
}

// tableFigures are the bare numbers of tables whose column or row names a unit
// at its head.
func tableFigures(text []byte) []figure {
	var list []figure
	var columns []*unit.Unit // of the table that is gone through
	inside := false
	at := 0
	for line := range bytes.Lines(text) {
		cells := cellsOf(line, at)
		at += len(line)
		if cells == nil {
			inside = false
			continue
		}
		if !inside {
			inside, columns = true, nil
			for _, c := range cells {
				columns = append(columns, unitOf(c))
			}
			continue
		}
		row := unitOf(cells[0])
		for i, c := range cells {
			u := row
			if i < len(columns) && columns[i] != nil {
				u = columns[i]
			}
			if u == nil || !bareCell.Match(c.text) {
				continue
			}
			number := plainSigns.Replace(string(bytes.TrimLeft(c.text, "−-")))
			f := figure{off: c.off, len: len(c.text), text: number + " " + u.Symbol, unit: u}
			f.value, _, _ = unit.NumberAt(number)
			list = append(list, f)
		}
	}
	return list
}
