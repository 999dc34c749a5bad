package main

import (
	"flag"
	"fmt"
	"io"
	"os"

	"columnbowl/build/book"
	"columnbowl/build/proof"
	"columnbowl/build/report"
)

const proofUsage = `usage: columnbowl proof [--content DIR] [--checks DIR] [-v]

Checks the content: reads every page, computes every number of the worked
examples again, compares formulas with their SI form, follows every link and
every name, and compares the book with published values. Prints all that is
wrong with file, line and column.

  --content DIR   the content folder (default: ./content)
  --checks DIR    the published values (default: ./testdata/published/checks
                  for the content folder ./content, where there is one)
  -v              also list the terms that no formula computes, and those that
                  no published value checks

Exit status: 0 nothing is wrong, 1 the content has errors, 2 bad usage.
`

func runProof(args []string, out, errOut io.Writer) int {
	flags := flag.NewFlagSet("proof", flag.ContinueOnError)
	flags.SetOutput(errOut)
	flags.Usage = func() { fmt.Fprint(errOut, proofUsage) }
	content := flags.String("content", "content", "")
	checks := flags.String("checks", "", "")
	verbose := flags.Bool("v", false, "")
	switch err := flags.Parse(args); {
	case err == flag.ErrHelp:
		return 0
	case err != nil:
		return 2
	case flags.NArg() > 0:
		fmt.Fprintf(errOut, "columnbowl proof: “%s” was not expected here\n%s", flags.Arg(0), proofUsage)
		return 2
	}
	if info, err := os.Stat(*content); err != nil || !info.IsDir() {
		fmt.Fprintf(errOut, "columnbowl proof: there is no content folder %s; name one with --content DIR\n", *content)
		return 2
	}
	b, found, summary := proofed(*content)
	_, compared, err := comparePublished(b, *content, *checks, &summary)
	if err != nil {
		fmt.Fprintf(errOut, "columnbowl proof: %v\n", err)
		return 2
	}
	found = append(found, compared...)
	if err := found.Print(errOut); err != nil {
		return 2
	}
	if *verbose {
		if err := summary.Notes.Print(out); err != nil {
			return 2
		}
	}
	fmt.Fprintf(out, "%s.\n", &summary)
	if summary.Published != "" {
		fmt.Fprintf(out, "%s.\n", summary.Published)
	}
	if n := found.Errors(); n > 0 {
		fmt.Fprintf(out, "%s: the book cannot be published.\n", plural(n, "error"))
		return 1
	}
	fmt.Fprintln(out, "Nothing is wrong.")
	return 0
}

// proofed loads and checks a content folder; the list holds all that is wrong.
func proofed(dir string) (*book.Book, report.List, proof.Summary) {
	b, found := book.Load(os.DirFS(dir))
	more, summary := proof.Check(b)
	summary.Notes = summary.Notes.In(dir)
	return b, append(found, more...).Place(b.Files).In(dir), summary
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
