package search

import "strings"

// pastAndPresent is step 1b: eed, ed and ing with their ly.
func (s *stemmer) pastAndPresent() {
	for _, suffix := range [...]string{"eedly", "eed"} {
		if s.ends(suffix) {
			if s.inR1(len(suffix)) {
				s.put(len(suffix), "ee")
			}
			return
		}
	}
	for _, suffix := range [...]string{"ingly", "edly", "ing", "ed"} {
		if !s.ends(suffix) {
			continue
		}
		if s.hasVowel(len(suffix)) {
			s.put(len(suffix), "")
			s.mend()
		}
		return
	}
}

// mend repairs what is left when ed or ing is off.
func (s *stemmer) mend() {
	n := len(s.w)
	switch {
	case s.ends("at") || s.ends("bl") || s.ends("iz"):
		s.put(0, "e")
	case n > 1 && s.w[n-1] == s.w[n-2] && strings.IndexByte("bdfgmnprt", s.w[n-1]) >= 0:
		s.put(1, "")
	case s.r1 >= n && s.shortEnd(n):
		s.put(0, "e")
	}
}

// shortEnd tells whether the first n letters end in a short syllable: vowel and
// consonant at the beginning of the word, or consonant, vowel and a consonant
// that is no w, x or Y.
func (s *stemmer) shortEnd(n int) bool {
	if n == 2 {
		return vowel(s.w[0]) && !vowel(s.w[1])
	}
	return n > 2 && !vowel(s.w[n-1]) && strings.IndexByte("wxY", s.w[n-1]) < 0 && vowel(s.w[n-2]) && !vowel(s.w[n-3])
}

// finalY is step 1c.
func (s *stemmer) finalY() {
	n := len(s.w)
	if n > 2 && (s.w[n-1] == 'y' || s.w[n-1] == 'Y') && !vowel(s.w[n-2]) {
		s.w[n-1] = 'i'
	}
}

// doubles and singles are steps 2 and 3: a suffix and what stands in its place,
// the longer suffixes first.
const (
	doubles = "ization:ize ational:ate fulness:ful ousness:ous iveness:ive tional:tion biliti:ble lessli:less entli:ent ation:ate alism:al" +
		" aliti:al ousli:ous iviti:ive fulli:ful enci:ence anci:ance abli:able izer:ize ator:ate alli:al bli:ble ogi:og li: "
	singles = "ational:ate tional:tion alize:al icate:ic iciti:ic ative: ical:ic ness: ful: "
)

// suffixes does step 2 or 3: the longest suffix of the list that the word ends
// in is replaced if it lies in R1.
func (s *stemmer) suffixes(list string, third bool) {
	for list != "" {
		var pair string
		pair, list, _ = strings.Cut(list, " ")
		suffix, ending, _ := strings.Cut(pair, ":")
		if !s.ends(suffix) {
			continue
		}
		n := len(suffix)
		if s.inR1(n) && s.allowed(suffix, third) {
			s.put(n, ending)
		}
		return
	}
}

// allowed are the conditions of single suffixes.
func (s *stemmer) allowed(suffix string, third bool) bool {
	before := byte(0)
	if at := len(s.w) - len(suffix) - 1; at >= 0 {
		before = s.w[at]
	}
	switch {
	case suffix == "ogi":
		return before == 'l'
	case suffix == "li":
		return before != 0 && strings.IndexByte("cdeghkmnrt", before) >= 0
	case third && suffix == "ative":
		return s.inR2(len(suffix))
	}
	return true
}

// residue is step 4: suffixes that go when they lie in R2.
func (s *stemmer) residue() {
	const list = "ement ance ence able ible ment ant ent ism ate iti ous ive ize ion al er ic "
	for rest := list; rest != ""; {
		var suffix string
		suffix, rest, _ = strings.Cut(rest, " ")
		if !s.ends(suffix) {
			continue
		}
		n := len(suffix)
		at := len(s.w) - n - 1
		if s.inR2(n) && (suffix != "ion" || at >= 0 && (s.w[at] == 's' || s.w[at] == 't')) {
			s.put(n, "")
		}
		return
	}
}

// finalEL is step 5.
func (s *stemmer) finalEL() {
	n := len(s.w)
	switch {
	case s.ends("e") && (s.inR2(1) || s.inR1(1) && !s.shortEnd(n-1)):
		s.put(1, "")
	case s.ends("ll") && s.inR2(1):
		s.put(1, "")
	}
}
