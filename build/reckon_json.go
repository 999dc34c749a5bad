package main

import (
	"encoding/json"
	"io"
	"strconv"

	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// The JSON form of reckon, described in DEVELOPERS.md.
type (
	jsonReckoning struct {
		Term      string        `json:"term"`
		State     string        `json:"state"`
		Reason    string        `json:"reason,omitempty"`
		Value     any           `json:"value,omitempty"` // a number, or the word of a choice
		Unit      string        `json:"unit,omitempty"`
		Low       *float64      `json:"low,omitempty"`
		High      *float64      `json:"high,omitempty"`
		SI        *jsonQuantity `json:"si,omitempty"`
		Several   []float64     `json:"several,omitempty"`
		Steps     []string      `json:"steps"`
		Cautions  []jsonCaution `json:"cautions"`
		Unchecked []string      `json:"unchecked"`
		Missing   []string      `json:"missing"`
		Assumed   []jsonAssumed `json:"assumed"`
		Clashes   []jsonClash   `json:"clashes"`
	}
	jsonQuantity struct {
		Value float64 `json:"value"`
		Unit  string  `json:"unit"`
	}
	jsonCaution struct {
		ID   string `json:"id"`
		Text string `json:"text"`
	}
	jsonAssumed struct {
		ID    string  `json:"id"`
		Value float64 `json:"value"`
		Unit  string  `json:"unit"`
		Why   string  `json:"why"`
	}
	jsonClash struct {
		Term       string   `json:"term"`
		Have       float64  `json:"have"`
		Want       float64  `json:"want"`
		Difference float64  `json:"difference"`
		Unit       string   `json:"unit"`
		Facts      []string `json:"facts"`
		Text       string   `json:"text"`
	}
)

func (r *reckoning) printJSON(out io.Writer) int {
	t := &r.book.Terms[r.want]
	j := jsonReckoning{Term: t.ID, Steps: []string{}, Cautions: []jsonCaution{}, Unchecked: []string{}, Missing: []string{},
		Assumed: []jsonAssumed{}, Clashes: []jsonClash{}}
	j.State, j.Reason = r.state()
	r.jsonValue(&j, t)
	chain := r.res.Chain(r.want)
	j.Steps = r.steps(formula.US)
	for _, c := range chain {
		if v := &r.res.Values[c]; v.State == reckon.Assumed {
			a := &r.book.Terms[c]
			j.Assumed = append(j.Assumed, jsonAssumed{a.ID, tidy(a.US.FromSI(v.Likely)), a.US.Symbol, r.res.Book.Rules[v.Rule].Say})
		}
	}
	fires, unchecked := r.cautions()
	for _, i := range fires {
		c := &r.book.Cautions[i]
		j.Cautions = append(j.Cautions, jsonCaution{c.ID, r.book.InFull(c)})
	}
	for _, c := range unchecked {
		j.Unchecked = append(j.Unchecked, r.book.Cautions[c.Caution].ID)
	}
	if len(r.res.Missing) > 0 {
		j.Missing = r.ids(r.res.Missing[0])
	}
	r.jsonClashes(&j)
	e := json.NewEncoder(out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(&j); err != nil {
		return 1
	}
	return r.status()
}

// tidy drops the last bits, which conversions between units leave behind:
// 340.6 and not 340.59999999999997.
func tidy(v float64) float64 {
	t, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 12, 64), 64)
	if err != nil {
		return v
	}
	return t
}

func (r *reckoning) jsonValue(j *jsonReckoning, t *reckon.Term) {
	v := &r.res.Values[r.want]
	for _, x := range v.Roots {
		j.Several = append(j.Several, tidy(t.US.FromSI(x)))
	}
	switch {
	case v.Likely != v.Likely:
		return
	case t.Kind == formula.Choice:
		j.Value = t.Values[int(v.Likely)]
		return
	}
	j.Value, j.Unit = tidy(t.US.FromSI(v.Likely)), t.US.Symbol
	j.SI = &jsonQuantity{tidy(t.SI.FromSI(v.Likely)), t.SI.Symbol}
	if v.Low < v.High {
		low, high := tidy(t.US.FromSI(v.Low)), tidy(t.US.FromSI(v.High))
		j.Low, j.High = &low, &high
	}
}

func (r *reckoning) jsonClashes(j *jsonReckoning) {
	for _, c := range r.res.Clashes {
		t := &r.book.Terms[c.Term]
		have, want := t.US.FromSI(c.Have), t.US.FromSI(c.Want)
		j.Clashes = append(j.Clashes, jsonClash{t.ID, tidy(have), tidy(want), tidy(have - want), t.US.Symbol, r.ids(c.Facts), r.res.ClashText(&c, formula.US)})
	}
}

func (r *reckoning) ids(terms []int) []string {
	list := make([]string, len(terms))
	for i, t := range terms {
		list[i] = r.book.Terms[t].ID
	}
	return list
}
