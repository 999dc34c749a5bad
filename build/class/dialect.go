package class

import (
	"bytes"
	"encoding/binary"
	"encoding/csv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// Dialect is how an office program writes a table: what it opens without being
// asked depends on the country it is set to. What is made for a trainer comes in
// the dialect of the file that the trainer gave.
type Dialect struct {
	Separator rune // between the fields: ',', ';' or a tab
	Mark      bool // a byte order mark, by which some programs tell UTF-8
}

// DialectOf finds the dialect of a file by its first line.
func DialectOf(text []byte) Dialect {
	text = decoded(text)
	d := Dialect{Separator: ',', Mark: bytes.HasPrefix(text, mark)}
	first, _, _ := bytes.Cut(text, []byte("\n"))
	most := bytes.Count(first, []byte(","))
	for _, c := range ";\t" {
		if n := bytes.Count(first, []byte(string(c))); n > most {
			d.Separator, most = c, n
		}
	}
	return d
}

// mark is the byte order mark in UTF-8.
var mark = []byte("\ufeff")

// decimalComma says whether numbers are written with a decimal comma: where the
// comma is free, it is one.
func (d Dialect) decimalComma() bool { return d.Separator == ';' }

// number writes a number as programs of this dialect read it.
func (d Dialect) number(text string) string {
	if d.decimalComma() {
		return strings.Replace(text, ".", ",", 1)
	}
	return text
}

// table begins a table in a buffer.
func (d Dialect) table(b *bytes.Buffer) *csv.Writer {
	if d.Mark {
		b.Write(mark)
	}
	w := csv.NewWriter(b)
	if d.Separator != 0 {
		w.Comma = d.Separator
	}
	return w
}

// decoded is a text in UTF-8: office programs also write UTF-16, with a mark at
// its beginning, and Windows-1252.
func decoded(text []byte) []byte {
	switch {
	case bytes.HasPrefix(text, []byte{0xff, 0xfe}):
		return fromUTF16(text, binary.LittleEndian)
	case bytes.HasPrefix(text, []byte{0xfe, 0xff}):
		return fromUTF16(text, binary.BigEndian)
	case utf8.Valid(text):
		return text
	}
	var out []byte
	for _, c := range text {
		r := rune(c)
		if c >= 0x80 && c < 0xa0 {
			r = windows1252[c-0x80]
		}
		out = utf8.AppendRune(out, r)
	}
	return out
}

func fromUTF16(text []byte, order binary.ByteOrder) []byte {
	var units []uint16
	for i := 0; i+1 < len(text); i += 2 {
		units = append(units, order.Uint16(text[i:]))
	}
	return []byte(string(utf16.Decode(units)))
}

// windows1252 is the part of the code page that differs from Latin-1 (WHATWG
// Encoding Standard, index windows-1252); codes that stand for nothing are kept.
var windows1252 = [32]rune{
	0x20AC, 0x81, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0x8D, 0x017D, 0x8F,
	0x90, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x9D, 0x017E, 0x0178,
}
