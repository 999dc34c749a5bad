package bindery

// Words that stand on pages and in drawings and that only the bindery writes:
// all of them stand here. %s and %d are filled in.
const (
	sheetOfWords = "%d of %d"
	litAlt       = "%s, marked in the drawing “%s”"
	placeTitle   = "%s, place %d of the pump" // a part may have the same name

	slipsTitle   = "Where each slip lands: %s"
	rightWords   = "%s is right"
	wrongWords   = "slip %d gives %s"
	chainLead    = "All facts and all results of one pump on one sheet, from the water in the well to the wire of the motor. It opens with the facts of %s. Type over any line: what hangs on it follows. The pictures share one datum and one scale of depth."
	chainNoFacts = "All facts and all results of one pump on one sheet, from the water in the well to the wire of the motor. Type what you know: what hangs on it follows."
	choiceLead   = "Which bowls make this duty, how they run there, and what speaks for each and against it. The families are invented for this book: demonstration bowls, not for order. For a real pump type in the curve of its own sheet. It helps to plan and to talk; the builder selects the pump."
	choiceScope  = "bowl families against one duty"
	takeoffLead  = "What a pump of this setting is made of, from the motor to the strainer: how many pieces, how long, how heavy. It opens with a pump that was asked for 237 ft and can be made 240 ft long. Type over any line: the list follows. It helps to plan and to talk; the builder’s own sheet rules, and lifting is work for a competent person."
	takeoffScope = "pieces, lengths and weights of one pump"
	chainScope   = "from well to wire"
	deskLead     = "Type what the customer says. What was understood becomes facts on the enquiry sheet, what is missing is asked for in order, and the sheet tells the duty: total head, capacity and limits, without any bowl being chosen."
	deskScope    = "the duty, before a pump is chosen"
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
