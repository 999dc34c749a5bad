package main

import (
	"errors"
	"fmt"
	"os"

	"columnbowl/build/book"
	"columnbowl/build/proof"
	"columnbowl/build/published"
	"columnbowl/build/report"
	"columnbowl/calcwasm/answer"
)

// defaultContent is the content folder of the project, and defaultChecks where
// it keeps the published values.
const (
	defaultContent = "content"
	defaultChecks  = "testdata/published/checks"
)

// checksFolder is the folder of published values to compare with, "" for none.
// One that was not named may be missing: another book need not have one.
func checksFolder(content, named string) (string, error) {
	dir := named
	if dir == "" && content == defaultContent {
		dir = defaultChecks
	}
	if info, err := os.Stat(dir); dir != "" && err == nil && info.IsDir() {
		return dir, nil
	}
	if named != "" {
		return "", fmt.Errorf("there is no folder %s with published values", named)
	}
	return "", nil
}

// comparePublished runs the published values through the engine, tells the
// summary of them, and returns them with what does not hold. A book with errors is not
// compared: they come first.
func comparePublished(b *book.Book, content, named string, summary *proof.Summary) ([]published.Outcome, report.List, error) {
	dir, err := checksFolder(content, named)
	if dir == "" || err != nil || b.Engine == nil || !b.Whole {
		return nil, nil, err
	}
	var list report.List
	tell := func(file string, line int, message string) {
		list = append(list, report.Diagnostic{File: dir + "/" + file, Line: max(line, 1), Column: 1, Off: report.WholeFile, Message: message})
	}
	set, err := published.Load(os.DirFS(dir), b.Engine)
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
