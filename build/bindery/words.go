package bindery

// Words that stand on pages and in drawings and that only the bindery writes:
// all of them stand here. %s and %d are filled in.
const (
	sheetOfWords = "%d of %d"
	placeTitle   = "%s, place %d of the pump" // a part may have the same name

	wellTitle   = "The well"
	wellSays    = "What the tape and the gauge say."
	ladderTitle = "The head ladder"
	ladderSays  = "What the bowls must lift, rung by rung."
	powerTitle  = "The power"
	powerSays   = "Down as turning, up as water. Width is power."

	// On a term's page, with whose facts it is drawn.
	wellOf   = "%s: what the tape and the gauge say, to scale in depth."
	ladderOf = "%s: what the bowls must lift, rung by rung. The hatched cap is lost inside the pump."
	powerOf  = "%s: the way of the power, down as turning, up as water. Width is power."

	datumWords   = "datum: %s"
	stagesWords  = "%s stages"
	stageWords   = "each stage makes %s"
	ladderFoot   = "the ladder starts at the water, not at the bowls"
	fromWire     = "from the wire"
	motorHeat    = "motor, as heat"
	downShaft    = "down the shaft"
	downCable    = "down the cable"
	inBowls      = "in the bowls"
	upColumn     = "up the column"
	columnHead   = "column, head"
	leftAtGauge  = "left at the gauge"
	slipsTitle   = "Where each slip lands: %s"
	rightWords   = "%s is right"
	wrongWords   = "slip %d gives %s"
	chainLead    = "All facts and all results of one pump on one sheet, from the water in the well to the wire of the motor. It opens with the facts of %s. Type over any line: what hangs on it follows. The pictures share one datum and one scale of depth."
	chainNoFacts = "All facts and all results of one pump on one sheet, from the water in the well to the wire of the motor. Type what you know: what hangs on it follows."
	chainScope   = "from well to wire"
	bookScope    = "the whole book"

	// What a computation was compared with.
	checkedAgainst  = "Checked against %s; largest difference %s of the source’s rounding."
	noOutsideWords  = "No outside check: %s only."
	disagreesWord   = "disagrees"
	computedHere    = "computed here: %s"
	nothingComputed = "not computed here"
	noCheckWords    = "No published value checks this term."
	allSources      = "%s, from %d works; largest difference %s of the source’s rounding."
)

// pressureSays are the words at the standpipe: the water that the pressure at
// the gauge would hold up.
var pressureSays = []string{"would lift", "water here"}

// shaftWords says, for each build, what its shaft runs in.
var shaftWords = map[string]string{
	"water-lubricated": "shaft in water",
	"oil-lubricated":   "oil in tube",
	"submersible":      "cable outside",
}
