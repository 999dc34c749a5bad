package cutaway

import (
	"errors"
	"strconv"
	"strings"
)

// shape is one profile: what is drawn of a part in one frame.
type shape struct {
	part, label string
	cut         string
	material    string
	turns       bool
	hatch, z    float64
	half        byte // b both, l left, r right, w whole
	when        string
	hasAnchor   bool
	anchor      point
	side        byte // l, r or 0
	alternate   bool // hatch changes its sign from stage to stage
	low         bool // labelled on the lowest stage, not on the highest
	least       float64
	outlines    [][]seg
}

// assembly is a group of parts that hang together, in painting order.
type assembly struct {
	id    string
	parts []string
}

// Shapes are the profiles of all parts: the data Draw works from.
type Shapes struct {
	assemblies []assembly
	turning    []string // ids of parts that turn
	frames     []string
	byFrame    [][]*shape
}

// Assemblies lists the ids of the assemblies in painting order.
func (s *Shapes) Assemblies() []string {
	var out []string
	for _, a := range s.assemblies {
		out = append(out, a.id)
	}
	return out
}

// Load reads the packed profiles, one line each, its words split by tabs:
//
//	A  assembly  part part …          painting order, first painted first
//	T  part part …                    the parts that turn
//	F  frame                          what follows stands in this frame
//	S  part label cut material motion hatch z half when x y side flags least outline;outline… (packed, see PackPath)
//
// An empty word is the default. The errors name the line; they are for the
// writer of the packed text, since authors see the errors of the YAML.
func Load(text string) (*Shapes, error) {
	s := &Shapes{}
	for no, line := range strings.Split(text, "\n") {
		if line == "" {
			continue
		}
		if err := s.line(strings.Split(line, "\t")); err != nil {
			return nil, errors.New("shapes, line " + strconv.Itoa(no+1) + ": " + err.Error())
		}
	}
	if len(s.byFrame) == 0 || len(s.assemblies) == 0 {
		return nil, errors.New("shapes: no frame or no assembly; the text is empty or cut off")
	}
	return s, nil
}

func (s *Shapes) line(w []string) error {
	switch {
	case w[0] == "A" && len(w) == 3:
		s.assemblies = append(s.assemblies, assembly{w[1], strings.Fields(w[2])})
	case w[0] == "T" && len(w) == 2:
		s.turning = append(s.turning, strings.Fields(w[1])...)
	case w[0] == "F" && len(w) == 2:
		s.frames = append(s.frames, w[1])
		s.byFrame = append(s.byFrame, nil)
	case w[0] == "S" && len(w) == 16 && len(s.byFrame) > 0:
		sh, err := readShape(w[1:])
		if err != nil {
			return err
		}
		last := len(s.byFrame) - 1
		s.byFrame[last] = append(s.byFrame[last], sh)
	default:
		return errors.New("not a line of shapes: " + strconv.Quote(w[0]) + " with " + strconv.Itoa(len(w)) + " words")
	}
	return nil
}

func readShape(w []string) (*shape, error) {
	sh := &shape{part: w[0], label: w[1], cut: w[2], material: w[3], turns: w[4] == "turns", when: w[8], half: 'b'}
	nums := [5]*float64{&sh.hatch, &sh.z, &sh.anchor.x, &sh.anchor.y, &sh.least}
	for i, at := range [5]int{5, 6, 9, 10, 13} {
		if w[at] == "" {
			continue
		}
		v, err := strconv.ParseFloat(w[at], 64)
		if err != nil {
			return nil, errors.New(strconv.Quote(w[at]) + " is no number")
		}
		*nums[i] = v
	}
	sh.hasAnchor = w[9] != ""
	if w[7] != "" {
		sh.half = w[7][0]
	}
	if w[11] != "" {
		sh.side = w[11][0]
	}
	sh.alternate = strings.Contains(w[12], "a")
	sh.low = strings.Contains(w[12], "l")
	if sh.label == "" {
		sh.label = sh.part
	}
	for _, d := range strings.Split(w[14], ";") {
		if d == "" {
			continue
		}
		o, err := unpackPath(d)
		if err != nil {
			return nil, err
		}
		sh.outlines = append(sh.outlines, o)
	}
	return sh, nil
}

// frame gives the shapes of a frame.
func (s *Shapes) frame(name string) []*shape {
	for i, f := range s.frames {
		if f == name {
			return s.byFrame[i]
		}
	}
	return nil
}

// holds is true if a condition fits the words in force. A condition is words
// that must all fit; a|b is one of them, !a|b none of them.
func holds(when string, words []string) bool {
	for _, cond := range strings.Fields(when) {
		alt, not := strings.CutPrefix(cond, "!")
		any := false
		for _, a := range strings.Split(alt, "|") {
			for _, w := range words {
				any = any || w == a
			}
		}
		if any == not {
			return false
		}
	}
	return true
}
