package formula

import "testing"

// The messages are part of the product: they say what is wrong and what to
// write instead. A text stands here as its author would have written it, the
// marks «» round what the message points at.

func TestMessagesOfScanning(t *testing.T) {
	complain(t, "relation", []complaint{
		says("total-head = «1.2.3» ft", "“1.2.3” is not a number: write digits with one point, such as 138.6."),
		says("total-head = 5 «fx»", "There is no unit “fx”. A word after a number is its unit; a term needs an operator before it. → ft"),
		says("total-head = 5 «field-head»", "There is no unit “field-head”. A word after a number is its unit; a term needs an operator before it."),
		says("total-head = 5 «ft/2»", "…There is no unit “ft/2”. → ft2"),
		says("bowl-power[«hpp»] = 3", "There is no unit “hpp”. → hp"),
		says("total-head = field-head«[»", "The unit that begins here has no closing bracket “]”."),
		says("total-head = field-head«-» 5 ft", "A minus sign needs a space on both sides: “a - b”. Without them it would join two words to one name."),
		says("total-head = field-head«!»", "“!” means nothing in the notation."),
		says("total-head = field-head «\u00a7»", "“\u00a7” means nothing in the notation."),
	})
	complain(t, "caution", []complaint{
		says("when stages > 3\nsay «\"»no end", "The text that begins here has no closing quotation mark."),
	})
}

func TestMessagesOfParsing(t *testing.T) {
	complain(t, "relation", []complaint{
		says("«»", "Expected a term, a number or “(”, but the text ends here."),
		says("total-head«»", "Expected “=” between the two sides of the relation, but the text ends here."),
		says("total-head =«»", "Expected a term, a number or “(”, but the text ends here."),
		says("«=» 3", "Expected a term, a number or “(”, but “=” stands here."),
		says("total-head = (field-head«»", "Expected “)”, but the text ends here."),
		says("total-head = field-head«)»", "Expected an operator or the end, but “)” stands here."),
		says("total-head = field-head «5»", "Expected an operator or the end, but “5” stands here."),
		says("total-head = 2 ft * «)»", "Expected a term, a number or “(”, but “)” stands here."),
		says("total-head = min(field-head «;» 3 ft)", "“;” means nothing in the notation.", "…Expected “,” or “)”"),
		says("total-head = «mni»(field-head, 3 ft)", "There is no function “mni”. → min"),
		says("total-head = min(«field-head: 2 ft», 3 ft)", "Only table(…) and curve(…) take pairs of points."),
	})
	complain(t, "condition", []complaint{
		says("total-head«»", "Expected a comparison (= != < <= > >=), but the text ends here."),
		says("total-head «is» 5", "Expected a comparison (= != < <= > >=), but “is” stands here."),
		says("total-head > 5 ft and«»", "Expected a term, a number or “(”, but the text ends here."),
		says("(total-head > 5 ft«»", "Expected “)”, but the text ends here."),
		says("not total-head«»", "Expected a comparison (= != < <= > >=), but the text ends here."),
	})
}

func TestMessagesOfNames(t *testing.T) {
	complain(t, "relation", []complaint{
		says("total-head = «field-haed» + 1 ft", "There is no term “field-haed”. → field-head"),
		says("«totalhead» = 1 ft", "There is no term “totalhead”. → total-head"),
		says("total-head = «motor-voltage» + «lift»", "There is no term “motor-voltage”.", "There is no term “lift”."),
		says("total-head = «build»", "“build” is a word, not a number: it can only stand in a condition, such as build = water-lubricated."),
		says("total-head = build«[ft]»", "“build” is a word, not a quantity: it has no unit."),
		says("total-head = field-head«[gpm]»", "“field-head” is a length and cannot be counted in gpm (a flow); its own unit is ft."),
	})
	complain(t, "condition", []complaint{
		says("«build < oil-lubricated»", "“build” is a word: it can only be compared with = or !=."),
		says("build = «oil-lubricatd»", "“oil-lubricatd” is not one of the values of build. → oil-lubricated"),
		says("build = «total-head»", "“build” is compared with one of its values: water-lubricated, oil-lubricated or submersible."),
		says("build = «3»", "“build” is compared with one of its values: water-lubricated, oil-lubricated or submersible."),
		says("«pumpng-level» > setting", "There is no term “pumpng-level”. → pumping-level"),
	})
}

