package epub

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"columnbowl/build/bindery"
)

// The cover, in px: a sheet of a drawing office with a pump on it.
const (
	coverWidth, coverHeight = 1200, 1600
	coverEdge               = 50
	coverBlock              = 230 // height of the title block
)

var (
	viewBox  = regexp.MustCompile(`viewBox="0 0 ([0-9.]+) ([0-9.]+)"`)
	ownStyle = regexp.MustCompile(`(?s)<style>.*?</style>`)
	ownSize  = regexp.MustCompile(` width="[0-9.]+" height="[0-9.]+" role="group"`)
)

// cover draws the cover: the oil-lubricated pump of the book, whole, beside its
// title. A book without drawings has the title alone.
func (b *volume) cover(style string) ([]byte, error) {
	var w strings.Builder
	fmt.Fprintf(&w, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" width="%d" height="%d" role="img" aria-labelledby="cover-title">
<title id="cover-title">%s</title>
<style>%s
.cv{font-family:Charter,"Bitstream Charter",Cambria,Georgia,serif;fill:#18212a}
svg text.cv1{font-size:104px}svg text.cv2{font-size:44px}svg text.cv3{font-size:24px}
</style>
<rect x="0" y="0" width="%d" height="%d" fill="#f4f6f1"/>
`, coverWidth, coverHeight, coverWidth, coverHeight, escape(b.loose.Title), strings.NewReplacer("&", "&amp;", "<", "&lt;", "var(--w)", "1.15px").Replace(style), coverWidth, coverHeight)
	if err := b.coverPump(&w); err != nil {
		return nil, err
	}
	left, top := coverEdge, coverHeight-coverEdge-coverBlock
	fmt.Fprintf(&w, `<rect x="%d" y="%d" width="%d" height="%d" fill="none" stroke="#18212a" stroke-width="5"/>`+"\n", left, coverEdge, coverWidth-2*coverEdge, coverHeight-2*coverEdge)
	fmt.Fprintf(&w, `<path d="M%d %dH%d" stroke="#18212a" stroke-width="2.5"/>`+"\n", left, top, coverWidth-coverEdge)
	for i, line := range lines(b.loose.Title, 14) {
		fmt.Fprintf(&w, `<text class="cv cv1" x="%d" y="%d">%s</text>`+"\n", left+60, 250+i*120, escape(line))
	}
	for i, line := range lines(b.loose.Long, 24) {
		fmt.Fprintf(&w, `<text class="cv cv2" x="%d" y="%d">%s</text>`+"\n", left+60, top+90+i*56, escape(line))
	}
	fmt.Fprintf(&w, `<text class="cv cv3" x="%d" y="%d">%s %s</text>`+"\n</svg>\n", left+62, coverHeight-coverEdge-30, escape(b.loose.Words["block.version"]), escape(b.loose.Version))
	return []byte(w.String()), nil
}

// coverPump puts the whole pump on the right of the cover.
func (b *volume) coverPump(w *strings.Builder) error {
	var svg string
	for _, f := range b.loose.Files {
		if f.Path == bindery.CoverDrawing {
			svg = string(f.Data)
		}
	}
	if svg == "" {
		return nil
	}
	size := viewBox.FindStringSubmatch(svg)
	if size == nil {
		return fmt.Errorf("%s has no size", bindery.CoverDrawing)
	}
	width, err1 := strconv.ParseFloat(size[1], 64)
	height, err2 := strconv.ParseFloat(size[2], 64)
	if err1 != nil || err2 != nil {
		return fmt.Errorf("%s has no size", bindery.CoverDrawing)
	}
	h := float64(coverHeight - 2*coverEdge - coverBlock - 40)
	svg = ownStyle.ReplaceAllString(svg, "")
	svg = strings.Replace(svg, "<svg", fmt.Sprintf(`<svg x="%d" y="%d"`, coverWidth-coverEdge-60-int(h*width/height), coverEdge+20), 1)
	svg = ownSize.ReplaceAllString(svg, fmt.Sprintf(` width="%d" height="%d" role="group"`, int(h*width/height), int(h)))
	w.WriteString(strings.NewReplacer(` data-theme="auto"`, "", ` role="group"`, ` role="img"`).Replace(svg))
	return nil
}

// lines breaks a text between words, no line longer than width where that can be.
func lines(text string, width int) []string {
	var out []string
	for _, word := range strings.Fields(text) {
		if n := len(out); n > 0 && len(out[n-1])+1+len(word) <= width {
			out[n-1] += " " + word
		} else {
			out = append(out, word)
		}
	}
	return out
}
