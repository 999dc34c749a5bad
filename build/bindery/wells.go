package bindery

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"html/template"
	"strings"
	"sync"

	"columnbowl/calcwasm/drawing"
)

// wells are the drawn wells of rails and strips, each a file of its own behind
// the links that a page lays over it: the well is the same on all pages that
// stand at one place with lists of one length.
//
// The paper follows the reader's system. A script that knows better asks for
// another one by the address: #dark.
type wells struct {
	inks  inks
	files sync.Map // path -> []byte
}

// behind makes a well a file, and tells what shows it.
func (l *wells) behind(s *drawing.Scene, root string) template.HTML {
	svg := s.SVG()
	sum := sha256.Sum256([]byte(svg)) // of what is drawn: another ink changes no page
	path := "drawings/well-" + hex.EncodeToString(sum[:4]) + ".svg"
	if _, made := l.files.Load(path); !made {
		l.files.Store(path, l.file(svg))
	}
	return template.HTML(fmt.Sprintf(`<img class="well" src="%s" alt="" width="%.0f" height="%.0f">`, root+path, s.Box.W, s.Box.H))
}

// file is the drawing of a well with its inks and its papers.
func (l *wells) file(svg string) []byte {
	at := strings.Index(svg, ">") + 1
	var open, shut string
	for _, paper := range papers {
		open += `<g id="` + paper + `">`
		shut += "</g>"
	}
	return []byte(svg[:at] + "<style>" + l.inks.of(svg) + "</style>" + open + strings.ReplaceAll(strings.TrimSuffix(svg[at:], "</svg>\n"), "\n", "") + shut + "</svg>\n")
}

// list is every well that pages have asked for.
func (l *wells) list() []File {
	var list []File
	l.files.Range(func(path, data any) bool {
		list = append(list, File{path.(string), data.([]byte)})
		return true
	})
	return list
}

// railed draws a scene of the rail or the strip: what back takes as a picture
// behind it, the rest in the page. In a document that is one file all of it
// stands in the page.
func (w *work) railed(s *drawing.Scene, root string, back func(drawing.Item) bool) template.HTML {
	if w.wells == nil {
		return svg(s)
	}
	behind, front := *s, *s
	behind.Prefix, front.Hatches = "", nil
	behind.Items, front.Items = nil, nil
	for _, it := range s.Items {
		if back(it) {
			behind.Add(it)
		} else {
			front.Add(it)
		}
	}
	return w.wells.behind(&behind, root) + template.HTML(plainly(string(svg(&front))))
}

// plainly leaves out of a drawing in a page what only a file needs. The lines
// stay: they part the words of a link.
func plainly(svg string) string {
	return strings.Replace(svg, ` xmlns="http://www.w3.org/2000/svg"`, "", 1)
}

// isWell is the drawn part of the rail.
func isWell(it drawing.Item) bool {
	g, is := it.(drawing.Group)
	return is && g.Class == "well"
}

// isShape is all of the strip but its words.
func isShape(it drawing.Item) bool {
	_, is := it.(drawing.Text)
	return !is
}
