package drawing

// Hatch names a hatch the writer can put into a drawing. The material families
// follow the common drawing practice of ISO 128-50 and ASME Y14.2: one angle
// per part, so that neighbours differ.
type Hatch string

// The hatches. Their lines take colour from the classes h-still, h-turn,
// h-water, h-line and h-ink.
const (
	HatchStill     Hatch = "hs"  // stationary metal, 45 degrees
	HatchStillBack Hatch = "hs2" // stationary metal, the neighbour
	HatchTurn      Hatch = "ht"  // turning metal
	HatchPower     Hatch = "hp"  // electric power, on ink
	HatchEarth     Hatch = "he"  // ground
	HatchWater     Hatch = "hw"  // water standing in the well
	HatchLoss      Hatch = "hl"  // head spent, as against head used
)

// tile is the geometry of a hatch: its size, turn in degrees and lines.
type tile struct {
	w, h, turn float64
	class      string
	lines      [][4]float64
}

func (h Hatch) tile() (tile, bool) {
	one := func(size, turn float64, class string) (tile, bool) {
		return tile{size, size, turn, class, [][4]float64{{0, 0, 0, size}}}, true
	}
	switch h {
	case HatchStill:
		return one(6, 45, "h-still")
	case HatchStillBack:
		return one(6, -45, "h-still")
	case HatchTurn:
		return one(5, -60, "h-turn")
	case HatchPower:
		return one(5, 30, "h-ink")
	case HatchEarth:
		return one(9, 45, "h-line")
	case HatchLoss:
		return one(5, 45, "h-still")
	case HatchWater:
		return tile{14, 7, 0, "h-water", [][4]float64{{1, 2, 9, 2}, {7, 5.5, 13, 5.5}}}, true
	}
	return tile{}, false
}

// defs writes the patterns. An unknown hatch is skipped: the shape then has no
// fill, and the golden files show it.
func (w *writer) defs(hatches []Hatch) {
	if len(hatches) == 0 {
		return
	}
	w.raw("<defs>\n")
	for _, h := range hatches {
		t, ok := h.tile()
		if !ok {
			continue
		}
		w.open("pattern", "", string(h))
		w.geometry([]string{"width", "height"}, t.w, t.h)
		w.raw(` patternUnits="userSpaceOnUse"`)
		if t.turn != 0 {
			w.raw(` patternTransform="rotate(`)
			w.num(t.turn)
			w.raw(`)"`)
		}
		w.raw(">")
		for _, l := range t.lines {
			w.open("line", t.class, "")
			w.geometry([]string{"x1", "y1", "x2", "y2"}, l[0], l[1], l[2], l[3])
			w.raw("/>")
		}
		w.raw("</pattern>\n")
	}
	w.raw("</defs>\n")
}
