package unit

// longestAt is how far At and NumberAt look: no number with its unit is longer.
const longestAt = 64

// At finds the longest spelling of a unit with which a text begins, spaces
// before it included, as Read does behind a number. It returns nil and 0 if no
// unit stands there, or one that is refused. It is for reading whole sentences;
// F and C are temperatures.
func At(text string) (u *Unit, length int) {
	r := readerAt(text)
	r.skip()
	if r.pos == len(r.text) {
		return nil, 0
	}
	u, length = r.longestUnit("")
	if u == nil {
		return nil, 0
	}
	return u, r.at[r.pos+length]
}

// NumberAt reads the number with which a text begins, fractions included:
// "1,250.5", "6 5/8", "½". Its length is in bytes; it is 0, and ok false, where
// no number stands or none that can be read.
func NumberAt(text string) (value float64, length int, ok bool) {
	r := readerAt(text)
	n, ok, err := r.numeral()
	if !ok || err != nil {
		return 0, 0, false
	}
	return n.value, r.at[r.pos], true
}

func readerAt(text string) *reader {
	if len(text) > longestAt {
		text = text[:longestAt]
	}
	return &reader{source: text, cleaned: clean(text), field: Field{Unit: bySymbol["1"]}}
}
