package book

import (
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"

	"columnbowl/build/markdown"
	"columnbowl/build/report"
	"columnbowl/calcwasm/cutaway"
)

// ShapesFolder holds the profiles of the cutaway drawings: parts.yaml with the
// painting order, and one file for each frame.
const ShapesFolder = "builds/shapes"

// Shapes are the profiles as the files give them.
type Shapes struct {
	Assemblies []Assembly
	Turning    []string
	Frames     []Frame
	files      report.Files
}

// Assembly is a group of parts that hang together, in painting order.
type Assembly struct {
	ID    string
	Parts []string
}

// Frame is one file of profiles.
type Frame struct {
	Name, Unit, Origin string
	Shapes             []Shape
}

// Shape is one profile, its values as they are written.
type Shape struct {
	Part, Label, Cut, Material, Motion string
	Hatch, Z, Half, When, Side         string
	Alternate, Low, Least              string
	Anchor, Outlines                   []string
}

// the words that a shape may use.
var (
	cutWords = []string{"hatch", "rib", "solid", "shaft", "sleeve", "bar", "view", "seen", "body", "fin", "mesh", "channel", "fluid",
		"grease", "resin", "paper", "gleam", "shade", "edge", "faint", "hidden", "groove", "thread", "spring", "axis", "seam", "cable", "wire", "sheet",
		"arrow", "small", "turn", "mark", "wall"}
	materialWords = []string{"iron", "steel", "bronze", "rubber", "packing", "laminations", "copper", "plastic", "glass", "concrete",
		"resin", "paper", "water", "oil", "filling"}
	// lines are the cuts whose outlines may stay open.
	lineCuts = []string{"edge", "faint", "hidden", "groove", "thread", "spring", "axis", "seam", "cable", "wire", "sheet", "arrow", "small", "turn", "wall"}
)

// LoadShapes reads the profiles under a content folder. The list holds what is
// wrong, all of it in one run, at its place.
func LoadShapes(fsys fs.FS) (*Shapes, report.List) {
	s := &Shapes{files: report.Files{}}
	var found report.List
	names, err := fs.Glob(fsys, ShapesFolder+"/*.yaml")
	if err != nil || len(names) == 0 {
		found.Add("", report.WholeFile, 0, "The content folder has no files of shapes ("+ShapesFolder+"/*.yaml). They hold the profiles of the drawings.", "")
		return s, found
	}
	slices.Sort(names)
	for _, name := range names {
		src, err := fs.ReadFile(fsys, name)
		if err != nil {
			found.Add("", report.WholeFile, 0, "The file "+name+" cannot be read ("+reason(err)+").", "")
			continue
		}
		s.files[name] = src
		if path.Base(name) == "parts.yaml" {
			s.order(name, src, &found)
		} else {
			s.frame(name, src, &found)
		}
	}
	return s, found.Place(s.files)
}

func (s *Shapes) order(name string, src []byte, found *report.List) {
	each := func(y *yamlReader, at string, n *yaml.Node) {
		var a Assembly
		y.mapping(at, "an assembly", n, []field{{"id", true, text(&a.ID)}, {"parts", true, texts(&a.Parts)}})
		s.Assemblies = append(s.Assemblies, a)
	}
	readYAML(name, src, markdown.Span{Len: len(src)}, "the painting order of the parts",
		[]field{{"assemblies", true, items(each)}, {"turns", true, texts(&s.Turning)}}, found)
}

func (s *Shapes) frame(name string, src []byte, found *report.List) {
	f := Frame{}
	each := func(y *yamlReader, at string, n *yaml.Node) {
		sh := Shape{}
		sh.read(y, at, n)
		f.Shapes = append(f.Shapes, sh)
	}
	readYAML(name, src, markdown.Span{Len: len(src)}, "a frame of shapes", []field{
		{"frame", true, text(&f.Name)}, {"unit", true, text(&f.Unit)}, {"origin", true, text(&f.Origin)}, {"shapes", true, items(each)},
	}, found)
	s.Frames = append(s.Frames, f)
}

