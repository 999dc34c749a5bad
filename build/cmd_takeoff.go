package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"columnbowl/build/book"
	"columnbowl/calcwasm/assembly"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

const takeoffUsage = `usage: columnbowl takeoff BUILD FACT=VALUE … [--csv | --json] [--si] [--choose TERM=ESTIMATE] [--content DIR]

Lists the pieces of a pump from top to bottom, with quantities, lengths and
weights. BUILD is water-lubricated, oil-lubricated or submersible.

  columnbowl takeoff oil-lubricated asked-setting=237ft section-length=10ft column-size=8in tube-size=2.5in shaft-diameter=1-11/16in speed=1770rpm stages=8
  columnbowl takeoff submersible asked-setting=340ft column-size=6in stages=4 surface-cable-length=45ft --csv

Facts are written as for “columnbowl reckon”. Options are facts too:
column-joint=flanged, suction-end=strainer, bowl-seal=double, prelubrication=tank.
What is missing is named with its question; the rest is listed all the same.
The weights are for planning. Nothing here is an instruction for rigging.

Exit status: 0 all pieces are counted, 1 some cannot be counted, the facts
contradict or the combination cannot be made, 2 bad usage.
`

// takeoffArgs is a parsed command line of takeoff. What it shares with reckon
// is kept and read there.
type takeoffArgs struct {
	reckonArgs
	csv bool
}

// runTakeoff lists the pieces of a pump.
func runTakeoff(args []string, out, errOut io.Writer) int {
	out, errOut = plain{out}, plain{errOut}
	a, err := parseTakeoff(args)
	if err != nil {
		fmt.Fprintf(errOut, "columnbowl takeoff: %v\n", err)
		fmt.Fprint(errOut, "Run “columnbowl help takeoff” for the usage.\n")
		return 2
	}
	src, err := openSource(a.content)
	if err != nil {
		fmt.Fprintf(errOut, "columnbowl takeoff: %v\n", err)
		return 2
	}
	b, problems := book.Load(src.files)
	if problems.Errors() > 0 || b.Assembly == nil {
		problems.In(src.name).Print(errOut)
		return 2
	}
	t, err := a.takeoff(b)
	switch {
	case err != nil:
		fmt.Fprintf(errOut, "columnbowl takeoff: %v\n", err)
		return 2
	case a.json:
		return t.printJSON(out)
	case a.csv:
		return t.printCSV(out)
	}
	return t.print(out)
}

func parseTakeoff(args []string) (*takeoffArgs, error) {
	a := &takeoffArgs{}
	more := func(flag string) bool {
		a.csv = a.csv || flag == "csv"
		return flag == "csv"
	}
	if err := a.parse(args, a.word, more); err != nil {
		return nil, err
	}
	if a.csv && a.json {
		return nil, fmt.Errorf("--csv and --json are two forms of the list: choose one")
	}
	return a, nil
}

// word takes the build, or a fact.
func (a *takeoffArgs) word(arg string) error {
	if strings.Contains(arg, "=") {
		return a.positional(arg)
	}
	for _, f := range a.facts {
		if f[0] == reckon.BuildTerm {
			return fmt.Errorf("“%s” stands where a fact is expected: write TERM=VALUE (the build is %s already)", arg, f[1])
		}
	}
	a.facts = append(a.facts, [2]string{reckon.BuildTerm, arg})
	return nil
}

// takeoff is a worked-out list, ready to be printed.
type takeoff struct {
	*assembly.List
	book *reckon.Book
	main formula.System // the units that stand first
}

func (a *takeoffArgs) takeoff(b *book.Book) (*takeoff, error) {
	a.want = reckon.BuildTerm
	q, err := a.question(b.Engine)
	if err != nil {
		return nil, err
	}
	for _, f := range q.Facts {
		if f.Term != q.Want {
			continue
		}
		build := b.Assembly.Of(int(f.Likely))
		if build == nil {
			return nil, fmt.Errorf("the book has no parts for a pump that is %s", f.Text)
		}
		q.Want = -1
		t := &takeoff{List: assembly.Pieces(b.Engine.Reckon(q), build), book: b.Engine}
		if a.si {
			t.main = formula.SI
		}
		return t, nil
	}
	ids := make([]string, len(b.Assembly.Builds))
	for i := range ids {
		ids[i] = b.Assembly.Builds[i].ID
	}
	return nil, fmt.Errorf("name the build first: %s", strings.Join(ids, ", "))
}

// counted says whether everything that hangs in the well has its number and
// its length.
func (t *takeoff) counted() bool {
	return t.Result.Known(t.Build.Made) && !slices.ContainsFunc(t.Pieces, func(p assembly.Piece) bool {
		return !p.Sure || p.Count != p.Count || p.Line.Run != "" && p.Length != p.Length || p.Wrong != ""
	})
}

func (t *takeoff) status() int {
	if t.counted() && len(t.Refused) == 0 && len(t.Result.Clashes) == 0 {
		return 0
	}
	return 1
}

// cautions are those of the touched terms that fire, the refusals left out.
func (t *takeoff) cautions() (fires []*reckon.Caution) {
	for _, c := range t.Cautions() {
		fires = append(fires, &t.book.Cautions[c])
	}
	return fires
}
