package bindery

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
	"columnbowl/calcwasm/answer"
	"columnbowl/calcwasm/cutaway"
	"columnbowl/site"
)

// widths of the sheets that are drawn for readers without a script, in px.
var widths = [...]int{1280, 768, 360}

// usualStages is how many stages the printed drawings show: Quillbeck Orchard's.
const usualStages = 8

// cuts draws the sheets of the pump; nil where the book has no profiles.
type cuts struct {
	w      *work
	shapes *cutaway.Shapes
	words  cutaway.Words
	drawn  map[string]cutaway.Drawing // by build, sheet and width
	style  string                     // goes into each drawing that is a file
	extra  sync.Map                   // path -> litFile: drawings that texts ask for
	made   sync.Map                   // path -> func() *drawnFile: files that were asked for
}

func (w *work) prepareCuts(style []byte) error {
	if w.book.Shapes == nil {
		return nil
	}
	shapes, err := cutaway.Load(w.book.Shapes.Pack())
	if err != nil {
		return err
	}
	c := &cuts{w: w, shapes: shapes, style: string(style)}
	c.words = cutaway.Words{Of: map[string]cutaway.Word{}, More: w.words["cut.more"], OneMore: w.words["cut.one-more"],
		Turns: w.words["cut.turns"], Stands: w.words["cut.stands"]}
	for _, id := range w.book.Shapes.Labels() {
		c.words.Of[id] = w.cutWord(id)
	}
	c.drawn, err = Recall(w.keep, "drawings", c.sum(), func() (map[string]cutaway.Drawing, error) { return c.drawAll(), nil })
	w.cuts = c
	return err
}

// sum is a sum of all that the drawings are made from.
func (c *cuts) sum() string {
	sum := sha256.Sum256(c.pack())
	return string(sum[:])
}

// drawAll draws every sheet at every width.
func (c *cuts) drawAll() map[string]cutaway.Drawing {
	drawn := map[string]cutaway.Drawing{}
	for _, build := range book.Builds {
		for _, sheet := range cutaway.Sheets(build) {
			for _, width := range widths {
				drawn[cutName(build, sheet, width)] = c.draw(build, sheet, width)
			}
		}
	}
	return drawn
}

// cutWord is the name of a label of a drawing: a part's own, or that of a
// feature, which stands in the words of the interface.
func (w *work) cutWord(id string) cutaway.Word {
	if p := w.book.PartByID[id]; p != nil {
		return cutaway.Word{Name: p.Name, Sub: w.words["motion."+p.Motion], Desc: firstSentence(p.Doc)}
	}
	part, feature, _ := strings.Cut(id, "/")
	if feature == "" {
		feature = part
	}
	return cutaway.Word{Name: w.words["cut.of."+feature]}
}

func (c *cuts) draw(build, sheet string, width int) cutaway.Drawing {
	words := c.words
	words.Title = c.title(build, sheet)
	return c.shapes.Draw(cutaway.Pump{Build: build, Stages: usualStages},
		cutaway.View{Prefix: "c", Sheet: sheet, Width: width, Labels: cutaway.Numbered, Words: words})
}

func (c *cuts) title(build, sheet string) string {
	return c.w.words["build."+build] + ": " + strings.ToLower(c.w.words["cut.sheet."+sheet])
}

func cutName(build, sheet string, width int) string {
	return build + "-" + sheet + "-" + strconv.Itoa(width)
}

func cutPath(build, sheet string, width int) string {
	return "drawings/" + cutName(build, sheet, width) + ".svg"
}

func (c *cuts) file(f litFile) []byte {
	svg := c.drawn[cutName(f.build, f.sheet, f.width)].Scene.SVG()
	if f.plain {
		svg = strings.Replace(svg, `class="fig cutaway`, `class="fig cutaway plain`, 1)
	}
	svg = strings.Replace(svg, "<svg", `<svg data-theme="auto"`, 1)
	for _, id := range f.parts {
		svg = c.light(svg, id)
	}
	at := strings.Index(svg, ">") + 1
	return []byte(svg[:at] + "\n<style>" + c.style + "</style>" + svg[at:])
}

