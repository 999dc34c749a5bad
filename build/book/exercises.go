package book

import (
	"bytes"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"

	"columnbowl/build/markdown"
	"columnbowl/build/report"
	"columnbowl/calcwasm/exercise"
)

// Exercise is the page of an exercise: a situation, and blocks that say which
// facts are drawn and what is asked.
type Exercise struct {
	Page
	Level  int // 1 to 3
	Place  string
	Pick   int      // how many of its choices a sheet shows; 0 for all
	Allow  []string // cautions that its facts may raise
	Source string

	text markdown.Span // the situation
}

func newExercise(page Page, found *report.List) *Exercise {
	e := &Exercise{Page: page}
	fields := []field{
		{"name", true, text(&e.Name)},
		{"level", true, whole(&e.Level, 1, 3)},
		{"place", true, text(&e.Place)},
		{"pick", false, whole(&e.Pick, 1, 99)},
		{"allow", false, texts(&e.Allow)},
		{"source", false, text(&e.Source)},
	}
	e.titled = readYAML(e.File, e.Doc.Source, e.Doc.Title, "the title block of an exercise", fields, found)
	e.situation(found)
	return e
}

// whole takes a whole number.
func whole(to *int, low, high int) reader {
	return func(y *yamlReader, path string, n *yaml.Node) {
		v, err := strconv.Atoi(n.Value)
		if n.Kind != yaml.ScalarNode || err != nil || v < low || v > high {
			y.fail(y.span(n), "“"+last(path)+"” is a whole number from "+strconv.Itoa(low)+" to "+strconv.Itoa(high)+".", "")
			return
		}
		*to = v
	}
}

// situation finds the text above the blocks. Text between or below them would
// be lost on the sheet.
func (e *Exercise) situation(found *report.List) {
	d := e.Doc
	start, end := d.Title.Off+d.Title.Len, len(d.Source)
	if i := bytes.IndexByte(d.Source[min(start, end):], '\n'); i >= 0 {
		start += i + 1 // behind the closing ---
	}
	if n := d.Lead(); n < len(d.Pieces) {
		for _, p := range d.Pieces[n:] {
			if p.Kind != markdown.BlockPart {
				found.Add(e.File, p.Off, p.Len, "The situation of an exercise stands above its blocks: move this there.", "")
			}
		}
	}
	if len(d.Blocks) > 0 {
		end = bytes.LastIndexByte(d.Source[:d.Blocks[0].Off], '\n') + 1
	}
	trimmed := bytes.TrimLeft(d.Source[min(start, end):end], " \t\r\n")
	e.text = markdown.Span{Off: end - len(trimmed), Len: len(bytes.TrimRight(trimmed, " \t\r\n"))}
	if e.text.Len == 0 && d.Title.Off > 0 {
		found.Add(e.File, e.text.Off, 0, "This exercise has no situation: say above its blocks where one is and what is known.", "")
	}
}

// Text is the situation as it was written.
func (e *Exercise) Text() string {
	return string(e.Doc.Source[e.text.Off : e.text.Off+e.text.Len])
}

func (l *loading) exercises() {
	byID := map[string]*Exercise{}
	for _, e := range readAll(l, ExercisePage, newExercise) {
		if have := byID[e.ID]; have != nil {
			l.twice(&e.Page, have.File)
			continue
		}
		if _, ok := l.book.PlaceByID[e.Place]; !ok && e.Place != "" {
			s := e.Where("place")
			l.found.Add(e.File, s.Off, s.Len, "There is no place “"+e.Place+"” on the rail.", "")
		}
		byID[e.ID] = e
		l.book.Exercises = append(l.book.Exercises, e)
	}
}

// Practice makes the exercises ready to be drawn. The list, which is placed,
// tells what is wrong with them; a broken exercise is left out. It is nil for a
// book whose network is not whole.
func (b *Book) Practice() (*exercise.Set, report.List) {
	if b.Engine == nil || !b.Whole {
		return nil, nil
	}
	var found report.List
	set := exercise.New(b.Engine)
	for _, e := range b.Exercises {
		src, blocks := e.source()
		for _, p := range set.Load(src) {
			e.tell(&found, blocks, p)
		}
	}
	return set, found.Place(b.Files)
}

func (e *Exercise) source() (*exercise.Source, []*markdown.Block) {
	src := &exercise.Source{ID: e.ID, Name: e.Name, Level: e.Level, Place: e.Place, Text: e.Text(), Pick: e.Pick, Allow: e.Allow}
	var blocks []*markdown.Block
	for _, k := range e.Doc.Blocks {
		if !k.Unclosed && slices.Contains(allowed[ExercisePage], k.Kind) {
			src.Blocks = append(src.Blocks, exercise.Block{Kind: string(k.Kind), Body: k.Body})
			blocks = append(blocks, k)
		}
	}
	return src, blocks
}

// tell turns a problem of an exercise into a diagnostic at its place.
func (e *Exercise) tell(found *report.List, blocks []*markdown.Block, p exercise.Problem) {
	switch {
	case p.Title != "":
		s := e.Where(p.Title)
		found.Add(e.File, s.Off, s.Len, p.Message, p.Suggest)
	case p.Block < 0 && p.Whole:
		s := e.Where("name")
		found.Add(e.File, s.Off, s.Len, p.Message, p.Suggest)
	case p.Block < 0:
		found.Add(e.File, e.text.Off+p.Off, p.Len, p.Message, p.Suggest)
	case p.Whole:
		k := blocks[p.Block]
		found.Add(e.File, k.Off, k.Len, p.Message, p.Suggest)
	default:
		k := blocks[p.Block]
		from := k.At(false, p.Off)
		to := max(k.At(false, p.Off+p.Len), from)
		found.Add(e.File, from, to-from, strings.TrimSpace(p.Message), p.Suggest)
	}
}
