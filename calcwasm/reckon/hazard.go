package reckon

// Hazard is a kind of danger, with the words that are the same wherever it is met.
type Hazard struct{ ID, Name, Say string }

// Hazard is the one of that id, or nil.
func (b *Book) Hazard(id string) *Hazard {
	for i := range b.Hazards {
		if b.Hazards[i].ID == id {
			return &b.Hazards[i]
		}
	}
	return nil
}

// Told is what is said at one go: a hazard and the cautions that are cases of
// it, or one caution that is a case of none.
type Told struct {
	Hazard   *Hazard
	Cautions []*Caution
}

// Tell groups cautions, given by their places in Book.Cautions, so that the words
// of a hazard are said once. A hazard stands where its first caution stood.
func (b *Book) Tell(list []int) []Told {
	var out []Told
	at := map[*Hazard]int{}
	for _, i := range list {
		c := &b.Cautions[i]
		h := b.Hazard(c.Hazard)
		if k, told := at[h]; h != nil && told {
			out[k].Cautions = append(out[k].Cautions, c)
			continue
		}
		if h != nil {
			at[h] = len(out)
		}
		out = append(out, Told{h, []*Caution{c}})
	}
	return out
}

// Words is what holds for all of the group.
func (t *Told) Words() string {
	if t.Hazard != nil {
		return t.Hazard.Say
	}
	return t.Cautions[0].Say
}

// Danger says whether somebody can be hurt.
func (t *Told) Danger() bool { return t.Cautions[0].Danger }

// Own lists the cautions that add words of their own, each text once.
func (t *Told) Own() []*Caution {
	var own []*Caution
	said := map[string]bool{t.Words(): true}
	for _, c := range t.Cautions {
		if !said[c.Say] {
			said[c.Say] = true
			own = append(own, c)
		}
	}
	return own
}

// ID is the id that the group's words stand for: of the first caution that says
// nothing more, or else of the first.
func (t *Told) ID() string {
	for _, c := range t.Cautions {
		if c.Say == t.Words() {
			return c.ID
		}
	}
	return t.Cautions[0].ID
}

// InFull is what a caution says where nothing stands beside it: the words of its
// hazard first.
func (b *Book) InFull(c *Caution) string {
	if h := b.Hazard(c.Hazard); h != nil && h.Say != c.Say {
		return h.Say + " " + c.Say
	}
	return c.Say
}
