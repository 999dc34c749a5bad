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
	"columnbowl/calcwasm/drawing"
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
	plates          // what is drawn
	style  inks     // of drawings that are files
	extra  sync.Map // path -> litFile: drawings that texts ask for
	made   sync.Map // path -> func() *drawnFile: files that were asked for
}

// plates are the drawings, made once for a book and taken over by the next
// binding while nothing has changed that they show.
type plates struct {
	drawn   map[string]cutaway.Drawing // by build, sheet and width
	others  []*other                   // sheets of pumps that are made otherwise than usual
	otherOf map[string]seenIn          // which of them shows a part, by build/part
	ways    map[string][]made          // how a pump can be made otherwise than usual, by build
}

func (w *work) prepareCuts(style []byte) error {
	if w.book.Shapes == nil {
		return nil
	}
	shapes, err := cutaway.Load(w.book.Shapes.Pack())
	if err != nil {
		return err
	}
	c := &cuts{w: w, shapes: shapes, style: readInks(string(style))}
	c.words = cutaway.Words{Of: map[string]cutaway.Word{}, More: w.words["cut.more"], OneMore: w.words["cut.one-more"],
		Turns: w.words["cut.turns"], Stands: w.words["cut.stands"],
		FreeTurns: w.words["cut.free-turns"], FreeStands: w.words["cut.free-stands"]}
	for _, id := range w.book.Shapes.Labels() {
		c.words.Of[id] = w.cutWord(id)
	}
	c.plates, err = Recall(w.keep, "drawings", c.sum(), func() (plates, error) { return c.drawAll(), nil })
	w.cuts = c
	return err
}

// sum is a sum of all that the drawings are made from.
func (c *cuts) sum() string {
	sum := sha256.New()
	sum.Write(c.pack())
	for _, p := range c.w.book.Parts { // those that no usual pump has are drawn too
		fmt.Fprintf(sum, "%s %q\n", p.ID, p.Builds)
	}
	return string(sum.Sum(nil))
}

// drawAll draws every sheet at every width.
func (c *cuts) drawAll() plates {
	c.plates = plates{drawn: map[string]cutaway.Drawing{}, otherOf: map[string]seenIn{}}
	for _, build := range book.Builds {
		for _, sheet := range cutaway.Sheets(build) {
			for _, width := range widths {
				c.drawn[cutName(build, sheet, width)] = c.draw(build, sheet, width)
			}
		}
	}
	c.drawOthers()
	c.ways = map[string][]made{}
	for _, build := range book.Builds {
		c.ways[build] = c.madeOf(build)
	}
	return c.plates
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

func (c *cuts) draw(build, sheet string, width int, options ...string) cutaway.Drawing {
	words := c.words
	words.Title = c.title(build, sheet)
	return c.shapes.Draw(cutaway.Pump{Build: build, Stages: usualStages, Options: options},
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

// file is a drawing as a file. It is a picture, which nobody walks through: the
// words of its parts and the ways that a reader can follow in the living drawing
// stay out, and its points lie on tenths of a pixel.
func (c *cuts) file(f litFile) []byte {
	still := *c.drawn[cutName(f.build, f.sheet, f.width)].Scene
	still.Items = seen(still.Items)
	svg := still.SVG()
	if f.plain {
		svg = strings.Replace(svg, `class="fig cutaway`, `class="fig cutaway plain`, 1)
	}
	for _, id := range f.parts {
		svg = c.light(svg, id)
	}
	svg = shortWays(svg)
	at := strings.Index(svg, ">") + 1
	return []byte(svg[:at] + "\n<style>" + c.style.of(svg) + "</style>" + svg[at:])
}

// shortWays writes every path of a drawing with fewer signs.
func shortWays(svg string) string {
	const open = ` d="`
	var b strings.Builder
	b.Grow(len(svg))
	for {
		before, rest, found := strings.Cut(svg, open)
		b.WriteString(before)
		if !found {
			return b.String()
		}
		var d string
		d, svg, _ = strings.Cut(rest, `"`)
		b.WriteString(open + ShortPath(d) + `"`)
	}
}

// seen is what a still drawing shows of shapes.
func seen(items []drawing.Item) []drawing.Item {
	var kept []drawing.Item
	for _, it := range items {
		if g, isGroup := it.(drawing.Group); isGroup {
			if strings.HasPrefix(g.Class, "path ") {
				continue
			}
			g.Title, g.Desc, g.Attrs, g.Hidden = "", "", nil, false
			g.Items = seen(g.Items)
			it = g
		}
		kept = append(kept, it)
	}
	return kept
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
	fmt.Fprintf(&b, "more\t%s\none-more\t%s\nturns\t%s\nstands\t%s\nfree-turns\t%s\nfree-stands\t%s\n\n%s",
		c.words.More, c.words.OneMore, c.words.Turns, c.words.Stands, c.words.FreeTurns, c.words.FreeStands, c.w.book.Shapes.Pack())
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
	v.Apart = strings.Count(svg, `class="assembly"`) > 1 && v.ID != cutaway.Power // which shows things beside each other
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
	l := site.Layouts{Wide: file(widths[0]), Middle: file(widths[1]), Narrow: file(widths[2])}
	if c.isOther(build, sheet) { // shown small only, beside a text
		l.Wide = l.Middle
	}
	return l
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
