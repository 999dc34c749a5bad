package bindery

import (
	"fmt"
	"html/template"
	"strconv"
	"strings"

	"columnbowl/calcwasm/drawing"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
	"columnbowl/site"
)

// slip is a mistake worked out in its example.
type slip struct {
	mistake *reckon.Mistake
	in      *example
	value   float64 // what it gives, in SI
	right   float64
}

// slipsOf works out the mistakes of a term, each in the example it is shown in.
func (w *work) slipsOf(term int, examples []*example) (*site.Slips, error) {
	if len(w.slips[term]) == 0 {
		return nil, nil
	}
	var list []slip
	for _, i := range w.slips[term] {
		s, err := w.slip(&w.engine.Mistakes[i], examples)
		if err != nil {
			return nil, err
		}
		list = append(list, s)
	}
	t, main := &w.engine.Terms[term], list[0].in
	out := &site.Slips{Example: main.title, Right: amount(t, list[0].right), Picture: w.slipsPicture(term, list)}
	for i, s := range list {
		view := site.Slip{
			Number: i + 1, Wrong: template.HTML(escape(s.mistake.Wrong.Right.Words(w.engine.Scope))), Say: paragraph(s.mistake.Say),
			Gives: amount(t, s.value), Off: difference(t, s.value, s.right),
		}
		if s.in != main {
			view.In = s.in.title
		}
		out.List = append(out.List, view)
	}
	return out, nil
}

func (w *work) slip(m *reckon.Mistake, examples []*example) (slip, error) {
	s := slip{mistake: m}
	for _, e := range examples {
		if m.In == "" || m.In == e.title {
			s.in = e
			break
		}
	}
	if s.in == nil {
		return s, fmt.Errorf("the mistake %s has no worked example %q on its page", m.ID, m.In)
	}
	env := s.in.result.Env()
	s.value = m.Wrong.Right.Eval(env)
	if m.Wrong.Left.Op == formula.Bare {
		s.value = m.Wrong.Left.Unit.ToSI(s.value)
	}
	s.right = s.in.result.Values[m.Home].Likely
	if s.value != s.value || s.right != s.right {
		return s, fmt.Errorf("the mistake %s cannot be worked out in the example %q", m.ID, s.in.title)
	}
	return s, nil
}

// slipsPicture is the number line of the slips that belong to one example, in
// both systems of units.
func (w *work) slipsPicture(term int, list []slip) site.Figure {
	t := &w.engine.Terms[term]
	line := func(u *unit.Unit, narrow bool, prefix string) template.HTML {
		d := drawing.Slips{Prefix: prefix, Narrow: narrow, Title: fmt.Sprintf(slipsTitle, t.Name)}
		d.Right = drawing.At(u.FromSI(list[0].right), t.Name, fmt.Sprintf(rightWords, unit.FormatWith(list[0].right, u)))
		says := []string{d.Right.Text}
		for i, s := range list {
			if s.in != list[0].in {
				continue
			}
			text := unit.FormatWith(s.value, u)
			d.Wrong = append(d.Wrong, drawing.Slip{Mark: drawing.At(u.FromSI(s.value), text, text), Number: strconv.Itoa(i + 1)})
			says = append(says, fmt.Sprintf(wrongWords, i+1, text))
		}
		d.Desc = strings.Join(says, "; ")
		return svg(d.Layout())
	}
	return site.Figure{
		SVG:    twin(line(t.US, false, "slips-us-"), line(t.SI, false, "slips-si-")),
		Narrow: twin(line(t.US, true, "slipn-us-"), line(t.SI, true, "slipn-si-")),
	}
}

// twin shows one of two drawings, by the units that stand large.
func twin(us, si template.HTML) template.HTML {
	return `<div class="only-us">` + us + `</div><div class="only-si">` + si + `</div>`
}
