package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"columnbowl/build/book"
	"columnbowl/build/class"
	"columnbowl/build/report"
	"columnbowl/calcwasm/exercise"
)

const markUsage = `usage: columnbowl mark --class class.csv --answers answers.csv [--out DIR] [--paper a4|letter] [--replace] [--content DIR]

Marks the answers of a class and writes into a folder: report.html, with which
mistakes were made how often and by whom, what to teach again first, and what
each learner did; and marks.csv for the gradebook. A row that cannot be used is
named with file, line and column, and the others are marked all the same.

  --class FILE     the class, as it was given to handout
  --answers FILE   the file of answers that handout made, filled in
  --out DIR        the folder to write into (default: ./marked)
  --paper SIZE     a4 or letter (default: a4)
  --replace        write over the files of an earlier marking
  --content DIR    the content folder (default: ./content)

Exit status: 0 all rows marked, 1 some row could not be marked or a file not
written, 2 bad usage.
`

func runMark(args []string, out, errOut io.Writer) int {
	out, errOut = plain{out}, plain{errOut}
	var a classArgs
	flags := a.common("mark", "marked", markUsage, errOut)
	flags.StringVar(&a.answers, "answers", "", "")
	if err := flags.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			return 0
		}
		return 2
	}
	if flags.NArg() > 0 {
		return ended("mark", badUsage("“%s” was not expected here", flags.Arg(0)), errOut)
	}
	return ended("mark", a.mark(out, errOut), errOut)
}

func (a *classArgs) mark(out, errOut io.Writer) error {
	if a.class == "" || a.answers == "" {
		return badUsage("name the class and the file of answers")
	}
	office, err := a.office(errOut)
	if err != nil {
		return err
	}
	learners, _, faults, err := readClass(a.class)
	if err != nil {
		return err
	}
	if len(learners) == 0 {
		printFaults(errOut, faults)
		return fmt.Errorf("the class %s has no learner", a.class)
	}
	text, err := os.ReadFile(a.answers)
	if err != nil {
		return badUsage("the answers cannot be read: %v", err)
	}
	marked, more := class.MarkFile(office.Set, learners, a.answers, text, progress(errOut, "%d of %d rows marked"))
	faults = append(faults, more...)
	unread := class.Unread(a.answers, marked)
	printFaults(errOut, append(faults[:len(faults):len(faults)], unread...))
	if len(marked) == 0 {
		return fmt.Errorf("no row could be marked")
	}
	if err := a.writeMarks(office, learners, marked, append(faults[:len(faults):len(faults)], unread...), class.DialectOf(text)); err != nil {
		return err
	}
	printMarks(out, office, marked, a.out)
	if len(unread) > 0 {
		fmt.Fprintf(out, "%s could not be read: put right in %s what was typed wrongly, and mark again with --replace.\n", plural(len(unread), "answer"), a.answers)
	}
	if len(faults) > 0 {
		return fmt.Errorf("%s could not be used", plural(len(faults), "row"))
	}
	return nil
}

func (a *classArgs) writeMarks(office *class.Office, learners []class.Learner, marked []class.Marked, faults []class.Fault, d class.Dialect) error {
	page, err := office.Report("What the class made of it", learners, marked, faults)
	if err != nil {
		return err
	}
	style, err := classStyle()
	if err != nil {
		return err
	}
	return class.Write(a.out, []class.File{{Name: "report.html", Text: page}, {Name: "marks.csv", Text: office.Gradebook(marked, d)}, style}, a.replace)
}

// mostPrinted is how many mistakes the terminal shows.
const mostPrinted = 5

// printMarks tells the class in short.
func printMarks(out io.Writer, office *class.Office, marked []class.Marked, dir string) {
	points, most := 0, 0
	for i := range marked {
		p, m := marked[i].Points()
		points, most = points+p, most+m
	}
	fmt.Fprintf(out, "%s marked, %d of %d points.\n", plural(len(marked), "sheet"), points, most)
	for i, m := range class.Mistakes(marked) {
		if i == mostPrinted {
			break
		}
		slip := office.Set.Slip(m.Slip)
		fmt.Fprintf(out, "  %d × %s (%d singled out): %s\n", m.Count(), slip.ID, len(m.Sure), slip.Say)
	}
	fmt.Fprintf(out, "%s/report.html, with marks.csv for the gradebook.\n", dir)
}

// loadExercises loads a content folder and makes its exercises ready. The list
// holds all that is wrong.
func loadExercises(dir string) (*book.Book, *exercise.Set, report.List) {
	b, found := book.Load(os.DirFS(dir))
	set, more := b.Practice()
	return b, set, append(found, more...).Place(b.Files).In(dir)
}
