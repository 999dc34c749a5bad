package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"columnbowl/build/serve"
)

const beginUsage = `usage: columnbowl begin DIR

Begins a book of your own: writes the content of the handbook into a new folder,
to be changed there, and with it the published values that it is compared with.
A folder that holds anything is left as it is.

  columnbowl begin mine
  columnbowl read --content mine               # see it in a browser while you write
  columnbowl bind --content mine --out stick   # make the pages for others

Exit status: 0 begun, 1 it could not be written, 2 bad usage.
`

func runBegin(args []string, out, errOut io.Writer) int {
	switch {
	case len(args) == 0:
		fmt.Fprint(errOut, "columnbowl begin: name the folder of the new book\n"+beginUsage)
		return 2
	case len(args) > 1 || strings.HasPrefix(args[0], "-"):
		fmt.Fprintf(errOut, "columnbowl begin: “%s” was not expected here\n%s", args[len(args)-1], beginUsage)
		return 2
	}
	src, err := openSource("")
	if err != nil {
		fmt.Fprint(errOut, "columnbowl begin: there is no content to begin with: this program carries none, and there is no folder ./content\n")
		return 2
	}
	n, err := beginBook(src, args[0])
	if err != nil {
		fmt.Fprintf(errOut, "columnbowl begin: %v\n", err)
		return 1
	}
	fmt.Fprintf(out, "Begun %s with %s. Its first page is made of %s.\nSee it while you change it:  columnbowl read --content %s\n",
		args[0], plural(n, "file"), filepath.Join(args[0], "handbook.yaml"), args[0])
	return 0
}

// beginBook writes a content and its published values into a new folder, and
// returns the number of files. They are written beside it and take its name when
// all of them are there, so that no half book stands anywhere.
func beginBook(src *source, dir string) (n int, err error) {
	if err := vacant(dir); err != nil {
		return 0, err
	}
	target, err := filepath.Abs(dir)
	if err != nil {
		return 0, err
	}
	if err := os.MkdirAll(filepath.Dir(target), 0o755); err != nil {
		return 0, fmt.Errorf("the folder above %s cannot be made: %w", dir, err)
	}
	fresh, err := os.MkdirTemp(filepath.Dir(target), filepath.Base(target)+".new-")
	if err != nil {
		return 0, fmt.Errorf("%s cannot be written: %w", dir, err)
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.RemoveAll(fresh))
		}
	}()
	if n, err = copyFiles(src.files, fresh); err != nil {
		return 0, err
	}
	checks, _, err := src.checks("")
	if err != nil {
		return 0, err
	}
	if own := filepath.Join(fresh, serve.ChecksFolder); checks != nil && !isFolder(own) {
		more, err := copyFiles(checks, own)
		if err != nil {
			return 0, err
		}
		n += more
	}
	if err := os.Chmod(fresh, 0o755); err != nil {
		return 0, err
	}
	if err := os.Remove(target); err != nil && !errors.Is(err, fs.ErrNotExist) { // an empty folder
		return 0, fmt.Errorf("%s cannot be replaced: %w", dir, err)
	}
	return n, os.Rename(fresh, target)
}

// vacant says why a folder cannot take a new book.
func vacant(dir string) error {
	list, err := os.ReadDir(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("%s cannot take a new book: %w. Name another folder", dir, err)
	case len(list) > 0:
		return fmt.Errorf("%s holds something already (%s): nothing was written. Name a folder that is not there yet", dir, list[0].Name())
	}
	return nil
}

// copyFiles writes files into a folder of the disk, and returns their number.
func copyFiles(from fs.FS, dir string) (n int, err error) {
	err = fs.WalkDir(from, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		to := filepath.Join(dir, filepath.FromSlash(name))
		if d.IsDir() {
			return os.MkdirAll(to, 0o755)
		}
		text, err := fs.ReadFile(from, name)
		if err != nil {
			return err
		}
		n++
		return os.WriteFile(to, text, 0o644)
	})
	return n, err
}
