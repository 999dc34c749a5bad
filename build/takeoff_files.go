package main

import (
	"encoding/json"
	"io"

	"columnbowl/calcwasm/answer"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/unit"
)

// The JSON form of takeoff, described in DEVELOPERS.md.
type (
	jsonTakeoff struct {
		Build    string        `json:"build"`
		Asked    *jsonMeasure  `json:"asked,omitempty"`
		Made     *jsonMeasure  `json:"made,omitempty"`
		Pieces   []jsonPiece   `json:"pieces"`
		Runs     []jsonRun     `json:"runs"`
		Totals   []jsonMeasure `json:"totals"`
		Refused  []jsonCaution `json:"refused"`
		Cautions []jsonCaution `json:"cautions"`
		Clashes  []string      `json:"clashes"`
		Missing  []string      `json:"missing"`
		Notes    []string      `json:"notes"`
	}
	jsonMeasure struct {
		Term  string       `json:"term"`
		Value float64      `json:"value"`
		Unit  string       `json:"unit"`
		SI    jsonQuantity `json:"si"`
	}
	jsonPiece struct {
		Place    int      `json:"place"`
		Group    string   `json:"group"`
		Part     string   `json:"part"`
		Name     string   `json:"name"`
		Label    string   `json:"label,omitempty"`
		With     string   `json:"with,omitempty"`
		Unsure   bool     `json:"unsure,omitempty"`
		Quantity *int     `json:"quantity,omitempty"`
		Length   *float64 `json:"lengthFt,omitempty"`
		Mass     *float64 `json:"massLb,omitempty"`
		LengthSI *float64 `json:"lengthM,omitempty"`
		MassSI   *float64 `json:"massKg,omitempty"`
	}
	jsonRun struct {
		Name   string  `json:"name"`
		Length float64 `json:"lengthFt"`
		Agrees bool    `json:"agrees"`
	}
)

func (t *takeoff) printJSON(out io.Writer) int {
	j := jsonTakeoff{Build: t.Build.ID, Asked: t.jsonMeasure(t.Build.Asked), Made: t.jsonMeasure(t.Build.Made), Pieces: []jsonPiece{}, Runs: []jsonRun{},
		Totals: []jsonMeasure{}, Refused: []jsonCaution{}, Cautions: []jsonCaution{}, Clashes: []string{}, Missing: []string{}, Notes: append([]string{}, t.Notes...)}
	for _, c := range t.Refused {
		j.Refused = append(j.Refused, jsonCaution{t.book.Cautions[c].ID, t.book.Cautions[c].Say})
	}
	for _, c := range t.cautions() {
		j.Cautions = append(j.Cautions, jsonCaution{c.ID, t.book.InFull(c)})
	}
	for i := range t.Result.Clashes {
		j.Clashes = append(j.Clashes, t.Result.ClashText(&t.Result.Clashes[i], formula.US))
	}
	if len(t.Refused) == 0 {
		t.jsonList(&j)
	}
	e := json.NewEncoder(out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(&j); err != nil {
		return 1
	}
	return t.status()
}

func (t *takeoff) jsonList(j *jsonTakeoff) {
	for i := range t.Pieces {
		p := &t.Pieces[i]
		piece := jsonPiece{Place: p.Order, Group: t.Build.Groups[p.Group].ID, Part: p.Line.Part, Name: p.Line.Name, Label: p.Line.Label, With: p.Line.With,
			Unsure: !p.Sure, Length: in("ft", p.Length), Mass: in("lb", p.Mass), LengthSI: in("m", p.Length), MassSI: in("kg", p.Mass)}
		if p.Count == p.Count {
			n := int(p.Count)
			piece.Quantity = &n
		}
		j.Pieces = append(j.Pieces, piece)
	}
	for _, r := range t.Runs {
		if r.Length == r.Length {
			j.Runs = append(j.Runs, jsonRun{r.Name, *in("ft", r.Length), r.Agrees})
		}
	}
	for _, term := range t.Totals() {
		j.Totals = append(j.Totals, *t.jsonMeasure(term))
	}
	for _, term := range t.Asks() {
		j.Missing = append(j.Missing, t.book.Terms[term].ID)
	}
}

func (t *takeoff) jsonMeasure(term int) *jsonMeasure {
	if !t.Result.Known(term) {
		return nil
	}
	v, of := t.Result.Values[term].Likely, &t.book.Terms[term]
	return &jsonMeasure{of.ID, tidy(of.US.FromSI(v)), of.US.Symbol, jsonQuantity{tidy(of.SI.FromSI(v)), of.SI.Symbol}}
}

// in is a value in a unit, nil if it is not known.
func in(symbol string, v float64) *float64 {
	if v != v {
		return nil
	}
	u, _ := unit.Lookup(symbol)
	n := tidy(u.FromSI(v))
	return &n
}

// printCSV writes the pieces as a table for a spreadsheet: one row for each
// piece, then the totals and the notes. The page that counts pieces saves the
// same text.
func (t *takeoff) printCSV(out io.Writer) int {
	if _, err := io.WriteString(out, answer.CSV(t.List, t.main)); err != nil {
		return 1
	}
	return t.status()
}