// light gives the group of a part the class lit.
func (c *cuts) light(svg, part string) string {
	at := strings.Index(svg, ` id="c-`+part+`"`)
	if at < 0 {
		return svg
	}
	open := strings.LastIndex(svg[:at], `class="part`)
	if open < 0 {
		return svg
	}
	open += len(`class="part`)
	return svg[:open] + " lit" + svg[open:]
}

// pack is what the engine needs to draw the sheets in the page.
func (c *cuts) pack() []byte {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n", answer.CutawayPack)
	for _, id := range c.w.book.Shapes.Labels() {
		word := c.words.Of[id]
		fmt.Fprintf(&b, "word\t%s\t%s\t%s\t%s\n", id, word.Name, word.Sub, word.Desc)
	}
	fmt.Fprintf(&b, "more\t%s\none-more\t%s\nturns\t%s\nstands\t%s\nunnumbered\t%s\n\n%s",
		c.words.More, c.words.OneMore, c.words.Turns, c.words.Stands, c.w.words["cut.unnumbered"], c.w.book.Shapes.Pack())
	return []byte(b.String())
}

// sheet is a drawing with the list of what it numbers, as a page shows it.
func (c *cuts) sheet(build, sheet, root string) site.Cut {
	v := site.Cut{ID: sheet, Build: build, Title: c.w.words["cut.sheet."+sheet], Says: c.w.words["cut.says."+sheet], Alt: c.title(build, sheet)}
	v.Layouts = c.layouts(build, sheet, root, "")
	c.abilities(&v, c.drawn[cutName(build, sheet, widths[0])].Scene.SVG())
	for _, l := range c.drawn[cutName(build, sheet, widths[0])].Labels {
		item := site.CutLabel{Number: l.Number, ID: l.ID, Part: l.Part, Turns: l.Turns}
		if p := c.w.book.PartByID[l.ID]; p != nil {
			item.Link, item.Says = c.w.partLink(l.ID, root), firstSentence(p.Doc)
		} else {
			item.Link = site.Link{Name: c.words.Of[l.ID].Name}
		}
		v.Labels = append(v.Labels, item)
	}
	return v
}

// paths are what can be followed in drawings, in the order they are offered.
var paths = []string{"water", "oil", "prelube", "thrust", "torque"}

// abilities are what the page can do with a drawing, told before it is drawn
// anew there, so that nothing offered later moves the page.
func (c *cuts) abilities(v *site.Cut, svg string) {
	var follow []string
	for _, p := range paths {
		if strings.Contains(svg, "path-"+p+`"`) {
			follow = append(follow, p)
		}
	}
	v.Follow = strings.Join(follow, " ")
	v.Apart = strings.Count(svg, `class="assembly"`) > 1
	if v.ID == cutaway.Whole || v.ID == cutaway.Bowls {
		v.Stages = usualStages
	}
}

// layouts are the files of a drawing, at a place in them.
func (c *cuts) layouts(build, sheet, root, fragment string) site.Layouts {
	file := func(width int) site.CutFile {
		box := c.drawn[cutName(build, sheet, width)].Scene.Box
		return site.CutFile{URL: root + cutPath(build, sheet, width) + fragment, W: int(box.W + .5), H: int(box.H + .5)}
	}
	return site.Layouts{Wide: file(widths[0]), Middle: file(widths[1]), Narrow: file(widths[2])}
}

// best is the detail sheet of a build that shows a part largest: the one that
// labels it, among the details before the whole pump.
func (c *cuts) best(build, part string) string {
	sheets := cutaway.Sheets(build)
	for _, sheet := range append(slices.Clone(sheets[1:]), sheets[0]) {
		for _, l := range c.drawn[cutName(build, sheet, widths[0])].Labels {
			if l.ID == part {
				return sheet
			}
		}
	}
	for _, sheet := range append(slices.Clone(sheets[1:]), sheets[0]) {
		if slices.Contains(c.drawn[cutName(build, sheet, widths[0])].Parts, part) {
			return sheet
		}
	}
	return ""
}

