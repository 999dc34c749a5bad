package unit

import (
	"strings"
	"sync"
)

// allSpellings finds a unit by what people type: exactly, and with letter case
// folded where that leaves one unit only. A thousand spellings take a page's
// engine a tenth of the time of its start, and a page that shows what it was
// printed with needs none of them.
var allSpellings = sync.OnceValues(func() (exact, folded map[string]*Unit) { return spellings(table) })

func spellings(units []*Unit) (exact, folded map[string]*Unit) {
	exact, folded = make(map[string]*Unit, 4*len(units)), make(map[string]*Unit, 4*len(units))
	for _, u := range units {
		for _, s := range append([]string{u.Symbol, u.Print}, u.Also...) {
			if s == "" || strings.HasPrefix(s, perPrint) {
				continue // a price is read by the field it stands in: “per kWh” alone is no unit
			}
			key := spellingKey(s)
			exact[key] = u
			if other, taken := folded[fold(key)]; taken && other != u {
				folded[fold(key)] = nil // two units: only the exact spelling counts
				continue
			}
			folded[fold(key)] = u
		}
	}
	return exact, folded
}

// spellingKey brings a spelling into the one form the maps are keyed with: one
// space between words, none round "/" and ".", "per" as "/", no dots behind
// abbreviations, powers as plain digits, "100ft" without its space.
func spellingKey(s string) string {
	s = superscripts.Replace(strings.ReplaceAll(s, noBreak, " "))
	words := strings.Fields(strings.ReplaceAll(s, "/", " / "))
	var b strings.Builder
	glue := true // whether the next word follows without a space
	for _, word := range words {
		switch {
		case word == "/" || strings.EqualFold(word, "per"):
			if b.Len() == 0 {
				b.WriteByte('1')
			}
			b.WriteByte('/')
			glue = true
			continue
		case !glue && word[0] != '.':
			b.WriteByte(' ')
		}
		bare := strings.TrimSuffix(word, ".")
		b.WriteString(bare)
		glue = strings.HasSuffix(bare, ".") || strings.HasSuffix(b.String(), "/"+bare) && leadingDigits(bare) == bare
	}
	return b.String()
}

// fold takes letter case away, except from the M of short words: mL and ML, mPa
// and MPa are a billion apart.
func fold(key string) string {
	if !strings.ContainsAny(key, "mM") {
		return strings.ToLower(key)
	}
	var b strings.Builder
	for i := 0; i < len(key); {
		end := i
		for end < len(key) && isLetter(key[end]) {
			end++
		}
		word := key[i:end]
		switch {
		case end == i:
			b.WriteByte(key[i])
			end++
		case len(word) <= 4 && word[0]|0x20 == 'm':
			b.WriteByte(word[0])
			b.WriteString(strings.ToLower(word[1:]))
		default:
			b.WriteString(strings.ToLower(word))
		}
		i = end
	}
	return b.String()
}

// spelled finds the unit of a typed spelling, or nil.
func spelled(text string) *Unit {
	key := spellingKey(text)
	exactSpellings, foldedSpellings := allSpellings()
	if u := exactSpellings[key]; u != nil {
		return u
	}
	if u := foldedSpellings[fold(key)]; u != nil {
		return u
	}
	if !strings.ContainsAny(key, "/.23^") || strings.Contains(key, " ") && !strings.Contains(key, "/") {
		return nil
	}
	u := compose(key, func(s string) *Unit {
		if refusal(s) != "" {
			return nil
		}
		if u := exactSpellings[s]; u != nil {
			return u
		}
		return foldedSpellings[fold(s)]
	})
	if u == nil {
		return nil
	}
	for _, known := range table { // psi typed as lbf/in2 by other parts: give the table's own unit
		if known.Dim == u.Dim && known.Factor == u.Factor && known.Print == u.Print && known.kind() == u.kind() {
			return known
		}
	}
	return u
}