func (s *Shape) read(y *yamlReader, at string, n *yaml.Node) {
	y.mapping(at, "a shape", n, []field{
		{"part", true, text(&s.Part)}, {"label", false, text(&s.Label)}, {"cut", true, oneOf(&s.Cut, cutWords...)},
		{"material", false, oneOf(&s.Material, materialWords...)}, {"motion", false, oneOf(&s.Motion, "turns", "still")},
		{"hatch", false, number(&s.Hatch)}, {"z", false, number(&s.Z)}, {"half", false, oneOf(&s.Half, "both", "left", "right", "whole")},
		{"when", false, text(&s.When)}, {"anchor", false, texts(&s.Anchor)}, {"side", false, oneOf(&s.Side, "left", "right")},
		{"alternate", false, oneOf(&s.Alternate, "true")}, {"low", false, oneOf(&s.Low, "true")}, {"least", false, number(&s.Least)},
		{"outlines", false, texts(&s.Outlines)},
	})
	if len(s.Anchor) != 0 && len(s.Anchor) != 2 {
		y.fail(y.where(join(at, "anchor")), "“anchor” is a point: two numbers, radius and height.", "")
	}
	if len(s.Outlines) == 0 && s.Cut != "mark" {
		y.fail(y.where(at), "A shape lacks “outlines”; only a mark has none.", "")
	}
	for i, d := range s.Outlines {
		_, closed, err := cutaway.ParsePath(d)
		switch where := y.where(join(join(at, "outlines"), strconv.Itoa(i))); {
		case err != nil:
			y.fail(where, "This outline cannot be read: "+err.Error()+".", "")
		case !closed && !slices.Contains(lineCuts, s.Cut):
			y.fail(where, "This outline is open, and a cut “"+s.Cut+"” is a face: end it with Z.", d+"Z")
		}
	}
}

// number takes a number as it is written.
func number(to *string) reader {
	return func(y *yamlReader, path string, n *yaml.Node) {
		text(to)(y, path, n)
		if _, err := strconv.ParseFloat(*to, 64); err != nil && *to != "" {
			y.fail(y.span(n), "“"+last(path)+"” is a number, not “"+*to+"”.", "")
		}
	}
}

// Pack writes the profiles as the engine reads them (cutaway.Load): one line
// each, words split by tabs, defaults left empty.
func (s *Shapes) Pack() string {
	var b strings.Builder
	line := func(words ...string) { b.WriteString(strings.Join(words, "\t") + "\n") }
	for _, a := range s.Assemblies {
		line("A", a.ID, strings.Join(a.Parts, " "))
	}
	line("T", strings.Join(s.Turning, " "))
	for _, f := range s.Frames {
		line("F", f.Name)
		for i := range f.Shapes {
			line(f.Shapes[i].pack()...)
		}
	}
	return b.String()
}

func (s *Shape) pack() []string {
	x, y, flags, half := "", "", "", s.Half
	if len(s.Anchor) == 2 {
		x, y = s.Anchor[0], s.Anchor[1]
	}
	if s.Alternate != "" {
		flags += "a"
	}
	if s.Low != "" {
		flags += "l"
	}
	packed := make([]string, 0, len(s.Outlines))
	for _, d := range s.Outlines {
		if p, err := cutaway.PackPath(d); err == nil { // one that cannot be read has been told
			packed = append(packed, p)
		}
	}
	first := func(w string) string { return w[:min(1, len(w))] }
	motion := s.Motion
	if motion == "still" {
		motion = ""
	}
	if half == "both" {
		half = ""
	}
	return []string{"S", s.Part, s.Label, s.Cut, s.Material, motion, s.Hatch, s.Z, first(half), s.When, x, y, first(s.Side), flags, s.Least, strings.Join(packed, ";")}
}
