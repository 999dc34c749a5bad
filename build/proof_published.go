package main

import (
	"errors"

	"columnbowl/build/book"
	"columnbowl/build/proof"
	"columnbowl/build/published"
	"columnbowl/build/report"
	"columnbowl/calcwasm/answer"
)

// comparePublished runs the published values through the engine, tells the
// summary of them, and returns them with what does not hold. A book with errors is not
// compared: they come first.
func comparePublished(b *book.Book, src *source, named string, summary *proof.Summary) ([]published.Outcome, report.List, error) {
	files, dir, err := src.checks(named)
	if files == nil || err != nil || b.Engine == nil || !b.Whole {
		return nil, nil, err
	}
	var list report.List
	tell := func(file string, line int, message string) {
		list = append(list, report.Diagnostic{File: dir + "/" + file, Line: max(line, 1), Column: 1, Off: report.WholeFile, Message: message})
	}
	set, err := published.Load(files, b.Engine)
	var problems published.Problems
	if errors.As(err, &problems) {
		for _, p := range problems {
			tell(p.File, p.Line, p.Message)
		}
		return nil, list, nil
	}
	if err != nil {
		return nil, nil, err
	}
	outcomes := set.Run(answer.New(b.Engine).Answer)
	for i := range outcomes {
		if o := &outcomes[i]; !o.Holds() {
			tell(o.Case.File.Name, o.Case.Line, "The published value of case “"+o.Case.Name+"” does not come out: "+o.Problem+".")
		}
	}
	byTerm, all := set.Gather(outcomes)
	computed, facts := set.Unchecked(byTerm)
	summary.Outside(b, all.String(), computed, facts)
	return outcomes, list, nil
}
