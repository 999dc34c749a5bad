package main

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"columnbowl/calcwasm/answer"
	"columnbowl/calcwasm/assembly"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// print writes the list for a person at the counter: it can be printed and kept
// with the order.
func (t *takeoff) print(out io.Writer) int {
	t.printHead(out)
	if len(t.Refused) > 0 {
		fmt.Fprint(out, "\nThis combination cannot be made. Nothing is listed.\n")
		for _, c := range t.Refused {
			printWords(out, "REFUSED", t.book.Cautions[c].ID, t.book.Cautions[c].Say)
		}
		return t.status()
	}
	for g := range t.Build.Groups {
		t.printGroup(out, g)
	}
	if t.open() {
		fmt.Fprint(out, "\n? A number or a part with this mark hangs on a fact that is still missing; see the end of the list.\n")
	}
	t.printSums(out)
	t.printTotals(out)
	t.printAssumed(out)
	printCautions(out, t.book, t.Cautions())
	t.printAsks(out)
	fmt.Fprintln(out)
	for _, n := range t.Notes {
		fmt.Fprintln(out, n)
	}
	return t.status()
}

// printCautions tells the words of a hazard once, and below them what its cases add.
func printCautions(out io.Writer, b *reckon.Book, list []int) {
	for _, t := range b.Tell(list) {
		sign, ids := "caution", t.ID()
		if t.Danger() {
			sign = "DANGER"
		}
		if t.Hazard != nil {
			ids = t.Hazard.Name
		}
		printWords(out, sign, ids, t.Words())
		for _, c := range t.Own() {
			fmt.Fprintf(out, "  %s: %s\n", c.ID, c.Say)
		}
	}
}

func printWords(out io.Writer, sign, ids, say string) {
	fmt.Fprintf(out, "\n%s (%s): %s\n", sign, ids, say)
}

// value is a term's value in the system that stands first, and in the other
// behind it where that says more.
func (t *takeoff) value(term int) string {
	text, other := t.Result.Text(term, t.main), t.Result.Text(term, 1-t.main)
	if text == other || t.book.Terms[term].Kind == formula.Choice {
		return text
	}
	return text + " (" + other + ")"
}

// beside says how far the setting as made is from what was asked.
func (t *takeoff) beside() string {
	switch d := t.Deeper(); {
	case d > 0:
		return ", deeper than asked by " + t.measure(d, unit.Length)
	case d < 0:
		return ", shallower than asked by " + t.measure(-d, unit.Length)
	}
	return ""
}

func (t *takeoff) printHead(out io.Writer) {
	fmt.Fprintf(out, "Take-off: %s\n", t.Build.Name)
	asked, made := t.Build.Asked, t.Build.Made
	if t.Result.Known(asked) {
		fmt.Fprintf(out, "  %s: %s\n", t.book.Terms[asked].Name, t.value(asked))
	}
	if t.Result.Known(made) {
		fmt.Fprintf(out, "  %s, as made: %s%s\n", t.book.Terms[made].Name, t.value(made), t.beside())
	}
	for _, f := range t.Result.Question.Facts {
		if f.Term != asked && f.Term != made && t.book.Terms[f.Term].ID != reckon.BuildTerm && !slices.Contains(t.Build.Options, f.Term) {
			fmt.Fprintf(out, "  %s: %s\n", t.book.Terms[f.Term].Name, t.value(f.Term))
		}
	}
	for _, o := range t.Build.Options {
		if t.Result.Known(o) {
			fmt.Fprintf(out, "  %s: %s\n", t.book.Terms[o].Name, t.value(o))
		}
	}
	for _, c := range t.Result.Clashes {
		fmt.Fprintf(out, "\nclash: %s\n", t.Result.ClashText(&c, t.main))
	}
}

const nameWidth = 46

func (t *takeoff) printGroup(out io.Writer, g int) {
	from, to := t.Of(g)
	if from == to {
		return
	}
	group := &t.Build.Groups[g]
	fmt.Fprintf(out, "\n%s\n", strings.ToUpper(group.Name))
	fmt.Fprintf(out, "  %5s  %-*s %10s %10s %11s\n", "no.", nameWidth, "part", "each", "in all", "weight")
	for i := from; i < to; i++ {
		if p := &t.Pieces[i]; p.Line.With == "" {
			t.printPiece(out, p)
		}
	}
	if m := t.GroupMass[g]; m == m {
		fmt.Fprintf(out, "  %5s  %s %10s %10s %11s\n", "", wide("together"), "", "", t.measure(m, unit.Mass))
	}
}

