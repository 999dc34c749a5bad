package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"time"

	"columnbowl/build/bindery"
	"columnbowl/build/book"
	"columnbowl/build/bundle"
	"columnbowl/site"
)

const bindUsage = `usage: columnbowl bind [--content DIR] [--out DIR] [--engine FILE] [--checks DIR]

Makes the handbook: checks the content, and writes the pages with all that they
need into a folder that opens by double click. Nothing is written while the
content has errors, and a bind that fails leaves the earlier edition as it was.

  --content DIR   the content folder (default: ./content)
  --out DIR       the folder to write (default: ./out); it is replaced as a whole
  --engine FILE   an engine for the page that is built already; without it the
                  engine is built from this project, with the go command
  --checks DIR    the published values to compare the book with (default:
                  ./testdata/published/checks, if the content is ./content)

Exit status: 0 bound, 1 the content has errors or the book could not be made or
written, 2 bad usage.
`

// bindArgs is a parsed command line of bind.
type bindArgs struct{ content, out, engine, checks string }

func runBind(args []string, out, errOut io.Writer) int {
	var a bindArgs
	flags := flag.NewFlagSet("bind", flag.ContinueOnError)
	flags.SetOutput(errOut)
	flags.Usage = func() { fmt.Fprint(errOut, bindUsage) }
	flags.StringVar(&a.content, "content", "content", "")
	flags.StringVar(&a.out, "out", "out", "")
	flags.StringVar(&a.engine, "engine", "", "")
	flags.StringVar(&a.checks, "checks", "", "")
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return 0
	case err != nil:
		return 2
	case flags.NArg() > 0:
		fmt.Fprintf(errOut, "columnbowl bind: “%s” was not expected here\n%s", flags.Arg(0), bindUsage)
		return 2
	}
	if info, err := os.Stat(a.content); err != nil || !info.IsDir() {
		fmt.Fprintf(errOut, "columnbowl bind: there is no content folder %s; name one with --content DIR\n", a.content)
		return 2
	}
	start := time.Now()
	b, found, summary := proofed(a.content)
	outcomes, apart, err := comparePublished(b, a.content, a.checks, &summary)
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
	edition, err := bound(b, a.engine, evidence(b.Engine, outcomes))
	if err == nil {
		err = bindery.Write(edition, a.out)
	}
	if err != nil {
		fmt.Fprintf(errOut, "columnbowl bind: %v\n", err)
		return 1
	}
	fmt.Fprintf(out, "%s.\n", &summary)
	printEdition(out, edition, a.out, time.Since(start))
	return 0
}

// bound makes an edition of a sound book.
func bound(b *book.Book, engine string, seen *bindery.Evidence) (*bindery.Edition, error) {
	var parts bindery.Parts
	var err error
	if parts.Shells, err = site.Shells(); err != nil {
		return nil, err
	}
	if parts.PageScript, parts.HubScript, err = bundle.Scripts(site.Files); err != nil {
		return nil, err
	}
	if parts.Style, err = bundle.Styles(site.Files); err != nil {
		return nil, err
	}
	if parts.DrawnStyle, err = bundle.DrawnStyles(site.Files); err != nil {
		return nil, err
	}
	for name, to := range map[string]*[]byte{"columnbowl-math.woff2": &parts.Font, "OFL.txt": &parts.FontLicence} {
		if *to, err = fs.ReadFile(site.Files, "fonts/"+name); err != nil {
			return nil, fmt.Errorf("the font of the formulas is missing from this program: %w", err)
		}
	}
	if parts.Wasm, err = engineFor(engine); err != nil {
		return nil, err
	}
	return bindery.Bind(b, parts, bindery.Options{Evidence: seen})
}

// engineFor reads an engine that is built already, or builds it.
func engineFor(file string) ([]byte, error) {
	if file != "" {
		wasm, err := os.ReadFile(file)
		if err != nil {
			return nil, fmt.Errorf("the engine cannot be read: %w", err)
		}
		return wasm, nil
	}
	dir, err := moduleDir()
	if err != nil {
		return nil, err
	}
	return bundle.Engine(dir)
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
