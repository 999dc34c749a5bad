// Package epub makes the handbook into an EPUB 3 book for reading devices: the
// same pages without scripts, each drawing once, links between the pages.
//
// The same book gives the same bytes. Nothing in it needs a network.
package epub

import (
	"archive/zip"
	"bytes"
	"cmp"
	"compress/flate"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"hash/crc32"
	"io"
	"path"
	"slices"
	"strings"
	"time"

	"columnbowl/build/bindery"
)

// Inks are the style sheets of the book: of its pages and of the drawings that
// are files of their own, bundled.
type Inks struct {
	Page, Drawn []byte
	Font        []byte // of the formulas, woff2
	FontLicence []byte
}

// item is a file of the book.
type item struct {
	path       string // from the folder of the package document
	media      string
	properties string // of the manifest
	data       []byte
	spine      bool
}

// leftOut are pages that are nothing without a script: a device has none.
var leftOut = []string{"index.html", "desk.html", "practice/cards.html", "practice/progress.html"}

// Make makes the bytes of the book.
func Make(l *bindery.Loose, inks Inks) ([]byte, error) {
	b := &volume{loose: l, known: map[string]bool{}}
	for i := range l.Leaves {
		if leaf := &l.Leaves[i]; !slices.Contains(leftOut, leaf.Path) {
			b.leaves = append(b.leaves, leaf)
			b.known[leaf.Path] = true
		}
	}
	items := []item{
		{path: coverPage, media: xhtml, properties: "svg", data: b.coverPage(), spine: true},
		{path: titlePage, media: xhtml, data: b.titlePage(), spine: true},
		{path: navPage, media: xhtml, properties: "nav", data: b.nav(), spine: true},
	}
	pages, err := b.pages()
	if err != nil {
		return nil, err
	}
	drawings, err := b.drawings(flatten(string(inks.Drawn), true))
	if err != nil {
		return nil, err
	}
	items = append(append(items, pages...), drawings...)
	items = append(items,
		item{path: stylePath, media: "text/css", data: []byte(flatten(string(inks.Page), false))},
		item{path: fontPath, media: "font/woff2", data: inks.Font},
		item{path: licencePath, media: "text/plain", data: inks.FontLicence})
	return pack(append([]item{{path: packagePath, data: b.packageDocument(items)}}, items...))
}

// Paths inside the book.
const (
	packagePath = "book.opf"
	coverPage   = "cover.xhtml"
	titlePage   = "title.xhtml"
	navPage     = "contents.xhtml"
	coverPath   = "drawings/cover.svg"
	stylePath   = "assets/book.css"
	fontPath    = "assets/columnbowl-math.woff2"
	licencePath = "assets/columnbowl-math-OFL.txt"

	xhtml = "application/xhtml+xml"
)

// volume is what the pages of the book are made from.
type volume struct {
	loose  *bindery.Loose
	leaves []*bindery.Leaf
	known  map[string]bool // pages that are in the book
	drawn  []string        // drawings that the pages show, in the order of their first use
}

// pagePath is a page's place in the book.
func pagePath(file string) string { return strings.TrimSuffix(file, ".html") + ".xhtml" }

// identifier names this state of the book: another text, another name.
func (b *volume) identifier(items []item) string {
	sum := sha256.New()
	for _, i := range items {
		io.WriteString(sum, i.path)
		sum.Write(i.data)
	}
	h := hex.EncodeToString(sum.Sum(nil))
	// Version 8 of RFC 9562: sixteen bytes of our own making.
	return fmt.Sprintf("urn:uuid:%s-%s-8%s-a%s-%s", h[:8], h[8:12], h[13:16], h[17:20], h[20:32])
}

// modified stands in every edition: the same content gives the same bytes, so it
// cannot be today.
const modified = "2000-01-01T00:00:00Z"

func (b *volume) packageDocument(items []item) []byte {
	var w bytes.Buffer
	fmt.Fprintf(&w, `<?xml version="1.0" encoding="UTF-8"?>
<package xmlns="http://www.idpf.org/2007/opf" version="3.0" unique-identifier="id" xml:lang="en">
<metadata xmlns:dc="http://purl.org/dc/elements/1.1/">
<dc:identifier id="id">%s</dc:identifier>
<dc:title>%s</dc:title>
<dc:language>en</dc:language>
<dc:description>%s</dc:description>
<meta property="dcterms:modified">%s</meta>
<meta property="schema:accessMode">textual</meta>
<meta property="schema:accessMode">visual</meta>
<meta property="schema:accessModeSufficient">textual</meta>
<meta property="schema:accessibilityFeature">MathML</meta>
<meta property="schema:accessibilityFeature">alternativeText</meta>
<meta property="schema:accessibilityFeature">tableOfContents</meta>
<meta property="schema:accessibilityHazard">none</meta>
</metadata>
<manifest>
`, b.identifier(items), escape(b.loose.Title+": "+b.loose.Long), escape(cmp.Or(b.loose.About, b.loose.Long)), modified)
	for _, i := range items {
		fmt.Fprintf(&w, `<item id="%s" href="%s" media-type="%s"`, itemID(i.path), i.path, i.media)
		if i.properties != "" {
			fmt.Fprintf(&w, ` properties="%s"`, i.properties)
		}
		w.WriteString("/>\n")
	}
	w.WriteString("</manifest>\n<spine>\n")
	for _, i := range items {
		if i.spine {
			fmt.Fprintf(&w, `<itemref idref="%s"/>`+"\n", itemID(i.path))
		}
	}
	w.WriteString("</spine>\n</package>\n")
	return w.Bytes()
}

// itemID makes an identifier of a path: letters, digits, hyphens and dots.
func itemID(file string) string { return "i-" + strings.ReplaceAll(file, "/", "..") }

const container = `<?xml version="1.0" encoding="UTF-8"?>
<container version="1.0" xmlns="urn:oasis:names:tc:opendocument:xmlns:container">
<rootfiles><rootfile full-path="book/` + packagePath + `" media-type="application/oebps-package+xml"/></rootfiles>
</container>
`

// pack makes the archive. The kind of file stands first and plain, so that it
// can be told by its first bytes.
func pack(items []item) ([]byte, error) {
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	z.RegisterCompressor(zip.Deflate, func(w io.Writer) (io.WriteCloser, error) { return flate.NewWriter(w, flate.BestCompression) })
	kind := []byte("application/epub+zip")
	w, err := z.CreateRaw(&zip.FileHeader{Name: "mimetype", Method: zip.Store, CRC32: crc32.ChecksumIEEE(kind),
		CompressedSize64: uint64(len(kind)), UncompressedSize64: uint64(len(kind))})
	if err == nil {
		_, err = w.Write(kind)
	}
	for _, i := range append([]item{{path: "../META-INF/container.xml", data: []byte(container)}}, items...) {
		if err != nil {
			return nil, err
		}
		var f io.Writer
		if f, err = z.CreateHeader(&zip.FileHeader{Name: path.Join("book", i.path), Method: zip.Deflate, Modified: time.Time{}}); err == nil {
			_, err = f.Write(i.data)
		}
	}
	if err = cmp.Or(err, z.Close()); err != nil {
		return nil, fmt.Errorf("the book cannot be packed: %w", err)
	}
	return out.Bytes(), nil
}