// partFigures show where a part is: for each build that has it the sheet that
// shows it best, with the part lit.
func (c *cuts) partFigures(p *book.Part, root string) []site.Lit {
	var list []site.Lit
	for _, build := range p.Builds {
		sheet := c.best(build, p.ID)
		if sheet == "" {
			continue
		}
		lit := site.Lit{Build: build, Sheet: c.w.words["cut.sheet."+sheet], URL: root + buildPath(build) + "#" + sheet, Alt: fmt.Sprintf(litAlt, p.Name, c.title(build, sheet))}
		lit.Layouts = c.layouts(build, sheet, root, c.place(build, sheet, p.ID))
		for _, l := range c.drawn[cutName(build, sheet, widths[0])].Labels {
			if l.ID == p.ID {
				lit.Number = l.Number
			}
		}
		list = append(list, lit)
	}
	return list
}

// place is the fragment that lights a part in its drawing; "" where it is only
// named there: a motor that is shown as its pieces.
func (c *cuts) place(build, sheet, part string) string {
	if slices.Contains(c.drawn[cutName(build, sheet, widths[0])].Parts, part) {
		return "#c-" + part
	}
	return ""
}

// chapterCut is a cutaway drawing in the running text, with the parts lit that
// the text speaks of.
func (w *work) chapterCut(b *markdown.Block, root string) (string, error) {
	if w.cuts == nil {
		return "", fmt.Errorf("there is no picture “%s”", b.Name)
	}
	for _, build := range []string{"oil-lubricated", "water-lubricated", "submersible"} {
		if slices.Contains(cutaway.Sheets(build), b.Name) {
			return w.piece(w.cuts.lit(build, b, root))
		}
	}
	return "", fmt.Errorf("there is no picture “%s”", b.Name)
}

// lit is a drawing of its own files, in which the parts named are lit.
func (c *cuts) lit(build string, b *markdown.Block, root string) site.CutInText {
	v := site.CutInText{Cut: c.sheet(build, b.Name, root), URL: root + buildPath(build) + "#" + b.Name, Caption: paragraph(b.Say)}
	if len(b.Lit) == 0 {
		return v
	}
	name := build + "-" + b.Name + "-" + strings.Join(b.Lit, "-")
	file := func(width int) site.CutFile {
		path := "drawings/lit-" + name + "-" + strconv.Itoa(width) + ".svg"
		c.extra.Store(path, litFile{build: build, sheet: b.Name, width: width, parts: b.Lit})
		f := c.layouts(build, b.Name, root, "")
		size := map[int]site.CutFile{widths[0]: f.Wide, widths[1]: f.Middle, widths[2]: f.Narrow}[width]
		size.URL = root + path
		return size
	}
	v.Cut.Layouts = site.Layouts{Wide: file(widths[0]), Middle: file(widths[1]), Narrow: file(widths[2])}
	v.Cut.Labels = slices.DeleteFunc(slices.Clone(v.Cut.Labels), func(l site.CutLabel) bool { return !slices.Contains(b.Lit, l.Part) })
	return v
}

// plain is the whole pump without numbers, for where no list stands beside it.
func (c *cuts) plain(build, root string) site.CutFile {
	const width = 360
	path := "drawings/plain-" + build + ".svg"
	c.extra.Store(path, litFile{build: build, sheet: cutaway.Whole, width: width, plain: true})
	f := c.layouts(build, cutaway.Whole, root, "").Narrow
	f.URL = root + path
	return f
}

// litFile is a drawing that some text shows: with parts lit, or without numbers.
type litFile struct {
	build, sheet string
	width        int
	parts        []string
	plain        bool
}
