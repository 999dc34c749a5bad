package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strconv"
	"strings"

	"columnbowl/build/class"
	"columnbowl/calcwasm/exercise"
	"columnbowl/calcwasm/formula"
	"columnbowl/site"
)

const handoutUsage = `usage: columnbowl handout --class class.csv --exercise ID[,ID…] --seed N [--units us|si] [--out DIR] [--paper a4|letter] [--replace] [--content DIR]
       columnbowl handout --qti FILE.zip [--exercise ID[,ID…]] [--seed N] [--variants N] [--units us|si] [--replace] [--content DIR]
       columnbowl handout --list

Makes a sheet for each learner of a class, each with facts of its own, and writes
into a folder: handouts.html to print and hand out, key.html for the trainer,
with the number of every mistake, and answers.csv to write the answers into. The
same seed gives the same sheets on every machine. With --qti it writes the
exercises as a bank of questions that other training systems read and mark: a
package of QTI 3.0, with what each known mistake gives as feedback.

  --class FILE     the class: a file with the columns learner (a sign, such as
                   07) and name
  --exercise IDS   the exercises, by the names of their files, with commas
                   between; “columnbowl handout --list” lists them
  --seed N         a whole number; learner 3 of the class has the seed N003
  --units us|si    the units that the sheets tell and ask; in SI each fact stands
                   with the US value that was drawn behind it (default: us)
  --qti FILE       write a bank of questions; without --exercise it has all
                   exercises, without --seed it has the seed 1
  --variants N     how often each question that draws facts is in the bank, each
                   time with others, 1 to 50 (default: 10)
  --out DIR        the folder to write into (default: ./handout)
  --paper SIZE     a4 or letter (default: a4)
  --replace        write over the files of an earlier handout
  --content DIR    the content folder (default: ./content)

Exit status: 0 written, 1 something could not be made or written, 2 bad usage.
`

// classArgs is the command line of handout and of mark.
type classArgs struct {
	class, content, out, paper string
	exercise, seed, answers    string
	units                      string // "us" or "si"
	qti                        string // the file of a question bank
	variants                   int
	replace, list              bool
}

// common declares the options that both commands have.
func (a *classArgs) common(name, out, usage string, errOut io.Writer) *flag.FlagSet {
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	flags.SetOutput(errOut)
	flags.Usage = func() { fmt.Fprint(errOut, usage) }
	flags.StringVar(&a.class, "class", "", "")
	flags.StringVar(&a.content, "content", "content", "")
	flags.StringVar(&a.out, "out", out, "")
	flags.StringVar(&a.paper, "paper", "a4", "")
	flags.BoolVar(&a.replace, "replace", false, "")
	return flags
}

// usageError is a mistake on the command line.
type usageError struct{ text string }

func (e *usageError) Error() string { return e.text }

func badUsage(format string, args ...any) error { return &usageError{fmt.Sprintf(format, args...)} }

// ended tells an error of a command and returns the exit status.
func ended(name string, err error, errOut io.Writer) int {
	if err == nil {
		return 0
	}
	fmt.Fprintf(errOut, "columnbowl %s: %v\n", name, err)
	if u := (*usageError)(nil); errors.As(err, &u) {
		fmt.Fprintf(errOut, "Run “columnbowl help %s” for the usage.\n", name)
		return 2
	}
	return 1
}

func runHandout(args []string, out, errOut io.Writer) int {
	out, errOut = plain{out}, plain{errOut}
	var a classArgs
	flags := a.common("handout", "handout", handoutUsage, errOut)
	flags.StringVar(&a.exercise, "exercise", "", "")
	flags.StringVar(&a.seed, "seed", "", "")
	flags.StringVar(&a.units, "units", "us", "")
	flags.StringVar(&a.qti, "qti", "", "")
	flags.IntVar(&a.variants, "variants", 10, "")
	flags.BoolVar(&a.list, "list", false, "")
	switch err := flags.Parse(args); {
	case err == flag.ErrHelp:
		return 0
	case err != nil:
		return 2
	case flags.NArg() > 0:
		return ended("handout", badUsage("“%s” was not expected here", flags.Arg(0)), errOut)
	}
	return ended("handout", a.handout(out, errOut), errOut)
}

