// Command columnbowl makes the handbook of deep-well turbine pumps from its
// content, checks it, and computes with it in the terminal.
package main

import (
	"fmt"
	"io"
	"os"

	"columnbowl/calcwasm/formula"
)

// command is one thing that columnbowl can do.
type command struct {
	name    string
	summary string // one line for the list
	usage   string // for “columnbowl help NAME”; may be empty
	// run gets what stands behind the command's name and returns the exit
	// status: 0 done, 1 the content or the question has errors, 2 bad usage.
	run func(args []string, out, errOut io.Writer) int
}

// commands in the order in which the list shows them.
var commands = []command{
	{"begin", "begin a book of your own, from the handbook", beginUsage, runBegin},
	{"read", "see the book in a browser while you write it", readUsage, runRead},
	{"proof", "check the content: every number, link and word", proofUsage, runProof},
	{"bind", "make the handbook: pages that open by double click", bindUsage, runBind},
	{"handout", "make exercise sheets for a class, with a key", handoutUsage, runHandout},
	{"mark", "mark the answers of a class", markUsage, runMark},
	{"reckon", "compute a term from facts, in any direction", reckonUsage, runReckon},
	{"takeoff", "list the pieces of a pump: quantities, lengths, weights", takeoffUsage, runTakeoff},
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, out, errOut io.Writer) int {
	if len(args) == 0 {
		printCommands(errOut)
		return 2
	}
	if asksHelp(args[0]) {
		return help(args[1:], out, errOut)
	}
	if c := find(args[0]); c != nil {
		if len(args) == 2 && asksHelp(args[1]) {
			return help(args[:1], out, errOut)
		}
		return c.run(args[1:], out, errOut)
	}
	unknown(args[0], errOut)
	return 2
}

// asksHelp knows the ways in which people ask a command for its usage.
func asksHelp(arg string) bool {
	switch arg {
	case "help", "-h", "-help", "--help":
		return true
	}
	return false
}

func help(args []string, out, errOut io.Writer) int {
	if len(args) == 0 {
		printCommands(out)
		return 0
	}
	c := find(args[0])
	if c == nil {
		unknown(args[0], errOut)
		return 2
	}
	fmt.Fprint(out, c.usage)
	return 0
}

func find(name string) *command {
	for i := range commands {
		if commands[i].name == name {
			return &commands[i]
		}
	}
	return nil
}

func unknown(name string, errOut io.Writer) {
	names := make([]string, len(commands))
	for i := range commands {
		names[i] = commands[i].name
	}
	fmt.Fprintf(errOut, "columnbowl: there is no command “%s”.", name)
	if near := formula.Nearest(name, names); near != "" {
		fmt.Fprintf(errOut, " Did you mean %s?", near)
	}
	fmt.Fprintln(errOut, " “columnbowl help” lists the commands.")
}

func printCommands(w io.Writer) {
	fmt.Fprint(w, "Column & Bowl: a working handbook of deep-well turbine pumps.\n\nusage: columnbowl COMMAND [options]\n\n")
	for i := range commands {
		fmt.Fprintf(w, "  %-8s %s\n", commands[i].name, commands[i].summary)
	}
	fmt.Fprint(w, "\n“columnbowl help COMMAND” tells more about one.\n")
}
