package answer

import (
	"strconv"
	"strings"

	"columnbowl/calcwasm/assembly"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// columns is how many cells a row of the table has.
const columns = 11

// Table is the take-off as rows for a spreadsheet, the heads of the columns
// first: one row for each piece, and behind them rows whose group is total,
// refused, caution, missing or note. Lengths are in ft or m, masses in lb or
// kg; what is not known is an empty cell. While something is refused there are
// no pieces.
func Table(l *assembly.List, main formula.System) [][columns]string {
	length, mass := "ft", "lb"
	if main == formula.SI {
		length, mass = "m", "kg"
	}
	rows := [][columns]string{{"place", "group", "part", "name", "label", "with", "quantity", "length each " + length, "length " + length, "mass each " + mass, "mass " + mass}}
	if len(l.Refused) == 0 {
		for i := range l.Pieces {
			p := &l.Pieces[i]
			rows = append(rows, [columns]string{strconv.Itoa(p.Order), l.Build.Groups[p.Group].ID, p.Line.Part, p.Line.Name, p.Line.Label, p.Line.With, cell(p.Count, ""),
				cell(p.Length, length), cell(p.TotalLength(), length), cell(p.Mass, mass), cell(p.TotalMass(), mass)})
		}
	}
	rows = behind(rows, l, main)
	for i := range rows {
		for k, text := range rows[i] {
			rows[i][k] = strings.ReplaceAll(text, "\u00a0", " ") // what keeps a unit at its number is of no use in a cell
		}
	}
	return rows
}

// behind adds the rows that follow the pieces.
func behind(rows [][columns]string, l *assembly.List, main formula.System) [][columns]string {
	book := l.Result.Book
	row := func(kind, id, name, text string) {
		rows = append(rows, [columns]string{1: kind, 2: id, 3: name, 4: text})
	}
	for _, t := range append([]int{l.Build.Asked, l.Build.Made}, l.Totals()...) {
		if l.Result.Known(t) {
			row("total", book.Terms[t].ID, book.Terms[t].Name, l.Result.Text(t, main))
		}
	}
	for _, c := range l.Refused {
		row("refused", book.Cautions[c].ID, "", book.Cautions[c].Say)
	}
	for _, c := range l.Cautions() {
		row("caution", book.Cautions[c].ID, "", book.InFull(&book.Cautions[c]))
	}
	if len(l.Refused) == 0 {
		for _, t := range l.Asks() {
			row("missing", book.Terms[t].ID, "", book.Terms[t].Ask)
		}
	}
	for _, n := range l.Notes {
		row("note", "", "", n)
	}
	return rows
}

// cell is a number of a table in a unit, "" for a pure number; empty if it is
// not known.
func cell(v float64, symbol string) string {
	if v != v {
		return ""
	}
	if symbol != "" {
		u, _ := unit.Lookup(symbol)
		v = tidy(u.FromSI(v))
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// tidy drops the last bits, which conversions between units leave behind.
func tidy(v float64) float64 {
	t, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 12, 64), 64)
	if err != nil {
		return v
	}
	return t
}

// CSV is the table as comma-separated values (RFC 4180, with line feeds alone
// as programs of this kind expect).
func CSV(l *assembly.List, main formula.System) string {
	return joined(Table(l, main), ",", func(text string) string {
		if !strings.ContainsAny(text, ",\"\r\n") && !strings.HasPrefix(text, " ") {
			return text
		}
		return `"` + strings.ReplaceAll(text, `"`, `""`) + `"`
	})
}

// tabbed is the table with a tab between cells, the form in which spreadsheets
// take what was copied.
func tabbed(l *assembly.List, main formula.System) string {
	return joined(Table(l, main), "\t", func(text string) string { return strings.Join(strings.Fields(text), " ") })
}

func joined(rows [][columns]string, between string, write func(string) string) string {
	var b strings.Builder
	for i := range rows {
		for k, text := range rows[i] {
			if k > 0 {
				b.WriteString(between)
			}
			b.WriteString(write(text))
		}
		b.WriteByte('\n')
	}
	return b.String()
}
