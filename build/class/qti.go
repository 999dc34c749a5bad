package class

import (
	"fmt"
	"strconv"
	"strings"

	"columnbowl/calcwasm/exercise"
)

// The question bank as items of QTI 3.0 (1EdTech, Question and Test
// Interoperability, Assessment, Section and Item, final release of 1 May 2022;
// which of its rules were read and which are from memory stands beside the rules
// in qti_structure_test.go). An item stands by itself: its
// response processing marks with nothing but comparisons of numbers and of
// orders, so that every system that reads the standard can carry it out.

const (
	qtiSpace  = "http://www.imsglobal.org/xsd/imsqtiasi_v3p0"
	qtiSchema = qtiSpace + " https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqti_asiv3p0_v1p0.xsd"
	xsiSpace  = "http://www.w3.org/2001/XMLSchema-instance"
)

// identifiers of an item's variables.
const (
	response = "RESPONSE"
	score    = "SCORE"
	feedback = "FEEDBACK"
)

// QTI writes a question as an item of QTI 3.0.
func (q *Question) QTI() ([]byte, error) {
	situation, err := asXML(q.Situation)
	if err != nil {
		return nil, fmt.Errorf("the situation of %s cannot be written as XML: %v", q.ID, err)
	}
	answer := q.answering()
	body := []any{raw(situation)}
	for _, c := range q.Cautions {
		body = append(body, tag("p", nil, tag("strong", nil, "Caution."), " "+c))
	}
	if len(q.Before) > 0 {
		list := tag("ul", nil)
		for _, t := range q.Before {
			list.kids = append(list.kids, tag("li", nil, t.Name+": "+t.Value))
		}
		body = append(body, tag("p", nil, "Worked out already:"), list)
	}
	root := tag("qti-assessment-item", at("xmlns", qtiSpace, "xmlns:xsi", xsiSpace, "xsi:schemaLocation", qtiSchema,
		"identifier", q.ID, "title", q.Title, "adaptive", "false", "time-dependent", "false", "xml:lang", "en"))
	root.kids = append(root.kids, answer.declared,
		outcome(score, "float", "0"), outcome("MAXSCORE", "float", strconv.Itoa(exercise.MostPoints)), outcome(feedback, "identifier", ""),
		tag("qti-item-body", nil, append(body, answer.asked...)...), answer.processing)
	for _, f := range answer.feedback {
		root.kids = append(root.kids, f)
	}
	var b strings.Builder
	b.WriteString(xmlHead)
	root.write(&b, 0)
	b.WriteString("\n")
	return []byte(b.String()), nil
}

// answering is what depends on the kind of a question.
type answering struct {
	declared   *el   // the response and the right answer
	asked      []any // the interaction
	processing *el
	feedback   []*el
}

func (q *Question) answering() answering {
	switch q.Kind {
	case exercise.Choice:
		return q.choosing()
	case exercise.Ordering:
		return q.ordering()
	}
	return q.number()
}

// number is a question answered by a number in a unit that is told.
func (q *Question) number() answering {
	a := answering{declared: declared("single", "float", q.modelAnswer())}
	ask := q.Ask + ", as a bare number with four significant digits: "
	if q.Unit != "" {
		ask = q.Ask + " in " + q.Unit + ", as a bare number with four significant digits: "
	}
	a.asked = []any{tag("p", nil, ask, tag("qti-text-entry-interaction", at("response-identifier", response, "expected-length", "10")))}
	for i := 0; i < len(q.Bands); {
		first, any := i, tag("qti-or", nil)
		for ; i < len(q.Bands) && q.Bands[i].Points == q.Bands[first].Points && q.Bands[i].Say == q.Bands[first].Say; i++ {
			any.kids = append(any.kids, q.Bands[i].holds())
		}
		a.when(any, q.Bands[first].Points, "band"+strconv.Itoa(first+1), q.Bands[first].Say)
	}
	return a
}

// holds is the condition that a response lies in a band.
func (b *Band) holds() *el {
	return tag("qti-and", nil,
		tag("qti-gte", nil, variable(), value("float", exact(b.Low))),
		tag("qti-lte", nil, variable(), value("float", exact(b.High))))
}

