package book

import "slices"

// Neighbours are the ids of the parts that touch a part.
type Neighbours struct{ Above, Below, Inside, Outside []string }

// Sides names the sides of a part; sides 2k and 2k+1 are opposite.
var Sides = [...]string{"above", "below", "inside", "outside"}

// Side is the list of a side, by its number in Sides.
func (n *Neighbours) Side(i int) *[]string {
	return [...]*[]string{&n.Above, &n.Below, &n.Inside, &n.Outside}[i]
}

// mirror gives each part the neighbours that name it: what stands above a part
// has that part below it, so an author writes a pair once, on either page.
func mirror(parts []*Part, byID map[string]*Part) {
	for _, p := range parts {
		p.Touching = Neighbours{slices.Clone(p.Neighbours.Above), slices.Clone(p.Neighbours.Below),
			slices.Clone(p.Neighbours.Inside), slices.Clone(p.Neighbours.Outside)}
	}
	for _, p := range parts {
		for side := range Sides {
			for _, id := range *p.Neighbours.Side(side) {
				other, ok := byID[id]
				if !ok { // told by the proof
					continue
				}
				if back := other.Touching.Side(side ^ 1); !slices.Contains(*back, p.ID) {
					*back = append(*back, p.ID)
				}
			}
		}
	}
}
