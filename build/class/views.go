package class

import (
	"bytes"
	"fmt"
	"html"
	"html/template"
	"strconv"
	"strings"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/exercise"
	"columnbowl/calcwasm/formula"
	"columnbowl/site"
)

// Office makes the files of a class in the form of a book's pages.
type Office struct {
	Book   *book.Book
	Set    *exercise.Set
	Shells *site.Set
	Paper  string // "a4" or "letter"

	texts map[string]string // the situations as HTML, with {term} in them
}

// version is how the book's version is written on a sheet.
func (o *Office) version() string {
	title, _, _ := strings.Cut(o.Book.Handbook.Title, ":")
	return title + " " + o.Book.Handbook.Version
}

// situation is the text of a sheet as HTML.
func (o *Office) situation(s *Sheet) (template.HTML, error) {
	text, ok := o.texts[s.Template.ID]
	if !ok {
		for _, e := range o.Book.Exercises {
			if e.ID != s.Template.ID {
				continue
			}
			var b bytes.Buffer
			if err := e.Doc.RenderPieces(&b, markdown.Hooks{}, 0, e.Doc.Lead()); err != nil {
				return "", err
			}
			text = strings.TrimSpace(b.String())
		}
		if o.texts == nil {
			o.texts = map[string]string{}
		}
		o.texts[s.Template.ID] = text
	}
	return template.HTML(exercise.Fill(text, func(id string) string { return html.EscapeString(s.FactText(id)) })), nil
}

// Handouts makes the learners' sheets.
func (o *Office) Handouts(title string, sheets []Sheet) ([]byte, error) {
	view := site.Handouts{Title: title, Book: o.Book.Handbook.Title, Version: o.version(), Paper: o.Paper}
	for i := range sheets {
		s := &sheets[i]
		text, err := o.situation(s)
		if err != nil {
			return nil, err
		}
		h := site.Handout{Exercise: s.Template.Name, Learner: s.Name, Sign: s.ID, Seed: strconv.FormatUint(s.Seed, 10) + " · " + s.Check(), Version: o.version(),
			Level: strconv.Itoa(s.Template.Level), Book: o.Book.Handbook.Title, Text: text, Cautions: s.Cautions(), Numeric: len(s.Template.Ask) > 0}
		for k := range s.Items {
			h.Items = append(h.Items, o.asked(s, k))
		}
		view.Sheets = append(view.Sheets, h)
	}
	return o.write(view)
}

func (o *Office) write(view any) ([]byte, error) {
	var b bytes.Buffer
	err := o.Shells.Write(&b, view)
	return b.Bytes(), err
}

func (o *Office) asked(s *Sheet, i int) site.Asked {
	item := &s.Items[i]
	a := site.Asked{N: i + 1, Ask: s.Title(i), Unit: s.Unit(i), Numeric: item.Kind == exercise.Number, Order: item.Kind == exercise.Ordering}
	for k, option := range item.Options {
		a.Options = append(a.Options, site.Lettered{Letter: letter(k), Text: option.Text})
	}
	for k, name := range item.Names {
		a.Options = append(a.Options, site.Lettered{Letter: letter(k), Text: name})
	}
	return a
}

func letter(i int) string { return string(rune('A' + i)) }

// Keys makes the trainer's file.
func (o *Office) Keys(title string, sheets []Sheet) ([]byte, error) {
	view := site.Keys{Title: title, Book: o.Book.Handbook.Title, Version: o.version(), Paper: o.Paper, Glances: o.glances(sheets)}
	for i := range sheets {
		s := &sheets[i]
		k := site.KeySheet{Exercise: s.Template.Name, Learner: s.Name, Sign: s.ID, Seed: strconv.FormatUint(s.Seed, 10)}
		for _, f := range s.Facts() {
			t := &o.Set.Book.Terms[f.Term]
			if t.Kind != formula.Choice {
				k.Facts = append(k.Facts, site.Known{Name: t.Name, Value: s.FactText(t.ID)})
			}
		}
		for n := range s.Items {
			k.Items = append(k.Items, o.key(s, n))
		}
		view.Sheets = append(view.Sheets, k)
	}
	return o.write(view)
}

func (o *Office) key(s *Sheet, i int) site.KeyItem {
	item := &s.Items[i]
	k := site.KeyItem{N: i + 1, Ask: s.Title(i), Right: o.right(s, i)}
	if item.Kind != exercise.Number {
		for _, option := range item.Options {
			if option.Text == item.Options[item.Answer[0]-'A'].Text {
				k.Say = option.Say
			}
		}
		return k
	}
	k.Steps = s.Steps(i)
	for _, t := range s.Traces(i) {
		say := o.Set.Slip(t.Slip).Say
		if !t.Here {
			say = o.page(t.Slip) + ": " + say
		}
		k.Slips = append(k.Slips, site.KeySlip{Value: s.Amount(i, t.Value), Say: say})
	}
	return k
}

// right is the right answer of an item, in words.
func (o *Office) right(s *Sheet, i int) string {
	item := &s.Items[i]
	switch item.Kind {
	case exercise.Choice:
		return item.Answer + ": " + item.Options[item.Answer[0]-'A'].Text
	case exercise.Ordering:
		var names []string
		for _, c := range item.Answer {
			names = append(names, item.Names[c-'A'])
		}
		return item.Answer + ": " + strings.Join(names, ", ")
	}
	return s.Amount(i, item.Right)
}

// page is the title of the page that a mistake stands on.
func (o *Office) page(slip int) string { return o.Set.Book.Terms[o.Set.Slip(slip).Home].Title }

// bar draws a count as a bar; parts of it in grey, and none as an outline.
func bar(full, part, of int) template.HTML {
	const width = 90
	if of == 0 {
		return ""
	}
	a, b := width*full/of, width*part/of
	return template.HTML(fmt.Sprintf(`<svg width="%d" height="9" viewBox="0 0 %d 9" aria-hidden="true"><rect class="none" x="0.5" y="0.5" width="%d" height="8"/><rect x="0" y="0" width="%d" height="9"/><rect class="part" x="%d" y="0" width="%d" height="9"/></svg>`,
		width, width, width-1, a, a, b))
}