// modelAnswer is the right number as a learner would write it, if that is within
// what counts as right, and otherwise in full.
func (q *Question) modelAnswer() string {
	short := strconv.FormatFloat(q.Right, 'g', 4, 64)
	v, err := strconv.ParseFloat(short, 64)
	if err == nil && len(q.Bands) > 0 && v >= q.Bands[0].Low && v <= q.Bands[0].High {
		return exact(v)
	}
	return exact(q.Right)
}

func exact(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// choosing is a question answered by one of its options.
func (q *Question) choosing() answering {
	a := answering{declared: declared("single", "identifier", q.Answer)}
	list := tag("qti-choice-interaction", at("response-identifier", response, "shuffle", "true", "max-choices", "1"), tag("qti-prompt", nil, q.Ask))
	for i, o := range q.Options {
		list.kids = append(list.kids, tag("qti-simple-choice", at("identifier", letter(i)), o.Text))
		points := 0
		if letter(i) == q.Answer {
			points = exercise.MostPoints
		}
		a.when(tag("qti-match", nil, variable(), value("identifier", letter(i))), points, "option"+letter(i), o.Say)
	}
	a.asked = []any{list}
	return a
}

// ordering is a question answered by putting things in order.
func (q *Question) ordering() answering {
	a := answering{declared: declared("ordered", "identifier", strings.Split(q.Answer, "")...)}
	list := tag("qti-order-interaction", at("response-identifier", response, "shuffle", "false"), tag("qti-prompt", nil, q.Ask))
	for i, name := range q.Names {
		list.kids = append(list.kids, tag("qti-simple-choice", at("identifier", letter(i)), name))
	}
	a.asked = []any{list}
	a.when(sameOrder(q.Answer), exercise.MostPoints, "", "")
	near := tag("qti-or", nil)
	for _, o := range oneOut(q.Answer) {
		near.kids = append(near.kids, sameOrder(o))
	}
	a.when(near, exercise.MostPoints/2, "near", "One thing is out of place.")
	return a
}

func sameOrder(letters string) *el {
	order := tag("qti-ordered", nil)
	for _, c := range letters {
		order.kids = append(order.kids, value("identifier", string(c)))
	}
	return tag("qti-match", nil, variable(), order)
}

// oneOut lists the orders in which one thing of a right order stands elsewhere.
func oneOut(right string) []string {
	var list []string
	seen := map[string]bool{right: true}
	for i := range right {
		rest := right[:i] + right[i+1:]
		for k := range len(rest) + 1 {
			if o := rest[:k] + right[i:i+1] + rest[k:]; !seen[o] {
				seen[o] = true
				list = append(list, o)
			}
		}
	}
	return list
}

// when adds a case to the response processing: the first whose condition holds
// sets the score and says something.
func (a *answering) when(condition *el, points int, name, say string) {
	if a.processing == nil {
		a.processing = tag("qti-response-processing", nil, tag("qti-response-condition", nil))
	}
	cases := a.processing.kids[0].(*el)
	kind := "qti-response-else-if"
	if len(cases.kids) == 0 {
		kind = "qti-response-if"
	}
	one := tag(kind, nil, condition, set(score, "float", strconv.Itoa(points)))
	if say != "" {
		one.kids = append(one.kids, set(feedback, "identifier", name))
		a.feedback = append(a.feedback, tag("qti-modal-feedback", at("outcome-identifier", feedback, "identifier", name, "show-hide", "show"),
			tag("qti-content-body", nil, tag("p", nil, say))))
	}
	cases.kids = append(cases.kids, one)
}

func declared(cardinality, base string, right ...string) *el {
	correct := tag("qti-correct-response", nil)
	for _, r := range right {
		correct.kids = append(correct.kids, tag("qti-value", nil, r))
	}
	return tag("qti-response-declaration", at("identifier", response, "cardinality", cardinality, "base-type", base), correct)
}

func outcome(name, base, first string) *el {
	e := tag("qti-outcome-declaration", at("identifier", name, "cardinality", "single", "base-type", base))
	if first != "" {
		e.kids = append(e.kids, tag("qti-default-value", nil, tag("qti-value", nil, first)))
	}
	return e
}

func set(name, base, v string) *el {
	return tag("qti-set-outcome-value", at("identifier", name), value(base, v))
}

func variable() *el { return tag("qti-variable", at("identifier", response)) }

func value(base, v string) *el { return tag("qti-base-value", at("base-type", base), v) }
