package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"columnbowl/build/book"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

const reckonUsage = `usage: columnbowl reckon TERM FACT=VALUE … [--json] [--si] [--choose TERM=ESTIMATE] [--content DIR]

Computes a term of the book from the facts given, in any direction, and prints
its value, the steps to it and the cautions.

  columnbowl reckon total-head static-level=120ft drawdown=35ft discharge-elevation=2ft discharge-pressure=60psi column-loss=6.4ft head-loss=0.6ft
  columnbowl reckon drawdown static-level=140ft pumping-level=195ft --si

A value is written as people write it ("60 psi", 138-1/2ft, "180 to 200 ft"); a
bare number has the term's own unit. --json prints one object; its form is
described in DEVELOPERS.md.

Exit status: 0 computed, 1 cannot be computed or the facts contradict, 2 bad usage.
`

// reckonArgs is a parsed command line of reckon.
type reckonArgs struct {
	content  string
	json, si bool
	want     string
	facts    [][2]string // term and value
	choose   [][2]string // term and estimate
}

// runReckon computes one term in the terminal.
func runReckon(args []string, out, errOut io.Writer) int {
	out, errOut = plain{out}, plain{errOut}
	a, err := parseReckon(args)
	if err != nil {
		fmt.Fprintf(errOut, "columnbowl reckon: %v\n", err)
		fmt.Fprint(errOut, "Run “columnbowl help reckon” for the usage.\n")
		return 2
	}
	src, err := openSource(a.content)
	if err != nil {
		fmt.Fprintf(errOut, "columnbowl reckon: %v\n", err)
		return 2
	}
	b, problems := book.Load(src.files)
	if len(problems) > 0 {
		problems.In(src.name).Print(errOut)
		return 2
	}
	q, err := a.question(b.Engine)
	if err != nil {
		fmt.Fprintf(errOut, "columnbowl reckon: %v\n", err)
		return 2
	}
	r := reckoning{book: b.Engine, res: b.Engine.Reckon(q), want: q.Want}
	if a.json {
		return r.printJSON(out)
	}
	return r.print(out, a.si)
}

func parseReckon(args []string) (*reckonArgs, error) {
	a := &reckonArgs{}
	if err := a.parse(args, a.positional, func(string) bool { return false }); err != nil {
		return nil, err
	}
	if a.want == "" {
		return nil, fmt.Errorf("name the term to compute, such as total-head")
	}
	return a, nil
}

// parse reads the arguments that reckon and takeoff have in common; word takes
// what is no option, and more the options that one of them has beside these.
func (a *reckonArgs) parse(args []string, word func(string) error, more func(flag string) bool) error {
	for i := 0; i < len(args); i++ {
		arg := args[i]
		flag, value, has := strings.Cut(strings.TrimLeft(arg, "-"), "=")
		switch {
		case !strings.HasPrefix(arg, "--"):
			if err := word(arg); err != nil {
				return err
			}
		case flag == "json" && !has:
			a.json = true
		case flag == "si" && !has:
			a.si = true
		case flag == "content" || flag == "choose":
			if !has {
				if i++; i == len(args) {
					return fmt.Errorf("--%s needs a value", flag)
				}
				value = args[i]
			}
			if err := a.set(flag, value); err != nil {
				return err
			}
		case !has && more(flag):
		default:
			return fmt.Errorf("there is no option %s", arg)
		}
	}
	return nil
}

func (a *reckonArgs) set(flag, value string) error {
	if flag == "content" {
		a.content = value
		return nil
	}
	term, name, ok := strings.Cut(value, "=")
	if !ok {
		return fmt.Errorf("--choose takes TERM=ESTIMATE")
	}
	a.choose = append(a.choose, [2]string{term, name})
	return nil
}

func (a *reckonArgs) positional(arg string) error {
	term, value, has := strings.Cut(arg, "=")
	switch {
	case has:
		a.facts = append(a.facts, [2]string{strings.TrimSpace(term), strings.TrimSpace(value)})
	case a.want == "":
		a.want = arg
	default:
		return fmt.Errorf("“%s” stands where a fact is expected: write TERM=VALUE (only one term can be computed at a time)", arg)
	}
	return nil
}

func findTerm(b *reckon.Book, id string) (int, error) {
	t, ok := b.Find(id)
	if ok {
		return t, nil
	}
	if near := b.Scope.Near(id); near != "" {
		return 0, fmt.Errorf("there is no term “%s”; did you mean %s?", id, near)
	}
	return 0, fmt.Errorf("there is no term “%s”", id)
}

func (a *reckonArgs) question(b *reckon.Book) (reckon.Question, error) {
	q := reckon.Question{Choose: map[int]string{}}
	var err error
	if q.Want, err = findTerm(b, a.want); err != nil {
		return q, err
	}
	for _, f := range a.facts {
		t, err := findTerm(b, f[0])
		if err != nil {
			return q, err
		}
		fact, err := b.Read(t, f[1])
		if err != nil {
			return q, fmt.Errorf("%s: %v", f[0], err)
		}
		if slices.ContainsFunc(q.Facts, func(have reckon.Fact) bool { return have.Term == t }) {
			return q, fmt.Errorf("%s is given twice", f[0])
		}
		q.Facts = append(q.Facts, fact)
	}
	for _, c := range a.choose {
		t, err := findTerm(b, c[0])
		if err != nil {
			return q, err
		}
		q.Choose[t] = c[1]
	}
	return q, nil
}

// reckoning is a worked-out question, ready to be printed.
type reckoning struct {
	book *reckon.Book
	res  *reckon.Result
	want int
}

// state is one of the four words of the JSON form, and the reason for what
// was not computed, where it has one.
func (r *reckoning) state() (state, reason string) {
	switch v := &r.res.Values[r.want]; {
	case r.clashing():
		return "clash", ""
	case v.State == reckon.Given:
		return "given", ""
	case v.State == reckon.NotApplicable && v.Likely == v.Likely:
		return "computed", "not-applicable"
	case v.State == reckon.NotApplicable:
		return "missing", "not-applicable"
	case v.State == reckon.Outside:
		return "missing", "outside-validity"
	case v.State == reckon.Several:
		return "missing", "several"
	case r.res.Known(r.want):
		return "computed", ""
	}
	return "missing", ""
}

// clashing says whether the wanted term stands on facts that contradict.
func (r *reckoning) clashing() bool {
	stands := r.res.GivenFor(r.want)
	for _, c := range r.res.Clashes {
		if c.Term == r.want {
			return true
		}
		for _, f := range c.Facts {
			if slices.Contains(stands, f) {
				return true
			}
		}
	}
	return false
}

func (r *reckoning) status() int {
	if s, _ := r.state(); s == "computed" || s == "given" {
		return 0
	}
	return 1
}

// touched are the terms that the question is about: those given, those on the
// way to the wanted one, and the wanted one.
func (r *reckoning) touched() []int {
	list := append(r.res.Chain(r.want), r.want)
	for _, f := range r.res.Question.Facts {
		list = append(list, f.Term)
	}
	return list
}

// cautions lists those of the touched terms that fire, and the ids of those
// that could not be checked.
func (r *reckoning) cautions() (fires []int, unchecked []reckon.CautionState) {
	touched := r.touched()
	for _, c := range r.res.Cautions {
		caution := &r.book.Cautions[c.Caution]
		switch {
		case c.Truth == formula.True:
			fires = append(fires, c.Caution)
		case c.Truth == formula.Unknown && slices.Contains(touched, caution.Home):
			unchecked = append(unchecked, c)
		}
	}
	return fires, unchecked
}
