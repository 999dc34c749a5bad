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

// sheets are the drawings of a book with profiles, beside those that texts ask for.
func (c *cuts) sheets() []litFile {
	var list []litFile
	for _, build := range book.Builds {
		for _, sheet := range cutaway.Sheets(build) {
			for _, width := range widths {
				list = append(list, litFile{build: build, sheet: sheet, width: width})
			}
		}
	}
	for _, o := range c.others {
		for _, width := range widths[1:] {
			list = append(list, litFile{build: o.build, sheet: o.name(), width: width})
		}
	}
	return list
}

// plainFiles are all drawings by their plain paths. The pages have been made
// before: the drawings that texts ask for are among them.
func (c *cuts) plainFiles(workers int) []File {
	return c.each(workers, func(plain string, p *drawnFile) File { return File{plain, p.data} })
}

// files are all drawings by the names that carry their sums.
func (c *cuts) files(workers int) []File {
	return c.each(workers, func(_ string, p *drawnFile) File { return File{p.name, p.data} })
}

func (c *cuts) each(workers int, file func(plain string, p *drawnFile) File) []File {
	var plain []string
	for _, l := range c.sheets() {
		plain = append(plain, cutPath(l.build, l.sheet, l.width))
	}
	c.extra.Range(func(path, _ any) bool {
		plain = append(plain, path.(string))
		return true
	})
	list := make([]File, len(plain))
	share(len(list), workers, func(i int) {
		p, _ := c.pictureAt(plain[i])
		list[i] = file(plain[i], p)
	})
	return list
}

// fileAt makes the drawing that stands at a path with a sum.
func (c *cuts) fileAt(file string) ([]byte, bool) {
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
