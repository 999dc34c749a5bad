package bindery

import (
	"strconv"
	"strings"

	"columnbowl/build/book"
	"columnbowl/calcwasm/assembly"
	"columnbowl/site"
)

// buildTerm is the choice that says which of the pumps it is.
const buildTerm = "build"

// countParts counts the parts of each pump at the facts of the take-off, the
// build changed: how many of a part there are stands on its page, and comes
// from the model that the take-off uses.
func (w *work) countParts() error {
	if !w.hasTakeOff() {
		return nil
	}
	t, ok := w.engine.Find(buildTerm)
	if !ok {
		return nil
	}
	w.counted = map[string]map[string]float64{}
	for i, build := range w.engine.Terms[t].Values {
		b := w.book.Assembly.Of(i)
		if b == nil {
			continue
		}
		opening := w.book.Handbook.TakeOff
		opening.Facts = []book.Fact{{Term: buildTerm, Text: build}}
		for _, f := range w.book.Handbook.TakeOff.Facts {
			if f.Term != buildTerm && w.stands(f.Term, build) {
				opening.Facts = append(opening.Facts, f)
			}
		}
		e, err := w.opened("takeoff", &opening)
		if err != nil {
			return err
		}
		w.counted[build] = countsOf(assembly.Pieces(e.result, b))
		if s, ok := w.engine.Find("setting"); ok {
			w.countedAt = w.both(e, s)
		}
	}
	return nil
}

// stands says whether a term exists in a build.
func (w *work) stands(term, build string) bool {
	t := w.book.TermByID[term]
	if t == nil || len(t.Applies) == 0 {
		return t != nil
	}
	for _, b := range t.Applies {
		if b == build {
			return true
		}
	}
	return false
}

// countsOf adds up the pieces of each part; one that is not sure, or not
// counted, is left out.
func countsOf(list *assembly.List) map[string]float64 {
	counts := map[string]float64{}
	for i := range list.Pieces {
		p := &list.Pieces[i]
		if n := p.Count; p.Sure && n == n && p.Wrong == "" {
			counts[p.Line.Part] += n
		}
	}
	return counts
}

// both is a setting as words: “240 ft (73.15 m)”.
func (w *work) both(e *example, term int) string {
	v := both(e.result, term)
	return v.US.N + " " + v.US.U + " (" + v.SI.N + " " + v.SI.U + ")"
}

// partCounts are how many of a part each pump has.
func (w *work) partCounts(p *book.Part) []site.PartCount {
	var list []site.PartCount
	for _, build := range p.Builds {
		if n := w.counted[build][p.ID]; n > 0 {
			list = append(list, site.PartCount{Build: build, Count: strings.TrimSpace(strconv.FormatFloat(n, 'f', -1, 64))})
		}
	}
	return list
}
