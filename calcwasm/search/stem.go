package search

import "strings"

// Stem cuts an English word down to its stem with the algorithm that Martin
// Porter published as the English stemmer of Snowball, known as Porter2
// (snowballstem.org/algorithms/english/stemmer.html). The word is in small
// letters; one with a letter outside a to z, or of fewer than three letters,
// is its own stem.
func Stem(word string) string {
	if len(word) < 3 || !plainLetters(word) {
		return word
	}
	if s, ok := listed(irregular, word); ok {
		return s
	}
	s := &stemmer{w: markY([]byte(strings.TrimPrefix(word, "'")))}
	s.regions()
	s.genitive()
	s.plural()
	if s.invariant() {
		return string(s.w)
	}
	s.pastAndPresent()
	s.finalY()
	s.suffixes(doubles, false)
	s.suffixes(singles, true)
	s.residue()
	s.finalEL()
	return strings.ToLower(string(s.w))
}

// irregular are the words with stems of their own, as pairs.
const irregular = " skis:ski skies:sky dying:die lying:lie tying:tie idly:idl gently:gentl ugly:ugli early:earli only:onli singly:singl" +
	" sky:sky news:news howe:howe atlas:atlas cosmos:cosmos bias:bias andes:andes "

// unchanged are the words that stay as they are once the plural is off.
const unchanged = " inning outing canning herring earring proceed exceed succeed "

// listed finds a word in a list of pairs.
func listed(pairs, word string) (string, bool) {
	at := strings.Index(pairs, " "+word+":")
	if at < 0 {
		return "", false
	}
	rest := pairs[at+len(word)+2:]
	return rest[:strings.IndexByte(rest, ' ')], true
}

func plainLetters(word string) bool {
	for i := range len(word) {
		if (word[i] < 'a' || word[i] > 'z') && word[i] != '\'' {
			return false
		}
	}
	return true
}

// stemmer is a word on its way to its stem. A y that counts as a consonant is
// written Y. r1 and r2 are where Porter's regions begin.
type stemmer struct {
	w      []byte
	r1, r2 int
}

func vowel(b byte) bool { return strings.IndexByte("aeiouy", b) >= 0 }

// markY writes Y for a y at the beginning and behind a vowel.
func markY(w []byte) []byte {
	for i := range w {
		if w[i] == 'y' && (i == 0 || vowel(w[i-1])) {
			w[i] = 'Y'
		}
	}
	return w
}

// regions finds R1 and R2: what follows the first consonant behind a vowel, and
// the same once more inside R1.
func (s *stemmer) regions() {
	s.r1 = s.behindVowel(0)
	for _, head := range [...]string{"gener", "commun", "arsen"} {
		if strings.HasPrefix(string(s.w), head) {
			s.r1 = len(head)
		}
	}
	s.r2 = s.behindVowel(s.r1)
}

func (s *stemmer) behindVowel(from int) int {
	for i := from + 1; i < len(s.w); i++ {
		if vowel(s.w[i-1]) && !vowel(s.w[i]) {
			return i + 1
		}
	}
	return len(s.w)
}

func (s *stemmer) ends(suffix string) bool { return strings.HasSuffix(string(s.w), suffix) }

// put puts an ending in the place of the last n letters.
func (s *stemmer) put(n int, ending string) {
	s.w = append(s.w[:len(s.w)-n], ending...)
}

// inR1 and inR2 tell whether a suffix of n letters lies in the region.
func (s *stemmer) inR1(n int) bool { return len(s.w)-n >= s.r1 }
func (s *stemmer) inR2(n int) bool { return len(s.w)-n >= s.r2 }

// hasVowel tells whether a vowel stands before the last n letters.
func (s *stemmer) hasVowel(n int) bool {
	for _, b := range s.w[:max(0, len(s.w)-n)] {
		if vowel(b) {
			return true
		}
	}
	return false
}

// genitive is step 0.
func (s *stemmer) genitive() {
	for _, suffix := range [...]string{"'s'", "'s", "'"} {
		if s.ends(suffix) {
			s.put(len(suffix), "")
			return
		}
	}
}

// plural is step 1a.
func (s *stemmer) plural() {
	switch {
	case s.ends("sses"):
		s.put(2, "")
	case s.ends("ied") || s.ends("ies"):
		if len(s.w) > 4 {
			s.put(2, "")
		} else {
			s.put(1, "")
		}
	case s.ends("us") || s.ends("ss"):
	case s.ends("s") && s.hasVowel(2):
		s.put(1, "")
	}
}

func (s *stemmer) invariant() bool { return strings.Contains(unchanged, " "+string(s.w)+" ") }
