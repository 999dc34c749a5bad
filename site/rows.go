package site

// numberedRow is a row with its line number; headings have none.
type numberedRow struct {
	Row
	N int
}

// numbered counts the lines of a sheet, leaving out the headings.
func numbered(rows []Row) []numberedRow {
	out := make([]numberedRow, 0, len(rows))
	n := 0
	for _, r := range rows {
		if r.Heading == "" {
			n++
		}
		out = append(out, numberedRow{Row: r, N: n})
	}
	return out
}

// valueCells is what the two number columns of a row show.
type valueCells struct {
	Row          Row
	Large, Small Number
	Unit         string // unit of the large number, also when the number is missing
	Word         string // the chosen value of a choice, in words
	Differ       bool   // the small number says something else than the large one
}

// cells puts a row's value into the two columns, large and small.
func cells(r Row, large, small Number, unit string) valueCells {
	c := valueCells{Row: r, Large: large, Small: small, Unit: unit, Differ: large != small}
	for _, choice := range r.Choices {
		if choice.ID == r.Choice {
			c.Word = choice.Name
		}
	}
	return c
}

// plural picks the key of the word for one or for many.
func plural(key string, n int) string {
	if n == 1 {
		return key + ".one"
	}
	return key + ".many"
}
