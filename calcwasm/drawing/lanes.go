package drawing

// lanes deals each leader the x at which it turns, between x0 and x1. Leader i
// comes level at from[i], turns, and leaves level at to[i]; both lists are in
// the same order. Of two leaders that go down the lower one turns first
// (further left); of two that go up the upper one: then the level run of one
// never meets the turn of the other. Leaders that hardly turn take the middle.
func lanes(from, to []float64, x0, x1 float64) []float64 {
	out := make([]float64, len(from))
	for i := 0; i < len(from); {
		k := i
		for k < len(from) && turn(from[k], to[k]) == turn(from[i], to[i]) {
			k++
		}
		for j := i; j < k; j++ {
			f := .5
			if n := k - i; n > 1 {
				f = float64(j-i) / float64(n-1)
			}
			switch turn(from[i], to[i]) {
			case 1: // down: the first of the run turns last
				out[j] = x1 - f*(x1-x0)
			case -1:
				out[j] = x0 + f*(x1-x0)
			default:
				out[j] = (x0 + x1) / 2
			}
		}
		i = k
	}
	return out
}

// turn is the way a leader goes: 1 down, -1 up, 0 nearly level.
func turn(from, to float64) int {
	switch d := to - from; {
	case d > 1:
		return 1
	case d < -1:
		return -1
	}
	return 0
}