func TestMessagesOfDimensions(t *testing.T) {
	complain(t, "relation", []complaint{
		says("total-head = field-head + «capacity»", "“field-head” is a length and “capacity” a flow: they cannot be added."),
		says("total-head = field-head - «3»", "“field-head” is a length and “3” a bare number: they cannot be subtracted."),
		says("total-head = «capacity»", "The left-hand side is a length, the right-hand side a flow."),
		says("total-head = «field-head[ft]»", "The left-hand side is a length, the right-hand side a bare number. If the right-hand side is a number in some unit, name the unit on the left: total-head[ft]."),
		says("pump-speed = «60 Hz»", "The left-hand side is a rotational speed, the right-hand side a frequency."),
		says("stages = 2 ^ «field-head»", "An exponent is a bare number; this is a length."),
		says("bowl-area = field-head ^ «1.3»", "“field-head” is a length: only a simple constant exponent such as 2, 0.5 or 0.75 can stand over it. Take the bare number: name[unit]."),
		says("bowl-area = field-head ^ «stages»", "“field-head” is a length: only a simple constant exponent such as 2, 0.5 or 0.75 can stand over it. Take the bare number: name[unit]."),
		says("total-head = «sqrt(field-head, 2)»", "sqrt(x) takes one value."),
		says("total-head = «abs()»", "abs(x) takes one value."),
		says("total-head = «min(field-head)»", "min(a, b) compares two values or more."),
		says("total-head = max(field-head, «3 gpm»)", "“field-head” is a length and “3 gpm” a flow: they cannot be compared."),
		says("stages = «round-up(field-head)»", "round-up(x) makes a whole number: take the bare number of the quantity, name[unit]."),
		says("column-loss = «pipe-loss(capacity)»", "pipe-loss(flow, length) takes 2 values; 1 stand here."),
		says("column-loss = pipe-loss(«setting», setting)", "The flow of pipe-loss(…) is a flow; “setting” is a length."),
	})
	complain(t, "condition", []complaint{
		says("total-head > «5»", "“total-head” is a length and “5” a bare number: they cannot be compared."),
		says("total-head > «capacity»", "“total-head” is a length and “capacity” a flow: they cannot be compared."),
	})
}

func TestMessagesOfPoints(t *testing.T) {
	complain(t, "relation", []complaint{
		says("total-head = «table(field-head, 0 ft: 1 ft)»", "table(x, x1: y1, x2: y2, …) takes one value and two points or more."),
		says("total-head = «curve(0 ft: 1 ft, 2 ft: 3 ft)»", "curve(x, x1: y1, x2: y2, …) takes one value and two points or more."),
		says("total-head = «table(field-head, 0 ft, 1 ft: 5 ft, 2 ft: 6 ft)»", "table(x, x1: y1, x2: y2, …) takes one value and two points or more."),
		says("total-head = «table(0 ft: 1 ft, 5 ft, 3 ft: 2 ft)»", "table(x, x1: y1, x2: y2, …) takes one value and two points or more."),
		says("total-head = curve(field-head, 0 ft: 1 ft, «0 ft»: 2 ft)", "The points must rise: “0 ft” is not beyond the point before it."),
		says("total-head = table(field-head, 0 ft: 1 ft, «3 gpm»: 2 ft)", "“3 gpm” is a flow, the value looked up is a length."),
		says("total-head = table(field-head, 0 ft: 1 ft, 3 ft: «2 gpm»)", "“2 gpm” is a flow, the first point has a length."),
		says("total-head = table(field-head, 0 ft: 1 ft, «setting»: 2 ft)", "A point is a pair of plain numbers with units."),
	})
}

// What is added to a message in Error() has to stay one sentence each.
func TestErrorsReadAsText(t *testing.T) {
	err := parsers["relation"]("total-head = field-haed + motor-voltage", trade)
	const want = "There is no term “field-haed”. Did you mean field-head?\nThere is no term “motor-voltage”."
	if err == nil || err.Error() != want {
		t.Errorf("%v\nshould be\n%s", err, want)
	}
}