func (a *classArgs) handout(out, errOut io.Writer) error {
	if !a.list && a.qti == "" && (a.class == "" || a.exercise == "" || a.seed == "") {
		return badUsage("name the class, the exercise and the seed")
	}
	if a.units != "us" && a.units != "si" {
		return badUsage("the units are us or si, not “%s”", a.units)
	}
	office, err := a.office(errOut)
	if err != nil {
		return err
	}
	if a.list {
		listExercises(out, office.Set)
		return nil
	}
	if a.qti != "" {
		return a.bank(office, out, errOut)
	}
	seed, err := seedOf(a.seed)
	if err != nil {
		return err
	}
	templates, err := chosen(office.Set, a.exercise)
	if err != nil {
		return err
	}
	learners, dialect, faults, err := readClass(a.class)
	if err != nil {
		return err
	}
	printFaults(errOut, faults)
	if len(learners) == 0 {
		return fmt.Errorf("the class %s has no learner", a.class)
	}
	sheets, err := class.Draw(office.Set, templates, learners, seed, progress(errOut, "sheets drawn for %d of %d learners"))
	if err != nil {
		return err
	}
	if a.units == "si" {
		class.InSI(sheets)
	}
	if err := a.writeHandout(office, sheets, dialect); err != nil {
		return err
	}
	fmt.Fprintf(out, "%s for %s: %s/handouts.html, with key.html for the trainer and answers.csv to fill in.\n", plural(len(sheets), "sheet"), plural(len(learners), "learner"), a.out)
	if len(faults) > 0 {
		return fmt.Errorf("%s of the class left out", plural(len(faults), "row"))
	}
	return nil
}

func seedOf(text string) (uint64, error) {
	seed, err := strconv.ParseUint(text, 10, 32)
	if err != nil {
		return 0, badUsage("a seed is a whole number such as 7, up to ten digits, not “%s”", text)
	}
	return seed, nil
}

func (a *classArgs) writeHandout(office *class.Office, sheets []class.Sheet, d class.Dialect) error {
	handouts, err := office.Handouts("Exercises "+a.seed, sheets)
	if err != nil {
		return err
	}
	keys, err := office.Keys("Key to the exercises "+a.seed, sheets)
	if err != nil {
		return err
	}
	style, err := classStyle()
	if err != nil {
		return err
	}
	return class.Write(a.out, []class.File{{Name: "handouts.html", Text: handouts}, {Name: "key.html", Text: keys}, {Name: "answers.csv", Text: class.AnswerFile(sheets, d)}, style}, a.replace)
}

// classStyle is the style sheet that stands beside the files of a class.
func classStyle() (class.File, error) {
	text, err := fs.ReadFile(site.Files, "styles/class.css")
	return class.File{Name: "class.css", Text: text}, err
}

// office loads the book and makes its exercises ready.
func (a *classArgs) office(errOut io.Writer) (*class.Office, error) {
	if a.paper != "a4" && a.paper != "letter" {
		return nil, badUsage("the paper is a4 or letter, not “%s”", a.paper)
	}
	if info, err := os.Stat(a.content); err != nil || !info.IsDir() {
		return nil, badUsage("there is no content folder %s; name one with --content DIR", a.content)
	}
	b, set, found := loadExercises(a.content)
	if found.Errors() > 0 {
		if err := found.Print(errOut); err != nil {
			return nil, err
		}
		return nil, fmt.Errorf("the content has errors")
	}
	shells, err := site.Shells()
	return &class.Office{Book: b, Set: set, Shells: shells, Paper: a.paper}, err
}

func listExercises(out io.Writer, set *exercise.Set) {
	for i := range set.Templates {
		t := &set.Templates[i]
		fmt.Fprintf(out, "  %-22s level %d  %s\n", t.ID, t.Level, t.Name)
	}
}

// chosen finds exercises by a list of ids.
func chosen(set *exercise.Set, ids string) ([]*exercise.Template, error) {
	var list []*exercise.Template
	var all []string
	for i := range set.Templates {
		all = append(all, set.Templates[i].ID)
	}
	for _, id := range strings.Split(ids, ",") {
		id = strings.TrimSpace(id)
		t := set.Find(id)
		if t == nil {
			if near := formula.Nearest(id, all); near != "" {
				return nil, badUsage("there is no exercise “%s”; did you mean %s?", id, near)
			}
			return nil, badUsage("there is no exercise “%s”; --list names them", id)
		}
		list = append(list, t)
	}
	return list, nil
}

func readClass(name string) ([]class.Learner, class.Dialect, []class.Fault, error) {
	text, err := os.ReadFile(name)
	if err != nil {
		return nil, class.Dialect{}, nil, badUsage("the class cannot be read: %v", err)
	}
	list, faults := class.ReadClass(name, text)
	return list, class.DialectOf(text), faults, nil
}

func printFaults(w io.Writer, faults []class.Fault) {
	for i := range faults {
		fmt.Fprintln(w, faults[i].String())
	}
}

// progress tells how far a long piece of work is: nothing for a class, a line
// for each further 250 of a larger number.
func progress(w io.Writer, format string) class.Progress {
	return func(done, of int) {
		if of >= 500 && done%250 == 0 {
			fmt.Fprintf(w, format+"\n", done, of)
		}
	}
}
