package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
)

// optionsOnly reads the arguments of a command that takes options and nothing
// else. If the command is not to go on, it says with which code it ends.
func optionsOnly(flags *flag.FlagSet, args []string, usage string, errOut io.Writer) (code int, ok bool) {
	flags.SetOutput(errOut)
	flags.Usage = func() { fmt.Fprint(errOut, usage) }
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return 0, false
	case err != nil:
		return 2, false
	case flags.NArg() > 0:
		fmt.Fprintf(errOut, "columnbowl %s: “%s” was not expected here\n%s", flags.Name(), flags.Arg(0), usage)
		return 2, false
	}
	return 0, true
}
