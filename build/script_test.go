package main

import (
	"flag"
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var updateScripts = flag.Bool("update", false, "write what comes out into the scripts")

// TestMain lets the scripts run this very program as “columnbowl”.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"columnbowl": func() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) },
	})
}

// TestScripts runs testdata/script: each is a command line with its files, and
// what must come out.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "../testdata/script",
		UpdateScripts:       *updateScripts,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
	})
}
