// Package cutaway draws the pump cut open: the whole pump and its details, in
// three builds, parametric in stages, sizes and options.
//
//	shapes, err := cutaway.Load(packed)           // the profiles, data of the book
//	d := shapes.Draw(pump, view)                  // one sheet
//	svg := d.Scene.SVG()                          // d.Parts is the list beside it
//
// Conventions, stated once:
//
//   - A profile is stored once, in its own frame (x is the radius, y grows
//     upwards, unit in the data), and placed by Draw. What is drawn of a part is
//     data (content/builds/shapes); only the composition of the sheets is Go.
//   - Left of the centre line the cut runs through vanes, spokes, lobes; right
//     of it through the opening, where the water passes. Shafts, bolts and keys
//     are never cut. Colour says motion, hatch says material, angle says part.
//   - Each part is one group with the id PREFIX-part-id and the classes part and
//     turns or stands, inside a group of class assembly with data-assembly, so
//     that :target lights a part and a script can pull assemblies apart. Words
//     come from the caller, by part id; labels that are no part have an id with
//     a slash, such as impeller/eye.
//   - Groups of class path with path-water, path-oil, path-prelube, path-thrust, path-torque
//     hold what can be followed. They are hidden by the style sheet unless the
//     svg element carries follow-water and so on (View.Follow).
//   - Classes only: colours and weights are in site/styles/cutaway.css.
//   - A size outside its range is drawn at the end of the range, a count below 1
//     as 1, an unknown option as the usual one: a drawing never fails.
//   - The same pump and view give the same bytes.
//
// The rules of the drawings (hatch, weights, labels that never cross, breaks)
// are common practice of engineering drawings (ISO 128, ASME Y14.3, from memory).
package cutaway

import "columnbowl/calcwasm/drawing"

// Pump is what is drawn. The zero value is a water-lubricated pump of one stage.
type Pump struct {
	Build   string // water-lubricated, oil-lubricated or submersible
	Stages  int    // 1 and more
	Sizes   Sizes
	Options []string // words of Choices; of each choice the first one is usual
	Levels  Levels
}

// Sizes are ratios of diameters; 0 stands for the usual one.
type Sizes struct {
	Column    float64 // column outside diameter / bowl outside diameter; .908, range .6 to 1.15
	BowlShaft float64 // bowl shaft / bowl outside diameter; .158, range .1 to .2
	LineShaft float64 // line shaft / column outside diameter; .196, range .12 to .24
	Tube      float64 // enclosing tube / column outside diameter; .344, range .3 to .5
}

// Levels are depths below the head in one unit; they order the water in the
// well of the whole pump. Known false draws both at usual places.
type Levels struct {
	Known                    bool
	Static, Pumping, Setting float64
}

// Choices are the options of a pump: of each row one word, the first if none is
// asked for.
var Choices = [][]string{
	{"tailpipe", "strainer", "bell"},        // end of the suction
	{"bowl-ring", "both-rings"},             // seal between impeller and bowl
	{"single-seal", "double-seal"},          // under the tubing adapter bearing
	{"capped", "open-top"},                  // top bearing of a submersible's bowls
	{"nipple", "plain-top"},                 // top of the column: adapter and adjusting nipple, or flange alone
	{"enclosed", "semi-open"},               // impeller
	{"collet", "key"},                       // how the impeller is held
	{"taper-down", "taper-up"},              // wide end of the collet
	{"threaded", "flanged"},                 // joint of the column
	{"packed", "mech-seal"},                 // closure of an open line shaft
	{"hollow-shaft", "solid-shaft", "gear"}, // driver on the head
	{"plate", "pitless"},                    // head of a submersible: plate on the casing, or outlet below the ground
	{"sealed", "water-filled"},              // winding of a submersible motor
}

// Idle are options that leave nothing to choose in another row: the word whose
// row it is, and the option.
var Idle = map[string]string{"taper-down": "key"} // a keyed impeller has no collet

// The sheets.
const (
	Whole       = "whole"        // everything from driver to strainer, column shortened
	Bowls       = "bowls"        // bowl assembly
	Column      = "column"       // column joint and, for line shafts, the cut across it
	Head        = "head"         // discharge head and driver
	Motor       = "motor"        // driver, or submersible motor
	StuffingBox = "stuffing-box" // closure of an open line shaft
	TubeTension = "tube-tension" // closure of an enclosed line shaft
	Stage       = "stage"        // one stage and the water's path through it
	Line        = "line"         // discharge line from the head on: joint, check valve, meter
	Motors      = "motors"       // sealed and water-filled motor side by side
	Power       = "power"        // panel, and what watches the level in the well
)

// Sheets lists the sheets that a build has, the whole pump first.
func Sheets(build string) []string {
	switch build {
	case "oil-lubricated":
		return []string{Whole, Bowls, Stage, Column, Head, TubeTension, Motor, Line, Power}
	case "submersible":
		return []string{Whole, Bowls, Stage, Column, Head, Motor, Motors, Line, Power}
	}
	return []string{Whole, Bowls, Stage, Column, Head, StuffingBox, Motor, Line, Power}
}

// View is how it is drawn.
type View struct {
	Prefix string // beginning of every id, unique on the page
	Sheet  string // one of the constants; empty is Whole
	Width  int    // width of the sheet in px: 360, 768 or 1280; others go to the next lower
	Labels Labels
	Veiled bool     // names are put away: neutral names and no titles, numbers in the place of names
	Known  []string // label ids that are told although the others are put away, the latest last
	Follow []string // paths shown: water, oil, prelube, thrust, torque
	Words  Words
}

// Labels says what stands beside the drawing.
type Labels int

// The kinds of labels. Named labels become numbers on a sheet of 360 px, where
// names have no room.
const (
	Named Labels = iota
	Numbered
	Hidden // no labels, groups with neutral names and without title
)

// Words are all words of a drawing.
type Words struct {
	Title, Desc string
	Of          map[string]Word // by label id: a part id, or part/feature
	More        string          // "{0} more stages", beside a break
	OneMore     string          // "1 more stage"
	Turns       string          // neutral name "part {0}, turns, between {1} and {2}"
	Stands      string          // the same for a part that stands still
	FreeTurns   string          // neutral name of a part without a number: "turns, between {0} and {1}"
	FreeStands  string          // the same for a part that stands still
}

// Word is the name of a part or feature, one short plain fact, and what
// assistive technology reads.
type Word struct{ Name, Sub, Desc string }

// Drawing is a sheet with the list that stands beside it.
type Drawing struct {
	Scene  *drawing.Scene
	Labels []Label // in the order of their numbers, from the top
	Parts  []string
	Behind int // stages behind the break line
}

// Label is one numbered thing of a drawing.
type Label struct {
	Number   int
	ID, Part string // ID is the part's, or part/feature
	Turns    bool
	Name     string  // as the drawing tells it; neutral if names are put away
	X, Y     float64 // the point named, px of the sheet
}