func (t *takeoff) printPiece(out io.Writer, p *assembly.Piece) {
	count := "?"
	if p.Count == p.Count {
		count = strconv.Itoa(int(p.Count))
	}
	if !p.Sure {
		count += "?"
	}
	name := p.Line.Name
	if p.Line.Label != "" {
		name += " (" + p.Line.Label + ")"
	}
	if p.Wrong != "" {
		name += ": " + p.Wrong
	}
	each, all := t.measure(p.Length, unit.Length), t.measure(p.TotalLength(), unit.Length)
	if p.Count == 1 {
		all = each
	}
	line := fmt.Sprintf("  %5s  %s %10s %10s %11s", count, wide(name), each, all, t.measure(p.TotalMass(), unit.Mass))
	fmt.Fprintln(out, strings.TrimRight(line, " "))
}

// open says whether a line carries a question mark.
func (t *takeoff) open() bool {
	return slices.ContainsFunc(t.Pieces, func(p assembly.Piece) bool {
		return p.Line.With == "" && (!p.Sure || p.Count != p.Count)
	})
}

// wide fills a name up to the width of its column, counted in letters.
func wide(name string) string {
	return name + strings.Repeat(" ", max(0, nameWidth-utf8.RuneCountInString(name)))
}

func (t *takeoff) measure(v float64, dim unit.Dim) string {
	if v != v {
		return ""
	}
	return answer.Measure(v, dim, t.main)
}

// printSums says that each run of pieces comes out at the made setting.
func (t *takeoff) printSums(out io.Writer) {
	if len(t.Runs) == 0 || !t.Result.Known(t.Build.Made) {
		return
	}
	fmt.Fprintln(out)
	for _, r := range t.Runs {
		switch {
		case r.Length != r.Length:
			fmt.Fprintf(out, "The pieces of the %s cannot be added up yet.\n", r.Name)
		case r.Agrees:
			fmt.Fprintf(out, "The pieces of the %s add up to %s: the setting as made.\n", r.Name, t.measure(r.Length, unit.Length))
		default:
			fmt.Fprintf(out, "The pieces of the %s add up to %s, and not to the setting: look at the lengths given.\n", r.Name, t.measure(r.Length, unit.Length))
		}
	}
}

func (t *takeoff) printTotals(out io.Writer) {
	// A sum of some groups stands above: without this line it could be taken for the weight to lift.
	text := "WEIGHT ON THE HOOK: not known yet. Facts are missing; no sum in this list is the whole weight."
	if big := t.Largest(); big >= 0 {
		text = strings.ToUpper(t.book.Terms[big].Name) + ": " + t.value(big)
	}
	rule := strings.Repeat("=", utf8.RuneCountInString(text)+4)
	fmt.Fprintf(out, "\n%s\n  %s\n%s\n", rule, text, rule)
	for _, term := range t.Totals() {
		fmt.Fprintf(out, "  %-36s %s\n", t.book.Terms[term].Name, t.value(term))
	}
}

// printAssumed tells what nobody has said and the book has taken for granted.
func (t *takeoff) printAssumed(out io.Writer) {
	head := "\nTaken for granted, because nobody has said otherwise:\n"
	for _, term := range t.Touched() {
		v := &t.Result.Values[term]
		if v.State != reckon.Assumed {
			continue
		}
		fmt.Fprintf(out, "%s  %s = %s: %s\n", head, t.book.Terms[term].ID, t.Result.Text(term, t.main), t.book.Rules[v.Rule].Say)
		head = ""
	}
}

func (t *takeoff) printAsks(out io.Writer) {
	asks := t.Asks()
	if len(asks) == 0 {
		return
	}
	fmt.Fprint(out, "\nStill missing. Ask, and add to the command:\n")
	for _, term := range asks {
		fmt.Fprintf(out, "  %s: %s\n", t.book.Terms[term].ID, t.book.Terms[term].Ask)
	}
}
