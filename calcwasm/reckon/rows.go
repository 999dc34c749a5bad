package reckon

import "columnbowl/calcwasm/formula"

// Row is the condition of one row of a table of choices or of faults. What the
// row says stands on the page; the engine only decides whether it holds.
type Row struct {
	Table, ID string // ids of the table and, within it, of the row
	When      *formula.Expr
}

// RowState is how a row stands for the facts of a question.
type RowState struct {
	Row   int           // its place in Book.Rows
	Truth formula.Truth // True: it holds; False: it does not; Unknown: not checked
	Lacks []int         // the terms it lacks to be checked
}

// AddRow parses a condition and adds it to the rows. The error is one of the
// notation, with its place in the text, and then nothing is added.
func (b *Book) AddRow(table, id, when string) error {
	e, err := formula.ParseCondition(when, b.Scope)
	if err == nil {
		b.Rows = append(b.Rows, Row{Table: table, ID: id, When: e})
	}
	return err
}

// Rows decides the rows of a table, in their order. A fact that is a range
// decides by its likely value: a row is a hint to be weighed, and no warning.
func (r *Result) Rows(table string) []RowState {
	var list []RowState
	for i := range r.Book.Rows {
		row := &r.Book.Rows[i]
		if row.Table != table {
			continue
		}
		s := RowState{Row: i, Truth: row.When.Test(r.env)}
		if s.Truth == formula.Unknown {
			s.Lacks = row.When.Lacking(r.env)
		}
		list = append(list, s)
	}
	return list
}
