package bindery

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"columnbowl/build/markdown"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/picture"
	"columnbowl/site"
)

// drawTwice draws a picture of the chain's facts once in each system of units.
// Each stands in an element that says what it is, so that the script can draw
// it again when the facts change.
func (w *work) drawTwice(k picture.Picture, form, prefix string) template.HTML {
	var both template.HTML
	for _, s := range []formula.System{formula.US, formula.SI} {
		pen := picture.Pen{Result: w.chain.result, System: s, Prefix: prefix + s.String() + "-", Words: w.words}
		both += template.HTML(`<div class="only-` + s.String() + `" data-picture="` + k.Name + `" data-form="` + form + `" data-prefix="` + pen.Prefix + `">`)
		both += svg(k.Draw(pen, form)) + `</div>`
	}
	return both
}

// termFigures is the picture that a term is a mark of, with the facts of the
// chain. Without such facts there is nothing to draw.
func (w *work) termFigures(id string) []site.Figure {
	if len(w.chain.facts) == 0 {
		return nil
	}
	for _, k := range picture.Pictures {
		if slices.Contains(k.Terms, id) {
			says := strings.Replace(w.words["picture."+k.Name+".of"], "{0}", w.chain.title, 1)
			return []site.Figure{{Caption: paragraph(says), SVG: w.drawTwice(k, picture.Term, "fig-")}}
		}
	}
	return nil
}

// chapterPicture is a picture of the chain's facts in the running text.
func (w *work) chapterPicture(b *markdown.Block, n int, root string) (string, error) {
	k, ok := picture.Named(b.Name)
	if !ok {
		return w.chapterCut(b, root)
	}
	return w.piece(site.Figure{Caption: paragraph(b.Say), SVG: w.drawTwice(k, picture.Term, fmt.Sprintf("fig%d-", n))})
}

// chainPictures are the pictures of the chain: those on one datum and one scale
// of depth, with narrow ones for phones beside them, or the details, each on
// its own.
func (w *work) chainPictures(scaled bool) []site.Figure {
	if len(w.chain.facts) == 0 {
		return nil
	}
	var figures []site.Figure
	for _, k := range picture.Pictures {
		if k.Forms != scaled {
			continue
		}
		f := site.Figure{Title: w.words["picture."+k.Name], Caption: paragraph(w.words["picture."+k.Name+".says"]), SVG: w.drawTwice(k, picture.Wide, "")}
		if k.Forms {
			f.Narrow = w.drawTwice(k, picture.Narrow, "n-")
		}
		figures = append(figures, f)
	}
	return figures
}
