package main

import (
	"flag"
	"fmt"
	"io"

	"columnbowl/build/book"
	"columnbowl/build/proof"
	"columnbowl/build/report"
)

const proofUsage = `usage: columnbowl proof [--content DIR] [--checks DIR] [-v]

Checks the content: reads every page, computes every number of the worked
examples again, compares formulas with their SI form, follows every link and
every name, and compares the book with published values. Prints all that is
wrong with file, line and column.

  --content DIR   the content folder (default: ./content, or else the book
                  inside this program, if it carries one)
  --checks DIR    the published values (default: the folder checks of the
                  content, or what belongs to the handbook itself)
  -v              also list the terms that no formula computes, and those that
                  no published value checks

Exit status: 0 nothing is wrong, 1 the content has errors, 2 bad usage.
`

func runProof(args []string, out, errOut io.Writer) int {
	flags := flag.NewFlagSet("proof", flag.ContinueOnError)
	flags.SetOutput(errOut)
	flags.Usage = func() { fmt.Fprint(errOut, proofUsage) }
	content := flags.String("content", "", "")
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
	src, err := openSource(*content)
	if err != nil {
		fmt.Fprintf(errOut, "columnbowl proof: %v\n", err)
		return 2
	}
	b, found, summary := proofed(src)
	_, compared, err := comparePublished(b, src, *checks, &summary)
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
func proofed(src *source) (*book.Book, report.List, proof.Summary) {
	b, found := book.Load(src.files)
	more, summary := proof.Check(b)
	summary.Notes = summary.Notes.In(src.name)
	return b, append(found, more...).Place(b.Files).In(src.name), summary
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
