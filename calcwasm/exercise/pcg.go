package exercise

import "math/bits"

// pcg is a permuted congruential generator, PCG-XSH-RR 64/32: 64 bits of state,
// 32 bits out (M. E. O'Neill, “PCG: A Family of Simple Fast Space-Efficient
// Statistically Good Algorithms for Random Number Generation”, HMC-CS-2014-0905).
// It is whole-number arithmetic only, so it gives the same everywhere.
type pcg struct{ state, inc uint64 }

const pcgFactor = 6364136223846793005

func newPCG(seed, stream uint64) *pcg {
	p := &pcg{inc: stream<<1 | 1}
	p.next()
	p.state += seed
	p.next()
	return p
}

func (p *pcg) next() uint32 {
	old := p.state
	p.state = old*pcgFactor + p.inc
	mixed := uint32((old>>18 ^ old) >> 27)
	return bits.RotateLeft32(mixed, -int(old>>59))
}

// below gives a whole number from 0 to n-1, each equally likely; n is 1 or more.
// It takes the upper half of a product and draws again where that would favour
// some (D. Lemire, “Fast Random Integer Generation in an Interval”, 2019).
func (p *pcg) below(n int) int {
	bound := uint32(n)
	wide := uint64(p.next()) * uint64(bound)
	if low := uint32(wide); low < bound {
		for least := -bound % bound; low < least; low = uint32(wide) {
			wide = uint64(p.next()) * uint64(bound)
		}
	}
	return int(wide >> 32)
}

// shuffled is the whole numbers from 0 to n-1 in a random order.
func (p *pcg) shuffled(n int) []int {
	list := make([]int, n)
	for i := range list {
		k := p.below(i + 1)
		list[i], list[k] = list[k], i
	}
	return list
}

// streamOf gives every template numbers of its own: the 64-bit FNV-1a hash of
// its id.
func streamOf(id string) uint64 {
	h := uint64(14695981039346656037)
	for i := 0; i < len(id); i++ {
		h = (h ^ uint64(id[i])) * 1099511628211
	}
	return h
}
