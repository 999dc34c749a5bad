package bindery

import "columnbowl/site"

// stops puts the cautions of a page's hazards at its opening. Their words stand
// in one file, so they are the same everywhere.
func (w *work) stops(f *site.Frame, ids []string) {
	h := &w.book.Hazards
	for _, id := range ids {
		if x := h.Find(id); x != nil {
			f.Stop = h.Stop
			f.Stops = append(f.Stops, site.Stop{ID: x.ID, Name: x.Name, Say: x.Say})
		}
	}
}
