// Package drawing lays out the pictures of the book as scenes and writes them
// as SVG: the rail, the phone strip, the well section, the head ladder, the
// power flow and the number line of slips.
//
// Conventions, stated once:
//
//   - A Scene is a list of small shapes in user units; one unit is one CSS
//     pixel at 1:1. y grows downwards. Layout functions are pure: the same
//     model gives the same scene, and AppendSVG gives the same bytes.
//   - Colours, line weights and type live in the style sheet of the site. The
//     shapes carry classes (see classes.go), never colours or style attributes,
//     because the pages run under a strict Content-Security-Policy.
//   - Every id in a drawing begins with the prefix the caller gives, so that
//     several drawings stand on one page. Hatches are patterns inside the SVG.
//   - All words come from the caller. The package has no words of its own, so a
//     second language needs no second package.
//   - A number that is not known (Mark.Known false, NaN or infinite) is not
//     drawn, or drawn dashed with its name; it never stops a drawing.
//   - It also runs in WebAssembly: no fmt, no reflect, no encoding.
package drawing

// Box is a rectangle in user units: the viewBox of a scene or the bounds of a
// shape.
type Box struct{ X, Y, W, H float64 }

// Scene is one drawing.
type Scene struct {
	Prefix string  // beginning of every id, unique on the page: "rail", "lad1"
	Box    Box     // viewBox
	Class  string  // class of the svg element; "fig" for figures
	Width  float64 // width attribute in px; 0 leaves it to the style sheet
	Height float64 // height attribute in px; 0 leaves it to the style sheet

	// Title and Desc are the text alternative. Without a title the drawing is
	// hidden from screen readers, unless it holds links: then only what is not
	// a link is hidden (the layout groups it so).
	Title, Desc string
	Role        string // role of a drawing with a title; empty is img, whose parts are not told one by one

	Hatches []Hatch // patterns used by Fill fields
	Items   []Item
}

// Item is a shape of a scene: Line, Rect, Circle, Path, Text, Group or Link.
type Item interface {
	write(w *writer)
	// span reports the bounds to the collector; text is estimated.
	span(c *collector)
	// sound is false if a coordinate is NaN or infinite.
	sound() bool
}

var (
	_ Item = Line{}
	_ Item = Rect{}
	_ Item = Circle{}
	_ Item = (*Path)(nil)
	_ Item = Text{}
	_ Item = Group{}
	_ Item = Link{}
)

// Line is a straight line.
type Line struct {
	X1, Y1, X2, Y2 float64
	Class          string
	Stroke         float64 // stroke-width attribute; 0 leaves it to the class
}

// Rect is an upright rectangle; W and H are not negative.
type Rect struct {
	X, Y, W, H float64
	Class      string
	Fill       string  // name of a hatch of the scene; empty leaves it to the class
	Opacity    float64 // 0 means opaque, so that the zero value is valid
}

// Circle is a circle of radius R.
type Circle struct {
	X, Y, R float64
	Class   string
}

// Text is one line of words. Upright text starts, centres (class m) or ends
// (class e) at X on the base line Y; Turned text runs upwards.
type Text struct {
	X, Y   float64
	Words  string
	Class  string
	Turned bool
}

// Group holds shapes together: a part with its id and name.
type Group struct {
	ID, Class   string
	X           float64 // its shapes count from here
	Title, Desc string
	Hidden      bool        // hidden from screen readers
	Attrs       [][2]string // further attributes, name and value: data-*, role, aria-*
	Items       []Item
}

// Link is a group that can be followed and focused. Words inside it are its
// name; Label replaces them where they are too short to stand alone (a number).
type Link struct {
	Href, Class string
	ID          string
	Label       string // aria-label; empty if the words inside say it
	Title       string // shown while pointing at it
	Current     bool   // the page one is on
	Items       []Item
}

// Add appends shapes to the scene.
func (s *Scene) Add(items ...Item) { s.Items = append(s.Items, items...) }

// Add appends shapes to the group.
func (g *Group) Add(items ...Item) { g.Items = append(g.Items, items...) }
