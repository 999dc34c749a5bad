package drawing

// Classes are all classes a drawing may carry: the contract with the style
// sheet of the site, which gives each its ink. A test checks that no drawing
// uses another.
//
// Lines: out (outline), thin (half of it), dim (dimension lines, faint), chainl
// (datum, chain-thin), hid (dashed: hidden, or not known), s-water, s-turn
// (coloured lines; their width is an attribute).
// Areas: w-still, w-turn, w-water, w-earth (washes), ink, pap, fnt, she (ink,
// paper, faint, sheet). h-… are the lines of hatches.
// Words: f (faint), b (bold), mid (16 px), big (22 px, text face), m and e
// (middle and end), ha (paper halo), pap (paper, on ink), c-turn, c-water; plain
// words are 14 px. no are the numbers of the rail. Balloons: balloon, lit.
// Links: place, and those in subs; each has a rectangle without class and ink
// that takes the pointer. Scenes: fig, rail-well, strip-well; well
// is the drawn part of the rail, slot and cut-slot the dashed lines of its screen.
var Classes = []string{
	"out", "thin", "dim", "chainl", "hid", "s-water", "s-turn",
	"w-still", "w-turn", "w-water", "w-earth", "ink", "pap", "fnt", "she",
	"h-still", "h-turn", "h-water", "h-line", "h-ink",
	"f", "b", "mid", "big", "m", "e", "ha", "c-turn", "c-water", "no",
	"balloon", "lit", "place", "subs", "fig", "rail-well", "strip-well", "well", "slot", "cut-slot",
}
