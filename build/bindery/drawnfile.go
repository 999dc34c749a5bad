package bindery

import (
	"bytes"
	"path"
	"strings"
	"sync"

	"columnbowl/build/book"
	"columnbowl/calcwasm/cutaway"
)

// picturesFolder is where the drawings stand that are files of their own. A page
// shows one as a picture, with a part lit by the fragment of its address.
const picturesFolder = "drawings/"

// drawnFile is a drawing as a file, made once.
type drawnFile struct {
	name string // with the sum of its bytes: "drawings/oil-lubricated-bowls-360.0123456789ab.svg"
	data []byte
}

// pictureAt makes the drawing of a plain path, "drawings/oil-lubricated-bowls-360.svg".
func (c *cuts) pictureAt(plain string) (*drawnFile, bool) {
	what, ok := c.drawingAt(plain)
	if !ok {
		return nil, false
	}
	make, _ := c.made.LoadOrStore(plain, sync.OnceValue(func() *drawnFile {
		data := c.file(what)
		return &drawnFile{picturesFolder + summed(path.Base(plain), data), data}
	}))
	return make.(func() *drawnFile)(), true
}

// drawingAt says what a plain path shows. Those that texts ask for are known
// when the page with the text has been made.
func (c *cuts) drawingAt(plain string) (litFile, bool) {
	if what, ok := c.extra.Load(plain); ok {
		return what.(litFile), true
	}
	for _, l := range c.sheets() {
		if cutPath(l.build, l.sheet, l.width) == plain {
			return l, true
		}
	}
	return litFile{}, false
}

// sheets are the drawings that every book with profiles has.
func (c *cuts) sheets() []litFile {
	var list []litFile
	for _, build := range book.Builds {
		for _, sheet := range cutaway.Sheets(build) {
			for _, width := range widths {
				list = append(list, litFile{build: build, sheet: sheet, width: width})
			}
		}
	}
	return list
}

// plainFiles are all drawings by their plain paths. The pages have been made
// before: the drawings that texts ask for are among them.
func (c *cuts) plainFiles() []File {
	var list []File
	c.each(func(plain string, p *drawnFile) { list = append(list, File{plain, p.data}) })
	return list
}

// files are all drawings by the names that carry their sums.
func (c *cuts) files() []File {
	var list []File
	c.each(func(_ string, p *drawnFile) { list = append(list, File{p.name, p.data}) })
	return list
}

func (c *cuts) each(do func(plain string, p *drawnFile)) {
	one := func(plain string) {
		if p, ok := c.pictureAt(plain); ok {
			do(plain, p)
		}
	}
	for _, l := range c.sheets() {
		one(cutPath(l.build, l.sheet, l.width))
	}
	c.extra.Range(func(plain, _ any) bool {
		one(plain.(string))
		return true
	})
}

// find makes the drawing that stands at a path with a sum.
func (c *cuts) find(file string) ([]byte, bool) {
	rest, ok := strings.CutSuffix(file, ".svg")
	if !ok || !strings.HasPrefix(file, picturesFolder) {
		return nil, false
	}
	if p, ok := c.pictureAt(strings.TrimSuffix(rest, path.Ext(rest)) + ".svg"); ok && p.name == file {
		return p.data, true
	}
	return nil, false
}

// named puts the sums into the names of the pictures of a page. It is done when
// the page is whole, because the name of a drawing is known when it is drawn.
func (c *cuts) named(html []byte) []byte {
	var out []byte
	for {
		at := bytes.Index(html, []byte(picturesFolder))
		if at < 0 {
			return append(out, html...)
		}
		out = append(out, html[:at]...)
		html = html[at:]
		end := len(picturesFolder)
		for end < len(html) && (html[end] == '-' || html[end] >= '0' && html[end] <= '9' || html[end] >= 'a' && html[end] <= 'z') {
			end++
		}
		name := string(html[:end])
		html = html[end:]
		if bytes.HasPrefix(html, []byte(".svg")) {
			if p, ok := c.pictureAt(name + ".svg"); ok {
				out = append(out, p.name...)
				html = html[len(".svg"):]
				continue
			}
		}
		out = append(out, name...)
	}
}
