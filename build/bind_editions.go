package main

import (
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"time"

	"columnbowl/build/bindery"
	"columnbowl/build/book"
	"columnbowl/build/bundle"
	"columnbowl/build/epub"
	"columnbowl/site"
)

// bindAll makes the editions that are asked for of a sound book.
func bindAll(b *book.Book, a *bindArgs, seen *bindery.Evidence, start time.Time, out io.Writer) error {
	parts, err := partsOf()
	if err != nil {
		return err
	}
	opts := bindery.Options{Evidence: seen}
	if a.out != "" {
		if err := bindFolder(b, parts, opts, a, start, out); err != nil {
			return err
		}
	}
	if a.epub == "" {
		return nil
	}
	loose, err := bindery.Loosen(b, parts, opts)
	if err != nil {
		return err
	}
	return bindEPUB(loose, parts, a.epub, out)
}

// partsOf are the parts of an edition that stand in this program. The engine
// is not among them.
func partsOf() (parts bindery.Parts, err error) {
	if parts.Shells, err = site.Shells(); err != nil {
		return parts, err
	}
	if parts.PageScript, parts.HubScript, err = bundle.Scripts(site.Files); err != nil {
		return parts, err
	}
	if parts.Style, err = bundle.Styles(site.Files); err != nil {
		return parts, err
	}
	if parts.DrawnStyle, err = bundle.DrawnStyles(site.Files); err != nil {
		return parts, err
	}
	for name, to := range map[string]*[]byte{"columnbowl-math.woff2": &parts.Font, "OFL.txt": &parts.FontLicence} {
		if *to, err = fs.ReadFile(site.Files, "fonts/"+name); err != nil {
			return parts, fmt.Errorf("the font of the formulas is missing from this program: %w", err)
		}
	}
	return parts, nil
}

func bindFolder(b *book.Book, parts bindery.Parts, opts bindery.Options, a *bindArgs, start time.Time, out io.Writer) error {
	var err error
	if parts.Wasm, err = engineFor(a.engine); err != nil {
		return err
	}
	edition, err := bindery.Bind(b, parts, opts)
	if err != nil {
		return err
	}
	if err := bindery.Write(edition, a.out); err != nil {
		return err
	}
	printEdition(out, edition, a.out, time.Since(start))
	return nil
}

func bindEPUB(loose *bindery.Loose, parts bindery.Parts, file string, out io.Writer) error {
	style, err := bundle.EPUBStyles(site.Files)
	if err != nil {
		return err
	}
	data, err := epub.Make(loose, epub.Inks{Page: style, Drawn: parts.DrawnStyle, Font: parts.Font, FontLicence: parts.FontLicence})
	if err != nil {
		return err
	}
	return writeEdition(file, "EPUB", data, out)
}

// writeEdition writes an edition that is one file: beside the old one, which it
// replaces when it is whole.
func writeEdition(file, kind string, data []byte, out io.Writer) error {
	if err := bindery.WriteFile(file, data); err != nil {
		return err
	}
	fmt.Fprintf(out, "%s edition: %s, %s.\n", kind, filepath.ToSlash(file), sizeText(len(data)))
	return nil
}
