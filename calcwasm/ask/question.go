package ask

import "columnbowl/calcwasm/formula"

// rivals are the candidates between which a person has to choose: all for which
// something is said, if it is only their unit.
func (s *session) rivals(list []Candidate) []Candidate {
	n := 1
	for n < len(list) && list[n].score >= some {
		n++
	}
	return list[:n]
}

// mostNamed are the candidates that a question names; those far behind it are
// offered, but not named.
const mostNamed = 4

// question asks which of the candidates a piece is.
func (s *session) question(piece string, list []Candidate) string {
	text := "Is " + piece
	n := 1
	for n < min(len(list), mostNamed) && list[0].score-list[n].score < ahead {
		n++
	}
	list = list[:n]
	for i := range list {
		t := &s.book.Terms[list[i].Term]
		switch {
		case i == 0:
			text += " "
		case i == len(list)-1:
			text += " or "
		default:
			text += ", "
		}
		text += "the " + t.Name
		if t.Kind == formula.Choice {
			text = text[:len(text)-len("the "+t.Name)] + s.label(list[i])
		}
	}
	return text + "?"
}

// label is what a value of a choice is called.
func (s *session) label(c Candidate) string {
	t := &s.book.Terms[c.Term]
	for i, v := range t.Values {
		if v == c.Value {
			return t.Name + " “" + t.Labels[i] + "”"
		}
	}
	return t.Name
}
