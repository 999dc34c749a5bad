package book

import "slices"

// Labels lists the ids that drawings name: of parts, and of features such as
// impeller/eye; sorted.
func (s *Shapes) Labels() []string {
	labels := slices.Clone(wellLabels[:])
	for _, f := range s.Frames {
		for i := range f.Shapes {
			id := f.Shapes[i].Part
			if f.Shapes[i].Label != "" {
				id = f.Shapes[i].Label
			}
			labels = append(labels, id)
		}
	}
	slices.Sort(labels)
	return slices.Compact(labels)
}

// wellLabels are named by the drawing of the whole pump itself.
var wellLabels = [...]string{"grade", "static-level", "pumping-level", "well-casing", "well-screen", "discharge-pipe", "flange-bolts"}
