// Package bundle makes the files of an edition that are not pages: the scripts
// and the style sheet of the site, joined and made small, and the engine for
// the page with the data of the book.
//
// It is the only package that imports esbuild. Same sources in, same bytes out:
// sources are read from an fs.FS, so that no path of the machine can reach the
// output.
package bundle

import (
	"io/fs"

	"github.com/evanw/esbuild/pkg/api"
)

// Entries of the site: what esbuild starts from.
const (
	pageScript = "scripts/page.ts"
	hubScript  = "scripts/hub.ts"
	workScript = "scripts/worker.ts"
	pageStyle  = "styles/page.css"
	drawnStyle = "styles/drawn.css"
	epubStyle  = "styles/epub.css"
	fileStyle  = "styles/onefile.css"
	paperStyle = "styles/paper.css"
	readScript = "scripts/read.ts"
	readStyle  = "styles/read.css"
)

// floor is the oldest browsers that the pages work in. Newer syntax is turned
// into what these understand; what cannot be turned is an error.
var floor = []api.Engine{
	{Name: api.EngineChrome, Version: "109"},
	{Name: api.EngineFirefox, Version: "115"},
	{Name: api.EngineSafari, Version: "16.4"},
}

// Scripts bundles the script of the pages and the one of hub.html. Each is one
// classic script (an IIFE): modules cannot be loaded from file://.
func Scripts(fsys fs.FS) (pageJS, hubJS []byte, err error) {
	if pageJS, err = build(fsys, pageScript); err != nil {
		return nil, nil, err
	}
	if hubJS, err = build(fsys, hubScript); err != nil {
		return nil, nil, err
	}
	return pageJS, hubJS, nil
}

// WorkerScript bundles the service worker of a copy on a server. It expects a
// constant “edition” before it.
func WorkerScript(fsys fs.FS) ([]byte, error) { return build(fsys, workScript) }

// Styles joins page.css with everything that it imports. Addresses in url(…)
// stay as they are written: they are relative to the folder of the bound
// style sheet, where the bindery puts the font.
func Styles(fsys fs.FS) ([]byte, error) {
	return build(fsys, pageStyle)
}

// DrawnStyles joins the styles of the drawings that are files of their own.
func DrawnStyles(fsys fs.FS) ([]byte, error) {
	return build(fsys, drawnStyle)
}

// EPUBStyles joins the styles of the pages of an EPUB book.
func EPUBStyles(fsys fs.FS) ([]byte, error) {
	return build(fsys, epubStyle)
}

// FileStyles joins the styles of the edition of one file.
func FileStyles(fsys fs.FS) ([]byte, error) {
	return build(fsys, fileStyle)
}

// PaperStyles joins the styles of the print edition.
func PaperStyles(fsys fs.FS) ([]byte, error) {
	return build(fsys, paperStyle)
}

// Reading bundles what the server that shows a book to its author adds to the
// pages: a script that listens for changes, and the look of what it tells.
func Reading(fsys fs.FS) (js, css []byte, err error) {
	if js, err = build(fsys, readScript); err != nil {
		return nil, nil, err
	}
	css, err = build(fsys, readStyle)
	return js, css, err
}

func build(fsys fs.FS, entry string) ([]byte, error) {
	result := api.Build(api.BuildOptions{
		EntryPoints:       []string{entry},
		Bundle:            true,
		Write:             false,
		Outdir:            "/",
		AbsWorkingDir:     "/",
		Format:            api.FormatIIFE,
		Platform:          api.PlatformBrowser,
		Engines:           floor,
		MinifySyntax:      true,
		MinifyWhitespace:  true,
		MinifyIdentifiers: true,
		LegalComments:     api.LegalCommentsNone,
		// UTF-8 in the output: the pages say so, and "m³/h" stays readable.
		Charset:  api.CharsetUTF8,
		LogLevel: api.LogLevelSilent,
		// Pinned, so that a tsconfig.json somewhere above changes nothing.
		TsconfigRaw: `{"compilerOptions":{"strict":true,"target":"ES2022","useDefineForClassFields":true}}`,
		Plugins:     []api.Plugin{fromFS(fsys)},
	})
	if len(result.Errors) > 0 || len(result.Warnings) > 0 {
		// A warning is something that will not work as it is written: a page is
		// not published with one.
		return nil, failure(append(result.Errors, result.Warnings...))
	}
	return result.OutputFiles[0].Contents, nil
}
