package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"time"

	"columnbowl/build/bindery"
	"columnbowl/build/bundle"
	"columnbowl/build/carried"
)

const bindUsage = `usage: columnbowl bind [--content DIR] [--out DIR] [--file FILE] [--epub FILE]
                       [--print FILE] [--engine FILE] [--checks DIR]

Makes the handbook: checks the content, and writes the pages with all that they
need into a folder that opens by double click. Nothing is written while the
content has errors, and a bind that fails leaves the earlier edition as it was.

  --content DIR   the content folder (default: ./content, or else the book
                  inside this program, if it carries one)
  --out DIR       the folder to write (default: ./out, if no other edition is
                  asked for); it is replaced as a whole
  --file FILE     the whole handbook in one HTML file, for a phone or a mail
  --epub FILE     the same book for reading devices, as EPUB 3
  --print FILE    one HTML file to be printed, or made a PDF of by a browser
  --engine FILE   an engine for the page that is built already; without it, it is
                  the one inside this program, or, if that carries none, one that
                  the go command builds from this project
  --checks DIR    the published values to compare the book with (default: the
                  folder checks of the content, or what belongs to the handbook
                  itself)

Exit status: 0 bound, 1 the content has errors or the book could not be made or
written, 2 bad usage.
`

// bindArgs is a parsed command line of bind.
type bindArgs struct{ content, out, file, epub, print, engine, checks string }

// settle fills in what was not said: without any edition named it is the folder
// of pages that one gets.
func (a *bindArgs) settle() {
	if a.out == "" && a.file == "" && a.epub == "" && a.print == "" {
		a.out = "out"
	}
}

func runBind(args []string, out, errOut io.Writer) int {
	var a bindArgs
	flags := flag.NewFlagSet("bind", flag.ContinueOnError)
	flags.StringVar(&a.content, "content", "", "")
	flags.StringVar(&a.out, "out", "", "")
	flags.StringVar(&a.file, "file", "", "")
	flags.StringVar(&a.epub, "epub", "", "")
	flags.StringVar(&a.print, "print", "", "")
	flags.StringVar(&a.engine, "engine", "", "")
	flags.StringVar(&a.checks, "checks", "", "")
	if code, ok := optionsOnly(flags, args, bindUsage, errOut); !ok {
		return code
	}
	src, err := openSource(a.content)
	if err != nil {
		fmt.Fprintf(errOut, "columnbowl bind: %v\n", err)
		return 2
	}
	a.settle()
	start := time.Now()
	b, found, summary := proofed(src)
	outcomes, apart, err := comparePublished(b, src, a.checks, &summary)
	if err != nil {
		fmt.Fprintf(errOut, "columnbowl bind: %v\n", err)
		return 1
	}
	found = append(found, apart...)
	if n := found.Errors(); n > 0 {
		if err := found.Print(errOut); err != nil {
			return 1
		}
		fmt.Fprintf(errOut, "%s: nothing was bound.\n", plural(n, "error"))
		return 1
	}
	fmt.Fprintf(out, "%s.\n", &summary)
	if err := bindAll(b, &a, evidence(b.Engine, outcomes), start, out); err != nil {
		fmt.Fprintf(errOut, "columnbowl bind: %v\n", err)
		return 1
	}
	return 0
}

// withEngine adds the engine for the page to the parts of an edition: one that is
// built already, the one that this program carries, or one that is built now.
func withEngine(parts *bindery.Parts, file string) (err error) {
	if file != "" {
		if parts.Wasm, err = os.ReadFile(file); err != nil {
			return fmt.Errorf("the engine cannot be read: %w", err)
		}
		return nil
	}
	if carried.Has() {
		if parts.Packed, err = carried.Engine(); err != nil {
			return err
		}
		parts.Wasm, err = bundle.UnpackEngine(parts.Packed)
		return err
	}
	dir, err := moduleDir()
	if err != nil {
		return err
	}
	parts.Wasm, err = bundle.Engine(dir)
	return err
}

var ownModule = regexp.MustCompile(`(?m)^module columnbowl$`)

// moduleDir looks for the project upwards from the current folder.
func moduleDir() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if text, err := os.ReadFile(filepath.Join(dir, "go.mod")); err == nil && ownModule.Match(text) {
			return dir, nil
		}
		above := filepath.Dir(dir)
		if above == dir {
			return "", errors.New("the engine of the page is built from this project, and the current folder is not inside it: " +
				"go to the project's folder, or hand over an engine that is built already with --engine FILE")
		}
		dir = above
	}
}

// printEdition tells what was made, and how to open it.
func printEdition(w io.Writer, e *bindery.Edition, dir string, took time.Duration) {
	fmt.Fprintf(w, "Bound %s, %s in %s.\n\n", plural(len(e.Files), "file"), sizeText(e.Size()), took.Round(time.Millisecond))
	for _, k := range e.Kinds() {
		fmt.Fprintf(w, "  %-12s %5d  %9s\n", k.Name, k.Files, sizeText(k.Bytes))
	}
	fmt.Fprintf(w, "\nOpen %s with a double click.\n", filepath.Join(dir, "index.html"))
}

// sizeText writes a number of bytes for people.
func sizeText(n int) string {
	if n < 1e6 {
		return fmt.Sprintf("%.1f kB", float64(n)/1e3)
	}
	return fmt.Sprintf("%.2f MB", float64(n)/1e6)
}
