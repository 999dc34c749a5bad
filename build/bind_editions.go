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
	"columnbowl/build/onefile"
	"columnbowl/site"
)

// bindAll makes the editions that are asked for of a sound book.
func bindAll(b *book.Book, a *bindArgs, seen *bindery.Evidence, start time.Time, out io.Writer) error {
	parts, err := partsOf()
	if err != nil {
		return err
	}
	opts := bindery.Options{Evidence: seen}
	if a.out != "" || a.file != "" {
		if err := withEngine(&parts, a.engine); err != nil {
			return err
		}
	}
	if a.out != "" {
		if err := bindFolder(b, parts, opts, a, start, out); err != nil {
			return err
		}
	}
	if a.file == "" && a.epub == "" && a.print == "" {
		return nil
	}
	loose, err := bindery.Loosen(b, parts, opts)
	if err != nil {
		return err
	}
	if a.file != "" {
		if err := bindFile(loose, parts, a.file, out); err != nil {
			return err
		}
	}
	if a.epub != "" {
		if err := bindEPUB(loose, parts, a.epub, out); err != nil {
			return err
		}
	}
	if a.print != "" {
		return bindPaper(loose, parts, a.print, out)
	}
	return nil
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
	if parts.WorkerScript, err = bundle.WorkerScript(site.Files); err != nil {
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

// bindFile makes the edition of one file, and tells what takes how much of it.
func bindFile(loose *bindery.Loose, parts bindery.Parts, file string, out io.Writer) error {
	style, err := bundle.FileStyles(site.Files)
	if err != nil {
		return err
	}
	data, shares, examples, err := onefile.Make(loose, onefile.Parts{Script: parts.PageScript, Style: style, Font: parts.Font, FontLicence: parts.FontLicence, Wasm: parts.Wasm})
	if err != nil {
		return err
	}
	if err := writeEdition(file, "One-file", data, out); err != nil {
		return err
	}
	for _, s := range shares {
		fmt.Fprintf(out, "  %-12s %9s\n", s.Name, sizeText(s.Bytes))
	}
	fmt.Fprintf(out, "Without scripts its pages tell %s each.\n", plural(examples, "worked example"))
	if len(data) > onefile.Budget {
		fmt.Fprintf(out, "That is more than %s, which many mails do not take.\n", sizeText(onefile.Budget))
	}
	return nil
}

// bindPaper makes the print edition.
func bindPaper(loose *bindery.Loose, parts bindery.Parts, file string, out io.Writer) error {
	style, err := bundle.PaperStyles(site.Files)
	if err != nil {
		return err
	}
	data, err := onefile.Paper(loose, onefile.Parts{Style: style, Font: parts.Font, FontLicence: parts.FontLicence})
	if err != nil {
		return err
	}
	return writeEdition(file, "Print", data, out)
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
