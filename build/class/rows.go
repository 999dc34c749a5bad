package class

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
)

// Fault is one thing wrong with a row of a file. The other rows are used.
type Fault struct {
	File         string
	Line, Column int
	Message      string
}

func (f *Fault) String() string {
	return fmt.Sprintf("%s:%d:%d: %s", f.File, f.Line, f.Column, f.Message)
}

// row is one row of a file of comma-separated values.
type row struct {
	fields []string
	line   int
	column []int // where each field begins, in bytes from 1
}

// at is the place of a field for a fault; behind the last one it is the end.
func (r *row) at(i int) int {
	if len(r.column) == 0 {
		return 1
	}
	return r.column[min(i, len(r.column)-1)]
}

// get is a field without spaces around it; "" if the row is shorter.
func (r *row) get(i int) string {
	if i < 0 || i >= len(r.fields) {
		return ""
	}
	return strings.TrimSpace(r.fields[i])
}

// table is a file with a line of headings.
type table struct {
	file    string
	dialect Dialect
	head    row
	rows    []row
}

// read takes a file of comma-separated values (RFC 4180), also one separated by
// semicolons or tabs, as office programs write it where the comma is the decimal
// sign. Rows that cannot be read become faults.
func read(file string, text []byte) (*table, []Fault) {
	t := &table{file: file, dialect: DialectOf(text)}
	if workbook(text) {
		return t, []Fault{{file, 1, 1, "This is a workbook of an office program, not a table as text. Open it there and save it as CSV."}}
	}
	text = bytes.TrimPrefix(decoded(text), mark)
	r := csv.NewReader(bytes.NewReader(text))
	r.FieldsPerRecord = -1
	r.Comma = t.dialect.Separator
	var faults []Fault
	for n := 0; ; {
		fields, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if bad := (*csv.ParseError)(nil); errors.As(err, &bad) {
			faults = append(faults, Fault{file, bad.Line, bad.Column, "This row is not read: a quotation mark stands where none can stand. A field that holds one is written in quotation marks, with the mark doubled."})
			continue
		}
		if err != nil {
			return t, append(faults, Fault{file, 1, 1, "The file cannot be read: " + err.Error() + "."})
		}
		one := row{fields: fields, column: make([]int, len(fields))}
		for i := range fields {
			one.line, one.column[i] = r.FieldPos(i)
		}
		if one.line == 0 || len(strings.Join(fields, "")) == 0 {
			continue
		}
		if n++; n == 1 {
			t.head = one
		} else {
			t.rows = append(t.rows, one)
		}
	}
	if len(t.head.fields) == 0 {
		faults = append(faults, Fault{file, 1, 1, "The file is empty: its first line names the columns."})
	}
	return t, faults
}

// workbook says whether a file is a workbook: a ZIP package (OpenDocument, Office
// Open XML) or the compound file of older programs.
func workbook(text []byte) bool {
	return bytes.HasPrefix(text, []byte("PK\x03\x04")) || bytes.HasPrefix(text, []byte("\xd0\xcf\x11\xe0"))
}

// column finds a column by its heading; -1 if there is none.
func (t *table) column(name string) int {
	for i := range t.head.fields {
		if strings.EqualFold(t.head.get(i), name) {
			return i
		}
	}
	return -1
}

// need finds columns, and tells which are missing.
func (t *table) need(names ...string) (places []int, faults []Fault) {
	for _, name := range names {
		i := t.column(name)
		if i < 0 && len(t.head.fields) > 0 {
			faults = append(faults, Fault{t.file, max(t.head.line, 1), 1, "There is no column “" + name + "” among the headings."})
		}
		places = append(places, i)
	}
	return places, faults
}
