package drawing

// spread moves points apart along a line as little as possible: the result
// keeps the order of want, neighbours i and i+1 are at least gap[i] apart, and
// all lie between lo and hi if there is room (if there is not, they start at lo
// and run past hi). It is the least-squares answer: pooling of adjacent
// violators on want less the running gaps.
func spread(want, gap []float64, lo, hi float64) []float64 {
	n := len(want)
	if n == 0 {
		return nil
	}
	off := make([]float64, n)
	for i := 1; i < n; i++ {
		off[i] = off[i-1] + gap[i-1]
	}
	z := pool(want, off)
	last := max(hi-off[n-1], lo)
	out := make([]float64, n)
	for i := range z {
		out[i] = min(max(z[i], lo), last) + off[i]
	}
	return out
}

// pool is isotonic regression of want less off.
func pool(want, off []float64) []float64 {
	type run struct {
		sum float64
		n   int
	}
	var runs []run
	for i := range want {
		runs = append(runs, run{want[i] - off[i], 1})
		for k := len(runs); k > 1 && runs[k-2].sum/float64(runs[k-2].n) > runs[k-1].sum/float64(runs[k-1].n); k = len(runs) {
			runs[k-2].sum += runs[k-1].sum
			runs[k-2].n += runs[k-1].n
			runs = runs[:k-1]
		}
	}
	z := make([]float64, 0, len(want))
	for _, r := range runs {
		for range r.n {
			z = append(z, r.sum/float64(r.n))
		}
	}
	return z
}

// push keeps points where they are and moves later ones down only as far as
// the gaps ask; if the last one falls below hi the tail is moved up again.
// Unlike spread it leaves earlier points alone, so that a list that opens does
// not move what stands above it.
func push(want, gap []float64, lo, hi float64) []float64 {
	out := make([]float64, len(want))
	for i, w := range want {
		out[i] = max(w, lo)
		if i > 0 {
			out[i] = max(out[i], out[i-1]+gap[i-1])
		}
	}
	limit := hi
	for i := len(out) - 1; i >= 0; i-- {
		if i < len(out)-1 {
			limit = out[i+1] - gap[i]
		}
		out[i] = min(out[i], limit)
	}
	return out
}
