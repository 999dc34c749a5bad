package drawing

// Place is one of the places of the rail: a chapter hung at the depth it is
// about.
type Place struct {
	ID   string
	Name string
	Href string
	// Depth is where it hangs: 0 the top of the motor, 1 the bottom of the
	// well. DepthOf knows the depths of the book's eleven places.
	Depth float64
	Lit   bool // the place in force; it opens its Subs
	Here  bool // the page one is on is the place itself
	Subs  []Sub
}

// Sub is an entry below the place in force: a term or a part.
type Sub struct {
	Name, Href string
	Here       bool // the page one is on
}

// Rail is the well upright as the navigation of the book, 264 px wide, for
// pages from 1089 px up. Below that the Strip serves.
type Rail struct {
	Prefix string
	Places []Place // from the top of the well to its bottom; at most eleven are sensible
	Height float64 // px wanted; the scene is taller if the entries need more. 0 means 864
}

// Balloon tells where the rail put a place.
type Balloon struct {
	ID   string
	X, Y float64 // centre, px from the top left of the scene
	Lit  bool
}

// depths of the book's eleven places, in 864ths: the study's well.
var depths = []struct {
	id string
	at float64
}{
	{"power-and-motor", 27}, {"discharge-head", 62}, {"levels-in-the-well", 182},
	{"heads-and-losses", 262}, {"column-and-shaft", 372}, {"lubrication", 440},
	{"bowls-and-stages", 566}, {"thrust-and-stretch", 606}, {"suction", 652},
	{"submersible-build", 712}, {"water-and-materials", 790},
}

// DepthOf gives the depth of a place of the book by its id.
func DepthOf(id string) (float64, bool) {
	for _, d := range depths {
		if d.id == id {
			return d.at / railUnit, true
		}
	}
	return 0, false
}

// Measures of the rail in px.
const (
	railUnit  = 864.0 // height the well is designed at
	railLeast = 600.0 // below this the bowls, which keep their size, leave the well
	railWide  = 264.0 // 16.5 rem
	railHead  = 75.0  // grade line: the height of the masthead less its hatch
	gradeDeep = 12.0  // that hatch, with a little air
	balloonR  = 11.5
	railX     = 114.0 // centres of the balloons
	railStep  = 36.0  // least distance of balloons; 32 is the floor
	subStep   = 26.0  // least height of a sub-entry line: over the 24 px of WCAG 2.2
	railName  = 19.5  // from the centre of a balloon to the names
	// room of a line of words: the 130 px from there to the edge, and 7 % more,
	// because the names of places are broken as if they all were bold; what is
	// left serves a face a little wider than textWidth knows
	railRoom = 138.0
	subRoom  = 124.0 // of a line of a sub-entry, which is never bold
	railBend = 82.0  // leaders run level to here, outside the casing
)

// Layout draws the rail and tells where each balloon stands. Balloons keep the
// order of the places and never overlap; leaders bend and never cross.
func (r Rail) Layout() (*Scene, []Balloon) {
	l := r.place()
	s := &Scene{Prefix: r.Prefix, Class: "rail-well", Box: Box{0, 0, l.width, l.height}, Width: l.width, Height: l.height,
		Hatches: []Hatch{HatchEarth, HatchWater, HatchStill, HatchStillBack}}
	well := Group{Hidden: true, Class: "well"}
	w := railWell{h: l.height}
	w.draw(&well)
	l.leaders(&well)
	list := Group{X: railX}
	var out []Balloon
	for i, p := range r.Places {
		l.entry(&list, i)
		out = append(out, Balloon{ID: p.ID, X: railX, Y: l.y[i], Lit: p.Lit})
	}
	s.Add(well, list)
	return s, out
}
