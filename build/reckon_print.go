package main

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"columnbowl/calcwasm/answer"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// plain writes ordinary spaces for the no-break ones that hold a number and its
// unit together on a page: in a terminal they only get in the way of searching.
type plain struct{ w io.Writer }

func (p plain) Write(b []byte) (int, error) {
	if _, err := p.w.Write(bytes.ReplaceAll(b, []byte("\u00a0"), []byte(" "))); err != nil {
		return 0, err
	}
	return len(b), nil
}

// print writes the result for people: the value, the steps, the cautions.
func (r *reckoning) print(out io.Writer, si bool) int {
	main, other := formula.US, formula.SI
	if si {
		main, other = formula.SI, formula.US
	}
	name := r.book.Terms[r.want].Name
	switch state, _ := r.state(); state {
	case "computed", "given":
		value := r.res.Text(r.want, main)
		if r.book.Terms[r.want].Kind != formula.Choice && r.res.Text(r.want, other) != value {
			value += " (" + r.res.Text(r.want, other) + ")"
		}
		fmt.Fprintf(out, "%s = %s\n", name, value)
	case "clash":
		fmt.Fprintf(out, "%s: the facts contradict each other.\n", name)
	default:
		r.printMissing(out, name)
	}
	for _, c := range r.res.Clashes {
		fmt.Fprintf(out, "\nclash: %s\n", r.res.ClashText(&c, main))
	}
	r.printSteps(out, main)
	r.printCautions(out)
	return r.status()
}

func (r *reckoning) printSteps(out io.Writer, s formula.System) {
	steps := r.steps(s)
	if len(steps) == 0 || !r.res.Known(r.want) {
		return
	}
	fmt.Fprintln(out)
	for _, line := range steps {
		fmt.Fprintf(out, "  %s\n", line)
	}
}

// steps are the lines of the calculation: how a fact was read, where that needs
// a word, and then each term on the way.
func (r *reckoning) steps(s formula.System) []string {
	lines := []string{}
	for _, t := range r.res.GivenFor(r.want) {
		for _, note := range r.res.Question.Facts[r.res.Values[t].Fact].Notes {
			lines = append(lines, r.book.Terms[t].Name+": "+note)
		}
	}
	for _, t := range r.res.Chain(r.want) {
		lines = append(lines, r.res.Step(t, s))
	}
	return lines
}

func (r *reckoning) printMissing(out io.Writer, name string) {
	if _, reason := r.state(); reason != "" {
		fmt.Fprintf(out, "%s cannot be computed: %s\n", name, r.why(reason))
		return
	}
	if len(r.res.Missing) == 0 {
		fmt.Fprintf(out, "%s cannot be computed from these facts, and no further fact that a person can supply would give it.\n", name)
		return
	}
	fmt.Fprintf(out, "%s cannot be computed yet. It would follow from\n", name)
	for i, set := range r.res.Missing {
		if i > 0 {
			fmt.Fprintln(out, "or from")
		}
		for _, t := range set {
			fmt.Fprintf(out, "  %s: %s\n", r.book.Terms[t].ID, r.book.Terms[t].Ask)
		}
	}
}

func (r *reckoning) why(reason string) string {
	if reason == "not-applicable" {
		return "it does not exist in this build."
	}
	text := answer.Note(r.res, r.want)
	if v := r.res.Values[r.want]; v.State == reckon.Outside && v.Likely == v.Likely {
		text = r.book.Format(r.want, v.Likely, formula.US) + " is " + text
	}
	return text + "."
}

func (r *reckoning) printCautions(out io.Writer) {
	fires, unchecked := r.cautions()
	printCautions(out, r.book, fires)
	if len(unchecked) == 0 {
		return
	}
	fmt.Fprintf(out, "\nnot checked:")
	for _, c := range unchecked {
		var lacks []string
		for _, t := range r.res.Lacks(c) {
			lacks = append(lacks, r.book.Terms[t].ID)
		}
		fmt.Fprintf(out, "\n  %s (lacks %s)", r.book.Cautions[c.Caution].ID, strings.Join(lacks, ", "))
	}
	fmt.Fprintln(out)
}
