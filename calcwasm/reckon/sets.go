package reckon

import "math/bits"

const (
	keptSets   = 12 // sets kept for each term on the way
	largestSet = 16 // facts in a set
	setWords   = 4
	setRoom    = setWords * 64 // different facts that sets can hold
)

// set is a set of facts that could be asked for, as bits. Sets are plain values
// without pointers: the search for what is missing makes tens of thousands of
// them, at every keystroke of a reader.
type set [setWords]uint64

func (s set) with(i int) set {
	s[i/64] |= 1 << (i % 64)
	return s
}

func (s set) has(i int) bool { return s[i/64]>>(i%64)&1 != 0 }

func (s set) or(o set) set {
	for i := range s {
		s[i] |= o[i]
	}
	return s
}

func (s set) size() int {
	n := 0
	for _, w := range s {
		n += bits.OnesCount64(w)
	}
	return n
}

// in says whether all of s is in o.
func (s set) in(o set) bool {
	for i := range s {
		if s[i]&^o[i] != 0 {
			return false
		}
	}
	return true
}

// before orders sets: fewer facts first, then those whose first facts come first.
func (s set) before(o set) bool {
	if a, b := s.size(), o.size(); a != b {
		return a < b
	}
	for i := range s {
		if d := s[i] ^ o[i]; d != 0 {
			return s[i]>>bits.TrailingZeros64(d)&1 != 0
		}
	}
	return false
}

// setList holds the best few sets of a term in order; none contains another.
type setList struct {
	n    int
	sets [keptSets]set
}

// add takes a set in, unless one of its subsets is there already; supersets of
// it are dropped. It reports whether it was taken.
func (l *setList) add(s set) bool {
	for _, have := range l.sets[:l.n] {
		if have.in(s) {
			return false
		}
	}
	kept := 0
	for _, have := range l.sets[:l.n] {
		if !s.in(have) {
			l.sets[kept] = have
			kept++
		}
	}
	l.n = kept
	at := l.n
	for at > 0 && s.before(l.sets[at-1]) {
		at--
	}
	if at == keptSets {
		return false
	}
	l.n = min(l.n+1, keptSets)
	copy(l.sets[at+1:l.n], l.sets[at:l.n-1])
	l.sets[at] = s
	return true
}

// join combines each set of l with each of more and keeps the best.
func (l *setList) join(more *setList) setList {
	var out setList
	for _, a := range l.sets[:l.n] {
		for _, b := range more.sets[:more.n] {
			if u := a.or(b); u.size() <= largestSet {
				out.add(u)
			}
		}
	}
	return out
}
