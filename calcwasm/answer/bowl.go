package answer

import (
	"strings"

	"columnbowl/calcwasm/reckon"
)

// bowlReply tells how a family of a request was taken.
type bowlReply struct {
	id       string
	problems []reckon.BowlProblem
}

// bowls takes the families that a request brings along. A family with a problem
// is not used; the others are worked with. The same lines, sent again with every
// keystroke, are read once.
func (d *Desk) bowls(text string) *brought {
	lines := bowlLines(text)
	if lines == "" {
		return &brought{book: d.book}
	}
	if d.last != nil && d.last.lines == lines {
		return d.last
	}
	out := &brought{lines: lines, book: d.book}
	for _, line := range strings.Split(strings.TrimSuffix(lines, "\n"), "\n") {
		fields := strings.Split(line, "\t")
		reply := bowlReply{id: fields[1]}
		var bowl *reckon.Bowl
		if bowl, reply.problems = reckon.ReadBowl(fields[1], fields[2:]); len(reply.problems) == 0 {
			out.book = out.book.WithBowl(bowl)
		}
		out.replies = append(out.replies, reply)
	}
	d.last = out
	return out
}

// brought is the book with the families of a request.
type brought struct {
	lines   string
	book    *reckon.Book
	replies []bowlReply
}

const bowlVerb = "bowl\t"

func bowlLines(text string) string {
	if !strings.HasPrefix(text, bowlVerb) && !strings.Contains(text, "\n"+bowlVerb) {
		return ""
	}
	out := ""
	for _, line := range strings.Split(text, "\n") {
		if strings.HasPrefix(line, bowlVerb) {
			out += line + "\n"
		}
	}
	return out
}

func (b *brought) tell(w *writer) {
	if len(b.replies) == 0 {
		return
	}
	w.list("bowls", len(b.replies), func(i int) {
		r := &b.replies[i]
		w.object(func() {
			w.pair("id", r.id)
			w.list("problems", len(r.problems), func(k int) {
				p := &r.problems[k]
				w.object(func() {
					w.number("item", p.Item)
					w.number("column", p.Column)
					w.pair("text", p.Message)
				})
			})
		})
	})
}
