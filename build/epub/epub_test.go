package epub

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"path"
	"runtime"
	"strings"
	"testing"

	"columnbowl/build/bindery"
	"columnbowl/build/book"
	"columnbowl/build/bundle"
	"columnbowl/site"
)

func made(t *testing.T) []byte {
	t.Helper()
	b, found := book.Load(os.DirFS("../../content"))
	if found.Errors() > 0 {
		t.Fatalf("the content has errors: %v", found)
	}
	shells, err := site.Shells()
	if err != nil {
		t.Fatal(err)
	}
	inks := Inks{Font: []byte("wOF2"), FontLicence: []byte("licence")}
	if inks.Page, err = bundle.EPUBStyles(site.Files); err != nil {
		t.Fatal(err)
	}
	if inks.Drawn, err = bundle.DrawnStyles(site.Files); err != nil {
		t.Fatal(err)
	}
	loose, err := bindery.Loosen(b, bindery.Parts{Shells: shells, DrawnStyle: inks.Drawn}, bindery.Options{})
	if err != nil {
		t.Fatal(err)
	}
	data, err := Make(loose, inks)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// TestBook reads the book of the real content as a device does: XML throughout,
// every link and picture there, no script, and small enough to be sent.
func TestBook(t *testing.T) {
	before := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(before)
	data := made(t)
	runtime.GOMAXPROCS(8)
	if !bytes.Equal(data, made(t)) {
		t.Error("the same content gave other bytes the second time")
	}
	if len(data) > 6e6 {
		t.Errorf("%d bytes", len(data))
	}
	if !bytes.HasPrefix(data[30:], []byte("mimetypeapplication/epub+zip")) {
		t.Error("the kind of file does not stand at its beginning")
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	files, ids, links := map[string]bool{}, map[string]bool{}, map[string][]string{}
	for _, f := range z.File {
		files[f.Name] = true
		if ext := path.Ext(f.Name); ext == ".xhtml" || ext == ".svg" || ext == ".opf" {
			read(t, f, ids, links)
		}
	}
	if len(links) < 500 {
		t.Errorf("only %d documents", len(links))
	}
	for from, list := range links {
		for _, to := range list {
			address, fragment, _ := strings.Cut(to, "#")
			if strings.Contains(to, "://") {
				continue
			}
			full := from
			if address != "" {
				full = path.Join(path.Dir(from), address)
			}
			if !files[full] {
				t.Errorf("%s leads to %s, which is not in the book", from, to)
			} else if fragment != "" && !ids[full+"#"+fragment] {
				t.Errorf("%s leads to %s: there is no such place", from, to)
			}
		}
	}
	for name := range files {
		if strings.HasSuffix(name, ".js") || strings.HasSuffix(name, ".wasm") {
			t.Errorf("%s is in the book", name)
		}
	}
}

// read goes through a document as XML and notes its ids and where it leads.
func read(t *testing.T, f *zip.File, ids map[string]bool, links map[string][]string) {
	t.Helper()
	r, err := f.Open()
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	links[f.Name] = nil
	d := xml.NewDecoder(r)
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Errorf("%s: %v", f.Name, err)
			return
		}
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		if start.Name.Local == "script" || strings.Contains(start.Name.Local, "-") && start.Name.Local != "font-face" {
			t.Errorf("%s holds a <%s>", f.Name, start.Name.Local)
		}
		for _, a := range start.Attr {
			switch a.Name.Local {
			case "id":
				ids[f.Name+"#"+a.Value] = true
			case "href", "src":
				links[f.Name] = append(links[f.Name], a.Value)
			case "style", "onclick", "onload":
				t.Errorf("%s: <%s %s>", f.Name, start.Name.Local, a.Name.Local)
			}
		}
	}
}

func TestFlatten(t *testing.T) {
	css := `@font-face{font-family:M;src:url(m.woff2)}:root{--ink: #123;--line: var(--ink)}:root[data-theme=dark]{--ink: #fff}` +
		`@media(prefers-color-scheme:dark){:root{--ink: #eee}}p{color:var(--line);width:var(--own)}`
	if got := flatten(css, true); got != "p{color:#123;width:var(--own)}\n" {
		t.Error(got)
	}
	if got := flatten(css, false); got != "@font-face{font-family:M;src:url(m.woff2)}\np{color:#123;width:var(--own)}\n" {
		t.Error(got)
	}
}
