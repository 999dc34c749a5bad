package cutaway

import (
	"cmp"
	"slices"
)

// settle gives the labels of one column their heights: as near to their points
// as they can be without overlap (least squares, by pooling neighbours that
// collide), then leaders that cross are uncrossed by exchanging the two.
//
// An exchange shortens the two leaders together, so this ends; rounds bounds it
// against a tie that goes to and fro.
func settle(list []*call, top, bottom float64) {
	slices.SortStableFunc(list, func(a, b *call) int { return cmp.Compare(a.y, b.y) })
	slide(list, top, bottom)
	const rounds = 80
	for range rounds {
		if !uncross(list, top, bottom) {
			return
		}
	}
}

func uncross(list []*call, top, bottom float64) (moved bool) {
	for i := range list {
		for j := i + 1; j < len(list); j++ {
			if crossing(list[i], list[j]) {
				list[i], list[j] = list[j], list[i]
				slide(list, top, bottom)
				moved = true
			}
		}
	}
	return moved
}

// block is a run of labels that touch.
type block struct {
	from, n int
	sum     float64 // of the wanted tops, each less its place in the block
	h       float64
}

func (b block) top(top, bottom float64) float64 {
	return max(top, min(bottom-b.h, b.sum/float64(b.n)))
}

func slide(list []*call, top, bottom float64) {
	var blocks []block
	for i, k := range list {
		blocks = append(blocks, block{i, 1, k.y - k.h/2, k.h})
		for n := len(blocks); n > 1; n = len(blocks) {
			a, b := blocks[n-2], blocks[n-1]
			if a.top(top, bottom)+a.h <= b.top(top, bottom)+1e-6 {
				break
			}
			blocks = append(blocks[:n-2], block{a.from, a.n + b.n, a.sum + b.sum - a.h*float64(b.n), a.h + b.h})
		}
	}
	for _, b := range blocks {
		y := b.top(top, bottom)
		for _, k := range list[b.from : b.from+b.n] {
			k.cy = y + k.h/2
			y += k.h
		}
	}
}

// crossing is true if the sloping parts of two leaders intersect.
func crossing(a, b *call) bool {
	p, q := point{a.x, a.y}, point{a.col.elbow, a.cy}
	r, s := point{b.x, b.y}, point{b.col.elbow, b.cy}
	side := func(u, v, w point) float64 { return (v.x-u.x)*(w.y-u.y) - (v.y-u.y)*(w.x-u.x) }
	return side(p, q, r)*side(p, q, s) < -1e-9 && side(r, s, p)*side(r, s, q) < -1e-9
}
