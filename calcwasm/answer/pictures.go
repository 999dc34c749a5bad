package answer

import (
	"strings"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/picture"
	"columnbowl/calcwasm/reckon"
)

// wanted is a picture that a page asks for.
type wanted struct {
	kind         picture.Picture
	form, prefix string
	system       formula.System
}

// other takes a line that is not about a term: “exact”; “pieces”; “table”
// with a system of units; “word” with a key and
// its text, which is kept for all later pictures; “picture” with its name,
// form, system of units and the prefix of its ids.
func (q *request) other(d *Desk, verb, rest string) bool {
	switch verb {
	case "exact":
		q.exact = true
	case "rows":
		q.rows = rest
	case "pieces":
		q.pieces = true
	case "table":
		q.table, q.tableIn = true, formula.US
		if rest == formula.SI.String() {
			q.tableIn = formula.SI
		}
	case "choice":
		q.choice = readChoice(rest)
	case "pumps":
		q.pumps = true
	case "columns":
		price, years, _ := strings.Cut(rest, "\t")
		q.columns = &columnsAsked{price, years}
	case "word":
		key, text, _ := strings.Cut(rest, "\t")
		d.labels[key] = text
	case "picture":
		f := strings.Split(rest, "\t")
		if len(f) != 4 {
			q.strange = append(q.strange, "A picture is asked for by its name, form, system of units and prefix.")
			return true
		}
		kind, ok := picture.Named(f[0])
		if !ok {
			q.strange = append(q.strange, "There is no picture “"+f[0]+"”.")
			return true
		}
		p := wanted{kind: kind, form: f[1], prefix: f[3]}
		if f[2] == formula.SI.String() {
			p.system = formula.SI
		}
		q.pictures = append(q.pictures, p)
	default:
		return false
	}
	return true
}

// onlyWords says whether a request brings words for pictures and asks nothing.
// Every page begins with one: its network need not be worked for it.
func onlyWords(text string) bool {
	for _, line := range strings.Split(text, "\n") {
		if line != "" && !strings.HasPrefix(line, "word\t") {
			return false
		}
	}
	return text != ""
}

// pictures draws what was asked for, in the order of the request.
func (d *Desk) pictures(w *writer, res *reckon.Result, q *request) {
	w.list("pictures", len(q.pictures), func(i int) {
		p := q.pictures[i]
		pen := picture.Pen{Result: res, System: p.system, Prefix: p.prefix, Words: d.labels}
		w.text(p.kind.Draw(pen, p.form).SVG())
	})
}
